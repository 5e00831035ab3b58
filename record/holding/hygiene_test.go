package holding

import (
	"context"
	"strings"
	"testing"
	"time"

	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
	"aerosteep/worksheet"
)

// strawberries is a bed on certified ground whose tea counts as untreated: fed
// with animal food and held a day, it asks for 120 days (7 CFR
// 205.203(c)(1)(i): the edible part touches the soil).
const strawberries = `
[holding]
name = "Yard"
zone = "America/Los_Angeles"

[[site]]
name = "Yard"
latitude = 44.12
longitude = -123.05

[[bed]]
name = "Strawberries"
area = "20 m2"
edible_part = "touches-soil"
contact_during = "none"
contact_after = "minimized"

[[vessel]]
name = "Drum"
full = "200 L"

[[batch]]
name = "D-1"
vessel = "Drum"
volume = "100 L"
started_at = 2026-04-30T08:00:00-07:00
held = "24 h"

[hygiene]
material = "raw-manure"
animal_origin = true
human_waste = false
treatment = "none"
contaminated = false
additives = "none"
water = "municipal"
sanitized = true
pretest = "none"
crop_use = "food"
market = "sold"
covered = false
organic = true
method = "drench"
`

func yard(t *testing.T, text string) *Holding {
	t.Helper()
	h := open(t, t.TempDir(), 9)
	file, problems := jobfile.Read([]byte(text), "yard.toml", jobfile.FactsOnly)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if _, err := h.Load(context.Background(), file, Made{At: noon}); err != nil {
		t.Fatal(err)
	}
	return h
}

// keep logs one thing and answers what it changed.
func keep(t *testing.T, h *Holding, word string, at time.Time, given worksheet.Values) *Effect {
	t.Helper()
	f, _ := FormOf(word)
	e, err := h.Compose(f, given, Made{At: at, By: "M.R."})
	if err != nil {
		t.Fatal(err)
	}
	before := h.LookAhead(context.Background(), e)
	results, err := h.Store(context.Background(), e)
	if err != nil || results[0].Outcome == journal.Refused {
		t.Fatal(err, results)
	}
	return h.EffectSince(context.Background(), before)
}

// 1 May and 120 days are 29 August: a pick the day before is a deviation with
// what to do, one on the day is none.
func TestAPickTooEarlyIsADeviation(t *testing.T) {
	h := yard(t, strawberries)
	first := time.Date(2026, 5, 1, 19, 0, 0, 0, time.UTC)
	keep(t, h, "applied", first, worksheet.Values{"bed": {"Strawberries"}, "batch": {"D-1"}, "method": {"drench"}})
	waits, err := h.Waits(context.Background())
	if err != nil || len(waits) != 1 || waits[0].Until() == nil || waits[0].Until().Format(time.DateOnly) != "2026-08-29" {
		t.Fatalf("waits %+v, %v", waits, err)
	}
	early := keep(t, h, "harvest", time.Date(2026, 8, 29, 5, 0, 0, 0, time.UTC), worksheet.Values{"bed": {"Strawberries"}})
	if early == nil {
		t.Fatal("22:00 on 28 August at the bed is let pass")
	}
	if said := early.Text.String(); !strings.Contains(said, "2026-08-29") && !strings.Contains(said, "29 August") || !strings.Contains(said, "205.203") || !strings.Contains(said, "apart") {
		t.Errorf("the deviation says %q", said)
	}
	if late := keep(t, h, "harvest", time.Date(2026, 8, 29, 19, 0, 0, 0, time.UTC), worksheet.Values{"bed": {"Strawberries"}}); late != nil {
		t.Errorf("29 August is told %q", late.Text)
	}
	if all, err := h.EarlyPicks(context.Background()); err != nil || len(all) != 1 {
		t.Errorf("%d early picks in the records, %v", len(all), err)
	}
}

// An answer on the holding serves every bed; a word on the bed stays nearer; a
// wrong word is refused by the name of the fact.
func TestAnAnswerServesEveryBed(t *testing.T) {
	h := yard(t, strings.Replace(strawberries, "organic = true\n", "", 1))
	met := func() hygiene.Facts {
		file, err := h.File(jobfile.FactsOnly)
		if err != nil {
			t.Fatal(err)
		}
		m, err := file.Meeting("Strawberries", "D-1")
		if err != nil {
			t.Fatal(err)
		}
		return m.Facts
	}
	answer := func(fact hygiene.Fact, subject, value string) error {
		e, err := h.Answer(fact, subject, value, Made{At: noon})
		if err == nil {
			_, err = h.Store(context.Background(), e)
		}
		return err
	}
	if err := answer(hygiene.Organic, "hygiene", "yes"); err != nil || met().Value(hygiene.Organic) != "yes" {
		t.Fatalf("organic is %q, %v", met().Value(hygiene.Organic), err)
	}
	if err := answer(hygiene.Organic, "bed:Strawberries", "unknown"); err != nil || met().Value(hygiene.Organic) != "" {
		t.Errorf("a bed's own unknown does not hide the holding's word, %v", err)
	}
	if err := answer(hygiene.Additives, "batch:D-1", "fish hydrolysate"); err != nil || met().Value(hygiene.Additives) != "animal" {
		t.Errorf("additives are %q, %v", met().Value(hygiene.Additives), err)
	}
	if b, _ := h.Batch("D-1"); b.Vessel != "Drum" || b.StartedAt == nil {
		t.Errorf("the answer cost the batch its table: %+v", b)
	}
	for subject, value := range map[string]string{"hygiene": "perhaps", "bed:Strawberry": "yes", "vessel:Drum": "yes"} {
		if err := answer(hygiene.Organic, subject, value); err == nil {
			t.Errorf("%s takes organic = %s", subject, value)
		}
	}
}

// A start asks who cleaned the vessel unless that is written down since the
// batch before.
func TestAStartAsksWhoCleaned(t *testing.T) {
	h := yard(t, strawberries)
	at := time.Date(2026, 5, 3, 15, 0, 0, 0, time.UTC)
	start := func(name string, at time.Time) *Effect {
		return keep(t, h, "start", at, worksheet.Values{"batch": {name}, "vessel": {"Drum"}, "recipe": {"Leafy"}, "volume": {"100 L"}})
	}
	if asked := start("D-2", at); asked == nil || !strings.Contains(asked.Text.String(), "Drum") {
		t.Errorf("nobody is asked who cleaned: %v", asked)
	}
	keep(t, h, "cleaned", at.Add(47*time.Hour), worksheet.Values{"vessel": {"Drum"}, "agent": {"peroxide"}})
	if asked := start("D-3", at.Add(48*time.Hour)); asked != nil {
		t.Errorf("asked although it is written down: %s", asked.Text)
	}
	if asked := start("D-4", at.Add(72*time.Hour)); asked == nil {
		t.Error("an old cleaning counts for the next batch")
	}
}
