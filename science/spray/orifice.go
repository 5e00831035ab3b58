package spray

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Limits of the discharge coefficient of a spray nozzle.
const (
	LeastDischarge = 0.5
	UsualDischarge = 0.9 // common practice; measure the opening where you can
	MostDischarge  = 1.0
	waterDensity   = 1000 // kg/m³
)

// Orifice is the diameter of the round hole that would pass a flow:
//
//	d = sqrt(4 Q / (π Cd sqrt(2 ΔP / ρ)))   with ρ = 1000 kg/m³
//
// flow and pressure (gauge, at the nozzle) must be over 0; discharge is Cd,
// 0.5 to 1. The real opening of a flat-fan tip is not round: its smallest
// passage is narrower than this.
//
// Source: orifice equation Q = Cd A sqrt(2 ΔP / ρ), any hydraulics text.
func Orifice(flow quantity.Flow, pressure quantity.Pressure, discharge float64) (quantity.Length, error) {
	if err := overZero(amount("nozzle-flow", flow), amount("pressure", pressure)); err != nil {
		return 0, err
	}
	if !(discharge >= LeastDischarge && discharge <= MostDischarge) {
		return 0, fault.New("discharge-coefficient", "", wording.Say("spray.discharge", wording.Places{"value": discharge}),
			wording.Say("spray.discharge.allowed"), wording.Say("spray.discharge.advice"))
	}
	velocity := discharge * math.Sqrt(2*pressure.Pascals()/waterDensity)
	return quantity.Metres(math.Sqrt(4 * flow.CubicMetresPerSecond() / (math.Pi * velocity))), nil
}
