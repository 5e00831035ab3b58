package holding

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/job/recipe"
	"aerosteep/record/journal"
	"aerosteep/science/water"
	"aerosteep/wording"
	ws "aerosteep/worksheet"
)

// Made says where and by whom an entry is made.
type Made struct {
	At     time.Time
	By     string // initials
	Device string // "": the data folder's own
}

// Compose makes an entry of what a person filled in, checked against what the
// holding knows: a batch, bed or vessel must be one of its own.
func (h *Holding) Compose(f *Form, given ws.Values, made Made) (journal.Entry, error) {
	body, subject, err := h.fill(f, given, nil)
	if err != nil {
		return journal.Entry{}, err
	}
	if err := h.mayHappen(f.Kind, subject); err != nil {
		return journal.Entry{}, err
	}
	return h.entry(f.Kind, subject, body, made)
}

// Correct makes an entry that replaces another: what was filled in takes the
// place of what that one said, and the rest stays.
func (h *Holding) Correct(old journal.Kept, given ws.Values, made Made) (journal.Entry, error) {
	f, known := FormOf(old.Kind)
	if !known {
		return journal.Entry{}, fault.New("id", old.ID, wording.Say("holding.correct.kind", wording.Places{"kind": old.Kind}), wording.Text{}, wording.Say("holding.correct.kind.advice"))
	}
	if old.ReplacedBy != nil {
		return journal.Entry{}, fault.New("id", old.ID, wording.Say("holding.correct.replaced", wording.Places{"by": *old.ReplacedBy}), wording.Text{}, wording.Say("holding.correct.replaced.advice", wording.Places{"by": *old.ReplacedBy}))
	}
	said := map[string]any{}
	_ = json.Unmarshal(old.Body, &said) // a stored body that is no object says nothing
	if said == nil {
		said = map[string]any{}
	}
	what, name := old.About()
	if _, asked := given[what]; !asked && name != "" {
		given[what] = []string{name}
	}
	body, subject, err := h.fill(f, withoutNeed(f, given, said), said)
	if err != nil {
		return journal.Entry{}, err
	}
	e, err := h.entry(f.Kind, subject, body, made)
	e.Replaces = &old.ID
	return e, err
}

// withoutNeed gives required texts that the old entry has, so that a
// correction need not repeat them.
func withoutNeed(f *Form, given ws.Values, said map[string]any) ws.Values {
	for _, each := range f.fields {
		old, isText := said[each.key].(string)
		if _, asked := given[each.input.Flag]; each.input.Required && !asked && isText {
			given[each.input.Flag] = []string{old}
		}
	}
	return given
}

// fill reads the fields into a body, over what was said before, and finds the
// subject.
func (h *Holding) fill(f *Form, given ws.Values, said map[string]any) (body map[string]any, subject string, err error) {
	form, err := ws.Read(f.relaxed(said), given, nil)
	if err != nil {
		return nil, "", err
	}
	body = map[string]any{}
	for key, value := range said {
		body[key] = value
	}
	for _, each := range f.fields {
		if form.Has(each.input.Flag) && each.key != "" {
			body[each.key] = each.value(form)
		}
	}
	if f.needs != "" && f.empty(body) {
		return nil, "", fault.New("log "+f.Word, "", wording.Say(f.needs), wording.Say("worksheet.allowed.choices", wording.Places{"choices": strings.Join(f.Sheet.Flags(), ", ")}), wording.Text{})
	}
	if err := checkEvent(form); err != nil {
		return nil, "", err
	}
	if err := checkTest(body); err != nil {
		return nil, "", err
	}
	if err := h.checkNames(f, form); err != nil {
		return nil, "", err
	}
	subject = f.subject(form)
	if what, _, _ := strings.Cut(subject, ":"); what != "" {
		delete(body, what) // it is the subject: not said twice
	}
	return body, subject, nil
}

// aboutOnly are keys of a test that say of what, and by what, but no result.
var aboutOnly = []string{"place", "read_from", "vessel", "pump", "meter", "bed", "batch", "applicator"}

// empty tells whether nothing was said that is worth keeping.
func (f *Form) empty(body map[string]any) bool {
	for key := range body {
		if f.Word != "test" || !slices.Contains(aboutOnly, key) {
			return false
		}
	}
	return true
}

// checkEvent refuses an event that a forecast would not understand.
func checkEvent(form *ws.Form) error {
	if _, asked := form.Sheet.Input("event"); !asked || !form.Has("event") {
		return nil
	}
	if _, wrong := forecast.ParseEvent(form.Text("event")); wrong != nil {
		wrong.Field = "event"
		return wrong
	}
	return nil
}

// relaxed is the form of a correction: what the old entry says need not be
// given again.
func (f *Form) relaxed(said map[string]any) *ws.Sheet {
	if said == nil {
		return f.Sheet
	}
	sheet := *f.Sheet
	sheet.Inputs = slices.Clone(sheet.Inputs)
	for i := range sheet.Inputs {
		sheet.Inputs[i].Required = false
	}
	return &sheet
}

func (f field) value(form *ws.Form) any {
	if !f.input.Kind.Numeric() {
		return form.Text(f.input.Flag)
	}
	v := form.Number(f.input.Flag)
	if f.times != 0 {
		v *= f.times
	}
	return tidy(v)
}

// subject is the first name that was given of those that may be the subject.
func (f *Form) subject(form *ws.Form) string {
	for _, flag := range f.About {
		if form.Has(flag) {
			return flag + ":" + form.Text(flag)
		}
	}
	return ""
}

// checkNames refuses a name that the holding does not know, with the nearest
// that it does. A holding in which nothing of the kind was set up takes any
// name, save that of a batch, which starts with an entry of its own.
func (h *Holding) checkNames(f *Form, form *ws.Form) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	for _, flag := range nameFlags {
		if _, asked := f.Sheet.Input(flag); !asked || !form.Has(flag) || f.Kind == journal.Start && flag == "batch" {
			continue
		}
		known := h.state.names(flag)
		if len(known) == 0 && flag != "batch" {
			continue
		}
		if flag == "recipe" || flag == "ingredient" {
			known = append(known, builtIn(flag)...)
		}
		if name := form.Text(flag); !slices.Contains(known, name) {
			return unknownName(flag, name, known)
		}
	}
	return nil
}

// builtIn are names that need no table: recipes, or ingredients and water
// treatments, of which stock is kept too.
func builtIn(flag string) []string {
	if flag == "ingredient" {
		return append(recipe.Library().Names(), string(water.AscorbicAcid), string(water.SodiumAscorbate), string(water.SodiumThiosulfate))
	}
	var names []string
	for _, r := range recipe.Starters() {
		names = append(names, r.Name)
	}
	return names
}

func unknownName(flag, name string, known []string) error {
	wrong := fault.New(flag, name, wording.Say("holding.unknown."+flag, wording.Places{"name": name}), wording.Text{}, wording.Say("holding.unknown.advice"))
	if len(known) > 0 {
		wrong.Allowed = wording.Say("worksheet.allowed.choices", wording.Places{"choices": strings.Join(known[:min(len(known), 12)], ", ")})
	}
	if wrong.Nearest = fault.Nearest(name, known); wrong.Nearest != "" {
		wrong.Advice = wording.Say("worksheet.nearest", wording.Places{"nearest": wrong.Nearest})
	}
	return wrong
}

// mayHappen refuses a second start or end of a batch: it is a mistake in the
// name more often than not.
func (h *Holding) mayHappen(kind, subject string) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	b, known := h.state.batch(subject)
	switch {
	case kind == journal.Start && known && b.StartedAt != nil:
		return fault.New("batch", b.Name, wording.Say("holding.started-already", wording.Places{"name": b.Name, "at": b.StartedAt.Format(time.RFC3339)}), wording.Text{}, wording.Say("holding.started-already.advice"))
	case kind == journal.End && b.Ended != nil:
		return fault.New("batch", b.Name, wording.Say("holding.ended-already", wording.Places{"name": b.Name, "at": b.Ended.At.Format(time.RFC3339)}), wording.Text{}, wording.Say("holding.ended-already.advice"))
	}
	return nil
}

func (h *Holding) entry(kind, subject string, body any, made Made) (journal.Entry, error) {
	id, err := h.journal.NewID()
	if err != nil {
		return journal.Entry{}, err
	}
	text, raw := body.(json.RawMessage)
	if !raw {
		if text, err = json.Marshal(body); err != nil {
			return journal.Entry{}, err
		}
	}
	if made.Device == "" {
		made.Device = h.journal.Device()
	}
	return journal.Entry{
		ID: id, Kind: kind, At: made.At.Format(time.RFC3339), By: made.By, Device: made.Device, Subject: subject, Body: text,
		RecordedAt: h.journal.Now().UTC().Format("2006-01-02T15:04:05.000Z07:00"),
	}, nil
}

// Load makes the entries that bring the holding to what a job file says, and
// stores them all or none. It answers how many there were.
func (h *Holding) Load(ctx context.Context, file *jobfile.File, made Made) (int, error) {
	changes, err := h.changes(file)
	if err != nil || len(changes) == 0 {
		return 0, err
	}
	entries := make([]journal.Entry, len(changes))
	for i, c := range changes {
		if entries[i], err = h.entry(journal.Setup, c.subject, c.body, made); err != nil {
			return 0, err
		}
		if err := entries[i].Check(); err != nil {
			return 0, err
		}
	}
	results, err := h.Store(ctx, entries...)
	if err != nil {
		return 0, err
	}
	for _, r := range results {
		if r.Outcome == journal.Refused {
			return 0, r.Why
		}
	}
	return len(changes), nil
}
