package air

import (
	"aerosteep/fault"
	"aerosteep/numeric"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// exponent is (k-1)/k of air, k = 1.4.
const exponent = 1 / 3.5

// Compression is air on its way through a pump or blower.
type Compression struct {
	Airflow       quantity.Flow     // at inlet conditions
	Inlet, Outlet quantity.Pressure // absolute
	InletTemp     quantity.Temperature
	Efficiency    float64 // shaft, motor and pump together; small air pumps 0.10 to 0.35
}

// highestRatio is where one stage ends; beyond it the ideal figures mislead.
const highestRatio = 3

// Check refuses what no blower does. Errors: of airflow, inlet-pressure,
// outlet-pressure, inlet-temp and efficiency, joined.
func (c Compression) Check() error {
	err := fault.Join(
		quantity.Within("airflow", quantity.Airflow(c.Airflow), 0.01, 50000),
		quantity.Within("inlet-pressure", c.Inlet, Thinnest, Densest),
		quantity.Within("inlet-temp", c.InletTemp, -30, 60),
		quantity.BareWithin("efficiency", c.Efficiency, 0.01, 1),
	)
	if err != nil {
		return err
	}
	if !(c.Outlet > c.Inlet) {
		return c.outletFault("air.outlet-not-above")
	}
	if c.Ratio() > highestRatio {
		return c.outletFault("air.ratio-too-high")
	}
	return nil
}

func (c Compression) outletFault(key string) error {
	places := wording.Places{"inlet": c.Inlet, "outlet": c.Outlet, "highest": highestRatio * c.Inlet}
	given := wording.Say("quantity.given", wording.Places{"given": c.Outlet})
	return fault.New("outlet-pressure", given.String(), wording.Say(key, places),
		wording.Say("air.outlet.allowed", places), wording.Say(key+".advice", places))
}

// Ratio is outlet over inlet pressure, absolute.
func (c Compression) Ratio() float64 { return float64(c.Outlet / c.Inlet) }

// IdealPower returns the power of lossless adiabatic compression.
//
// Formula: Q p1 · 3.5 · [(p2/p1)^(1/3.5) - 1], Q at inlet conditions; it does
// not depend on the inlet's temperature. Source: source.AdiabaticCompression.
func (c Compression) IdealPower() quantity.Power {
	q, p1 := c.Airflow.CubicMetresPerSecond(), c.Inlet.Pascals()
	return quantity.Power(q * p1 / exponent * (numeric.Pow(c.Ratio(), exponent) - 1))
}

// Power returns the power that is drawn: the ideal over the efficiency.
func (c Compression) Power() quantity.Power {
	return c.IdealPower() / quantity.Power(c.Efficiency)
}

// Energy returns what the power comes to over a time.
func (c Compression) Energy(running quantity.Span) quantity.Energy {
	return quantity.Energy(c.Power().Watts() * running.Seconds())
}

// IdealOutletTemperature returns how hot the air leaves a lossless blower; a
// real one's is hotter.
//
// Formula: T2 = T1 (p2/p1)^(1/3.5), in kelvin. Source: as IdealPower.
func (c Compression) IdealOutletTemperature() quantity.Temperature {
	return quantity.Kelvin(c.InletTemp.Kelvin() * numeric.Pow(c.Ratio(), exponent))
}
