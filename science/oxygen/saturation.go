// Package oxygen tells how much oxygen water can hold, how fast air puts it in
// and life takes it out, and what a test on a vessel says about either. It is
// pure arithmetic: no clock, no files, no settings.
package oxygen

import (
	"aerosteep/fault"
	"aerosteep/numeric"
	"aerosteep/quantity"
	"aerosteep/science/water"
)

// Limits of the saturation formula and of the places where people brew.
const (
	Coldest  = quantity.Temperature(0)
	Warmest  = quantity.Temperature(40)
	Thinnest = quantity.Pressure(50)  // about 5.5 km above the sea
	Densest  = quantity.Pressure(112) // about 0.8 km below it
	Freshest = quantity.Salinity(0)
	Saltiest = quantity.Salinity(40)

	deepest = quantity.Length(10)
)

// Saturation returns the dissolved oxygen that water holds once it is in
// balance with moist air above it: the 100 % mark of a meter.
//
// Formula, with T in kelvin, S salinity and P air pressure in atm:
//
//	ln C1 = -139.34411 + 1.575701e5/T - 6.642308e7/T² + 1.243800e10/T³ - 8.621949e11/T⁴
//	        - S (0.017674 - 10.754/T + 2140.7/T²)
//	C     = C1 P (1 - u/P)(1 - θP) / ((1 - u)(1 - θ))
//
// where u is the vapour pressure of water in atm and θ corrects for oxygen not
// being an ideal gas. Salt is taken not to lower u (under 0.005 % below S 5).
//
// Inputs: water, 0 to 40 °C; air, the absolute pressure at the vessel, not the
// sea-level figure of a weather report, 50 to 112 kPa; salt, 0 to 40.
//
// Errors: a *fault.Fault of temp, pressure or salinity for each input outside
// its range, joined. The result is then 0 and must not be used.
//
// Accuracy: the table of Standard Methods 4500-O:I to its printed 0.01 mg/L.
//
// Source: Benson & Krause 1984 (source.BensonKrause1984), as used in USGS
// memorandum 2011.03 (source.USGS201103).
func Saturation(water quantity.Temperature, air quantity.Pressure, salt quantity.Salinity) (quantity.Concentration, error) {
	if !(water >= Coldest && water <= Warmest && air >= Thinnest && air <= Densest && salt >= Freshest && salt <= Saltiest) {
		err := fault.Join(
			quantity.Within("temp", water, Coldest, Warmest),
			quantity.Within("pressure", air, Thinnest, Densest),
			quantity.Within("salinity", salt, Freshest, Saltiest),
		)
		if err != nil {
			return 0, err
		}
	}
	return saturation(water, air, salt), nil
}

// SaturationAtDepth returns the saturation at the pressure that stands half
// way down to a diffuser: the ceiling of a bubbled vessel, whose bubbles enter
// under the weight of the water.
//
// Formula: Saturation at P + ρ g depth/2. Inputs: as Saturation; depth, of
// water above the diffuser, 0 to 10 m. Errors: as Saturation, and of depth.
//
// Source: mid-depth rule of ASCE/EWRI 2-06 (source.ASCE2).
func SaturationAtDepth(t quantity.Temperature, air quantity.Pressure, salt quantity.Salinity, depth quantity.Length) (quantity.Concentration, error) {
	_, err := Saturation(t, air, salt)
	if err := fault.Join(err, quantity.Within("depth", depth, 0, deepest)); err != nil {
		return 0, err
	}
	head, err := water.Head(t, depth)
	if err != nil {
		return 0, err
	}
	return saturation(t, air+head/2, salt), nil
}

// standardSaturation is Saturation at 20 °C, 1 atm, fresh water: the C* that
// kLa20 and SOTR are reported with.
var standardSaturation = saturation(20, quantity.StandardAtmosphere, 0)

// saturation is the formula alone; the powers of 1/T are multiplied out
// because it runs in the inner loop of a forecast.
func saturation(water quantity.Temperature, air quantity.Pressure, salt quantity.Salinity) quantity.Concentration {
	x := 1 / water.Kelvin()
	lnC1 := -139.34411 + x*(1.575701e5+x*(-6.642308e7+x*(1.243800e10-x*8.621949e11))) -
		float64(salt)*(0.017674+x*(-10.754+x*2140.7))
	if air == quantity.StandardAtmosphere {
		return quantity.Concentration(numeric.Exp(lnC1)) // the pressure term is 1
	}
	P := air.Atmospheres()
	u := vapourPressure(x)
	theta := nonIdeality(water.Celsius())
	return quantity.Concentration(numeric.Exp(lnC1) * (P - u) * (1 - theta*P) / ((1 - u) * (1 - theta)))
}

// vapourPressure returns the vapour pressure of water in atm, x being 1/T in
// 1/K. Within 0.12 % of IAPWS-IF97 from 0 to 40 °C. Source: as Saturation.
func vapourPressure(x float64) float64 {
	return numeric.Exp(11.8571 - x*(3840.70+x*216961))
}

// nonIdeality returns θ, 1/atm, at t °C (not kelvin). Source: as Saturation.
func nonIdeality(t float64) float64 {
	return 0.000975 + t*(-1.426e-5+t*6.436e-8)
}

// VapourPressure returns the pressure of water vapour in air that stands in
// balance with water, by the term that Saturation uses. Range 0 to 40 °C.
// Errors: of temp. Source: as Saturation.
func VapourPressure(water quantity.Temperature) (quantity.Pressure, error) {
	if err := quantity.Within("temp", water, Coldest, Warmest); err != nil {
		return 0, err
	}
	return quantity.StandardAtmosphere * quantity.Pressure(vapourPressure(1/water.Kelvin())), nil
}

// SaltFromConductivity returns the salinity that saturation is lowered by.
//
// Formula: S = 5.572e-4 SC + 2.02e-9 SC², SC in µS/cm at 25 °C. Range 0 to
// 50 000 µS/cm. Errors: of conductivity. Source: USGS memorandum 2011.03
// (source.USGS201103).
func SaltFromConductivity(sc quantity.Conductivity) (quantity.Salinity, error) {
	if err := quantity.Within("conductivity", sc, 0, 50000); err != nil {
		return 0, err
	}
	c := sc.MicrosiemensPerCentimetre()
	return quantity.Salinity(c * (5.572e-4 + 2.02e-9*c)), nil
}

// Percent returns a reading as a share of saturation, in percent: the field
// convention, of the surface and at local pressure.
func Percent(reading, saturation quantity.Concentration) float64 {
	return 100 * float64(reading/saturation)
}

// AtPercent is the reverse of Percent: the oxygen that a meter means which
// shows only percent of saturation.
func AtPercent(percent float64, saturation quantity.Concentration) quantity.Concentration {
	return saturation * quantity.Concentration(percent/100)
}
