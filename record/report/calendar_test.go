package report_test

import (
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"aerosteep/job/plan"
	"aerosteep/record/report"
)

func small() *plan.Plan {
	zone := time.FixedZone("", -7*3600)
	at := time.Date(2026, 5, 14, 6, 0, 0, 0, zone)
	step := func(what, text string) plan.Step { return plan.Step{At: at, What: what, Text: text} }
	return &plan.Plan{
		Now: time.Date(2026, 5, 12, 8, 0, 0, 0, zone),
		Batches: []plan.Batch{
			{ID: "2026-05-14 Drum", Steps: []plan.Step{
				step("feed", "Añada 2 kg de compost, 40 mL de melaza; revuelva\n"+strings.Repeat("té é ", 40)), step("feed", "again"), step("strain", `back\slash`),
			}},
			{ID: "2026-05-14 Drum b", Steps: []plan.Step{step("feed", "other batch")}},
		},
	}
}

// RFC 5545: lines end in CRLF and are at most 75 octets long (3.1), text is
// escaped (3.3.11), times are UTC (3.3.5), every UID is its own (3.8.4.7).
func TestCalendarIsRFC5545(t *testing.T) {
	text := string(report.Calendar(small()))
	if !strings.HasPrefix(text, "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:") || !strings.HasSuffix(text, "END:VCALENDAR\r\n") {
		t.Errorf("%q", text)
	}
	for _, line := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		if len(line) > 75 || strings.ContainsAny(line, "\r\n") || !utf8.ValidString(line) {
			t.Errorf("line of %d octets: %q", len(line), line)
		}
	}
	unfolded := strings.ReplaceAll(text, "\r\n ", "")
	for _, want := range []string{`compost\, 40 mL de melaza\; revuelva\nté`, `back\\slash`, "DTSTART:20260514T130000Z", "DTSTAMP:20260512T150000Z"} {
		if !strings.Contains(unfolded, want) {
			t.Errorf("no %q in it", want)
		}
	}
	uids := map[string]bool{}
	for _, line := range strings.Split(unfolded, "\r\n") {
		if uid, is := strings.CutPrefix(line, "UID:"); is {
			if uids[uid] {
				t.Errorf("%s stands twice", uid)
			}
			uids[uid] = true
		}
	}
	if len(uids) != 4 {
		t.Errorf("%d events", len(uids))
	}
	// One display alarm an event (3.6.6), ten minutes before it.
	for _, each := range []string{"BEGIN:VALARM", "ACTION:DISPLAY", "TRIGGER:-PT10M", "END:VALARM"} {
		if n := strings.Count(unfolded, each+"\r\n"); n != len(uids) {
			t.Errorf("%d of %s in %d events", n, each, len(uids))
		}
	}
	later := small()
	later.Now = later.Now.Add(time.Hour)
	for uid := range uids {
		if !strings.Contains(string(report.Calendar(later)), uid) {
			t.Errorf("planned again, %s is another", uid)
		}
	}
}
