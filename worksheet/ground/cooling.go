package ground

import (
	"aerosteep/quantity"
	"aerosteep/science/heat"
	"aerosteep/science/weather"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var cooling = worksheet.Sheet{
	Name:  "cooling",
	Group: worksheet.Water,
	Inputs: []worksheet.Input{
		{Flag: "volume", Kind: worksheet.Volume, Required: true, Low: "0 L", High: "1000 m3", Over: true},
		{Flag: "start-temp", Kind: worksheet.Temperature, Required: true, Low: "0 C", High: "100 C"},
		{Flag: "air-temp", Kind: worksheet.Temperature, Required: true, Low: "-40 C", High: "60 C"},
		{Flag: "hours", Kind: worksheet.Bare, Low: "0", High: "720"},
		{Flag: "target", Kind: worksheet.Temperature, Low: "0 C", High: "100 C"},
		{Flag: "ua", Kind: worksheet.HeatLoss, Low: "0 W/K"},
		{Flag: "later-temp", Kind: worksheet.Temperature},
		over0("after", worksheet.LongSpan, "0 s"),
		{Flag: "airflow", Kind: worksheet.Airflow, Low: "0 L/min"},
		{Flag: "open-area", Kind: worksheet.Area, Low: "0 m2"},
		{Flag: "wind", Kind: worksheet.Speed, Default: "0.1 m/s", Low: "0 m/s"},
		{Flag: "humidity", Kind: worksheet.Bare, Low: "0", High: "100"},
		{Flag: "altitude", Kind: worksheet.Altitude, Default: "0 m", Low: "-500 m", High: "5000 m"},
		{Flag: "pump-heat", Kind: worksheet.Power, Default: "0 W", Low: "0 W"},
		{Flag: "heater", Kind: worksheet.Power, Default: "0 W", Low: "0 W"},
		{Flag: "our", Kind: worksheet.Uptake, Default: "0 mg/L/h", Low: "0 mg/L/h"},
	},
	Example: `--volume "20 L" --start-temp 22C --air-temp 15C --hours 6 --ua "2 W/K" --pump-heat "5 W" --target 20C`,
	Sources: []source.Source{source.LumpedBalance, source.HylandWexler1983, source.ASHRAESurface, source.CommonPractice},
	Shape:   coolingAnswer{},
	Run:     runCooling,
}

type coolingAnswer struct {
	Temperature  *float64 `json:"temperature_c"`
	EvaporationL *float64 `json:"evaporation_l"`
	SettlesAt    *float64 `json:"settles_at_c"`
	TimeConstant *float64 `json:"time_constant_h"`
	UA           float64  `json:"ua_w_per_k"`
	UAFrom       string   `json:"ua_from"`
	ToTarget     *float64 `json:"hours_to_target"`
	ToFreezing   *float64 `json:"hours_to_freezing"`
	HeatW        heatW    `json:"heat_w"`
}

type heatW struct {
	Walls   float64 `json:"walls"`
	Bubbles float64 `json:"bubbles"`
	Surface float64 `json:"surface"`
	Pump    float64 `json:"pump"`
	Heater  float64 `json:"heater"`
	Life    float64 `json:"life"`
}

// longest is how far ahead the sheet looks for a target, hours.
const longest = 720

func runCooling(f *worksheet.Form) (*worksheet.Result, error) {
	if !f.Has("hours") && !f.Has("target") {
		_, err := f.OneOf("hours", "target")
		return nil, err
	}
	v, from, err := vesselInAir(f)
	if err != nil {
		return nil, err
	}
	start := f.Temperature("start-temp")
	terms := v.Terms(start)
	a := coolingAnswer{UA: v.Walls.WattsPerKelvin(), UAFrom: from, HeatW: heatW(terms)}
	if settles, ok := v.Settles(start); ok {
		a.SettlesAt = new(settles.Celsius())
	}
	if tau, ok := v.TimeConstant(); ok {
		a.TimeConstant = new(tau.Hours())
	}
	r := &worksheet.Result{Basis: worksheet.Physics, Sources: coolingSources(f)}
	if from == "typical" {
		r.Basis = worksheet.Habit
		r.Caution("sheet.cooling.typical")
	}
	if err := followCooling(f, v, start, &a, r); err != nil {
		return nil, err
	}
	r.Data = a
	return r, nil
}

func coolingSources(f *worksheet.Form) []source.Source {
	s := []source.Source{source.LumpedBalance}
	if f.Has("airflow") || f.Has("open-area") {
		s = append(s, source.HylandWexler1983)
	}
	if f.Has("open-area") {
		s = append(s, source.ASHRAESurface)
	}
	return s
}

// vesselInAir reads what acts on the water, and says where the heat loss is
// from.
func vesselInAir(f *worksheet.Form) (v heat.Vessel, from string, err error) {
	if err := evaporates(f); err != nil {
		return v, "", err
	}
	air := f.Temperature("air-temp")
	v = heat.Vessel{
		Volume: f.Volume("volume"),
		Air:    weather.WithHumidity(air, f.Number("humidity"), weather.StandardPressure(f.Length("altitude"))),
		Pump:   f.Power("pump-heat"), Heater: f.Power("heater"), Activity: f.Uptake("our"),
		Bubbles: f.Flow("airflow"), Surface: f.Area("open-area"), Wind: f.Speed("wind"),
	}
	v.Walls, from, err = walls(f)
	return v, from, err
}

// evaporates checks the inputs of the two terms that take vapour away.
func evaporates(f *worksheet.Form) error {
	wet := f.Given("airflow", "open-area")
	if len(wet) == 0 {
		return f.OnlyWith(without("airflow, --open-area"), nil, "humidity", "wind")
	}
	if !f.Has("open-area") {
		if err := f.OnlyWith(without("open-area"), nil, "wind"); err != nil {
			return err
		}
	}
	if err := needs(f, "humidity"); err != nil {
		return err
	}
	return upTo(f, "start-temp", 60, quantity.Celsius(60))
}

func walls(f *worksheet.Form) (quantity.HeatLoss, string, error) {
	if err := f.Together("later-temp", "after"); err != nil {
		return 0, "", err
	}
	switch {
	case f.Has("ua") && f.Has("later-temp"):
		_, err := f.OneOf("ua", "later-temp")
		return 0, "", err
	case f.Has("ua"):
		return f.HeatLoss("ua"), "given", nil
	case !f.Has("later-temp"):
		return heat.TypicalWalls(f.Volume("volume")), "typical", nil
	}
	start, later, air := f.Temperature("start-temp"), f.Temperature("later-temp"), f.Temperature("air-temp")
	if !(start > later && later > air || start < later && later < air) {
		return 0, "", f.Advise("later-temp", "sheet.cooling.later", "sheet.cooling.later.advice", wording.Places{"start": start, "air": air})
	}
	ua := heat.MeasuredWalls(f.Volume("volume"), start, later, air, f.Span("after"))
	return ua, "measured", finite(f, "later-temp", ua.WattsPerKelvin())
}

// followCooling follows the water over the hours asked for, and on to the
// target and to freezing.
func followCooling(f *worksheet.Form, v heat.Vessel, start quantity.Temperature, a *coolingAnswer, r *worksheet.Result) error {
	hours := f.Number("hours")
	course := v.Follow(start, longest)
	if f.Has("hours") && v.Follow(start, hours).Boils() {
		return f.Advise("hours", "sheet.cooling.boils", "sheet.cooling.boils.advice")
	}
	if frozen, ok := course.Freezes(); ok {
		a.ToFreezing = new(frozen.Hours())
		if !f.Has("hours") || frozen.Hours() <= hours {
			r.Caution("sheet.cooling.freezes", wording.Places{"after": frozen})
		}
	}
	if f.Has("target") {
		target := f.Temperature("target")
		r.Answer = wording.Say("sheet.cooling.never", wording.Places{"target": target})
		if at, ok := course.Reach(target); ok {
			a.ToTarget = new(at.Hours())
			r.Answer = wording.Say("sheet.cooling.target", wording.Places{"target": target, "after": at})
		}
	}
	if f.Has("hours") {
		t, gone := course.At(hours)
		a.Temperature, a.EvaporationL = new(t.Celsius()), new(gone.Litres())
		said := wording.Say("sheet.cooling.answer", wording.Places{"temperature": t, "after": quantity.Hours(hours), "start": start})
		if f.Has("target") {
			r.Notes = append(r.Notes, r.Answer)
		}
		r.Answer = said
		if gone > 0.01*f.Volume("volume") {
			r.Caution("sheet.cooling.top-up", wording.Places{"gone": gone})
		}
	}
	if f.Has("heater") {
		r.Caution("sheet.cooling.heater")
	}
	return nil
}
