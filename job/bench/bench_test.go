package bench_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/job/bench"
	"aerosteep/quantity"
)

// Cornell's worked examples: grass with leaves, for moisture and for C:N.
func TestBlendMatchesCornell(t *testing.T) {
	for _, row := range published.Rows(t, "compost-mix.csv") {
		in := map[string]float64{}
		for _, part := range strings.Split(row.Text("inputs"), ";") {
			name, value, _ := strings.Cut(strings.TrimSpace(part), "=")
			if v, err := strconv.ParseFloat(strings.Fields(value)[0], 64); err == nil {
				in[name] = v
			}
		}
		if row.Text("quantity") != "Q2" || row.Text("case") != "second material for moisture" {
			continue
		}
		grass := bench.Mix(bench.Part{Mass: quantity.Grams(in["Q1_kg"] * 1000), Material: bench.Material{Moisture: quantity.Percent(in["M1_pct"])}})
		leaves := bench.Material{Moisture: quantity.Percent(in["M2_pct"])}
		got, possible := grass.ForMoisture(leaves, quantity.Percent(in["goal_pct"]))
		if !possible {
			t.Errorf("%s: not possible", row.Name())
		}
		row.Near(got.Kilograms(), row.Float("expected"), 0.05)
	}
}

// Grass of 45 % C and 2.4 % N with leaves of 50 % C and 0.75 % N for 30:1 takes
// 3.47 kg to 10 kg (Cornell prints 3.5).
func TestRatioMatchesCornell(t *testing.T) {
	grass, err := bench.ParsePart("part", "grass: 10 kg, C 45 %, N 2.4 %, moisture 77 %")
	if err != nil {
		t.Fatal(err)
	}
	leaves, err := bench.ParseMaterial("add", "leaves: C 50 %, N 0.75 %, moisture 35 %")
	if err != nil {
		t.Fatal(err)
	}
	got, possible := bench.Mix(grass).ForRatio(leaves, 30)
	if !possible || math.Abs(got.Kilograms()-3.5) > 0.05 {
		t.Errorf("%v %g kg", possible, got.Kilograms())
	}
	after := bench.Mix(grass).And(bench.Part{Material: leaves, Mass: got})
	if math.Abs(after.CarbonToNitrogen()-30) > 1e-9 {
		t.Errorf("C:N %g after adding", after.CarbonToNitrogen())
	}
}

func log(probe ...bench.Reading) bench.HeatLog {
	return bench.HeatLog{Probes: []bench.Probe{{Readings: probe}}, MaxGap: quantity.Hours(36)}
}

// The line through the readings is cut exactly where it passes 55.0 and 76.7 °C.
func TestHeatIsCutAtTheBand(t *testing.T) {
	h := log(bench.Reading{Hour: 0, Temperature: 45}, bench.Reading{Hour: 10, Temperature: 65}, bench.Reading{Hour: 20, Temperature: 85}).Judge()
	for name, c := range map[string][2]float64{
		"at temperature": {h.AtTemperature.Hours(), 5 + (76.7-65)/2}, "hot or more": {h.HotOrMore.Hours(), 15},
		"longest run": {h.LongestRun.Hours(), 15}, "above": {h.AboveLimit.Hours(), (85 - 76.7) / 2},
	} {
		if math.Abs(c[0]-c[1]) > 1e-9 {
			t.Errorf("%s: %g h, want %g h", name, c[0], c[1])
		}
	}
}

// 131 °F is 55.0 °C and counts: 54.95 is read as 55.0, 54.94 is not.
func TestHeatIsReadToATenth(t *testing.T) {
	for temperature, want := range map[quantity.Temperature]float64{quantity.Fahrenheit(131): 24, 54.96: 24, 54.94: 0} {
		if h := log(bench.Reading{Hour: 0, Temperature: temperature}, bench.Reading{Hour: 24, Temperature: temperature}).Judge(); math.Abs(h.LongestRun.Hours()-want) > 1e-9 {
			t.Errorf("%g °C: %g h, want %g", temperature.Celsius(), h.LongestRun.Hours(), want)
		}
	}
}

// A dip below breaks a run, a gap breaks it too, and neither is counted.
func TestRunsBreak(t *testing.T) {
	dip := log(bench.Reading{Hour: 0, Temperature: 60}, bench.Reading{Hour: 30, Temperature: 60}, bench.Reading{Hour: 31, Temperature: 50}, bench.Reading{Hour: 32, Temperature: 60}, bench.Reading{Hour: 62, Temperature: 60}).Judge()
	if math.Abs(dip.LongestRun.Hours()-30.5) > 1e-9 || math.Abs(dip.AtTemperature.Hours()-61) > 1e-9 {
		t.Errorf("dip: run %g h, total %g h", dip.LongestRun.Hours(), dip.AtTemperature.Hours())
	}
	gap := log(bench.Reading{Hour: 0, Temperature: 60}, bench.Reading{Hour: 36, Temperature: 60}, bench.Reading{Hour: 72.5, Temperature: 60}, bench.Reading{Hour: 80, Temperature: 60}).Judge()
	if gap.LongestRun.Hours() != 36 || len(gap.Gaps) != 1 {
		t.Errorf("gap: run %g h, gaps %v", gap.LongestRun.Hours(), gap.Gaps)
	}
}

func TestWindrowNeedsTurnings(t *testing.T) {
	var readings []bench.Reading
	for hour := 0.0; hour <= 400; hour += 20 {
		readings = append(readings, bench.Reading{Hour: hour, Temperature: 60})
	}
	l := log(readings...)
	l.Turned = []float64{0, 80, 160, 240, 240}
	cn, cured := 30.0, true
	if h := l.Judge(); h.Turnings != 4 || h.Meets(bench.Windrow) || h.NOP(bench.Windrow, bench.Facts{Ratio: &cn}).Meets != bench.No {
		t.Errorf("%d turnings", h.Turnings)
	}
	l.Turned = append(l.Turned, 400)
	h := l.Judge()
	if !h.Meets(bench.Windrow) || h.NOP(bench.Windrow, bench.Facts{Ratio: &cn}).Meets != bench.Yes || h.FDA(bench.Windrow, bench.Facts{Cured: &cured}).Meets != bench.Yes {
		t.Errorf("%+v", h)
	}
}

// What nobody knows about a compost keeps it out of the tank, and what a paper
// would change is said.
func TestUnknownCompostIsPutAside(t *testing.T) {
	standing, lacking, until := bench.Lot{}.Judge()
	if standing != bench.PutAside || len(lacking) != 4 || until.Days() != 21 {
		t.Errorf("%s, %d checks, %g d", standing, len(lacking), until.Days())
	}
	tested := map[bench.Paper]bool{bench.Smell: true, bench.Salts: true, bench.Bioassay: true}
	if standing, lacking, _ := (bench.Lot{Passed: tested}).Judge(); standing != bench.NonFood || len(lacking) != 1 {
		t.Errorf("without a record: %s, %v", standing, lacking)
	}
	tested[bench.HeatingRecord] = true
	if standing, _, _ := (bench.Lot{Passed: tested}).Judge(); standing != bench.Ready {
		t.Errorf("with all papers: %s", standing)
	}
	if standing, _, _ := (bench.Lot{Passed: tested, Failed: map[bench.Paper]bool{bench.Bioassay: true}}).Judge(); standing != bench.Rejected {
		t.Errorf("with a failed bioassay: %s", standing)
	}
}

func FuzzParsePart(f *testing.F) {
	f.Add("grass: 10 kg, CN 19, N 2.4 %, moisture 77 %")
	f.Add("x: 1 kg; C 0,4 %; N 1 %; moisture 5 %")
	f.Add(":,,")
	f.Fuzz(func(t *testing.T, text string) {
		p, err := bench.ParsePart("part", text)
		if err != nil {
			return
		}
		b := bench.Mix(p)
		if p.Nitrogen > 0 && math.IsNaN(b.CarbonToNitrogen()) || math.IsNaN(b.Moisture().Percent()) {
			t.Errorf("%q: %+v", text, b)
		}
	})
}
