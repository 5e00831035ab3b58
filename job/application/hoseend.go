package application

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// HoseTest is a run of a siphon jar on a hose: what left the nozzle, and what
// of it came from the jar. A nil was not measured.
type HoseTest struct {
	Delivered *quantity.Volume // tea and water
	Flow      *quantity.Flow
	Time      *quantity.Span
	Drawn     *quantity.Volume // tea gone from the jar
	Ground    *quantity.Area
}

// HoseRun is what a hose end really gives.
type HoseRun struct {
	Delivered quantity.Volume
	Flow      *quantity.Flow
	Share     *quantity.Share // of tea in what left the nozzle
	Mix, Tea  *quantity.Dose  // on the ground of the test
}

// Read works a test out: the true share is drawn / delivered, the mix rate
// delivered / ground. Delivered may be timed (flow x time); stated both ways
// it must agree within 2 %.
//
// Source: hose-end calibration by timed catch; common practice for the jar.
func (h HoseTest) Read() (HoseRun, error) {
	run, err := h.delivered()
	if err != nil {
		return HoseRun{}, err
	}
	if h.Drawn != nil {
		if h.Drawn.Litres() >= run.Delivered.Litres()*(1-slack) {
			return HoseRun{}, fault.New("drawn", "", wording.Say("application.drawn", wording.Places{"drawn": *h.Drawn, "delivered": run.Delivered}),
				wording.Say("application.drawn.allowed", wording.Places{"delivered": run.Delivered}), wording.Say("application.drawn.advice"))
		}
		share := quantity.Share(*h.Drawn / run.Delivered)
		run.Share = &share
	}
	if h.Ground != nil {
		mix := quantity.LitresPerSquareMetre(run.Delivered.Litres() / h.Ground.SquareMetres())
		run.Mix = &mix
		if run.Share != nil {
			tea := mix * quantity.Dose(*run.Share)
			run.Tea = &tea
		}
	}
	return run, nil
}

func (h HoseTest) delivered() (HoseRun, error) {
	switch {
	case h.Flow != nil && h.Time == nil:
		return HoseRun{}, missing("test-time")
	case h.Flow == nil && h.Delivered == nil:
		return HoseRun{}, missing("delivered")
	case h.Delivered == nil:
		return HoseRun{Delivered: quantity.Litres(h.Flow.LitresPerMinute() * h.Time.Minutes()), Flow: h.Flow}, nil
	}
	run := HoseRun{Delivered: *h.Delivered}
	if h.Time != nil {
		flow := quantity.LitresPerMinute(h.Delivered.Litres() / h.Time.Minutes())
		run.Flow = &flow
	}
	if h.Flow != nil && !Agree(run.Flow.LitresPerMinute(), h.Flow.LitresPerMinute(), MeasuredAgree) {
		timed := quantity.Litres(h.Flow.LitresPerMinute() * h.Time.Minutes())
		return HoseRun{}, disagree("delivered", "--delivered", "--flow x --test-time", *h.Delivered, timed, MeasuredAgree)
	}
	return run, nil
}

// Scale is how many times a job is the test: by plants where the test was one
// plant, or by area.
func (h HoseTest) Scale(plants *int, job *quantity.Area) (factor float64, known bool, err error) {
	switch {
	case plants != nil:
		return float64(*plants), true, nil
	case job == nil:
		return 0, false, nil
	case h.Ground == nil:
		return 0, false, missing("test-area")
	}
	return float64(*job / *h.Ground), true, nil
}
