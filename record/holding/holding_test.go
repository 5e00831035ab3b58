package holding

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
	"aerosteep/worksheet"
)

var noon = time.Date(2026, 5, 13, 19, 0, 0, 0, time.UTC)

func steady(seed byte) journal.Means {
	now := noon
	return journal.Means{Now: func() time.Time { now = now.Add(time.Millisecond); return now }, Random: rand.NewChaCha8([32]byte{seed})}
}

func open(t testing.TB, folder string, seed byte) *Holding {
	t.Helper()
	h, err := Open(context.Background(), folder, steady(seed))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { h.Close() })
	return h
}

const shed = `
[holding]
name = "Upper \"plots\""
zone = "America/Los_Angeles"

[[site]]
name = "Yard"
latitude = 44.12
longitude = -123.05

[[bed]]
name = "Kale, east #1"
area = "1200 sq ft"
batch = "D-1"

[[pump]]
name = "Blower"
curve = "60 L/min@0 kPa, 20 L/min@20 kPa"

[[vessel]]
name = "Drum"
full = "200 L"
pump = "Blower"

[[vessel]]
name = "Barril ñ"
full = "20 L"

[[recipe]]
name = "Leafy"
for_volume = "4 gal"
items = [ { ingredient = "compost", amount = "2 qt" }, { ingredient = "molasses", amount = "20 mL", when = "6 h" } ]

[[want]]
bed = "Kale, east #1"
method = "drench"
at = 2026-05-14T07:00:00-07:00
tea = "4 gal"

[[want]]
bed = "Kale, east #1"
method = "drench"
at = 2026-05-14T07:00:00-07:00
tea = "2 gal"
dilution = "1:8"

[[batch]]
name = "D-1"
vessel = "Drum"
recipe = "Leafy"
volume = "150 L"
started_at = 2026-05-13T06:10:00-07:00
temperature = "17.5 °C"
`

func load(t testing.TB, h *Holding, text string) int {
	t.Helper()
	file, problems := jobfile.Read([]byte(text), "a.toml", jobfile.Whole)
	if err := problems.OrNil(); err != nil {
		t.Fatal(err)
	}
	n, err := h.Load(context.Background(), file, Made{At: noon, By: "R.K."})
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func unload(t testing.TB, h *Holding) string {
	t.Helper()
	text, err := h.TOML()
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func logOne(t testing.TB, h *Holding, word string, given map[string]string) (journal.Entry, error) {
	t.Helper()
	f, known := FormOf(word)
	if !known {
		t.Fatal("no form " + word)
	}
	values := worksheet.Values{}
	for flag, text := range given {
		values[flag] = []string{text}
	}
	e, err := h.Compose(f, values, Made{At: noon, By: "R.K."})
	if err != nil {
		return e, err
	}
	results, err := h.Store(context.Background(), e)
	if err == nil {
		err = results[0].Why
	}
	return e, err
}

func mustLog(t testing.TB, h *Holding, word string, given map[string]string) journal.Entry {
	t.Helper()
	e, err := logOne(t, h, word, given)
	if err != nil {
		t.Fatalf("%s %v: %v", word, given, err)
	}
	return e
}

func TestLoadUnloadLoadChangesNothing(t *testing.T) {
	h := open(t, t.TempDir(), 1)
	if n := load(t, h, shed); n != 10 {
		t.Errorf("the first load made %d entries", n)
	}
	mustLog(t, h, "start", map[string]string{"batch": "D-2", "vessel": "Barril ñ", "recipe": "Leafy", "volume": "17 L", "temp": "60 F"})
	text := unload(t, h)
	if n := load(t, h, text); n != 0 {
		t.Errorf("loading what was unloaded made %d entries:\n%s", n, text)
	}
	if again := unload(t, h); again != text {
		t.Errorf("unloaded again it is different:\n%s\n%s", text, again)
	}
	other := open(t, t.TempDir(), 2)
	load(t, other, text)
	if got := unload(t, other); got != text {
		t.Errorf("in another folder it is different:\n%s\n%s", text, got)
	}
	if !strings.Contains(text, `name = "D-2"`) || !strings.Contains(text, `volume = "17 L"`) {
		t.Errorf("the started batch is not there:\n%s", text)
	}
}

func TestEmptyHolding(t *testing.T) {
	h := open(t, t.TempDir(), 1)
	if got := unload(t, h); got != "form = 1\n" || !h.Empty() {
		t.Errorf("an empty holding unloads as %q", got)
	}
}

func TestLoadKeepsWhatTheFileLacksAndTakesWhatItChanges(t *testing.T) {
	h := open(t, t.TempDir(), 1)
	load(t, h, shed)
	if n := load(t, h, strings.Replace(shed, `full = "20 L"`, `full = "25 L"`, 1)); n != 1 {
		t.Errorf("one changed table made %d entries", n)
	}
	if n := load(t, h, "[holding]\nname = \"Lower plots\"\nzone = \"America/Los_Angeles\"\n"); n != 1 {
		t.Errorf("%d entries", n)
	}
	text := unload(t, h)
	if !strings.Contains(text, "25 L") || strings.Contains(text, `"20 L"`) || !strings.Contains(text, "Lower plots") || !strings.Contains(text, "Kale") {
		t.Errorf("unloaded:\n%s", text)
	}
}

func TestBatchFromStartToEnd(t *testing.T) {
	h := open(t, t.TempDir(), 1)
	load(t, h, shed)
	mustLog(t, h, "start", map[string]string{"batch": "D-2", "vessel": "Drum", "recipe": "Leafy", "volume": "40 gal", "temp": "64 F"})
	b, known := h.Batch("D-2")
	if !known || !b.Living() || b.Vessel != "Drum" || b.Volume == nil || b.Volume.USGallons() < 39.99 || b.Volume.USGallons() > 40.01 {
		t.Errorf("%+v", b)
	}
	mustLog(t, h, "reading", map[string]string{"batch": "D-2", "do": "7.4 mg/L", "to-rim": "8 cm"})
	mustLog(t, h, "end", map[string]string{"batch": "D-2", "outcome": "failed", "cause": "foamed over"})
	b, _ = h.Batch("D-2")
	if b.Living() || b.Ended.Outcome != "failed" {
		t.Errorf("%+v", b)
	}
	if text := unload(t, h); strings.Contains(text, "D-2") {
		t.Error("a batch that is over is still in the job file")
	}
}

func TestWhatIsNotKnownIsRefusedWithTheNearest(t *testing.T) {
	h := open(t, t.TempDir(), 1)
	load(t, h, shed)
	for _, c := range []struct {
		word  string
		given map[string]string
		field string
		near  string
	}{
		{"reading", map[string]string{"batch": "D1", "do": "7 mg/L"}, "batch", "D-1"},
		{"start", map[string]string{"batch": "D-3", "vessel": "Durm", "recipe": "Leafy", "volume": "10 L"}, "vessel", "Drum"},
		{"start", map[string]string{"batch": "D-3", "vessel": "Drum", "recipe": "Leavy", "volume": "10 L"}, "recipe", "Leafy"},
		{"start", map[string]string{"batch": "D-1", "vessel": "Drum", "recipe": "Leafy", "volume": "10 L"}, "batch", ""},
		{"applied", map[string]string{"bed": "Kale, eats #1"}, "bed", "Kale, east #1"},
		{"reading", map[string]string{"batch": "D-1"}, "log reading", ""},
		{"reading", map[string]string{"batch": "D-1", "do": "7.4"}, "do", ""},
		{"reading", map[string]string{"batch": "D-1", "do": "-1 mg/L"}, "do", ""},
		{"reading", map[string]string{"batch": "D-1", "ph": "NaN"}, "ph", ""},
		{"end", map[string]string{"batch": "D-1", "outcome": "fine"}, "outcome", ""},
		{"event", map[string]string{"batch": "D-1"}, "event", ""},
	} {
		_, err := logOne(t, h, c.word, c.given)
		faults := fault.Of(err)
		if len(faults) == 0 || faults[0].Field != c.field || faults[0].Nearest != c.near {
			t.Errorf("%s %v: %v", c.word, c.given, err)
		}
	}
}

func TestCorrectionReplacesAndKeepsTheRest(t *testing.T) {
	h := open(t, t.TempDir(), 1)
	ctx := context.Background()
	load(t, h, shed)
	wrong := mustLog(t, h, "reading", map[string]string{"batch": "D-1", "do": "74 mg/L", "temp": "19.2 C"})
	old, _, _ := h.Journal().Find(ctx, wrong.ID)
	right, err := h.Correct(old, worksheet.Values{"do": {"7.4 mg/L"}}, Made{At: old.Time()})
	if err != nil {
		t.Fatal(err)
	}
	if string(right.Body) != `{"do_mg_per_l":7.4,"temp_c":19.2}` || *right.Replaces != wrong.ID || right.Subject != wrong.Subject {
		t.Errorf("%s %s", right.Body, right.Subject)
	}
	if _, err := h.Store(ctx, right); err != nil {
		t.Fatal(err)
	}
	old, _, _ = h.Journal().Find(ctx, wrong.ID)
	if _, err := h.Correct(old, worksheet.Values{"do": {"7 mg/L"}}, Made{At: noon}); err == nil {
		t.Error("an entry was corrected twice")
	}
}

// The state does not depend on the order in which entries arrive.
func TestStateIsTheSameInAnyOrder(t *testing.T) {
	h := open(t, t.TempDir(), 1)
	load(t, h, shed)
	load(t, h, strings.Replace(shed, `full = "20 L"`, `full = "25 L"`, 1))
	mustLog(t, h, "start", map[string]string{"batch": "D-2", "vessel": "Drum", "recipe": "Leafy", "volume": "40 L"})
	e := mustLog(t, h, "end", map[string]string{"batch": "D-2", "outcome": "used"})
	old, _, _ := h.Journal().Find(context.Background(), e.ID)
	fixed, err := h.Correct(old, worksheet.Values{"outcome": {"failed"}}, Made{At: noon})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := h.Store(context.Background(), fixed); err != nil {
		t.Fatal(err)
	}
	entries, err := h.Journal().List(context.Background(), journal.Wanted{})
	if err != nil {
		t.Fatal(err)
	}
	want, _ := json.Marshal(h.state)
	random := rand.New(rand.NewPCG(1, 2))
	for range 20 {
		random.Shuffle(len(entries), func(i, j int) { entries[i], entries[j] = entries[j], entries[i] })
		s := newState()
		for _, k := range slices.Concat(entries, entries[:3]) {
			s.apply(k.Entry)
		}
		if got, _ := json.Marshal(s); !bytes.Equal(got, want) {
			t.Fatalf("in another order the state is\n%s\nand not\n%s", got, want)
		}
	}
}

// A start resumes from the checkpoint and comes to the same state as going
// through everything.
func TestCheckpointGivesTheSameState(t *testing.T) {
	folder := t.TempDir()
	h := open(t, folder, 1)
	load(t, h, shed)
	var entries []journal.Entry
	for i := range 300 {
		e, err := h.entry(journal.Start, fmt.Sprintf("batch:E-%d", i), map[string]any{"vessel": "Drum"}, Made{At: noon.Add(time.Duration(i) * time.Hour)})
		if err != nil {
			t.Fatal(err)
		}
		entries = append(entries, e)
	}
	if _, err := h.Store(context.Background(), entries...); err != nil {
		t.Fatal(err)
	}
	if n, text, err := h.journal.Checkpoint(context.Background(), checkpointOf(h.chain)); n == 0 || text == nil || err != nil {
		t.Fatalf("no checkpoint: %d %v", n, err)
	}
	mustLog(t, h, "end", map[string]string{"batch": "E-7", "outcome": "used"})
	again := open(t, folder, 2)
	want, _ := json.Marshal(h.state)
	if got, _ := json.Marshal(again.state); !bytes.Equal(got, want) {
		t.Error("the resumed state differs")
	}
	if len(again.Batches()) != 301 || again.Batches()[0].Name != "E-299" {
		t.Errorf("%d batches", len(again.Batches()))
	}
}

// What another program stores is seen.
func TestRefreshSeesOthers(t *testing.T) {
	folder := t.TempDir()
	one, two := open(t, folder, 1), open(t, folder, 2)
	load(t, one, shed)
	if err := two.Refresh(context.Background()); err != nil {
		t.Fatal(err)
	}
	if _, known := two.Batch("D-1"); !known {
		t.Error("the other program's batch is not seen")
	}
}
