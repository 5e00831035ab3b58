package holding

import (
	"context"
	"encoding/json"
	"time"

	"aerosteep/record/journal"
	"aerosteep/wording"
)

// Cleaning is who cleaned a vessel, when and with what.
type Cleaning struct {
	At    time.Time
	By    string
	Agent string // "" where nobody said
}

// CleanedFor finds the last cleaning of a batch's vessel between the batch
// before in it and its own start; nil where none was written down.
func (h *Holding) CleanedFor(ctx context.Context, batch Batch) (*Cleaning, error) {
	if batch.Vessel == "" || batch.StartedAt == nil {
		return nil, nil
	}
	since := h.lastStart(batch)
	found, err := h.journal.List(ctx, journal.Wanted{Subject: "vessel:" + batch.Vessel, Kinds: []string{journal.Cleaned}, Since: since, Until: batch.StartedAt.Add(time.Second)})
	if err != nil {
		return nil, err
	}
	var last *Cleaning
	for _, k := range found {
		var said struct {
			Agent string `json:"agent"`
		}
		_ = json.Unmarshal(k.Body, &said) // what is of another type was not said
		if k.ReplacedBy == nil {
			last = &Cleaning{k.Time(), k.By, said.Agent}
		}
	}
	return last, nil
}

// lastStart is when the batch before this one was started in its vessel.
func (h *Holding) lastStart(batch Batch) time.Time {
	var last time.Time
	for _, other := range h.Batches() {
		if other.Name != batch.Name && other.Vessel == batch.Vessel && other.StartedAt != nil && other.StartedAt.Before(*batch.StartedAt) && other.StartedAt.After(last) {
			last = *other.StartedAt
		}
	}
	return last
}

// uncleaned asks at a batch's start who cleaned vessel and lines, where that
// is not written down.
func (h *Holding) uncleaned(ctx context.Context, start journal.Entry) *Effect {
	_, name := start.About()
	batch, known := h.Batch(name)
	if !known || batch.Vessel == "" {
		return nil
	}
	if cleaned, err := h.CleanedFor(ctx, batch); err != nil || cleaned != nil {
		return nil
	}
	return &Effect{Text: wording.Say("holding.uncleaned", wording.Places{"vessel": batch.Vessel, "batch": batch.Name})}
}
