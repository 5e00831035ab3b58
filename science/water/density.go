package water

import "aerosteep/quantity"

// Density returns the density of air-free fresh water at 1 atm.
//
// Formula, with t in °C, in kg/m³:
//
//	ρ = (999.83952 + 16.945176 t - 7.9870401e-3 t² - 46.170461e-6 t³
//	     + 105.56302e-9 t⁴ - 280.54253e-12 t⁵) / (1 + 16.879850e-3 t)
//
// Range 0 to 150 °C; a temperature outside 0 to 100 °C is a fault of temp.
// Source: Kell 1975 (source.Kell1975).
func Density(water quantity.Temperature) (quantity.Density, error) {
	if err := quantity.Within("temp", water, 0, 100); err != nil {
		return 0, err
	}
	t := water.Celsius()
	above := 999.83952 + t*(16.945176+t*(-7.9870401e-3+t*(-46.170461e-6+t*(105.56302e-9-t*280.54253e-12))))
	return quantity.Density(above / (1 + 16.879850e-3*t) / 1000), nil
}

// StandardGravity is the conventional acceleration of free fall, m/s² (exact;
// BIPM, SI Brochure).
const StandardGravity = 9.80665

// Head returns the pressure of a column of water, above that of the air.
//
// Formula: p = ρ g h. Errors: as Density.
func Head(water quantity.Temperature, column quantity.Length) (quantity.Pressure, error) {
	rho, err := Density(water)
	if err != nil {
		return 0, err
	}
	return quantity.Pressure(rho.GramsPerMillilitre() * StandardGravity * column.Metres()), nil
}
