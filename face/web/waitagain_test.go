package web_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"aerosteep/record/holding"
)

// A batch that failed serves no bed: the wants that were due about its end wait
// again, each with the next hour that the plan finds; a batch that was used
// leaves none, and a bed that had other tea does not wait.
func TestAFailedBatchLeavesItsBedsWaiting(t *testing.T) {
	server, h := groundServerAt(t, time.Date(2026, 5, 12, 22, 45, 0, 0, time.UTC))
	file, err := h.File(0)
	if err != nil {
		t.Fatal(err)
	}
	if b, _ := h.Batch("D-114"); b.Wasted() {
		t.Fatal("a living batch counts as wasted")
	}
	end := url.Values{"batch": {"D-114"}, "outcome": {"failed"}, "cause": {"pump stopped"}, "by": {"R.K."}}
	if status, _ := sent(t, server.URL+"/write/end", end); status != http.StatusOK {
		t.Fatalf("the end answers %d", status)
	}
	b, _ := h.Batch("D-114")
	open, err := h.WaitAgain(t.Context(), file, b)
	if err != nil || len(open) == 0 {
		t.Fatalf("%v wait again, %v", open, err)
	}
	page, _ := fetch(t, server, "/batches/D-114")
	see(t, page, "It serves no bed; these wait again:")
	for _, i := range open {
		bed := file.Wants[i].Bed
		if !strings.Contains(page, bed+": next possible hour") && !strings.Contains(page, bed+": not at its hour.") {
			t.Errorf("%s has no hour", bed)
		}
	}
	bed := file.Wants[open[0]].Bed
	load := url.Values{"bed": {bed}, "batch": {"C-031"}, "method": {"drench"}, "tea": {"5 L"}}
	form, _ := holding.FormOf("applied")
	e, err := h.Compose(form, map[string][]string(load), holding.Made{At: b.Ended.At, By: "R.K."})
	if err == nil {
		_, err = h.Store(t.Context(), e)
	}
	if err != nil {
		t.Fatal(err)
	}
	left, _ := h.WaitAgain(t.Context(), file, b)
	for _, i := range left {
		if file.Wants[i].Bed == bed {
			t.Errorf("%s had tea of another batch and still waits", bed)
		}
	}
}
