package water_test

import (
	"math"
	"strings"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/water"
)

// agentOf finds the agent that a row of the published table is about; the
// others are sulfites and salts that the house does not offer.
func agentOf(name string) (water.Agent, water.Form) {
	switch {
	case strings.HasPrefix(name, "ascorbic-acid"):
		return water.AscorbicAcid, water.NoForm
	case name == "sodium-ascorbate":
		return water.SodiumAscorbate, water.NoForm
	case strings.HasPrefix(name, "sodium-thiosulfate pentahydrate"):
		return water.SodiumThiosulfate, water.Pentahydrate
	case strings.HasPrefix(name, "sodium-thiosulfate"):
		return water.SodiumThiosulfate, water.Anhydrous
	}
	return "", ""
}

// TestDosesArePublished: AWWA field guide, table 7-2, and stoichiometry.
func TestDosesArePublished(t *testing.T) {
	checked := 0
	for _, row := range published.Rows(t, "dechlorination.csv") {
		agent, form := agentOf(row.Text("agent"))
		if agent == "" {
			continue
		}
		dose := water.Neutralise(quantity.Litres(row.Float("volume_l")), quantity.MilligramsPerLitre(row.Float("chlorine_mg_per_l_as_cl2")), agent, form, 0)
		switch row.Text("basis") {
		case "stoichiometric factor":
			row.Check(dose.Low.Grams(), "g per 1000 L per mg/L")
		case "field factor", "field factor dose":
			row.Check(dose.Exact.Grams(), row.Text("unit"))
		default:
			continue
		}
		checked++
	}
	if checked < 8 {
		t.Fatalf("only %d rows were checked", checked)
	}
}

func TestDecayIsFirstOrder(t *testing.T) {
	for _, row := range published.Rows(t, "chlorine_decay.csv") {
		got := water.AerationTime(quantity.MilligramsPerLitre(row.Float("c0_mg_per_l")), quantity.MilligramsPerLitre(row.Float("c_mg_per_l")), quantity.Hours(row.Float("half_life_h")))
		row.Check(got.Hours(), "h")
	}
}

func TestHalfLifeUndoesDecay(t *testing.T) {
	got := water.HalfLife(2, 0.5, quantity.Hours(6)).Hours()
	if math.Abs(got-3) > 1e-12 {
		t.Errorf("2 mg/L to a quarter in 6 h: half-life %g h, want 3", got)
	}
}

func mg(v float64) *quantity.Concentration { return new(quantity.MilligramsPerLitre(v)) }

// TestReadings holds every row of what may be known about a water.
func TestReadings(t *testing.T) {
	for name, c := range map[string]struct {
		test       water.Test
		chloramine water.Presence
		doseOn     float64
		combined   float64 // -1: not known
	}{
		"free and total":           {water.Test{Free: mg(0.2), Total: mg(2.2)}, water.Present, 2.2, 2},
		"free a little over total": {water.Test{Free: mg(1.05), Total: mg(1)}, water.Absent, 1.05, 0},
		"just the limit":           {water.Test{Free: mg(0.2), Total: mg(0.3)}, water.Present, 0.3, 0.1},
		"free and chloramine":      {water.Test{Free: mg(0.5), Combined: mg(1.5)}, water.Present, 2, 1.5},
		"total and chloramine":     {water.Test{Total: mg(2), Combined: mg(0.05)}, water.Absent, 2, 0.05},
		"all three":                {water.Test{Free: mg(0.5), Total: mg(2), Combined: mg(1.5)}, water.Present, 2, 1.5},
		"free only":                {water.Test{Free: mg(2)}, water.Unknown, 2, -1},
		"total only":               {water.Test{Total: mg(2)}, water.Unknown, 2, -1},
		"chloramine only":          {water.Test{Combined: mg(2)}, water.Present, 2, 2},
	} {
		got, err := c.test.Read()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		combined := -1.0
		if got.Combined != nil {
			combined = got.Combined.MilligramsPerLitre()
		}
		if got.Chloramine != c.chloramine || math.Abs(float64(got.DoseOn)-c.doseOn) > 1e-12 || math.Abs(combined-c.combined) > 1e-12 {
			t.Errorf("%s: %s on %g, combined %g", name, got.Chloramine, got.DoseOn, combined)
		}
	}
}

func TestContradictionsAreRefused(t *testing.T) {
	for name, test := range map[string]water.Test{
		"nothing read":          {},
		"free over total":       {Free: mg(2), Total: mg(1)},
		"chloramine over total": {Combined: mg(2), Total: mg(1)},
		"three that disagree":   {Free: mg(1), Combined: mg(1), Total: mg(3)},
	} {
		if _, err := test.Read(); err == nil {
			t.Errorf("%s was taken", name)
		}
	}
}

// Chloramine is never reported gone from time alone.
func TestBubblingDoesNotClearChloramine(t *testing.T) {
	with, _ := water.Test{Free: mg(0.2), Total: mg(2.2)}.Read()
	if water.Aeration(with, 0.1, nil) != nil {
		t.Error("an aeration time was given with chloramine present")
	}
	without, _ := water.Test{Free: mg(2), Total: mg(2)}.Read()
	wait := water.Aeration(without, 0.1, nil)
	if wait == nil || wait.Estimate != nil || math.Abs(wait.Low.Hours()-4.321928) > 1e-6 || math.Abs(wait.High.Hours()-25.931569) > 1e-6 {
		t.Errorf("2 mg/L to 0.1: %+v, want 4.3219 to 25.9316 h", wait)
	}
}

func TestMixing(t *testing.T) {
	for _, row := range published.Rows(t, "mix_water.csv") {
		cold, hot := quantity.Celsius(row.Float("t1_c")), quantity.Celsius(row.Float("t2_c"))
		first := water.Part{Volume: quantity.Litres(row.Float("v1_l")), Temperature: cold}
		switch row.Text("find") {
		case "temperature":
			row.Check(water.Mix([]water.Part{first, {Volume: quantity.Litres(row.Float("v2_l")), Temperature: hot}}).Temperature.Celsius(), "C")
		case "hot_volume_for_20C":
			row.Check(addTo(t, first, hot, 20), "L")
		case "hot_volume_for_18C":
			row.Check(addTo(t, first, hot, 18), "L")
		default:
			t.Fatalf("nobody finds %s", row.Text("find"))
		}
	}
}

func addTo(t *testing.T, mix water.Part, further, target quantity.Temperature) float64 {
	t.Helper()
	v, err := water.AddToReach(mix, further, target)
	if err != nil {
		t.Fatal(err)
	}
	return v.Litres()
}

func TestMixingRefusesWhatCannotBe(t *testing.T) {
	if _, err := water.AddToReach(water.Part{Volume: 50, Temperature: 10}, 60, 61); err == nil {
		t.Error("61 °C was reached with 60 °C water")
	}
	if _, err := water.AddToReach(water.Part{Volume: 50, Temperature: 10}, 60, 60); err == nil {
		t.Error("60 °C was reached by adding 60 °C water to colder water")
	}
	if _, _, err := water.TwoTaps(200, 9, 50, 55); err == nil {
		t.Error("55 °C came out of taps of 9 and 50 °C")
	}
	if _, _, err := water.TwoTaps(200, 50, 9, 20); err == nil {
		t.Error("a cold tap hotter than the hot one was taken")
	}
}

func TestTwoTapsFillTheVolume(t *testing.T) {
	hot, cold, err := water.TwoTaps(200, 9, 50, 18)
	if err != nil || math.Abs(hot.Litres()-43.902439024) > 1e-9 || math.Abs((hot+cold).Litres()-200) > 1e-9 {
		t.Errorf("hot %v cold %v: %v", hot, cold, err)
	}
}

func TestHose(t *testing.T) {
	flow := water.PailFlow(quantity.USGallons(5), quantity.Seconds(60))
	if got := water.FillTime(quantity.USGallons(1200), flow).Minutes(); math.Abs(got-240) > 1e-9 {
		t.Errorf("1200 gal at 5 gal/min take %g min, want 240", got)
	}
}
