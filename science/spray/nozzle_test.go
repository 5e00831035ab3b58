package spray_test

import (
	"math"
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/spray"
)

func TestWearMatchesPublished(t *testing.T) {
	words := map[string]spray.Verdict{"keep": spray.Keep, "replace": spray.Replace, "clean and recheck": spray.Recheck}
	for _, row := range published.Rows(t, "nozzle-wear.csv") {
		rated := quantity.LitresPerMinute(row.Float("rated_flow"))
		test := must(spray.Judge([]quantity.Flow{quantity.LitresPerMinute(row.Float("measured_flow"))}, &rated, spray.Limits{Wear: row.Float("rule_percent"), Even: 5}))(t)
		row.Near(*test.Nozzles[0].OverRated, row.Float("deviation_percent"), 0.001)
		if got := test.Nozzles[0].Verdict; got != words[row.Text("expected")] {
			t.Errorf("%s: %s, published %s", row.Name(), got, row.Text("expected"))
		}
	}
}

// Four nozzles worked by hand: mean 0.83, squares 0.0009 + 0.0001 + 0.0016 +
// 0.0064 = 0.009, s = sqrt(0.003).
func TestEvennessByHand(t *testing.T) {
	rated := quantity.LitresPerMinute(0.80)
	test := must(spray.Judge([]quantity.Flow{0.80, 0.82, 0.79, 0.91}, &rated, spray.UsualLimits))(t)
	near(t, "mean", float64(test.Mean), 0.83, 1e-12)
	near(t, "CV", *test.CV, math.Sqrt(0.003)/0.83*100, 1e-9)
	near(t, "spread", test.Spread, 0.12/0.83*100, 1e-9)
	if worn := test.Numbers(spray.Replace); len(worn) != 1 || worn[0] != 4 || test.Even {
		t.Errorf("replace %v, even %v; want 4 and not even", worn, test.Even)
	}
}

func TestTwoNozzlesAreNotHeldToTheirMean(t *testing.T) {
	test := must(spray.Judge([]quantity.Flow{0.8, 1.0}, nil, spray.UsualLimits))(t)
	if test.Nozzles[0].Verdict != spray.Keep || test.Nozzles[1].Verdict != spray.Keep || test.Even {
		t.Errorf("two nozzles: %+v", test)
	}
	one := must(spray.Judge([]quantity.Flow{0.8}, nil, spray.UsualLimits))(t)
	if one.CV != nil || one.Nozzles[0].OverRated != nil || !one.Even {
		t.Errorf("one nozzle has no variation: %+v", one)
	}
}

func TestJudgeRefuses(t *testing.T) {
	zero := quantity.Flow(0)
	for name, c := range map[string]struct {
		flows []quantity.Flow
		rated *quantity.Flow
	}{
		"none":          {nil, nil},
		"all dry":       {[]quantity.Flow{0, 0}, nil},
		"decimal comma": {[]quantity.Flow{0, 41, 0, 40}, nil},
		"negative":      {[]quantity.Flow{-1}, nil},
		"not a number":  {[]quantity.Flow{quantity.Flow(math.NaN())}, nil},
		"rated zero":    {[]quantity.Flow{1}, &zero},
	} {
		if _, err := spray.Judge(c.flows, c.rated, spray.UsualLimits); fault.Of(err) == nil {
			t.Errorf("%s was taken", name)
		}
	}
}

func TestSievesMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "sieves.csv") {
		sieve, known := spray.FindSieve(int(row.Float("sieve_no")))
		if !known {
			t.Errorf("No. %s is missing", row.Text("sieve_no"))
		}
		row.Check(sieve.Opening.Micrometres(), "um")
	}
}

// In the R 40/3 series each opening is about the fourth root of 2 under the
// one before, down to 38 µm (ASTM E11).
func TestSievesFollowTheSeries(t *testing.T) {
	sieves := spray.Sieves()
	if len(sieves) != 32 {
		t.Fatalf("%d sieves, the standard's list has 32", len(sieves))
	}
	for i := 1; sieves[i].Opening.Micrometres() >= 38; i++ {
		step := float64(sieves[i-1].Opening / sieves[i].Opening)
		near(t, "step", step, math.Pow(2, 0.25), 0.03)
	}
}

func TestNearestSieves(t *testing.T) {
	for number, want := range map[float64][2]int{55: {50, 60}, 3: {4, 5}, 1000: {500, 635}, 90: {80, 100}} {
		if low, high := spray.NearestSieves(number); low != want[0] || high != want[1] {
			t.Errorf("%v lies between %d and %d, want %v", number, low, high, want)
		}
	}
	if _, known := spray.FindSieve(55); known {
		t.Error("ASTM E11 has no sieve 55")
	}
}

func TestOrificeMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "orifice.csv") {
		d := must(spray.Orifice(quantity.LitresPerMinute(row.Float("nozzle_flow_l_per_min")), quantity.Kilopascals(row.Float("pressure_kpa")), row.Float("discharge_coefficient")))(t)
		row.Check(d.Millimetres(), "mm equivalent orifice diameter")
	}
	if _, err := spray.Orifice(1, 1, 1.2); fault.Of(err) == nil {
		t.Error("a coefficient of 1.2 was taken")
	}
	if _, err := spray.Orifice(1, 0, 0.9); fault.Of(err) == nil {
		t.Error("no pressure was taken")
	}
}
