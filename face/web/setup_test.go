package web_test

import (
	"context"
	"crypto/rand"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"aerosteep/face/web"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
)

// firstStart is a first start: nothing is set up.
func firstStart(t *testing.T) (*httptest.Server, *holding.Holding) {
	t.Helper()
	now := func() time.Time { return juneMorning }
	h, err := holding.Open(context.Background(), t.TempDir(), journal.Means{Now: now, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { h.Close() })
	server := httptest.NewServer(web.New(h, now, func(where string, err error) { t.Errorf("%s: %v", where, err) }).Handler())
	t.Cleanup(server.Close)
	return server, h
}

// From nothing, five questions end in a plan; what is lacking comes back with
// what was typed.
func TestFiveQuestionsEndInAPlan(t *testing.T) {
	server, h := firstStart(t)
	if body, _ := fetch(t, server, "/"); !strings.Contains(body, `href="/begin"`) {
		t.Error("a first start does not lead to the questions")
	}
	form := url.Values{
		"vessel.full": {"5 gal"}, "pump.label_flow": {"12 L/min"}, "pump.bubbles": {"medium"}, "holding.oxygen_meter": {"false"},
		"site.latitude": {"44.1"}, "site.longitude": {"-123.05"}, "holding.zone": {"America/Los_Angeles"}, "water.source": {"municipal"},
		"holding.units": {"us"}, "holding.language": {"en"}, "bed.name": {"Kale"}, "bed.area": {"100 sq ft"}, "want.method": {"drench"},
		"want.tea_rate": {"10 gal/1000 sq ft"}, "want.at": {"2026-06-13T07:00"},
	}
	wrong := url.Values{}
	for key, value := range form {
		wrong[key] = value
	}
	wrong.Set("bed.area", "big")
	status, body := sent(t, server.URL+"/begin", wrong)
	if status != http.StatusUnprocessableEntity || !strings.Contains(body, `value="big"`) || !strings.Contains(body, "aria-invalid") {
		t.Fatalf("%d: a slip does not come back", status)
	}
	if status, body := sent(t, server.URL+"/begin", form); status != http.StatusOK || !strings.Contains(body, "Kale") {
		t.Fatalf("%d: no plan for the kale", status)
	}
	if file, err := h.File(jobfile.Whole); err != nil || len(file.Wants) != 1 || file.Holding.OxygenMeter {
		t.Fatalf("%v", err)
	}
}

// A table edited on a page is an entry; what stood before stays in the records;
// what the holding then says is a file that reads the same again.
func TestSetUpIsEditedInPages(t *testing.T) {
	server, h := groundServer(t)
	body, _ := fetch(t, server, "/setup")
	if !strings.Contains(body, "/setup/bed?subject=bed%3A") || !strings.Contains(body, "/setup/vessel") {
		t.Fatal("beds are not listed")
	}
	file, err := h.File(jobfile.Whole)
	if err != nil {
		t.Fatal(err)
	}
	bed := file.Beds[0].Name
	fields := jobfile.Typed(h.Tables("bed")[0].Body)
	form := url.Values{"subject": {"bed:" + bed}, "by": {"M.R."}}
	for key, value := range fields {
		form.Set(key, value)
	}
	form.Set("landmark", "the old pear")
	if status, _ := sent(t, server.URL+"/setup/bed", form); status != http.StatusOK {
		t.Fatal(status)
	}
	after, err := h.File(jobfile.Whole)
	if err != nil || after.Beds[0].Landmark != "the old pear" || after.Beds[0].Name != bed {
		t.Fatalf("%+v %v", after.Beds[0], err)
	}
	text, problems := jobfile.Compose(h.Parts())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if _, problems := jobfile.Read(text, "unloaded.toml", jobfile.Whole); len(problems) > 0 {
		t.Errorf("what is unloaded cannot be loaded: %v", problems)
	}
	for name, wrong := range map[string]url.Values{
		"an area that is none":     {"name": {"New"}, "area": {"-3 m2"}},
		"a name that stands":       {"name": {bed}, "area": {"3 m2"}},
		"taken away while wanted":  {"subject": {"bed:" + file.Wants[0].Bed}, "do": {"remove"}},
		"a site that nobody knows": {"name": {"New"}, "site": {"Elsewhere"}},
	} {
		if status, body := sent(t, server.URL+"/setup/bed", wrong); status != http.StatusUnprocessableEntity || !strings.Contains(body, `role="alert"`) {
			t.Errorf("%s: %d", name, status)
		}
	}
	recipe := url.Values{"name": {"Two quarts"}, "for_volume": {"4 gal"}, "items": {"compost: 2 qt\nmolasses: 10 mL @ 6 h"}}
	if status, _ := sent(t, server.URL+"/setup/recipe", recipe); status != http.StatusOK {
		t.Fatal(status)
	}
	if now, err := h.File(jobfile.Whole); err != nil || len(now.Recipes) == 0 || len(now.Recipes[len(now.Recipes)-1].Items) != 2 {
		t.Errorf("the recipe was not kept: %v", err)
	}
}
