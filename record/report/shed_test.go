package report_test

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"aerosteep/record/holding"
	"aerosteep/record/report"
	"aerosteep/worksheet"
)

// write logs an entry by its form.
func write(t *testing.T, h *holding.Holding, word string, at time.Time, given worksheet.Values) {
	t.Helper()
	form, _ := holding.FormOf(word)
	e, err := h.Compose(form, given, holding.Made{At: at, By: "A.T."})
	if err == nil {
		_, err = h.Store(context.Background(), e)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// setUp adds a table to what stands.
func setUp(t *testing.T, h *holding.Holding, kind, body string) {
	t.Helper()
	e, err := h.Edit(kind, "", json.RawMessage(body), holding.Made{At: shelfHour})
	if err == nil {
		_, err = h.Store(context.Background(), e)
	}
	if err != nil {
		t.Fatal(err)
	}
}

func says(t *testing.T, h *holding.Holding, kind, name string, words ...string) {
	t.Helper()
	text := strings.ReplaceAll(spoken(made(t, h, kind, name)), "\u00a0", " ")
	for _, word := range words {
		if !strings.Contains(text, word) {
			t.Errorf("%s %s does not say %q:\n%s", kind, name, word, text)
		}
	}
}

// 100 kg came in and 3 kg went out (97 kg); a second lot of 10 kg is past its
// day and counts for nothing; a count sets the sum anew (arithmetic).
func TestStockAddsUp(t *testing.T) {
	h, _ := shelf(t)
	says(t, h, "stock", "now", "compost | W-7 | 97 kg")
	write(t, h, "stock", shelfHour.Add(-60*time.Hour), worksheet.Values{"ingredient": {"compost"}, "received": {"10 kg"}, "lot": {"OLD"}, "expires": {"2026-05-11"}})
	says(t, h, "stock", "now", "compost | OLD | 10 kg (22 lb) | 2026-05-11 | too old", "compost | 97 kg")
	write(t, h, "stock", shelfHour.Add(-time.Hour), worksheet.Values{"ingredient": {"compost"}, "left": {"40 kg"}, "lot": {"W-7"}})
	says(t, h, "stock", "now", "compost | W-7 | 40 kg")
	write(t, h, "stock", shelfHour, worksheet.Values{"ingredient": {"compost"}, "used": {"41 kg"}, "lot": {"W-7"}})
	says(t, h, "stock", "now", "does not add up", "a delivery was not written down")
}

// Under its reorder point an ingredient is to be bought; what it lasts follows
// from the use of 56 days: 3 kg are 53.6 g a day, 97 kg last 1,810 days.
func TestStockSaysWhatToBuy(t *testing.T) {
	h, _ := shelf(t)
	setUp(t, h, "ingredient", `{"name": "leaf mould", "reorder_at": "120 kg"}`)
	write(t, h, "stock", shelfHour.Add(-72*time.Hour), worksheet.Values{"ingredient": {"leaf mould"}, "received": {"100 kg"}})
	write(t, h, "stock", shelfHour.Add(-24*time.Hour), worksheet.Values{"ingredient": {"leaf mould"}, "used": {"3 kg"}})
	says(t, h, "stock", "now", "1 to buy", "| 1810 d |", "120 kg (265 lb) | buy")
}

// The list of initials is the only paper with names, and says whose initials
// nobody knows.
func TestCrewIsTheOnlyPaperWithNames(t *testing.T) {
	h, ids := shelf(t)
	setUp(t, h, "person", `{"name": "M.R.", "full_name": "Marta Example", "role": "brewer", "training": "hygiene, 2026-02-03", "language": "es"}`)
	says(t, h, "crew", "now", "M.R. | Marta Example | brewer | hygiene, 2026-02-03 | Spanish", "A.T. stands on entries and is nobody on this list")
	for kind, name := range names(ids) {
		if kind != "crew" && strings.Contains(spoken(made(t, h, kind, name)), "Marta") {
			t.Errorf("%s names a person", kind)
		}
	}
}

// What went on last counts for the notice, else what is wanted next.
func TestNoticeForTheGate(t *testing.T) {
	h, _ := shelf(t)
	says(t, h, "notice", "Kale, east", "keep off: until it is dry to the touch", "foliar", "No number to call is set up")
	for _, bed := range []string{"Nowhere", ""} {
		if _, err := report.NewDesk(h, shelfHour).Make(context.Background(), "notice", bed); err == nil {
			t.Errorf("a notice for %q is made", bed)
		}
	}
}

// Air that falls by a fifth each month is said first on the season's paper; one
// that stays is not. (The test itself is checked in its own room.)
func TestSeasonSaysThatTheAirFalls(t *testing.T) {
	h, _ := shelf(t)
	for i := range 6 {
		at := shelfHour.AddDate(0, 0, -15*(6-i))
		write(t, h, "test", at, worksheet.Values{"vessel": {"Drum"}, "kla20": {fmt.Sprintf("%g /h", 18-1.5*float64(i)+0.1*float64(i%2))}})
	}
	says(t, h, "season", "2026", "The air of Drum falls by about", "Drum | 6 |", "falls")
}
