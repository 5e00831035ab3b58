package web

import (
	"context"
	"encoding/json"
	"net/http"
	"slices"
	"strings"
	"time"

	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/worksheet"
)

// handoverView is what the next person must know: each living batch with its
// state, last and next reading and who decides, what is due, and what the one
// before says.
type handoverView struct {
	Batches []handedBatch
	Due     []todo
	Note    *handedNote
	By      string
}

type handedBatch struct {
	life
	Lines []worksheet.Line // last reading and by whom, the next, who decides
	Acts  []string         // what could be done, the best first
}

// handedNote is what the person before left in words.
type handedNote struct{ When, By, Text string }

// handover shows it on one page that prints.
func (s *Site) handover(w http.ResponseWriter, r *http.Request) {
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	p := s.page(w, r, "today")
	p.Back, p.BackTo = "/", p.Say("web.place.today")
	now := s.now()
	p.Heading, p.Title, p.Under = p.Say("web.handover.title"), p.Say("web.handover.title"), p.Date(now)+", "+p.Clock(now)
	view := &handoverView{By: kept(r, "by"), Note: s.handed(r.Context(), p, now)}
	p.View = view
	for _, b := range s.Holding.Batches() {
		if b.Living() {
			view.Batches = append(view.Batches, s.handedBatch(p, b, now))
		}
	}
	for _, b := range view.Batches {
		view.Due = append(view.Due, b.Due...)
	}
	slices.SortStableFunc(view.Due, func(a, b todo) int { return strings.Compare(a.Machine, b.Machine) })
	s.show(w, http.StatusOK, "handover", p)
}

func (s *Site) handedBatch(p *page, b holding.Batch, now time.Time) handedBatch {
	h := handedBatch{life: s.life(p, b, now)}
	line := func(key, value string) {
		h.Lines = append(h.Lines, worksheet.Line{Label: p.Say("web.handover." + key), Value: value})
	}
	twin, err := s.twin(context.Background(), b.Name, now)
	if err != nil {
		return h
	}
	last := p.Say("web.handover.no-reading")
	if o := lastOxygen(twin); o != nil {
		last = p.Say("web.handover.last", "do", p.oneDecimal(o.MgPerL), "clock", p.When(o.At.In(now.Location()), now), "by", s.whoRead(b.Name, o.At))
	}
	line("last.label", last)
	if next := twin.Answer.NextReadingAt; next != nil {
		if at, err := time.Parse(time.RFC3339, *next); err == nil {
			line("next.label", p.When(at.In(now.Location()), now))
		}
	}
	line("decides", "____________")
	for _, a := range twin.Answer.Actions {
		h.Acts = append(h.Acts, a.Text.For(p.Reader))
	}
	return h
}

// whoRead is by whom a reading was taken; "?" where nobody's initials stand on it.
func (s *Site) whoRead(batch string, at time.Time) string {
	found, err := s.Holding.Journal().List(context.Background(), journal.Wanted{
		Subject: "batch:" + batch, Kinds: []string{journal.Reading}, Since: at.Add(-time.Minute), Until: at.Add(time.Minute),
	})
	if err != nil {
		s.log("who read", err)
	}
	for _, k := range found {
		if k.By != "" {
			return k.By
		}
	}
	return "?"
}

// handedFor is how long a note to the next person stands on Today.
const handedFor = 24 * time.Hour

// handed is the latest note to the next person; nil where there is none of the
// last day.
func (s *Site) handed(ctx context.Context, p *page, now time.Time) *handedNote {
	notes, err := s.Holding.Journal().List(ctx, journal.Wanted{Kinds: []string{journal.Note}, Since: now.Add(-handedFor)})
	if err != nil {
		s.log("handover", err)
	}
	for i := len(notes) - 1; i >= 0; i-- {
		var body struct {
			Handover string `json:"handover"`
			Text     string `json:"text"`
		}
		if k := notes[i]; k.ReplacedBy == nil && json.Unmarshal(k.Body, &body) == nil && body.Handover == "yes" {
			return &handedNote{p.When(k.Time().In(now.Location()), now), k.By, body.Text}
		}
	}
	return nil
}
