package forecast

import (
	"math"

	"aerosteep/numeric"
	"aerosteep/science/growth"
)

// member is one brew that could be this one.
type member struct {
	life    growth.Brew
	oxygen  float64 // mg/L
	before  float64 // mg/L, one step earlier
	share   float64 // oxygen factor of the last step, 0 to 1
	uptake  float64 // mg/L/h, mean of the last step
	water   float64 // °C
	kinetic growth.Kinetics
	shape   int // which response to temperature

	brought  float64 // mg COD/L that came with the compost
	fed      float64 // mg COD/L of food that came in so far
	food     float64 // factor on what the additions bring
	transfer float64 // kLa at 20 °C in the brew, 1/h
	surface  float64 // kLa at 20 °C with the air off, 1/h
	ceiling  float64 // saturation of the bubbled vessel against the surface's
	air      float64 // share of the air that arrives; under 1 after a failure nobody logged

	// Ways in which our equations are wrong for this brew. They wander.
	strayUptake   float64 // logarithm of a factor on uptake
	strayTransfer float64 // logarithm of a factor on kLa
	surge         float64 // 1/h, by which strayUptake climbs for a while

	strayFactor float64 // the two as factors, worked out once a knot
	airFactor   float64

	surroundings // what the vessel stands in
	meter        // what its readings pass through

	peakUptake, peakHour float64
	lowestDO, lowestHour float64
	lowUptake, lowWater  float64 // when oxygen was lowest
	belowHour            float64 // first hour under the limit in the future; +Inf if never
	suspected            uint64  // readings this member thinks were wrong, a bit each
	under                float64 // h under the limit since the air was lost
}

// surroundings decide the water's temperature.
type surroundings struct {
	indoors bool
	room    float64 // °C, mean of the room
	cosine  float64 // °C, the room's day as a wave
	sine    float64 // °C
	offset  float64 // °C between forecast and true air, wanders
	cooling float64 // °C that evaporation takes off, at steady state
	lag     float64 // h, time constant of the vessel
	outside bool    // the course of the outdoor air is known
	held    float64 // °C that somebody keeps the water off its course
}

// meter is what lies between the water and the number on the screen.
type meter struct {
	bias  float64 // mg/L
	drift float64 // mg/L/h
	since float64 // h, from when it drifts
	slow  float64 // h, time constant
}

// drawer draws members from the priors.
type drawer struct {
	*numeric.Normals
	setup   *Setup
	climate *climate
}

// between draws a value between two bounds.
func (d *drawer) between(low, high float64) float64 {
	return low + float64((high-low)*d.Uniform.Float64())
}

func (d *drawer) member() member {
	m := member{kinetic: d.kinetics(), shape: d.Uniform.IntN(responseShapes), air: 1, share: 1, food: d.LogNormal(1, 0.25)}
	m.food = d.setup.Learned.ofUptake(m.food)
	d.compost(&m)
	d.airflow(&m)
	d.setup.Learned.ofTransfer(&m, d)
	d.place(&m)
	m.meter = d.meter()
	m.strayUptake = float64(strayUptakeSpread * d.Next())
	m.strayTransfer = float64(strayTransferSpread * d.Next())
	m.refresh()
	row := d.climate.row(m.water)
	m.oxygen = row.saturation * m.ceiling * math.Min(1.12, math.Max(0.3, 0.97+float64(0.08*d.Next())))
	m.before = m.oxygen
	m.lowestDO, m.belowHour = math.Inf(1), math.Inf(1)
	return m
}

// kinetics draws the constants of the living. Medians and spreads cover the
// published ranges (Henze et al. 1987, activated sludge model no. 1; Metcalf
// & Eddy's table of heterotroph kinetics; Curds & Cockburn 1968 for grazers);
// that tea sits in them is a judgement.
func (d *drawer) kinetics() growth.Kinetics {
	return growth.Kinetics{
		Growth:        d.setup.Learned.ofGrowth(d.LogNormal(0.22, 0.60)),
		HalfReady:     d.LogNormal(15, 0.60),
		Yield:         d.between(0.50, 0.68),
		Endogenous:    d.LogNormal(0.011, 0.40),
		FungalGrowth:  d.LogNormal(0.10, 0.40),
		FungalYield:   d.between(0.45, 0.60),
		Hydrolysis:    d.LogNormal(0.10, 0.70),
		HalfSurface:   d.LogNormal(0.05, 0.50),
		Repression:    d.LogNormal(60, 1.20),
		Grazing:       d.LogNormal(0.12, 0.40),
		HalfPrey:      d.LogNormal(80, 0.60),
		PreyFloor:     d.between(0, 10),
		GrazerYield:   d.between(0.35, 0.55),
		GrazerLoss:    0.01,
		HalfOxygen:    d.LogNormal(0.20, 0.40),
		HalfNitrogen:  0.08,
		SlimeShare:    d.between(0, 0.8),
		CellNitrogen:  0.086,
		SlowNitrogen:  d.between(0.02, 0.07),
		InertFraction: 0.08,
	}
}

// compost draws what the compost brings. A suspension of mature compost takes
// up to 2 mg O2/(g VS h) (Lasaridi & Stentiford 2001); how much of it comes
// free in a brew and how many organisms come with it is a judgement, wide on
// purpose.
func (d *drawer) compost(m *member) {
	grams := d.setup.GramsOfCompost()
	strength := d.setup.Learned.ofUptake(d.LogNormal(1, 0.70))
	m.life = growth.Brew{
		Ready:    grams * d.LogNormal(2.5, 0.70) * strength,
		Slow:     grams * d.LogNormal(9, 0.50) * strength,
		Bacteria: 0.02 + grams*d.LogNormal(0.45, 0.90),
		Fungi:    0.005 + grams*d.LogNormal(0.08, 0.90),
		Grazers:  0.001 + grams*d.LogNormal(0.008, 1.0),
		Nitrogen: 0.3 + grams*d.LogNormal(0.35, 0.80),
	}
	m.life.Bound = m.kinetic.CellNitrogen * (m.life.Bacteria + m.life.Fungi + m.life.Grazers)
	m.brought = m.life.Ready + m.life.Slow
	m.fed = m.brought
}

// airflow draws kLa: as believed, times alpha where it was measured in clean
// water. No alpha of compost tea is published; that of waste water in fine and
// coarse bubbles is 0.4 to 0.9.
func (d *drawer) airflow(m *member) {
	t := d.setup.Transfer
	spread := 0.35
	if t.Low95 > 0 && t.High95 > t.Low95 {
		spread = numeric.Log(t.High95.PerHour()/t.Low95.PerHour()) / (2 * 1.96)
	}
	m.transfer = d.LogNormal(t.Estimate.PerHour(), spread)
	if !t.InBrew {
		m.transfer *= math.Min(1.2, d.LogNormal(usualAlpha, 0.18))
	}
	depth := math.Max(0.1, d.setup.Depth.Metres())
	m.surface = d.LogNormal(0.03, 0.6) / depth
	head := d.setup.Depth.Metres() * 9.79 / math.Max(20, d.setup.Pressure.Kilopascals())
	m.ceiling = d.between(0.985, 1.0) * (1 + float64(head*d.between(0.25, 0.5))) * (1 + float64(weatherOfPressure*d.Next()))
}

// weatherOfPressure is how far the air's pressure strays from that of the
// altitude: 2 to 3 % from high to low (memory of the field).
const weatherOfPressure = 0.01

// place draws what the vessel stands in.
func (d *drawer) place(m *member) {
	s := d.setup
	m.water = s.Start.Celsius() + float64(0.3*d.Next())
	litres := math.Max(1, s.Volume.Litres())
	m.lag = d.LogNormal(5.5*numeric.Pow(litres/20, 0.37), 0.45)
	if s.Held != nil {
		m.water, m.room, m.indoors = s.Held.Celsius(), s.Held.Celsius(), true
		return
	}
	m.indoors = d.Uniform.Float64() < 0.5
	if s.Indoors != nil {
		m.indoors = *s.Indoors
	}
	m.room = s.Start.Celsius() + float64(3*d.Next())
	if len(s.Outdoors) > 0 {
		mean := s.Outdoors.Mean(0, 48).Celsius()
		m.room = float64(0.5*m.room) + float64(0.5*(mean+2)) + float64(2*d.Next())
	}
	swing := 1.2
	if !m.indoors && len(s.Outdoors) == 0 {
		swing = 2.8
	}
	m.cosine, m.sine = float64(swing*d.Next()), float64(swing*d.Next())
	m.offset, m.outside = offsetSpread*d.Next(), len(s.Outdoors) > 0
	m.cooling = d.LogNormal(1.2, 0.6)
}

// meter draws how a meter is off: most read within a few tenths, some are
// badly off (USGS field manual; the share is a judgement).
func (d *drawer) meter() meter {
	spread := 0.2
	if d.Uniform.Float64() < 0.25 {
		spread = 1.0
	}
	return meter{
		bias:  float64(spread * d.Next()),
		drift: float64(0.004 * d.Next()),
		slow:  d.LogNormal(60.0/3600, 0.6),
	}
}
