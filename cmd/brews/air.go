package main

import (
	"math"

	"aerosteep/quantity"
	"aerosteep/science/oxygen"
)

// minute is the step of a brew, h.
const minute = 1.0 / 60

// airing is the air that a vessel really gets.
type airing struct {
	kla20    float64   // 1/h, in this tea
	wander   []float64 // of its logarithm, by the minute
	pressure []float64 // kPa, by the minute
	depth    float64   // m, of water over the diffuser
	carries  float64   // share of the half depth's extra saturation that is reached
	salt     quantity.Salinity
	surface  float64 // 1/h, of the open surface

	clogFrom, clogRate  float64 // h; share lost in an hour
	foamOver, foamTakes float64 // mg/(L h) of uptake; share of kLa
	foam                float64 // 0 to 1, now
	lastWater           float64 // °C, of which the two saturations are known
	lastAbove           float64 // mg/L, at the surface
	lastCeiling         float64 // mg/L, of the bubbles
}

// newAiring draws what nobody wrote down about the air. Sizes are a judgement,
// but for the exchange of an open surface, 0.01 to 0.05 m/h. Bubbles that have
// lost oxygen on the way, and water that turns over to the open air, keep a brew
// under the mid-depth rule: 0 to 0.8 of it, a judgement.
func newAiring(c chance, kla20, pressure, depth, planned float64, salt quantity.Salinity) airing {
	steps := int(planned*60) + 2
	a := airing{
		kla20: kla20, depth: depth, carries: c.between(0, 0.8), salt: salt, surface: c.wide(0.01, 0.05) / depth,
		wander:   c.wander(steps, minute, c.between(0.05, 0.11), c.between(1.5, 8)),
		pressure: c.wander(steps, minute, 0.006*pressure, 30),
		clogFrom: math.Inf(1), foamOver: math.Inf(1), lastWater: -99,
	}
	for i := range a.pressure {
		a.pressure[i] += pressure
	}
	if c.happens(0.3) {
		a.clogFrom, a.clogRate = c.between(0, planned/2), c.wide(0.002, 0.015)
	}
	if c.happens(0.3) {
		a.foamOver, a.foamTakes = c.wide(3, 40), c.between(0.1, 0.4)
	}
	return a
}

// kla is the transfer by bubbles at a minute, 1/h.
func (a *airing) kla(at int, water, uptake, left float64) float64 {
	hour := float64(at) * minute
	up := 1 / (1 + math.Exp(-4*(uptake/a.foamOver-1)))
	if math.IsInf(a.foamOver, 1) {
		up = 0
	}
	a.foam += (up - a.foam) * minute // foam comes and goes within an hour
	clogged := math.Exp(-a.clogRate * math.Max(0, hour-a.clogFrom))
	if math.IsInf(a.clogFrom, 1) {
		clogged = 1
	}
	return a.kla20 * left * clogged * (1 - a.foamTakes*a.foam) * math.Exp(a.wander[at]) * oxygen.TemperatureFactor(quantity.Celsius(water))
}

// saturations are those of the bubbles, half way down, and of the surface,
// mg/L. They are worked out anew when the water has changed by a hundredth.
func (a *airing) saturations(at int, water float64) (below, above float64) {
	if math.Abs(water-a.lastWater) < 0.01 && at%60 != 0 {
		return a.lastCeiling, a.lastAbove
	}
	p := quantity.Kilopascals(a.pressure[at])
	t := quantity.Celsius(math.Min(39, water))
	deep, err := oxygen.SaturationAtDepth(t, p, a.salt, quantity.Metres(a.depth))
	top, err2 := oxygen.Saturation(t, p, a.salt)
	if err != nil || err2 != nil {
		panic("a brew outside the range of saturation was drawn")
	}
	a.lastWater, a.lastCeiling, a.lastAbove = water, float64(top)+a.carries*float64(deep-top), float64(top)
	return a.lastCeiling, a.lastAbove
}

// breathe is the oxygen a minute later, mg/L: exact for a transfer and an uptake
// that fall with what is left, so that it never goes under nothing.
func (a *airing) breathe(at int, dissolved, water, uptake, left float64) float64 {
	below, above := a.saturations(at, water)
	bubbles := a.kla(at, water, uptake, left)
	gone := uptake / math.Max(dissolved, 1e-3)
	all := bubbles + a.surface + gone
	toward := (bubbles*below + a.surface*above) / all
	return toward + (dissolved-toward)*math.Exp(-all*minute)
}
