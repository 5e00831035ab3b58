// Package air tells what stands between a pump and the bubbles: the pressure
// of the place, of the water, of tubes and stones, the air that comes out in
// the end and the power it takes.
package air

import (
	"math"

	"aerosteep/fault"
	"aerosteep/numeric"
	"aerosteep/quantity"
)

// Limits of place.
const (
	Lowest   = quantity.Length(-500)
	Highest  = quantity.Length(5000)
	Thinnest = quantity.Pressure(50)
	Densest  = quantity.Pressure(112)
)

// PressureAt returns the pressure of the standard atmosphere at an altitude:
// what a barometer there shows on an ordinary day.
//
// Formula: P = 101.325 (1 - 2.25577e-5 z)^5.2559 kPa, z in m, -500 to 5000 m.
// Weather moves it by 2 to 3 %. Errors: of altitude.
// Source: ASHRAE Fundamentals (source.ASHRAEAtmosphere).
func PressureAt(altitude quantity.Length) (quantity.Pressure, error) {
	if err := quantity.Within("altitude", altitude, Lowest, Highest); err != nil {
		return 0, err
	}
	return quantity.StandardAtmosphere * quantity.Pressure(thinning(altitude)), nil
}

// thinning is the pressure at an altitude over that at the sea.
func thinning(altitude quantity.Length) float64 {
	return numeric.Pow(1-2.25577e-5*altitude.Metres(), 5.2559)
}

// StationPressure returns what a barometer at the site shows when a weather
// report, which is brought down to the sea, gives a pressure.
//
// Formula: the reported pressure times the standard atmosphere's ratio at the
// altitude. Inputs: 87 to 109 kPa; -500 to 5000 m; the result must lie within
// 50 to 112 kPa. Errors: of sea-level-pressure and altitude, joined.
// Source: as PressureAt.
func StationPressure(seaLevel quantity.Pressure, altitude quantity.Length) (quantity.Pressure, error) {
	err := fault.Join(
		quantity.Within("sea-level-pressure", seaLevel, 87, 109),
		quantity.Within("altitude", altitude, Lowest, Highest),
	)
	if err != nil {
		return 0, err
	}
	station := seaLevel * quantity.Pressure(thinning(altitude))
	return station, quantity.Within("sea-level-pressure", station, Thinnest, Densest)
}

// gasConstant is that of dry air, J/(kg K) (U.S. Standard Atmosphere 1976).
const gasConstant = 287.055

// Density returns the density of dry air.
//
// Formula: ρ = P/(287.055 T), kg/m³ (= g/L).
func Density(t quantity.Temperature, p quantity.Pressure) quantity.Density {
	return quantity.Density(p.Pascals() / (gasConstant * t.Kelvin()) / 1000)
}

// viscosity returns the dynamic viscosity of air, Pa·s, by Sutherland's
// formula: 1.458e-6 T^1.5/(T + 110.4). Source: U.S. Standard Atmosphere 1976.
func viscosity(t quantity.Temperature) float64 {
	T := t.Kelvin()
	return 1.458e-6 * T * math.Sqrt(T) / (T + 110.4)
}
