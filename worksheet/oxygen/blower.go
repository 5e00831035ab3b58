package oxygen

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var blowerPower = worksheet.Sheet{
	Name:  "blower-power",
	Group: worksheet.Air,
	Inputs: []worksheet.Input{
		{Flag: "airflow", Kind: worksheet.Airflow, Required: true, Low: "0.01 L/min", High: "50000 L/min"},
		{Flag: "efficiency", Kind: worksheet.Fraction, Required: true, Low: "0.01", High: "1"},
		{Flag: "pressure-rise", Kind: worksheet.Pressure, Low: "0.01 kPa", High: "200 kPa"},
		{Flag: "outlet-pressure", Kind: worksheet.Pressure},
		{Flag: "inlet-pressure", Kind: worksheet.AirPressure, Low: "50 kPa", High: "112 kPa"},
		{Flag: "altitude", Kind: worksheet.Altitude, Low: "-500 m", High: "5000 m"},
		{Flag: "inlet-temp", Kind: worksheet.Temperature, Default: "20 °C", Low: "-30 °C", High: "60 °C"},
		{Flag: "hours", Kind: worksheet.Bare, Low: "0.01", High: "10000"},
	},
	Example: `--airflow "60 L/min" --pressure-rise "12 kPa" --efficiency 0.30 --hours 24`,
	Sources: blowerSources,
	Shape:   blowerAnswer{},
	Run:     runBlowerPower,
}

var blowerSources = []source.Source{source.AdiabaticCompression, source.ASHRAEAtmosphere}

type blowerAnswer struct {
	Power      float64  `json:"power_w"`
	IdealPower float64  `json:"ideal_power_w"`
	Ratio      float64  `json:"pressure_ratio"`
	OutletTemp float64  `json:"ideal_outlet_temp_c"`
	Energy     *float64 `json:"energy_kwh"`
	Inlet      float64  `json:"inlet_pressure_kpa"`
}

func runBlowerPower(f *worksheet.Form) (*worksheet.Result, error) {
	way, err := f.OneOf("pressure-rise", "outlet-pressure")
	if err != nil {
		return nil, err
	}
	inlet, err := inletPressure(f)
	if err != nil {
		return nil, err
	}
	c := air.Compression{Airflow: f.Flow("airflow"), Inlet: inlet, Outlet: f.Pressure("outlet-pressure"), InletTemp: f.Temperature("inlet-temp"), Efficiency: f.Number("efficiency")}
	if way == "pressure-rise" {
		c.Outlet = inlet + f.Pressure("pressure-rise")
	}
	if err := c.Check(); err != nil {
		for _, wrong := range fault.Of(err) {
			if wrong.Field == "outlet-pressure" {
				wrong.Field, wrong.Given = way, f.Text(way)
			}
		}
		return nil, err
	}
	answer := blowerAnswer{
		Power: float64(c.Power()), IdealPower: float64(c.IdealPower()), Ratio: c.Ratio(),
		OutletTemp: c.IdealOutletTemperature().Celsius(), Inlet: float64(inlet),
	}
	if f.Has("hours") {
		answer.Energy = worksheet.Some(c.Energy(quantity.Hours(f.Number("hours"))).KilowattHours())
	}
	r := &worksheet.Result{
		Answer: wording.Say("sheet.blower-power.answer", wording.Places{"power": c.Power(), "air": quantity.Airflow(c.Airflow)}),
		Data:   answer, Basis: worksheet.Physics, Sources: blowerSources,
	}
	r.Caution("air.heat", wording.Places{"temp": c.IdealOutletTemperature()})
	r.Caution("air.electricity")
	return r, nil
}

// inletPressure is typed, or follows from the altitude, or is that of the sea.
func inletPressure(f *worksheet.Form) (quantity.Pressure, error) {
	switch given := f.Given("inlet-pressure", "altitude"); {
	case len(given) == 2:
		return 0, f.Refuse("altitude", "worksheet.one-only", wording.Places{"flags": "--inlet-pressure, --altitude"})
	case f.Has("inlet-pressure"):
		return f.Pressure("inlet-pressure"), nil
	case f.Has("altitude"):
		return air.PressureAt(f.Length("altitude"))
	}
	return quantity.StandardAtmosphere, nil
}
