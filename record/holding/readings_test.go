package holding

import (
	"testing"
	"time"
)

func TestRowsBecomeEntries(t *testing.T) {
	h := open(t, t.TempDir(), 1)
	zone, err := time.LoadLocation("America/Los_Angeles")
	if err != nil {
		t.Fatal(err)
	}
	text := "# a comment\nat;temp_c;do_mg_per_l;event;note;by\n2026-05-13 06:10;13,5;9,6;air-on;;M.R.\n2026-05-13 09:00;;;;foam is down;A.T.\n"
	entries, err := h.FromCSV("a.csv", []byte(text), "D-1", zone)
	if err != nil {
		t.Fatal(err)
	}
	want := []struct{ kind, body, by string }{
		{"event", `{"event":"air-on"}`, "M.R."},
		{"reading", `{"do_mg_per_l":9.6,"temp_c":13.5}`, "M.R."},
		{"note", `{"text":"foam is down"}`, "A.T."},
	}
	if len(entries) != len(want) {
		t.Fatalf("%d entries", len(entries))
	}
	for i, w := range want {
		if e := entries[i]; e.Kind != w.kind || string(e.Body) != w.body || e.By != w.by || e.Check() != nil {
			t.Errorf("%d: %s %s %s, %v", i, e.Kind, e.Body, e.By, e.Check())
		}
	}
	if entries[0].At != "2026-05-13T06:10:00-07:00" || entries[0].RecordedAt != entries[0].At {
		t.Errorf("at %s, recorded %s", entries[0].At, entries[0].RecordedAt)
	}
	if _, err := h.FromCSV("a.csv", []byte("at,do_mg_per_l\n2026-05-13 06:10,seven\n"), "D-1", zone); err == nil {
		t.Error("a word was taken for a number")
	}
}
