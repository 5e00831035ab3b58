package heat_test

import (
	"math"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/heat"
	"aerosteep/science/weather"
)

func airOf(celsius, percent float64) weather.MoistAir {
	return weather.WithHumidity(quantity.Celsius(celsius), percent, quantity.StandardAtmosphere)
}

// TestLatentHeat: IAPWS-IF97.
func TestLatentHeat(t *testing.T) {
	for _, row := range published.Rows(t, "latent_heat.csv") {
		row.Check(heat.LatentHeat(quantity.Celsius(row.Float("temperature_c"))), "kJ/kg")
	}
}

func bubbling(row published.Row) (heat.Vessel, quantity.Temperature) {
	return heat.Vessel{
		Volume:  100,
		Air:     airOf(row.Float("air_temperature_c"), row.Float("air_relative_humidity_percent")),
		Bubbles: quantity.LitresPerMinute(row.Float("free_air_l_per_min")),
	}, quantity.Celsius(row.Float("water_temperature_c"))
}

// TestBubbles: dry air between its humidity and saturation, by other vapour
// pressure formulas.
func TestBubbles(t *testing.T) {
	for _, row := range published.Rows(t, "bubble_heat.csv") {
		v, water := bubbling(row)
		row.Check(v.Terms(water).Bubbles, "W")
	}
	for _, row := range published.Rows(t, "bubble_evaporation.csv") {
		v, water := bubbling(row)
		row.Check(v.Evaporation(water)*1000, "g/h")
	}
}

// TestOpenSurface: ASHRAE Handbook, HVAC Applications.
func TestOpenSurface(t *testing.T) {
	for _, row := range published.Rows(t, "surface_evaporation.csv") {
		v := heat.Vessel{
			Volume:  100,
			Air:     airOf(row.Float("air_temperature_c"), row.Float("air_relative_humidity_percent")),
			Surface: quantity.SquareMetres(row.Float("area_m2")),
			Wind:    quantity.MetresPerSecond(row.Float("air_speed_m_per_s")),
		}
		row.Check(v.Evaporation(quantity.Celsius(row.Float("water_temperature_c")))*1000, "g/h")
	}
}

// TestLumpedCourse: the exact solution of the balance without evaporation.
func TestLumpedCourse(t *testing.T) {
	for _, row := range published.Rows(t, "lumped_temperature.csv") {
		v := heat.Vessel{
			Volume: quantity.Litres(row.Float("volume_l")), Air: airOf(row.Float("environment_c"), 50),
			Walls: quantity.WattsPerKelvin(row.Float("ua_w_per_k")), Heater: quantity.Watts(row.Float("net_power_w")),
		}
		hours := row.Float("hours")
		got, gone := v.Follow(quantity.Celsius(row.Float("start_c")), hours).At(hours)
		row.Check(got.Celsius(), "C")
		if gone != 0 {
			t.Errorf("%v went off without bubbles or surface", gone)
		}
	}
}

// TestNewtonsLaw: worked examples of Newton's law of cooling.
func TestNewtonsLaw(t *testing.T) {
	for _, row := range published.Rows(t, "newton_time.csv") {
		c := func(column string) quantity.Temperature { return quantity.Celsius(row.Float(column)) }
		scaled := func(t quantity.Temperature) quantity.Temperature { return t / 2 } // degrees F above 100 °C; a law of differences does not mind
		air := airOf(float64(scaled(c("t_environment"))), 50)
		v := heat.Vessel{Volume: 20, Air: air}
		v.Walls = heat.MeasuredWalls(v.Volume, scaled(c("t_start")), scaled(c("t_at_first_time")), air.Temperature, quantity.Minutes(row.Float("first_time_min")))
		at, ok := v.Follow(scaled(c("t_start")), 3).Reach(scaled(c("t_target")))
		if !ok {
			t.Fatalf("%s was not reached", row.Text("id"))
		}
		row.Check(at.Minutes(), "min")
	}
	for _, row := range published.Rows(t, "newton_rate.csv") {
		walls := heat.MeasuredWalls(1, quantity.Celsius(row.Float("t_start")), quantity.Celsius(row.Float("t_end")), quantity.Celsius(row.Float("t_environment")), quantity.Minutes(row.Float("minutes")))
		tau, _ := heat.Vessel{Volume: 1, Walls: walls}.TimeConstant()
		row.Check(1/tau.Minutes(), "1/min")
	}
}

func TestHeatingTime(t *testing.T) {
	for _, row := range published.Rows(t, "warming_time.csv") {
		by := quantity.CelsiusStep(row.Float("t2_c") - row.Float("t1_c"))
		row.Check(heat.HeatingTime(quantity.Litres(row.Float("volume_l")), by, quantity.Watts(row.Float("power_w")), quantity.Share(row.Float("efficiency"))).Hours(), "h")
	}
}

// A drum bubbled with hot dry air ends up colder than it began: pulled toward
// the wet bulb, not the air.
func TestHotDryAirCools(t *testing.T) {
	v := heat.Vessel{Volume: 200, Air: airOf(35, 20), Bubbles: 500, Walls: heat.TypicalWalls(200)}
	got, gone := v.Follow(25, 12).At(12)
	settles, ok := v.Settles(25)
	for name, c := range map[string][3]float64{
		"walls, W/K":      {v.Walls.WattsPerKelvin(), 9.466, 0.001},
		"after 12 h":      {got.Celsius(), 22.82, 0.02},
		"settles":         {settles.Celsius(), 22.57, 0.02},
		"evaporated, L":   {gone.Litres(), 4.615, 0.015 * 4.615},
		"bubbles, W":      {v.Terms(25).Bubbles, -204.8, 2},
		"never 22.5 °C":   {boolean(reached(v, 25, 22.5)), 0, 0},
		"life of 100 L":   {heat.Vessel{Volume: 100, Activity: 20}.Terms(20).Life, 7.9, 0.02},
		"time constant h": {tau(v), 200 * 4186 / 9.466 / 3600, 0.01},
	} {
		if !ok || math.Abs(c[0]-c[1]) > c[2] {
			t.Errorf("%s: %g, want %g", name, c[0], c[1])
		}
	}
}

func reached(v heat.Vessel, start, target quantity.Temperature) bool {
	_, ok := v.Follow(start, 720).Reach(target)
	return ok
}

func boolean(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func tau(v heat.Vessel) float64 { s, _ := v.TimeConstant(); return s.Hours() }

// The air's own temperature is approached and never reached.
func TestTargetAtTheEndIsNeverReached(t *testing.T) {
	v := heat.Vessel{Volume: 20, Air: airOf(15, 50), Walls: 2}
	if at, ok := v.Follow(22, 720).Reach(15); ok {
		t.Errorf("water came down to the air's 15 °C after %v", at)
	}
	if got, _ := v.Follow(22, 720).At(720); math.Abs(got.Celsius()-15) > 1e-6 {
		t.Errorf("after a month it is %v", got)
	}
}

func TestFreezing(t *testing.T) {
	v := heat.Vessel{Volume: 20, Air: airOf(-10, 50), Walls: 2}
	c := v.Follow(5, 48)
	at, ok := c.Freezes()
	want := tau(v) * math.Log(15./10) // exact: Newton's law from 5 to 0 in -10 °C
	if !ok || math.Abs(at.Hours()-want) > 1e-4 {
		t.Errorf("freezes after %v, want %g h", at, want)
	}
	if got, _ := c.At(48); got != 0 {
		t.Errorf("ice of %v", got)
	}
	if warm, _ := c.At(1); math.Abs(warm.Celsius()-(15*math.Exp(-1/tau(v))-10)) > 1e-5 {
		t.Errorf("after an hour %v", warm)
	}
	if _, ok := v.Follow(5, 1).Freezes(); ok {
		t.Error("it froze within the first hour")
	}
}

func TestBoiling(t *testing.T) {
	v := heat.Vessel{Volume: 20, Air: airOf(20, 50), Heater: 2000}
	if !v.Follow(90, 5).Boils() || v.Follow(20, 0.5).Boils() {
		t.Error("2 kW in 20 L boils from 90 °C within 5 h, and not from 20 °C within half an hour")
	}
	if _, ok := v.Settles(20); ok {
		t.Error("a heater without losses settles somewhere")
	}
}
