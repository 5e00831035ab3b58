package air

import (
	"aerosteep/fault"
	"aerosteep/numeric"
	"aerosteep/quantity"
	"aerosteep/science/water"
)

// Jug is the test of a pump without a curve: a jug of known volume, full of
// water, is held upside down over the diffuser at brewing depth, and one takes
// the time until it is full of air.
type Jug struct {
	Volume quantity.Volume      // 0.1 to 100 L
	Filled quantity.Span        // 0.5 s to 1 h
	Depth  quantity.Length      // of its mouth under the surface, 0 to 10 m
	Water  quantity.Temperature // 0 to 40 °C
	Air    quantity.Temperature // at the pump's inlet, -20 to 50 °C
	Site   quantity.Pressure    // absolute, of the place
}

// FreeAir returns the air that the pump draws in, at the site's pressure and
// the inlet's temperature: what airflow means everywhere else.
//
// In the jug the air stands under the water's weight, has the water's
// temperature and is full of vapour that the pump never moved:
//
//	Q = V/t · (P + ρ g depth - e)/P · T_air/T_water
//
// The vapour that the inlet air brings is left out (1 to 2 %). Errors: of jug,
// filled, depth, temp, air-temp and pressure, joined. Source: ideal gas law;
// vapour pressure by WMO's Magnus formula, e = 6.112 exp[17.62 t/(243.12 + t)]
// hPa (source.WMOMagnus).
func (j Jug) FreeAir() (quantity.Flow, error) {
	err := fault.Join(
		quantity.Within("jug", j.Volume, 0.1, 100),
		quantity.Within("filled", j.Filled, 0.5, quantity.Hours(1)),
		quantity.Within("depth", j.Depth, 0, 10),
		quantity.Within("temp", j.Water, 0, 40),
		quantity.Within("air-temp", j.Air, -20, 50),
		quantity.Within("pressure", j.Site, Thinnest, Densest),
	)
	if err != nil {
		return 0, err
	}
	head, err := water.Head(j.Water, j.Depth)
	if err != nil {
		return 0, err
	}
	dry := j.Site + head - vapour(j.Water)
	return j.Caught() * quantity.Flow(float64(dry/j.Site)*j.Air.Kelvin()/j.Water.Kelvin()), nil
}

// Caught is the air as it stands in the jug: volume over time.
func (j Jug) Caught() quantity.Flow {
	return quantity.Flow(j.Volume.Litres() / j.Filled.Minutes())
}

// vapour is the pressure of saturated water vapour.
func vapour(t quantity.Temperature) quantity.Pressure {
	c := t.Celsius()
	return quantity.Pressure(0.6112 * numeric.Exp(17.62*c/(243.12+c)))
}
