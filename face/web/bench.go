package web

import (
	"net/http"
	"slices"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// benchView is the counting bench: a large key for each group, one field of
// view after the other.
type benchView struct {
	Batch     string
	Tally     string
	Field     int
	Keys      []benchKey
	Estimates []estimate
	Scope     []field
	SetUp     bool // the microscope is
	Looked    []option
	Faults    []mend
	By        string
	Said      string // what the last key did, for who does not see it
}

// benchKey is one group's key with what was counted so far.
type benchKey struct {
	Key, Name, More string
	Here, All       int
}

// bench shows the counting bench and takes what is pressed on it. Without
// script every key is a post; with it the page counts by itself.
func (s *Site) bench(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	if _, known := s.Holding.Batch(name); !known {
		s.nothingHere(w, r)
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, 1<<20)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return
	}
	p := s.page(w, r, "batches")
	p.Task, p.Back, p.BackTo = true, "/batches/"+name, name
	p.Heading, p.Title, p.Under = p.Say("web.bench.title"), p.Say("web.bench.title")+", "+name, name
	device := s.device(w, r) // named at the first look, so that a count sent twice is one
	scope := microscopeOf(w, r, p)
	pressed := r.PostForm.Get("press")
	seen := readTally(r.PostForm.Get("tally")).press(pressed)
	view := &benchView{Batch: name, By: kept(r, "by"), SetUp: scope.ready(), Scope: scope.fields(p)}
	looked := lookedFor(r)
	status := http.StatusOK
	if pressed == saveKey {
		given, faults := p.counted(seen.finished(), scope, looked)
		if faults == nil {
			given["batch"] = []string{name}
			faults = s.keepCount(r, p, given, holding.Made{At: s.now(), By: s.initials(w, r), Device: device})
		}
		if faults == nil {
			http.Redirect(w, r, "/batches/"+name+"#kept", http.StatusSeeOther)
			return
		}
		status = http.StatusUnprocessableEntity
		view.refuse(p, faults)
	}
	view.fill(p, seen, scope, looked, pressed)
	p.View = view
	s.show(w, status, "bench", p)
}

// lookedFor are the groups that this slide is searched for: a group that
// nobody looks for is not a group of which none was seen.
func lookedFor(r *http.Request) []group {
	if !r.PostForm.Has("tally") {
		return groups
	}
	keys := strings.Join(r.PostForm["look"], "") // a form has one each, the queue all in one
	var looked []group
	for _, g := range groups {
		if strings.Contains(keys, g.key) {
			looked = append(looked, g)
		}
	}
	return looked
}

func (v *benchView) fill(p *page, seen tally, scope microscope, looked []group, pressed string) {
	v.Tally, v.Field = string(seen), seen.field()
	for _, g := range groups {
		chosen := slices.Contains(looked, g)
		v.Looked = append(v.Looked, option{g.key, p.Say("web.bench.group." + g.name), chosen})
		if !chosen {
			continue
		}
		key := benchKey{Key: g.key, Name: p.Say("web.bench.group." + g.name), Here: seen.here(g), All: sum(seen.counts(g)) + seen.here(g)}
		if g.sheet == "hyphae" {
			key.More = p.Say("web.bench.strokes")
		}
		v.Keys = append(v.Keys, key)
		v.Estimates = append(v.Estimates, p.estimate(g, seen, scope))
		if pressed == g.key {
			v.Said = key.Name + " " + p.Say("web.bench.count", "n", key.Here)
		}
	}
	if v.Said == "" {
		v.Said = p.Say("web.bench.field", "n", v.Field)
	}
}

func (v *benchView) refuse(p *page, faults fault.List) {
	for _, wrong := range faults {
		text := wrong.What.For(p.Reader)
		if more := wrong.Advice.For(p.Reader); more != "" {
			text += ". " + more
		}
		v.Faults = append(v.Faults, mend{wrong.Field, text})
	}
}

// keepCount stores the counts, and the numbers that the worksheets make of
// them, as one entry of the batch; nil says that it is on disk.
func (s *Site) keepCount(r *http.Request, p *page, given worksheet.Values, made holding.Made) fault.List {
	form, _ := holding.FormOf("count")
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
	if err != nil {
		return faultsOf(err)
	}
	return nil
}

// counted is what the record keeps of a slide: the counts of each field, and
// what the worksheets make of them.
func (p *page) counted(seen tally, scope microscope, looked []group) (worksheet.Values, fault.List) {
	if seen.field() < 2 || len(looked) == 0 {
		return nil, fault.List{{Field: "tally", What: wording.Say("web.bench.nothing"), Advice: wording.Say("web.bench.nothing.advice")}}
	}
	given := worksheet.Values{}
	var each []string
	for _, g := range looked {
		each = append(each, g.name+" "+listed(seen.counts(g)))
		if !scope.ready() || g.sheet == "hyphae" && scope["grid"] == "" {
			continue
		}
		result, err := ask(g.sheet, g.values(seen, scope), p)
		if err != nil {
			return nil, faultsOf(err)
		}
		if n, known := middle(result, p); known {
			given[g.name] = []string{n}
		}
	}
	given["tally"] = []string{strings.Join(each, "; ")}
	if said := scope.said(); said != "" {
		given["slide"] = []string{said}
	}
	return given, nil
}

func faultsOf(err error) fault.List {
	if faults := fault.Of(err); len(faults) > 0 {
		return faults
	}
	return fault.List{{What: verbatim(err)}}
}
