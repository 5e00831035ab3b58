package report_test

import (
	"bytes"
	"testing"
	"time"

	"aerosteep/examples"
	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/record/report"
	"aerosteep/wording"
)

// ternHollow is a plan with runs, made three days before them.
func ternHollow(t *testing.T, r wording.Reader) (*plan.Plan, *jobfile.File) {
	t.Helper()
	text, err := examples.ReadFile("examples/ternhollow/week.toml")
	if err != nil {
		t.Fatal(err)
	}
	file, problems := jobfile.Read(text, "week.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return plan.Make(plan.Input{File: file, Now: time.Date(2026, 5, 12, 22, 45, 0, 0, time.UTC), Reader: r}), file
}

// One page for each run, and the same bytes each time.
func TestJobSheetsAreOnePageEach(t *testing.T) {
	for _, r := range []wording.Reader{{Language: wording.English, Units: wording.US}, {Language: wording.Spanish, Units: wording.Metric}} {
		made, file := ternHollow(t, r)
		if len(made.Runs) == 0 {
			t.Fatal("no run is planned")
		}
		first, err := report.JobSheets(made, file, r)
		if err != nil {
			t.Fatal(err)
		}
		second, err := report.JobSheets(made, file, r)
		if err != nil || !bytes.Equal(first, second) {
			t.Errorf("two prints differ (%v)", err)
		}
		if pages := bytes.Count(first, []byte("/Type /Page\n")); !bytes.HasPrefix(first, []byte("%PDF-")) || pages != len(made.Runs) {
			t.Errorf("%d runs on %d pages", len(made.Runs), pages)
		}
	}
}

// More loads than a page holds go on under the same heads.
func TestJobSheetOfManyLoads(t *testing.T) {
	made, file := ternHollow(t, wording.Reader{Language: wording.English, Units: wording.US})
	run := made.Runs[0]
	for range 40 {
		run.Loads = append(run.Loads, run.Loads[0])
	}
	made.Runs = []plan.Run{run}
	sheets, err := report.JobSheets(made, file, wording.Reader{Language: wording.English, Units: wording.US})
	if pages := bytes.Count(sheets, []byte("/Type /Page\n")); err != nil || pages < 2 {
		t.Errorf("40 loads on %d pages, %v", pages, err)
	}
}

// Where nothing can be put on, the sheet says why.
func TestJobSheetWithoutRun(t *testing.T) {
	made, file := ternHollow(t, wording.Reader{Language: wording.English, Units: wording.US})
	made.Runs = nil
	sheets, err := report.JobSheets(made, file, wording.Reader{Language: wording.English, Units: wording.US})
	if err != nil || bytes.Count(sheets, []byte("/Type /Page\n")) != 1 {
		t.Errorf("%d pages, %v", bytes.Count(sheets, []byte("/Type /Page\n")), err)
	}
}
