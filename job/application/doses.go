package application

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
)

// CustomaryDose is how much undiluted tea people put on for a use.
type CustomaryDose struct {
	Use       string
	Low, High quantity.Dose
	OnLeaves  bool // scales with the height of the canopy
	Measured  bool // rests on a trial; else on habit
	Source    source.Source
}

// per1000SquareFeet is the unit of lawns.
func per1000SquareFeet(v quantity.Volume) quantity.Dose {
	return quantity.LitresPerSquareMetre(v.Litres() / quantity.SquareFeet(1000).SquareMetres())
}

var (
	pint          = quantity.USGallons(1) / 8
	pintPer1000   = per1000SquareFeet(pint)
	gallonPer1000 = per1000SquareFeet(quantity.USGallons(1))
)

// CustomaryDoses are the doses in circulation. No agronomic standard exists;
// only the greens rest on a trial.
var CustomaryDoses = []CustomaryDose{
	{"foliar", quantity.USGallonsPerAcre(5), quantity.USGallonsPerAcre(10), true, false, source.CommonPractice},
	{"foliar-garden", pintPer1000, pintPer1000, true, false, source.BuildingSoils},
	{"soil", quantity.USGallonsPerAcre(15), quantity.USGallonsPerAcre(20), false, false, source.CommonPractice},
	{"lawn", gallonPer1000 / 2, gallonPer1000 * 2, false, false, source.CommonPractice},
	{"greens", gallonPer1000, gallonPer1000, false, true, source.GreensTrial},
}

// canopyStep is the height that one foliar dose is meant for: 6 ft (Nauta,
// Building Soils Naturally; common practice).
var canopyStep = quantity.Feet(6)

// CanopyFactor multiplies a foliar dose for tall plants:
//
//	max(1, height / 6 ft)
//
// for uses on leaves, else 1. Height 0.1 to 30 m; 0 is not known and leaves
// the dose as it is. Common practice, no measurement found.
func (d CustomaryDose) CanopyFactor(height quantity.Length) float64 {
	if !d.OnLeaves {
		return 1
	}
	return max(1, float64(height/canopyStep))
}

// Uses lists the uses in order.
func Uses() []string {
	uses := make([]string, len(CustomaryDoses))
	for i, d := range CustomaryDoses {
		uses[i] = d.Use
	}
	return uses
}

// DoseFor finds the dose of a use.
func DoseFor(use string) (CustomaryDose, error) {
	for _, d := range CustomaryDoses {
		if d.Use == use {
			return d, nil
		}
	}
	wrong := fault.New("use", use, wording.Say("application.use", wording.Places{"use": use}),
		wording.Say("application.use.allowed", wording.Places{"uses": Uses()}), wording.Text{})
	wrong.Nearest = fault.Nearest(use, Uses())
	return CustomaryDose{}, wrong
}
