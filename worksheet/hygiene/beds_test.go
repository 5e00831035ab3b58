package hygiene_test

import (
	"fmt"
	"strings"
	"testing"

	"aerosteep/job/jobfile"
	"aerosteep/worksheet/hygiene"
)

// holding is an invented holding; cases add beds and batches to it.
const holding = `
[holding]
name = "Tern Hollow"
zone = "America/Los_Angeles"
[hygiene]
human_waste = false
market = "sold"
covered = true
organic = false
sanitized = true
crop_use = "food"
edible_part = "touches-soil"
method = "drench"
contact_during = "none"
contact_after = "minimized"
water = "municipal"
applied = 2026-05-01
held = "24 h"
additives = "none"
contaminated = false
animal_origin = true
`

func judged(t *testing.T, text string) []hygiene.BedVerdict {
	t.Helper()
	file, problems := jobfile.Read([]byte(text), "job.toml", jobfile.FactsOnly)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	meetings, problems := file.Meetings()
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return hygiene.Judged(meetings)
}

// TestNamedCases: what growers really ask, with the verdict in words.
func TestNamedCases(t *testing.T) {
	for name, c := range map[string]struct{ batch, bed, says string }{
		"bagged compost without papers":            {`material = "compost"` + "\n" + `treatment = "none"`, "", "do not pick before 29 August 2026, 120 days after"},
		"own worm castings from kitchen waste":     {`material = "vermicompost"` + "\n" + `treatment = "none"` + "\n" + `process_record = false`, "", "120 days after"},
		"a neighbour's horse manure":               {`material = "raw-manure"`, "", "120 days after"},
		"a neighbour's horse manure on the leaf":   {`material = "raw-manure"`, `contact_during = "contact"`, "No: do not put this on here."},
		"plants-only leaf mould":                   {`material = "compost"` + "\n" + `animal_origin = false`, "", "Yes: put it on"},
		"extract on lettuce, hot compost":          {`material = "compost"` + "\n" + `treatment = "hot"` + "\n" + `process_record = true` + "\n" + `additives = "plant"` + "\n" + `held = "45 min"`, `contact_during = "minimized"`, "Yes: put it on"},
		"school garden, nothing sold":              {`material = "compost"` + "\n" + `treatment = "hot"` + "\n" + `process_record = true`, `market = "own-use"`, "Yes: put it on"},
		"rain barrel":                              {`material = "compost"` + "\n" + `treatment = "hot"` + "\n" + `process_record = true` + "\n" + `water = "rain"` + "\n" + `water_ecoli = "not-detected"`, "", "120 days after"},
		"blend of a proven and an unproven lot":    {`material = "compost"` + "\n" + `treatment = "none"` + "\n" + `process_record = true`, "", "120 days after"},
		"bagged compost, papers not yet asked for": {`material = "compost"`, `contact_during = "minimized"`, "Not yet: the answer hangs on"},
	} {
		t.Run(name, func(t *testing.T) {
			v := judged(t, holding+"[[bed]]\nname = \"Lettuce\"\n"+c.bed+"\n[[batch]]\nname = \"A\"\n"+c.batch+"\n")
			if said := hygiene.Sentence(v[0].Verdict).For(reader); !strings.Contains(said, c.says) {
				t.Errorf("says %q, want %q", said, c.says)
			}
		})
	}
}

func TestNearerWordsHideFartherOnes(t *testing.T) {
	v := judged(t, holding+`
[[bed]]
name = "One"
organic = "unknown"
batch = "A"
[[bed]]
name = "Two"
[[batch]]
name = "A"
material = "compost"
treatment = "hot"
process_record = true
water = "well"
[[batch]]
name = "B"
material = "raw-manure"
`)
	if len(v) != 3 {
		t.Fatalf("%d pairs, want One-A, Two-A, Two-B", len(v))
	}
	got := fmt.Sprint(v[0].Bed, *v[0].Batch, " ", v[1].Bed, *v[1].Batch, " ", v[2].Bed, *v[2].Batch)
	if got != "OneA TwoA TwoB" {
		t.Errorf("pairs are %s", got)
	}
	if missing := fmt.Sprint(v[0].Missing); !strings.Contains(missing, "organic") || !strings.Contains(missing, "water_ecoli") {
		t.Errorf("an unknown on the bed did not hide the holding's word: missing %s", missing)
	}
	if missing := fmt.Sprint(v[1].Missing); missing != "[water_ecoli]" {
		t.Errorf("Two-A hangs on %s, want the test of the well", missing)
	}
}

func TestFactsFollowFromTheFile(t *testing.T) {
	v := judged(t, `
[holding]
name = "Tern Hollow"
zone = "America/Los_Angeles"
[water]
source = "surface"
[[bed]]
name = "Kale"
[[batch]]
name = "A"
recipe = "Fed"
started_at = 2026-05-13T06:00:00-07:00
[[recipe]]
name = "Fed"
for_volume = "4 gal"
items = [ { ingredient = "compost", amount = "2 qt" }, { ingredient = "fish hydrolysate", amount = "20 mL" } ]
[[want]]
bed = "Kale"
method = "foliar"
at = 2026-05-14T23:30:00-07:00
tea = "4 gal"
`)
	got := map[string]string{}
	for _, d := range v[0].Derived {
		got[d.Fact.String()] = d.Value
	}
	want := map[string]string{"additives": "fish hydrolysate", "held": "41.5 h", "water": "surface", "method": "foliar", "applied": "2026-05-14"}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("derived %v, want %v", got, want)
	}
}

func TestNoBatchLeavesItsFactsMissing(t *testing.T) {
	v := judged(t, "[[bed]]\nname = \"Kale\"\n")
	if len(v) != 1 || v[0].Batch != nil || len(v[0].Missing) < 10 {
		t.Errorf("%+v", v)
	}
}

func TestWrongFactsAreToldWithTheirLine(t *testing.T) {
	file, problems := jobfile.Read([]byte("[[bed]]\nname = \"Kale\"\nadditives = \"moon dust\"\n[[batch]]\nname = \"A\"\n[[batch]]\nname = \"B\"\n"), "job.toml", jobfile.FactsOnly)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	_, problems = file.Meetings()
	if len(problems) != 1 || problems[0].Line != 3 || problems[0].Field != "bed.additives" {
		t.Errorf("%v, want one problem on line 3 of bed.additives", problems)
	}
}
