package web

import (
	"net/http"

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
	w.Header().Set("Content-Type", "text/calendar; charset=utf-8")
	w.Header().Set("Cache-Control", "no-cache")
	_, _ = w.Write(report.Calendar(s.planOf(file, p.Reader, s.Now())))
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
