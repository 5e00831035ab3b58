package oxygen_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/oxygen"
)

// expected reads a file of answers by their name.
func expected(t *testing.T, file string) map[string]published.Row {
	rows := map[string]published.Row{}
	for _, row := range published.Rows(t, file) {
		rows[row.Text("id")] = row
	}
	return rows
}

// The clean-water test of which scipy's curve_fit gives the answer.
func TestRiseMatchesPublished(t *testing.T) {
	want := expected(t, "reaeration-series-expected.csv")
	var exact, noisy []oxygen.Reading
	for _, row := range published.Rows(t, "reaeration-series.csv") {
		at := quantity.Seconds(row.Float("time_s"))
		exact = append(exact, oxygen.Reading{At: at, Oxygen: quantity.Concentration(row.Float("do_exact_mg_per_l"))})
		noisy = append(noisy, oxygen.Reading{At: at, Oxygen: quantity.Concentration(row.Float("do_with_noise_mg_per_l"))})
	}
	for kind, readings := range map[string][]oxygen.Reading{"exact": exact, "noise": noisy} {
		rise, err := oxygen.Reaeration(readings, 0, oxygen.Probe{Resolution: 0.001})
		if err != nil {
			t.Fatal(err)
		}
		want["kla_"+kind].Check(rise.KLa.Value.PerHour(), "1/h")
		want["c_star_"+kind].Check(rise.Final.Value.MilligramsPerLitre(), "mg/L")
		want["c0_"+kind].Check(rise.Start.Value.MilligramsPerLitre(), "mg/L")
	}
	rise, _ := oxygen.Reaeration(noisy, 0, oxygen.Probe{Resolution: 0.001})
	const t28 = 2.048407 // Student's t(0.975, 28), any statistical table
	half := float64(rise.KLa.High95-rise.KLa.Low95) / 2
	want["kla_noise_standard_error"].Check(half/t28, "1/h")
}

// The pump-off test with a probe that lags by 25 s: the slope, the rise with
// the lag ignored, waited for and fitted.
func TestPumpOffMatchesPublished(t *testing.T) {
	want := expected(t, "our-series-expected.csv")
	var readings []oxygen.AiredReading
	for i, row := range published.Rows(t, "our-series.csv") {
		readings = append(readings, oxygen.AiredReading{
			Reading: oxygen.Reading{At: quantity.Seconds(row.Float("time_s")), Oxygen: quantity.Concentration(row.Float("do_probe_mg_per_l"))},
			AirOn:   row.Text("air") == "on", Line: i + 2,
		})
	}
	off, on, err := oxygen.PumpOff(readings)
	if err != nil {
		t.Fatal(err)
	}
	lag := quantity.Seconds(want["probe_time_constant"].Float("expected"))
	fall, err := oxygen.FitFall(off, 15, oxygen.Probe{Resolution: 0.0001, Lag: lag})
	if err != nil {
		t.Fatal(err)
	}
	want["our"].Check(fall.Uptake.Value.MilligramsPerLitreHour(), "mg/(L h)")
	ignored, err := oxygen.Recovery(on, oxygen.Probe{Resolution: 0.0001})
	if err != nil {
		t.Fatal(err)
	}
	want["kla_probe_lag_ignored"].Check(ignored.KLa.Value.PerHour(), "1/h")
	waited, err := oxygen.Recovery(on, oxygen.Probe{Resolution: 0.0001, Lag: lag * 80 / 75})
	if err != nil {
		t.Fatal(err)
	}
	want["kla_probe_first_80s_dropped"].Check(waited.KLa.Value.PerHour(), "1/h")
	fitted, err := oxygen.Recovery(on, oxygen.Probe{Resolution: 0.0001, Lag: lag, FitLag: true})
	if err != nil {
		t.Fatal(err)
	}
	want["kla"].Check(fitted.KLa.Value.PerHour(), "1/h")
	want["c_steady"].Check(fitted.Final.Value.MilligramsPerLitre(), "mg/L")
	want["c_star"].Check(fall.SaturationImplied(fitted).MilligramsPerLitre(), "mg/L")
}

func TestTwoReadingsMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "our-slope.csv") {
		fall, err := oxygen.FallBetween(quantity.Concentration(row.Float("do_start_mg_per_l")), quantity.Concentration(row.Float("do_end_mg_per_l")), quantity.Minutes(row.Float("minutes")), 0.1)
		if err != nil {
			t.Fatal(err)
		}
		row.Check(fall.Uptake.Value.MilligramsPerLitreHour(), "mg/(L h)")
	}
}

// The rise through two points to a known end is kLa by the log-deficit form
// of ASCE/EWRI 2; a rise made from that kLa must give it back.
func TestRiseGivesLogDeficitBack(t *testing.T) {
	for _, row := range published.Rows(t, "kla-log-deficit.csv") {
		saturation, c1, c2 := row.Float("c_saturation"), row.Float("c1"), row.Float("c2")
		kla := math.Log((saturation-c1)/(saturation-c2)) / (row.Float("t2_s") - row.Float("t1_s"))
		var readings []oxygen.Reading
		for i := range 30 {
			at := float64(i) * 4 / kla / 29
			readings = append(readings, oxygen.Reading{At: quantity.Seconds(at), Oxygen: quantity.Concentration(saturation - (saturation-c1)*math.Exp(-kla*at))})
		}
		rise, err := oxygen.Reaeration(readings, 0, oxygen.Probe{Resolution: 0.0001})
		if err != nil {
			t.Fatal(err)
		}
		row.Check(rise.KLa.Value.PerSecond(), "1/s")
	}
}

// trial is one invented clean-water test with a lagging probe and 2 % noise.
func trial(random *rand.Rand, lagShare float64) (readings []oxygen.Reading, kla float64, lag quantity.Span) {
	kla = 4 + 26*random.Float64()
	final, start := 7+3*random.Float64(), 0.3+0.7*random.Float64()
	tau := lagShare / kla
	for i := range 61 {
		t := float64(i) * 4.5 / kla / 60
		// dP/dt = (C - P)/τ from P = C0, the probe at rest in still water.
		a := -(final - start) / (1 - kla*tau)
		truth := final + a*math.Exp(-kla*t)
		if tau > 0 {
			truth += (start - final - a) * math.Exp(-t/tau)
		}
		noise := 0.02 * final * random.NormFloat64()
		readings = append(readings, oxygen.Reading{At: quantity.Hours(t), Oxygen: quantity.Concentration(max(0, truth+noise))})
	}
	return readings, kla, quantity.Hours(tau)
}

// coverage is in how many of 500 trials, in per cent, the interval of kLa
// holds the truth.
func coverage(t *testing.T, lagShare float64, fitLag bool) float64 {
	random := rand.New(rand.NewPCG(1984, 620))
	inside := 0
	const trials = 500
	for range trials {
		readings, kla, lag := trial(random, lagShare)
		rise, err := oxygen.Reaeration(readings, 0, oxygen.Probe{Resolution: 0.001, Lag: lag, FitLag: fitLag})
		if err != nil {
			t.Logf("kLa %.2f/h, share %.2f: %v", kla, lagShare, err)
			continue
		}
		if float64(rise.KLa.Low95) <= kla && kla <= float64(rise.KLa.High95) {
			inside++
		}
	}
	return 100 * float64(inside) / trials
}

// A 95 % interval holds the truth in about 95 of 100 tests: with a quick
// probe, with one that is waited for, and with one whose lag is fitted.
func TestIntervalsCover(t *testing.T) {
	for _, c := range []struct {
		lagShare float64
		fitLag   bool
	}{{0, false}, {0.05, false}, {0.1, false}, {0.1, true}, {0.2, true}, {0.3, true}, {0.5, true}} {
		got := coverage(t, c.lagShare, c.fitLag)
		t.Logf("kLa times lag %.2f (fitted %v): %.1f %%", c.lagShare, c.fitLag, got)
		if got < 93 || got > 97 {
			t.Errorf("kLa times lag %.2f (fitted %v): %.1f %% of the intervals hold the truth, want 93 to 97", c.lagShare, c.fitLag, got)
		}
	}
}

// readingsOf puts values a minute apart.
func readingsOf(values ...float64) []oxygen.Reading {
	var readings []oxygen.Reading
	for i, v := range values {
		readings = append(readings, oxygen.Reading{At: quantity.Minutes(float64(i)), Oxygen: quantity.Concentration(v)})
	}
	return readings
}

func TestRiseRefuses(t *testing.T) {
	for name, readings := range map[string][]oxygen.Reading{
		"five readings":      readingsOf(1, 3, 5, 6, 6.5),
		"flat":               readingsOf(5, 5, 5, 5, 5, 5, 5),
		"falling":            readingsOf(8, 7, 6, 5, 4, 3, 2),
		"falling to a rest":  readingsOf(8, 5, 3.5, 2.7, 2.4, 2.2, 2.1, 2.05),
		"straight":           readingsOf(1, 2, 3, 4, 5, 6, 7, 8),
		"one jump":           readingsOf(1, 8, 8, 8, 8, 8, 8, 8),
		"runs away":          readingsOf(1, 1.1, 1.3, 1.7, 2.5, 4.1, 7.3),
		"barely begun":       readingsOf(1, 1.1, 1.19, 1.28, 1.37, 1.45, 1.53),
		"all over the place": readingsOf(1, 7, 2, 8, 3, 6, 2, 9),
	} {
		_, err := oxygen.Reaeration(readings, 0, oxygen.Probe{Resolution: 0.01})
		if faults := fault.Of(err); len(faults) != 1 || faults[0].Field != "file" || faults[0].Advice.IsZero() {
			t.Errorf("%s: %v; want one fault of file with advice", name, err)
		}
	}
}

// A probe that is too slow for the air is refused by its own name.
func TestRiseRefusesSlowProbe(t *testing.T) {
	for share, fitLag := range map[float64]bool{0.4: false, 0.95: true} {
		random := rand.New(rand.NewPCG(3, 1))
		readings, _, lag := trial(random, share)
		_, err := oxygen.Reaeration(readings, 0, oxygen.Probe{Resolution: 0.001, Lag: lag, FitLag: fitLag})
		if faults := fault.Of(err); len(faults) != 1 || faults[0].Field != "probe-tau" {
			t.Errorf("share %.1f: %v; want a fault of probe-tau", share, err)
		}
	}
}

// A reading exactly at the end of the wait is used, one before it is not.
func TestWaitKeepsItsEnd(t *testing.T) {
	readings := []oxygen.Reading{{At: 0, Oxygen: 8}, {At: 14.9, Oxygen: 8}, {At: 15, Oxygen: 7.9}, {At: 60, Oxygen: 7.6}, {At: 90, Oxygen: 7.4}, {At: 120, Oxygen: 1.9}, {At: 150, Oxygen: 7}}
	fall, err := oxygen.FitFall(readings, 15, oxygen.Probe{Resolution: 0.1})
	if err != nil || fall.Used != 3 || !fall.CutShort || fall.Start != 8 {
		t.Errorf("%+v, %v; want 3 readings used and the rest cut", fall, err)
	}
	if _, err := oxygen.FitFall(readings, 20, oxygen.Probe{Resolution: 0.1}); err == nil {
		t.Error("two readings made a line")
	}
}

// No uptake seen: no minutes, and no claim that it can be measured.
func TestUptakeIsNotClamped(t *testing.T) {
	fall, err := oxygen.FallBetween(7, 7.2, quantity.Minutes(2), 0.1)
	if err != nil || fall.Uptake.Value >= 0 || fall.Measurable() {
		t.Errorf("%+v, %v; want an uptake under 0", fall, err)
	}
	if _, lasts := fall.TimeTo(2); lasts {
		t.Error("minutes were given without an uptake")
	}
	wide, _ := oxygen.FallBetween(7, 6.9, quantity.Minutes(2), 0.1)
	if left, lasts := wide.TimeTo(2); !lasts || left.Latest != nil || left.Soonest >= left.Time {
		t.Errorf("%+v: want no latest time where the uptake may be none", left)
	}
	if left, lasts := wide.TimeTo(8); !lasts || left.Time != 0 || left.Latest == nil || *left.Latest != 0 {
		t.Errorf("%+v: want 0 where the start is under the limit", left)
	}
}

func TestPumpOffRefuses(t *testing.T) {
	row := func(on bool, line int) oxygen.AiredReading { return oxygen.AiredReading{AirOn: on, Line: line} }
	if _, _, err := oxygen.PumpOff([]oxygen.AiredReading{row(true, 2), row(true, 3)}); len(fault.Of(err)) != 1 {
		t.Errorf("no stretch: %v", err)
	}
	_, _, err := oxygen.PumpOff([]oxygen.AiredReading{row(false, 2), row(true, 3), row(false, 4)})
	if faults := fault.Of(err); len(faults) != 1 || faults[0].Line != 4 {
		t.Errorf("second stretch: %v; want line 4", err)
	}
}

// A rise that is over within a fiftieth of a long log is found all the same.
func TestQuickRiseInALongLog(t *testing.T) {
	for _, kla := range []float64{12, 500, 8000} {
		rise, err := oxygen.Reaeration(longRise(kla), 0, oxygen.Probe{Resolution: 0.01})
		if err != nil || math.Abs(float64(rise.KLa.Value)/kla-1) > 0.03 {
			t.Errorf("kLa %v, %v; want %g", rise.KLa.Value, err, kla)
		}
	}
}

func longRise(kla float64) []oxygen.Reading {
	random := rand.New(rand.NewPCG(7, 7))
	var readings []oxygen.Reading
	for i := range 10000 {
		c := 9 - 8*math.Exp(-kla*float64(i)*0.4/10000) + 0.02*random.NormFloat64()
		readings = append(readings, oxygen.Reading{At: quantity.Hours(float64(i) * 0.4 / 10000), Oxygen: quantity.Concentration(c)})
	}
	return readings
}
