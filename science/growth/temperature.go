package growth

import (
	"aerosteep/numeric"
	"aerosteep/quantity"
)

// Cardinal are the temperatures between which an organism grows, and at which
// it grows best.
type Cardinal struct{ Least, Best, Most quantity.Temperature }

// Factor is growth at t against growth at the best temperature, 0 to 1: the
// cardinal temperature model with inflection (Rosso et al. 1993, J. Theor.
// Biol. 162:447). It is 0 at and beyond both ends.
func (c Cardinal) Factor(t quantity.Temperature) float64 {
	if t <= c.Least || t >= c.Most {
		return 0
	}
	least, best, most, at := c.Least.Celsius(), c.Best.Celsius(), c.Most.Celsius(), t.Celsius()
	above := float64((at - most) * float64((at-least)*(at-least)))
	inner := float64((best-least)*(at-best)) - float64((best-most)*(best+least-2*at))
	return above / float64((best-least)*inner)
}

// Theta is the factor theta^(t - reference) of rate and transfer laws: 1 at
// the reference.
func Theta(theta float64, t, reference quantity.Temperature) float64 {
	return numeric.Pow(theta, t.Celsius()-reference.Celsius())
}
