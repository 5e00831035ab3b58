package oxygen

import (
	"math"

	"aerosteep/fault"
	"aerosteep/numeric"
	"aerosteep/quantity"
)

// TemperatureFactor returns kLa at a temperature over kLa at 20 °C.
//
// Formula: 1.024^(T-20). Range 0 to 40 °C by habit of the field; the caller
// keeps to it. Source: ASCE/EWRI 2-06 (source.ASCE2).
func TemperatureFactor(water quantity.Temperature) float64 {
	return numeric.Exp((water.Celsius() - 20) * lnTheta)
}

const lnTheta = 0.023716526617316065 // ln 1.024

// OxygenInAir is the oxygen in a litre of dry air at 20 °C and 1 atm, 0.27863
// g/L: a density of 1.2041 g/L times a mass share of 0.2314.
//
// It is not thinned at altitude: a bubble gives up a share of its litres, and
// the altitude comes in once, through C*(T, P).
const OxygenInAir = 1.2041 * 0.2314

// Bubbles is the kind of bubble that a diffuser makes.
type Bubbles string

// The three kinds.
const (
	Coarse Bubbles = "coarse" // open tube, drilled pipe
	Medium Bubbles = "medium" // ordinary stone
	Fine   Bubbles = "fine"   // fine stone or membrane, clean and spread
)

// bubbleHabit is what a kind of bubble is taken to do: the share of its oxygen
// given up per metre of depth in clean water (EPA 1989, scaled to shallow
// vessels) and what is left of that in tea (alpha; a guess, no value for
// compost tea is published). Common practice.
var bubbleHabit = map[Bubbles]struct{ perMetre, alpha float64 }{
	Coarse: {0.02, 0.8}, Medium: {0.03, 0.65}, Fine: {0.05, 0.5},
}

// UnknownAlpha is the alpha where nothing is known about the bubbles.
const UnknownAlpha = 0.7

// SOTEPerMetre is the share of its oxygen that air gives up per metre of depth.
func (b Bubbles) SOTEPerMetre() quantity.Share { return quantity.Share(bubbleHabit[b].perMetre) }

// Alpha is kLa in tea over kLa in clean water.
func (b Bubbles) Alpha() float64 {
	if habit, known := bubbleHabit[b]; known {
		return habit.alpha
	}
	return UnknownAlpha
}

// SOTR returns the oxygen that air puts into clean water without oxygen at
// 20 °C and 1 atm.
//
// Formula: Q · 60 · 0.27863 · SOTE per metre · depth, g/h.
//
// Inputs: free air at the site, 0.01 to 50 000 L/min; 0.1 to 12 % per metre;
// depth of water above the diffuser, 0.05 to 5 m. Errors: of airflow,
// sote-per-m and depth, joined. Source: ASCE/EWRI 2-06 (source.ASCE2).
func SOTR(free quantity.Flow, perMetre quantity.Share, depth quantity.Length) (quantity.MassRate, error) {
	err := fault.Join(
		quantity.Within("airflow", quantity.Airflow(free), 0.01, 50000),
		quantity.Within("sote-per-m", perMetre, 0.001, 0.12),
		quantity.Within("depth", depth, 0.05, 5),
	)
	if err != nil {
		return 0, err
	}
	perHour := free.LitresPerMinute() * 60
	return quantity.MassRate(perHour * OxygenInAir * perMetre.Fraction() * depth.Metres()), nil
}

// correlationSpread is the range of kLa about a value reckoned from SOTE per
// metre: 0.7 to 1.3 times. Judged; common to such correlations.
const correlationSpread = 0.3

// KLa20FromSOTR returns the transfer coefficient that goes with a SOTR in a
// volume, with the spread of correlations as its interval.
//
// Formula: kLa20 = SOTR/(C*20 V), C*20 = 9.0924 mg/L. Input: volume 0.5 L to
// 100 m³. Errors: of volume. Source: as SOTR.
func KLa20FromSOTR(sotr quantity.MassRate, volume quantity.Volume) (quantity.Estimate[quantity.PerTime], error) {
	if err := quantity.Within("volume", volume, 0.5, 1e5); err != nil {
		return quantity.Estimate[quantity.PerTime]{}, err
	}
	k := quantity.PerTime(1000 * sotr.GramsPerHour() / (float64(standardSaturation) * volume.Litres()))
	return quantity.PlusMinus(k, correlationSpread*k), nil
}

// SOTRFromKLa20 is KLa20FromSOTR turned round.
func SOTRFromKLa20(kla20 quantity.PerTime, volume quantity.Volume) quantity.MassRate {
	return quantity.MassRate(float64(kla20) * float64(standardSaturation) * volume.Litres() / 1000)
}

// GasVelocity returns the speed of free air over the floor of a round vessel.
func GasVelocity(free quantity.Flow, diameter quantity.Length) quantity.Speed {
	return quantity.Speed(free.CubicMetresPerSecond() / (math.Pi / 4 * diameter.Metres() * diameter.Metres()))
}

// SlowestCorrelated is the gas velocity below which the two correlations are
// extrapolated.
const SlowestCorrelated = quantity.Speed(0.005)

// HeijnenVantRiet returns kLa20 in clean, coalescing water from gas velocity.
//
// Formula: 0.32 v^0.7 1/s, v in m/s; 5 to 300 mm/s, about ±30 %.
// Source: Heijnen & van 't Riet 1984 (source.HeijnenVantRiet1984).
func HeijnenVantRiet(v quantity.Speed) quantity.PerTime {
	return quantity.PerTime(3600 * 0.32 * numeric.Pow(v.MetresPerSecond(), 0.7))
}

// Deckwer returns kLa20 from gas velocity by a second correlation.
//
// Formula: 0.467 v^0.82 1/s, v in m/s. Source: as listed by Shah et al. 1982
// (source.Deckwer1974).
func Deckwer(v quantity.Speed) quantity.PerTime {
	return quantity.PerTime(3600 * 0.467 * numeric.Pow(v.MetresPerSecond(), 0.82))
}
