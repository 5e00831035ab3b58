package rig

import (
	"math"
	"time"

	"aerosteep/fault"
	"aerosteep/numeric"
	"aerosteep/wording"
)

// Measured is the transfer that one test of a vessel's air found.
type Measured struct {
	At    time.Time
	KLa20 float64 // 1/h
}

// Trend is how the transfer of a vessel goes with time.
type Trend struct {
	Tests     int
	PerMonth  float64 // change of kLa20 in 30 days over its mean; negative is a decline
	Falls     bool    // a decline that chance alone would show in fewer than 5 of 100 cases
	Statistic float64 // t of the slope
}

// fewestTests are those below which no trend is told: with four points a line
// hides everything.
const fewestTests = 5

// Fouling looks for a decline in the transfer of a vessel: diffusers foul, pumps
// wear. The slope of a straight line by least squares against time, its t with
// n - 2 degrees of freedom, one-sided at 5 %. At least five tests, on at least
// two days, every transfer over 0.
//
// Source: least squares and t test of a slope, any text on statistics.
func Fouling(tests []Measured) (Trend, error) {
	if len(tests) < fewestTests {
		return Trend{}, fault.New("tests", "", wording.Say("rig.few-tests", wording.Places{"n": len(tests)}), wording.Say("rig.few-tests.allowed", wording.Places{"n": fewestTests}), wording.Text{})
	}
	days, values := make([]float64, len(tests)), make([]float64, len(tests))
	for i, m := range tests {
		if !(m.KLa20 > 0) {
			return Trend{}, fault.New("kla20", "", wording.Say("rig.few-tests", wording.Places{"n": i}), wording.Say("rig.few-tests.allowed", wording.Places{"n": fewestTests}), wording.Text{})
		}
		days[i], values[i] = m.At.Sub(tests[0].At).Hours()/24, m.KLa20
	}
	slope, deviation, mean := line(days, values)
	if math.IsNaN(slope) {
		return Trend{}, fault.New("tests", "", wording.Say("rig.one-day"), wording.Say("rig.few-tests.allowed", wording.Places{"n": fewestTests}), wording.Text{})
	}
	t := Trend{Tests: len(tests), PerMonth: slope * 30 / mean}
	switch {
	case deviation > 0:
		t.Statistic = slope / deviation
	case slope != 0:
		t.Statistic = math.Inf(int(math.Copysign(1, slope)))
	}
	t.Falls = t.Statistic < -numeric.StudentQuantile(0.95, float64(len(tests)-2))
	return t, nil
}

// line is the slope of y on x by least squares, its standard deviation, and the
// mean of y; NaN where all x are one.
func line(x, y []float64) (slope, deviation, mean float64) {
	n := float64(len(x))
	var meanX float64
	for i := range x {
		meanX += x[i] / n
		mean += y[i] / n
	}
	var xx, xy, rest float64
	for i := range x {
		xx += (x[i] - meanX) * (x[i] - meanX)
		xy += (x[i] - meanX) * (y[i] - mean)
	}
	slope = xy / xx
	for i := range x {
		off := y[i] - mean - slope*(x[i]-meanX)
		rest += off * off
	}
	return slope, math.Sqrt(rest / (n - 2) / xx), mean
}
