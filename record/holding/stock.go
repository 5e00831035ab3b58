package holding

import (
	"encoding/json"
	"slices"
	"strings"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/journal"
)

// InStore is what lies in the shed of one lot of an ingredient; the lot is ""
// where nobody wrote one down.
type InStore struct {
	Ingredient, Lot string
	Left            quantity.Mass // came in less went out, since it was last counted
	Counted         *time.Time    // when it was
	Expires         *time.Time    // the first instant of the day after which it is too old
	Negative        bool          // more went out than came in: something was not written down
}

// Expired tells whether a lot is too old.
func (s InStore) Expired(now time.Time) bool { return s.Expires != nil && !now.Before(*s.Expires) }

// Shelf is an ingredient with its lots and what is to be done about it.
type Shelf struct {
	Ingredient string
	Lots       []InStore
	Left       quantity.Mass // of lots that are not too old
	Reorder    *quantity.Mass
	PerDay     quantity.Mass // went out on average, over the last usedOver
	Low        bool          // under the reorder point
}

// usedOver is the stretch that the use of a day is taken from.
const usedOver = 56 * 24 * time.Hour

// LastsDays is for how long a shelf lasts at the use of late; false where
// nothing went out.
func (s Shelf) LastsDays() (float64, bool) {
	if !(s.PerDay > 0) {
		return 0, false
	}
	return float64(max(0, s.Left) / s.PerDay), true
}

// stockBody is a movement of stock as the journal has it.
type stockBody struct {
	Received *float64 `json:"received_g"`
	Used     *float64 `json:"used_g"`
	Left     *float64 `json:"left_g"` // counted: what was there at that moment
	Lot      string   `json:"lot"`
	Expires  string   `json:"expires"`
}

// Shelves are the ingredients of which something came in, went out or was
// counted, in the order in which they were first heard of.
func (h *Holding) Shelves(file *jobfile.File, now time.Time) []Shelf {
	h.mu.Lock()
	defer h.mu.Unlock()
	var shelves []Shelf
	for _, subject := range h.state.subjects("ingredient") {
		moved := h.state.standing(subject, journal.Stock)
		if len(moved) == 0 {
			continue
		}
		name := strings.TrimPrefix(subject, "ingredient:")
		shelf := shelfOf(name, moved, now)
		if known, err := file.Larder.Find(name); err == nil && known.ReorderAt != nil {
			shelf.Reorder = known.ReorderAt.InMass(known.Bulk)
			shelf.Low = shelf.Reorder != nil && shelf.Left < *shelf.Reorder
		}
		shelves = append(shelves, shelf)
	}
	return shelves
}

// shelfOf adds the movements up by lot, in the order of the clock.
func shelfOf(name string, moved []told, now time.Time) Shelf {
	slices.SortStableFunc(moved, func(a, b told) int { return a.At.Compare(b.At) })
	shelf := Shelf{Ingredient: name}
	for _, t := range moved {
		var b stockBody
		if json.Unmarshal(t.Body, &b) != nil {
			continue // of another type: it moves nothing
		}
		shelf.lot(b.Lot).move(t.At, b, now)
		if b.Used != nil && !t.At.Before(now.Add(-usedOver)) && !t.At.After(now) {
			shelf.PerDay += quantity.Grams(*b.Used / (usedOver.Hours() / 24))
		}
	}
	for i := range shelf.Lots {
		l := &shelf.Lots[i]
		l.Ingredient, l.Negative = name, l.Left < 0
		if !l.Expired(now) {
			shelf.Left += max(0, l.Left)
		}
	}
	return shelf
}

func (s *Shelf) lot(name string) *InStore {
	for i := range s.Lots {
		if s.Lots[i].Lot == name {
			return &s.Lots[i]
		}
	}
	s.Lots = append(s.Lots, InStore{Lot: name})
	return &s.Lots[len(s.Lots)-1]
}

func (l *InStore) move(at time.Time, b stockBody, now time.Time) {
	if b.Left != nil {
		l.Left, l.Counted = quantity.Grams(*b.Left), &at
	}
	if b.Received != nil {
		l.Left += quantity.Grams(*b.Received)
	}
	if b.Used != nil {
		l.Left -= quantity.Grams(*b.Used)
	}
	if day, err := time.ParseInLocation(time.DateOnly, strings.TrimSpace(b.Expires), now.Location()); err == nil {
		l.Expires = new(day.AddDate(0, 0, 1))
	}
}
