package hygiene_test

import (
	"maps"
	"testing"
	"time"

	"aerosteep/job/hygiene"
)

// worked is the case that the rules are explained with: fed tea of hot compost
// as a drench under lettuce, on a covered and certified farm.
var worked = hygiene.Words{
	"material": "compost", "animal_origin": "yes", "human_waste": "no", "treatment": "hot", "process_record": "yes",
	"nop_compost": "yes", "contaminated": "no", "additives": "molasses", "held": "24 h", "water": "well",
	"water_ecoli": "not-detected", "sanitized": "yes", "pretest": "passed", "crop_use": "food", "market": "sold",
	"covered": "yes", "organic": "yes", "edible_part": "touches-soil", "method": "drench",
	"contact_during": "none", "contact_after": "minimized", "applied": "2026-05-01",
}

// origins is a small larder for the tests.
func origins(name string) (hygiene.Origin, bool, bool) {
	switch name {
	case "molasses", "kelp meal":
		return hygiene.Origin{}, true, true
	case "fish hydrolysate":
		return hygiene.Origin{Animal: true}, true, true
	case "leaf mould":
		return hygiene.Origin{}, false, true
	}
	return hygiene.Origin{}, false, false
}

// but is the worked case with some words changed; "-" takes one out.
func but(base hygiene.Words, changes hygiene.Words) hygiene.Words {
	words := maps.Clone(base)
	for name, word := range changes {
		if word == "-" {
			delete(words, name)
		} else {
			words[name] = word
		}
	}
	return words
}

func decide(t *testing.T, words hygiene.Words) hygiene.Verdict {
	t.Helper()
	facts, err := hygiene.Read(words, origins)
	if err != nil {
		t.Fatal(err)
	}
	return hygiene.Decide(facts)
}

func day(t *time.Time) string {
	if t == nil {
		return ""
	}
	return t.Format(time.DateOnly)
}

// The worked cases of the contract of this room.
func TestWorkedCases(t *testing.T) {
	for name, c := range map[string]struct {
		changes hygiene.Words
		allowed hygiene.Allowed
		until   string
		missing int
	}{
		"as told":            {nil, hygiene.WaitUntil, "2026-08-29", 0},
		"harvest on the day": {hygiene.Words{"harvest": "2026-08-29"}, hygiene.Yes, "2026-08-29", 0},
		"a day too early":    {hygiene.Words{"harvest": "2026-08-28"}, hygiene.WaitUntil, "2026-08-29", 0},
		"touches a little":   {hygiene.Words{"contact_during": "minimized"}, hygiene.No, "", 0},
		"unfed":              {hygiene.Words{"additives": "none"}, hygiene.Yes, "2026-05-01", 0},
		"pre-test unknown":   {hygiene.Words{"pretest": "-"}, hygiene.WaitUntil, "2026-08-29", 0},
		"covered unknown, sprayed on the leaf": {hygiene.Words{"covered": "unknown", "organic": "no", "treatment": "none",
			"method": "foliar", "contact_during": "contact"}, hygiene.No, "", 0},
		"day unknown": {hygiene.Words{"applied": "-"}, hygiene.Ask, "", 1},
	} {
		t.Run(name, func(t *testing.T) {
			v := decide(t, but(worked, c.changes))
			if v.Allowed != c.allowed || day(v.Until) != c.until || len(v.Missing) != c.missing {
				t.Errorf("got %s until %q missing %v, want %s until %q and %d missing", v.Allowed, day(v.Until), v.Missing, c.allowed, c.until, c.missing)
			}
		})
	}
}

func TestLatestApplicationIsHarvestLessTheInterval(t *testing.T) {
	v := decide(t, but(worked, hygiene.Words{"harvest": "2026-08-28"}))
	if got := day(v.LatestApplication); got != "2026-04-30" {
		t.Errorf("latest application %s, want 2026-04-30", got)
	}
}

func TestNothingKnownIsAsked(t *testing.T) {
	v := hygiene.Decide(hygiene.Facts{})
	if v.Allowed != hygiene.Ask || v.AtWorst == nil || v.AtWorst.Allowed != hygiene.No {
		t.Errorf("got %s at worst %v, want ask and no", v.Allowed, v.AtWorst)
	}
	// Everything can matter but the pathogen test, which no rule orders, and
	// the harvest, which only ends a wait.
	if want := len(hygiene.All()) - 2; len(v.Missing) != want {
		t.Errorf("%d facts asked for, want %d: %v", len(v.Missing), want, v.Missing)
	}
}
