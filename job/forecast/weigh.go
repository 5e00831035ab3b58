package forecast

import (
	"math"

	"aerosteep/numeric"
)

// What a reading is worth. The meter's noise and the place in the tank where
// it was held give a spread; heavy tails keep one odd reading from ruling.
const (
	oxygenSpread   = 0.16  // mg/L
	oxygenTails    = 5.0   // degrees of freedom of Student's t
	waterSpread    = 0.35  // °C
	wrongReading   = 0.036 // share of readings that say nothing of the water
	strayDensity   = 0.01  // per mg/L, of a wrong reading that is not of a known kind
	inAirSpread    = 0.35  // mg/L, of a reading taken in air about saturation
	slipSpread     = 0.05  // mg/L, of a reading a tenth of what it should be
	denseHours     = 0.4   // within which the next reading says little that is new
	oftenHours     = 1.5   // under which readings come often
	denseSpread    = 2.0   // by which its spread is taken wider
	effectiveLeast = 0.5   // share of the members' number under which they are drawn anew
)

// showing is what a member's meter would show in a reading of this step, in
// mg/L, and its row of the climate.
func (m *member) showing(s *step, hour float64, table *climate) (water, shown float64, row *climateRow) {
	slope := (m.oxygen - m.before) / s.hours
	water = m.oxygen - float64(slope*(s.to()-hour+m.slow))
	if least := math.Min(m.before, m.oxygen); water < least {
		water = least
	}
	if most := math.Max(m.before, m.oxygen); water > most {
		water = most
	}
	shown = math.Max(0, water+m.bias+float64(m.drift*(hour-m.since)))
	return water, shown, table.row(m.water)
}

// sight is one reading of oxygen as the members see it.
type sight struct {
	hour   float64
	value  func(*climateRow) float64 // mg/L
	spread float64                   // mg/L
	bit    uint64                    // that marks it in those that think it wrong
}

// weighOxygen weighs the members by a reading of oxygen; the weights are left
// as they come, so that ensembles can be compared by them.
func (e *ensemble) weighOxygen(s *step, r sight) {
	for i := range e.members {
		m := &e.members[i]
		_, shown, row := m.showing(s, r.hour, e.climate)
		y := r.value(row)
		right := (1 - wrongReading) * studentDensity((y-shown)/r.spread) / r.spread
		wrong := wrongReading * wrongDensity(y, row.saturation+m.bias, shown)
		m.suspected &^= r.bit
		if e.noise.Uniform.Float64()*(right+wrong) < wrong {
			m.suspected |= r.bit
		}
		e.weights[i] *= right + wrong
	}
}

// wrongDensity is how likely a wrong reading shows y, per mg/L: half of them
// were taken in air, in a sixth the decimal point slipped by one place, the
// rest are of no known kind (the shares are a judgement).
func wrongDensity(y, inAir, shown float64) float64 {
	air := normalDensity((y-inAir)/inAirSpread) / inAirSpread
	slipped := normalDensity((y-float64(0.1*shown))/slipSpread) / slipSpread
	return float64(0.5*air) + float64(0.167*slipped) + 0.333*strayDensity
}

func (e *ensemble) normalise() {
	sum := 0.0
	for _, w := range e.weights {
		sum += w
	}
	if !(sum > 0) {
		for i := range e.weights {
			e.weights[i] = 1
		}
		return
	}
	scale := float64(len(e.weights)) / sum
	for i := range e.weights {
		e.weights[i] *= scale
	}
}

// renew draws the members anew in proportion to their weights once too few
// carry them all, and loosens the copies so that no two stay the same.
func (e *ensemble) renew() {
	e.normalise()
	if numeric.EffectiveSize(e.weights) > effectiveLeast*float64(len(e.members)) {
		return
	}
	e.drawAnew()
	e.loosen()
}

func (e *ensemble) drawAnew() {
	e.drawn = numeric.Systematic(e.weights, e.noise.Uniform.Float64(), e.drawn)
	if e.spare == nil {
		e.spare = make([]member, len(e.members))
	}
	for i, from := range e.drawn {
		e.spare[i] = e.members[from]
		e.weights[i] = 1
	}
	e.members, e.spare = e.spare, e.members
}

// normalDensity and studentDensity are the densities at x standard spreads.
func normalDensity(x float64) float64 {
	return 0.3989422804014327 * numeric.Exp(float64(-0.5*x)*x)
}

// studentDensity is Student's t with oxygenTails = 5 degrees of freedom:
// 8/(3 π √5) (1 + x²/5)^-3.
func studentDensity(x float64) float64 {
	b := 1 + float64(x*x)/oxygenTails
	return 0.3796066898224945 / (b * b * b)
}
