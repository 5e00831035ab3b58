package web_test

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
)

// The class sheet comes first; the pail plays one hour a minute, answers what a
// class does to it, and keeps nothing.
func TestTheSchoolPail(t *testing.T) {
	server, h := groundServer(t)
	before, _ := h.Journal().Size(t.Context())
	sheet, _ := fetch(t, server, "/school")
	see(t, sheet, "Unfed", "No manure", "On soil only", "No mist", "19 kg", "Hands washed", "weak immunity", "/school/pail?from=")
	from := juneMorning.Unix()
	calm, _ := fetch(t, server, fmt.Sprintf("/school/pail?from=%d", from-12*60))
	see(t, calm, "hour 12 of 24", "Enough air", "Stop the air")
	stopped, _ := fetch(t, server, fmt.Sprintf("/school/pail?from=%d&did=air-off@2.00", from-12*60))
	see(t, stopped, "Hardly any oxygen", "hour 2.0: air stopped", "Air on again")
	over, _ := fetch(t, server, fmt.Sprintf("/school/pail?from=%d", from-3600))
	if !strings.Contains(over, "hour 24 of 24") || strings.Contains(over, "Stop the air") {
		t.Error("a pail that is over can still be changed")
	}
	for _, wrong := range []string{"from=soon", fmt.Sprintf("from=%d&did=air-off@99", from), fmt.Sprintf("from=%d&did=dance@2", from)} {
		if status, _ := fetchStatus(t, server.URL+"/school/pail?"+wrong); status != http.StatusNotFound {
			t.Errorf("%s answers %d", wrong, status)
		}
	}
	if after, _ := h.Journal().Size(t.Context()); after != before {
		t.Error("the class left entries")
	}
}
