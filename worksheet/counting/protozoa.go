package counting

import (
	"math"

	"aerosteep/quantity"
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var protozoa = worksheet.Sheet{
	Name:  "protozoa",
	Group: worksheet.Counting,
	Inputs: []worksheet.Input{
		{Flag: "wells", Kind: worksheet.Text, Required: true},
		{Flag: "volumes", Kind: worksheet.SmallVolume, List: true, Required: true, Low: "0 mL", Over: true},
		{Flag: "dilution", Kind: worksheet.Bare, Low: "1", Default: "1"},
	},
	Example: `--wells "8/8, 8/8, 7/8, 3/8, 0/8" --volumes "0.1 mL, 0.01 mL, 0.001 mL, 0.0001 mL, 0.00001 mL"`,
	Sources: []source.Source{source.Darbyshire1974, source.Jarvis2010},
	Shape:   protozoaData{},
	Run:     runProtozoa,
}

type protozoaData struct {
	PerML      worksheet.Estimate `json:"per_ml"`
	StandardLn *float64           `json:"standard_error_ln"`
	Interval   string             `json:"interval"`
}

func runProtozoa(f *worksheet.Form) (*worksheet.Result, error) {
	wells, err := counting.ParseTubes("wells", f.Text("wells"))
	if err != nil {
		return nil, err
	}
	volumes := f.Numbers("volumes")
	if len(volumes) != len(wells) {
		return nil, f.Refuse("volumes", "counting.protozoa.lengths", wording.Places{"wells": len(wells), "volumes": len(volumes)})
	}
	for i, v := range volumes {
		wells[i].Amount = quantity.Litres(v).Millilitres()
	}
	m, err := counting.MostProbableNumber(wells, counting.LogNormal)
	if err != nil {
		return nil, err
	}
	r := &worksheet.Result{
		Data:  protozoaData{PerML: scaled(m, f.Number("dilution")), StandardLn: m.SELn, Interval: string(m.Interval)},
		Basis: worksheet.Standard, Sources: []source.Source{source.Darbyshire1974, source.Jarvis2010},
	}
	r.Answer = protozoaAnswer(r.Data.(protozoaData).PerML)
	if !m.Trustworthy() {
		r.Caution("counting.protozoa.improbable")
	}
	if m.Interval != counting.LogNormal {
		r.Caution("counting.protozoa." + string(m.Interval))
	}
	return r, nil
}

// scaled is the number per mL of the undiluted sample.
func scaled(m counting.MPN, fold float64) worksheet.Estimate {
	times := func(v *float64) *float64 {
		if v == nil || math.IsInf(*v*fold, 0) {
			return nil
		}
		return worksheet.Some(*v * fold)
	}
	return worksheet.Estimate{Estimate: times(m.Estimate), Low95: times(m.Low95), High95: times(m.High95)}
}

func protozoaAnswer(e worksheet.Estimate) wording.Text {
	switch {
	case e.Estimate == nil:
		return wording.Say("counting.protozoa.at-least", wording.Places{"low": threeDigits(*e.Low95)})
	case *e.Estimate == 0:
		return wording.Say("counting.protozoa.at-most", wording.Places{"high": threeDigits(*e.High95)})
	}
	return wording.Say("counting.protozoa.answer", wording.Places{"estimate": threeDigits(*e.Estimate), "low": threeDigits(*e.Low95), "high": threeDigits(*e.High95)})
}
