package report_test

import (
	"bytes"
	"strings"
	"testing"

	"aerosteep/record/report"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/recipe"
)

func chart(t *testing.T, volumes string) *worksheet.Result {
	t.Helper()
	for _, sheet := range recipe.Sheets() {
		if sheet.Name == "dose-chart" {
			form, err := worksheet.Read(&sheet, worksheet.Values{"recipe": {"balanced"}, "volumes": {volumes}, "rate": {"20 gal/ac"}}, nil)
			if err != nil {
				t.Fatal(err)
			}
			result, err := sheet.Run(form)
			if err != nil {
				t.Fatal(err)
			}
			return result
		}
	}
	t.Fatal("no dose chart")
	return nil
}

// One page, whatever the number of tanks, and the same bytes each time.
func TestDoseChartIsOnePage(t *testing.T) {
	for _, volumes := range []string{"5 gal", "5 gal" + strings.Repeat(", 25 gal", 23)} {
		for _, r := range []wording.Reader{{Language: wording.English, Units: wording.US}, {Language: wording.Spanish, Units: wording.Metric}} {
			first, err := report.DoseChart(chart(t, volumes), r)
			if err != nil {
				t.Fatal(err)
			}
			second, err := report.DoseChart(chart(t, volumes), r)
			if err != nil || !bytes.Equal(first, second) {
				t.Errorf("%s: two prints differ (%v)", volumes, err)
			}
			if !bytes.HasPrefix(first, []byte("%PDF-")) || bytes.Count(first, []byte("/Type /Page\n")) != 1 {
				t.Errorf("%s: %d pages", volumes, bytes.Count(first, []byte("/Type /Page\n")))
			}
		}
	}
}

func TestDoseChartOfSomethingElse(t *testing.T) {
	if _, err := report.DoseChart(&worksheet.Result{Data: 7}, wording.Reader{}); err == nil {
		t.Error("a chart was made from a number")
	}
}
