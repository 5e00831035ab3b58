package web_test

import (
	"context"
	"crypto/rand"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"aerosteep/examples"
	"aerosteep/face/web"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
)

// demoHour is an afternoon of Tern Hollow's week, with two batches alive.
var demoHour = time.Date(2026, 5, 12, 22, 45, 0, 0, time.UTC)

// demoHolding is Tern Hollow with what was read until the hour.
func demoHolding(t *testing.T) *holding.Holding {
	t.Helper()
	ctx := context.Background()
	h, err := holding.Open(ctx, t.TempDir(), journal.Means{Now: func() time.Time { return demoHour }, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { h.Close() })
	text, err := examples.ReadFile("examples/ternhollow/week.toml")
	if err != nil {
		t.Fatal(err)
	}
	file, problems := jobfile.Read(text, "week.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if _, err := h.Load(ctx, file, holding.Made{At: demoHour.Add(-48 * time.Hour), By: "M.R."}); err != nil {
		t.Fatal(err)
	}
	for _, batch := range []string{"D-114", "C-031"} {
		readSoFar(t, h, batch, file.Holding.Zone)
	}
	return h
}

func readSoFar(t *testing.T, h *holding.Holding, batch string, zone *time.Location) {
	t.Helper()
	name := "examples/ternhollow/readings-" + batch + ".csv"
	text, err := examples.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	entries, err := h.FromCSV(name, text, batch, zone)
	if err != nil {
		t.Fatal(err)
	}
	var past []journal.Entry
	for _, e := range entries {
		if !e.Time().After(demoHour) {
			past = append(past, e)
		}
	}
	if _, err := h.Store(context.Background(), past...); err != nil {
		t.Fatal(err)
	}
}

// demoServer serves the demo's pages.
func demoServer(t *testing.T) *httptest.Server {
	t.Helper()
	return serve(t, demoHolding(t))
}

// emptyServer serves a holding that holds nothing.
func emptyServer(t *testing.T) *httptest.Server {
	t.Helper()
	h, err := holding.Open(context.Background(), t.TempDir(), journal.Means{Now: func() time.Time { return demoHour }, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { h.Close() })
	return serve(t, h)
}

func serve(t *testing.T, h *holding.Holding) *httptest.Server {
	t.Helper()
	mux := http.NewServeMux()
	mux.Handle("/", web.New(h, func() time.Time { return demoHour }, func(where string, err error) { t.Errorf("%s: %v", where, err) }).Handler())
	mux.HandleFunc("GET /healthz", func(w http.ResponseWriter, _ *http.Request) { _, _ = w.Write([]byte("ok")) })
	server := httptest.NewServer(mux)
	t.Cleanup(server.Close)
	return server
}
