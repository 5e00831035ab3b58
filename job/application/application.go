// Package application is the last hour of the work: how tea is let down with
// water, shared out into loads, put on at the dose that was meant, and what
// to do when the clock or the first load says otherwise.
//
// Two amounts are never mixed up here. The tea rate is undiluted tea per area:
// the dose. The mix rate is tea plus water per area: what the applicator must
// deliver. mix rate = tea rate / share of tea in the mix.
//
// The package is pure arithmetic on typed quantities. Whatever is wrong with
// an input comes back as a *fault.Fault whose Field is the name of the flag.
package application

import (
	"aerosteep/fault"
	"aerosteep/wording"
)

// slack lets sums and limits meet: 0.22 against 0.20 is exactly 10 % over.
const slack = 1e-9

// over tells whether a lies above limit by more than rounding.
func over(a, limit float64) bool { return a > limit+slack*abs(limit) }

// Two statements of one quantity must agree: within 1 % where both are
// figures, within 2 % where areas and flows were measured.
const (
	FiguresAgree  = 0.01
	MeasuredAgree = 0.02
)

// Agree tells whether two statements of one quantity lie within tolerance of
// each other, taken on the first one, which is the one then used.
func Agree(first, second, tolerance float64) bool {
	return !over(abs(first-second), tolerance*abs(first))
}

// PercentOff is how far a lies off a reference, in percent; a difference that
// is only rounding is none.
func PercentOff(a, reference float64) float64 {
	if abs(a-reference) <= slack*abs(reference) {
		return 0
	}
	return (a/reference - 1) * 100
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// missing says which flag is needed, or which of several.
func missing(field string, others ...string) *fault.Fault {
	flags := "--" + field
	for _, other := range others {
		flags += " / --" + other
	}
	return fault.New(field, "", wording.Say("application.missing", wording.Places{"flag": flags}),
		wording.Text{}, wording.Say("application.missing.advice", wording.Places{"flag": flags}))
}

// missingDilution asks for a dilution: that tea goes on undiluted must be
// said.
func missingDilution() *fault.Fault {
	wrong := missing("ratio", "percent-tea")
	wrong.Advice = wording.Say("application.missing.dilution")
	return wrong
}

// disagree says that two flags state one quantity and do not match.
func disagree(field string, first, second string, a, b any, tolerance float64) *fault.Fault {
	return fault.New(field, "", wording.Say("application.disagree", wording.Places{
		"first": first, "second": second, "a": a, "b": b,
	}), wording.Say("application.disagree.allowed", wording.Places{"percent": tolerance * 100}),
		wording.Say("application.disagree.advice"))
}
