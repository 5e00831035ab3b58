package oxygen

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/oxygen"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/place"
)

var uptake = worksheet.Sheet{
	Name:  "uptake",
	Group: worksheet.Air,
	Inputs: withPlace(append([]worksheet.Input{
		{Flag: "file", Kind: worksheet.File, Argument: true},
		{Flag: "from", Kind: worksheet.Oxygen, Low: "0 mg/L", High: "50 mg/L"},
		{Flag: "to", Kind: worksheet.Oxygen, Low: "0 mg/L", High: "50 mg/L"},
		{Flag: "after", Kind: worksheet.Span, Low: "5 s", High: "24 h"},
		{Flag: "limit", Kind: worksheet.Oxygen, Low: "0 mg/L", High: "50 mg/L"},
		{Flag: "skip", Kind: worksheet.Span, Default: "15 s", Low: "0 s", High: "30 min"},
	}, testInputs()...)...),
	Example: `examples/pump-off.csv --temp 20C --limit "5 mg/L"`,
	Sources: uptakeSources,
	Shape:   uptakeAnswer{},
	Run:     runUptake,
}

var uptakeSources = []source.Source{source.TaguchiHumphrey1966, source.ASCE2, source.GolubPereyra1973, source.Badino2000, source.MassBalance, source.BensonKrause1984, place.Source}

type uptakeAnswer struct {
	Uptake            worksheet.Estimate  `json:"our_mg_per_l_h"`
	Verdict           string              `json:"verdict"`
	Used              int                 `json:"used_points"`
	Skipped           int                 `json:"skipped_rows"`
	Start             float64             `json:"start_do_mg_per_l"`
	MinutesToLimit    *worksheet.Estimate `json:"minutes_to_limit"`
	KLa               *worksheet.Estimate `json:"kla_per_h"`
	Steady            *worksheet.Estimate `json:"c_steady_mg_per_l"`
	UsedRise          *int                `json:"used_points_rise"`
	RiseNote          *wording.Text       `json:"rise_note"`
	SaturationImplied *float64            `json:"saturation_implied_mg_per_l"`
	KLa20             *worksheet.Estimate `json:"kla20_per_h"`
	Temp              *float64            `json:"temp_c"`
	Saturation        *float64            `json:"saturation_mg_per_l"`
	UptakeByBalance   *float64            `json:"our_by_balance_mg_per_l_h"`
	Agrees            *bool               `json:"agrees"`
	place.Keys
}

// pumpOff is what a test has come to before it is worded.
type pumpOff struct {
	log   *testFile // nil for two readings
	fall  oxygen.Fall
	rise  *oxygen.Rise
	note  *wording.Text // why there is no rise
	water *quantity.Temperature
}

func runUptake(f *worksheet.Form) (*worksheet.Result, error) {
	at, err := place.Read(f)
	if err != nil {
		return nil, err
	}
	test, err := readPumpOff(f)
	if err != nil {
		return nil, err
	}
	answer := uptakeAnswer{
		Uptake: estimate(test.fall.Uptake), Verdict: "not-measurable", Used: test.fall.Used, Start: float64(test.fall.Start), RiseNote: test.note,
	}
	r := &worksheet.Result{Basis: worksheet.Measured, Sources: uptakeSources}
	u := test.fall.Uptake
	r.Answer = wording.Say("sheet.uptake.answer", wording.Places{"uptake": u.Value, "low": u.Low95, "high": u.High95})
	if test.fall.Measurable() {
		answer.Verdict = "measurable"
	} else {
		r.Caution("oxygen.uptake.not-measurable")
	}
	if f.Has("limit") {
		answer.limit(test.fall, f.Concentration("limit"), r)
	}
	if test.rise != nil {
		answer.recovery(test.fall, *test.rise)
		cautionRise(r, *test.rise, f.On("fit-lag"))
	}
	if err := answer.warmth(test, at, r); err != nil {
		return nil, err
	}
	test.tell(&answer, r)
	r.Data = answer
	return r, nil
}

// readPumpOff takes a file or two readings from a notepad.
func readPumpOff(f *worksheet.Form) (pumpOff, error) {
	typed := f.Given("from", "to", "after")
	switch {
	case f.Has("file") && len(typed) > 0:
		return pumpOff{}, f.Refuse(typed[0], "worksheet.one-only", wording.Places{"flags": "FILE, --" + typed[0]})
	case f.Has("file"):
		return readPumpOffFile(f)
	case len(typed) == 0:
		return pumpOff{}, f.Advise("file", "oxygen.uptake.nothing", "oxygen.uptake.nothing.advice")
	}
	if err := f.Together("from", "to", "after"); err != nil {
		return pumpOff{}, err
	}
	if err := f.OnlyWith("--from", nil, "skip", "fit-lag"); err != nil {
		return pumpOff{}, err
	}
	return readTwo(f)
}

// twoReadingsResolution is the last digit of a reading on a notepad.
const twoReadingsResolution = quantity.Concentration(0.1)

func readTwo(f *worksheet.Form) (pumpOff, error) {
	resolution := twoReadingsResolution
	if f.Has("resolution") {
		resolution = f.Concentration("resolution")
	}
	note := wording.Say("oxygen.rise.not-logged")
	test := pumpOff{note: &note}
	if f.Has("temp") {
		test.water = worksheet.Some(f.Temperature("temp"))
	}
	var err error
	test.fall, err = oxygen.FallBetween(f.Concentration("from"), f.Concentration("to"), f.Span("after"), resolution)
	return test, err
}

func readPumpOffFile(f *worksheet.Form) (pumpOff, error) {
	log, err := readTest(f, true)
	if err != nil {
		return pumpOff{}, err
	}
	test := pumpOff{log: log}
	water, known, err := log.water(f)
	if err != nil {
		return test, err
	}
	if known {
		test.water = &water
	}
	probe, err := log.probe(f)
	if err != nil {
		return test, err
	}
	off, on, err := oxygen.PumpOff(log.readings)
	if err != nil {
		return test, log.naming(err)
	}
	if test.fall, err = oxygen.FitFall(off, f.Span("skip"), probe); err != nil {
		return test, log.naming(err)
	}
	test.recover(on, probe)
	return test, nil
}

// recover fits the rise, or notes why it says nothing: that is no error.
func (t *pumpOff) recover(on []oxygen.Reading, probe oxygen.Probe) {
	if len(on) == 0 {
		t.note = worksheet.Some(wording.Say("oxygen.rise.not-logged"))
		return
	}
	rise, err := oxygen.Recovery(on, probe)
	if err != nil {
		t.note = &fault.Of(err)[0].What
		return
	}
	t.rise = &rise
}

// limit fills in how long the air may be off.
func (a *uptakeAnswer) limit(fall oxygen.Fall, limit quantity.Concentration, r *worksheet.Result) {
	left, lasts := fall.TimeTo(limit)
	if !lasts {
		return
	}
	minutes := worksheet.Estimate{Estimate: worksheet.Some(left.Time.Minutes()), Low95: worksheet.Some(left.Soonest.Minutes())}
	if left.Latest != nil {
		minutes.High95 = worksheet.Some(left.Latest.Minutes())
	}
	a.MinutesToLimit = &minutes
	r.Notes = append(r.Notes, wording.Say("sheet.uptake.limit", wording.Places{"time": left.Time, "limit": limit}))
}

// recovery fills in what the rise after the test says.
func (a *uptakeAnswer) recovery(fall oxygen.Fall, rise oxygen.Rise) {
	a.KLa, a.Steady = worksheet.Some(estimate(rise.KLa)), worksheet.Some(estimate(rise.Final))
	a.UsedRise = worksheet.Some(len(rise.Readings))
	a.SaturationImplied = number(fall.SaturationImplied(rise))
}

// warmth fills in what needs the water's temperature and the place.
func (a *uptakeAnswer) warmth(t pumpOff, at place.Place, r *worksheet.Result) error {
	if t.water == nil {
		return nil
	}
	held, err := oxygen.Saturation(*t.water, at.Pressure, 0)
	if err != nil {
		return err
	}
	a.Temp, a.Saturation, a.Keys = number(*t.water), number(held), at.Keys()
	at.Tell(r)
	r.Labels["temp_c"] = wording.Say("oxygen.water-temp")
	if t.rise == nil {
		return nil
	}
	byBalance := t.rise.UptakeByBalance(held)
	a.KLa20 = worksheet.Some(estimate(t.rise.KLa20(*t.water)))
	a.UptakeByBalance, a.Agrees = number(byBalance), worksheet.Some(t.fall.Agrees(byBalance))
	if !*a.Agrees {
		r.Caution("oxygen.uptake.disagrees", wording.Places{"balance": byBalance, "slope": t.fall.Uptake.Value})
	}
	return nil
}

// tell says what was left out, what to mind, and draws the fall.
func (t pumpOff) tell(a *uptakeAnswer, r *worksheet.Result) {
	if t.fall.CutShort {
		r.Caution("oxygen.uptake.cut", wording.Places{"cliff": oxygen.Cliff})
	}
	r.Caution("oxygen.uptake.air-back")
	if t.log == nil {
		return
	}
	a.Skipped = t.log.skipped
	t.log.tell(r)
	r.Plot = fallPlot(t.fall, wording.Say("sheet.uptake.plot", wording.Places{"uptake": t.fall.Uptake.Value}))
}
