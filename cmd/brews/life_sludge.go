package main

import "math"

// sludge is the activated-sludge kind with storage: ready food goes into a
// stored polymer, growth is on the polymer and needs nitrogen. After ASM3
// (Gujer et al. 1999, Water Sci. Technol. 39(1):183); rates at 20 °C per hour.
type sludge struct {
	ready, slow, stored, living, inert, nitrogen float64

	storing, growing, apart, dying                        float64 // 1/h
	halfReady, halfStored, halfApart, halfN, halfO, theta float64
	yieldStored, yieldGrowth, most                        float64 // most: polymer per living
}

// nitrogenInCells is that of biomass, g N/g COD (ASM3: 0.07); inertShare is
// what of the dead nothing eats (ASM3: 0.2).
const (
	nitrogenInCells = 0.07
	inertShare      = 0.2
)

func newSludge(c chance, b brought) func() life {
	s := sludge{
		ready: b.allReady(), slow: b.allSlow(), living: b.organisms(),
		nitrogen: b.nitrogen + b.compost*b.nitrogenPerG + c.wide(0.1, 5),
		storing:  c.wide(4, 14) / 24, growing: c.wide(3, 12) / 24, apart: c.wide(1.5, 8) / 24, dying: c.between(0.15, 0.6) / 24,
		halfReady: c.wide(2, 40), halfStored: c.between(0.1, 1), halfApart: c.wide(0.1, 1), halfN: c.wide(0.02, 0.5),
		halfO: c.wide(0.05, 0.5), theta: c.between(1.05, 1.09),
		yieldStored: c.between(0.75, 0.88), yieldGrowth: c.between(0.55, 0.68), most: c.between(0.6, 3),
	}
	s.stored = s.living * c.between(0, 0.2)
	return func() life { t := s; return &t }
}

func (s *sludge) feed(_ float64, m meal) {
	s.ready, s.slow, s.nitrogen = s.ready+m.ready, s.slow+m.slow, s.nitrogen+m.nitrogen
}

func (s *sludge) left() float64 { return s.ready + s.slow + s.stored + s.living + s.inert }

func (s *sludge) step(now moment) float64 {
	full := math.Max(0, now.hours*math.Pow(s.theta, now.water-20)*s.living)
	air := part(now.oxygen, s.halfO)
	perLiving := s.stored / s.living
	storing := math.Min(s.ready, full*s.storing*part(s.ready, s.halfReady)*air*math.Max(0, 1-perLiving/s.most))
	growing := math.Min(s.stored*s.yieldGrowth, full*s.growing*part(perLiving, s.halfStored)*part(s.nitrogen, s.halfN)*air)
	growing = math.Min(growing, s.nitrogen/nitrogenInCells)
	apart := math.Min(s.slow, full*s.apart*part(s.slow/s.living, s.halfApart))
	dying := full * s.dying * air
	burning := math.Min(s.stored-growing/s.yieldGrowth, s.stored*now.hours*s.dying*air)
	s.ready += apart - storing
	s.slow -= apart
	s.stored += storing*s.yieldStored - growing/s.yieldGrowth - burning
	s.living += growing - dying
	s.inert += dying * inertShare
	s.nitrogen += nitrogenInCells * (0.9*dying - growing + 0.3*apart)
	oxygen := storing*(1-s.yieldStored) + growing*(1/s.yieldGrowth-1) + dying*(1-inertShare) + burning
	return oxygen / now.hours
}
