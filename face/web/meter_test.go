package web_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
)

// Water at 20 °C and sea level holds 9.09 mg/L (USGS table of oxygen
// solubility, Benson and Krause), at the 640 m of Tern Hollow 93.9 / 101.3 of
// that, 8.4 mg/L: a meter that shows 8.7 mg/L shows 0.3 mg/L too much.
func TestAMeterIsCheckedAndItsBiasKept(t *testing.T) {
	server, client := demoServer(t), pocketBrowser(t)
	page, _ := fetch(t, server, "/rig/meter")
	has(t, page, "A meter for one afternoon", "Pump-off test in", "60 days", "/worksheets/reaeration")
	fields := url.Values{"temp": {"20 C"}, "reading": {"8.7 mg/L"}, "meter": {"Blue"}}
	status, body := sendTest(t, client, server, "/rig/meter", fields)
	if status != http.StatusOK || !strings.Contains(body, "0.3\u00a0mg/L too much") {
		t.Fatalf("answers %d without a bias", status)
	}
	fields.Set("keep", "1")
	if status, body = sendTest(t, client, server, "/rig/meter", fields); status != http.StatusOK {
		t.Fatalf("keeping answers %d", status)
	}
	has(t, body, "Kept.", "too much", "Your own meter")
	batch, _ := fetch(t, server, "/batches/D-114")
	has(t, batch, "Meter Blue, checked")
}

// A meter that shows only percent is read by what the water holds: 100 % is no
// bias at all, and each percent stands beside its mg/L.
func TestPercentIsReadByWhatTheWaterHolds(t *testing.T) {
	server, client := demoServer(t), pocketBrowser(t)
	_, body := sendTest(t, client, server, "/rig/meter?units=metric", url.Values{"temp": {"20"}, "percent-saturation": {"100"}})
	has(t, body, "It shows what the water holds.", "Percent in mg/L", "50\u00a0%")
	status, body := sendTest(t, client, server, "/rig/meter", url.Values{"temp": {"20 C"}, "percent-saturation": {"100"}, "reading": {"9"}})
	if status != http.StatusUnprocessableEntity || !strings.Contains(body, "not both") {
		t.Errorf("percent and mg/L together answer %d", status)
	}
}

// A kit that counts drops can tell nothing finer than one drop; a reading that
// no water can hold is kept, but doubted.
func TestAKitIsAsWideAsItsDropAndTooMuchIsDoubted(t *testing.T) {
	server, client := demoServer(t), pocketBrowser(t)
	_, body := sendTest(t, client, server, "/rig/meter", url.Values{"temp": {"20 C"}, "reading": {"8.5 mg/L"}, "drop": {"1 mg/L"}})
	has(t, body, "within the one drop")
	fields := url.Values{"temp": {"20 C"}, "reading": {"14 mg/L"}, "meter": {"Old"}, "keep": {"1"}}
	if status, _ := sendTest(t, client, server, "/rig/meter", fields); status != http.StatusOK {
		t.Fatalf("a doubted check answers %d", status)
	}
	page, _ := fetch(t, server, "/rig/meter?meter=Old&lang=es")
	has(t, page, "en duda", "Un medidor por una tarde")
}

func TestACheckNeedsAReadingAndAName(t *testing.T) {
	server, client := demoServer(t), pocketBrowser(t)
	for wanted, fields := range map[string]url.Values{
		"name of its meter": {"temp": {"20 C"}, "reading": {"8 mg/L"}, "keep": {"1"}},
		"nothing to keep":   {"temp": {"20 C"}, "meter": {"Blue"}, "keep": {"1"}},
		"200":               {"temp": {"20 C"}, "reading": {"900 mg/L"}},
	} {
		status, body := sendTest(t, client, server, "/rig/meter", fields)
		if wanted == "200" {
			wanted = "50" // most that the worksheet takes
		}
		if status != http.StatusUnprocessableEntity || !strings.Contains(body, wanted) {
			t.Errorf("%v answers %d, want a word of %q", fields, status, wanted)
		}
	}
}

// A reading that no water can hold is kept; the page where the next one is
// typed says that it is in doubt, and so does its batch.
func TestAReadingThatCannotBeIsKeptButDoubted(t *testing.T) {
	server, client := demoServer(t), pocketBrowser(t)
	if status, _ := sendTest(t, client, server, "/batches/D-114/log", url.Values{"do": {"14 mg/L"}, "temp": {"20 C"}}); status != http.StatusOK {
		t.Fatalf("a reading of 14 mg/L answers %d", status)
	}
	page, _ := fetch(t, server, "/batches/D-114/log")
	has(t, page, "is kept, but in doubt.", "14.0")
	batch, _ := fetch(t, server, "/batches/D-114")
	has(t, batch, "14.0\u00a0mg/L (doubted)", "No check of a meter is on record.")
}
