package application

import (
	"math"
	"slices"

	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var reconcile = worksheet.Sheet{
	Name: "reconcile", Group: worksheet.Application,
	Inputs: slices.Concat([]worksheet.Input{
		{Flag: "area", Kind: worksheet.Area, Required: true, Low: "0 m2", Over: true},
		{Flag: "done-area", Kind: worksheet.Area, Required: true, Low: "0 m2", Over: true},
		{Flag: "gone", Kind: worksheet.Volume, Required: true, Low: "0 L", Over: true},
		{Flag: "tea-rate", Kind: worksheet.Dose, Low: "0 L/m2", Over: true},
		{Flag: "mix-rate", Kind: worksheet.Dose, Low: "0 L/m2", Over: true},
	}, dilutionInputs(), []worksheet.Input{
		{Flag: "dead-volume", Kind: worksheet.Volume, Low: "0 L", Default: "0 L"},
	}),
	Example: `--area "4 ac" --done-area "1 ac" --gone "93 gal" --tea-rate "15 gal/ac" --ratio 1:4`,
	Sources: []source.Source{source.MixingArithmetic, source.OrificeLaw, source.CommonPractice},
	Shape:   reconcileAnswer{},
	Run:     runReconcile,
}

type reconcileAnswer struct {
	Expected   float64       `json:"expected_gone_l"`
	Difference float64       `json:"difference_l"`
	Percent    float64       `json:"difference_percent"`
	Verdict    string        `json:"verdict"`
	MixHa      float64       `json:"actual_mix_rate_l_per_ha"`
	MixGPA     float64       `json:"actual_mix_rate_gpa"`
	TeaHa      float64       `json:"actual_tea_rate_l_per_ha"`
	TeaGPA     float64       `json:"actual_tea_rate_gpa"`
	Left       float64       `json:"area_left_m2"`
	TeaRest    float64       `json:"tea_for_rest_l"`
	MixRest    float64       `json:"mix_for_rest_l"`
	Unchanged  float64       `json:"mix_for_rest_unchanged_l"`
	Speed      float64       `json:"speed_factor"`
	Pressure   float64       `json:"pressure_factor"`
	Hold       *float64      `json:"hold_dose_percent_tea"`
	HoldWords  *wording.Text `json:"hold_dose_words"`
	Words
}

func runReconcile(f *worksheet.Form) (*worksheet.Result, error) {
	d, err := readDilution(f)
	if err != nil {
		return nil, err
	}
	planned, err := application.Settle(given[quantity.Dose](f, "tea-rate"), given[quantity.Dose](f, "mix-rate"), d.share, "tea-rate", "mix-rate")
	if err != nil {
		return nil, refused(f, err)
	}
	first := application.FirstLoad{Ground: f.Area("area"), Done: f.Area("done-area"), Gone: f.Volume("gone"), Dead: f.Volume("dead-volume"), Planned: planned}
	c, err := first.Reconcile()
	if err != nil {
		return nil, refused(f, err)
	}
	r := &worksheet.Result{Answer: reconcileSentence(c, planned), Data: reconcileFigures(c, planned.Share), Basis: worksheet.Habit, Sources: f.Sheet.Sources}
	d.askTurned(r)
	if c.Verdict != application.OnDose {
		r.Notes = waysBack(c)
	}
	return r, nil
}

func reconcileFigures(c application.Correction, planned quantity.Share) reconcileAnswer {
	answer := reconcileAnswer{
		Expected: c.ExpectedGone.Litres(), Difference: c.Difference.Litres(), Percent: c.Percent, Verdict: string(c.Verdict),
		MixHa: c.Actual.Mix.LitresPerHectare(), MixGPA: c.Actual.Mix.USGallonsPerAcre(),
		TeaHa: c.Actual.Tea.LitresPerHectare(), TeaGPA: c.Actual.Tea.USGallonsPerAcre(),
		Left: c.Left.SquareMetres(), TeaRest: c.TeaForRest.Litres(), MixRest: c.MixForRest.Litres(), Unchanged: c.MixUnchanged.Litres(),
		Speed: c.SpeedFactor, Pressure: c.PressureFactor, Hold: in(c.HoldDose, quantity.Share.Percent), Words: words(&planned),
	}
	answer.HoldWords = words(c.HoldDose).MixWords
	return answer
}

func reconcileSentence(c application.Correction, planned application.Strength[quantity.Dose]) wording.Text {
	return wording.Say("sheet.reconcile."+string(c.Verdict), wording.Places{
		"percent": quantity.Percent(math.Abs(c.Percent)), "actual": c.Actual.Tea, "planned": planned.Tea, "rest": c.TeaForRest,
	})
}

// waysBack are the three corrections, of which one is to be chosen.
func waysBack(c application.Correction) []wording.Text {
	notes := []wording.Text{
		wording.Say("application.back.speed", wording.Places{"factor": c.SpeedFactor}),
		wording.Say("application.back.pressure", wording.Places{"factor": c.PressureFactor}),
	}
	if c.HoldDose != nil {
		notes = append(notes, wording.Say("application.back.mix", wording.Places{"mix": mixText(*c.HoldDose)}))
	}
	return notes
}
