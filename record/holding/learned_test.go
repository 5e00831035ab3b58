package holding

import (
	"context"
	"fmt"
	"testing"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
	ws "aerosteep/worksheet"
)

// taughtHolding has a drum whose finished batches were read: their oxygen lies
// lower than what is usual for such a rig.
func taughtHolding(t *testing.T, batches int) *Holding {
	t.Helper()
	ctx := context.Background()
	h := open(t, t.TempDir(), 1)
	text := "[holding]\nzone = \"UTC\"\n[water]\ntemperature = \"18 C\"\n[[vessel]]\nname = \"Drum\"\nfull = \"200 L\"\nkla20 = \"12 /h\"\n"
	file, problems := jobfile.Read([]byte(text), "drum.toml", jobfile.Whole)
	if err := problems.OrNil(); err != nil {
		t.Fatal(err)
	}
	if _, err := h.Load(ctx, file, Made{At: noon.AddDate(0, 0, -40)}); err != nil {
		t.Fatal(err)
	}
	for i := range batches {
		name, start := fmt.Sprintf("B-%d", i), noon.AddDate(0, 0, -30+3*i)
		say(t, h, "start", start, ws.Values{"batch": {name}, "vessel": {"Drum"}, "recipe": {"bacterial"}, "volume": {"150 L"}, "temp": {"18 C"}})
		for hour, do := range map[int]string{2: "8.6", 8: "6.2", 12: "4.6", 16: "4.1", 20: "4.9"} {
			say(t, h, "reading", start.Add(time.Duration(hour)*time.Hour), ws.Values{"batch": {name}, "do": {do + " mg/L"}, "temp": {"18 C"}})
		}
		say(t, h, "end", start.Add(24*time.Hour), ws.Values{"batch": {name}, "outcome": {"used"}})
	}
	say(t, h, "start", noon, ws.Values{"batch": {"Next"}, "vessel": {"Drum"}, "recipe": {"bacterial"}, "volume": {"150 L"}, "temp": {"18 C"}})
	return h
}

func say(t *testing.T, h *Holding, word string, at time.Time, given ws.Values) {
	t.Helper()
	form, _ := FormOf(word)
	e, err := h.Compose(form, given, Made{At: at})
	if err == nil {
		_, err = h.Store(context.Background(), e)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// Finished batches move the forecast of the next toward what they did; a batch of
// another vessel and recipe is left alone, and what is learned can begin anew.
func TestFinishedBatchesTeachTheNext(t *testing.T) {
	ctx := context.Background()
	lowest := func(h *Holding) float64 {
		f, _, _, err := h.Forecast(ctx, "Next", Asked{Now: noon, Hours: 24, Members: 1000, Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		return f.MinDO.Median
	}
	usual, h := lowest(taughtHolding(t, 0)), taughtHolding(t, 5)
	taught := lowest(h)
	if taught > usual-0.3 {
		t.Errorf("lowest oxygen %v, without the five batches %v", taught, usual)
	}
	learned, err := h.Taught(ctx, "Drum", "bacterial", noon)
	if err != nil || learned == nil || learned.Transfer.Batches != 5 || learned.Uptake.Batches != 5 {
		t.Fatalf("%+v %v", learned, err)
	}
	if none, err := h.Taught(ctx, "Pail", "fungal", noon); none != nil || err != nil {
		t.Errorf("others are taught %+v %v", none, err)
	}
	say(t, h, "note", noon.Add(-time.Hour), ws.Values{"vessel": {"Drum"}, "text": {"new stone"}, "learn": {"anew"}})
	if learned, _ = h.Taught(ctx, "Drum", "bacterial", noon); learned == nil || learned.Transfer.Batches != 0 || learned.Uptake.Batches != 5 {
		t.Errorf("after a new stone %+v", learned)
	}
}

// A lesson is drawn once and set aside; something more written about its batch
// draws it anew.
func TestLessonsAreSetAside(t *testing.T) {
	ctx := context.Background()
	h := taughtHolding(t, 1)
	if _, err := h.Taught(ctx, "Drum", "", noon); err != nil {
		t.Fatal(err)
	}
	name := lessonForm + h.journal.Name() + ":B-0"
	arrival, first, err := h.journal.Checkpoint(ctx, name)
	if err != nil || first == nil {
		t.Fatalf("nothing is set aside: %v", err)
	}
	e, _ := h.entry(journal.Reading, "batch:B-0", map[string]any{"do_mg_per_l": 3.0}, Made{At: noon.AddDate(0, 0, -30).Add(15 * time.Hour)})
	if _, err := h.Store(ctx, e); err != nil {
		t.Fatal(err)
	}
	if _, err := h.Taught(ctx, "Drum", "", noon); err != nil {
		t.Fatal(err)
	}
	again, second, _ := h.journal.Checkpoint(ctx, name)
	if again == arrival || string(first) == string(second) {
		t.Error("a reading more changes nothing")
	}
}
