package web_test

import (
	"context"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
)

// Each thing that can be written down is kept as it was typed, in the reader's
// units, at the moment that was chosen; a slip comes back with what was typed.
func TestWritingDown(t *testing.T) {
	server, h := groundServer(t)
	kept := func(name string, form url.Values) journal.Kept {
		t.Helper()
		if status, body := sent(t, server.URL+"/write/"+name, form); status != http.StatusOK || !strings.Contains(body, "Kept.") {
			t.Fatalf("%s: %d", name, status)
		}
		all, err := h.Entries(context.Background(), "", time.Time{})
		if err != nil {
			t.Fatal(err)
		}
		newest := all[0]
		for _, e := range all {
			if e.Seq > newest.Seq {
				newest = e
			}
		}
		return newest
	}
	file, err := h.File(0)
	if err != nil {
		t.Fatal(err)
	}
	vessel, bed := file.Vessels[0].Name, file.Beds[0].Name
	start := kept("start", url.Values{"batch": {"E-1"}, "vessel": {vessel}, "recipe": {"unfed"}, "volume": {"4"}, "by": {"M.R."}, "when": {"2026-06-10T01:30"}})
	if start.Kind != journal.Start || start.Subject != "batch:E-1" || start.By != "M.R." || !start.Time().Equal(time.Date(2026, 6, 10, 1, 30, 0, 0, juneMorning.Location())) {
		t.Errorf("%+v", start.Entry)
	}
	if end := kept("end", url.Values{"batch": {"E-1"}, "outcome": {"failed"}, "cause": {"pump-failed"}, "volume": {"3"}, "place": {"heap"}}); !strings.Contains(string(end.Body), `"cause":"pump-failed"`) {
		t.Errorf("%s", end.Body)
	}
	for name, form := range map[string]url.Values{
		"cleaned":  {"vessel": {vessel}, "agent": {"hydrogen peroxide"}, "strength": {"3"}, "dwell": {"10 min"}, "rinsed": {"yes"}},
		"harvest":  {"bed": {bed}},
		"incident": {"text": {"spill"}, "volume": {"2"}, "to-water": {"30"}, "told": {"neighbour"}},
		"stock":    {"ingredient": {"molasses"}, "received": {"2 lb"}, "lot": {"7"}, "approved": {"12 May 2026"}},
		"note":     {"text": {"quiet"}},
	} {
		kept(name, form)
	}
	for name, form := range map[string]url.Values{
		"start": {"batch": {"E-2"}, "vessel": {"nobody's"}, "recipe": {"unfed"}, "volume": {"4"}},
		"water": {"place": {"Well"}},
		"end":   {"batch": {"E-1"}, "when": {"yesterday"}},
	} {
		status, body := sent(t, server.URL+"/write/"+name, form)
		if status != http.StatusUnprocessableEntity || !strings.Contains(body, `role="alert"`) {
			t.Errorf("%s is taken: %d", name, status)
		}
	}
}

// A strip read as "between 0.5 and 1" is shown as both and acted on by the
// higher; the own water's test counts in the plan over what the file says.
func TestStripCountsInThePlan(t *testing.T) {
	server, h := groundServer(t)
	if status, _ := sent(t, server.URL+"/write/water", url.Values{"read-from": {"strip"}, "chlorine-from": {"0.5"}, "chlorine": {"1"}, "free-chlorine": {"0.2"}}); status != http.StatusOK {
		t.Fatal(status)
	}
	body, _ := fetch(t, server, "/ground")
	if body = strings.ReplaceAll(body, "\u00a0", " "); !strings.Contains(body, "between 0.50 mg/L and 1.00 mg/L") && !strings.Contains(body, "between 0.500 mg/L and 1.00 mg/L") {
		t.Error("Ground does not say between what the strip was read")
	}
	file, err := h.File(0)
	if err != nil || file.Water.TotalChlorine == nil || file.Water.TotalChlorine.MilligramsPerLitre() != 1 || file.Water.FreeChlorine.MilligramsPerLitre() != 0.2 || file.Water.Chloramine != nil {
		t.Errorf("%+v %v", file.Water, err)
	}
}

// The cards are two steps from anywhere, and speak of the holding's own numbers.
func TestCardsAreNear(t *testing.T) {
	server, _ := groundServer(t)
	for _, from := range []string{"/", "/rig", "/ground/hours", "/write/end"} {
		if body, _ := fetch(t, server, from); !strings.Contains(body, `href="/cards"`) {
			t.Errorf("no way from %s", from)
		}
	}
	if body, _ := fetch(t, server, "/cards?q=foam"); !strings.Contains(body, `href="/cards/foam-over"`) || strings.Contains(body, `href="/cards/herbicide-tank"`) {
		t.Error("the card of foam is not found by its word")
	}
}

// A dose of molasses over the ceiling starts only with a reason, which stands in
// the brew record.
func TestOverTheCeilingWithAReason(t *testing.T) {
	server, h := groundServer(t)
	file, err := h.File(0)
	if err != nil {
		t.Fatal(err)
	}
	sweet := `[[recipe]]
name = "Sweet"
for_volume = "4 gal"
items = [{ingredient = "compost", amount = "2 qt"}, {ingredient = "molasses", amount = "60 mL"}]
`
	more, problems := jobfile.Read([]byte(sweet), "sweet.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if _, err := h.Load(context.Background(), more, holding.Made{At: juneMorning, By: "M.R."}); err != nil {
		t.Fatal(err)
	}
	form := url.Values{"batch": {"S-1"}, "vessel": {file.Vessels[0].Name}, "recipe": {"Sweet"}, "volume": {"4"}}
	if status, body := sent(t, server.URL+"/write/start", form); status != http.StatusUnprocessableEntity || !strings.Contains(body, "over the ceiling") {
		t.Fatalf("%d: started without a reason", status)
	}
	form.Set("because", "trial of one pail, soil only")
	if status, _ := sent(t, server.URL+"/write/start", form); status != http.StatusOK {
		t.Fatal(status)
	}
	if body, _ := fetch(t, server, "/records/brew/S-1"); !strings.Contains(body, "trial of one pail, soil only") {
		t.Error("the brew record does not say why")
	}
}

// A lot is said once on a page, and its own page tells how it stands, what is
// not known and where it went.
func TestLotPages(t *testing.T) {
	server, _ := groundServer(t)
	if status, _ := sent(t, server.URL+"/write/lot", url.Values{"lot": {"heap 3"}, "material": {"compost"}, "treatment": {"hot"}, "paper-smell": {"passed"}}); status != http.StatusOK {
		t.Fatal(status)
	}
	if body, _ := fetch(t, server, "/lots"); !strings.Contains(body, "/lots/heap%203") {
		t.Error("the lot is not listed")
	}
	body, _ := fetch(t, server, "/lots/heap%203")
	for _, want := range []string{"Not known yet", "/write/lot?lot=heap%203", "/records/trace/heap%203", "human waste"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page of the lot does not say %q", want)
		}
	}
}

// A test of last winter no longer counts, and the plan says so.
func TestOldWaterTestIsSaid(t *testing.T) {
	server, h := groundServer(t)
	old := url.Values{"chlorine": {"1"}, "when": {juneMorning.AddDate(0, 0, -200).Format("2006-01-02T15:04")}}
	if status, _ := sent(t, server.URL+"/write/water", old); status != http.StatusOK {
		t.Fatal(status)
	}
	file, err := h.File(0)
	if err != nil || file.Water.OldTest == nil {
		t.Fatalf("%+v %v", file.Water, err)
	}
	made := plan.Make(plan.Input{File: file, Now: file.Wants[0].At.Add(-96 * time.Hour), Reader: file.Holding.Reader})
	if !strings.Contains(strings.Join(made.Cautions, "\n"), "no longer counts") {
		t.Errorf("the plan does not say that the test is old: %q", made.Cautions)
	}
}
