// Package bench is what a grower judges before anything goes into the tank:
// how wet and rich a pile is and what it wants added, whether its temperature
// log proves it was hot enough, what a compost of unknown origin may be used
// on, and the tally at the microscope.
package bench

import (
	"aerosteep/quantity"
)

// Material is one part of a pile. Carbon and nitrogen are shares of the dry
// matter, moisture is a share of the wet mass, as laboratories print them.
type Material struct {
	Name                       string
	Carbon, Nitrogen, Moisture quantity.Share
}

func (m Material) dry() float64 { return 1 - m.Moisture.Fraction() }

// Part is so much of a material, wet.
type Part struct {
	Material
	Mass quantity.Mass
}

// Blend is several parts mixed.
type Blend struct {
	Mass, Dry, Carbon, Nitrogen quantity.Mass
}

// Mix adds the parts up:
//
//	moisture = sum of water / sum of wet mass
//	C:N      = sum Q C (1 - M) / sum Q N (1 - M)
//
// Source: Cornell Waste Management Institute, compost mixture calculations
// (Richard and Trautmann 1996).
func Mix(parts ...Part) Blend {
	var b Blend
	for _, p := range parts {
		dry := p.Mass * quantity.Mass(p.dry())
		b.Mass += p.Mass
		b.Dry += dry
		b.Carbon += dry * quantity.Mass(p.Carbon)
		b.Nitrogen += dry * quantity.Mass(p.Nitrogen)
	}
	return b
}

// And is the blend with a part more.
func (b Blend) And(p Part) Blend {
	more := Mix(p)
	return Blend{b.Mass + more.Mass, b.Dry + more.Dry, b.Carbon + more.Carbon, b.Nitrogen + more.Nitrogen}
}

// Moisture is the water of the wet mass.
func (b Blend) Moisture() quantity.Share { return quantity.Share((b.Mass - b.Dry) / b.Mass) }

// CarbonToNitrogen is C:N by mass.
func (b Blend) CarbonToNitrogen() float64 { return float64(b.Carbon / b.Nitrogen) }

// hair lets a ratio of exactly 25 stand in spite of rounding.
const hair = 1e-9

// The start of a hot pile: C:N by 7 CFR 205.203(c)(2), moisture by the Cornell
// pages.
func (b Blend) StartRatioOK() bool {
	return within(b.CarbonToNitrogen(), LeanestRatio, RichestRatio)
}

// StartMoistureOK is 50 to 60 %.
func (b Blend) StartMoistureOK() bool { return within(b.Moisture().Percent(), 50, 60) }

func within(v, low, high float64) bool { return v >= low*(1-hair) && v <= high*(1+hair) }

// ForRatio is how much of a material brings the blend to a C:N:
//
//	x = (R N - C) / ((1 - M2)(C2 - R N2))
//
// It is not possible where that is below zero or the material has that very
// ratio itself.
//
// Source: as Mix.
func (b Blend) ForRatio(m Material, ratio float64) (quantity.Mass, bool) {
	lacking := ratio*float64(b.Nitrogen) - float64(b.Carbon)
	if lacking > -hair*float64(b.Carbon) && lacking < hair*float64(b.Carbon) {
		return 0, true
	}
	brings := m.dry() * (m.Carbon.Fraction() - ratio*m.Nitrogen.Fraction())
	return needed(lacking, brings)
}

// ForMoisture is how much of a material brings the blend to a moisture:
//
//	x = (Q1 G - Q1 M1) / (M2 - G)
//
// Source: as Mix.
func (b Blend) ForMoisture(m Material, goal quantity.Share) (quantity.Mass, bool) {
	water := float64(b.Mass - b.Dry)
	lacking := goal.Fraction()*float64(b.Mass) - water
	if lacking > -hair*float64(b.Mass) && lacking < hair*float64(b.Mass) {
		return 0, true
	}
	return needed(lacking, m.Moisture.Fraction()-goal.Fraction())
}

// needed divides what is lacking by what a gram brings.
func needed(lacking, brings float64) (quantity.Mass, bool) {
	if brings > -1e-12 && brings < 1e-12 || lacking/brings < 0 {
		return 0, false
	}
	return quantity.Grams(lacking / brings), true
}
