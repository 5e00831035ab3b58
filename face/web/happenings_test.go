package web_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
)

// Two touches: the page to log on, and the button. The batch then tells what the
// unknown stop cost, with the three ways on, and so does Today; foam that was
// measured twice says when it reaches the rim.
func TestFoundOffAndFoamAreTold(t *testing.T) {
	server := demoServer(t)
	page, _ := fetch(t, server, "/batches/D-114/log")
	see(t, page, "Air was off when I came", `value="found-off 4 h"`)
	for _, cm := range []string{"30 cm", "12 cm"} {
		at := "2026-05-12T14:15"
		if cm == "12 cm" {
			at = "2026-05-12T15:40"
		}
		form := url.Values{"to-rim": {cm}, "by": {"R.K."}, "at": {at + ":00-07:00"}}
		if status, _ := sendForm(t, server, "/batches/D-114/log", form); status != http.StatusOK {
			t.Fatalf("a distance answers %d", status)
		}
	}
	if status, _ := sendForm(t, server, "/write/event", url.Values{"batch": {"D-114"}, "event": {"found-off 2 h"}, "by": {"R.K."}}); status != http.StatusOK {
		t.Fatalf("found off answers %d", status)
	}
	for _, address := range []string{"/batches/D-114", "/"} {
		page, _ = fetch(t, server, address)
		see(t, page, "The air stopped some time between", "Foam reaches the rim around")
	}
	page, _ = fetch(t, server, "/batches/D-114")
	see(t, page, "Carry on with air", "Only on soil of beds without food crops", "Onto the compost heap")
}

// The next visit of a living batch goes into the calendar with a reminder, beside
// the steps of the plan or alone.
func TestTheNextVisitGoesIntoTheCalendar(t *testing.T) {
	server := demoServer(t)
	whole, _ := fetch(t, server, "/plan.ics")
	alone, _ := fetch(t, server, "/plan.ics?batch=D-114")
	for _, text := range []string{whole, alone} {
		if !strings.Contains(text, "D-114 · read") || strings.Count(text, "BEGIN:VALARM") != strings.Count(text, "BEGIN:VEVENT") {
			t.Errorf("the visit or its reminder is missing:\n%.400s", text)
		}
	}
	if strings.Count(alone, "BEGIN:VEVENT") != 1 || strings.Count(whole, "BEGIN:VEVENT") < 5 {
		t.Errorf("%d and %d events", strings.Count(alone, "BEGIN:VEVENT"), strings.Count(whole, "BEGIN:VEVENT"))
	}
}
