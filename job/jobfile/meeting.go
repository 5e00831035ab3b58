package jobfile

import (
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/hygiene"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Meeting is a bed and a batch that can come together, with what the file says
// of them.
type Meeting struct {
	Bed     string
	Batch   *string // nil where the file has none
	Facts   hygiene.Facts
	Derived []hygiene.Derived
}

// Meetings are all pairs of a bed and a batch, in the order of the file, unless
// the bed names its batches. Of each fact the nearest word wins: on the bed, on
// the batch, in [hygiene]; a nearer "unknown" hides a farther word. What stands
// nowhere is taken from what the file says anyway.
func (f *File) Meetings() ([]Meeting, fault.List) {
	m := &meetings{file: f, origins: hygiene.OriginsOf(f.Larder)}
	for i := range f.Beds {
		bed := &f.Beds[i]
		if len(f.Batches) == 0 {
			m.meet(bed, nil)
		}
		for j := range f.Batches {
			if len(bed.Batches) == 0 || contains(bed.Batches, f.Batches[j].Name) {
				m.meet(bed, &f.Batches[j])
			}
		}
	}
	if len(m.problems) > 0 {
		return nil, m.problems
	}
	return m.all, nil
}

// Meeting is one bed with one batch ("" for none) whether the bed names that
// batch or not: what was put on was put on.
func (f *File) Meeting(bed, batch string) (Meeting, error) {
	m := &meetings{file: f, origins: hygiene.OriginsOf(f.Larder)}
	var with *Batch
	for i := range f.Batches {
		if f.Batches[i].Name == batch {
			with = &f.Batches[i]
		}
	}
	for i := range f.Beds {
		if f.Beds[i].Name == bed {
			m.meet(&f.Beds[i], with)
		}
	}
	if err := m.problems.OrNil(); err != nil || len(m.all) == 0 {
		return Meeting{Bed: bed}, err
	}
	return m.all[0], nil
}

type meetings struct {
	file     *File
	origins  hygiene.Origins
	all      []Meeting
	problems fault.List
}

func (m *meetings) meet(bed *Bed, batch *Batch) {
	words := hygiene.Words{}
	layers := []Facts{m.file.Hygiene, nil, bed.Facts}
	met := Meeting{Bed: bed.Name}
	if batch != nil {
		layers[1] = batch.Facts
		met.Batch = &batch.Name
	}
	for _, layer := range layers { // the farthest first
		for name, word := range layer {
			words[name] = word
		}
	}
	for _, d := range m.derivable(bed, batch) {
		if _, stated := words[d.Fact.String()]; !stated && d.Value != "" {
			words[d.Fact.String()] = d.Value
			met.Derived = append(met.Derived, d)
		}
	}
	facts, err := hygiene.Read(words, m.origins)
	for _, wrong := range fault.Of(err) {
		m.wrong(wrong, bed, batch)
	}
	met.Facts = facts
	m.all = append(m.all, met)
}

// derivable are the facts that follow from the other tables, in the order of
// asking.
func (m *meetings) derivable(bed *Bed, batch *Batch) []hygiene.Derived {
	want := m.onlyWant(bed.Name)
	derived := []hygiene.Derived{
		{Fact: hygiene.Additives, Value: m.additives(want, batch), From: "[[recipe]] items"},
		{Fact: hygiene.Held, Value: held(want, batch), From: "[[want]] at, [[batch]] started_at"},
		{Fact: hygiene.Water, Value: m.file.Water.Source, From: "[water] source"},
	}
	if want != nil {
		derived = append(derived,
			hygiene.Derived{Fact: hygiene.Method, Value: want.Method, From: "[[want]] method"},
			hygiene.Derived{Fact: hygiene.Applied, Value: m.localDate(want.At), From: "[[want]] at"})
	}
	return derived
}

// onlyWant is the bed's want, if it has just one.
func (m *meetings) onlyWant(bed string) *Want {
	var only *Want
	for i := range m.file.Wants {
		if m.file.Wants[i].Bed != bed {
			continue
		}
		if only != nil {
			return nil
		}
		only = &m.file.Wants[i]
	}
	return only
}

// localDate is the day of a time at the holding; a time with its own offset is
// read in that where the file names no zone.
func (m *meetings) localDate(at *time.Time) string {
	if at == nil {
		return ""
	}
	local := *at
	if m.file.Holding.ZoneGiven {
		local = local.In(m.file.Holding.Zone)
	}
	return local.Format(time.DateOnly)
}

// held is the time from the start of a batch to the wanted hour. An hour before
// the start, or more than 30 days after it, is not this batch's hour.
func held(want *Want, batch *Batch) string {
	if want == nil || want.At == nil || batch == nil || batch.StartedAt == nil {
		return ""
	}
	span := quantity.Seconds(want.At.Sub(*batch.StartedAt).Seconds())
	if span < 0 || span.Days() > 30 {
		return ""
	}
	return wording.Number(span.Hours(), 6, wording.Reader{Language: wording.English}) + " h"
}

// additives are the items of the batch's recipe, else of the want's, that are
// not compost.
func (m *meetings) additives(want *Want, batch *Batch) string {
	name := ""
	if want != nil {
		name = want.Recipe
	}
	if batch != nil && batch.Recipe != "" {
		name = batch.Recipe
	}
	r, known := m.file.Recipe(name)
	if name == "" || !known {
		return ""
	}
	var names []string
	for _, item := range r.Items {
		if !item.Ingredient.Compost {
			names = append(names, item.Ingredient.Name)
		}
	}
	if len(names) == 0 {
		return "none"
	}
	return strings.Join(names, "; ")
}

// wrong notes a fault with the line on which the fact stands, once.
func (m *meetings) wrong(wrong *fault.Fault, bed *Bed, batch *Batch) {
	at := m.standing(wrong.Field, bed, batch)
	wrong.Line, wrong.Field = at.lineOf(wrong.Field), at.form.name+"."+wrong.Field
	for _, known := range m.problems {
		if known.Line == wrong.Line && known.Field == wrong.Field && known.Given == wrong.Given {
			return
		}
	}
	m.problems = append(m.problems, wrong)
}

// standing is the table a fact stands in for a bed and a batch: the nearest one
// that has it, else the bed.
func (m *meetings) standing(fact string, bed *Bed, batch *Batch) *record {
	var bedRecord *record
	for _, r := range m.file.records["bed"] {
		if r.name() == bed.Name {
			bedRecord = r
		}
	}
	if bedRecord.has(fact) {
		return bedRecord
	}
	for _, r := range m.file.records["batch"] {
		if batch != nil && r.name() == batch.Name && r.has(fact) {
			return r
		}
	}
	for _, r := range m.file.records["hygiene"] {
		if r.has(fact) {
			return r
		}
	}
	return bedRecord
}
