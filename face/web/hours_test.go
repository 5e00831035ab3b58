package web_test

import (
	"context"
	"crypto/rand"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"aerosteep/examples"
	"aerosteep/face/web"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
)

// juneMorning is an hour before the nine of the contract's worked example.
var juneMorning = time.Date(2026, 6, 10, 4, 0, 0, 0, time.FixedZone("", -7*3600))

// groundServer is Tern Hollow's ground and rig without batches: what the pages
// of this room need.
func groundServer(t *testing.T) (*httptest.Server, *holding.Holding) {
	t.Helper()
	return groundServerAt(t, juneMorning)
}

// groundServerAt serves Tern Hollow as it was loaded an hour before.
func groundServerAt(t *testing.T, hour time.Time) (*httptest.Server, *holding.Holding) {
	t.Helper()
	now := func() time.Time { return hour }
	ctx := context.Background()
	h, err := holding.Open(ctx, t.TempDir(), journal.Means{Now: now, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { h.Close() })
	text, err := examples.ReadFile("examples/ternhollow/week.toml")
	if err != nil {
		t.Fatal(err)
	}
	file, problems := jobfile.Read(text, "week.toml", jobfile.Whole)
	if err := problems.OrNil(); err != nil {
		t.Fatal(err)
	}
	if _, err := h.Load(ctx, file, holding.Made{At: hour.Add(-time.Hour), By: "M.R."}); err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(web.New(h, now, func(where string, err error) { t.Errorf("%s: %v", where, err) }).Handler())
	t.Cleanup(server.Close)
	return server, h
}

func sent(t *testing.T, address string, form url.Values) (status int, body string) {
	t.Helper()
	response, err := http.PostForm(address, form)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	text, err := io.ReadAll(response.Body)
	if err != nil {
		t.Fatal(err)
	}
	return response.StatusCode, string(text)
}

// The nine hours of the contract's worked example, pasted: 07:00 to 09:00 is
// the only spell, the early hour is called by both its names.
func TestHoursOfAPastedForecast(t *testing.T) {
	server, h := groundServer(t)
	text := "at,temp_c,rh_percent,wind_km_per_h,rain_mm,cloud_percent\n"
	for i, row := range []string{"9,88,2", "11,80,5", "13,72,6", "16,62,8", "19,52,9", "22,45,10", "24,40,12", "26,35,14", "27,33,16"} {
		text += juneMorning.Add(time.Duration(i+1)*time.Hour).Format(time.RFC3339) + "," + row + ",0,10\n"
	}
	status, body := sent(t, server.URL+"/ground/hours", url.Values{"text": {text}})
	if status != http.StatusOK {
		t.Fatalf("%d", status)
	}
	if sky, err := h.Sky(); err != nil || len(sky.Hours) != 9 || !sky.KeptAt.Equal(juneMorning) {
		t.Fatalf("kept %v, %v", sky, err)
	}
	for _, want := range []string{"Foliar spray: 07:00 to 09:00 suits.", "In 1 hour the sun is low"} {
		if !strings.Contains(strings.ReplaceAll(body, "\u00a0", " "), want) {
			t.Errorf("the page does not say %q", want)
		}
	}
	verdicts := regexp.MustCompile(`<th scope="row">(\d\d:00)</th><td><span class="state \w+">.*?</svg>([^<]+)</span>`).FindAllStringSubmatch(body, -1)
	want := []string{"05:00 No", "06:00 Take care", "07:00 Suits", "08:00 Suits", "09:00 Take care", "10:00 No", "11:00 No", "12:00 No", "13:00 No"}
	if len(verdicts) != len(want) {
		t.Fatalf("%d hours in the table, want %d", len(verdicts), len(want))
	}
	for i, v := range verdicts {
		if v[1]+" "+v[2] != want[i] {
			t.Errorf("row %d: %s %s, want %s", i, v[1], v[2], want[i])
		}
	}
	if today, _ := fetch(t, server, "/"); !strings.Contains(today, "When spraying suits") {
		t.Error("Today does not show the strip")
	}
}

// A forecast that breaks off is refused with its reason, and the text stays in
// its box.
func TestHoursRefuseABrokenForecast(t *testing.T) {
	server, h := groundServer(t)
	status, body := sent(t, server.URL+"/ground/hours", url.Values{"text": {`{"properties": {"timeseries": [{"time"`}})
	if status != http.StatusUnprocessableEntity || !strings.Contains(body, `role="alert"`) || !strings.Contains(body, "timeseries&#34;: [{") {
		t.Errorf("%d, alert %v", status, strings.Contains(body, `role="alert"`))
	}
	if sky, err := h.Sky(); sky != nil || err != nil {
		t.Errorf("kept %v, %v", sky, err)
	}
}

// Typed by hand in Spanish with a decimal comma: the hours between are drawn,
// so none is better than "take care".
func TestHoursTypedByHand(t *testing.T) {
	server, h := groundServer(t)
	form := url.Values{"start": {"2026-06-10T04:00:00-07:00"}}
	for i, row := range [][4]string{{"61 F", "70", "6", "0"}, {"12,5 C", "80", "5 km/h", "0"}, {"50 F", "85", "4", ""}} {
		for j, column := range []string{"temp", "humidity", "wind", "rain"} {
			form.Set(column+"-"+string(rune('0'+i)), row[j])
		}
	}
	if status, _ := sent(t, server.URL+"/ground/hours?lang=es", form); status != http.StatusOK {
		t.Fatalf("%d", status)
	}
	sky, err := h.Sky()
	if err != nil || len(sky.Hours) != 12 || !sky.Hours[0].Coarse {
		t.Fatalf("%v, %v", sky, err)
	}
	if c := sky.Hours[6].Temperature.Celsius(); c != 12.5 {
		t.Errorf("10:00 has %g °C, want 12.5", c)
	}
	if status, body := sent(t, server.URL+"/ground/hours", url.Values{"temp-0": {"hot"}, "temp-1": {"12 C"}}); status != http.StatusUnprocessableEntity || !strings.Contains(body, `value="hot"`) {
		t.Errorf("a word for a temperature answers %d", status)
	}
}

// A forecast is fetched from the address that was named and from none before; an
// address that gives no forecast is not kept, an empty box forgets it.
func TestHoursFromAnAddress(t *testing.T) {
	server, h := groundServer(t)
	asked := 0
	service := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		asked++
		http.ServeFile(w, r, "../../examples/ternhollow/weather.csv")
	}))
	defer service.Close()
	if _, err := h.RefreshSky(context.Background()); err != nil || asked != 0 {
		t.Fatalf("asked %d times before it was named: %v", asked, err)
	}
	page := server.URL + "/ground/hours"
	if status, _ := sent(t, page, url.Values{"from": {service.URL}}); status != http.StatusOK || asked != 1 {
		t.Fatalf("%d, asked %d times", status, asked)
	}
	if sky, err := h.Sky(); err != nil || sky == nil {
		t.Fatalf("nothing kept: %v", err)
	}
	if body, _ := fetch(t, server, "/ground/hours"); !strings.Contains(body, service.URL) {
		t.Error("the page does not show where it is fetched from")
	}
	for _, wrong := range []string{"weather.csv", "http://127.0.0.1:1/none", server.URL + "/ground"} {
		if status, body := sent(t, page, url.Values{"from": {wrong}}); status != http.StatusUnprocessableEntity || !strings.Contains(body, "role=\"alert\"") {
			t.Errorf("%s: %d", wrong, status)
		}
	}
	if address, _ := h.SkyAddress(); address != service.URL {
		t.Errorf("a wrong address took the place of the one that works: %q", address)
	}
	sent(t, page, url.Values{"from": {""}})
	if address, _ := h.SkyAddress(); address != "" {
		t.Errorf("not forgotten: %q", address)
	}
}

// An address that no longer answers is said, with the age of the forecast that
// is used instead: it does not look kept anew.
func TestHoursSayThatNobodyAnswers(t *testing.T) {
	server, h := groundServer(t)
	up := true
	service := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !up {
			http.Error(w, "busy", http.StatusServiceUnavailable)
			return
		}
		w.Header().Set("Expires", time.Now().Add(-time.Hour).UTC().Format(http.TimeFormat))
		http.ServeFile(w, r, "../../examples/ternhollow/weather.csv")
	}))
	defer service.Close()
	page := server.URL + "/ground/hours"
	if status, _ := sent(t, page, url.Values{"from": {service.URL}}); status != http.StatusOK {
		t.Fatal(status)
	}
	up = false
	kept, err := filepath.Glob(filepath.Join(h.Journal().Folder(), "weather", "sky-*.json"))
	if err != nil || len(kept) != 1 {
		t.Fatalf("%v %v", kept, err)
	}
	text, err := os.ReadFile(kept[0])
	if err != nil {
		t.Fatal(err)
	}
	long := regexp.MustCompile(`"expires_at":"[^"]*"`).ReplaceAll(text, []byte(`"expires_at":"2026-01-01T00:00:00Z"`))
	if err := os.WriteFile(kept[0], long, 0o600); err != nil {
		t.Fatal(err)
	}
	if status, body := sent(t, page, url.Values{"from": {service.URL}}); status != http.StatusUnprocessableEntity || !strings.Contains(body, "could not be fetched") {
		t.Errorf("%d: a failed fetch looks like success", status)
	}
}
