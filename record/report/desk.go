package report

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"time"

	"aerosteep/fault"
	"aerosteep/job/ground"
	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// Desk is where papers are made from a holding, at a moment that is handed in.
type Desk struct {
	holding *holding.Holding
	now     time.Time // in the holding's zone
	file    *jobfile.File
}

// NewDesk sits down at a holding. A set-up that cannot be read as a job file
// leaves beds and sites out; what was written down prints all the same.
func NewDesk(h *holding.Holding, now time.Time) *Desk {
	d := &Desk{holding: h, now: now.In(h.Zone(now.Location())), file: &jobfile.File{}}
	if file, err := h.File(jobfile.Whole); err == nil {
		d.file = file
	}
	return d
}

// Make makes a paper by kind and name: a batch's name, an entry's id, a lot, a
// day, a year.
func (d *Desk) Make(ctx context.Context, kind, name string) (*Paper, error) {
	if kind == "folder" {
		return d.folder(ctx, name) // which makes others
	}
	makers := map[string]func(context.Context, string) (*Paper, error){
		"brew": d.brew, "label": d.label, "application": d.application, "visit": d.visit, "cleaning": d.cleaning,
		"incident": d.incident, "trace": d.trace, "recall": d.recall, "season": d.season,
		"stock": d.stock, "crew": d.crew, "notice": d.notice, "heating": d.heating,
	}
	do, known := makers[kind]
	if !known {
		wrong := fault.New("paper", kind, wording.Say("paper.unknown"), wording.Say("worksheet.allowed.choices", wording.Places{"choices": Kinds}), wording.Text{})
		wrong.Nearest = fault.Nearest(kind, Kinds)
		return nil, wrong
	}
	return do(ctx, name)
}

// paper is a sheet with its head filled in.
func (d *Desk) paper(kind, name string) *Paper {
	p := &Paper{Kind: kind, Name: name, Number: kind + " " + name, Holding: d.file.Holding.Name, Printed: d.now, Rules: hygiene.RulesAsOf, Signed: true}
	p.Title = wording.Say("paper.title."+kind, wording.Places{"name": name})
	if p.Holding == "" {
		p.missing("holding")
	}
	return p
}

// said is the body of an entry.
type said map[string]any

func bodyOf(k journal.Kept) said {
	body := said{}
	_ = json.Unmarshal(k.Body, &body) // a body that is no object says nothing
	return body
}

func (s said) text(key string) string { text, _ := s[key].(string); return text }

// value is what a key says, nil where it says nothing.
func (s said) value(key string) any {
	if v, has := s[key]; has && v != "" {
		return v
	}
	return nil
}

// standing are the entries that nothing corrects.
func (d *Desk) standing(ctx context.Context, w journal.Wanted) ([]journal.Kept, error) {
	found, err := d.holding.Journal().List(ctx, w)
	return slices.DeleteFunc(found, func(k journal.Kept) bool { return k.ReplacedBy != nil }), err
}

// entry finds one entry of a kind by its id.
func (d *Desk) entry(ctx context.Context, id, kind string) (journal.Kept, error) {
	found, err := d.holding.Journal().List(ctx, journal.Wanted{ID: id, Kinds: []string{kind}})
	if err == nil && len(found) == 0 {
		err = fault.New("id", id, wording.Say("holding.correct.unknown"), wording.Text{}, wording.Say("holding.correct.unknown.advice"))
	}
	if err != nil {
		return journal.Kept{}, err
	}
	return found[0], nil
}

// when is the moment of an entry on the holding's wall.
func (d *Desk) when(k journal.Kept) time.Time { return k.Time().In(d.now.Location()) }

// about adds who did it, when, and when it was written down.
func (d *Desk) about(p *Paper, k journal.Kept) {
	p.Number = k.ID
	p.fact("at", d.when(k))
	p.fact("by", k.By)
	if remark := Remark(k.Time(), k.Recorded()); remark != nil {
		p.fact("remark", remark)
	}
	if k.By == "" {
		p.missing("by")
	}
	if k.ReplacedBy != nil {
		p.missing("corrected", wording.Places{"id": short(*k.ReplacedBy)})
	}
}

// bed adds what is known of a bed and where it lies.
func (d *Desk) bed(p *Paper, name string) {
	p.fact("bed", name)
	bed, known := d.file.Bed(name)
	if !known {
		p.missing("bed", wording.Places{"bed": name})
		return
	}
	p.fact("place", d.place(bed.Site))
	p.fact("crop", bed.Crop)
	p.known("stage", string(bed.Stage))
	if bed.Area != nil {
		p.fact("area_m2", bed.Area.SquareMetres())
	}
	if bed.Crop == "" {
		p.missing("crop", wording.Places{"bed": name})
	}
}

// place is a site with where it lies.
func (d *Desk) place(name string) any {
	site, known := d.file.Site(name)
	if !known {
		return nil
	}
	return at(site)
}

func at(site ground.Site) string {
	if site.Latitude == 0 && site.Longitude == 0 {
		return site.Name
	}
	return fmt.Sprintf("%s (%.4f, %.4f)", site.Name, site.Latitude, site.Longitude)
}
