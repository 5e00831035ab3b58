package application

import (
	"slices"

	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var loads = worksheet.Sheet{
	Name: "loads", Group: worksheet.Application,
	Inputs: slices.Concat([]worksheet.Input{
		{Flag: "area", Kind: worksheet.Area, Low: "0 m2", Over: true},
		{Flag: "plants", Kind: worksheet.Whole, Low: "1"},
		{Flag: "tea", Kind: worksheet.Volume, Low: "0 L", Over: true},
		{Flag: "tea-rate", Kind: worksheet.Dose, Low: "0 L/m2", Over: true},
		{Flag: "mix-rate", Kind: worksheet.Dose, Low: "0 L/m2", Over: true},
		{Flag: "tea-per-plant", Kind: worksheet.Volume, Low: "0 L", Over: true},
		{Flag: "mix-per-plant", Kind: worksheet.Volume, Low: "0 L", Over: true},
	}, dilutionInputs(), []worksheet.Input{
		{Flag: "tank", Kind: worksheet.Volume, Required: true, Low: "0 L", Over: true},
		{Flag: "dead-volume", Kind: worksheet.Volume, Low: "0 L", Default: "0 L"},
		{Flag: "split", Kind: worksheet.Choice, Choices: []string{string(application.FullLoads), string(application.EqualLoads)}, Default: string(application.FullLoads)},
		{Flag: "speed", Kind: worksheet.Speed, Low: "0 km/h", Over: true},
		{Flag: "swath", Kind: worksheet.Length, Low: "0 m", Over: true},
		{Flag: "field-efficiency", Kind: worksheet.Bare, Low: "0.1", High: "1", Default: "0.65"},
	}),
	Example: `--area "250 m2" --tea-rate "187 L/ha" --ratio 1:10 --tank "15 L" --dead-volume "0.5 L"`,
	Sources: []source.Source{source.MixingArithmetic, source.CommonPractice},
	Shape:   loadsAnswer{},
	Run:     runLoads,
}

type loadsAnswer struct {
	Loads       []loadRow `json:"loads"`
	Count       int       `json:"load_count"`
	Full        int       `json:"full_loads"`
	Last        float64   `json:"last_load_mix_l"`
	TeaTotal    float64   `json:"tea_total_l"`
	WaterTotal  float64   `json:"water_total_l"`
	MixSprayed  float64   `json:"mix_sprayed_l"`
	MixPrepared float64   `json:"mix_prepared_l"`
	LeftOver    float64   `json:"left_over_l"`
	Area        *float64  `json:"area_m2"`
	Plants      *float64  `json:"plants"`
	TeaRate
	MixRate
	Words
	FieldHours *float64 `json:"field_hours"`
}

type loadRow struct {
	N      int      `json:"n"`
	Mix    float64  `json:"mix_l"`
	Tea    float64  `json:"tea_l"`
	Water  float64  `json:"water_l"`
	Ground *float64 `json:"covers_m2"`
	Plants *float64 `json:"covers_plants"`
	Part   bool     `json:"part_load"`
}

// wanted is what the loads are for: ground, plants, or the tea there is.
type wanted struct {
	byPlant  bool
	strength application.Strength[quantity.Dose]
	outing   application.Outing
	dilution dilution
}

func runLoads(f *worksheet.Form) (*worksheet.Result, error) {
	w, err := readWanted(f)
	if err != nil {
		return nil, refused(f, err)
	}
	shared, err := w.outing.Loads()
	if err != nil {
		return nil, refused(f, err)
	}
	answer := loadsFigures(w, shared)
	if err := fieldHours(f, w, &answer); err != nil {
		return nil, err
	}
	r := &worksheet.Result{Answer: loadsSentence(w, shared), Data: answer, Sources: f.Sheet.Sources}
	w.dilution.askTurned(r)
	if shared.SmallLast(w.outing.Tank) && w.outing.Split != application.EqualLoads {
		r.Caution("application.small-last", wording.Places{"last": shared.Last})
	}
	if !w.byPlant && w.strength.Tea > application.HighestTeaRate*(1+1e-9) {
		r.Caution("application.high-tea-rate", wording.Places{"rate": w.strength.Tea, "top": application.HighestTeaRate})
	}
	return r, nil
}

// readWanted reads what is to be covered and with what.
func readWanted(f *worksheet.Form) (wanted, error) {
	mode, err := f.OneOf("area", "plants", "tea")
	if err != nil {
		return wanted{}, err
	}
	d, err := readDilution(f)
	if err != nil {
		return wanted{}, err
	}
	tank := application.Tank{Holds: f.Volume("tank"), Dead: f.Volume("dead-volume")}
	w := wanted{dilution: d, outing: application.Outing{Tank: tank, Split: application.Split(f.Text("split"))}}
	if mode == "plants" {
		return w, w.forPlants(f)
	}
	return w, w.forGround(f, mode)
}

func (w *wanted) forPlants(f *worksheet.Form) error {
	if err := f.OnlyWith("--plants", nil, "tea-rate", "mix-rate", "speed", "swath", "field-efficiency"); err != nil {
		return err
	}
	strength, err := application.Settle(given[quantity.Volume](f, "tea-per-plant"), given[quantity.Volume](f, "mix-per-plant"), w.dilution.share, "tea-per-plant", "mix-per-plant")
	if err != nil {
		return err
	}
	w.byPlant = true
	w.outing.Covers, w.outing.Per, w.outing.Share = f.Number("plants"), strength.Mix, strength.Share
	return nil
}

func (w *wanted) forGround(f *worksheet.Form, mode string) error {
	if err := f.OnlyWith("--"+mode, nil, "tea-per-plant", "mix-per-plant"); err != nil {
		return err
	}
	var err error
	w.strength, err = application.Settle(given[quantity.Dose](f, "tea-rate"), given[quantity.Dose](f, "mix-rate"), w.dilution.share, "tea-rate", "mix-rate")
	if err != nil {
		return err
	}
	perSquareMetre := quantity.Litres(w.strength.Mix.LitresPerSquareMetre())
	w.outing.Covers, w.outing.Per, w.outing.Share = f.Area("area").SquareMetres(), perSquareMetre, w.strength.Share
	if mode == "tea" {
		w.outing, err = application.OutingFor(f.Volume("tea"), perSquareMetre, w.strength.Share, w.outing.Tank, w.outing.Split)
	}
	return err
}

func loadsFigures(w wanted, shared application.Loads) loadsAnswer {
	share := w.outing.Share
	answer := loadsAnswer{
		Count: len(shared.Each), Full: shared.Full, Last: shared.Last.Litres(),
		TeaTotal: shared.Prepared.Tea.Litres(), WaterTotal: shared.Prepared.Water.Litres(),
		MixSprayed: shared.Sprayed.Litres(), MixPrepared: shared.Prepared.Total.Litres(), LeftOver: shared.LeftOver.Litres(),
		Words: words(&share),
	}
	if w.byPlant {
		answer.Plants = &shared.Covers
	} else {
		answer.Area, answer.TeaRate, answer.MixRate = &shared.Covers, teaRate(&w.strength.Tea), mixRate(&w.strength.Mix)
	}
	for _, l := range shared.Each {
		row := loadRow{N: l.Number, Mix: l.Total.Litres(), Tea: l.Tea.Litres(), Water: l.Water.Litres(), Part: l.Part}
		if covers := l.Covers; w.byPlant {
			row.Plants = &covers
		} else {
			row.Ground = &covers
		}
		answer.Loads = append(answer.Loads, row)
	}
	return answer
}

func fieldHours(f *worksheet.Form, w wanted, answer *loadsAnswer) error {
	if err := f.Together("speed", "swath"); err != nil {
		return err
	}
	if !f.Has("speed") {
		if f.Has("field-efficiency") {
			return f.Refuse("speed", "worksheet.together", wording.Places{"missing": "--speed", "given": "--field-efficiency"})
		}
		return nil
	}
	time := application.FieldTime(quantity.SquareMetres(w.outing.Covers), f.Speed("speed"), f.Length("swath"), f.Number("field-efficiency"))
	answer.FieldHours = worksheet.Some(time.Hours())
	return nil
}

func loadsSentence(w wanted, shared application.Loads) wording.Text {
	key := "sheet.loads.answer"
	if shared.Full < len(shared.Each) && w.outing.Split != application.EqualLoads {
		key = "sheet.loads.answer.rest"
	}
	first, last := shared.Each[0], shared.Each[len(shared.Each)-1]
	return wording.Say(key, wording.Places{
		"n": len(shared.Each), "full": shared.Full, "tea": first.Tea, "water": first.Water, "size": first.Total,
		"lasttea": last.Tea, "lastwater": last.Water, "lastsize": last.Total, "mix": mixText(w.outing.Share),
	})
}
