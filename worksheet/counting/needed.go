package counting

import (
	"math"

	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var fieldsNeeded = worksheet.Sheet{
	Name:  "fields-needed",
	Group: worksheet.Counting,
	Inputs: []worksheet.Input{
		{Flag: "counts", Kind: worksheet.Whole, List: true, Low: "0", High: most},
		{Flag: "mean", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "k", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "within", Kind: worksheet.Bare, Low: "1", High: "100"},
		{Flag: "standard-error", Kind: worksheet.Bare, Low: "1", High: "100"},
	},
	Example: `--counts "8,3,0,12,5,7,1,9,4,6" --within 20`,
	Sources: []source.Source{source.Elliott1977},
	Shape:   neededData{},
	Run:     runNeeded,
}

type neededData struct {
	MeanCount     float64  `json:"mean_count"`
	K             *float64 `json:"k"`
	FieldsCounted int      `json:"fields_counted"`
	FieldsExact   float64  `json:"fields_exact"`
	FieldsTotal   int      `json:"fields_total"`
	FieldsMore    int      `json:"fields_more"`
	CellsToCount  float64  `json:"cells_to_count"`
}

func runNeeded(f *worksheet.Form) (*worksheet.Result, error) {
	precision, err := f.OneOf("within", "standard-error")
	if err != nil {
		return nil, err
	}
	relative := f.Number(precision) / 100
	if precision == "within" {
		relative /= counting.Z95
	}
	data, err := fieldsFor(f, relative)
	if err != nil {
		return nil, err
	}
	if data.FieldsExact > 1e15 {
		return nil, f.Refuse("mean", "counting.needed.too-many")
	}
	// A hair of rounding must not ask for one field more.
	data.FieldsTotal = max(1, int(math.Ceil(data.FieldsExact*(1-1e-12))))
	data.FieldsMore = max(0, data.FieldsTotal-data.FieldsCounted)
	data.CellsToCount = data.MeanCount * data.FieldsExact
	r := &worksheet.Result{
		Answer: wording.Say("counting.needed.answer."+precision, wording.Places{"more": data.FieldsMore, "total": data.FieldsTotal, "percent": f.Number(precision)}),
		Data:   data, Basis: worksheet.Standard, Sources: []source.Source{source.Elliott1977},
	}
	if f.Has("mean") && !f.Has("k") {
		r.Caution("counting.needed.random")
	}
	return r, nil
}

func fieldsFor(f *worksheet.Form, relative float64) (neededData, error) {
	from, err := f.OneOf("counts", "mean")
	if err != nil {
		return neededData{}, err
	}
	if from == "mean" {
		d := neededData{MeanCount: f.Number("mean")}
		k := math.Inf(1)
		if f.Has("k") {
			k = f.Number("k")
			d.K = &k
		}
		d.FieldsExact = counting.FieldsNeeded(d.MeanCount, k, relative)
		return d, nil
	}
	if f.Has("k") {
		return neededData{}, f.Refuse("k", "worksheet.other-mode", wording.Places{"flag": "--k", "mode": "--counts"})
	}
	counts := whole(f.Numbers("counts"))
	if len(counts) < 2 || counting.EachField(counts).Total == 0 {
		return neededData{}, f.Advise("counts", "counting.needed.pilot", "counting.needed.pilot.advice")
	}
	d := neededData{MeanCount: counting.EachFieldMean(counts), FieldsCounted: len(counts), FieldsExact: counting.PilotFieldsNeeded(counts, relative)}
	if k, err := counting.ClumpingByMoments(counts); err == nil {
		d.K = &k
	}
	return d, nil
}
