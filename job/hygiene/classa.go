package hygiene

import (
	"aerosteep/numeric"
	"aerosteep/quantity"
)

// Holding is how long a liquid must be held at a temperature.
type Holding struct {
	For          quantity.Span
	Equation     int    // 2 or 3 of the regulation
	Regime       string // A, B, C, D: its clauses
	FloorApplied bool
}

// The least times of the regimes.
const (
	floorA = 20 * 60 // s
	floorB = 15      // s
	floorC = 15      // s
	floorD = 30 * 60 // s
)

// thickSolids is from where the stricter equation holds at all times.
const thickSolids = 0.07

// ClassATime is the time at a temperature that makes sewage sludge Class A
// under alternative 1:
//
//	D = 131,700,000 / 10^(0.1400 t) days (equation 2), t in °C
//	D =  50,070,000 / 10^(0.1400 t) days (equation 3), under 7 % solids and 30 min or more
//
// Inputs: temperature 50 to 100 °C; solids as a share of mass, nil where not
// known, which takes the 7 % regime; small particles that warmed gas or an
// immiscible liquid heats, with 7 % or more only.
//
// With under 7 % solids there is a gap in the text where equation 3 gives less
// than 30 min and equation 2 more; it is read here as 30 min.
//
// Source: 40 CFR 503.32(a)(3)(ii)(A)-(D). Compost is judged by JudgeProcess.
func ClassATime(t quantity.Temperature, solids *quantity.Share, smallParticles bool) Holding {
	second, third := classADays(131.7e6, t), classADays(50.07e6, t)
	switch {
	case solids == nil || solids.Fraction() >= thickSolids-1e-12:
		if smallParticles {
			return held(second, 2, "B", floorB)
		}
		return held(second, 2, "A", floorA)
	case third.Seconds() >= floorD:
		return Holding{For: third, Equation: 3, Regime: "D"}
	case second.Seconds() < floorD:
		return held(second, 2, "C", floorC)
	}
	return held(third, 3, "D", floorD)
}

func classADays(factor float64, t quantity.Temperature) quantity.Span {
	return quantity.Days(factor / numeric.Pow(10, 0.14*t.Celsius()))
}

func held(span quantity.Span, equation int, regime string, floor quantity.Span) Holding {
	if span < floor {
		return Holding{For: floor, Equation: equation, Regime: regime, FloorApplied: true}
	}
	return Holding{For: span, Equation: equation, Regime: regime}
}
