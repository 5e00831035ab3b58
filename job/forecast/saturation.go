package forecast

import (
	"aerosteep/numeric"
	"aerosteep/quantity"
)

// saturation at the surface, mg/L (Benson & Krause 1984).
func saturation(t quantity.Temperature, p quantity.Pressure, c quantity.Conductivity) float64 {
	k := t.Kelvin()
	sc := c.MicrosiemensPerCentimetre()
	salt := 5.572e-4*sc + 2.02e-9*sc*sc
	ln := -139.34411 + 1.575701e5/k - 6.642308e7/(k*k) + 1.243800e10/(k*k*k) - 8.621949e11/(k*k*k*k) - salt*(1.7674e-2-10.754/k+2.1407e3/(k*k))
	pw := numeric.Exp(11.8571 - 3840.70/k - 216961/(k*k))
	theta := 0.000975 - 1.426e-5*t.Celsius() + 6.436e-8*t.Celsius()*t.Celsius()
	atm := p.Atmospheres()
	return numeric.Exp(ln) * atm * (1 - pw/atm) * (1 - theta*atm) / ((1 - pw) * (1 - theta))
}
