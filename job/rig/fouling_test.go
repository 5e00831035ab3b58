package rig

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"
)

// The first of Anscombe's four data sets (Anscombe 1973, Graphs in statistical
// analysis, American Statistician 27: 17): slope 0.500, standard error 0.118,
// mean of y 7.5.
func TestLineOfAnscombe(t *testing.T) {
	x := []float64{10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5}
	y := []float64{8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68}
	slope, deviation, mean := line(x, y)
	if math.Abs(slope-0.500) > 5e-4 || math.Abs(deviation-0.118) > 5e-4 || math.Abs(mean-7.5) > 5e-3 {
		t.Errorf("slope %v, deviation %v, mean %v", slope, deviation, mean)
	}
}

// A decline of 5 % a test under noise of 8 % is found nearly always in twelve
// tests; diffusers that do not foul are blamed about as often as the test says,
// 5 in 100.
func TestFoulingIsFoundAndNotImagined(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	falls := func(each float64) (share float64) {
		const seasons = 2000
		for range seasons {
			tests := make([]Measured, 12)
			for i := range tests {
				kla := 15 * math.Pow(1-each, float64(i)) * (1 + 0.08*random.NormFloat64())
				tests[i] = Measured{At: time.Date(2026, 4, 1+14*i, 0, 0, 0, 0, time.UTC), KLa20: kla}
			}
			trend, err := Fouling(tests)
			if err != nil {
				t.Fatal(err)
			}
			if trend.Falls {
				share += 1. / seasons
			}
		}
		return share
	}
	if found := falls(0.05); found < 0.98 {
		t.Errorf("a decline is found in %v of the seasons", found)
	}
	if imagined := falls(0); math.Abs(imagined-0.05) > 0.015 {
		t.Errorf("a decline is imagined in %v of the seasons", imagined)
	}
}

func TestFoulingRefuses(t *testing.T) {
	day := time.Date(2026, 4, 1, 0, 0, 0, 0, time.UTC)
	same := []Measured{{day, 10}, {day, 11}, {day, 9}, {day, 10}, {day, 10}}
	zero := []Measured{{day, 10}, {day.AddDate(0, 0, 1), 0}, {day, 9}, {day, 10}, {day, 10}}
	for _, wrong := range [][]Measured{nil, same[:4], same, zero} {
		if trend, err := Fouling(wrong); err == nil {
			t.Errorf("%v answers %+v", wrong, trend)
		}
	}
}
