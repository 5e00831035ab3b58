package forecast

import (
	"math"

	"aerosteep/numeric"
)

// kernel is the width of what is added to a member's constants when members
// are drawn anew, against their own spread; they are drawn toward their mean
// so that the spread stays (Liu & West 2001, in Sequential Monte Carlo
// Methods in Practice, ch. 10).
const kernel = 0.25

// traits are a member's constants that readings can tell something about, by
// their logarithms.
const traits = 16

func (m *member) trait(i int) *float64 {
	switch i {
	case 0:
		return &m.kinetic.Growth
	case 1:
		return &m.kinetic.HalfReady
	case 2:
		return &m.kinetic.Hydrolysis
	case 3:
		return &m.kinetic.Endogenous
	case 4:
		return &m.kinetic.Repression
	case 5:
		return &m.kinetic.FungalGrowth
	case 6:
		return &m.transfer
	case 7:
		return &m.surface
	case 8:
		return &m.food
	case 9:
		return &m.life.Ready
	case 10:
		return &m.life.Slow
	case 11:
		return &m.life.Bacteria
	case 12:
		return &m.life.Fungi
	case 13:
		return &m.life.Nitrogen
	case 14:
		return &m.life.Grazers
	default:
		return &m.ceiling
	}
}

// thirds: where readings come often, each drawing loosens every third trait in
// turn; logarithms of all of them would cost more than the walk itself.
const thirds = 3

// loosen moves copies of one member apart.
func (e *ensemble) loosen() {
	e.turn++
	for t := range traits {
		if e.often && t%thirds != e.turn%thirds {
			continue
		}
		e.loosenTrait(t)
	}
	e.loosenPlain()
}

// loosenTrait works on the logarithm of one trait.
func (e *ensemble) loosenTrait(t int) {
	const least = 1e-9
	if len(e.logs) != len(e.members) {
		e.logs = make([]float64, len(e.members))
	}
	mean, square := 0.0, 0.0
	for i := range e.members {
		v := numeric.Log(*e.members[i].trait(t) + least)
		e.logs[i] = v
		mean += v
		square += float64(v * v)
	}
	n := float64(len(e.members))
	mean /= n
	spread := math.Sqrt(math.Max(0, square/n-float64(mean*mean)))
	keep := math.Sqrt(1 - kernel*kernel)
	for i, v := range e.logs {
		v = float64(keep*v) + float64((1-keep)*mean) + float64(kernel*spread)*e.noise.Next()
		*e.members[i].trait(t) = numeric.Exp(v)
	}
}

// worstBias, mg/L: a meter that is further off is broken, not biased (a
// judgement).
const worstBias = 2.0

// loosenPlain works on what is no logarithm.
func (e *ensemble) loosenPlain() {
	keep := math.Sqrt(1 - kernel*kernel)
	for _, plain := range []func(*member) *float64{
		func(m *member) *float64 { return &m.bias }, func(m *member) *float64 { return &m.drift },
		func(m *member) *float64 { return &m.strayUptake }, func(m *member) *float64 { return &m.strayTransfer },
		func(m *member) *float64 { return &m.kinetic.SlimeShare },
	} {
		mean, spread := e.moments(func(m *member) float64 { return *plain(m) })
		for i := range e.members {
			v := plain(&e.members[i])
			*v = mean + float64(keep*(*v-mean)) + float64(kernel*spread)*e.noise.Next()
		}
	}
	for i := range e.members {
		m := &e.members[i]
		m.kinetic.SlimeShare = math.Min(1, math.Max(0, m.kinetic.SlimeShare))
		m.bias = math.Min(worstBias, math.Max(-worstBias, m.bias))
		m.refresh()
	}
}

// moments are the mean and spread of a number over equally weighted members.
func (e *ensemble) moments(read func(*member) float64) (mean, spread float64) {
	n := float64(len(e.members))
	for i := range e.members {
		mean += read(&e.members[i])
	}
	mean /= n
	for i := range e.members {
		d := read(&e.members[i]) - mean
		spread += float64(d * d)
	}
	return mean, math.Sqrt(spread / n)
}
