package holding

import (
	"context"
	"encoding/json"
	"time"

	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
)

// Wait is what was put on a bed, and what the rules then say of picking there.
type Wait struct {
	Bed, Batch string // Batch is "" where the entry names none
	Applied    time.Time
	Facts      hygiene.Facts // with the day and the way it was really put on
	hygiene.Verdict
}

// Until is the first day on which the bed may be picked, as far as it is
// known: the strictest day where the answer still hangs on something, nil
// where there is none to wait for or the tea should not have gone there.
func (w Wait) Until() *time.Time {
	if w.Allowed == hygiene.Ask && w.AtWorst != nil {
		return w.AtWorst.Until
	}
	if w.Allowed == hygiene.WaitUntil {
		return w.Verdict.Until
	}
	return nil
}

// On tells what the rules say of picking on a day.
func (w Wait) On(day time.Time) hygiene.Verdict {
	facts := w.Facts
	facts.Harvest = &day
	return hygiene.Decide(facts)
}

// Waits are all applications to beds that the holding knows, oldest first. The
// planned harvest is left aside: what is asked here is when picking may begin.
func (h *Holding) Waits(ctx context.Context) ([]Wait, error) {
	applied, err := h.journal.List(ctx, journal.Wanted{Kinds: []string{journal.Applied}})
	if err != nil || len(applied) == 0 {
		return nil, err
	}
	file, err := read(h.parts(true), jobfile.FactsOnly)
	if err != nil {
		return nil, err
	}
	h.withLots(file)
	zone := h.Zone(time.UTC)
	var waits []Wait
	for _, k := range applied {
		if _, bed := k.About(); k.ReplacedBy == nil && bed != "" {
			w, err := waitOf(file, k, bed, zone)
			if err != nil {
				return nil, err
			}
			waits = append(waits, w)
		}
	}
	return waits, nil
}

func waitOf(file *jobfile.File, k journal.Kept, bed string, zone *time.Location) (Wait, error) {
	var said struct {
		Batch  string `json:"batch"`
		Method string `json:"method"`
	}
	_ = json.Unmarshal(k.Body, &said) // what is of another type was not said
	w := Wait{Bed: bed, Batch: said.Batch, Applied: dayOf(k.Time(), zone)}
	met, err := file.Meeting(bed, said.Batch)
	if err != nil {
		return w, err
	}
	w.Facts = met.Facts.With(hygiene.Method, orKnown(said.Method, met.Facts)).On(w.Applied)
	w.Facts.Harvest = nil
	w.Verdict = hygiene.Decide(w.Facts)
	return w, nil
}

func orKnown(method string, facts hygiene.Facts) string {
	if method == "" {
		return facts.Value(hygiene.Method)
	}
	return method
}

// dayOf is the calendar day of a moment at the holding, as rules count days.
func dayOf(at time.Time, zone *time.Location) time.Time {
	y, m, d := at.In(zone).Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}
