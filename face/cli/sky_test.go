package cli_test

import (
	"bytes"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"
	"time"

	"aerosteep/face/cli"
	"aerosteep/record/feed"
)

// A plan under a sky that is fetched is the plan under the same file; with the
// service gone it is planned all the same, and the age of the forecast is said.
func TestPlanUnderAFetchedSky(t *testing.T) {
	const skyFile = "../../examples/ternhollow/weather.csv"
	service := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { http.ServeFile(w, r, skyFile) }))
	defer service.Close()
	now := time.Date(2026, 5, 11, 15, 0, 0, 0, time.UTC)
	folder := t.TempDir()
	planned := func(sky string) (status int, out, complaint string) {
		var stdout, stderr bytes.Buffer
		clock := func() time.Time { return now }
		status = cli.Run([]string{"plan", week, "--weather", sky, "--now", "2026-05-11T08:00:00-07:00"}, cli.Terminal{
			In: strings.NewReader(""), Out: &stdout, Err: &stderr, Now: clock, ReadFile: os.ReadFile,
			Getenv: func(string) string { return "" }, Sky: &feed.Feed{Folder: folder, Now: clock},
		})
		return status, stdout.String(), stderr.String()
	}
	_, want, _ := planned(skyFile)
	if status, got, complaint := planned(service.URL); status != 0 || got != want || !strings.Contains(want, "Chance that the sky") {
		t.Fatalf("%d %s", status, complaint)
	}
	service.Close()
	now = now.Add(5 * time.Hour)
	if status, got, complaint := planned(service.URL); status != 0 || got != want || !strings.Contains(complaint, "kept 5\u00a0h ago") {
		t.Errorf("%d %q", status, complaint)
	}
	if status, _, complaint := planned("http://127.0.0.1:1/never"); status != 1 || !strings.Contains(complaint, "none is kept") {
		t.Errorf("%d %q", status, complaint)
	}
	if status, _, _ := planned("https://a:b@example.org/x"); status != 2 {
		t.Errorf("an address with a password in it: %d", status)
	}
}
