package oxygen

import "aerosteep/quantity"

// Credibility is what a reading above saturation says about its meter.
type Credibility string

// The verdicts on a reading.
const (
	Plausible       Credibility = "plausible"
	AboveSaturation Credibility = "above-saturation"
	NotCredible     Credibility = "not-credible"
)

// Ceiling is how high a meter can truly read in one vessel.
type Ceiling struct {
	PlausibleTo quantity.Concentration // within the meter's own error
	CredibleTo  quantity.Concentration // for a while, after filling or warming
}

// Meters of the class agree within 0.2 mg/L or 2 %. Water drawn cold and warmed
// from 10 to 20 °C without losing gas stands at 124 % (computed from
// Saturation); bubbling strips such an excess, and 5 % stay for depth and
// temperature errors. The three figures are judged, not measured.
const (
	meterError      = quantity.Concentration(0.2)
	meterErrorShare = 0.02
	warmedExcess    = 1.25
	steadyAirExcess = 1.05
)

// CeilingOf returns how high a meter can read where the water can hold held:
// the saturation, or that at mid-depth in a bubbled vessel. Steady means air on
// and temperature unchanged for an hour or more.
func CeilingOf(held quantity.Concentration, steady bool) Ceiling {
	tolerance := max(meterError, meterErrorShare*held)
	excess := warmedExcess
	if steady {
		excess = steadyAirExcess
	}
	return Ceiling{PlausibleTo: held + tolerance, CredibleTo: quantity.Concentration(excess)*held + tolerance}
}

// Judge says whether a reading can be right. A low reading always can.
func (c Ceiling) Judge(reading quantity.Concentration) Credibility {
	switch {
	case reading <= c.PlausibleTo:
		return Plausible
	case reading <= c.CredibleTo:
		return AboveSaturation
	default:
		return NotCredible
	}
}
