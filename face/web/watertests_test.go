package web_test

import (
	"context"
	"regexp"
	"strings"
	"testing"
	"time"

	"aerosteep/record/holding"
	"aerosteep/worksheet"
)

var chlorine = regexp.MustCompile("total chlorine [^<]*")

// Each place keeps its last test, with its age; one from last winter asks to be
// done again.
func TestWaterTestsByPlace(t *testing.T) {
	server, h := groundServer(t)
	form, _ := holding.FormOf("test")
	for _, test := range []struct {
		days               int
		place, flag, value string
	}{{200, "Store tank", "chlorine", "0.5 mg/L"}, {9, "Well", "ecoli", "3"}, {40, "Own tap", "chlorine", "2 mg/L"}, {2, "Own tap", "chlorine", "1.2 mg/L"}} {
		e, err := h.Compose(form, worksheet.Values{"place": {test.place}, test.flag: {test.value}}, holding.Made{At: juneMorning.Add(-time.Duration(test.days) * 24 * time.Hour), By: "M.R."})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := h.Store(context.Background(), e); err != nil {
			t.Fatal(err)
		}
	}
	body, _ := fetch(t, server, "/ground")
	body = strings.ReplaceAll(body, "\u00a0", " ")
	for _, want := range []string{"total chlorine 1.20 mg/L. 2 days old", "E. coli 3 per 100 mL. 9 days old", "0.50 mg/L. 200 days old"} {
		if !strings.Contains(body, want) {
			t.Errorf("Ground does not say %q: %q", want, chlorine.FindAllString(body, -1))
		}
	}
	if strings.Contains(body, "total chlorine 2.00 mg/L") || strings.Count(body, "Test again") != 1 {
		t.Error("an older test of the same place is shown, or a fresh one asked for again")
	}
}
