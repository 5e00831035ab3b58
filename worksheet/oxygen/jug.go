package oxygen

import (
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/place"
)

var jugTest = worksheet.Sheet{
	Name:  "jug-test",
	Group: worksheet.Air,
	Inputs: withPlace(
		worksheet.Input{Flag: "jug", Kind: worksheet.Volume, Required: true, Low: "0.1 L", High: "100 L"},
		worksheet.Input{Flag: "filled", Kind: worksheet.Span, Required: true, Low: "0.5 s", High: "1 h"},
		worksheet.Input{Flag: "depth", Kind: worksheet.Length, Required: true, Low: "0 m", High: "10 m"},
		worksheet.Input{Flag: "temp", Kind: worksheet.Temperature, Default: "20 °C", Low: "0 °C", High: "40 °C"},
		worksheet.Input{Flag: "air-temp", Kind: worksheet.Temperature, Default: "20 °C", Low: "-20 °C", High: "50 °C"},
	),
	Example: `--jug "2 L" --filled "14 s" --depth "0.4 m" --temp 22C --altitude "640 m"`,
	Sources: jugSources,
	Shape:   jugAnswer{},
	Run:     runJugTest,
}

var jugSources = []source.Source{source.IdealGas, source.WMOMagnus, source.Kell1975, place.Source}

type jugAnswer struct {
	Airflow float64 `json:"airflow_l_per_min"`
	Caught  float64 `json:"caught_l_per_min"`
	place.Keys
}

// steadyHand is the time under which starting and stopping a watch spoils the
// reading (judged: half a second either way is 10 %).
const steadyHand = quantity.Span(10)

func runJugTest(f *worksheet.Form) (*worksheet.Result, error) {
	at, err := place.Read(f)
	if err != nil {
		return nil, err
	}
	jug := air.Jug{
		Volume: f.Volume("jug"), Filled: f.Span("filled"), Depth: f.Length("depth"),
		Water: f.Temperature("temp"), Air: f.Temperature("air-temp"), Site: at.Pressure,
	}
	free, err := jug.FreeAir()
	if err != nil {
		return nil, err
	}
	r := &worksheet.Result{
		Answer: wording.Say("sheet.jug-test.answer", wording.Places{"air": quantity.Airflow(free)}),
		Data:   jugAnswer{Airflow: float64(free), Caught: float64(jug.Caught()), Keys: at.Keys()},
		Basis:  worksheet.Measured, Sources: jugSources,
	}
	if jug.Filled < steadyHand {
		r.Caution("air.jug-quick", wording.Places{"time": jug.Filled})
	}
	r.Caution("air.jug-dated")
	r.Caution("air.electricity")
	at.Tell(r)
	return r, nil
}
