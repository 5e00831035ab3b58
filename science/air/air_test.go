package air_test

import (
	"math"
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/science/water"
)

func TestPressureMatchesPublished(t *testing.T) {
	rows := published.Rows(t, "pressure-altitude.csv")
	for _, row := range published.Where(rows, "check", "standard-atmosphere-pressure") {
		p, err := air.PressureAt(quantity.Metres(row.Float("altitude_m")))
		if err != nil {
			t.Fatal(err)
		}
		row.Check(p.Pascals(), "Pa")
	}
	// The other two ways of bringing a report to the site use the air's own
	// temperature or a straight line; they meet ours within 0.1 % near the sea.
	for _, row := range published.Where(rows, "check", "station-pressure-from-sea-level") {
		p, err := air.StationPressure(quantity.Pressure(row.Float("sea_level_pressure_pa")/1000), quantity.Metres(row.Float("altitude_m")))
		if err != nil {
			t.Fatal(err)
		}
		row.Near(p.Pascals(), row.Float("expected"), 60)
	}
	for _, row := range published.Where(rows, "check", "station-pressure-mmHg-from-29.65-inHg-at-600ft") {
		p, err := air.StationPressure(quantity.Pressure(row.Float("sea_level_pressure_pa")/1000), quantity.Metres(row.Float("altitude_m")))
		if err != nil {
			t.Fatal(err)
		}
		row.Near(p.Kilopascals()/0.133322387415, row.Float("expected"), 1)
	}
}

func TestHeadMatchesPublished(t *testing.T) {
	for _, row := range published.Where(published.Rows(t, "static-head.csv"), "water_density_kg_per_m3", "998.2") {
		head, err := water.Head(20, quantity.Metres(row.Float("depth_m")))
		if err != nil {
			t.Fatal(err)
		}
		row.Check(head.Kilopascals(), "kPa")
	}
}

func TestTubeLossMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "tube-loss.csv") {
		tube := air.Tube{Bore: quantity.Metres(row.Float("bore_mm") / 1000), Length: quantity.Metres(row.Float("length_m"))}
		loss := tube.Loss(quantity.Flow(row.Float("air_l_per_min")), quantity.Celsius(row.Float("air_temperature_c")), quantity.Pressure(row.Float("air_pressure_pa")/1000))
		row.Check(loss.Pascals(), "Pa")
	}
}

// The published meetings have a system that grows as Q²; a tube of which only
// the fittings count is such a system.
func TestOperatingPointMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "operating-point.csv") {
		p0, slope := row.Float("pump_p0_kpa"), row.Float("pump_slope_kpa_per_l_min")
		pump, err := air.NewCurve([]air.CurvePoint{{Airflow: 0, Pressure: quantity.Pressure(p0)}, {Airflow: quantity.Flow(p0 / slope), Pressure: 0}})
		if err != nil {
			t.Fatal(err)
		}
		s := air.System{Depth: 0.2, Lines: 1, Water: 20, Air: 20, Site: quantity.StandardAtmosphere, Tube: air.Tube{Bore: 0.01}}
		s.DiffuserLoss = quantity.Pressure(row.Float("static_kpa")) - s.Static()
		unit := s
		unit.Tube.ExtraK = 1
		s.Tube.ExtraK = row.Float("system_a_kpa_per_l_min2") * 100 / float64(unit.TubeLoss(10))
		if s.Tube.ExtraK > 1000 {
			t.Fatalf("%s: a K of %g cannot be asked for", row.Name(), s.Tube.ExtraK)
		}
		m, err := air.OperatingPoint(pump, s)
		if err != nil {
			t.Fatal(err)
		}
		row.Check(m.Airflow.LitresPerMinute(), "L/min")
	}
}

func TestCompressionMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "adiabatic-power.csv") {
		inlet := quantity.Pressure(row.Float("inlet_pressure_pa") / 1000)
		c := air.Compression{Airflow: quantity.Flow(row.Float("inlet_air_l_per_min")), Inlet: inlet, Outlet: inlet + quantity.Pressure(row.Float("pressure_rise_pa")/1000), InletTemp: 20, Efficiency: row.Float("efficiency")}
		if err := c.Check(); err != nil {
			t.Fatal(err)
		}
		row.Check(c.Power().Watts(), "W")
	}
	for _, row := range published.Rows(t, "adiabatic-temperature.csv") {
		inlet := quantity.Pressure(row.Float("inlet_pressure_pa") / 1000)
		c := air.Compression{Airflow: 1, Inlet: inlet, Outlet: inlet + quantity.Pressure(row.Float("pressure_rise_pa")/1000), InletTemp: quantity.Celsius(row.Float("inlet_temperature_c")), Efficiency: 1}
		row.Check(c.IdealOutletTemperature().Celsius(), "C")
	}
}

// The friction curve has no step where one formula hands over to the next.
func TestTubeLossHasNoStep(t *testing.T) {
	tube := air.Tube{Bore: 0.006, Length: 3}
	last := quantity.Pressure(0)
	for q := quantity.Flow(0.05); q < 60; q += 0.05 {
		loss := tube.Loss(q, 20, quantity.StandardAtmosphere)
		if loss <= last || q > 1 && loss > last*1.2 {
			t.Fatalf("at %.2f L/min the loss goes from %.5f to %.5f kPa", float64(q), float64(last), float64(loss))
		}
		last = loss
	}
}

var pump = []air.CurvePoint{{Airflow: 60, Pressure: 0}, {Airflow: 45, Pressure: 10}, {Airflow: 25, Pressure: 20}, {Airflow: 0, Pressure: 28}}

func hose(depth quantity.Length) air.System {
	return air.System{Depth: depth, Lines: 1, Tube: air.Tube{Bore: 0.0095, Length: 4, Fittings: 2, ExtraK: 1}, Water: 20, Air: 20, Site: quantity.StandardAtmosphere}
}

// Deeper, longer, narrower or more clogged: less air; a second line: more.
func TestOperatingPointDirections(t *testing.T) {
	curve, err := air.NewCurve(pump)
	if err != nil {
		t.Fatal(err)
	}
	flow := func(change func(*air.System)) float64 {
		s := hose(0.6)
		change(&s)
		m, err := air.OperatingPoint(curve, s)
		if err != nil {
			t.Fatal(err)
		}
		if on := math.Abs(float64(curve.At(m.Airflow) - s.At(m.Airflow))); on > 1e-9 {
			t.Errorf("pump and system differ by %g kPa where they meet", on)
		}
		return float64(m.Airflow)
	}
	base := flow(func(*air.System) {})
	for name, less := range map[string]float64{
		"deeper":   flow(func(s *air.System) { s.Depth = 0.8 }),
		"longer":   flow(func(s *air.System) { s.Tube.Length = 8 }),
		"narrower": flow(func(s *air.System) { s.Tube.Bore = 0.006 }),
		"clogged":  flow(func(s *air.System) { s.DiffuserLoss = 5 }),
	} {
		if less >= base {
			t.Errorf("%s: %.2f L/min, want less than %.2f", name, less, base)
		}
	}
	if more := flow(func(s *air.System) { s.Lines = 2 }); more <= base {
		t.Errorf("two lines: %.2f L/min, want more than %.2f", more, base)
	}
}

func TestOperatingPointAtTheEnds(t *testing.T) {
	curve, _ := air.NewCurve(pump)
	if m, err := air.OperatingPoint(curve, hose(3)); err != nil || m.Flows || m.Airflow != 0 || m.Pressure != 28 {
		t.Errorf("3 m deep: %+v, %v; want no flow at 28 kPa", m, err)
	}
	short, _ := air.NewCurve([]air.CurvePoint{{Airflow: 40, Pressure: 5}, {Airflow: 45, Pressure: 4}})
	high, _ := air.NewCurve([]air.CurvePoint{{Airflow: 10, Pressure: 50}, {Airflow: 20, Pressure: 40}})
	for name, c := range map[string]air.Curve{"too low": short, "too high": high} {
		_, err := air.OperatingPoint(c, hose(0.6))
		if faults := fault.Of(err); len(faults) != 1 || faults[0].Field != "pump" {
			t.Errorf("%s: %v; want a fault of pump", name, err)
		}
	}
}

func TestCurveRefuses(t *testing.T) {
	for name, points := range map[string][]air.CurvePoint{
		"one point":        {{Airflow: 10, Pressure: 1}},
		"flow rises":       {{Airflow: 10, Pressure: 1}, {Airflow: 20, Pressure: 2}},
		"one pressure":     {{Airflow: 10, Pressure: 1}, {Airflow: 20, Pressure: 1}},
		"one flow":         {{Airflow: 10, Pressure: 1}, {Airflow: 10, Pressure: 2}},
		"not a number":     {{Airflow: quantity.Flow(math.NaN()), Pressure: 1}, {Airflow: 10, Pressure: 2}},
		"too many of them": make([]air.CurvePoint, 51),
	} {
		if _, err := air.NewCurve(points); len(fault.Of(err)) != 1 {
			t.Errorf("%s: %v; want one fault", name, err)
		}
	}
}

func TestCompressionRefuses(t *testing.T) {
	good := air.Compression{Airflow: 60, Inlet: 101.325, Outlet: 113, InletTemp: 20, Efficiency: 0.3}
	for field, spoil := range map[string]func(*air.Compression){
		"airflow":         func(c *air.Compression) { c.Airflow = 0 },
		"inlet-pressure":  func(c *air.Compression) { c.Inlet = 1 },
		"outlet-pressure": func(c *air.Compression) { c.Outlet = 12 },
		"inlet-temp":      func(c *air.Compression) { c.InletTemp = 80 },
		"efficiency":      func(c *air.Compression) { c.Efficiency = 30 },
	} {
		c := good
		spoil(&c)
		if faults := fault.Of(c.Check()); len(faults) != 1 || faults[0].Field != field {
			t.Errorf("%s: %v", field, c.Check())
		}
	}
}
