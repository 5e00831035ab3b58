package forecast

import (
	"math"

	"aerosteep/numeric"
)

// Uptake can climb for a reason that no equation of ours has: a second food is
// taken up, a lag ends, a bag begins to leach. Such a surge lasts some hours,
// so that a climb once seen is likelier to go on than to turn. No surge is
// faster than a doubling in three quarters of an hour: what falls faster has
// lost its air. Ahead of now they begin ever more rarely: what begins next is
// about to show itself, and later hours are left to food and the living, or each
// long forecast would be sure of some surge. The sizes are a judgement, held to
// what a forecast promises on simulated brews.
const (
	surgeChance  = 0.25 // per hour that one begins
	surgeEnds    = 0.33 // per hour that it ends
	surgeMean    = 0.4  // 1/h
	surgeSpread  = 0.4  // 1/h; some fall
	surgeFastest = 0.9  // 1/h
	surgeFades   = 5.0  // h ahead of now in which they grow rarer by e
	strayMost    = 4.0  // of the logarithm of the factor on uptake
)

// climb begins, ends and carries on a surge, once a knot.
func (m *member) climb(noise *numeric.Normals, boldness float64) {
	switch u := noise.Uniform.Float64(); {
	case m.surge != 0 && u < surgeEnds*knotHours:
		m.surge = 0
	case m.surge == 0 && u < surgeChance*knotHours*boldness:
		m.surge = math.Min(surgeFastest, surgeMean+float64(surgeSpread*noise.Next()))
	}
	m.strayUptake = math.Min(strayMost, m.strayUptake+float64(m.surge*knotHours))
}

// fading is how much rarer surges begin so many hours ahead of now, 0 to 1; at
// now and before it they begin as often as usual.
func fading(ahead float64) float64 {
	return numeric.Exp(math.Min(0, -ahead/surgeFades))
}

// surges is how much more often than usual surges begin. Before oxygen is
// measured there are none: the priors of food and of the living are wide
// enough to stand for them. Readings narrow those; what no equation has must
// then be carried on its own.
func (e *ensemble) surges() float64 {
	if !e.seen {
		return 0
	}
	return e.boldness
}
