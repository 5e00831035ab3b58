package forecast

import (
	"aerosteep/quantity"
	"aerosteep/science/oxygen"
)

// saturation at the surface, mg/L. Water beyond the formula's range is taken
// at its end: no brew is there.
func saturation(t quantity.Temperature, s *Setup) float64 {
	salt, err := oxygen.SaltFromConductivity(min(50000, max(0, s.Conductivity)))
	if err != nil {
		return 0
	}
	held, err := oxygen.Saturation(
		min(oxygen.Warmest, max(oxygen.Coldest, t)),
		min(oxygen.Densest, max(oxygen.Thinnest, s.Pressure)), salt)
	if err != nil {
		return 0
	}
	return held.MilligramsPerLitre()
}

// SaturationAt is what the water of this brew can hold at a temperature.
func (s *Setup) SaturationAt(t quantity.Temperature) quantity.Concentration {
	return quantity.MilligramsPerLitre(saturation(t, s))
}
