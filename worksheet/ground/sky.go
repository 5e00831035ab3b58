package ground

import (
	"aerosteep/quantity"
	"aerosteep/science/weather"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var wetBulb = worksheet.Sheet{
	Name:  "wet-bulb",
	Group: worksheet.Weather,
	Inputs: []worksheet.Input{
		{Flag: "air-temp", Kind: worksheet.Temperature, Required: true, Low: "-20 C", High: "60 C"},
		{Flag: "humidity", Kind: worksheet.Bare, Low: "1", High: "100"},
		{Flag: "dew-point", Kind: worksheet.Temperature, Low: "-100 C"},
		{Flag: "wet-bulb", Kind: worksheet.Temperature, Low: "-100 C"},
		{Flag: "altitude", Kind: worksheet.Altitude, Default: "0 m", Low: "-500 m", High: "5000 m"},
		{Flag: "pressure", Kind: worksheet.AirPressure, Low: "500 hPa", High: "1100 hPa"},
	},
	Example: `--air-temp 30C --humidity 40 --altitude "640 m"`,
	Sources: []source.Source{source.HylandWexler1983, source.ASHRAE2017, source.DeltaT},
	Shape:   wetBulbAnswer{},
	Run:     runWetBulb,
}

type wetBulbAnswer struct {
	WetBulb    float64 `json:"wet_bulb_c"`
	Depression float64 `json:"depression_c"`
	Rating     string  `json:"rating"`
	Humidity   float64 `json:"humidity_percent"`
	DewPoint   float64 `json:"dew_point_c"`
	Vapour     float64 `json:"vapour_pressure_kpa"`
	Ratio      float64 `json:"humidity_ratio_kg_per_kg"`
	Pressure   float64 `json:"pressure_kpa"`
}

func runWetBulb(f *worksheet.Form) (*worksheet.Result, error) {
	r := &worksheet.Result{Basis: worksheet.Standard, Sources: f.Sheet.Sources}
	pressure := weather.StandardPressure(f.Length("altitude"))
	if f.Has("pressure") {
		if err := f.OnlyWith("--pressure", nil, "altitude"); err != nil {
			return nil, err
		}
		pressure = f.Pressure("pressure")
		r.Caution("sheet.wet-bulb.station")
	}
	air, err := moistAir(f, pressure)
	if err != nil {
		return nil, err
	}
	wet := air.WetBulb()
	if f.Has("wet-bulb") {
		wet = f.Temperature("wet-bulb")
	}
	depression := quantity.TemperatureStep(air.Temperature - wet)
	rating := weather.Rate(depression)
	r.Data = wetBulbAnswer{
		wet.Celsius(), depression.Celsius(), string(rating), air.Humidity(), air.DewPoint().Celsius(),
		air.Vapour.Kilopascals(), air.HumidityRatio(), pressure.Kilopascals(),
	}
	r.Answer = wording.Say("sheet.wet-bulb."+string(rating), wording.Places{"wet": wet, "depression": depression})
	return r, nil
}

// moistAir reads the air by whichever measure of its moisture was given.
func moistAir(f *worksheet.Form, p quantity.Pressure) (weather.MoistAir, error) {
	how, err := f.OneOf("humidity", "dew-point", "wet-bulb")
	if err != nil {
		return weather.MoistAir{}, err
	}
	t := f.Temperature("air-temp")
	if how == "humidity" {
		return weather.WithHumidity(t, f.Number("humidity"), p), nil
	}
	given := f.Temperature(how)
	if given > t+slack*100 {
		wrong := f.Refuse(how, "sheet.wet-bulb.above", wording.Places{"air": t})
		wrong.Allowed = wording.Say("ground.at-most", wording.Places{"limit": t})
		return weather.MoistAir{}, wrong
	}
	given = min(given, t)
	if how == "dew-point" {
		return weather.WithDewPoint(t, given, p), nil
	}
	air, ok := weather.WithWetBulb(t, given, p)
	if !ok {
		return air, f.Advise("wet-bulb", "sheet.wet-bulb.too-dry", "sheet.wet-bulb.too-dry.advice")
	}
	return air, nil
}
