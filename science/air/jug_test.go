package air_test

import (
	"math"
	"testing"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/air"
)

// A gas collected over water, worked by hand with the vapour pressure of the
// ASHRAE table (25 °C: 3169.7 Pa): 1 L at 25 °C and 1 atm holds
// (101325 - 3169.7)/101325 = 0.96872 L of dry gas at the same conditions.
func TestJugMatchesGasOverWater(t *testing.T) {
	jug := air.Jug{Volume: 1, Filled: 60, Depth: 0, Water: 25, Air: 25, Site: quantity.StandardAtmosphere}
	free, err := jug.FreeAir()
	if err != nil || math.Abs(float64(free)-0.96872) > 0.0002 {
		t.Errorf("%.5f L/min, %v; want 0.96872", float64(free), err)
	}
}

// Deeper: the same jug holds more air. Warmer water or a quicker jug likewise
// in their own ways.
func TestJugDirections(t *testing.T) {
	base := air.Jug{Volume: 2, Filled: 14, Depth: 0.4, Water: 22, Air: 20, Site: 93.87}
	flow := func(change func(*air.Jug)) quantity.Flow {
		jug := base
		change(&jug)
		free, err := jug.FreeAir()
		if err != nil {
			t.Fatal(err)
		}
		return free
	}
	still := flow(func(*air.Jug) {})
	if flow(func(j *air.Jug) { j.Depth = 1 }) <= still || flow(func(j *air.Jug) { j.Filled = 10 }) <= still || flow(func(j *air.Jug) { j.Water = 35 }) >= still {
		t.Error("deeper and quicker must give more air, warmer water less")
	}
}

func TestJugRefuses(t *testing.T) {
	if _, err := (air.Jug{}).FreeAir(); len(fault.Of(err)) != 3 {
		t.Errorf("an empty test: %v; want faults of jug, filled and pressure", err)
	}
}
