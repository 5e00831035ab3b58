package web_test

import (
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"slices"
	"strings"
	"testing"

	"aerosteep/wording"
	"aerosteep/worksheet/catalog"
)

// Every page is reached from Today by links, full and empty.
func TestPagesAreReachedFromToday(t *testing.T) {
	found := crawl(t, demoServer(t), "/")
	for _, address := range []string{"/", "/ground", "/batches", "/batches/D-114", "/batches/D-114/log", "/plan", "/rig", "/records", "/worksheets", "/worksheets/saturation", "/worksheets/loads"} {
		if !slices.Contains(found, address) {
			t.Errorf("%s is not reached from /", address)
		}
	}
	if n := len(crawl(t, emptyServer(t), "/")); n < 50 {
		t.Errorf("an empty holding reaches %d pages, want the worksheets at least", n)
	}
}

func TestEveryAnswerIsGuarded(t *testing.T) {
	server := demoServer(t)
	response, err := http.Get(server.URL + "/")
	if err != nil {
		t.Fatal(err)
	}
	response.Body.Close()
	policy := response.Header.Get("Content-Security-Policy")
	for _, part := range []string{"default-src 'self'", "frame-ancestors 'none'"} {
		if !strings.Contains(policy, part) {
			t.Errorf("policy %q lacks %q", policy, part)
		}
	}
	if strings.Contains(policy, "unsafe-inline") || strings.Contains(policy, "'unsafe-eval'") {
		t.Errorf("policy %q lets scripts in", policy)
	}
	if response.Header.Get("X-Content-Type-Options") != "nosniff" || response.Header.Get("Referrer-Policy") == "" {
		t.Errorf("headers %v", response.Header)
	}
}

// A worksheet's answer has an address; a bare number takes the unit in its
// box; a wrong value stays in its field.
func TestWorksheetAnswersAndRefuses(t *testing.T) {
	server := demoServer(t)
	body, _ := fetch(t, server, "/worksheets/saturation?temp=67&units=us")
	if !strings.Contains(body, "<output") || !strings.Contains(body, `data-key="saturation_mg_per_l"`) {
		t.Error("67 in a box of °F is not answered")
	}
	response, err := http.Get(server.URL + "/worksheets/saturation?temp=192C")
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	if response.StatusCode != http.StatusUnprocessableEntity {
		t.Errorf("192 °C answers %d", response.StatusCode)
	}
}

// A reading typed without script is kept once and shows in the logbook; one
// that cannot be comes back as typed.
func TestAReadingIsLogged(t *testing.T) {
	server := demoServer(t)
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	client := &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	log := server.URL + "/batches/D-114/log"
	if response, err := client.Get(log); err != nil {
		t.Fatal(err)
	} else {
		response.Body.Close()
	}
	send := func(fields url.Values) int {
		response, err := client.PostForm(log, fields)
		if err != nil {
			t.Fatal(err)
		}
		defer response.Body.Close()
		var body strings.Builder
		if _, err := copyBody(&body, response); err != nil {
			t.Fatal(err)
		}
		if _, wrong, found := strings.Cut(body.String(), `id="mend">`); found {
			t.Log(wrong[:min(300, len(wrong))])
		}
		return response.StatusCode
	}
	once := url.Values{"do": {"7,4"}, "by": {"R.K."}, "id": {"019e1e5a-0000-7000-8000-000000000001"}, "at": {"2026-05-12T22:40:00Z"}}
	for range 2 {
		if status := send(once); status != http.StatusSeeOther {
			t.Fatalf("a reading answers %d", status)
		}
	}
	body, _ := fetch(t, server, "/records")
	if n := strings.Count(body, "7.40"); n != 1 {
		t.Errorf("the reading stands %d times in the logbook", n)
	}
	if status := send(url.Values{"do": {"7.4 kg"}}); status != http.StatusUnprocessableEntity {
		t.Errorf("7.4 kg answers %d", status)
	}
}

func TestAPastedJobFileIsPlannedOrMended(t *testing.T) {
	server := emptyServer(t)
	post := func(job string) (int, string) {
		response, err := http.PostForm(server.URL+"/plan", url.Values{"job": {job}})
		if err != nil {
			t.Fatal(err)
		}
		defer response.Body.Close()
		content := new(strings.Builder)
		if _, err := copyBody(content, response); err != nil {
			t.Fatal(err)
		}
		return response.StatusCode, content.String()
	}
	if status, body := post("form = 1\n[[vesel]]\nname = \"Pail\"\n"); status != http.StatusUnprocessableEntity || !strings.Contains(body, "vessel") {
		t.Errorf("a misspelt table answers %d", status)
	}
	if status, body := post(pail(t)); status != http.StatusOK || !strings.Contains(body, `data-key="chance_below_limit"`) {
		t.Errorf("the pail answers %d", status)
	}
}

// Every worksheet shows its working: the formula in both languages, and with an
// answer what it was worked out with; the batch page likewise.
func TestEveryNumberShowsItsWorking(t *testing.T) {
	for _, sheet := range catalog.All() {
		for _, language := range []wording.Language{wording.English, wording.Spanish} {
			if said := sheet.Formula().For(wording.Reader{Language: language}); strings.Contains(said, "formula.") || said == "" {
				t.Errorf("%s has no formula in %s", sheet.Name, language)
			}
		}
	}
	server := demoServer(t)
	page, _ := fetch(t, server, "/worksheets/dilute?tea=10+L&water=80+L")
	see(t, page, "Show the working", "share = tea ÷ (tea", "<dd>10 L</dd>", "<dd>80 L</dd>")
	page, _ = fetch(t, server, "/batches/D-114")
	see(t, page, "Show the working", "dC/dt = kLa (Cs − C)", "air, kLa at 20 °C", "used, 0 doubted")
}
