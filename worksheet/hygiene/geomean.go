package hygiene

import (
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var geomean = worksheet.Sheet{
	Name:  "geomean",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "values", Kind: worksheet.Text, Required: true},
		{Flag: "below", Kind: worksheet.Choice, Choices: []string{"limit", "half"}, Default: "limit"},
		{Flag: "sd", Kind: worksheet.Choice, Choices: []string{"sample", "population"}, Default: "sample"},
		{Flag: "limit-gm", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "limit-stv", Kind: worksheet.Bare, Low: "0", Over: true},
	},
	Example: "--values '<1, 12, 90, 33' --limit-gm 126 --limit-stv 410",
	Sources: []source.Source{source.EPARWQC2012, source.BathingUK2013},
	Shape:   geometric{},
	Run:     runGeomean,
}

type geometric struct {
	N              int      `json:"n"`
	BelowDetection int      `json:"below_detection"`
	AboveRange     int      `json:"above_range"`
	Mean           float64  `json:"geometric_mean"`
	MeanIs         string   `json:"geometric_mean_is"`
	Log10SD        *float64 `json:"log10_sd"`
	STV            *float64 `json:"stv_estimate"`
	Percentile95   *float64 `json:"percentile_95"`
	ShareOverSTV   *float64 `json:"share_over_stv"`
	MeetsGM        *bool    `json:"meets_gm"`
	MeetsSTV       *bool    `json:"meets_stv"`
}

// fewSamples is below how many samples a mean says little.
const fewSamples = 5

func runGeomean(f *worksheet.Form) (*worksheet.Result, error) {
	findings, err := counting.ParseFindings("values", f.Text("values"))
	if err != nil {
		return nil, err
	}
	for _, found := range findings {
		if found.Value == 0 {
			w := wrong("values", f.Text("values"), "laboratory.plain-zero", "counting.finding.allowed")
			w.Advice = wording.Say("laboratory.plain-zero.advice")
			return nil, w
		}
	}
	belowAs := 1.0
	if f.Text("below") == "half" {
		belowAs = 0.5
	}
	g := counting.GeometricMeanOf(findings, belowAs, f.Text("sd") == "population")
	data := geometric{
		N: g.N, BelowDetection: g.BelowDetection, AboveRange: g.AboveRange, Mean: g.Mean, MeanIs: string(g.Is),
		Log10SD: g.Log10SD, STV: g.Percentile90, Percentile95: g.Percentile95,
	}
	if f.Has("limit-gm") {
		data.MeetsGM = g.MeetsMean(f.Number("limit-gm"))
	}
	if f.Has("limit-stv") {
		data.ShareOverSTV = worksheet.Some(counting.ShareOver(findings, f.Number("limit-stv")))
		data.MeetsSTV = g.MeetsPercentile(f.Number("limit-stv"))
	}
	result := &worksheet.Result{
		Answer: wording.Say("sheet.geomean.answer."+string(g.Is), wording.Places{"mean": g.Mean, "n": g.N}),
		Data:   data, Basis: worksheet.Standard,
		Sources: []source.Source{source.EPARWQC2012, source.BathingUK2013},
	}
	if g.N < fewSamples {
		result.Caution("laboratory.caution.few", wording.Places{"n": g.N})
	}
	result.Caution("laboratory.caution.sd")
	result.Caution("hygiene.caution.test")
	return result, nil
}
