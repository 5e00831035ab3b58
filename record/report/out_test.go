package report_test

import (
	"context"
	"encoding/csv"
	"os"
	"strings"
	"testing"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/record/holding"
	"aerosteep/record/report"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// A text that begins like a formula leaves with an apostrophe (OWASP, CSV
// injection: = + - @ tab and return); numbers below zero stay numbers.
func TestSpreadsheetsRunNothing(t *testing.T) {
	h, ids := shelf(t)
	for _, note := range []string{`=HYPERLINK("x")`, "+1", "-2+3", "@SUM(A1)"} {
		write(t, h, "applied", shelfHour, worksheet.Values{"bed": {"Kale, east"}, "batch": {"D-114"}, "method": {"drench"}, "tea": {"1 L"}, "text": {note}})
		write(t, h, "reading", shelfHour, worksheet.Values{"batch": {"D-114"}, "temp": {"-1.5 C"}, "note": {note}})
	}
	desk := report.NewDesk(h, shelfHour)
	readings, err := desk.ReadingsCSV(context.Background(), "D-114")
	if err != nil {
		t.Fatal(err)
	}
	texts := [][]byte{readings}
	for kind, name := range names(ids) {
		text, err := made(t, h, kind, name).CSV(wording.Reader{Language: wording.English})
		if err != nil {
			t.Fatalf("%s: %v", kind, err)
		}
		texts = append(texts, text)
	}
	for _, text := range texts {
		r := csv.NewReader(strings.NewReader(string(text)))
		r.FieldsPerRecord = -1
		rows, err := r.ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range rows {
			for _, cell := range row {
				if cell != "" && strings.ContainsRune("=+@\t\r", rune(cell[0])) || strings.HasPrefix(cell, "-2+") {
					t.Errorf("a cell begins like a formula: %q", cell)
				}
			}
		}
	}
	if !strings.Contains(string(readings), ",-1.5,") {
		t.Error("a temperature below zero is no number any more")
	}
}

// What leaves as a file of readings is what the program reads as one.
func TestReadingsComeBack(t *testing.T) {
	h, _ := shelf(t)
	write(t, h, "event", shelfHour.Add(-2*time.Hour), worksheet.Values{"batch": {"D-114"}, "event": {"air-off"}})
	text, err := report.NewDesk(h, shelfHour).ReadingsCSV(context.Background(), "D-114")
	if err != nil {
		t.Fatal(err)
	}
	log, err := forecast.ReadLog("readings.csv", text, forecast.LogReading{Start: shelfHour.Add(-60 * time.Hour), Zone: time.UTC})
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	if len(log.Readings) != 1 || len(log.Events) != 1 {
		t.Errorf("%d readings and %d events come back", len(log.Readings), len(log.Events))
	}
}

// The heating record of a lot is its log of temperatures, judged: the example of
// 7 CFR 205.203(c)(2) needs 3 days at 55 °C in a static pile, 15 in a windrow.
func TestHeatingRecordOfALot(t *testing.T) {
	h, _ := shelf(t)
	desk := report.NewDesk(h, shelfHour)
	if _, err := desk.Make(context.Background(), "heating", "W-7"); err == nil {
		t.Error("a record without a log is made")
	}
	log, err := os.ReadFile("../../examples/heap.csv")
	if err != nil {
		t.Fatal(err)
	}
	keep := func(method string) {
		given := worksheet.Values{"what": {"heating"}, "lot": {"W-7"}}
		if method != "" {
			given["method"] = []string{method}
		}
		if _, err := h.Attach(context.Background(), "heap.csv", log, given, holding.Made{At: shelfHour, By: "A.T."}); err != nil {
			t.Fatal(err)
		}
	}
	keep("")
	says(t, h, "heating", "W-7", "static pile, in vessel or windrow decides")
	keep("static-pile")
	says(t, h, "heating", "W-7", "static pile", "heap.csv", "hours needed: 72")
	keep("windrow")
	says(t, h, "heating", "W-7", "windrow", "hours needed: 360")
}
