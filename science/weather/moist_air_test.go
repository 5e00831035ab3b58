package weather_test

import (
	"math"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/weather"
)

// TestVapourPressureIsPublished: ASHRAE Handbook Fundamentals 2017 tables, and
// Hyland and Wexler 1983 as an independent library computes them.
func TestVapourPressureIsPublished(t *testing.T) {
	rows := published.Where(published.Rows(t, "vapour_pressure.csv"), "check", "saturation-vapour-pressure")
	for _, row := range published.Where(rows, "formula", "any", "hyland-wexler") {
		row.Check(weather.SaturationVapour(quantity.Celsius(row.Float("temperature_c"))).Pascals(), "Pa")
	}
}

// TestMoistAirIsPublished: ASHRAE Handbook Fundamentals 2017, chapter 1.
func TestMoistAirIsPublished(t *testing.T) {
	for _, row := range published.Rows(t, "psychrometrics.csv") {
		switch row.Text("quantity") {
		case "saturation vapour pressure":
			row.Check(weather.SaturationVapour(quantity.Celsius(row.Float("air_temp_c"))).Pascals(), "Pa")
		case "saturation humidity ratio":
			row.Check(weather.WithHumidity(quantity.Celsius(row.Float("air_temp_c")), 100, kilo(row)).HumidityRatio(), "kg/kg")
		case "standard pressure":
			row.Check(weather.StandardPressure(quantity.Metres(row.Float("altitude_m"))).Pascals(), "Pa")
		case "humidity ratio":
			row.Check(byWetBulb(t, row).HumidityRatio(), "kg/kg")
		case "relative humidity":
			row.Check(byWetBulb(t, row).Humidity()/100, "fraction")
		case "dew point":
			row.Check(byWetBulb(t, row).DewPoint().Celsius(), "C")
		default:
			t.Fatalf("nobody works out %s", row.Text("quantity"))
		}
	}
}

func kilo(row published.Row) quantity.Pressure {
	return quantity.Kilopascals(row.Float("pressure_pa") / 1000)
}

func byWetBulb(t *testing.T, row published.Row) weather.MoistAir {
	t.Helper()
	air, ok := weather.WithWetBulb(quantity.Celsius(row.Float("air_temp_c")), quantity.Celsius(row.Float("wet_bulb_c")), kilo(row))
	if !ok {
		t.Fatal("a published wet bulb was refused")
	}
	return air
}

// TestWetBulbIsPublished: an independent implementation of the ASHRAE
// equations, from sea level to 2000 m.
func TestWetBulbIsPublished(t *testing.T) {
	for _, row := range published.Rows(t, "wet_bulb.csv") {
		air := weather.WithHumidity(quantity.Celsius(row.Float("air_temp_c")), row.Float("relative_humidity_percent"), kilo(row))
		row.Check(air.WetBulb().Celsius(), "C")
	}
}

// TestWetBulbIsNotFarFromStull: a fit for sea level, within 1 °C of the
// equation by its author's own figure.
func TestWetBulbIsNotFarFromStull(t *testing.T) {
	for _, row := range published.Rows(t, "wet_bulb_stull.csv") {
		air := weather.WithHumidity(quantity.Celsius(row.Float("air_temp_c")), row.Float("relative_humidity_percent"), quantity.StandardAtmosphere)
		row.Near(air.WetBulb().Celsius(), row.Float("expected"), 1)
	}
}

// The three ways to say how moist air is lead to the same air.
func TestWaysToSayHowMoistAgree(t *testing.T) {
	for _, celsius := range []float64{-20, -1, 0, 3, 15, 30, 60} {
		for _, percent := range []float64{20, 55, 100} {
			air := weather.WithHumidity(quantity.Celsius(celsius), percent, 93)
			dew := weather.WithDewPoint(air.Temperature, air.DewPoint(), air.Pressure)
			wet, ok := weather.WithWetBulb(air.Temperature, air.WetBulb(), air.Pressure)
			if !ok || math.Abs(dew.Humidity()-percent) > 0.011 || math.Abs(wet.Humidity()-percent) > 0.01 && math.Abs(wet.WetBulb().Celsius()) > 1e-3 {
				t.Errorf("%g °C, %g %%: by dew point %g, by wet bulb %g", celsius, percent, dew.Humidity(), wet.Humidity())
			}
		}
	}
}

func TestWetBulbThatNeedsLessThanNoVapour(t *testing.T) {
	if air, ok := weather.WithWetBulb(30, 5, quantity.StandardAtmosphere); ok {
		t.Errorf("a wet bulb of 5 °C in air of 30 °C was taken: %+v", air)
	}
}

func TestDepressionRating(t *testing.T) {
	for _, row := range published.Rows(t, "depression_rating.csv") {
		got := weather.Rate(quantity.CelsiusStep(row.Float("wet_bulb_depression_c")))
		if string(got) != row.Text("expected") {
			t.Errorf("%s: %s is %s, published %s", row.Name(), row.Text("wet_bulb_depression_c"), got, row.Text("expected"))
		}
	}
}
