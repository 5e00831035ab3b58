package main

import "math"

// hoard is cells that take food in faster than they grow and grow by what they
// hold (Droop 1968, J. Mar. Biol. Assoc. UK 48:689), with a bag of compost that
// leaches for hours and a film on the wall, which grows until the wall is full
// and eats as its surface lets it. Rates at 20 °C per hour.
type hoard struct {
	bag, ready, slow, held, cells, film, inert float64

	leaching, apart, taking, growing, keeping, filmEats, sheds float64 // 1/h
	halfTaking, halfFilm, halfO, halfFilmO, warm               float64
	least, most                                                float64 // held per cell, COD/COD
	yieldTaken, yieldGrown, yieldFilm, wall                    float64 // wall: the most film, mg COD/L
}

func newHoard(c chance, b brought) func() life {
	h := hoard{
		ready: b.ready, slow: b.slow, cells: b.organisms() * c.between(0.3, 1), film: c.wide(0.01, 0.3),
		leaching: math.Ln2 / c.wide(1.5, 15), apart: c.wide(0.5, 4) / 24, taking: c.wide(0.3, 1.5), growing: c.wide(3, 14) / 24,
		keeping: c.between(0.2, 0.8) / 24, filmEats: c.wide(0.05, 0.4), sheds: c.between(0.005, 0.03),
		halfTaking: c.wide(5, 40), halfFilm: c.wide(5, 60), halfO: c.wide(0.05, 0.3), halfFilmO: c.wide(0.5, 3), warm: c.between(1.045, 1.085),
		least: c.between(0.1, 0.4), yieldTaken: c.between(0.85, 0.95), yieldGrown: c.between(0.58, 0.72), yieldFilm: c.between(0.45, 0.62),
		wall: c.wide(2, 40),
	}
	h.most = h.least * c.between(2.5, 8)
	h.held = h.cells * h.least * c.between(1, 2)
	h.bag = b.compost * b.strength
	inWater := h.bag * b.compostReady * c.between(0, 0.6)
	h.bag, h.ready = h.bag-inWater, h.ready+inWater
	return func() life { t := h; return &t }
}

func (h *hoard) feed(_ float64, m meal) { h.ready, h.slow = h.ready+m.ready, h.slow+m.slow }

func (h *hoard) left() float64 {
	return h.bag + h.ready + h.slow + h.held + h.cells + h.film + h.inert
}

func (h *hoard) step(now moment) float64 {
	warm := now.hours * math.Pow(h.warm, now.water-20)
	air := part(now.oxygen, h.halfO)
	leached := h.bag * (1 - math.Exp(-warm*h.leaching))
	apart := h.slow * (1 - math.Exp(-warm*h.apart))
	perCell := h.held / h.cells
	taken := math.Min(h.ready, warm*h.taking*h.cells*air*part(h.ready, h.halfTaking)*math.Max(0, 1-perCell/h.most))
	grown := math.Min(h.held*h.yieldGrown*0.9, warm*h.growing*h.cells*air*math.Max(0, 1-h.least/math.Max(perCell, 1e-9)))
	kept := warm * h.keeping * h.cells * air
	died := 0.15 * kept
	filmed, built := h.byFilm(warm, now.oxygen, h.ready-taken)
	shed := warm * h.sheds * h.film
	h.bag -= leached
	h.slow -= apart
	h.ready += leached + apart - taken - filmed + 0.7*died
	h.held += taken*h.yieldTaken - grown/h.yieldGrown
	h.cells += grown - kept - died + 0.5*shed
	h.film += built - shed
	h.inert += 0.5*shed + 0.3*died
	oxygen := taken*(1-h.yieldTaken) + grown*(1/h.yieldGrown-1) + kept + filmed - built
	return oxygen / now.hours
}

// byFilm is the food that the film takes and the film it builds. Its surface
// feeds it, so that it eats as the root of what there is; a full wall builds no
// more and burns all.
func (h *hoard) byFilm(warm, oxygen, food float64) (filmed, built float64) {
	rate := warm * h.filmEats * math.Sqrt(h.film*h.wall) * part(food, h.halfFilm) * part(oxygen, h.halfFilmO)
	filmed = math.Min(food, rate)
	return filmed, filmed * h.yieldFilm * math.Max(0, 1-h.film/h.wall)
}
