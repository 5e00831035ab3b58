package main

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/science/weather"
)

// eight brews: each life twice.
func eight(t *testing.T) []*brew {
	t.Helper()
	kinds := []string{"calm", "crash", "safe", "close", "crash", "calm", "close", "safe"}
	happen := []string{"", "", "off-unlogged", "food", "half-unlogged", "", "off-logged", ""}
	var all []*brew
	for i, kind := range kinds {
		b, err := newBrew(3, i+1, lifeNames[i%4], kind, happen[i])
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, b)
	}
	return all
}

func TestOxygenStaysWithinWhatWaterHolds(t *testing.T) {
	for _, b := range eight(t) {
		for i, x := range b.course {
			if !(x.oxygen >= 0 && x.oxygen <= 1.3*x.below && x.uptake >= 0) {
				t.Fatalf("%s, minute %d: oxygen %g of %g, uptake %g", b.plan.name, i, x.oxygen, x.below, x.uptake)
			}
		}
	}
}

func TestKindsHoldTheirMargins(t *testing.T) {
	ranges := map[string][2]float64{"calm": {2.3, 12}, "safe": {1.2, 2}, "close": {0.3, 1.2}, "crash": {-12, -0.5}}
	for _, b := range eight(t) {
		over := least(b.live(b.happens.quiet())) - b.plan.limit
		if r := ranges[b.kind]; over < r[0] || over > r[1] {
			t.Errorf("%s is called %s and stays %g over its limit", b.plan.name, b.kind, over)
		}
		if b.kind == "crash" && (b.crash < 5 || b.at(b.crash+1).oxygen >= b.plan.limit) {
			t.Errorf("%s: a crash at %g that is none", b.plan.name, b.crash)
		}
	}
}

// What is burned is gone from the books: the COD that is left and the oxygen
// that was used come to the COD that was brought.
func TestOxygenAndFoodBalance(t *testing.T) {
	for name, begin := range lives {
		c := seeded(11, 1)
		alive := begin(c, bring(c, 20, meal{800, 200, 5}, 48))()
		before, used := alive.left(), 0.0
		if math.IsNaN(before) {
			continue // a curve keeps no books
		}
		for i := range 48 * 60 {
			used += minute * alive.step(moment{float64(i) * minute, minute, 22, 6})
		}
		alive.feed(48, meal{100, 20, 1})
		if off := before + 120 - used - alive.left(); math.Abs(off) > 1e-6*before || used < 10 {
			t.Errorf("life %s: %g mg/L lost, %g of %g burned", name, off, used, before)
		}
	}
}

func TestWrittenBrewsAreRead(t *testing.T) {
	for _, b := range eight(t) {
		folder := filepath.Join(t.TempDir(), b.plan.name)
		if err := b.write(folder, b.asks(seeded(1, 1)), 3); err != nil {
			t.Fatal(err)
		}
		text := func(name string) []byte {
			content, err := os.ReadFile(filepath.Join(folder, name))
			if err != nil {
				t.Fatal(err)
			}
			return content
		}
		file, faults := jobfile.Read(text("job.toml"), "job.toml", jobfile.Whole)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		s, err := forecast.Of(file, b.plan.name)
		if err != nil {
			t.Fatal(err)
		}
		log, err := forecast.ReadLog("readings.csv", text("readings.csv"), forecast.LogReading{Start: s.Start, Zone: s.Zone})
		if err != nil || len(log.Readings) != len(b.meter.readings) || len(log.Events) != len(b.happens.entries()) {
			t.Errorf("%s: %d readings and %d events of %d and %d, %v", b.plan.name, len(log.Readings), len(log.Events), len(b.meter.readings), len(b.happens.entries()), err)
		}
		if _, _, _, err := weather.ReadCSV("weather.csv", text("weather.csv"), weather.CSVReading{OnlyAir: true, Zone: s.Zone}); err != nil {
			t.Error(err)
		}
	}
}

func TestSameSeedSameBrew(t *testing.T) {
	write := func() string {
		t.Helper()
		b, err := newBrew(5, 2, "d", "crash", "food")
		if err != nil {
			t.Fatal(err)
		}
		return b.plan.text() + b.book() + b.truth() + b.sky()
	}
	first, second := write(), write()
	if first != second {
		t.Error("one seed gave two brews")
	}
}
