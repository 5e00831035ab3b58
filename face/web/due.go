package web

import (
	"net/http"
	"time"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
)

// dueWeek is how far ahead the wants of a week are made.
const dueWeek = 7 * 24 * time.Hour

// fillDue lists the beds with a rhythm, overdue first.
func (s *Site) fillDue(r *http.Request, p *page, v *groundView) {
	now := s.now()
	for _, d := range s.dueBeds(r) {
		late := d.Next.Before(now)
		key, n := "web.due.in", int(d.Next.Sub(now).Hours()/24)
		if late {
			key, n = "web.due.late", int(now.Sub(d.Next).Hours()/24)
		}
		line := p.Say(key, "n", n)
		if d.Last != nil {
			line += " " + p.Say("web.due.last", "day", p.Date(d.Last.In(now.Location())))
		}
		if d.Wanted {
			line += " " + p.Say("web.due.wanted")
		}
		v.AnyDue = v.AnyDue || !d.Wanted && d.Next.Before(now.Add(dueWeek))
		v.Due = append(v.Due, dueView{d.Bed, line, late && !d.Wanted})
	}
}

func (s *Site) dueBeds(r *http.Request) []holding.DueBed {
	file := s.held()
	if file == nil {
		return nil
	}
	due, err := s.Holding.DueBeds(r.Context(), file, s.now())
	if err != nil {
		s.log("due beds", err)
	}
	return due
}

// wantWeek makes the wants of the beds that are due within a week; true says
// that they are on disk.
func (s *Site) wantWeek(w http.ResponseWriter, r *http.Request, p *page, v *groundView) bool {
	r.Body = http.MaxBytesReader(w, r.Body, 1<<16)
	if err := r.ParseForm(); err != nil || s.held() == nil {
		return false
	}
	now := s.now()
	made := holding.Made{At: now, By: s.initials(w, r), Device: s.device(w, r)}
	var entries []journal.Entry
	for _, d := range s.dueBeds(r) {
		if d.Wanted || d.Next.After(now.Add(dueWeek)) {
			continue
		}
		e, err := s.Holding.WantAgain(d.Bed, workMorning(s.held(), d, now), made)
		for _, wrong := range fault.Of(err) {
			v.Problems = append(v.Problems, mend{"bed", p.wrong(wrong)})
		}
		if err == nil {
			entries = append(entries, e)
		}
	}
	if len(v.Problems) > 0 || len(entries) == 0 {
		return false
	}
	if _, err := s.Holding.Store(r.Context(), entries...); err != nil {
		v.Problems = append(v.Problems, mend{"bed", err.Error()})
		return false
	}
	return true
}

// brewAhead is how long before an application a plan needs to begin: a brew of a
// day and its preparing (common practice).
const brewAhead = 36 * time.Hour

// workMorning is 8:00 on the day that a bed is due, or on the first day that a
// brew can be ready for.
func workMorning(file *jobfile.File, d holding.DueBed, now time.Time) time.Time {
	day := d.Next
	if first := now.Add(brewAhead); day.Before(first) {
		day = first
	}
	day = day.In(file.Holding.Zone)
	at := time.Date(day.Year(), day.Month(), day.Day(), 8, 0, 0, 0, day.Location())
	if at.Before(now.Add(brewAhead)) {
		at = at.AddDate(0, 0, 1)
	}
	return at
}
