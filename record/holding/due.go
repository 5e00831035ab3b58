package holding

import (
	"context"
	"encoding/json"
	"slices"
	"time"

	"aerosteep/fault"
	"aerosteep/job/ground"
	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// DueBed is a bed that is treated every so often, with when it is due.
type DueBed struct {
	Bed    string
	Next   time.Time
	Last   *time.Time // that tea was put on; nil: never
	Wanted bool       // a want for it is in the plan already
}

// DueBeds are the beds with a rhythm, the most overdue first.
func (h *Holding) DueBeds(ctx context.Context, file *jobfile.File, now time.Time) ([]DueBed, error) {
	last, err := h.lastApplied(ctx)
	if err != nil {
		return nil, err
	}
	var due []DueBed
	for _, bed := range file.Beds {
		if bed.Every == nil {
			continue
		}
		d := DueBed{Bed: bed.Name}
		if at, treated := last[bed.Name]; treated {
			d.Last = &at
		}
		next, ok := ground.Rhythm{Every: *bed.Every, First: bed.First, Last: bed.Last}.Next(d.Last, now)
		if !ok {
			continue
		}
		d.Next = next
		d.Wanted = slices.ContainsFunc(file.Wants, func(w jobfile.Want) bool { return w.Bed == bed.Name && !wantOver(w, now) })
		due = append(due, d)
	}
	slices.SortStableFunc(due, func(a, b DueBed) int { return a.Next.Compare(b.Next) })
	return due, nil
}

func wantOver(w jobfile.Want, now time.Time) bool {
	end := w.At
	if w.Until != nil {
		end = w.Until
	}
	return end != nil && end.Before(now)
}

// lastApplied is when tea was last put on each bed.
func (h *Holding) lastApplied(ctx context.Context) (map[string]time.Time, error) {
	applied, err := h.journal.List(ctx, journal.Wanted{Kinds: []string{journal.Applied}})
	if err != nil {
		return nil, err
	}
	last := map[string]time.Time{}
	for _, k := range applied {
		what, bed := k.About()
		if what == "bed" && k.ReplacedBy == nil && k.Time().After(last[bed]) {
			last[bed] = k.Time()
		}
	}
	return last, nil
}

// WantAgain makes the entry of a want for a bed as it was wanted last, at
// another hour.
//
// Errors: *fault.Fault where nothing was ever wanted on the bed: how much and
// how is then not known.
func (h *Holding) WantAgain(bed string, at time.Time, made Made) (journal.Entry, error) {
	body := h.lastWant(bed)
	if body == nil {
		return journal.Entry{}, fault.New("bed", bed, wording.Say("holding.want-again.none", wording.Places{"bed": bed}), wording.Text{}, wording.Say("holding.want-again.advice"))
	}
	delete(body, "from")
	delete(body, "until")
	body["at"] = at.Format(time.RFC3339)
	text, err := json.Marshal(body)
	if err != nil {
		return journal.Entry{}, err
	}
	return h.entry(journal.Setup, "want:"+wantName(text), body, made)
}

// lastWant is the table of the latest want for a bed, also of one that is over.
func (h *Holding) lastWant(bed string) map[string]any {
	h.mu.Lock()
	defer h.mu.Unlock()
	var last map[string]any
	for _, subject := range h.state.subjects("want") {
		body := map[string]any{}
		if json.Unmarshal(h.state.body(subject), &body) == nil && body["bed"] == bed {
			last = body
		}
	}
	return last
}
