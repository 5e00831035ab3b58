package quantity

import "aerosteep/wording"

// Estimate is a value with the 95 % interval that it lies in. Where nothing
// is known about the interval, Bounded is false and the ends say nothing.
type Estimate[A ~float64] struct {
	Value, Low95, High95 A
	Bounded              bool
}

// Between makes an estimate with its interval.
func Between[A ~float64](value, low, high A) Estimate[A] {
	return Estimate[A]{value, low, high, true}
}

// PlusMinus makes an estimate with a symmetric interval.
func PlusMinus[A ~float64](value, halfWidth A) Estimate[A] {
	return Between(value, value-halfWidth, value+halfWidth)
}

// Alone makes an estimate whose interval is not known.
func Alone[A ~float64](value A) Estimate[A] { return Estimate[A]{Value: value} }

// Scaled multiplies an estimate by a number that is not negative.
func (e Estimate[A]) Scaled(by float64) Estimate[A] {
	return Estimate[A]{e.Value * A(by), e.Low95 * A(by), e.High95 * A(by), e.Bounded}
}

// Map puts the value and both ends through a function, which may turn them
// round; the smaller end comes back as Low95.
func Map[A, B ~float64](e Estimate[A], f func(A) B) Estimate[B] {
	if !e.Bounded {
		return Alone(f(e.Value))
	}
	low, high := f(e.Low95), f(e.High95)
	return Between(f(e.Value), min(low, high), max(low, high))
}

// MassRate is a mass per time, kept in g/h.
type MassRate float64

func GramsPerHour(r float64) MassRate    { return MassRate(r) }
func (r MassRate) GramsPerHour() float64 { return float64(r) }

// Speak prints a mass rate in g/h.
func (r MassRate) Speak(reader wording.Reader) string {
	return say(wording.Number(float64(r), 3, reader), "g/h")
}
