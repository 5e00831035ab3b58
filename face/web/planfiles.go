package web

import (
	"net/http"
	"time"

	"aerosteep/job/plan"
	"aerosteep/record/report"
)

// calendar is the plan as a feed that a calendar can follow.
func (s *Site) calendar(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "today")
	file := s.held()
	if file == nil {
		s.nothingHere(w, r)
		return
	}
	made := s.planOf(file, p.Reader, s.Now())
	only := r.URL.Query().Get("batch")
	if only != "" {
		made = &plan.Plan{Now: made.Now} // one batch: its next visit alone
	}
	w.Header().Set("Content-Type", "text/calendar; charset=utf-8")
	w.Header().Set("Cache-Control", "no-cache")
	_, _ = w.Write(report.Calendar(made, s.visits(p, r, only)...))
}

// visits are the next readings of the living batches, or of one of them.
func (s *Site) visits(p *page, r *http.Request, only string) []report.Visit {
	var visits []report.Visit
	for _, b := range s.Holding.Batches() {
		if !b.Living() || only != "" && b.Name != only {
			continue
		}
		twin, err := s.twin(r.Context(), b.Name, s.now())
		if err != nil || twin.Answer.NextReadingAt == nil {
			continue
		}
		if at, err := time.Parse(time.RFC3339, *twin.Answer.NextReadingAt); err == nil {
			text := p.Say("web.due.read", "name", b.Name) + ". " + p.Text(twin.Answer.NextReadingWhy)
			visits = append(visits, report.Visit{Batch: b.Name, Text: text, At: at})
		}
	}
	return visits
}

// jobSheets is the plan's loads on paper, a sheet for each run.
func (s *Site) jobSheets(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "today")
	file := s.held()
	if file == nil {
		s.nothingHere(w, r)
		return
	}
	text, err := report.JobSheets(s.planOf(file, p.Reader, s.Now()), file, p.Reader)
	s.handOut(w, "application/pdf", "job-sheets.pdf", text, err)
}
