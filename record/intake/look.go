package intake

import (
	"math"
	"slices"
	"time"

	"aerosteep/fault"
	"aerosteep/wording"
)

// sort puts the readings in the order of the clock and drops all but the first of
// one moment.
func (f *Found) sort() {
	for i := 1; i < len(f.Readings); i++ {
		if f.Readings[i].At.Before(f.Readings[i-1].At) {
			f.Turned++
		}
	}
	if f.Turned > 0 {
		slices.SortStableFunc(f.Readings, func(a, b Reading) int { return a.At.Compare(b.At) })
	}
	before := len(f.Readings)
	f.Readings = slices.CompactFunc(f.Readings, func(a, b Reading) bool { return a.At.Equal(b.At) })
	f.Doubles = before - len(f.Readings)
}

// look finds how often rows come and where they stop coming.
func (f *Found) look() {
	if len(f.Readings) < 3 {
		return
	}
	steps := make([]time.Duration, len(f.Readings)-1)
	for i := range steps {
		steps[i] = f.Readings[i+1].At.Sub(f.Readings[i].At)
	}
	sorted := slices.Clone(steps)
	slices.Sort(sorted)
	f.Every = sorted[len(sorted)/2]
	for i, step := range steps {
		if step > 3*f.Every {
			f.Gaps = append(f.Gaps, Gap{f.Readings[i].At, f.Readings[i+1].At})
		}
	}
}

// Plausible ends: most water of a brew lies between them.
const (
	mostOxygen = 20.0 // mg/L; fresh water at 0 °C holds 14.6 (Benson and Krause 1984)
	leastSat   = 15.0 // %; a column in mg/L stays under it
	mostWarmth = 45.0 // °C; a brew is dead before
)

// doubt refuses a file in which most values are of another unit than was said:
// oxygen in per cent typed as mg/L, Fahrenheit as Celsius.
func (f *Found) doubt() error {
	if len(f.Readings) == 0 {
		return fault.New("file", "", wording.Say("intake.no-rows"), wording.Say("intake.allowed"), wording.Say("intake.no-rows.advice", wording.Places{"n": len(f.Skipped)}))
	}
	var faults fault.List
	ask := func(key string, median float64, wrong bool) {
		if wrong {
			faults = append(faults, fault.New("column", "", wording.Say("intake.unit-doubt."+key, wording.Places{"median": wording.Fixed(median, 1, wording.Reader{})}), wording.Say("intake.unit-doubt."+key+".allowed"), wording.Say("intake.unit-doubt.advice")))
		}
	}
	do := f.median(func(r Reading) float64 { return r.DO })
	percent := f.median(func(r Reading) float64 { return r.Percent })
	temp := f.median(func(r Reading) float64 { return r.Temp })
	ask("do", do, do > mostOxygen)
	ask("percent", percent, percent < leastSat && percent > 1)
	ask("temp", temp, temp > mostWarmth)
	return faults.OrNil()
}

// median of what was measured; NaN of nothing.
func (f *Found) median(of func(Reading) float64) float64 {
	var values []float64
	step := max(1, len(f.Readings)/10_000) // enough to tell a unit
	for i := 0; i < len(f.Readings); i += step {
		if v := of(f.Readings[i]); !math.IsNaN(v) {
			values = append(values, v)
		}
	}
	if len(values) == 0 {
		return math.NaN()
	}
	slices.Sort(values)
	return values[len(values)/2]
}
