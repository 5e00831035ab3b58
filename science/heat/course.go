package heat

import (
	"math"

	"aerosteep/quantity"
)

// dry tells whether nothing evaporates, so that the balance is a straight
// line in the temperature and has an exact solution.
func (v Vessel) dry() bool { return v.Bubbles == 0 && v.Surface == 0 }

// Settles is the temperature at which gains equal losses; ok is false where
// there is none. Where nothing acts at all, any temperature is one and start
// is answered.
func (v Vessel) Settles(start quantity.Temperature) (t quantity.Temperature, ok bool) {
	if v.dry() {
		return v.settlesDry(start)
	}
	low, high := -100.0, 100.0
	if v.warming(low) < 0 || v.warming(high) > 0 {
		return 0, false
	}
	for range 100 {
		if middle := (low + high) / 2; v.warming(middle) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return quantity.Celsius((low + high) / 2), true
}

func (v Vessel) settlesDry(start quantity.Temperature) (quantity.Temperature, bool) {
	gains := v.Terms(v.Air.Temperature).Net()
	switch {
	case v.Walls > 0:
		return v.Air.Temperature + quantity.Temperature(gains/v.Walls.WattsPerKelvin()), true
	case gains == 0:
		return start, true
	}
	return 0, false
}

// Course is the water from a start on: its temperature and what has
// evaporated, hour by hour of its own steps.
type Course struct {
	vessel Vessel
	hours  float64 // that were asked for
	steps  []step
}

type step struct {
	hour, temperature, gone float64 // h, °C, kg
}

// stepShare is the part of the momentary time constant that one step takes;
// Runge and Kutta's fourth order is then good to 1e-6 of the way.
const stepShare = 0.1

// settled is the rest of the way, in kelvin, at which the water has arrived.
const settled = 1e-7

// Follow works out the course over so many hours. It ends early where the
// water freezes or boils.
//
// The balance of Terms is solved by Runge and Kutta's fourth order with steps
// of a tenth of the momentary time constant.
func (v Vessel) Follow(start quantity.Temperature, hours float64) Course {
	c := Course{vessel: v, hours: hours, steps: []step{{0, start.Celsius(), 0}}}
	for now := c.last(); now.hour < hours; now = c.last() {
		if now.temperature <= 0 && v.warming(0) <= 0 || now.temperature >= 100 && v.warming(100) >= 0 {
			break
		}
		c.steps = append(c.steps, v.advance(now, v.stepFrom(now, hours)))
	}
	return c
}

func (c Course) last() step { return c.steps[len(c.steps)-1] }

// slope is how fast the warming changes with the temperature, 1/h.
func (v Vessel) slope(t float64) float64 {
	const nudge = 1e-3
	return (v.warming(t+nudge) - v.warming(t-nudge)) / (2 * nudge)
}

// arrived tells whether the water is as good as settled.
func (v Vessel) arrived(t float64) bool {
	slope, speed := v.slope(t), v.warming(t)
	return speed == 0 || slope < 0 && math.Abs(speed/slope) < settled
}

// stepFrom is the length of the next step: to the end at once where the water
// has arrived, by a kelvin where nothing holds it back.
func (v Vessel) stepFrom(now step, hours float64) float64 {
	rest := hours - now.hour
	switch slope := v.slope(now.temperature); {
	case v.arrived(now.temperature):
		return rest
	case slope < 0:
		return min(rest, stepShare/-slope)
	}
	const shortest = 1e-3
	return min(rest, max(shortest, 1/math.Abs(v.warming(now.temperature))))
}

// advance takes one step; the evaporation goes along by Simpson's rule.
func (v Vessel) advance(from step, h float64) step {
	t := from.temperature
	if v.arrived(t) {
		return step{from.hour + h, t, from.gone + h*v.evaporation(t)}
	}
	k1 := v.warming(t)
	k2 := v.warming(t + h/2*k1)
	k3 := v.warming(t + h/2*k2)
	k4 := v.warming(t + h*k3)
	to := t + h/6*(k1+2*k2+2*k3+k4)
	middle := (t+to)/2 + h/8*(k1-v.warming(to))
	gone := h / 6 * (v.evaporation(t) + 4*v.evaporation(middle) + v.evaporation(to))
	return step{from.hour + h, to, from.gone + gone}
}

func (v Vessel) evaporation(t float64) float64 { return v.Evaporation(quantity.Celsius(t)) }

// reach finds when the course passes a temperature, by halving the step in
// which it does.
func (c Course) reach(target float64) (at step, ok bool) {
	if math.Abs(c.steps[0].temperature-target) <= 1e-9 {
		return c.steps[0], true
	}
	for i := 1; i < len(c.steps); i++ {
		from, to := c.steps[i-1], c.steps[i]
		if (from.temperature-target)*(to.temperature-target) > 0 {
			continue
		}
		low, high := 0.0, to.hour-from.hour
		for range 60 {
			middle := (low + high) / 2
			if (c.vessel.advance(from, middle).temperature-target)*(from.temperature-target) > 0 {
				low = middle
			} else {
				high = middle
			}
		}
		return c.vessel.advance(from, high), true
	}
	return step{}, false
}

// Reach is when the water has a temperature; ok is false where it does not
// within the course.
func (c Course) Reach(target quantity.Temperature) (quantity.Span, bool) {
	at, ok := c.reach(target.Celsius())
	return quantity.Hours(at.hour), ok
}

// Freezes is when the water comes down to 0 °C; ok is false where it does not,
// or does not stay there.
func (c Course) Freezes() (quantity.Span, bool) {
	if c.vessel.warming(0) >= 0 {
		return 0, false
	}
	return c.Reach(0)
}

// Boils tells whether the water would pass 100 °C within the course.
func (c Course) Boils() bool {
	end := c.last()
	return end.temperature > 100+1e-9 || end.temperature >= 100 && end.hour < c.hours && c.vessel.warming(100) > 0
}

// At is the temperature at an hour within the course, and the water that has
// gone off by then in litres. Water that has come down to 0 °C stays there;
// what evaporates from ice is not counted.
func (c Course) At(hour float64) (t quantity.Temperature, gone quantity.Volume) {
	if frozen, ok := c.Freezes(); ok && frozen.Hours() <= hour {
		at, _ := c.reach(0)
		return 0, quantity.Litres(at.gone + (hour-at.hour)*c.vessel.evaporation(0))
	}
	for i := 1; i < len(c.steps); i++ {
		if c.steps[i].hour >= hour {
			at := c.vessel.advance(c.steps[i-1], hour-c.steps[i-1].hour)
			return quantity.Celsius(at.temperature), quantity.Litres(at.gone)
		}
	}
	return quantity.Celsius(c.last().temperature), quantity.Litres(c.last().gone)
}

// HeatingTime is how long a power takes to warm water that loses nothing.
//
//	t = m c dT / (P efficiency)
func HeatingTime(v quantity.Volume, by quantity.TemperatureStep, power quantity.Power, efficiency quantity.Share) quantity.Span {
	return quantity.Seconds(v.Litres() * heatCapacity * by.Celsius() / (power.Watts() * efficiency.Fraction()))
}

// meltingHeat is the heat of melting of ice at 0 °C, kJ/kg (CRC Handbook of
// Chemistry and Physics: 333.6).
const meltingHeat = 333.6

// IceToCool is the ice at 0 °C that melts into a volume of water, or beside it
// in closed bottles, and brings both to a temperature:
//
//	m = V c (T - goal) / (L + c goal)
//
// Range: water above the goal, the goal not under 0 °C; 0 where there is
// nothing to cool.
func IceToCool(v quantity.Volume, from, goal quantity.Temperature) quantity.Mass {
	const kJ = heatCapacity / 1000. // a litre and a kelvin
	by := math.Max(0, float64(from-goal))
	return quantity.Grams(1000 * v.Litres() * kJ * by / (meltingHeat + kJ*math.Max(0, goal.Celsius())))
}
