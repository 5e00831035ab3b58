package web

import (
	"net/http"
	"strings"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
)

// beginView is the first page: five questions that end in a plan.
type beginView struct {
	Questions []beginQuestion
	Faults    []mend
}

type beginQuestion struct {
	Title  string
	Fields []field
}

// beginBox is one box of the first page: the table and key that it fills.
type beginBox struct{ table, key, usual string }

// beginQuestions are the five: what there is, where, what water, how it is said,
// and what is wanted on what. The names are usual ones, to be changed later.
var beginQuestions = []struct {
	name  string
	boxes []beginBox
}{
	{"have", []beginBox{{"vessel", "full", "5 gal"}, {"pump", "label_flow", "12 L/min"}, {"pump", "bubbles", "medium"}, {"holding", "oxygen_meter", "false"}}},
	{"where", []beginBox{{"site", "latitude", ""}, {"site", "longitude", ""}, {"site", "altitude", ""}, {"holding", "zone", ""}}},
	{"water", []beginBox{{"water", "source", "municipal"}, {"water", "temperature", ""}}},
	{"said", []beginBox{{"holding", "units", "us"}, {"holding", "language", "en"}, {"holding", "name", ""}}},
	{"want", []beginBox{{"bed", "name", ""}, {"bed", "area", ""}, {"bed", "crop", ""}, {"bed", "crop_use", ""}, {"want", "method", "drench"}, {"want", "tea_rate", "10 gal/1000 sq ft"}, {"want", "at", ""}}},
}

// firstSetup asks the five questions and loads what they come to.
func (s *Site) firstSetup(w http.ResponseWriter, r *http.Request) {
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, 1<<18)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return
	}
	p := s.page(w, r, "today")
	p.Task, p.Back, p.BackTo = true, "/", p.Say("web.place.today")
	p.Heading, p.Title = p.Say("web.begin.title"), p.Say("web.begin.title")
	view := &beginView{}
	p.View = view
	status, faults := http.StatusOK, fault.List(nil)
	if r.Method == http.MethodPost {
		made := holding.Made{At: s.now(), By: s.initials(w, r), Device: s.device(w, r)}
		err := s.Holding.Begin(r.Context(), beginParts(p, r), made)
		if err == nil {
			http.Redirect(w, r, "/plan", http.StatusSeeOther)
			return
		}
		if faults = fault.Of(err); len(faults) == 0 {
			faults = fault.List{{What: verbatim(err)}}
		}
		status = http.StatusUnprocessableEntity
	}
	view.fill(s, p, r, faults)
	s.show(w, status, "begin", p)
}

func (v *beginView) fill(s *Site, p *page, r *http.Request, faults fault.List) {
	keys := map[string]jobfile.Key{}
	for _, k := range jobfile.Keys() {
		keys[k.Table+"."+k.Name] = k
	}
	for _, q := range beginQuestions {
		question := beginQuestion{Title: p.Say("web.begin." + q.name)}
		for _, b := range q.boxes {
			value := r.PostForm.Get(b.table + "." + b.key)
			if r.Method == http.MethodGet {
				value = b.usual
			}
			f := s.setupField(p, keys[b.table+"."+b.key], value, faults)
			f.Name = b.table + "." + b.key
			if f.Name == "want.at" {
				f.Hint = p.Say("web.begin.at")
			}
			question.Fields = append(question.Fields, f)
		}
		v.Questions = append(v.Questions, question)
	}
	for _, wrong := range faults {
		v.Faults = append(v.Faults, mend{wrong.Field, p.wrong(wrong)})
	}
}

// beginParts are the tables that the answers fill.
func beginParts(p *page, r *http.Request) []jobfile.Part {
	typed := map[string]map[string]string{}
	for _, q := range beginQuestions {
		for _, b := range q.boxes {
			if typed[b.table] == nil {
				typed[b.table] = map[string]string{}
			}
			typed[b.table][b.key] = strings.TrimSpace(r.PostForm.Get(b.table + "." + b.key))
		}
	}
	typed["vessel"]["name"], typed["site"]["name"] = p.Say("web.begin.vessel"), p.Say("web.begin.site")
	if typed["pump"]["label_flow"] != "" {
		typed["pump"]["name"] = p.Say("web.begin.pump")
		typed["vessel"]["pump"] = typed["pump"]["name"]
	} else {
		delete(typed, "pump")
	}
	typed["bed"]["site"] = typed["site"]["name"]
	typed["want"]["bed"] = typed["bed"]["name"]
	if at := typed["want"]["at"]; len(at) == len(whenTyped) {
		typed["want"]["at"] = at + ":00" // as a browser sends it
	}
	names, _ := jobfile.Tables()
	var parts []jobfile.Part
	for _, kind := range names {
		if typed[kind] != nil {
			parts = append(parts, part(kind, typed[kind]))
		}
	}
	return parts
}
