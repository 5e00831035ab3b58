package web_test

import (
	"io"
	"net/http"
	"strings"
	"testing"
)

// The cone-bottomed vessel of the worksheet's worked example holds 502.65 L to
// the rim; marks above the cone stand evenly, by solid geometry.
func TestMarksOfAMeasuredVessel(t *testing.T) {
	server, _ := groundServer(t)
	address := "/rig/marks?units=metric&shape=cone-bottom&diameter=80+cm&height=90+cm&cone-height=30+cm"
	body, _ := fetch(t, server, address)
	body = strings.ReplaceAll(body, "\u00a0", " ")
	// 400 L: the cone holds 50.265 L, so 349.735 L stand 0.69577 m above it.
	for _, want := range []string{"503 L", "A mark every 50 L.", "99.6 cm", "Strip 1 of", `width="36mm"`} {
		if !strings.Contains(body, want) {
			t.Errorf("the page does not show %q", want)
		}
	}
	if rig, _ := fetch(t, server, "/rig"); !strings.Contains(rig, `href="/rig/marks"`) {
		t.Error("the rig does not lead to the marks")
	}
}

func TestMarksRefuseWhatIsNoVessel(t *testing.T) {
	server, _ := groundServer(t)
	for _, query := range []string{"?shape=cylinder&diameter=80+cm", "?shape=cylinder&diameter=-1+cm&height=1+m", "?vessel=Moon"} {
		response, err := http.Get(server.URL + "/rig/marks" + query)
		if err != nil {
			t.Fatal(err)
		}
		body, _ := io.ReadAll(response.Body)
		response.Body.Close()
		if response.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(string(body), `role="alert"`) {
			t.Errorf("%s answers %d", query, response.StatusCode)
		}
	}
}
