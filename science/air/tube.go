package air

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
)

// Tube is the way from a pump to a diffuser.
type Tube struct {
	Bore, Length quantity.Length
	Fittings     int     // elbows and connectors, K 0.9 each
	ExtraK       float64 // further loss coefficients; a non-return valve 2 to 10
}

// elbow is the loss coefficient of one elbow or connector (common handbook
// value, from memory).
const elbow = 0.9

// Check refuses a tube that cannot be. Errors: of tube-bore, tube-length,
// fittings and extra-k, joined.
func (t Tube) Check() error {
	return fault.Join(
		quantity.Within("tube-bore", t.Bore, 0.001, 0.2),
		quantity.Within("tube-length", t.Length, 0, 200),
		quantity.BareWithin("fittings", float64(t.Fittings), 0, 100),
		quantity.BareWithin("extra-k", t.ExtraK, 0, 1000),
	)
}

// Loss returns the pressure that a tube with its fittings takes.
//
// Formula: [f L/D + K] ρ v²/2. Free air at its own temperature and pressure;
// its squeezing in the tube (a few per cent) is left out.
// Source: Darcy-Weisbach (source.DarcyWeisbach).
func (t Tube) Loss(free quantity.Flow, air quantity.Temperature, site quantity.Pressure) quantity.Pressure {
	if free == 0 {
		return 0
	}
	bore := t.Bore.Metres()
	rho := 1000 * Density(air, site).GramsPerMillilitre()
	v := free.CubicMetresPerSecond() / (math.Pi / 4 * bore * bore)
	re := rho * v * bore / viscosity(air)
	k := friction(re)*t.Length.Metres()/bore + elbow*float64(t.Fittings) + t.ExtraK
	return quantity.Pressure(k * rho * v * v / 2 / 1000)
}

// The Reynolds numbers up to which flow is laminar and from which it is
// turbulent.
const (
	laminarTo     = 2300
	turbulentFrom = 4000
)

// friction returns the Darcy friction factor of a smooth tube: 64/Re to 2300,
// Blasius 0.3164 Re^-0.25 from 4000, and between them straight in Re, so that
// the curve has no step (own choice: no formula is reliable there).
func friction(re float64) float64 {
	switch {
	case re <= laminarTo:
		return 64 / re
	case re >= turbulentFrom:
		return blasius(re)
	default:
		laminar, turbulent := 64./laminarTo, blasius(turbulentFrom)
		return laminar + (turbulent-laminar)*(re-laminarTo)/(turbulentFrom-laminarTo)
	}
}

func blasius(re float64) float64 { return 0.3164 / math.Sqrt(math.Sqrt(re)) }
