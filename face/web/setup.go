package web

import (
	"net/http"
	"net/url"
	"slices"
	"strings"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/wording"
)

// setupView lists the set-up, table by table.
type setupView struct{ Kinds []setupKind }

type setupKind struct {
	Title, Add string
	Rows       []setupRow
}

type setupRow struct{ Name, Link string }

// setup lists what is set up, with a way to change each and to add one.
func (s *Site) setup(w http.ResponseWriter, r *http.Request) {
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	p := s.page(w, r, "rig")
	p.Back, p.BackTo = "/rig", p.Say("web.place.rig")
	p.Heading, p.Title = p.Say("web.setup.title"), p.Say("web.setup.title")
	view := &setupView{}
	names, many := jobfile.Tables()
	for _, kind := range names {
		k := setupKind{Title: p.Say("web.setup.table." + kind)}
		for _, t := range s.Holding.Tables(kind) {
			row := setupRow{t.Name, "/setup/" + kind + "?subject=" + url.QueryEscape(t.Subject)}
			if row.Name == "" {
				row.Name = k.Title
			}
			k.Rows = append(k.Rows, row)
		}
		if many[kind] || len(k.Rows) == 0 {
			k.Add = "/setup/" + kind
		}
		view.Kinds = append(view.Kinds, k)
	}
	p.View = view
	s.show(w, http.StatusOK, "setup", p)
}

// setupTableView is one table in boxes.
type setupTableView struct {
	Kind, Subject, Name string
	Fields              []field
	Faults              []mend
	By                  string
}

// setupTable shows one table in boxes and keeps what was typed as an entry.
func (s *Site) setupTable(w http.ResponseWriter, r *http.Request) {
	kind := r.PathValue("table")
	names, _ := jobfile.Tables()
	if s.Holding == nil || !slices.Contains(names, kind) {
		s.nothingHere(w, r)
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, 1<<20)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return
	}
	p := s.page(w, r, "rig")
	p.Task, p.Back, p.BackTo = true, "/setup", p.Say("web.setup.title")
	subject := r.Form.Get("subject")
	standing, known := s.standing(kind, subject)
	if subject != "" && !known {
		s.nothingHere(w, r)
		return
	}
	p.Heading = p.Say("web.setup.table." + kind)
	p.Title = p.Heading
	view := &setupTableView{Kind: kind, Subject: subject, Name: standing.Name, By: kept(r, "by")}
	p.View = view
	typed, status := jobfile.Typed(standing.Body), http.StatusOK
	var faults fault.List
	if r.Method == http.MethodPost {
		typed = posted(kind, r.PostForm)
		if faults = s.keepTable(w, r, kind, subject, typed); faults == nil {
			http.Redirect(w, r, "/setup", http.StatusSeeOther)
			return
		}
		status = http.StatusUnprocessableEntity
	}
	view.fill(s, p, typed, faults)
	s.show(w, status, "setuptable", p)
}

func (s *Site) standing(kind, subject string) (holding.Table, bool) {
	for _, t := range s.Holding.Tables(kind) {
		if t.Subject == subject {
			return t, true
		}
	}
	return holding.Table{}, false
}

// posted are the boxes of a table as they were sent.
func posted(kind string, form url.Values) map[string]string {
	typed := map[string]string{}
	for _, key := range jobfile.Keys() {
		if key.Table == kind {
			typed[key.Name] = strings.TrimSpace(form.Get(key.Name))
		}
	}
	return typed
}

// keepTable stores the table; nil says that it is on disk.
func (s *Site) keepTable(w http.ResponseWriter, r *http.Request, kind, subject string, typed map[string]string) fault.List {
	made := holding.Made{At: s.now(), By: s.initials(w, r), Device: s.device(w, r)}
	standing, _ := s.standing(kind, subject)
	body := jobfile.FromTyped(kind, typed, standing.Body)
	if r.PostForm.Get("do") == "remove" {
		body = nil
	}
	entry, err := s.Holding.Edit(kind, subject, body, made)
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

func (v *setupTableView) fill(s *Site, p *page, typed map[string]string, faults fault.List) {
	for _, key := range jobfile.Keys() {
		if key.Table == v.Kind {
			v.Fields = append(v.Fields, s.setupField(p, key, typed[key.Name], faults))
		}
	}
	for _, wrong := range faults {
		_, name, _ := strings.Cut(wrong.Field, ".")
		v.Faults = append(v.Faults, mend{name, p.wrong(wrong)})
	}
}

func (s *Site) setupField(p *page, key jobfile.Key, value string, faults fault.List) field {
	f := field{Name: key.Name, Label: p.Text(key.Meaning), Value: value, Kind: "text", Required: key.Must, Hint: p.Text(key.Takes)}
	if key.Standard != "" {
		f.Hint += ". " + p.Text(wording.Say("jobfile.default", wording.Places{"default": key.Standard}))
	}
	choices := key.Choices
	switch {
	case key.Kind == "yes-no":
		choices = []string{"true", "false"}
	case key.Refers != "":
		choices = s.setupNames(key.Refers)
	}
	if key.Kind == "tables" {
		f.Kind, f.Hint = "file", p.Say("web.setup.items")
	}
	if len(choices) > 0 && key.Kind != "names" {
		f.Kind, f.Hint = "choice", ""
		for _, c := range choices {
			f.Choices = append(f.Choices, option{c, choiceWord(p, key.Name, c), c == value})
		}
	}
	for _, wrong := range faults {
		if wrong.Field == key.Table+"."+key.Name || strings.HasPrefix(wrong.Field, key.Table+"."+key.Name+".") {
			f.Error = p.wrong(wrong)
		}
	}
	return f
}

// setupNames are the names that a key may refer to.
func (s *Site) setupNames(kind string) []string {
	if kind == "recipe" {
		return s.Holding.Names("recipe")
	}
	var names []string
	for _, t := range s.Holding.Tables(kind) {
		names = append(names, t.Name)
	}
	return names
}

// part is a table of a first set-up.
func part(kind string, typed map[string]string) jobfile.Part {
	return jobfile.Part{Table: kind, Name: typed["name"], Body: jobfile.FromTyped(kind, typed, nil)}
}
