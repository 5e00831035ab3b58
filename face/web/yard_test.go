package web_test

import (
	"context"
	"crypto/rand"
	"fmt"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"aerosteep/face/web"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
)

// yardServer serves a job file of vessels and sites of some number.
func yardServer(t *testing.T, vessels []int, sites int) *httptest.Server {
	t.Helper()
	now := func() time.Time { return juneMorning }
	h, err := holding.Open(context.Background(), t.TempDir(), journal.Means{Now: now, Random: rand.Reader})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { h.Close() })
	var b strings.Builder
	b.WriteString("[holding]\nname = \"Yard\"\nzone = \"UTC\"\n[water]\ntemperature = \"18 C\"\n")
	for i := range sites {
		fmt.Fprintf(&b, "[[site]]\nname = \"Site %d\"\nlatitude = %g\nlongitude = 1\naltitude = \"10 m\"\n", i+1, 44+float64(i)/100)
		fmt.Fprintf(&b, "[[bed]]\nname = \"Bed %d\"\nsite = \"Site %d\"\narea = \"200 m2\"\ncrop = \"kale\"\nstage = \"vegetative\"\n", i+1, i+1)
		fmt.Fprintf(&b, "[[want]]\nbed = \"Bed %d\"\nmethod = \"drench\"\nat = %s\ntea = \"2 L\"\n", i+1, juneMorning.AddDate(0, 0, 3).Format(time.RFC3339))
	}
	for i, litres := range vessels {
		fmt.Fprintf(&b, "[[vessel]]\nname = \"Vessel %d\"\nfull = \"%d L\"\nkla20 = \"15 /h\"\nsite = \"Site 1\"\n", i+1, litres)
	}
	file, problems := jobfile.Read([]byte(b.String()), "yard.toml", jobfile.Whole)
	if err := problems.OrNil(); err != nil {
		t.Fatal(err)
	}
	if _, err := h.Load(context.Background(), file, holding.Made{At: juneMorning.Add(-time.Hour)}); err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(web.New(h, now, func(where string, err error) { t.Errorf("%s: %v", where, err) }).Handler())
	t.Cleanup(server.Close)
	return server
}

// One jar is drawn; a yard from 4 L to 4,000 L would hide the jar at one scale
// (140 px x (4/4000)^(1/3) = 14 px) and is listed, with the reason. All forty sites
// and twelve vessels are on the pages that they belong to.
func TestFromOneJarToAYard(t *testing.T) {
	jar := yardServer(t, []int{4}, 1)
	page, _ := fetch(t, jar, "/")
	see(t, page, "Vessel 1", `<svg class="vessel`)
	yard := yardServer(t, []int{4, 10, 19, 60, 120, 200, 200, 500, 1000, 1000, 2000, 4000}, 40)
	page, _ = fetch(t, yard, "/")
	see(t, page, "Too different in size to draw at one scale: the largest holds 1000 times the smallest", "Vessel 12")
	if strings.Contains(page, `<svg class="vessel`) {
		t.Error("vessels that would be too small are drawn")
	}
	ground, _ := fetch(t, yard, "/ground")
	plan, _ := fetch(t, yard, "/plan")
	for n := 1; n <= 40; n++ {
		if !strings.Contains(ground, fmt.Sprintf("Site %d<", n)) {
			t.Errorf("Ground lacks site %d", n)
		}
		if !strings.Contains(plan, fmt.Sprintf("Bed %d<", n)) && !strings.Contains(plan, fmt.Sprintf("Bed %d,", n)) {
			t.Errorf("the plan lacks bed %d", n)
		}
	}
	near := yardServer(t, []int{20, 200}, 1) // (20/200)^(1/3) x 140 px = 65 px
	if page, _ = fetch(t, near, "/"); strings.Contains(page, "Too different in size") {
		t.Error("vessels that can be drawn are listed")
	}
}
