package oxygen

import (
	"math"

	"aerosteep/quantity"
	"aerosteep/science/oxygen"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/place"
)

var reaeration = worksheet.Sheet{
	Name:  "reaeration",
	Group: worksheet.Air,
	Inputs: withPlace(append([]worksheet.Input{
		{Flag: "file", Kind: worksheet.File, Required: true, Argument: true},
		{Flag: "volume", Kind: worksheet.Volume, Low: "0.5 L", High: "100 m3"},
		{Flag: "skip", Kind: worksheet.Span, Default: "0 s", Low: "0 s", High: "30 min"},
	}, testInputs()...)...),
	Example: `examples/reaeration.csv --temp 18C --volume "100 L"`,
	Sources: reaerationSources,
	Shape:   reaerationAnswer{},
	Run:     runReaeration,
}

var reaerationSources = []source.Source{source.ASCE2, source.GolubPereyra1973, source.Badino2000, source.BensonKrause1984, source.USGS201103, place.Source}

type reaerationAnswer struct {
	KLa          worksheet.Estimate `json:"kla_per_h"`
	KLa20        worksheet.Estimate `json:"kla20_per_h"`
	Final        worksheet.Estimate `json:"c_inf_mg_per_l"`
	Start        worksheet.Estimate `json:"c0_mg_per_l"`
	Reached      float64            `json:"reached_percent"`
	RMS          float64            `json:"residual_rms_mg_per_l"`
	Used         int                `json:"used_points"`
	Skipped      int                `json:"skipped_rows"`
	Temp         float64            `json:"temp_c"`
	Saturation   float64            `json:"saturation_mg_per_l"`
	FinalPercent float64            `json:"c_inf_percent_of_saturation"`
	place.Keys
	SOTR *worksheet.Estimate `json:"sotr_g_per_h"`
}

// meterDoubt is how far the end of a rise may stand from saturation, in per
// cent, before the meter is doubted.
const meterDoubt = 5

func runReaeration(f *worksheet.Form) (*worksheet.Result, error) {
	at, err := place.Read(f)
	if err != nil {
		return nil, err
	}
	log, err := readTest(f, false)
	if err != nil {
		return nil, err
	}
	water, known, err := log.water(f)
	if err != nil {
		return nil, err
	}
	if !known {
		return nil, f.Advise("temp", "oxygen.needs-temp", "oxygen.needs-temp.advice")
	}
	probe, err := log.probe(f)
	if err != nil {
		return nil, err
	}
	rise, err := oxygen.Reaeration(plainReadings(log.readings), f.Span("skip"), probe)
	if err != nil {
		return nil, log.naming(err)
	}
	held, err := oxygen.Saturation(water, at.Pressure, 0)
	if err != nil {
		return nil, err
	}
	return reaerationResult(f, at, log, rise, water, held), nil
}

func plainReadings(aired []oxygen.AiredReading) []oxygen.Reading {
	readings := make([]oxygen.Reading, len(aired))
	for i, r := range aired {
		readings[i] = r.Reading
	}
	return readings
}

func reaerationResult(f *worksheet.Form, at place.Place, log *testFile, rise oxygen.Rise, water quantity.Temperature, held quantity.Concentration) *worksheet.Result {
	answer := reaerationAnswer{
		KLa: estimate(rise.KLa), KLa20: estimate(rise.KLa20(water)), Final: estimate(rise.Final), Start: estimate(rise.Start),
		Reached: rise.Reached, RMS: float64(rise.RMS), Used: len(rise.Readings), Skipped: log.skipped,
		Temp: water.Celsius(), Saturation: float64(held), FinalPercent: oxygen.Percent(rise.Final.Value, held),
		Keys: at.Keys(),
	}
	if f.Has("volume") {
		answer.SOTR = worksheet.Some(estimate(rise.SOTR(water, held, f.Volume("volume"))))
	}
	kla20 := rise.KLa20(water)
	r := &worksheet.Result{
		Answer: wording.Say("sheet.reaeration.answer", wording.Places{"kla": kla20.Value, "low": kla20.Low95, "high": kla20.High95}),
		Data:   answer, Basis: worksheet.Measured, Sources: reaerationSources,
		Plot: risePlot(rise, wording.Say("sheet.reaeration.plot", wording.Places{"kla": rise.KLa.Value, "final": rise.Final.Value})),
	}
	cautionRise(r, rise, f.On("fit-lag"))
	if math.Abs(answer.FinalPercent-100) > meterDoubt {
		r.Caution("oxygen.rise.meter", wording.Places{"percent": answer.FinalPercent})
	}
	r.Caution("oxygen.rise.clean-water")
	r.Caution("oxygen.rise.sulfite")
	at.Tell(r)
	r.Labels["temp_c"] = wording.Say("oxygen.water-temp")
	log.tell(r)
	return r
}

// cautionRise says what makes a fit less sure than it looks.
func cautionRise(r *worksheet.Result, rise oxygen.Rise, lagFitted bool) {
	if rise.Reached < oxygen.WellReached {
		r.Caution("oxygen.rise.longer", wording.Places{"reached": rise.Reached})
	}
	if rise.LagShare > oxygen.LagToWatch && !lagFitted {
		r.Caution("oxygen.rise.probe", wording.Places{"share": rise.LagShare})
	}
}
