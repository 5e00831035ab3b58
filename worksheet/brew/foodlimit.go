package brew

import (
	"aerosteep/fault"
	"aerosteep/job/forecast"
	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/place"
)

var foodLimit = worksheet.Sheet{
	Name:  "food-limit",
	Group: worksheet.Brew,
	Inputs: append([]worksheet.Input{
		{Flag: "volume", Kind: worksheet.Volume, Required: true, Low: "0.5 L", High: "50000 L"},
		{Flag: "kla20", Kind: worksheet.PerTime, Required: true, Low: "0.01 /h", High: "500 /h"},
		{Flag: "kla20-low", Kind: worksheet.PerTime, Low: "0.01 /h", High: "500 /h"},
		{Flag: "kla20-high", Kind: worksheet.PerTime, Low: "0.01 /h", High: "500 /h"},
		{Flag: "temp", Kind: worksheet.Temperature, Required: true, Low: "0 °C", High: "40 °C"},
		{Flag: "food", Kind: worksheet.Text, Required: true},
		{Flag: "limit", Kind: worksheet.Oxygen, Low: "0.1 mg/L", High: "20 mg/L"},
		{Flag: "chance", Kind: worksheet.Bare, Default: "5", Low: "0.1", High: "99"},
		{Flag: "hours", Kind: worksheet.Bare, Default: "24", Low: "18", High: "72"},
		{Flag: "compost", Kind: worksheet.Concentration, Default: "15 g/L", Low: "0 g/L", High: "60 g/L"},
	}, place.Inputs()...),
	Example: `--volume "150 L" --kla20 "14 /h" --temp 20C --food molasses --altitude "640 m"`,
	Sources: foodLimitSources,
	Shape:   foodLimitAnswer{},
	Run:     runFoodLimit,
}

var foodLimitSources = append(forecast.Sources(), place.Source)

// dosePlot draws the chance against the dose.
func dosePlot(found *forecast.FoodAnswer, accepted float64) *worksheet.Plot {
	line := worksheet.Series{Label: wording.Say("sheet.food-limit.plot.chance"), Kind: "line"}
	for _, d := range found.Curve {
		line.X, line.Y = append(line.X, d.Percent), append(line.Y, d.Chance)
	}
	return &worksheet.Plot{
		Title:  wording.Say("sheet.food-limit.plot", wording.Places{"percent": found.Percent, "accepted": accepted}),
		X:      worksheet.Axis{Label: wording.Say("sheet.food-limit.plot.dose"), Unit: "% w/v"},
		Y:      worksheet.Axis{Label: wording.Say("sheet.food-limit.plot.chance"), Unit: "/100"},
		Series: []worksheet.Series{line},
		Marks:  []worksheet.Mark{{X: found.Percent, Y: found.Chance, Label: wording.Say("sheet.food-limit.plot.most")}},
	}
}

type foodLimitAnswer struct {
	Grams       float64          `json:"max_food_g"`
	Millilitres *float64         `json:"max_food_ml"`
	Household   *wording.Text    `json:"household"`
	Percent     float64          `json:"percent_w_v"`
	Regrowth    recipe.Regrowth  `json:"regrowth"`
	Chance      float64          `json:"chance_at_max"`
	PeakUptake  forecast.Range   `json:"peak_our_mg_per_l_h"`
	MinDO       forecast.Band    `json:"min_do_mg_per_l"`
	MinHour     forecast.Range   `json:"hour_of_minimum"`
	Curve       []dose           `json:"curve"`
	Binding     forecast.Binding `json:"binding"`
	Limit       float64          `json:"limit_mg_per_l"`
	Saturation  float64          `json:"saturation_mg_per_l"`
	place.Keys
}

type dose struct {
	Percent float64 `json:"percent_w_v"`
	Chance  float64 `json:"chance_below_limit"`
}

func runFoodLimit(f *worksheet.Form) (*worksheet.Result, error) {
	food, err := aFood(f.Text("food"))
	if err != nil {
		return nil, err
	}
	at, err := place.Read(f)
	if err != nil {
		return nil, err
	}
	setup, err := vesselOf(f, at)
	if err != nil {
		return nil, err
	}
	found, err := forecast.FoodLimit(forecast.FoodQuestion{Setup: setup, Food: food, Chance: f.Number("chance")})
	if err != nil {
		return nil, err
	}
	r := &worksheet.Result{Basis: worksheet.Physics, Sources: foodLimitSources, Plot: dosePlot(found, f.Number("chance"))}
	answer := answerOf(found, food, setup, at)
	r.Data, r.Answer = answer, sentence(found, answer, food, f)
	cautions(r, found, answer, f)
	at.Tell(r)
	return r, nil
}

// aFood is an ingredient of the library that is fed, not steeped.
func aFood(name string) (recipe.Ingredient, error) {
	food, err := recipe.Library().Find(name)
	if err != nil {
		for _, wrong := range fault.Of(err) {
			wrong.Field = "food"
			return food, wrong
		}
		return food, err
	}
	if food.Compost {
		return food, fault.New("food", name, wording.Say("sheet.food-limit.compost", wording.Places{"name": food.Name}), wording.Say("sheet.food-limit.foods"), wording.Say("sheet.food-limit.compost.advice"))
	}
	return food, nil
}

// vesselOf is the brew that the form describes.
func vesselOf(f *worksheet.Form, at place.Place) (forecast.Setup, error) {
	k := f.PerTime("kla20")
	t := forecast.Transfer{Estimate: k, Low95: 0.7 * k, High95: 1.3 * k}
	if err := f.Together("kla20-low", "kla20-high"); err != nil {
		return forecast.Setup{}, err
	}
	if f.Has("kla20-low") {
		t.Low95, t.High95 = f.PerTime("kla20-low"), f.PerTime("kla20-high")
		if !(t.Low95 <= k && k <= t.High95 && t.Low95 < t.High95) {
			return forecast.Setup{}, f.Refuse("kla20-low", "sheet.food-limit.range-order")
		}
	}
	s := forecast.Setup{
		Volume: f.Volume("volume"), Depth: forecast.UsualDepth(f.Volume("volume")), Pressure: at.Pressure, Transfer: t, Start: f.Temperature("temp"),
		Compost: []forecast.Compost{{Kind: "compost", GramsPerLitre: f.Concentration("compost").GramsPerLitre()}},
		Planned: quantity.Hours(f.Number("hours")),
	}
	s.Limit = forecast.DefaultLimit(&s)
	if f.Has("limit") {
		s.Limit = f.Concentration("limit")
	}
	return s, nil
}

func answerOf(found *forecast.FoodAnswer, food recipe.Ingredient, s forecast.Setup, at place.Place) foodLimitAnswer {
	a := foodLimitAnswer{
		Grams: 10 * found.Percent * s.Volume.Litres(), Percent: found.Percent,
		Regrowth: recipe.DoseRegrowth(food.Name, found.Percent), Chance: found.Chance,
		PeakUptake: found.PeakUptake, MinDO: found.MinDO, MinHour: found.MinHour, Binding: found.Binding,
		Limit: s.Limit.MilligramsPerLitre(), Saturation: found.Saturation, Keys: at.Keys(),
	}
	if found.Percent == 0 {
		a.Regrowth = recipe.NoneSeen
	}
	for _, d := range found.Curve {
		a.Curve = append(a.Curve, dose{d.Percent, d.Chance})
	}
	if food.Bulk > 0 {
		volume := food.Bulk.VolumeOf(quantity.Grams(a.Grams))
		a.Millilitres = worksheet.Some(volume.Millilitres())
		if volume > 0 {
			a.Household = worksheet.Some(wording.Say("sheet.food-limit.household", wording.Places{"measure": household(volume)}))
		}
	}
	return a
}

// household is a volume as the reader's kitchen measures it.
type household quantity.Volume

// Speak says it in the reader's measures; less than the smallest is said so.
func (h household) Speak(r wording.Reader) string {
	if text := recipe.Household(quantity.Volume(h), r.Units).Text; text != "" {
		return text
	}
	return wording.Say("sheet.food-limit.too-little").For(r)
}

func sentence(found *forecast.FoodAnswer, a foodLimitAnswer, food recipe.Ingredient, f *worksheet.Form) wording.Text {
	return wording.Say("sheet.food-limit.answer."+string(found.Binding), wording.Places{
		"mass": quantity.Grams(a.Grams), "food": food.Name, "percent": a.Percent, "chance": wording.InHundred(found.Chance),
		"limit": quantity.MilligramsPerLitre(a.Limit), "held": quantity.MilligramsPerLitre(found.Saturation), "accepted": f.Number("chance"),
	})
}

func cautions(r *worksheet.Result, found *forecast.FoodAnswer, a foodLimitAnswer, f *worksheet.Form) {
	r.Caution("sheet.food-limit.caution.model")
	if a.Regrowth != recipe.NoneSeen {
		r.Caution("sheet.food-limit.caution.regrowth")
	}
	if !f.Has("kla20-low") {
		r.Caution("sheet.food-limit.caution.range")
	}
	if f.Temperature("temp") > 30 {
		r.Caution("sheet.food-limit.caution.warm")
	}
}
