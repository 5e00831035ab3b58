package forecast

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"aerosteep/wording"
)

var update = flag.Bool("update", false, "write the golden files anew")

// namedCases are brews that a grower would know, each asked about at an hour.
func namedCases() []struct {
	name string
	q    Question
	t    Telling
} {
	type named = struct {
		name string
		q    Question
		t    Telling
	}
	start := time.Date(2026, 5, 13, 18, 0, 0, 0, time.UTC)
	tell := Telling{Batch: "D-114", Start: start, Zone: time.UTC}
	night := AirCourse{{0, 30}, {6, 27}, {12, 24}, {18, 30}, {24, 33}}
	feeds := drum()
	for i, name := range []string{"molasses", "fish hydrolysate", "kelp meal", "molasses"} {
		feeds.Additions = append(feeds.Additions, Addition{Name: name, Hour: float64(4 * i), Ready: 120, Slow: 150, Nitrogen: 5})
	}
	unmetered := tell
	unmetered.NoMeter = true
	return []named{
		{"spring fill at 8 °C", Question{Setup: with(fed(400), func(s *Setup) { s.Start = 8 }), Hours: 24}, tell},
		{"a night at 30 °C", Question{Setup: with(fed(400), func(s *Setup) { s.Start = 28; s.Outdoors = night }), Hours: 24}, tell},
		{"unfed", Question{Setup: drum(), Hours: 24}, tell},
		{"castings only", Question{Setup: with(drum(), func(s *Setup) { s.Compost = []Compost{{Kind: "vermicompost", GramsPerLitre: 40}} }), Hours: 24}, tell},
		{"three foods in four feeds", Question{Setup: feeds, Now: 6, Hours: 18, Log: falling()}, tell},
		{"power out from 01:00 to 04:00", Question{Setup: fed(400), Now: 9, Hours: 15, Log: Log{
			Readings: falling().Readings[:2], Events: []Event{{Hour: 7, What: AirOff}},
		}}, tell},
		{"no meter", Question{Setup: fed(400), Now: 6, Hours: 18}, unmetered},
	}
}

// TestNamedCases keeps what is said of each; a change of a number or of a
// reason shows in testdata/named-cases.golden.
func TestNamedCases(t *testing.T) {
	var b strings.Builder
	for _, c := range namedCases() {
		c.q.Members, c.q.Seed = 1000, 1
		f, err := Run(c.q)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		a := f.Answer(c.t)
		reader := wording.Reader{Language: wording.English, Units: wording.Metric}
		fmt.Fprintf(&b, "%s\n  %s\n  %s: %s\n  %s\n  %s\n", c.name, f.Sentence(c.t).For(reader), a.Why.Driver, a.Why.Text.For(reader), a.NextReadingWhy.For(reader), a.Meter.Text.For(reader))
		for _, x := range a.Actions {
			fmt.Fprintf(&b, "  - %s\n", x.Text.For(reader))
		}
	}
	compareGolden(t, "named-cases.golden", b.String())
}

// TestDigitsEverywhere keeps the bits of one forecast, so that the same
// question under another machine (WebAssembly) is compared with these.
func TestDigitsEverywhere(t *testing.T) {
	f, err := Run(Question{Setup: fed(400), Now: 10, Hours: 12, Members: 500, Seed: 1, Log: falling()})
	if err != nil {
		t.Fatal(err)
	}
	sum := uint64(0)
	for _, m := range f.Course {
		for _, v := range []float64{m.DO.Median, m.DO.Low95, m.Water.High80, m.Uptake.Median} {
			sum = sum*31 + math.Float64bits(v)
		}
	}
	compareGolden(t, "digits.golden", fmt.Sprintf("%016x\n", sum))
}

func compareGolden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got {
		t.Errorf("%s differs: got\n%s", name, got)
	}
}

// Quick members must stay quick: no allocation for a step of a member.
func TestStepsTakeNoMemory(t *testing.T) {
	s := fed(400)
	e := newEnsemble(&s, 10, 1)
	steps := timeline(&s, changesOf(s.Additions), 6)
	if n := testing.AllocsPerRun(20, func() {
		for i := range steps {
			e.stride(&steps[i])
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}
