package holding

import (
	"context"
	"encoding/json"
	"slices"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
)

// Wasted tells a batch that was not used at all: it serves no bed.
func (b Batch) Wasted() bool {
	return b.Ended != nil && (b.Ended.Outcome == "failed" || b.Ended.Outcome == "discarded")
}

// WaitAgain are the wants that a wasted batch leaves open: those that were due
// about its end and whose beds have had no tea since it began, save its own,
// which went to waste with it.
func (h *Holding) WaitAgain(ctx context.Context, file *jobfile.File, b Batch) ([]int, error) {
	if !b.Wasted() {
		return nil, nil
	}
	since := b.begin()
	if since.IsZero() {
		since = b.Ended.At.Add(-dueWithin)
	}
	served, err := h.servedSince(ctx, since, b.Name)
	if err != nil {
		return nil, err
	}
	var open []int
	for _, i := range DueWants(file, b.Ended.At) {
		if !slices.Contains(served, file.Wants[i].Bed) {
			open = append(open, i)
		}
	}
	return open, nil
}

// servedSince are the beds that had tea of another batch since a moment.
func (h *Holding) servedSince(ctx context.Context, since time.Time, but string) ([]string, error) {
	applied, err := h.journal.List(ctx, journal.Wanted{Kinds: []string{journal.Applied}, Since: since})
	var beds []string
	for _, k := range applied {
		var of struct {
			Batch string `json:"batch"`
		}
		_ = json.Unmarshal(k.Body, &of) // a batch of another type is none
		if _, bed := k.About(); k.ReplacedBy == nil && of.Batch != but {
			beds = append(beds, bed)
		}
	}
	return beds, err
}
