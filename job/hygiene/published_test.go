package hygiene_test

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"aerosteep/internal/published"
	"aerosteep/job/hygiene"
)

// open is a covered sale of food from land that is not organic.
var open = hygiene.Words{
	"material": "compost", "animal_origin": "yes", "human_waste": "no", "treatment": "hot", "process_record": "yes",
	"contaminated": "no", "additives": "none", "held": "24 h", "water": "municipal", "crop_use": "food", "market": "sold",
	"covered": "yes", "organic": "no", "edible_part": "touches-soil", "method": "drench", "contact_during": "none",
	"contact_after": "minimized", "applied": "2026-05-01",
}

func yes(cell string) string {
	if strings.HasPrefix(cell, "yes") {
		return "yes"
	}
	return "no"
}

// fdaWords reads a row of the produce rule's cases.
func fdaWords(r published.Row) hygiene.Words {
	words := but(open, nil)
	words["animal_origin"] = yes(r.Text("material_of_animal_origin"))
	if r.Text("material_of_animal_origin") == "any" {
		words["animal_origin"] = "yes"
	}
	switch t := r.Text("treatment_of_material"); {
	case strings.HasPrefix(t, "112.54(a)"):
		words["treatment"] = "validated"
	case strings.HasPrefix(t, "none"):
		words["treatment"] = "none"
	}
	if strings.HasPrefix(r.Text("additive_nutrient_source"), "yes") {
		words["additives"] = "plant"
	}
	if r.Text("water_source") == "well" {
		words["water"], words["water_ecoli"] = "well", "not-detected"
		if r.Text("water_generic_E_coli_detected_in_100_mL") == "1" {
			words["water_ecoli"] = "detected"
		}
	}
	words["held"] = r.Text("hold_h") + " h"
	if r.Text("contaminated_after_treatment") != "any" {
		words["contaminated"] = yes(r.Text("contaminated_after_treatment"))
	}
	words["human_waste"] = yes(r.Text("human_waste"))
	return words
}

// TestProduceRuleCases: 21 CFR 112.3, 112.51 and 112.54 as cited in each row.
func TestProduceRuleCases(t *testing.T) {
	for _, row := range published.Rows(t, "rules-agricultural-tea.csv") {
		t.Run(row.Text("case"), func(t *testing.T) {
			v := decide(t, fdaWords(row))
			want := row.Text("expected_status")
			switch {
			case strings.HasPrefix(want, "treated, standard 112.55(b)"), strings.HasPrefix(want, "not an agricultural tea"):
				want = "treated-b"
			case strings.HasPrefix(want, "treated, standard 112.55(a)"):
				want = "treated-a"
			}
			if got := v.Sets[0].Status; got != want {
				t.Errorf("status %q, published %q\n  source: %s", got, row.Text("expected_status"), row.Text("source"))
			}
			if tea := v.Sets[0].AgriculturalTea; tea == nil || *tea != (row.Float("hold_h") > 1) {
				t.Errorf("agricultural tea is %v after %s h", tea, row.Text("hold_h"))
			}
		})
	}
}

// TestPlacementCases: the table of 21 CFR 112.56(a).
func TestPlacementCases(t *testing.T) {
	contact := map[string][]string{
		"contact": {"contact"}, "no contact": {"none"}, "minimised": {"minimized"}, "not minimised": {"contact"},
		"any": {"none", "minimized", "contact"},
	}
	for _, row := range published.Rows(t, "rules-placement.csv") {
		words := but(open, nil)
		switch status := row.Text("status"); {
		case status == "untreated":
			words["treatment"] = "none"
		case strings.HasSuffix(status, "(a)"):
			words["treatment"] = "validated"
		}
		for _, during := range contact[row.Text("contact_with_covered_produce_during_application")] {
			for _, after := range contact[row.Text("contact_after_application")] {
				words["contact_during"], words["contact_after"] = during, after
				v := decide(t, words)
				want := hygiene.Yes
				switch {
				case strings.HasPrefix(row.Text("expected"), "not allowed"):
					want = hygiene.No
				case strings.Contains(row.Text("expected"), "reserved"):
					want = hygiene.WaitUntil // the organic interval stands in
				}
				if v.Sets[0].Allowed != want {
					t.Errorf("%s, %s during, %s after: %s, published %q\n  source: %s", row.Text("case"), during, after, v.Sets[0].Allowed, row.Text("expected"), row.Text("source"))
				}
			}
		}
	}
}

// nopWords reads a row of the organic cases.
func nopWords(r published.Row) hygiene.Words {
	words := but(open, hygiene.Words{"organic": "yes", "covered": "no", "pretest": "none"})
	words["material"] = map[string]string{"compost tea": "compost", "raw manure tea": "raw-manure", "compost leachate": "leachate"}[r.Text("material")]
	words["nop_compost"] = yes(r.Text("compost_meets_rule"))
	if r.Text("additives") == "yes" {
		words["additives"] = "plant"
	}
	if r.Text("system_pretest") == "passed" {
		words["pretest"] = "passed"
	}
	if r.Text("water_potable") == "no" {
		words["water"] = "surface"
	}
	words["sanitized"] = yes(r.Text("equipment_sanitised"))
	if strings.Contains(r.Text("crop"), "clear of soil") {
		words["edible_part"] = "clear-of-soil"
	}
	for part, use := range map[string]string{"not for human": "non-food", "grain": "grain", "sprouts": "sprouts"} {
		if strings.Contains(r.Text("crop"), part) {
			words["crop_use"] = use
		}
	}
	if r.Text("placement") == "foliar" {
		words["method"] = "foliar"
	}
	return words
}

// TestOrganicCases: 7 CFR 205.203(c) and the compost tea recommendations as
// cited in each row.
func TestOrganicCases(t *testing.T) {
	for _, row := range published.Rows(t, "rules-organic.csv") {
		t.Run(row.Text("case"), func(t *testing.T) {
			v := decide(t, nopWords(row)).Sets[1]
			want, days := hygiene.No, 0
			switch expected := row.Text("expected"); {
			case expected == "no restriction":
				want = hygiene.Yes
			case strings.Contains(expected, "120 d"):
				want, days = hygiene.WaitUntil, 120
			case strings.Contains(expected, "90 d"):
				want, days = hygiene.WaitUntil, 90
			}
			if v.Name != "nop" || v.Allowed != want || days > 0 && *v.IntervalDays != days {
				t.Errorf("%s after %v days, published %q\n  source: %s", v.Allowed, v.IntervalDays, row.Text("expected"), row.Text("source"))
			}
		})
	}
}

// TestIntervalDates: days before harvest, by the calendar.
func TestIntervalDates(t *testing.T) {
	rows := published.Rows(t, "intervals.csv")
	for _, row := range published.Where(rows, "quantity", "earliest_harvest_date", "latest_application_date") {
		part := "touches-soil"
		if row.Text("days_or_years") == "90" {
			part = "clear-of-soil"
		}
		words := but(open, hygiene.Words{"treatment": "none", "edible_part": part})
		if row.Text("quantity") == "earliest_harvest_date" {
			words["applied"] = row.Text("date")
			if got := day(decide(t, words).Until); got != row.Text("expected") {
				t.Errorf("%s: first harvest %s, published %s", row.Text("case"), got, row.Text("expected"))
			}
			continue
		}
		delete(words, "applied")
		words["harvest"] = row.Text("date")
		if got := day(decide(t, words).LatestApplication); got != row.Text("expected") {
			t.Errorf("%s: latest application %s, published %s", row.Text("case"), got, row.Text("expected"))
		}
	}
}

func TestReadRefuses(t *testing.T) {
	for name, c := range map[string]struct{ fact, word string }{
		"a date that does not exist": {"applied", "2026-02-30"},
		"a word off the list":        {"treatment", "cold"},
		"a time without a unit":      {"held", "24"},
		"more than 30 days":          {"held", "31 d"},
		"an unknown food":            {"additives", "dragon blood"},
		"none and something":         {"additives", "none, molasses"},
		"nothing in the list":        {"additives", ","},
		"harvest before application": {"harvest", "2026-04-30"},
		"a fact nobody asks":         {"moon", "full"},
	} {
		words := but(worked, hygiene.Words{c.fact: c.word})
		if _, err := hygiene.Read(words, origins); err == nil {
			t.Errorf("%s: %s = %q was taken", name, c.fact, c.word)
		}
	}
	if _, err := hygiene.Read(hygiene.Words{"organic": "true", "human_waste": "false", "material": "unknown"}, origins); err != nil {
		t.Errorf("true, false and unknown were refused: %v", err)
	}
}

func TestAdditivesTakeTheStrictestOrigin(t *testing.T) {
	for words, want := range map[string]string{
		"molasses": "plant", "molasses, kelp meal": "plant", "molasses, fish hydrolysate": "animal",
		"none": "none", "leaf mould": "none", "plant": "plant", "animal, molasses": "animal",
	} {
		f, err := hygiene.Read(hygiene.Words{"additives": words}, origins)
		if got := f.Value(hygiene.Additives); err != nil || got != want {
			t.Errorf("%s: %q (%v), want %q", words, got, err, want)
		}
	}
}

func TestNearestWaysAreAllowed(t *testing.T) {
	v := decide(t, but(worked, hygiene.Words{"method": "foliar", "contact_during": "contact"}))
	if v.Allowed != hygiene.No {
		t.Fatalf("sprayed on leaves: %s", v.Allowed)
	}
	found := map[string]bool{}
	for _, way := range hygiene.NearestWays(v) {
		found[way.Changes[0].Key] = true
		if way.Allowed != hygiene.Yes && way.Allowed != hygiene.WaitUntil {
			t.Errorf("%s leads to %s", way.Changes[0].Key, way.Allowed)
		}
	}
	if !found["drip"] || !found["drench"] || found["pretest"] {
		t.Errorf("ways found: %v, want drip and drench, and no change that does not help", found)
	}
}

func TestFirstQuestionSettlesMost(t *testing.T) {
	lettuce := decide(t, but(worked, hygiene.Words{"additives": "-", "sanitized": "-"}))
	if got := hygiene.Questions([]hygiene.Facts{lettuce.Facts}); len(got) == 0 || got[0] != hygiene.Sanitized && got[0] != hygiene.Additives {
		t.Errorf("asks %v", got)
	}
	if got := hygiene.Questions([]hygiene.Facts{{}}); got[0] != hygiene.HumanWaste {
		t.Errorf("with nothing known asks %v first, want what can end it at once", got[0])
	}
}

// A judge who remembers says the same as one who does not.
func TestJudgeRemembersRightly(t *testing.T) {
	judge := hygiene.NewJudge()
	for n := range 240 {
		changes := hygiene.Words{"applied": time.Date(2026, 5, 1+n%7, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)}
		if n%3 == 0 {
			changes["harvest"] = time.Date(2026, 7, 20+n, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
		}
		if n%4 == 0 {
			changes["edible_part"], changes["covered"] = "-", "-"
		}
		facts, err := hygiene.Read(but(worked, changes), origins)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := judge.Decide(facts), hygiene.Decide(facts); !reflect.DeepEqual(publicParts(got), publicParts(want)) {
			t.Fatalf("case %d: %+v, want %+v", n, got, want)
		}
	}
}

// publicParts are what a face shows of a verdict.
func publicParts(v hygiene.Verdict) []any {
	parts := []any{v.Ruling, v.LatestApplication, v.AtWorst, v.DecidedBy, v.Missing, v.Facts, v.Why}
	for _, s := range v.Sets {
		parts = append(parts, s.Ruling, s.Missing, s.Status, s.Applies)
	}
	return parts
}

// 5,000 pairs of beds and batches are judged in well under 50 ms: see the
// time per pair.
func BenchmarkDecidePair(b *testing.B) {
	facts, err := hygiene.Read(worked, origins)
	if err != nil {
		b.Fatal(err)
	}
	part := facts.With(hygiene.Pretest, "").With(hygiene.Covered, "").With(hygiene.WaterEColi, "")
	applied := time.Date(2026, 5, 1, 0, 0, 0, 0, time.UTC)
	judge := hygiene.NewJudge()
	for i := range b.N {
		c := facts
		if i%4 == 0 {
			c = part
		}
		judge.Decide(c.On(applied.AddDate(0, 0, i%90)))
	}
}

func FuzzRead(f *testing.F) {
	for _, seed := range []string{"24 h", "molasses; kelp meal", "2026-05-01", "yes", "unknown", "31 d", ",;", "-1 h"} {
		f.Add("held", seed)
		f.Add("additives", seed)
		f.Add("applied", seed)
	}
	f.Fuzz(func(t *testing.T, name, word string) {
		facts, err := hygiene.Read(hygiene.Words{name: word}, origins)
		if err == nil {
			hygiene.Decide(facts)
		}
	})
}
