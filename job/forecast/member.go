package forecast

import (
	"math"

	"aerosteep/numeric"
	"aerosteep/science/growth"
)

// How what wanders wanders: the spread it keeps and the hours over which it
// forgets. They stand for what our equations leave out (a second food, foam,
// a stone that clogs); the sizes are a judgement, held to the coverage that a
// forecast promises.
const (
	strayUptakeSpread   = 0.35
	strayUptakeHours    = 9.0
	strayTransferSpread = 0.12
	strayTransferHours  = 15.0
	offsetSpread        = 1.2
	offsetHours         = 24.0
	foodWalk            = 0.04 // per square root of an hour, of the logarithm of ready food
)

// advance moves a member over one step.
func (m *member) advance(s *step, table *climate) {
	m.warm(s)
	row := table.row(m.water)
	climate := growthClimate(row, m.shape)
	var first, second growth.Pace
	m.kinetic.Pace(&first, &m.life, climate, s.hours)
	next := m.life
	next.Go(&first, &first, m.share, s.hours)
	m.kinetic.Pace(&second, &next, climate, s.hours)
	demand := float64(0.5*(first.Demand+second.Demand)) * m.strayFactor
	m.breathe(demand, row, s)
	m.life.Go(&first, &second, m.share, s.hours)
}

// breathe moves the oxygen on. Between transfer and uptake it settles in
// minutes, so the step is the exact answer of the law linearised between the
// oxygen there is and the oxygen it tends to:
//
//	dC/dt = k (Cs - C) - R C/(K + C) = -(k + R K/((K + C)(K + C∞))) (C - C∞)
func (m *member) breathe(demand float64, row *climateRow, s *step) {
	k := m.kLa(s) * row.transfer
	ceiling := row.saturation * m.ceiling
	half := m.kinetic.HalfOxygen
	// C∞ is the positive root of k (Cs - C)(K + C) = R C.
	b := half - ceiling + demand/k
	settled := 0.5 * (math.Sqrt(float64(b*b)+float64(4*half)*ceiling) - b)
	taking := float64(demand*half) / float64((half+m.oxygen)*(half+settled))
	spent := float64((k + taking) * s.hours)
	away := m.oxygen - settled
	left := float64(away * numeric.Exp(-spent))
	// The mean of k (Cs - C) less what the oxygen gained.
	m.uptake = float64(k*(ceiling-settled)) + float64((away-left)*taking)/spent
	if m.uptake < 0 {
		m.uptake = 0
	}
	m.share = 1
	if m.uptake < demand {
		m.share = m.uptake / demand
	}
	m.before, m.oxygen = m.oxygen, settled+left
}

// kLa at 20 °C, 1/h: what the air brings, never less than the surface.
func (m *member) kLa(s *step) float64 {
	k := float64(m.transfer*m.airFactor) * s.air
	if k < m.surface {
		return m.surface
	}
	return k
}

// warm moves the water toward what the vessel stands in. The lag is a ratio
// of heat held to heat lost, so that the step is a relaxation; the fraction
// (1 - x/2)/(1 + x/2) is exp(-x) to 1e-6 for these steps.
func (m *member) warm(s *step) {
	around := m.room + float64(m.cosine*s.cosine) + float64(m.sine*s.sine)
	if !m.indoors && m.outside {
		around = s.outdoors + m.offset
	}
	around += m.held - m.cooling
	x := 0.5 * s.hours / m.lag
	m.water = around + float64((m.water-around)*(1-x))/(1+x)
}

// happen applies what is done to the brew at the start of a step.
func (m *member) happen(c *change, spread *numeric.Normals) {
	if c.dilution > 0 {
		m.life.Ready *= c.dilution
		m.life.Slow *= c.dilution
		m.life.Bacteria *= c.dilution
		m.life.Fungi *= c.dilution
		m.life.Grazers *= c.dilution
		m.life.Nitrogen *= c.dilution
		m.life.Bound *= c.dilution
	}
	m.life.Ready += float64(c.ready * m.food)
	m.life.Slow += float64(c.slow * m.food)
	m.life.Nitrogen += c.nitrogen
	m.fed += float64((c.ready + c.slow) * m.food)
	if c.found || c.lost {
		m.setAir(1)
	}
	switch c.probe {
	case cleaned:
		m.drift *= 0.3
	case calibrated:
		m.bias, m.drift = 0.15*spread.Next(), 0.003*spread.Next()
		m.since = c.hour
	}
}

// wander lets what our equations leave out change, once a knot.
func (m *member) wander(noise *numeric.Normals, boldness float64) {
	m.strayUptake = walkOfUptake.from(m.strayUptake, noise)
	m.climb(noise, boldness)
	m.strayTransfer = walkOfTransfer.from(m.strayTransfer, noise)
	m.offset = walkOfOffset.from(m.offset, noise)
	m.life.Ready *= numeric.Exp(float64(foodWalk * noise.Next()))
	m.refresh()
}

// refresh works out the factors that follow from what wanders.
func (m *member) refresh() {
	m.strayFactor = numeric.Exp(m.strayUptake)
	m.airFactor = numeric.Exp(m.strayTransfer)
	if m.air < 1 {
		m.airFactor *= numeric.Pow(m.air, airExponent)
	}
}

// setAir says how much of the air arrives.
func (m *member) setAir(share float64) { m.air = share; m.refresh() }

// airExponent: kLa goes as air flow to the power 0.7 to 0.8 (Heijnen & van 't
// Riet 1984; Shah et al. 1982).
const airExponent = 0.8

// walk is one knot of a walk that keeps its spread (Ornstein-Uhlenbeck): what
// stays of a value, and the spread of what comes to it.
type walk struct{ keep, fresh float64 }

var (
	walkOfUptake   = walkWith(strayUptakeSpread, strayUptakeHours)
	walkOfTransfer = walkWith(strayTransferSpread, strayTransferHours)
	walkOfOffset   = walkWith(offsetSpread, offsetHours)
)

// walkWith is the walk of this spread that forgets over these hours.
func walkWith(spread, hours float64) walk {
	keep := 1 - knotHours/hours
	return walk{keep, float64(spread * math.Sqrt(1-float64(keep*keep)))}
}

// from moves a value over one knot.
func (w *walk) from(value float64, noise *numeric.Normals) float64 {
	return float64(w.keep*value) + float64(w.fresh*noise.Next())
}

// remember keeps a member's highest uptake and its lowest oxygen.
func (m *member) remember(hour, limit float64) {
	if m.uptake > m.peakUptake {
		m.peakUptake, m.peakHour = m.uptake, hour
	}
	m.rememberLow(hour, limit)
}

func (m *member) rememberLow(hour, limit float64) {
	if m.oxygen < m.lowestDO {
		m.lowestDO, m.lowestHour = m.oxygen, hour
		m.lowUptake, m.lowWater = m.uptake, m.water
	}
	if m.oxygen < limit && hour < m.belowHour {
		m.belowHour = hour
	}
}
