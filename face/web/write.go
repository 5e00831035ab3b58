package web

import (
	"net/http"
	"net/url"
	"slices"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/forecast"
	"aerosteep/job/hygiene"
	"aerosteep/job/mishap"
	"aerosteep/quantity"
	"aerosteep/record/holding"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// writing is a page on which one thing is written down: a form of the holding,
// or the part of it that one occasion needs.
type writing struct {
	Name     string // in the address
	form     string
	flags    []string // in their order; nil: all of the form
	place    string   // that it is reached from
	back     string
	cautions []string // said before the boxes
}

// writings are what can be written down beside readings, tests of the rig,
// counts and loads, which have pages of their own.
var writings = []writing{
	{"start", "start", nil, "batches", "/batches", []string{"hygiene.caution.dust", "hygiene.caution.kitchen"}},
	{"event", "event", nil, "batches", "/batches", nil},
	{"tank", "reading", []string{"batch", "do", "temp", "smell", "in", "note"}, "batches", "/run", []string{"web.stop.air"}},
	{"end", "end", nil, "batches", "/batches", []string{"web.write.end.more"}},
	{"cleaned", "cleaned", nil, "rig", "/rig", []string{"web.write.cleaned.never"}},
	{"water", "test", []string{"place", "read-from", "chlorine-from", "chlorine", "free-chlorine", "ecoli", "text"}, "ground", "/ground", []string{"web.write.water.more"}},
	{"harvest", "harvest", nil, "ground", "/ground", nil},
	{"lot", "lot", nil, "records", "/lots", []string{"hygiene.caution.dust", "web.write.lot.more"}},
	{"stock", "stock", []string{"ingredient", "received", "used", "left", "batch", "lot", "supplier", "label", "approved", "expires", "text"}, "records", "/records", nil},
	{"leaves", "stock", []string{"batch", "volume", "container", "receiver", "text"}, "records", "/records", []string{"web.write.leaves.more"}},
	{"incident", "incident", nil, "records", "/cards", []string{"web.write.incident.more"}},
	{"note", "note", []string{"text", "batch", "bed", "vessel", "recipe", "learn", "handover"}, "records", "/records", nil},
}

func findWriting(name string) (writing, bool) {
	for _, each := range writings {
		if each.Name == name {
			return each, true
		}
	}
	return writing{}, false
}

// writingsView lists what can be written down.
type writingsView struct{ Rows []writingRow }

type writingRow struct{ Link, Title, More string }

func (s *Site) writings(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "records")
	p.Back, p.BackTo = "/records", p.Say("web.place.records")
	p.Heading, p.Title = p.Say("web.write.title"), p.Say("web.write.title")
	view := &writingsView{}
	for _, each := range writings {
		view.Rows = append(view.Rows, writingRow{"/write/" + each.Name, p.Say("web.write." + each.Name), p.Say("web.write." + each.Name + ".about")})
	}
	p.View = view
	s.show(w, http.StatusOK, "writings", p)
}

// writeView is one form.
type writeView struct {
	Name, Lede, By, When string
	Cautions             []string
	Fields               []field
	Faults               []mend
	Kept                 bool
}

// write shows a form and keeps what was typed on it.
func (s *Site) write(w http.ResponseWriter, r *http.Request) {
	each, known := findWriting(r.PathValue("name"))
	if !known || s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, 1<<20)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return
	}
	p := s.page(w, r, each.place)
	p.Task, p.Back, p.BackTo = true, each.back, p.Say("web.place."+each.place)
	p.Heading, p.Title = p.Say("web.write."+each.Name), p.Say("web.write."+each.Name)
	device := s.device(w, r) // named at the first look, so that what is sent twice is one
	status, faults := http.StatusOK, fault.List(nil)
	if r.Method == http.MethodPost {
		made := holding.Made{At: s.now(), By: s.initials(w, r), Device: device}
		if faults = s.keepWriting(r, p, each, made); faults == nil {
			http.Redirect(w, r, s.afterWriting(r, each), http.StatusSeeOther)
			return
		}
		status = http.StatusUnprocessableEntity
	}
	p.View = s.writeView(p, r, each, faults)
	s.show(w, status, "write", p)
}

// afterWriting is where a kept form leads: a batch in a vessel that nobody is
// known to have cleaned asks who did, when, and with what.
func (s *Site) afterWriting(r *http.Request, each writing) string {
	next := "/write/" + each.Name + "?kept=1"
	b, known := s.Holding.Batch(strings.TrimSpace(r.PostForm.Get("batch")))
	if known && strings.HasPrefix(r.PostForm.Get("event"), string(forecast.FoundOff)) {
		return "/batches/" + url.PathEscape(b.Name) // where the ways on are told
	}
	if each.form != "start" || !known {
		return next
	}
	if cleaned, err := s.Holding.CleanedFor(r.Context(), b); err != nil || cleaned != nil {
		return next
	}
	return "/write/cleaned?kept=1&vessel=" + url.QueryEscape(b.Vessel)
}

// whenTyped is how a browser sends a moment of the wall's clock.
const whenTyped = "2006-01-02T15:04"

// keepWriting stores the form; nil says that it is on disk.
func (s *Site) keepWriting(r *http.Request, p *page, each writing, made holding.Made) fault.List {
	if typed := r.PostForm.Get("when"); typed != "" {
		at, err := time.ParseInLocation(whenTyped, typed, made.At.Location())
		if err != nil {
			return fault.List{{Field: "when", Given: typed, What: wording.Say("web.write.when.wrong")}}
		}
		made.At = at
	}
	if wrong := s.needsReason(r, p, each); wrong != nil {
		return fault.List{wrong}
	}
	return s.keepForm(r, p, each.form, worksheet.Values{}, made)
}

// needsReason asks why a dose of molasses over the ceiling is kept.
func (s *Site) needsReason(r *http.Request, p *page, each writing) *fault.Fault {
	file := s.held()
	if each.form != "start" || file == nil || strings.TrimSpace(r.PostForm.Get("because")) != "" {
		return nil
	}
	volume, err := quantity.ParseVolume(boxText(p, "start", "volume", r))
	if err != nil {
		return nil // the form says what is wrong with it
	}
	dose, because, over := holding.OverCeiling(file, r.PostForm.Get("recipe"), volume)
	if !over || because != "" {
		return nil
	}
	return &fault.Fault{Field: "because", What: wording.Say("web.write.ceiling", wording.Places{"dose": dose, "ceiling": file.Limits.Molasses})}
}

func (s *Site) writeView(p *page, r *http.Request, each writing, faults fault.List) *writeView {
	form, _ := holding.FormOf(each.form)
	view := &writeView{Name: each.Name, Lede: p.Say("web.write." + each.Name + ".about"), By: kept(r, "by"), When: r.Form.Get("when"), Kept: r.Form.Has("kept")}
	for _, key := range each.cautions {
		view.Cautions = append(view.Cautions, p.Say(key))
	}
	flags := each.flags
	if flags == nil {
		flags = form.Sheet.Flags()
	}
	for _, flag := range flags {
		view.Fields = append(view.Fields, s.writeField(p, r, form, flag, faults))
	}
	for _, wrong := range faults {
		view.Faults = append(view.Faults, mend{wrong.Field, faultText(p, form.Sheet, wrong)})
	}
	return view
}

// writeField is one box; what the holding knows by name is chosen, not typed.
func (s *Site) writeField(p *page, r *http.Request, form *holding.Form, flag string, faults fault.List) field {
	in, _ := form.Sheet.Input(flag)
	f := field{
		Name: flag, Label: in.Label(form.Sheet.Name).For(p.Reader), Value: strings.TrimSpace(r.Form.Get(flag)),
		Kind: "text", Unit: boxUnit(in, p), Decimal: in.Kind.Numeric(), Required: in.Required,
	}
	if flag == "in" && f.Value == "" {
		f.Value = "tank" // the page of the vessel has its own keys
	}
	if in.Kind.Numeric() {
		f.Hint = in.Allowed().For(p.Reader)
	}
	f.shape(in, p)
	s.askOfLot(p, form, &f)
	if names := s.namesFor(form, flag); len(names) > 0 {
		f.Kind = "choice"
		for _, name := range names {
			f.Choices = append(f.Choices, option{name, s.nameSaid(p, flag, name), name == f.Value})
		}
	}
	for _, wrong := range faults {
		if wrong.Field == flag {
			f.Error = faultText(p, form.Sheet, wrong)
		}
	}
	return f
}

// askOfLot asks for a fact of a lot in a grower's words.
func (s *Site) askOfLot(p *page, form *holding.Form, f *field) {
	fact, known := hygiene.FactNamed(strings.ReplaceAll(f.Name, "-", "_"))
	if form.Word != "lot" || !known {
		return
	}
	f.Label = p.Say("hygiene.question." + fact.String())
	for i := range f.Choices {
		f.Choices[i].Label = answerWord(p, fact, f.Choices[i].Value)
	}
}

// namesFor are what a flag may name: of the holding, or of the cards.
func (s *Site) namesFor(form *holding.Form, flag string) []string {
	if form.Word == "end" && flag == "cause" {
		return mishap.Causes()
	}
	if form.Word == "start" && flag == "batch" {
		return nil // a new name
	}
	names := s.Holding.Names(flag)
	if flag == "batch" {
		living := slices.DeleteFunc(slices.Clone(names), func(name string) bool {
			b, known := s.Holding.Batch(name)
			return !known || !b.Living()
		})
		if form.Word != "stock" && len(living) > 0 {
			return living
		}
	}
	return names
}

func (s *Site) nameSaid(p *page, flag, name string) string {
	if card, known := mishap.Find(name); flag == "cause" && known {
		return p.Text(card.Title())
	}
	return name
}
