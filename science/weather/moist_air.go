// Package weather is about the sky over the ground: moist air and the wet
// bulb, the sun and its strength, the hours of a forecast and which of them
// suit. It reads forecasts handed to it and asks nobody; the caller owns the
// clock and the files.
package weather

import (
	"math"

	"aerosteep/quantity"
)

// MoistAir is air with water vapour in it at the pressure of the place.
type MoistAir struct {
	Temperature quantity.Temperature
	Vapour      quantity.Pressure // partial pressure of the water in it
	Pressure    quantity.Pressure // of the air at the place, not at sea level
}

// SaturationVapour is the vapour pressure of water over water from 0 °C, over
// ice below.
//
//	ln p = C1/T + C2 + C3 T + C4 T² + C5 T³ [+ C6 T⁴] + C7 ln T    (Pa, K)
//
// Range: -100 to 200 °C. Source: Hyland and Wexler 1983, as in ASHRAE Handbook
// Fundamentals 2017, chapter 1, equations 5 and 6.
func SaturationVapour(t quantity.Temperature) quantity.Pressure {
	T := t.Kelvin()
	var ln float64
	if t < 0 {
		ln = -5.6745359e3/T + 6.3925247 + T*(-9.6778430e-3+T*(6.2215701e-7+T*(2.0747825e-9-9.4840240e-13*T))) + 4.1635019*math.Log(T)
	} else {
		ln = -5.8002206e3/T + 1.3914993 + T*(-4.8640239e-2+T*(4.1764768e-5-1.4452093e-8*T)) + 6.5459673*math.Log(T)
	}
	return quantity.Pressure(math.Exp(ln) / 1000)
}

// StandardPressure is the pressure of the standard atmosphere at an altitude.
//
//	p = 101.325 (1 - 2.25577e-5 z)^5.2559    (kPa, m)
//
// Range: -5000 to 11 000 m. Source: ASHRAE 2017, chapter 1, equation 3.
func StandardPressure(altitude quantity.Length) quantity.Pressure {
	return AtAltitude(quantity.StandardAtmosphere, altitude)
}

// AtAltitude takes a pressure at sea level up to an altitude by the ratio of
// the standard atmosphere.
func AtAltitude(seaLevel quantity.Pressure, altitude quantity.Length) quantity.Pressure {
	return seaLevel * quantity.Pressure(math.Pow(1-2.25577e-5*altitude.Metres(), 5.2559))
}

// massRatio is the molar mass of water over that of dry air (ASHRAE 2017).
const massRatio = 0.621945

// HumidityRatio is kg of water in 1 kg of dry air.
//
//	W = 0.621945 e / (p - e)
//
// Source: ASHRAE 2017, chapter 1, equation 20.
func HumidityRatio(vapour, pressure quantity.Pressure) float64 {
	return massRatio * float64(vapour/(pressure-vapour))
}

// WithHumidity is air of a relative humidity (percent of saturation).
func WithHumidity(t quantity.Temperature, percent float64, p quantity.Pressure) MoistAir {
	return MoistAir{t, SaturationVapour(t) * quantity.Pressure(percent/100), p}
}

// WithDewPoint is air that would be saturated at the dew point.
func WithDewPoint(t, dewPoint quantity.Temperature, p quantity.Pressure) MoistAir {
	return MoistAir{t, SaturationVapour(dewPoint), p}
}

// WithWetBulb is air in which a wetted thermometer stands at wetBulb. ok is
// false where that would need less vapour than none.
func WithWetBulb(t, wetBulb quantity.Temperature, p quantity.Pressure) (air MoistAir, ok bool) {
	w := ratioAtWetBulb(t, wetBulb, p)
	if w < 0 {
		return MoistAir{}, false
	}
	return MoistAir{t, p * quantity.Pressure(w/(massRatio+w)), p}, true
}

// HumidityRatio is kg of water in 1 kg of dry air.
func (a MoistAir) HumidityRatio() float64 { return HumidityRatio(a.Vapour, a.Pressure) }

// Humidity is the relative humidity in percent.
func (a MoistAir) Humidity() float64 { return 100 * float64(a.Vapour/SaturationVapour(a.Temperature)) }

// driest stands for the dew point of air without vapour: the lower end of the
// vapour pressure formula.
const driest quantity.Temperature = -100

// DewPoint is the temperature at which the air would be saturated: the frost
// point below 0 °C, and never above the air. It turns SaturationVapour round
// by halving.
func (a MoistAir) DewPoint() quantity.Temperature {
	if a.Vapour <= SaturationVapour(driest) {
		return driest
	}
	return halve(driest, a.Temperature, func(t quantity.Temperature) bool { return SaturationVapour(t) > a.Vapour })
}

// WetBulb is the thermodynamic wet-bulb temperature: the t* at which the
// heat taken from the air equals the heat of evaporation up to saturation.
//
//	W = ((2501 - 2.326 t*) Ws* - 1.006 (t - t*)) / (2501 + 1.86 t - 4.186 t*)    t* from 0 °C
//	W = ((2830 - 0.24 t*) Ws* - 1.006 (t - t*)) / (2830 + 1.86 t - 2.1 t*)       below
//
// It is solved by halving between dew point and air temperature, to 1e-6 °C.
// Source: ASHRAE 2017, chapter 1, equations 33 and 35. Stull's formula of 2011
// is for sea level only and is not used.
func (a MoistAir) WetBulb() quantity.Temperature {
	w := a.HumidityRatio()
	return halve(a.DewPoint(), a.Temperature, func(t quantity.Temperature) bool {
		return ratioAtWetBulb(a.Temperature, t, a.Pressure) > w
	})
}

// ratioAtWetBulb is the right-hand side of the wet-bulb equation.
func ratioAtWetBulb(air, wetBulb quantity.Temperature, p quantity.Pressure) float64 {
	t, star := air.Celsius(), wetBulb.Celsius()
	saturated := HumidityRatio(SaturationVapour(wetBulb), p)
	if star >= 0 {
		return ((2501-2.326*star)*saturated - 1.006*(t-star)) / (2501 + 1.86*t - 4.186*star)
	}
	return ((2830-0.24*star)*saturated - 1.006*(t-star)) / (2830 + 1.86*t - 2.1*star)
}

// Depression is how far the wet bulb stands below the air.
func (a MoistAir) Depression() quantity.TemperatureStep {
	return quantity.TemperatureStep(a.Temperature - a.WetBulb())
}

// halve finds where tooHigh turns true between low and high.
func halve(low, high quantity.Temperature, tooHigh func(quantity.Temperature) bool) quantity.Temperature {
	for high-low > 1e-7 {
		middle := (low + high) / 2
		if tooHigh(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return (low + high) / 2
}

// Drying is what a wet-bulb depression means for drops in the air.
type Drying string

// The ratings of a depression.
const (
	DryTooLittle Drying = "too-low" // drops live long and drift far
	DryPreferred Drying = "preferred"
	DryCaution   Drying = "caution"
	DryTooMuch   Drying = "too-high" // drops dry before they land
)

// Rate rates a depression, rounded to 0.01 °C: under 2 too low, to 8
// preferred, to 10 caution, over that too high.
//
// Source: Australian Bureau of Meteorology, spraying conditions ("ideally
// between 2 and 8, not greater than 10").
func Rate(depression quantity.TemperatureStep) Drying {
	switch d := math.Round(depression.Celsius()*100) / 100; {
	case d < 2:
		return DryTooLittle
	case d <= 8:
		return DryPreferred
	case d <= 10:
		return DryCaution
	}
	return DryTooMuch
}
