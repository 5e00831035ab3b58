package application

import (
	money "aerosteep/job/cost"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var cost = worksheet.Sheet{
	Name: "cost", Group: worksheet.Application,
	Inputs: []worksheet.Input{
		{Flag: "volume", Kind: worksheet.Volume, Required: true, Low: "0 L", Over: true},
		{Flag: "item", Kind: worksheet.Text, Repeat: true},
		{Flag: "power", Kind: worksheet.Power, Low: "0 W", Over: true},
		{Flag: "air-time", Kind: worksheet.LongSpan, Low: "0 h", Over: true},
		{Flag: "kwh-price", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "labour", Kind: worksheet.LongSpan, Low: "0 h", Over: true},
		{Flag: "wage", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "equipment-price", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "salvage", Kind: worksheet.Bare, Low: "0", Default: "0"},
		{Flag: "years", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "batches-per-year", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "interest-percent", Kind: worksheet.Bare, Low: "0", High: "100", Default: "0"},
		{Flag: "reject-percent", Kind: worksheet.Bare, Low: "0", High: "100", Under: true, Default: "0"},
		{Flag: "tea-rate", Kind: worksheet.Dose, Low: "0 L/m2", Over: true},
		{Flag: "visit-tea", Kind: worksheet.Volume, Low: "0 L", Over: true},
		{Flag: "visit-time", Kind: worksheet.LongSpan, Low: "0 h", Over: true},
		{Flag: "travel", Kind: worksheet.Bare, Low: "0"},
		{Flag: "overhead", Kind: worksheet.Bare, Low: "0"},
		{Flag: "margin-percent", Kind: worksheet.Bare, Low: "0", High: "100", Under: true},
	},
	Example: `--volume "200 L" --item "compost: 10" --power "60 W" --air-time "36 h" --kwh-price 0.30 --labour "1.5 h" --wage 24 --tea-rate "150 L/ha"`,
	Sources: []source.Source{source.IowaA329},
	Shape:   costAnswer{},
	Run:     runCost,
}

type costAnswer struct {
	Parts      []costRow `json:"parts"`
	Batch      float64   `json:"batch_cost"`
	Energy     *float64  `json:"electricity_kwh"`
	PerYear    *float64  `json:"equipment_per_year"`
	PerBatch   *float64  `json:"equipment_per_batch"`
	Litre      float64   `json:"cost_per_l"`
	Gallon     float64   `json:"cost_per_gal"`
	Thousand   float64   `json:"cost_per_1000_l"`
	Hectare    *float64  `json:"cost_per_ha"`
	Acre       *float64  `json:"cost_per_ac"`
	Lawn       *float64  `json:"cost_per_1000_sq_ft"`
	VisitTea   *float64  `json:"visit_tea_cost"`
	Visit      *float64  `json:"cost_per_visit"`
	VisitPrice *float64  `json:"price_per_visit"`
}

type costRow struct {
	Name string  `json:"name"`
	Cost float64 `json:"cost"`
}

func runCost(f *worksheet.Form) (*worksheet.Result, error) {
	if err := costGroups(f); err != nil {
		return nil, err
	}
	answer := costAnswer{}
	if err := readItems(f, &answer); err != nil {
		return nil, err
	}
	readRunning(f, &answer)
	if err := readEquipment(f, &answer); err != nil {
		return nil, refused(f, err)
	}
	if len(answer.Parts) == 0 {
		return nil, f.Advise("item", "cost.none", "cost.none.advice")
	}
	for _, part := range answer.Parts {
		answer.Batch += part.Cost
	}
	spreadCost(f, &answer)
	readVisit(f, &answer)
	return &worksheet.Result{Answer: costSentence(answer), Data: answer, Sources: f.Sheet.Sources}, nil
}

// costGroups refuses half a group, naming the flag that is missing.
func costGroups(f *worksheet.Form) error {
	if err := f.Together("power", "air-time", "kwh-price"); err != nil {
		return err
	}
	if err := f.Together("equipment-price", "years", "batches-per-year"); err != nil {
		return err
	}
	for _, pair := range [][2]string{
		{"labour", "wage"}, {"visit-time", "wage"}, {"salvage", "equipment-price"}, {"interest-percent", "equipment-price"},
		{"visit-time", "visit-tea"}, {"travel", "visit-tea"}, {"overhead", "visit-tea"}, {"margin-percent", "visit-tea"},
	} {
		if f.Has(pair[0]) && !f.Has(pair[1]) {
			return f.Refuse(pair[1], "worksheet.together", wording.Places{"missing": "--" + pair[1], "given": "--" + pair[0]})
		}
	}
	if f.Has("wage") && len(f.Given("labour", "visit-time")) == 0 {
		return f.Refuse("labour", "worksheet.together", wording.Places{"missing": "--labour", "given": "--wage"})
	}
	return nil
}

func readItems(f *worksheet.Form, answer *costAnswer) error {
	for _, text := range f.Texts("item") {
		item, err := money.ParseItem(text)
		if err != nil {
			return err
		}
		answer.Parts = append(answer.Parts, costRow{item.Name, *item.Cost})
	}
	return nil
}

func readRunning(f *worksheet.Form, answer *costAnswer) {
	if f.Has("power") {
		energy := money.Electricity(f.Power("power"), f.Span("air-time"))
		answer.Energy = worksheet.Some(energy.KilowattHours())
		answer.Parts = append(answer.Parts, costRow{"electricity", energy.KilowattHours() * f.Number("kwh-price")})
	}
	if f.Has("labour") {
		answer.Parts = append(answer.Parts, costRow{"labour", f.Span("labour").Hours() * f.Number("wage")})
	}
}

func readEquipment(f *worksheet.Form, answer *costAnswer) error {
	if !f.Has("equipment-price") {
		return nil
	}
	equipment := money.Equipment{
		Price: f.Number("equipment-price"), Salvage: f.Number("salvage"), Years: f.Number("years"),
		BatchesPerYear: f.Number("batches-per-year"), Interest: f.Number("interest-percent") / 100,
	}
	perYear, err := equipment.PerYear()
	if err != nil {
		return err
	}
	perBatch := perYear / equipment.BatchesPerYear
	answer.PerYear, answer.PerBatch = &perYear, &perBatch
	answer.Parts = append(answer.Parts, costRow{"equipment", perBatch})
	return nil
}

// spreadCost shares a batch's cost out over volume and ground.
func spreadCost(f *worksheet.Form, answer *costAnswer) {
	answer.Litre = money.PerLitre(answer.Batch, f.Volume("volume"), f.Number("reject-percent")/100)
	answer.Gallon = answer.Litre * quantity.USGallons(1).Litres()
	answer.Thousand = answer.Litre * 1000
	if !f.Has("tea-rate") {
		return
	}
	perSquareMetre := answer.Litre * f.Dose("tea-rate").LitresPerSquareMetre()
	on := func(ground quantity.Area) *float64 { return worksheet.Some(perSquareMetre * ground.SquareMetres()) }
	answer.Hectare, answer.Acre, answer.Lawn = on(quantity.SquareMetres(1e4)), on(quantity.Acres(1)), on(quantity.SquareFeet(1000))
}

func readVisit(f *worksheet.Form, answer *costAnswer) {
	if !f.Has("visit-tea") {
		return
	}
	visit := money.Visit{
		Tea: f.Volume("visit-tea"), Time: f.Span("visit-time"), Wage: f.Number("wage"),
		Travel: f.Number("travel"), Overhead: f.Number("overhead"), Margin: f.Number("margin-percent") / 100,
	}
	tea, total, price := visit.Cost(answer.Litre)
	answer.VisitTea, answer.Visit, answer.VisitPrice = &tea, &total, &price
}

func costSentence(answer costAnswer) wording.Text {
	places := wording.Places{"batch": coins(answer.Batch), "litre": coins(answer.Litre), "gallon": coins(answer.Gallon)}
	if answer.Visit != nil {
		places["visit"], places["price"] = coins(*answer.Visit), coins(*answer.VisitPrice)
		return wording.Say("sheet.cost.visit", places)
	}
	if answer.Hectare != nil {
		places["hectare"], places["acre"] = coins(*answer.Hectare), coins(*answer.Acre)
		return wording.Say("sheet.cost.ground", places)
	}
	return wording.Say("sheet.cost.answer", places)
}

// coins is money as prices are written: two decimals, more where a whole is
// not reached.
type coins float64

// Speak prints it in the reader's decimal mark.
func (c coins) Speak(r wording.Reader) string {
	if c >= 1 {
		return wording.Fixed(float64(c), 2, r)
	}
	return wording.Number(float64(c), 3, r)
}
