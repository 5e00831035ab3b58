package spray_test

import (
	"math"
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/spray"
)

// The handbooks' constants are the formula in their units: 5940 for gal/acre,
// mph and inches, 495 with feet, 60 000 for L/ha, km/h and cm.
func TestHandbookConstants(t *testing.T) {
	rows := published.Where(published.Rows(t, "sprayer.csv"), "find", "constant")
	us := must(spray.Rate(quantity.USGallonsPerMinute(1), quantity.MilesPerHour(1), quantity.Inches(1)))(t)
	near(t, "gal/acre, mph, in", us.USGallonsPerAcre(), rows[0].Float("expected"), 1e-8)
	feet := must(spray.Rate(quantity.USGallonsPerMinute(1), quantity.MilesPerHour(1), quantity.Feet(1)))(t)
	near(t, "gal/acre, mph, ft", feet.USGallonsPerAcre(), 495, 1e-9)
	metric := must(spray.Rate(quantity.LitresPerMinute(1), quantity.KilometresPerHour(1), quantity.Metres(0.01)))(t)
	near(t, "L/ha, km/h, cm", metric.LitresPerHectare(), rows[1].Float("expected"), 1e-7)
}

func TestSprayerMatchesPublished(t *testing.T) {
	rows := published.Rows(t, "sprayer.csv")
	for _, row := range published.Where(rows, "find", "flow_gpm") {
		flow := must(spray.FlowFor(quantity.USGallonsPerAcre(row.Float("rate_gpa")), quantity.MilesPerHour(row.Float("speed_mph")), quantity.Inches(row.Float("spacing_in"))))(t)
		row.Check(flow.USGallonsPerMinute(), "US gal/min")
	}
	for _, row := range published.Where(rows, "find", "rate_gpa") {
		rate := must(spray.Rate(quantity.USGallonsPerMinute(row.Float("flow_gpm")), quantity.MilesPerHour(row.Float("speed_mph")), quantity.Inches(row.Float("spacing_in"))))(t)
		row.Check(rate.USGallonsPerAcre(), "US gal/acre")
	}
	for _, row := range published.Where(rows, "find", "flow_l_per_min") {
		flow := must(spray.FlowFor(quantity.LitresPerHectare(row.Float("rate_l_per_ha")), quantity.KilometresPerHour(row.Float("speed_km_per_h")), quantity.Metres(row.Float("spacing_cm")/100)))(t)
		row.Check(flow.LitresPerMinute(), "L/min")
	}
}

// Any three of rate, flow, speed and width give back the fourth.
func TestSolvedBothWays(t *testing.T) {
	flow, speed, width := quantity.LitresPerMinute(1.2), quantity.KilometresPerHour(5), quantity.Metres(0.5)
	rate := must(spray.Rate(flow, speed, width))(t)
	near(t, "flow", must(spray.FlowFor(rate, speed, width))(t).LitresPerMinute(), 1.2, 1e-12)
	near(t, "speed", must(spray.SpeedFor(rate, flow, width))(t).KilometresPerHour(), 5, 1e-12)
	near(t, "width", must(spray.WidthFor(rate, flow, speed))(t).Metres(), 0.5, 1e-12)
}

func TestCatchMatchesPublished(t *testing.T) {
	volumes := map[string]string{"US fl oz": "fl oz", "US gal": "gal", "L": "L"}
	areas := map[string]string{"sq ft": "sq ft", "m2": "m2"}
	for _, row := range published.Rows(t, "caught-volume.csv") {
		volume := must(quantity.ParseVolume(row.Text("caught_value") + " " + volumes[row.Text("caught_unit")]))(t)
		ground := must(quantity.ParseArea(row.Text("area_value") + " " + areas[row.Text("area_unit")]))(t)
		rate := must(spray.Caught(volume, ground))(t)
		if row.Text("unit") == "L/ha" {
			row.Check(rate.LitresPerHectare(), "L/ha")
			continue
		}
		row.Check(rate.USGallonsPerAcre(), "US gal/acre")
	}
}

// Hand sprayers and hose ends: volume over area and scaling by plants.
func TestHoseEndMatchesPublished(t *testing.T) {
	for _, row := range published.Where(published.Rows(t, "hose-end.csv"), "method", "turf guns") {
		rate := must(spray.Caught(quantity.USGallons(row.Float("caught_value")), quantity.SquareFeet(row.Float("area_sq_ft"))))(t)
		row.Check(rate.USGallonsPerAcre(), "US gal/acre")
	}
}

func TestNozzlePressureMatchesPublished(t *testing.T) {
	rows := published.Rows(t, "nozzle-pressure.csv")
	for _, row := range rows {
		rating := spray.Rating{Flow: parseFlow(t, row, "flow1"), Pressure: parsePressure(t, row, "pressure1")}
		if row.Text("find") == "flow2" {
			flow := must(rating.At(parsePressure(t, row, "pressure2")))(t)
			if row.Text("flow_unit") == "US gal/min" {
				row.Check(flow.USGallonsPerMinute(), "US gal/min")
			} else {
				row.Check(flow.LitresPerMinute(), "L/min")
			}
			continue
		}
		needed := must(rating.PressureFor(parseFlow(t, row, "flow2")))(t)
		one := must(quantity.ParsePressure("1 " + row.Text("pressure_unit")))(t)
		row.Check(float64(needed/one), row.Text("pressure_unit"))
	}
}

func parseFlow(t *testing.T, row published.Row, column string) quantity.Flow {
	unit := map[string]string{"US gal/min": "gal/min", "L/min": "L/min"}[row.Text("flow_unit")]
	return must(quantity.ParseFlow(row.Text(column) + " " + unit))(t)
}

func parsePressure(t *testing.T, row published.Row, column string) quantity.Pressure {
	return must(quantity.ParsePressure(row.Text(column) + " " + row.Text("pressure_unit")))(t)
}

func TestSpeedMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "speed.csv") {
		course := must(quantity.ParseLength(row.Text("distance") + " " + row.Text("distance_unit")))(t)
		speed := must(spray.SpeedOver(course, quantity.Seconds(row.Float("time_s"))))(t)
		if row.Text("unit") == "mph" {
			row.Check(speed.MilesPerHour(), "mph")
		} else {
			row.Check(speed.KilometresPerHour(), "km/h")
		}
	}
}

// Faster, wider or thirstier: each moves the rate the way it must.
func TestRateDirection(t *testing.T) {
	base := must(spray.Rate(1, 1, 1))(t)
	if faster := must(spray.Rate(1, 2, 1))(t); faster >= base {
		t.Error("faster puts on more")
	}
	if wider := must(spray.Rate(1, 1, 2))(t); wider >= base {
		t.Error("wider puts on more")
	}
	if more := must(spray.Rate(2, 1, 1))(t); more <= base {
		t.Error("more flow puts on less")
	}
}

func TestRateRefuses(t *testing.T) {
	_, err := spray.Rate(0, -1, quantity.Length(math.NaN()))
	var fields []string
	for _, f := range fault.Of(err) {
		fields = append(fields, f.Field)
	}
	if len(fields) != 3 || fields[0] != "nozzle-flow" || fields[1] != "speed" || fields[2] != "spacing" {
		t.Errorf("faults of %v, want all three inputs", fields)
	}
	if _, err := (spray.Rating{Flow: 1}).At(100); fault.Of(err) == nil {
		t.Error("a rating without a pressure was taken")
	}
	if _, err := spray.Caught(1, 0); fault.Of(err) == nil {
		t.Error("a catch on no ground was taken")
	}
}

func must[T any](v T, err error) func(*testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.10g, want %.10g ± %g", what, got, want, tolerance)
	}
}
