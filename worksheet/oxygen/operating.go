package oxygen

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/place"
)

var operatingPoint = worksheet.Sheet{
	Name:  "operating-point",
	Group: worksheet.Air,
	Inputs: withPlace(
		worksheet.Input{Flag: "pump", Kind: worksheet.Text, Required: true},
		worksheet.Input{Flag: "depth", Kind: worksheet.Length, Required: true, Low: "0.01 m", High: "10 m"},
		worksheet.Input{Flag: "tube-bore", Kind: worksheet.SmallLength, Required: true, Low: "1 mm", High: "200 mm"},
		worksheet.Input{Flag: "tube-length", Kind: worksheet.Length, Required: true, Low: "0 m", High: "200 m"},
		worksheet.Input{Flag: "lines", Kind: worksheet.Whole, Default: "1", Low: "1", High: "100"},
		worksheet.Input{Flag: "diffuser-loss", Kind: worksheet.Pressure, Default: "0 kPa", Low: "0 kPa", High: "400 kPa"},
		worksheet.Input{Flag: "fittings", Kind: worksheet.Whole, Default: "0", Low: "0", High: "100"},
		worksheet.Input{Flag: "extra-k", Kind: worksheet.Bare, Default: "0", Low: "0", High: "1000"},
		worksheet.Input{Flag: "temp", Kind: worksheet.Temperature, Default: "20 °C", Low: "0 °C", High: "40 °C"},
		worksheet.Input{Flag: "air-temp", Kind: worksheet.Temperature, Default: "20 °C", Low: "-20 °C", High: "50 °C"},
	),
	Example: `--pump "60 L/min@0 kPa, 45 L/min@10 kPa, 25 L/min@20 kPa, 0 L/min@28 kPa" --depth "0.6 m" --tube-bore "9.5 mm" --tube-length "4 m" --diffuser-loss "2.4 kPa" --fittings 2 --extra-k 1 --temp 22C --altitude "640 m"`,
	Sources: operatingSources,
	Shape:   operatingAnswer{},
	Run:     runOperatingPoint,
}

var operatingSources = []source.Source{source.DarcyWeisbach, source.StandardAtmosphere1976, source.Kell1975, source.AdiabaticCompression, place.Source}

type operatingAnswer struct {
	Airflow      float64 `json:"airflow_l_per_min"`
	Pressure     float64 `json:"pressure_kpa"`
	Static       float64 `json:"static_kpa"`
	TubeLoss     float64 `json:"tube_loss_kpa"`
	DiffuserLoss float64 `json:"diffuser_loss_kpa"`
	AirPower     float64 `json:"air_power_w"`
	Verdict      string  `json:"verdict"`
	Site         float64 `json:"site_pressure_kpa"`
	SiteFrom     string  `json:"pressure_from"`
}

func runOperatingPoint(f *worksheet.Form) (*worksheet.Result, error) {
	at, err := place.Read(f)
	if err != nil {
		return nil, err
	}
	pump, err := parseCurve(f.Text("pump"))
	if err != nil {
		return nil, err
	}
	system := air.System{
		Depth: f.Length("depth"), Lines: f.Int("lines"), DiffuserLoss: f.Pressure("diffuser-loss"),
		Tube:  air.Tube{Bore: f.Length("tube-bore"), Length: f.Length("tube-length"), Fittings: f.Int("fittings"), ExtraK: f.Number("extra-k")},
		Water: f.Temperature("temp"), Air: f.Temperature("air-temp"), Site: at.Pressure,
	}
	m, err := air.OperatingPoint(pump, system)
	if err != nil {
		return nil, err
	}
	answer := operatingAnswer{
		Airflow: float64(m.Airflow), Pressure: float64(m.Pressure), Static: float64(m.Static), TubeLoss: float64(m.TubeLoss),
		DiffuserLoss: float64(m.DiffuserLoss), AirPower: float64(m.AirPower), Verdict: "works",
		Site: float64(at.Pressure), SiteFrom: string(at.From),
	}
	r := &worksheet.Result{
		Basis: worksheet.Physics, Sources: operatingSources,
		Labels: map[string]wording.Text{"pressure_kpa": wording.Say("sheet.operating-point.pressure")},
	}
	r.Answer = wording.Say("sheet.operating-point.answer", wording.Places{"air": quantity.Airflow(m.Airflow), "pressure": m.Pressure})
	if !m.Flows {
		answer.Verdict = "no-flow"
		needed := m.Static + m.DiffuserLoss
		r.Answer = wording.Say("sheet.operating-point.no-flow", wording.Places{"shutoff": m.Pressure, "needed": needed})
		r.Caution("air.no-flow", wording.Places{"needed": needed})
	}
	r.Plot = meetingPlot(pump, system, m, r.Answer)
	r.Data = answer
	r.Caution("air.water-line")
	r.Caution("air.electricity")
	at.Tell(r)
	return r, nil
}

// parseCurve reads "FLOW@PRESSURE, FLOW@PRESSURE …".
func parseCurve(text string) (air.Curve, error) {
	var points []air.CurvePoint
	for _, pair := range worksheet.SplitList(text) {
		flow, pressure, found := strings.Cut(pair, "@")
		if !found {
			return nil, pairFault(pair, wording.Say("air.pair", wording.Places{"pair": pair}))
		}
		q, err := quantity.ParseFlow(flow)
		if err != nil {
			return nil, pairFault(flow, fault.Of(err)[0].What)
		}
		p, err := quantity.ParsePressure(pressure)
		if err != nil {
			return nil, pairFault(pressure, fault.Of(err)[0].What)
		}
		points = append(points, air.CurvePoint{Airflow: q, Pressure: p})
	}
	return air.NewCurve(points)
}

func pairFault(given string, what wording.Text) error {
	return fault.New("pump", strings.TrimSpace(given), what, wording.Say("air.curve.allowed"), wording.Say("air.pair.advice"))
}
