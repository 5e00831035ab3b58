package web_test

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"aerosteep/face/web"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
)

// sendForm sends a form as a browser would and answers the page it led to.
func sendForm(t *testing.T, server *httptest.Server, address string, form url.Values) (int, string) {
	t.Helper()
	response, err := http.PostForm(server.URL+address, form)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	var b strings.Builder
	if _, err := copyBody(&b, response); err != nil {
		t.Fatal(err)
	}
	return response.StatusCode, strings.ReplaceAll(b.String(), "\u00a0", " ")
}

func see(t *testing.T, page string, words ...string) {
	t.Helper()
	page = strings.ReplaceAll(page, "\u00a0", " ")
	for _, word := range words {
		if !strings.Contains(page, word) {
			t.Errorf("the page does not say %q", word)
		}
	}
}

// The strawberries of Tern Hollow: 250 m² at 60 US gal/acre are 14.03 L of
// tea, at 1:4 70.2 L of mix; the boom's lines take 4 L more (arithmetic; 1 US
// gal/acre = 3.78541 L / 4046.86 m²). One load of the 200 L tank.
func TestRunSharesTheTeaOut(t *testing.T) {
	server := demoServer(t)
	page, _ := fetch(t, server, "/run/D-114?want=1")
	see(t, page, "Load 1 of 1: 3.92 gal (14.8 L) tea, fill to 19.6 gal (74.2 L)", "Nobody has released this batch yet", "If the air stops now, use by")
}

// A load that was put on is not offered again; what it covered corrects the
// rest, and another way back can be chosen.
func TestFirstLoadCorrectsTheRest(t *testing.T) {
	server := demoServer(t)
	page, _ := fetch(t, server, "/run/D-114?want=0")
	see(t, page, "Load 1 of", "Release the batch first")
	load := url.Values{"do-now": {"load"}, "bed": {"Kale, east"}, "method": {"drench"}, "load": {"1"}, "tea": {"3 L"}, "water": {"12 L"}}
	if status, _ := sendForm(t, server, "/run/D-114?want=0", load); status != http.StatusUnprocessableEntity {
		t.Fatalf("a load went out before its release: %d", status)
	}
	released(t, server)
	status, page := sendForm(t, server, "/run/D-114?want=0", url.Values{
		"do-now": {"load"}, "bed": {"Kale, east"}, "method": {"drench"}, "load": {"1"}, "tea": {"3 L"}, "water": {"12 L"}, "applicator": {"Knapsack"},
		"covered": {"400"}, "gone": {"4"}, "by": {"R.K."},
	})
	if status != http.StatusOK {
		t.Fatalf("answers %d", status)
	}
	see(t, page, "Load 1 is on", "Load 2 of", "The first load put on", "of the pressure")
	other, _ := fetch(t, server, "/run/D-114?want=0&way=mix")
	see(t, other, "Go on as it is")
}

// released looks at the batch and lets it go.
func released(t *testing.T, server *httptest.Server) {
	t.Helper()
	form := url.Values{"smell": {"earthy"}, "look": {"brown"}, "do": {"7.1"}, "by": {"R.K."}, "released": {"yes"}}
	if status, _ := sendForm(t, server, "/run/D-114/release", form); status != http.StatusOK {
		t.Fatalf("the release answers %d", status)
	}
}

// A bed that is passed by goes from the run and stands in the logbook.
func TestBedIsLeftOut(t *testing.T) {
	server := demoServer(t)
	_, page := sendForm(t, server, "/run/D-114?want=0&want=1", url.Values{"do-now": {"leave"}, "bed": {"Strawberries"}})
	see(t, page, "Left out: Strawberries.")
	if strings.Contains(page, `name="bed" value="Strawberries"`) {
		t.Error("a bed that was left out is still offered")
	}
}

// All four beds take longer than tea without air lasts: the beds that cannot be
// reached are named.
func TestClockRunsOut(t *testing.T) {
	server := demoServer(t)
	page, _ := fetch(t, server, "/run/D-114?want=0&want=1&want=2&want=3")
	see(t, page, "The clock runs out before", "after the use-by")
}

// Wind of 30 mph stops a drench as much as rain does; the one factor is named.
func TestGoOrNoGo(t *testing.T) {
	server := demoServer(t)
	page, _ := fetch(t, server, "/run/D-114?want=1&wind=30&temp=60")
	see(t, page, "No-go: wind")
	page, _ = fetch(t, server, "/run/D-114?want=1&wind=calm&temp=60")
	see(t, page, "calm cannot be read")
}

// Nothing goes out before the look is whole; what smells sour is refused and
// says where it goes.
func TestReleaseBeforeTheFirstLoad(t *testing.T) {
	server := demoServer(t)
	status, page := sendForm(t, server, "/run/D-114/release", url.Values{"released": {"yes"}})
	if status != http.StatusUnprocessableEntity {
		t.Errorf("an empty look answers %d", status)
	}
	see(t, page, "Smell: say it", "Look: say it", "Initials: say it", "Oxygen: give the reading")
	sour := url.Values{"smell": {"sour"}, "look": {"grey foam"}, "no-meter": {"yes"}, "by": {"R.K."}}
	sour.Set("released", "yes")
	status, page = sendForm(t, server, "/run/D-114/release", sour)
	if status != http.StatusUnprocessableEntity {
		t.Errorf("sour tea was released: %d", status)
	}
	see(t, page, "refuse it and say where it goes")
	sour.Set("released", "no")
	sour.Set("why", "smells sour")
	sour.Set("instead", "compost heap")
	_, page = sendForm(t, server, "/run/D-114/release", sour)
	see(t, page, "Refused", "smells sour", "compost heap")
	_, page = sendForm(t, server, "/run/D-114/release", url.Values{"smell": {"earthy"}, "look": {"brown"}, "do": {"7.1"}, "by": {"R.K."}, "released": {"yes"}})
	see(t, page, "Released ")
}

// The record closes with two numbers, and the batch is over.
func TestRunCloses(t *testing.T) {
	server := demoServer(t)
	status, page := sendForm(t, server, "/run/D-114", url.Values{"do-now": {"close"}, "outcome": {"used"}, "volume": {"3"}, "place": {"the compost heap"}, "by": {"R.K."}})
	if status != http.StatusOK {
		t.Fatalf("answers %d", status)
	}
	see(t, page, "compost heap")
}

// A stop tells its landmark, what to keep off, its tap, what was in the tank and
// what the wheels carry.
func TestStopSaysWhereAndWith(t *testing.T) {
	h := demoHolding(t)
	text := `[[bed]]
name = "Far row"
area = "100 m2"
site = "Tern Hollow"
landmark = "the blue gate post"
keep_off = ["well", "hives"]
[[applicator]]
name = "Hired tank"
kind = "boom"
tank = "400 L"
borrowed = true
empty_mass = "300 kg"
plate = "500 kg"
[[want]]
bed = "Far row"
method = "drench"
at = 2026-05-12T18:30:00-07:00
tea = "60 L"
dilution = "1:5"
applicator = "Hired tank"
recipe = "unfed"
`
	whole, err := h.File(jobfile.Whole)
	if err != nil {
		t.Fatal(err)
	}
	text = strings.Replace(text, "Tern Hollow", whole.Sites[0].Name, 1)
	site := fmt.Sprintf("[holding]\nzone = \"America/Los_Angeles\"\n[[site]]\nname = %q\nlatitude = 44.1\nlongitude = -123.05\n", whole.Sites[0].Name)
	file, problems := jobfile.Read([]byte(site+text), "far.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if _, err := h.Load(context.Background(), file, holding.Made{At: demoHour, By: "M.R."}); err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(web.New(h, func() time.Time { return demoHour }, func(where string, err error) { t.Errorf("%s: %v", where, err) }).Handler())
	defer server.Close()
	now, _ := h.File(jobfile.Whole)
	index := -1
	for i, w := range now.Wants {
		if w.Bed == "Far row" {
			index = i
		}
	}
	page, _ := fetch(t, server, fmt.Sprintf("/run/D-114?want=%d", index))
	see(t, page, "Landmark: the blue gate post", "Keep off: well, hives", "Nobody knows what was in it", "Do not load this one", "the plate allows")
}

// A tank that travels with air: its own readings stand beside the plan's 4 h and
// do not touch the forecast of the vessel.
func TestTankWithAirKeepsItsOwnClock(t *testing.T) {
	h := demoHolding(t)
	file, problems := jobfile.Read([]byte("[[applicator]]\nname = \"Knapsack\"\nkind = \"knapsack\"\ntank = \"15 L\"\nair = true\n"), "air.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if _, err := h.Load(context.Background(), file, holding.Made{At: demoHour, By: "M.R."}); err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(web.New(h, func() time.Time { return demoHour }, func(where string, err error) { t.Errorf("%s: %v", where, err) }).Handler())
	defer server.Close()
	page, _ := fetch(t, server, "/run/D-114?want=0")
	see(t, page, "not read yet")
	before, err := h.Twin(context.Background(), "D-114", demoHour)
	if err != nil {
		t.Fatal(err)
	}
	for minutes, do := range map[int]string{-60: "8", -30: "7"} {
		form := url.Values{"batch": {"D-114"}, "do": {do}, "in": {"tank"}, "when": {demoHour.Add(time.Duration(minutes) * time.Minute).Format("2006-01-02T15:04")}}
		if status, _ := sendForm(t, server, "/write/tank", form); status != http.StatusOK {
			t.Fatal(status)
		}
	}
	page, _ = fetch(t, server, "/run/D-114?want=0")
	see(t, page, "last read 7.0 mg/L", "rules, the shorter")
	after, err := h.Twin(context.Background(), "D-114", demoHour)
	if err != nil || after.Forecast.Used != before.Forecast.Used {
		t.Errorf("a reading in the tank counts for the vessel: %d and %d used (%v)", before.Forecast.Used, after.Forecast.Used, err)
	}
}
