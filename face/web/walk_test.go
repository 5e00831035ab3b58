package web_test

import (
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
)

var figure = regexp.MustCompile(`data-key="area_m2">[^<]*`)

// The corners of the worksheet's worked example: 1067.289 m2, and with 3 m of
// doubt a tape measure is the better tool.
func TestWalkedCorners(t *testing.T) {
	server, _ := groundServer(t)
	status, body := sent(t, server.URL+"/ground/walk?units=metric", url.Values{"text": {"44.12,-123.05;\n44.12,-123.0496\n44.1203,-123.0496; 44.1203,-123.05"}, "gps-error": {"3 m"}})
	if status != http.StatusOK {
		t.Fatalf("%d: %s", status, body)
	}
	for _, want := range []string{`data-key="area_m2"`, "corners = [[44.1200000, -123.0500000]", ">1067\u00a0m²"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not show %q: %s", want, figure.FindString(body))
		}
	}
	status, body = sent(t, server.URL+"/ground/walk", url.Values{"text": {"44.12,-123.05; 44.1203,-123.0496; 44.12,-123.0496; 44.1203,-123.05"}})
	if status != http.StatusUnprocessableEntity || !strings.Contains(body, `role="alert"`) || strings.Contains(body, "corners = [") {
		t.Errorf("crossing sides answer %d", status)
	}
}

// Thirty by ten paces at 25 over 20 m: 24 m by 8 m.
func TestWalkedPaces(t *testing.T) {
	server, _ := groundServer(t)
	status, body := sent(t, server.URL+"/ground/walk?units=metric", url.Values{"over": {"25"}, "long": {"30"}, "wide": {"10"}})
	if status != http.StatusOK || !strings.Contains(strings.ReplaceAll(body, "\u00a0", " "), "About 192 m²") {
		t.Errorf("%d: %.200s", status, body)
	}
	if status, _ := sent(t, server.URL+"/ground/walk", url.Values{"over": {"0"}, "long": {"30"}, "wide": {"10"}}); status != http.StatusUnprocessableEntity {
		t.Errorf("no pace at all answers %d", status)
	}
}
