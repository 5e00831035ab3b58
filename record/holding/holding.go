package holding

import (
	"context"
	"encoding/json"
	"sync"
	"time"

	"aerosteep/record/journal"
	"aerosteep/wording"
)

// Holding is an open journal with the state it adds up to. It is safe for use
// by several goroutines.
type Holding struct {
	journal *journal.Journal
	sky     skyKept

	mu      sync.Mutex
	state   state
	batches []Batch // of the state; nil until asked for
	twins   map[string]*Twin
	chain   string // name of the journal that the state was read from
	arrival int64  // how far the state has come
}

// Open opens the holding in a data folder.
func Open(ctx context.Context, folder string, means journal.Means) (*Holding, error) {
	j, err := journal.Open(ctx, folder, means)
	if err != nil {
		return nil, err
	}
	h, err := Of(ctx, j)
	if err != nil {
		j.Close()
		return nil, err
	}
	return h, nil
}

// Of is the holding of an open journal.
func Of(ctx context.Context, j *journal.Journal) (*Holding, error) {
	h := &Holding{journal: j, state: newState()}
	return h, h.Refresh(ctx)
}

// Journal is where the entries lie.
func (h *Holding) Journal() *journal.Journal { return h.journal }

// Close lets go of the journal.
func (h *Holding) Close() error { return h.journal.Close() }

// enoughForCheckpoint is how many entries may have to be gone through at a
// start before the state is set aside again.
const enoughForCheckpoint = 200

// Refresh brings the state up to date with what this or another program has
// stored meanwhile.
func (h *Holding) Refresh(ctx context.Context) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	chain, last, err := h.journal.Head(ctx)
	if err != nil {
		return err
	}
	if chain != h.chain {
		if err := h.resume(ctx, chain); err != nil {
			return err
		}
	}
	if last == h.arrival {
		return nil
	}
	entries, err := h.journal.StateAfter(ctx, h.arrival)
	if err != nil {
		return err
	}
	for _, e := range entries {
		h.state.apply(e.Entry)
		last = max(last, e.Arrival)
	}
	if len(entries) > 0 {
		h.batches = nil
	}
	h.arrival = last
	return h.setAside(ctx, len(entries))
}

// resume starts from the checkpoint of a journal, or from nothing.
func (h *Holding) resume(ctx context.Context, chain string) error {
	h.state, h.batches, h.chain, h.arrival = newState(), nil, chain, 0
	arrival, text, err := h.journal.Checkpoint(ctx, checkpointOf(chain))
	if err != nil || text == nil {
		return err
	}
	saved := newState()
	if json.Unmarshal(text, &saved) != nil || saved.Told == nil || saved.Replaced == nil {
		return nil // the entries say it all again
	}
	h.state, h.arrival = saved, arrival
	return nil
}

// checkpointOf names a checkpoint: by the form of the state, and by the chain,
// so that a restored backup does not meet the state of another time.
func checkpointOf(chain string) string { return "holding-3:" + chain }

// setAside stores a checkpoint after enough has been gone through. One that
// cannot be stored is done without.
func (h *Holding) setAside(ctx context.Context, passed int) error {
	if passed < enoughForCheckpoint || h.journal.Writable() != nil {
		return nil
	}
	text, err := json.Marshal(h.state)
	if err != nil {
		return err
	}
	_ = h.journal.SetCheckpoint(ctx, checkpointOf(h.chain), h.arrival, text)
	return nil
}

// Store stores entries and brings the state up to date.
func (h *Holding) Store(ctx context.Context, entries ...journal.Entry) ([]journal.Result, error) {
	results, err := h.journal.Store(ctx, entries...)
	if err != nil {
		return nil, err
	}
	return results, h.Refresh(ctx)
}

// Zone is the holding's time zone; fallback where it names none.
func (h *Holding) Zone(fallback *time.Location) *time.Location {
	if zone, err := time.LoadLocation(h.fact("zone")); err == nil && h.fact("zone") != "" {
		return zone
	}
	return fallback
}

// fact is a key of the table [holding], "" where it is not there.
func (h *Holding) fact(key string) string {
	h.mu.Lock()
	defer h.mu.Unlock()
	var table map[string]any
	if body := h.state.body("holding"); body == nil || json.Unmarshal(body, &table) != nil {
		return ""
	}
	text, _ := table[key].(string)
	return text
}

// Reader is whoever reads the holding's answers: its language and units.
func (h *Holding) Reader() wording.Reader {
	r := wording.Reader{Language: wording.English, Units: wording.US}
	if h.fact("language") == string(wording.Spanish) {
		r.Language = wording.Spanish
	}
	if h.fact("units") == string(wording.Metric) {
		r.Units = wording.Metric
	}
	return r
}

// Version grows with every entry that the holding has taken in: what was made
// from it stays true as long as this stays the same.
func (h *Holding) Version() int64 {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.arrival
}
