package plan_test

import (
	"math"
	"testing"

	"aerosteep/job/plan"
)

func ways(list []plan.Tempering) map[string]plan.Tempering {
	found := map[string]plan.Tempering{}
	for _, t := range list {
		found[t.What] = t
	}
	return found
}

// Water at 8 °C is told what would warm it beside the longer brew. The hot
// share is the mixing rule of schoolbooks, equal heat given and taken.
func TestColdFillIsToldItsCure(t *testing.T) {
	b := made(t, pailAt("0 m", "8 C", "1 cup", "1 tsp"), "2026-05-12T06:00:00-06:00").Batches[0]
	found := ways(b.Water.Tempering)
	hot := found["hot-water"].HotL
	if hot == nil {
		t.Fatalf("no hot water among %+v", b.Water.Tempering)
	}
	if mixed := (*hot*50 + (b.VolumeL-*hot)*8) / b.VolumeL; math.Abs(mixed-20) > 1e-9 {
		t.Errorf("%g L of 50 °C make %g °C, not 20", *hot, mixed)
	}
	heater := found["heater"]
	lossless := b.VolumeL * 4.186 * 12 / 3.6 / *heater.HeaterW // h, if nothing were lost
	if *heater.Hours < lossless || *heater.Hours > 12 {
		t.Errorf("a heater of %g W takes %g h; %g if nothing were lost", *heater.HeaterW, *heater.Hours, lossless)
	}
	if h := found["indoors"].Hours; h == nil || *h < *heater.Hours {
		t.Errorf("a room of 22 °C is said to warm it sooner than a heater: %+v", found["indoors"])
	}
}

func TestWarmFillIsToldItsCure(t *testing.T) {
	b := made(t, pailAt("0 m", "30 C", "1 cup", "1 tsp"), "2026-05-12T06:00:00-06:00").Batches[0]
	found := ways(b.Water.Tempering)
	ice := found["frozen-bottles"].IceKg
	if ice == nil || found["night"].Text == "" || found["shade"].Text == "" {
		t.Fatalf("a way is missing among %+v", b.Water.Tempering)
	}
	// heat that the water gives is heat that the ice takes, 333.6 kJ/kg and 4.186 kJ/(kg K)
	if gives, takes := b.VolumeL*4.186*6, *ice*(333.6+4.186*24); math.Abs(gives-takes) > 0.001*gives {
		t.Errorf("%g kJ against %g", gives, takes)
	}
}

func TestFillThatSuitsIsLeftAlone(t *testing.T) {
	b := made(t, pailAt("0 m", "18 C", "1 cup", "1 tsp"), "2026-05-12T06:00:00-06:00").Batches[0]
	if b.Water.Tempering == nil || len(b.Water.Tempering) > 0 {
		t.Errorf("water of 18 °C is cured: %+v", b.Water.Tempering)
	}
}
