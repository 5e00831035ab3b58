package main

import "math"

// curve has no organisms: bumps of uptake in time over a base, with a wander,
// warmed by Q10 and slowed by want of oxygen. It is what a forecast would meet
// if none of the books about sludge told it anything.
type curve struct {
	bumps       []bump
	base, rise  float64   // mg/(L h); rise: its growth by the end, 0 to 2
	wander      []float64 // of the logarithm, one value each tenth of an hour
	q10, halfO  float64
	lag, spread float64 // of what is fed later: hours to its top, shape
	burned      float64 // share of a food's COD that is burned
	planned     float64
}

// bump is uptake that comes and goes: lognormal or gamma in time.
type bump struct {
	from, area, top, shape float64 // h, mg O2/L, h after from, –
	gamma                  bool
}

// at is the uptake of a bump, mg/(L h).
func (b bump) at(hour float64) float64 {
	t := hour - b.from
	if t <= 0 {
		return 0
	}
	if b.gamma {
		k := 1 + 1/(b.shape*b.shape) // mode at (k-1) × scale
		scale := b.top / (k - 1)
		g, _ := math.Lgamma(k)
		return b.area * math.Exp((k-1)*math.Log(t/scale)-t/scale-g) / scale
	}
	z := (math.Log(t/b.top) - b.shape*b.shape) / b.shape // mode at top
	return b.area / (t * b.shape * math.Sqrt(2*math.Pi)) * math.Exp(-z*z/2)
}

func newCurve(c chance, b brought) func() life {
	s := curve{
		base: b.compost * c.wide(0.005, 0.05), rise: c.between(0, 2), planned: b.planned, burned: c.between(0.25, 0.6),
		wander: c.wander(10*200, 0.1, c.between(0.04, 0.2), c.between(1, 6)),
		q10:    c.between(1.6, 2.6), halfO: c.wide(0.05, 0.8), lag: c.between(2, 8), spread: c.between(0.3, 0.7),
	}
	area := s.burned * (b.allReady() + b.allSlow()*c.between(0.2, 0.9)) * c.factor(0.3)
	count := 1 + c.IntN(3)
	for n := range count {
		share := c.between(0.6, 1.4) / float64(count)
		top := c.between(3, 14) + float64(n)*c.between(3, 10)
		s.bumps = append(s.bumps, bump{0, area * share, top, c.between(0.2, 0.8), c.happens(0.5)})
	}
	return func() life {
		t := s
		t.bumps = append([]bump(nil), s.bumps...)
		return &t
	}
}

func (s *curve) feed(hour float64, m meal) {
	s.bumps = append(s.bumps, bump{hour, s.burned * (m.ready + 0.4*m.slow), s.lag, s.spread, false})
}

func (s *curve) left() float64 { return math.NaN() }

func (s *curve) step(now moment) float64 {
	uptake := s.base * (1 + s.rise*now.hour/s.planned)
	for _, b := range s.bumps {
		uptake += b.at(now.hour)
	}
	at := min(len(s.wander)-1, int(now.hour*10))
	return uptake * math.Exp(s.wander[at]) * math.Pow(s.q10, (now.water-20)/10) * part(now.oxygen, s.halfO)
}
