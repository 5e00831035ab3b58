package journal

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"
)

var noon = time.Date(2026, 5, 13, 19, 0, 0, 0, time.UTC)

// steady is a clock and a randomness that repeat.
func steady(seed uint64) Means {
	now := noon
	return Means{
		Now:    func() time.Time { now = now.Add(time.Millisecond); return now },
		Random: rand.NewChaCha8([32]byte{byte(seed), byte(seed >> 8)}),
	}
}

func open(t testing.TB, folder string, seed uint64) *Journal {
	t.Helper()
	j, err := Open(context.Background(), folder, steady(seed))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { j.Close() })
	return j
}

func (j *Journal) reading(t testing.TB, batch string, at time.Time, do float64) Entry {
	t.Helper()
	id, err := j.NewID()
	if err != nil {
		t.Fatal(err)
	}
	return Entry{ID: id, Kind: Reading, At: at.Format(time.RFC3339), By: "R.K.", Device: j.Device(), Subject: "batch:" + batch,
		Body: json.RawMessage(fmt.Sprintf(`{"do_mg_per_l":%g}`, do))}
}

func store(t testing.TB, j *Journal, entries ...Entry) []Result {
	t.Helper()
	results, err := j.Store(context.Background(), entries...)
	if err != nil {
		t.Fatal(err)
	}
	return results
}

func export(t testing.TB, j *Journal) string {
	t.Helper()
	var out bytes.Buffer
	if err := j.Export(context.Background(), &out, time.Time{}); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func importAll(t testing.TB, j *Journal, text string) (outcomes map[Outcome]int, why []error) {
	t.Helper()
	outcomes = map[Outcome]int{}
	err := j.Import(context.Background(), strings.NewReader(text), func(l Line) {
		outcomes[l.Outcome]++
		if l.Why != nil {
			why = append(why, l.Why)
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	return outcomes, why
}

func TestStoredEntriesAreThereAfterReopening(t *testing.T) {
	folder := t.TempDir()
	j := open(t, folder, 1)
	sent := j.reading(t, "D-114", noon, 7.4)
	if r := store(t, j, sent); r[0].Outcome != Stored {
		t.Fatalf("outcome %v", r[0])
	}
	j.Close()
	again := open(t, folder, 2)
	if again.Name() != j.Name() || again.Device() != j.Device() {
		t.Errorf("the folder changed its names: %s %s, was %s %s", again.Name(), again.Device(), j.Name(), j.Device())
	}
	found, err := again.List(context.Background(), Wanted{Subject: "batch:D-114"})
	if err != nil || len(found) != 1 || !found[0].Same(sent) || found[0].Seq != 1 {
		t.Errorf("found %+v, %v", found, err)
	}
}

func TestSameEntryTwiceIsOne(t *testing.T) {
	j := open(t, t.TempDir(), 1)
	e := j.reading(t, "D-114", noon, 7.4)
	store(t, j, e)
	e.RecordedAt = "2026-05-13T20:00:00Z" // may differ between two copies
	e.Body = json.RawMessage(` { "do_mg_per_l" : 7.40 } `)
	if r := store(t, j, e); r[0].Outcome != AlreadyStored {
		t.Errorf("the same content again: %v", r[0])
	}
	e.Body = json.RawMessage(`{"do_mg_per_l":7.5}`)
	if r := store(t, j, e); r[0].Outcome != Refused {
		t.Errorf("another content under the same id: %v", r[0])
	}
	found, _, err := j.Find(context.Background(), e.ID)
	if err != nil || string(found.Body) != `{"do_mg_per_l":7.4}` {
		t.Errorf("the stored entry is now %s, %v", found.Body, err)
	}
}

// The chain, computed here from the exported lines alone.
func TestEveryLineCarriesTheDigestOfTheOneBefore(t *testing.T) {
	j := open(t, t.TempDir(), 1)
	for i := range 20 {
		store(t, j, j.reading(t, "D-114", noon.Add(time.Duration(i)*time.Minute), 7))
	}
	before := strings.Repeat("0", 64)
	for i, line := range strings.Split(strings.TrimSpace(export(t, j)), "\n") {
		var e Entry
		if err := json.Unmarshal([]byte(line), &e); err != nil {
			t.Fatal(err)
		}
		if e.Seq != int64(i+1) || e.Before != before || e.Journal != j.Name() {
			t.Errorf("line %d has seq %d and before %s, want %s", i+1, e.Seq, e.Before, before)
		}
		sum := sha256.Sum256([]byte(line))
		before = hex.EncodeToString(sum[:])
	}
}

func TestExportImportExportIsByteIdentical(t *testing.T) {
	from := open(t, t.TempDir(), 1)
	for i := range 50 {
		e := from.reading(t, "Ñandú <1> & \u2028", noon.Add(-time.Duration(i)*time.Minute), float64(i)/3)
		e.RecordedAt = noon.Add(time.Duration(i*7%50) * time.Second).In(time.FixedZone("", -7*3600)).Format(time.RFC3339Nano)
		store(t, from, e)
	}
	text := export(t, from)
	to := open(t, t.TempDir(), 9)
	if n, why := importAll(t, to, text); n[Stored] != 50 || why != nil {
		t.Fatalf("import: %v %v", n, why)
	}
	if again := export(t, to); again != text {
		t.Errorf("the second export differs:\n%s\n%s", text, again)
	}
	if n, _ := importAll(t, to, text); n[AlreadyStored] != 50 {
		t.Errorf("import again: %v", n)
	}
	store(t, to, to.reading(t, "D-115", noon, 6))
	for _, j := range []*Journal{from, to} {
		if f, err := j.Verify(context.Background()); err != nil || !f.OK() {
			t.Errorf("verify: %v %v", f.Problems, err)
		}
	}
}

func TestImportStoresGoodLinesBesideRefusedOnes(t *testing.T) {
	from := open(t, t.TempDir(), 1)
	store(t, from, from.reading(t, "A", noon, 7), from.reading(t, "A", noon, 6))
	lines := strings.SplitAfter(export(t, from), "\n")
	text := "\ufeff" + lines[0] + "not JSON\r\n\n" + strings.Replace(lines[1], `"kind":"reading"`, `"kind":"readings"`, 1) + lines[1]
	to := open(t, t.TempDir(), 2)
	n, why := importAll(t, to, text)
	if n[Stored] != 2 || n[Refused] != 2 {
		t.Errorf("%v %v", n, why)
	}
}

func TestRefusedEntries(t *testing.T) {
	j := open(t, t.TempDir(), 1)
	other := "018f3c2a-0000-7000-8000-000000000001"
	for name, change := range map[string]func(*Entry){
		"no id":               func(e *Entry) { e.ID = "" },
		"id of version 4":     func(e *Entry) { e.ID = "018f3c2a-0000-4000-8000-000000000001" },
		"another kind":        func(e *Entry) { e.Kind = "sighting" },
		"time without offset": func(e *Entry) { e.At = "2026-05-13T19:00:00" },
		"no such day":         func(e *Entry) { e.At = "2026-02-30T19:00:00Z" },
		"far future":          func(e *Entry) { e.At = "3026-02-03T19:00:00Z" },
		"reading of nothing":  func(e *Entry) { e.Subject = "" },
		"reading of a bed":    func(e *Entry) { e.Subject = "bed:Kale" },
		"text for a number":   func(e *Entry) { e.Body = json.RawMessage(`{"do_mg_per_l":"7.4 mg/L"}`) },
		"negative oxygen":     func(e *Entry) { e.Body = json.RawMessage(`{"do_mg_per_l":-1}`) },
		"body is a list":      func(e *Entry) { e.Body = json.RawMessage(`[1]`) },
		"no body":             func(e *Entry) { e.Body = nil },
		"replaces itself":     func(e *Entry) { e.Replaces = &e.ID },
		"half a chain":        func(e *Entry) { e.Journal = other },
		"chain without links": func(e *Entry) { e.Journal, e.Seq, e.Before = other, 2, noneBefore; e.RecordedAt = e.At },
		"line break in name":  func(e *Entry) { e.By = "R\nK" },
		"setup of a moon":     func(e *Entry) { e.Kind, e.Subject = Setup, "moon:Full" },
		"event of no name":    func(e *Entry) { e.Kind = Event },
		"series without rows": func(e *Entry) { e.Kind = Series },
	} {
		e := j.reading(t, "D-114", noon, 7)
		change(&e)
		if r := store(t, j, e); r[0].Outcome != Refused || r[0].Why == nil {
			t.Errorf("%s: %v", name, r[0].Outcome)
		}
	}
	if n, _ := j.Size(context.Background()); n != 0 {
		t.Errorf("%d entries were stored", n)
	}
}

func TestReplacedEntriesStayAndNameWhatReplacesThem(t *testing.T) {
	j := open(t, t.TempDir(), 1)
	wrong := j.reading(t, "D-114", noon, 74)
	right := j.reading(t, "D-114", noon, 7.4)
	right.Replaces = &wrong.ID
	store(t, j, right, wrong) // a phone may send them in any order
	found, _, err := j.Find(context.Background(), wrong.ID)
	if err != nil || found.ReplacedBy == nil || *found.ReplacedBy != right.ID {
		t.Errorf("replaced by %v, %v", found.ReplacedBy, err)
	}
}

func TestIdsSortInOrderOfMaking(t *testing.T) {
	now := noon // a clock that stands still, then runs backwards
	m := NewMaker(func() time.Time { return now }, rand.NewChaCha8([32]byte{}))
	last := ""
	for i := range 10_000 {
		if i == 5000 {
			now = now.Add(-time.Hour)
		}
		id, err := m.New()
		if err != nil || !isUUIDv7(id) || id <= last {
			t.Fatalf("id %d is %q after %q, %v", i, id, last, err)
		}
		last = id
	}
}

// RFC 9562, appendix A.6: an example of version 7, and of version 4 in A.3.
func TestVersionOfIds(t *testing.T) {
	if !isUUIDv7("017f22e2-79b0-7cc3-98c4-dc0c0c07398f") || isUUIDv7("919108f7-52d1-4320-9bac-f847db4148a8") {
		t.Error("versions are not told apart")
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(`{"id":"017f22e2-79b0-7cc3-98c4-dc0c0c07398f","kind":"reading","at":"2026-05-13T19:00:00Z","subject":"batch:A","body":{"do_mg_per_l":7.4}}`))
	f.Add([]byte(`{"id":null,"body":[]}`))
	f.Add([]byte(`{"kind":"series","at":"2026-05-13T19:00:00Z","subject":"batch:A","body":{"rows":[{"at":"x"}]}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		e, err := Decode(text)
		if err != nil || e.Check() != nil {
			return
		}
		form, err := e.Form()
		if err != nil {
			t.Fatalf("an accepted entry has no form: %v", err)
		}
		if again, err := Decode(form); err != nil || !again.Same(e) {
			t.Fatalf("%s comes back as something else, %v", form, err)
		}
	})
}
