package journal

import (
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"
)

var writeForms = flag.Bool("write-forms", false, "write the file of the newest form into testdata, once, when it is released")

// A journal of every form that was ever released opens, says the same as it
// did, verifies, and takes new entries.
func TestJournalsOfEveryFormOpen(t *testing.T) {
	if *writeForms {
		writeForm(t)
	}
	files, err := filepath.Glob("testdata/form-*.db")
	if err != nil || len(files) != len(forms) {
		t.Fatalf("%d files in testdata for %d forms, %v", len(files), len(forms), err)
	}
	for _, file := range files {
		content, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		want, err := os.ReadFile(file[:len(file)-len(".db")] + ".jsonl")
		if err != nil {
			t.Fatal(err)
		}
		folder := t.TempDir()
		if err := os.WriteFile(filepath.Join(folder, File), content, 0o600); err != nil {
			t.Fatal(err)
		}
		j := open(t, folder, 8)
		if got := export(t, j); got != string(want) {
			t.Errorf("%s exports\n%s", file, got)
		}
		store(t, j, j.reading(t, "A", noon, 7))
		if said := problems(t, j); said != "" {
			t.Errorf("%s: %s", file, said)
		}
	}
}

func writeForm(t *testing.T) {
	j := open(t, t.TempDir(), 1)
	for i := range 3 {
		store(t, j, j.reading(t, "D-114", noon.Add(time.Duration(i)*time.Hour), 7+float64(i)/10))
	}
	attach(t, j, "lot:W-7", []byte("temperatures of the heap"))
	text := export(t, j)
	j.Close()
	content, err := os.ReadFile(j.path)
	if err != nil {
		t.Fatal(err)
	}
	name := "testdata/form-" + strconv.Itoa(len(forms))
	if err := os.WriteFile(name+".db", content, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name+".jsonl", []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
