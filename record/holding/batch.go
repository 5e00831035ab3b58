package holding

import (
	"context"
	"encoding/json"
	"slices"
	"sort"
	"strings"
	"time"

	"aerosteep/quantity"
	"aerosteep/record/journal"
)

// Batch is one batch as it stands.
type Batch struct {
	Name        string
	Vessel      string
	Recipe      string
	Volume      *quantity.Volume
	Temperature *quantity.Temperature
	StartedAt   *time.Time // nil: planned, not started
	Ended       *Ending    // nil: it lives
	Because     string     // why a dose over the ceiling was kept, as said at its start
}

// Living tells whether the batch has started and not ended.
func (b Batch) Living() bool { return b.StartedAt != nil && b.Ended == nil }

// Ending is how a batch ended.
type Ending struct {
	At      time.Time
	Outcome string // used, part-used, failed, discarded; "" unknown
	Cause   string
}

// Batches are all batches, the newest first.
func (h *Holding) Batches() []Batch {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.batches == nil {
		h.batches = h.state.batches()
	}
	return append([]Batch(nil), h.batches...)
}

// Batch finds a batch by name.
func (h *Holding) Batch(name string) (Batch, bool) {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.state.batch("batch:" + name)
}

func (s *state) batches() []Batch {
	list := []Batch{}
	for _, subject := range s.subjects("batch") {
		if b, stands := s.batch(subject); stands {
			list = append(list, b)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].begin().After(list[j].begin()) })
	return list
}

func (b Batch) begin() time.Time {
	if b.StartedAt == nil {
		return time.Time{}
	}
	return *b.StartedAt
}

// ended tells whether a batch is over.
func (s *state) ended(subject string) bool {
	_, ended := s.last(subject, journal.End)
	return ended
}

// batch reads a batch's table, which is in the words of a job file.
func (s *state) batch(subject string) (Batch, bool) {
	body := s.body(subject)
	if body == nil {
		return Batch{}, false
	}
	var table struct {
		Vessel      string `json:"vessel"`
		Recipe      string `json:"recipe"`
		Volume      string `json:"volume"`
		Temperature string `json:"temperature"`
		StartedAt   string `json:"started_at"`
	}
	_ = json.Unmarshal(body, &table) // what is of another type is not known
	_, name, _ := strings.Cut(subject, ":")
	b := Batch{Name: name, Vessel: table.Vessel, Recipe: table.Recipe}
	if v, err := quantity.ParseVolume(table.Volume); err == nil {
		b.Volume = &v
	}
	if t, err := quantity.ParseTemperature(table.Temperature); err == nil {
		b.Temperature = &t
	}
	if at, err := time.Parse(time.RFC3339, table.StartedAt); err == nil {
		b.StartedAt = &at
	}
	b.Ended, b.Because = s.ending(subject), s.because(subject)
	return b, true
}

func (s *state) because(subject string) string {
	var body struct {
		Because string `json:"because"`
	}
	if start, started := s.last(subject, journal.Start); started {
		_ = json.Unmarshal(start.Body, &body) // what is of another type was not said
	}
	return body.Because
}

func (s *state) ending(subject string) *Ending {
	end, ended := s.last(subject, journal.End)
	if !ended {
		return nil
	}
	var body struct {
		Outcome string `json:"outcome"`
		Cause   string `json:"cause"`
	}
	_ = json.Unmarshal(end.Body, &body)
	return &Ending{At: end.At, Outcome: body.Outcome, Cause: body.Cause}
}

// KnowsBatch refuses a batch that the holding does not know, with the nearest
// that it does.
func (h *Holding) KnowsBatch(name string) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	if known := h.state.names("batch"); !slices.Contains(known, name) {
		return unknownName("batch", name, known)
	}
	return nil
}

// aside are the kinds that may be about a bed or an ingredient and still name
// a batch in their body.
var aside = []string{journal.Note, journal.Count, journal.Test, journal.Applied, journal.Stock, journal.Incident}

// Entries are what was written down about a batch ("" for everything) since a
// time, by when it happened.
func (h *Holding) Entries(ctx context.Context, batch string, since time.Time) ([]journal.Kept, error) {
	if batch == "" {
		return h.journal.List(ctx, journal.Wanted{Since: since})
	}
	about, err := h.journal.List(ctx, journal.Wanted{Subject: "batch:" + batch, Since: since})
	if err != nil {
		return nil, err
	}
	others, err := h.journal.List(ctx, journal.Wanted{Kinds: aside, Since: since})
	if err != nil {
		return nil, err
	}
	for _, k := range others {
		var body struct {
			Batch string `json:"batch"`
		}
		if json.Unmarshal(k.Body, &body) == nil && body.Batch == batch {
			about = append(about, k)
		}
	}
	sort.SliceStable(about, func(i, j int) bool { return about[i].Time().Before(about[j].Time()) })
	return about, nil
}
