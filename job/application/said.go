package application

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// SaidDose is a dose as people say it: two cans a bed, a cup a plant, five
// litres a tree.
type SaidDose struct {
	Measures float64         // two
	Measure  quantity.Volume // of a can
	Things   int             // beds, plants, trees, trays
	Ground   quantity.Area   // of all of them; 0 is not known
}

// Answer is what such a dose comes to in all, for one thing, and per area
// (nil where the ground is not known):
//
//	each = measures x measure;  all = each x things;  dose = all / ground
//
// Measures and measure over 0, at least one thing, ground 0 or more.
//
// Source: arithmetic.
func (s SaidDose) Answer() (each, all quantity.Volume, dose *quantity.Dose, err error) {
	if !(s.Measures > 0) || !(s.Measure > 0) || s.Things < 1 || !(s.Ground >= 0) {
		return 0, 0, nil, fault.New("dose", "", wording.Say("application.said"), wording.Say("application.said.allowed"), wording.Text{})
	}
	each = quantity.Volume(s.Measures) * s.Measure
	all = each * quantity.Volume(s.Things)
	if s.Ground > 0 {
		d := quantity.LitresPerSquareMetre(all.Litres() / s.Ground.SquareMetres())
		dose = &d
	}
	return each, all, dose, nil
}

// WayBack is one of the three corrections after the first load.
type WayBack string

const (
	BySpeed    WayBack = "speed"
	ByPressure WayBack = "pressure"
	ByMix      WayBack = "mix"
)

// Rest shares out what is still to be covered after a correction. By speed or
// pressure the rest is mixed as planned; by mix the sprayer goes on as it does
// and the share holds the dose. The lines are full already, so that the dead
// volume is not filled again.
func (l FirstLoad) Rest(way WayBack, holds quantity.Volume, split Split) (Loads, error) {
	c, err := l.Reconcile()
	if err != nil {
		return Loads{}, err
	}
	if !(c.Left > 0) {
		return Loads{}, fault.New("done-area", "", wording.Say("application.nothing-left"), wording.Text{}, wording.Text{})
	}
	rest := Outing{Covers: c.Left.SquareMetres(), Per: quantity.Litres(l.Planned.Mix.LitresPerSquareMetre()), Share: l.Planned.Share, Tank: Tank{Holds: holds}, Split: split}
	if way == ByMix {
		if c.HoldDose == nil {
			return Loads{}, fault.New("mix", "", wording.Say("application.no-hold"), wording.Text{}, wording.Say("application.no-hold.advice"))
		}
		rest.Per, rest.Share = quantity.Litres(c.Actual.Mix.LitresPerSquareMetre()), *c.HoldDose
	}
	return rest.Loads()
}
