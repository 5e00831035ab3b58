package web

import (
	"net/http"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// keepOnRun stores what was done on a round and says where to go on; nil
// faults say that it is on disk.
func (s *Site) keepOnRun(r *http.Request, p *page, made holding.Made, b holding.Batch) (faults fault.List, next string) {
	next = "/run/" + b.Name
	if r.URL.RawQuery != "" {
		next += "?" + r.URL.RawQuery
	}
	given := worksheet.Values{"batch": {b.Name}}
	switch r.PostForm.Get("do-now") {
	case "load":
		if wrong := s.unreleased(r, b); wrong != nil {
			return fault.List{wrong}, next
		}
		return s.keepForm(r, p, "applied", given, made), next
	case "leave":
		given = worksheet.Values{"left-out-of": {b.Name}, "text": {p.Say("web.run.left-out")}}
		return s.keepForm(r, p, "note", given, made), next
	default:
		return s.keepForm(r, p, "end", given, made), "/batches/" + b.Name
	}
}

// unreleased refuses a load before the look: nothing goes out that nobody
// released. A release that waits on the same phone counts.
func (s *Site) unreleased(r *http.Request, b holding.Batch) *fault.Fault {
	if r.PostForm.Get("released-here") != "" {
		return nil
	}
	look, err := s.Holding.Release(r.Context(), b)
	if err != nil {
		return &fault.Fault{Field: "release", What: verbatim(err)}
	}
	if look != nil && look.Released {
		return nil
	}
	return &fault.Fault{Field: "release", What: wording.Say("web.release.first"), Advice: wording.Say("web.release.act")}
}

// keepForm stores what a form of the holding was filled in with: fields of
// the page over those that are given, a bare number in the page's unit.
func (s *Site) keepForm(r *http.Request, p *page, word string, given worksheet.Values, made holding.Made) fault.List {
	form, _ := holding.FormOf(word)
	for i := range form.Sheet.Inputs {
		in := &form.Sheet.Inputs[i]
		if _, set := given[in.Flag]; set {
			continue
		}
		if text := strings.TrimSpace(r.PostForm.Get(in.Flag)); text != "" {
			given[in.Flag] = []string{withBoxUnit(in, text, p)}
		}
	}
	if at, err := time.Parse(time.RFC3339, r.PostForm.Get("at")); err == nil {
		made.At = at // it waited on the phone
	}
	entry, err := s.Holding.Compose(form, given, made)
	if id := r.PostForm.Get("id"); id != "" && err == nil {
		entry.ID, entry.RecordedAt = id, entry.At // made on the phone, so that it is kept once
	}
	if err == nil {
		err = s.store(r.Context(), entry)
	}
	if err == nil {
		return nil
	}
	if faults := fault.Of(err); len(faults) > 0 {
		return faults
	}
	return fault.List{{What: verbatim(err)}}
}
