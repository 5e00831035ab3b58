package oxygen_test

import (
	"math"
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/science/oxygen"
)

// mmHg is a pressure in the unit of the printed tables.
func mmHg(p float64) quantity.Pressure { return quantity.Pressure(p * 0.133322387415) }

// TestSaturationMatchesPublished holds the formula to Standard Methods
// 4500-O:I, EN 25814, the USGS tables, TEOS-10 (GSW) and older tables; each
// row names its source and tolerance.
func TestSaturationMatchesPublished(t *testing.T) {
	for _, file := range []string{"do-saturation.csv", "do-saturation-gsw.csv", "do-saturation-older-tables.csv"} {
		for _, row := range published.Rows(t, file) {
			got := saturation(t, row.Float("temperature_c"), mmHg(row.Float("pressure_mmhg")), row.Float("salinity_psu"))
			row.Check(got, "mg/L")
		}
	}
	for _, row := range published.Rows(t, "saturation-digits.csv") {
		row.Check(saturation(t, row.Float("temperature_c"), quantity.Kilopascals(row.Float("pressure_kpa")), row.Float("salinity_psu")), "mg/L")
	}
	for _, row := range published.Rows(t, "saturation-typing.csv") {
		p := quantity.Kilopascals(row.Float("air_pressure_kPa"))
		row.Check(saturation(t, row.Float("water_temperature_degC"), p, row.Float("salinity_g_per_kg")), "mg/L")
	}
}

func TestSaltMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "salinity-factor.csv") {
		c := row.Float("temperature_c")
		salt := saturation(t, c, quantity.StandardAtmosphere, row.Float("salinity_psu"))
		row.Check(salt/saturation(t, c, quantity.StandardAtmosphere, 0), "1")
	}
	for _, row := range published.Rows(t, "salinity-from-conductance.csv") {
		s, err := oxygen.SaltFromConductivity(quantity.Conductivity(row.Float("specific_conductance_us_per_cm_25c")))
		if err != nil {
			t.Fatal(err)
		}
		row.Check(s.PSU(), "permil")
	}
}

func TestSaturationByPlaceMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "saturation-by-altitude.csv") {
		p, err := air.PressureAt(quantity.Metres(row.Float("altitude_m")))
		if err != nil {
			t.Fatal(err)
		}
		row.Check(saturation(t, row.Float("temperature_c"), p, 0), "mg/L")
	}
	for _, row := range published.Rows(t, "saturation-at-depth.csv") {
		// SaturationAtDepth takes half of the depth.
		depth := 2 * row.Float("submergence_m") * row.Float("fraction_of_submergence")
		c, err := oxygen.SaturationAtDepth(quantity.Celsius(row.Float("temperature_c")), quantity.StandardAtmosphere, 0, quantity.Metres(depth))
		if err != nil {
			t.Fatal(err)
		}
		row.Check(c.MilligramsPerLitre(), "mg/L")
	}
	for _, row := range published.Rows(t, "percent-saturation.csv") {
		held := saturation(t, row.Float("temperature_c"), mmHg(row.Float("pressure_mmhg")), row.Float("salinity_psu"))
		row.Check(oxygen.Percent(quantity.Concentration(row.Float("do_mg_per_l")), quantity.Concentration(held)), "%")
	}
}

// The vapour pressure is held to the ASHRAE table and IAPWS-IF97 values; the
// term is good to 0.15 % from 0 to 40 °C.
func TestVapourPressureMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "vapour-pressure.csv") {
		celsius := row.Float("temperature_c")
		if celsius > 40 || row.Text("check") != "saturation-vapour-pressure" {
			continue
		}
		u, err := oxygen.VapourPressure(quantity.Celsius(celsius))
		if err != nil {
			t.Fatal(err)
		}
		want := row.Float("expected")
		row.Near(u.Pascals(), want, 0.0035*want)
	}
}

// Warmer, higher up or saltier: the water must hold less; deeper, more.
func TestSaturationDirections(t *testing.T) {
	base := saturation(t, 20, 101.325, 0)
	for name, less := range map[string]float64{
		"warmer":  saturation(t, 21, 101.325, 0),
		"thinner": saturation(t, 20, 100, 0),
		"saltier": saturation(t, 20, 101.325, 1),
	} {
		if less >= base {
			t.Errorf("%s: %.3f mg/L, want less than %.3f mg/L", name, less, base)
		}
	}
	deep, err := oxygen.SaturationAtDepth(20, 101.325, 0, 1)
	if err != nil || float64(deep) <= base {
		t.Errorf("1 m deep: %.3f mg/L, %v; want more than %.3f mg/L", float64(deep), err, base)
	}
}

func TestSaturationRefuses(t *testing.T) {
	for name, in := range map[string]struct {
		t     quantity.Temperature
		p     quantity.Pressure
		s     quantity.Salinity
		field string
	}{
		"°F typed as °C":    {68, 101.325, 0, "temp"},
		"atm typed as kPa":  {20, 1, 0, "pressure"},
		"mS/cm as salinity": {20, 101.325, 50, "salinity"},
		"not a number":      {quantity.Temperature(math.NaN()), 101.325, 0, "temp"},
	} {
		got, err := oxygen.Saturation(in.t, in.p, in.s)
		if faults := fault.Of(err); got != 0 || len(faults) != 1 || faults[0].Field != in.field {
			t.Errorf("%s: %v, %v; want one fault of %s", name, got, err, in.field)
		}
	}
	if _, err := oxygen.Saturation(68, 1, 50); len(fault.Of(err)) != 3 {
		t.Errorf("three wrong inputs gave %v, want three faults", err)
	}
}

func saturation(t *testing.T, celsius float64, p quantity.Pressure, salt float64) float64 {
	t.Helper()
	c, err := oxygen.Saturation(quantity.Celsius(celsius), p, quantity.Salinity(salt))
	if err != nil {
		t.Fatal(err)
	}
	return c.MilligramsPerLitre()
}

// A warm mountain morning against the three classes of reading; the figures
// are those of the worked call of the saturation worksheet.
func TestJudge(t *testing.T) {
	const held = quantity.Concentration(8.7397)
	steady, filling := oxygen.CeilingOf(held, true), oxygen.CeilingOf(held, false)
	for _, c := range []struct {
		ceiling oxygen.Ceiling
		reading quantity.Concentration
		want    oxygen.Credibility
	}{
		{steady, 0, oxygen.Plausible}, {steady, 8.93, oxygen.Plausible},
		{steady, 9.3, oxygen.AboveSaturation}, {steady, 10, oxygen.NotCredible},
		{filling, 10, oxygen.AboveSaturation}, {filling, 11.2, oxygen.NotCredible},
	} {
		if got := c.ceiling.Judge(c.reading); got != c.want {
			t.Errorf("%v under %v: %s, want %s", c.reading, c.ceiling, got, c.want)
		}
	}
}

func BenchmarkSaturation(b *testing.B) {
	for i := 0; b.Loop(); i++ {
		oxygen.Saturation(quantity.Temperature(i%40), 93, 0.5)
	}
}
