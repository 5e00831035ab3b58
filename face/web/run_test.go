package web_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
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
