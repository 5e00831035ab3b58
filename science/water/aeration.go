package water

import (
	"math"

	"aerosteep/quantity"
)

// The half-life of free chlorine in aerated water that nobody has tested.
// Common practice, 15 to 25 °C: no published measurement was found, and pH,
// light and the water's own demand all move it.
const (
	ShortHalfLife = quantity.Span(1 * 3600)
	LongHalfLife  = quantity.Span(6 * 3600)
)

// HalfLife is the half-life of free chlorine between two readings of the same
// water, a first-order loss.
//
//	half-life = time x ln 2 / ln(first/later)
//
// The later reading is over 0 and below the first; the caller checks that.
func HalfLife(first, later quantity.Concentration, after quantity.Span) quantity.Span {
	return after * quantity.Span(math.Ln2/math.Log(float64(first/later)))
}

// AerationTime is how long free chlorine takes to fall to a target, never
// below 0. It says nothing about chloramine, which bubbling does not remove.
//
//	t = half-life x log2(free/target)
func AerationTime(free, target quantity.Concentration, halfLife quantity.Span) quantity.Span {
	if free <= target {
		return 0
	}
	return halfLife * quantity.Span(math.Log2(float64(free/target)))
}

// Wait is the time that bubbling takes for the free chlorine. Estimate is nil
// where the half-life is only habit.
type Wait struct {
	Estimate  *quantity.Span
	Low, High quantity.Span
}

// Aeration is the wait for a residual, or nil: chloramine is never reported
// gone from time alone, and neither is free chlorine that nobody measured.
func Aeration(r Residual, target quantity.Concentration, measured *quantity.Span) *Wait {
	if r.Free == nil || r.Chloramine == Present {
		return nil
	}
	if measured != nil {
		t := AerationTime(*r.Free, target, *measured)
		return &Wait{Estimate: &t, Low: t, High: t}
	}
	return &Wait{Low: AerationTime(*r.Free, target, ShortHalfLife), High: AerationTime(*r.Free, target, LongHalfLife)}
}
