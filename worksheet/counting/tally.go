package counting

import (
	"math"

	"aerosteep/quantity"
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// most is the largest count anybody writes down; it keeps a slip of the
// keyboard from passing for one.
const most = "1000000000"

// countInputs ask for what was counted and how the sample was thinned.
var countInputs = []worksheet.Input{
	{Flag: "counts", Kind: worksheet.Whole, List: true, Low: "0", High: most},
	{Flag: "total", Kind: worksheet.Whole, Low: "0", High: most},
	{Flag: "fields", Kind: worksheet.Whole, Low: "1", High: most},
}

// thinning asks how the sample was diluted or concentrated, as folds.
var thinning = []worksheet.Input{
	{Flag: "dilution", Kind: worksheet.Bare, Low: "1", Default: "1"},
	{Flag: "concentration", Kind: worksheet.Bare, Low: "1", Default: "1"},
}

// biomass asks for what turns cells into mass.
var biomass = []worksheet.Input{
	{Flag: "cell-volume", Kind: worksheet.CellVolume, Low: "0 um3", Over: true},
	{Flag: "carbon", Kind: worksheet.Density, Low: "10 fg/um3", High: "1000 fg/um3", Default: "220 fg/um3"},
	{Flag: "dry-density", Kind: worksheet.Density, Low: "0.05 g/cm3", High: "2 g/cm3"},
}

// readCounts takes either the single counts or a total over fields.
func readCounts(f *worksheet.Form) (counting.Counts, error) {
	if f.Has("counts") {
		if given := f.Given("total", "fields"); len(given) > 0 {
			return counting.Counts{}, f.Refuse(given[0], "worksheet.one-only", wording.Places{"flags": "--counts, --" + given[0]})
		}
		return counting.EachField(whole(f.Numbers("counts"))), nil
	}
	if !f.Has("total") && !f.Has("fields") {
		return counting.Counts{}, f.Advise("counts", "counting.no-counts", "counting.no-counts.advice")
	}
	if err := f.Together("total", "fields"); err != nil {
		return counting.Counts{}, err
	}
	return counting.OnlyTotal(f.Int("total"), f.Int("fields")), nil
}

func whole(values []float64) []int {
	counts := make([]int, len(values))
	for i, v := range values {
		counts[i] = int(v)
	}
	return counts
}

// Tally is what `cells` and `field-count` have in common.
type Tally struct {
	Fields         int                 `json:"fields"`
	TotalCount     int                 `json:"total_count"`
	MeanCount      float64             `json:"mean_count"`
	Variance       *float64            `json:"variance"`
	VarianceToMean *float64            `json:"variance_to_mean"`
	DispersionChi2 *float64            `json:"dispersion_chi2"`
	DispersionP    *float64            `json:"dispersion_p"`
	Overdispersed  *bool               `json:"overdispersed"`
	Interval       string              `json:"interval"`
	FieldVolume    float64             `json:"field_volume_ml"`
	PerML          worksheet.Estimate  `json:"per_ml"`
	Carbon         *worksheet.Estimate `json:"carbon_ug_per_ml"`
	DryMass        *worksheet.Estimate `json:"dry_mass_ug_per_ml"`
}

// tallyUp scales the counts to a millilitre and weighs them where the form
// says how large a cell is.
func tallyUp(f *worksheet.Form, c counting.Counts, field quantity.Volume) (Tally, *worksheet.Result, error) {
	if !f.Has("cell-volume") {
		if given := f.Given("carbon", "dry-density"); len(given) > 0 {
			return Tally{}, nil, f.Refuse("cell-volume", "worksheet.together", wording.Places{"missing": "--cell-volume", "given": "--" + given[0]})
		}
	}
	s := counting.Summarise(c)
	perML := func(mean float64) float64 {
		return counting.PerMillilitre(mean, field, f.Number("dilution"), f.Number("concentration"))
	}
	t := Tally{
		Fields: s.Fields, TotalCount: s.Total, MeanCount: s.Mean, Variance: s.Variance, VarianceToMean: s.VarianceToMean,
		DispersionChi2: s.Dispersion, DispersionP: s.DispersionP, Overdispersed: s.Overdispersed, Interval: string(s.Interval),
		FieldVolume: field.Millilitres(), PerML: worksheet.Between(perML(s.Mean), perML(s.Low), perML(s.High)),
	}
	r := &worksheet.Result{
		Answer: wording.Say("counting.per-ml.answer", wording.Places{
			"estimate": threeDigits(*t.PerML.Estimate), "low": threeDigits(*t.PerML.Low95), "high": threeDigits(*t.PerML.High95), "total": s.Total, "fields": s.Fields,
		}),
		Basis: worksheet.Standard, Sources: []source.Source{source.Garwood1936, source.Elliott1977},
	}
	doubt(r, s)
	if f.Has("cell-volume") {
		t.weigh(f, r)
	}
	return t, r, nil
}

// doubt says what the counts themselves leave open.
func doubt(r *worksheet.Result, s counting.Summary) {
	switch {
	case s.Overdispersed == nil:
		r.Caution("counting.no-dispersion")
	case *s.Overdispersed:
		r.Caution("counting.clumped")
	}
	if s.CutAtZero {
		r.Caution("counting.cut-at-zero")
	}
	if s.Total == 0 {
		r.Caution("counting.none-seen")
	}
}

func (t *Tally) weigh(f *worksheet.Form, r *worksheet.Result) {
	mass := func(density quantity.Density) *worksheet.Estimate {
		in := func(n *float64) float64 { return counting.CellMass(*n, f.Volume("cell-volume"), density) }
		e := worksheet.Between(in(t.PerML.Estimate), in(t.PerML.Low95), in(t.PerML.High95))
		return &e
	}
	t.Carbon = mass(f.Density("carbon"))
	if f.Has("dry-density") {
		t.DryMass = mass(f.Density("dry-density"))
	}
	r.Caution("counting.factors")
	r.Sources = append(r.Sources, source.BratbakDundas1984)
}

// threeDigits rounds what is said in a sentence: no count bears more.
func threeDigits(v float64) float64 {
	if v == 0 || math.IsInf(v, 0) {
		return v
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-2)
	return math.Round(v/step) * step
}
