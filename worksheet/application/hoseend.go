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

var hoseEnd = worksheet.Sheet{
	Name: "hose-end", Group: worksheet.Application,
	Inputs: slices.Concat([]worksheet.Input{
		{Flag: "delivered", Kind: worksheet.Volume, Low: "0 L", Over: true},
		{Flag: "flow", Kind: worksheet.Flow, Low: "0 L/min", Over: true},
		{Flag: "test-time", Kind: worksheet.Span, Low: "0 s", Over: true},
		{Flag: "drawn", Kind: worksheet.Volume, Low: "0 L", Over: true},
	}, dilutionInputs(), []worksheet.Input{
		{Flag: "test-area", Kind: worksheet.Area, Low: "0 m2", Over: true},
		{Flag: "plants", Kind: worksheet.Whole, Low: "1"},
		{Flag: "job-area", Kind: worksheet.Area, Low: "0 m2", Over: true},
		waterChlorine,
	}),
	Example: `--drawn "1 gal" --flow "3.4 gal/min" --test-time "5 min" --ratio 1:16 --test-area "1000 sq ft"`,
	Sources: []source.Source{source.HoseEndCalibration, source.MixingArithmetic},
	Shape:   hoseAnswer{},
	Run:     runHoseEnd,
}

type hoseAnswer struct {
	Delivered float64  `json:"delivered_l"`
	Flow      *float64 `json:"flow_l_per_min"`
	Drawn     *float64 `json:"drawn_l"`
	Words
	OneIn    *float64 `json:"one_in"`
	Expected *float64 `json:"expected_percent_tea"`
	Off      *float64 `json:"off_percent"`
	MixRate
	TeaRate
	Lawn     *float64 `json:"mix_rate_gal_per_1000_sq_ft"`
	JobMix   *float64 `json:"job_mix_l"`
	JobTea   *float64 `json:"job_tea_l"`
	Minutes  *float64 `json:"job_minutes"`
	Chlorine *float64 `json:"chlorine_in_mix_mg_per_l"`
}

// siphonOff is how far off its ratio a siphon may be, in percent.
const siphonOff = 10

func runHoseEnd(f *worksheet.Form) (*worksheet.Result, error) {
	d, err := readDilution(f)
	if err != nil {
		return nil, err
	}
	if err := hoseNeeds(f, d); err != nil {
		return nil, err
	}
	test := application.HoseTest{
		Delivered: given[quantity.Volume](f, "delivered"), Flow: given[quantity.Flow](f, "flow"), Time: given[quantity.Span](f, "test-time"),
		Drawn: given[quantity.Volume](f, "drawn"), Ground: given[quantity.Area](f, "test-area"),
	}
	run, err := test.Read()
	if err != nil {
		return nil, refused(f, err)
	}
	answer := hoseFigures(test, run)
	if err := scaleHose(f, test, run, &answer); err != nil {
		return nil, refused(f, err)
	}
	r := &worksheet.Result{Answer: hoseSentence(run), Sources: f.Sheet.Sources}
	d.askTurned(r)
	r.Caution("application.vacuum-breaker")
	compareSiphon(r, run, d, &answer)
	if f.Has("water-chlorine") {
		chlorine := f.Concentration("water-chlorine") * quantity.Concentration(1-*run.Share)
		answer.Chlorine = worksheet.Some(chlorine.MilligramsPerLitre())
		cautionChlorine(r, chlorine)
	}
	r.Data = answer
	return r, nil
}

// hoseNeeds refuses what makes no sense without the jar having been measured.
func hoseNeeds(f *worksheet.Form, d dilution) error {
	if f.Has("drawn") {
		return nil
	}
	for _, flag := range []string{"ratio", "percent-tea", "water-chlorine"} {
		if f.Has(flag) {
			return f.Refuse("drawn", "worksheet.together", wording.Places{"missing": "--drawn", "given": "--" + flag})
		}
	}
	return nil
}

func hoseFigures(test application.HoseTest, run application.HoseRun) hoseAnswer {
	perSquareFeet := quantity.USGallons(1).Litres() / quantity.SquareFeet(1000).SquareMetres()
	return hoseAnswer{
		Delivered: run.Delivered.Litres(), Flow: in(run.Flow, quantity.Flow.LitresPerMinute), Drawn: in(test.Drawn, quantity.Volume.Litres),
		Words: words(run.Share), OneIn: in(run.Share, application.OneIn), MixRate: mixRate(run.Mix), TeaRate: teaRate(run.Tea),
		Lawn: in(run.Mix, func(d quantity.Dose) float64 { return d.LitresPerSquareMetre() / perSquareFeet }),
	}
}

// scaleHose brings the test to the size of the job.
func scaleHose(f *worksheet.Form, test application.HoseTest, run application.HoseRun, answer *hoseAnswer) error {
	if len(f.Given("plants", "job-area")) > 1 {
		return f.Refuse("job-area", "worksheet.one-only", wording.Places{"flags": "--plants, --job-area"})
	}
	var plants *int
	if f.Has("plants") {
		plants = worksheet.Some(f.Int("plants"))
	}
	factor, known, err := test.Scale(plants, given[quantity.Area](f, "job-area"))
	if err != nil || !known {
		return err
	}
	answer.JobMix = worksheet.Some(run.Delivered.Litres() * factor)
	answer.JobTea = in(test.Drawn, func(v quantity.Volume) float64 { return v.Litres() * factor })
	answer.Minutes = in(test.Time, func(s quantity.Span) float64 { return s.Minutes() * factor })
	return nil
}

// compareSiphon says how far the jar's true share is from the one it should
// give.
func compareSiphon(r *worksheet.Result, run application.HoseRun, d dilution, answer *hoseAnswer) {
	if d.share == nil {
		return
	}
	off := application.PercentOff(run.Share.Fraction(), d.share.Fraction())
	answer.Expected, answer.Off = in(d.share, quantity.Share.Percent), &off
	if math.Abs(off) > siphonOff*(1+1e-9) {
		r.Caution("application.siphon-off", wording.Places{"off": off, "mix": mixText(*run.Share)})
	}
}

func hoseSentence(run application.HoseRun) wording.Text {
	places := wording.Places{"delivered": run.Delivered}
	if run.Share == nil {
		return wording.Say("sheet.hose-end.plain", places)
	}
	places["mix"] = mixText(*run.Share)
	return wording.Say("sheet.hose-end.answer", places)
}
