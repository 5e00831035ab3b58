package counting

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// FieldDiameter is what the eyepiece shows of the object:
//
//	field number / objective magnification / tube factor
//
// A stage micrometer is better than any printed field number.
func FieldDiameter(fieldNumber quantity.Length, objective, tubeFactor float64) quantity.Length {
	return quantity.Metres(fieldNumber.Metres() / objective / tubeFactor)
}

// Slide is a drop under a cover slip, looked at through one field of view.
type Slide struct {
	FieldDiameter quantity.Length
	CoverSlip     quantity.Area
	Drop          quantity.Volume // all of it lies under the slip
}

// Check refuses a field larger than the slip.
func (s Slide) Check() error {
	if s.FieldArea() > s.CoverSlip {
		return fault.New("field-diameter", "", wording.Say("counting.field-over-slip", wording.Places{"field": s.FieldArea(), "slip": s.CoverSlip}), wording.Say("counting.field-over-slip.allowed"), wording.Say("counting.field-over-slip.advice"))
	}
	return nil
}

// FieldArea is π d²/4.
func (s Slide) FieldArea() quantity.Area { return circle(s.FieldDiameter) }

func circle(diameter quantity.Length) quantity.Area {
	return quantity.SquareMetres(math.Pi / 4 * diameter.Metres() * diameter.Metres())
}

// FieldsPerSlip is how many fields the slip holds.
func (s Slide) FieldsPerSlip() float64 { return float64(s.CoverSlip / s.FieldArea()) }

// VolumeUnder is the part of the drop under an area of the slip.
func (s Slide) VolumeUnder(a quantity.Area) quantity.Volume {
	return s.Drop * quantity.Volume(a/s.CoverSlip)
}

// FieldVolume is the part of the drop under one field.
func (s Slide) FieldVolume() quantity.Volume { return s.VolumeUnder(s.FieldArea()) }

// FilmDepth is drop/slip area.
func (s Slide) FilmDepth() quantity.Length {
	return quantity.Metres(s.Drop.CubicMetres() / s.CoverSlip.SquareMetres())
}

// DeepFilm is the film above which cells lie in several planes, so that one
// has to focus through it. Common practice: a chamber for bacteria is 0.02 mm.
const DeepFilm = quantity.Length(0.02e-3)

// Chamber is the volume over one square of a counting chamber.
func Chamber(field quantity.Area, depth quantity.Length) quantity.Volume {
	return quantity.Litres(field.SquareMetres() * depth.Metres() * 1000)
}

// PerMillilitre scales a mean count of one field to 1 mL of the sample.
// Dilution and concentration are folds: 10 is one part sample in ten, and 50
// is 500 mL brought down to 10 mL.
func PerMillilitre(mean float64, field quantity.Volume, dilution, concentration float64) float64 {
	return mean / field.Millilitres() * dilution / concentration
}

// CarbonDensity is the carbon of bacteria per volume of cell when nobody has
// measured better: 220 fg/µm³. In use are 100 to 400.
//
// Source: Bratbak and Dundas 1984 (value from memory).
const CarbonDensity = quantity.Density(0.22)

// CellMass is the mass in µg/mL of so many cells per mL, by the volume of one
// cell and a density of carbon or of dry matter.
func CellMass(perMillilitre float64, cell quantity.Volume, density quantity.Density) float64 {
	return perMillilitre * density.MassOf(cell).Grams() * 1e6
}
