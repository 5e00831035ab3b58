package report

import (
	"context"
	"slices"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// folderOf are what a folder can be about: "season:2026", "bed:Kale, east",
// "crop:kale", "lot:W-7".
var folderOf = []string{"season", "bed", "crop", "lot"}

// gathered is what a folder holds: by their names, in the order in which they
// were met.
type gathered struct {
	lots, batches  []string
	applied, other []journal.Kept // applications; incidents
	about          func(journal.Kept) bool
}

// folder is an inspection folder: all that lies behind a season, a bed, a crop or
// a lot, with what is missing in any of it said first, and an index.
func (d *Desk) folder(ctx context.Context, name string) (*Paper, error) {
	what, of, _ := strings.Cut(name, ":")
	if !slices.Contains(folderOf, what) || strings.TrimSpace(of) == "" {
		wrong := fault.New("folder", name, wording.Say("paper.folder.of"), wording.Say("worksheet.allowed.choices", wording.Places{"choices": folderOf}), wording.Say("paper.folder.of.advice"))
		wrong.Nearest = fault.Nearest(what, folderOf)
		return nil, wrong
	}
	inside, papers, err := d.inFolder(ctx, what, of)
	if err != nil {
		return nil, err
	}
	p := d.paper("folder", name)
	p.Title = wording.Say("paper.title.folder."+what, wording.Places{"name": of})
	p.inside = inside
	p.Tables = []Table{indexOf(inside, nil), papers}
	gaps := 0
	for _, each := range inside {
		for _, gap := range each.Missing {
			gaps++
			p.Missing = append(p.Missing, wording.Say("paper.folder.gap", wording.Places{"paper": each.Title, "gap": gap}))
		}
	}
	p.Lede = wording.Say("paper.folder.lede", wording.Places{"papers": len(inside), "gaps": gaps})
	if len(inside) == 0 {
		p.missing("folder.empty", wording.Places{"name": of})
	}
	p.caution("records")
	p.caution("judge")
	return p, nil
}

// inFolder makes the papers of a folder, and lists the papers of others that
// belong to them.
func (d *Desk) inFolder(ctx context.Context, what, of string) ([]*Paper, Table, error) {
	g, err := d.gather(ctx, what, of)
	if err != nil {
		return nil, Table{}, err
	}
	var inside []*Paper
	add := func(kind, name string) {
		made, wrong := d.Make(ctx, kind, name)
		if wrong == nil {
			inside = append(inside, made)
		} else if err == nil && fault.Of(wrong) == nil {
			err = wrong
		}
	}
	if what == "season" {
		add("season", of)
		add("cleaning", of)
	}
	for _, lot := range g.lots {
		add("trace", lot)
	}
	for _, batch := range g.batches {
		add("brew", batch)
	}
	for _, k := range g.applied {
		add("application", k.ID)
	}
	for _, k := range g.other {
		add("incident", k.ID)
	}
	if err != nil {
		return nil, Table{}, err
	}
	papers, err := d.attached(ctx, g.about)
	return inside, papers, err
}

// gather finds what belongs to the subject of a folder: from a lot down to the
// beds, from a bed or a crop up to the lots.
func (d *Desk) gather(ctx context.Context, what, of string) (gathered, error) {
	var g gathered
	entries, err := d.standing(ctx, journal.Wanted{Kinds: []string{journal.Applied, journal.Incident}})
	if err != nil {
		return g, err
	}
	g.about = func(k journal.Kept) bool {
		subject, name := k.About()
		return k.Subject == what+":"+of || subject == "lot" && slices.Contains(g.lots, name) || subject == "batch" && slices.Contains(g.batches, name)
	}
	switch what {
	case "lot":
		way, err := d.follow(ctx, of)
		if err != nil {
			return g, err
		}
		g.lots, g.batches, g.applied = []string{of}, way.batches, way.applied
		return g, nil
	case "season":
		return g, d.ofSeason(ctx, &g, of, entries)
	}
	beds := d.bedsOf(what, of)
	if len(beds) == 0 {
		return g, fault.New(what, of, wording.Say("paper.folder.unknown"), wording.Text{}, wording.Text{})
	}
	for _, k := range entries {
		if subject, bed := k.About(); subject == "bed" && slices.Contains(beds, bed) {
			g.take(k)
		}
	}
	return g, d.lotsBehind(ctx, &g)
}

// bedsOf are a bed by its name, or those that a crop grows on.
func (d *Desk) bedsOf(what, of string) []string {
	var beds []string
	for _, b := range d.file.Beds {
		if what == "bed" && b.Name == of || what == "crop" && strings.EqualFold(b.Crop, of) {
			beds = append(beds, b.Name)
		}
	}
	return beds
}

// take notes an application or an incident, and the batch that it names.
func (g *gathered) take(k journal.Kept) {
	if k.Kind == journal.Incident {
		g.other = append(g.other, k)
	} else {
		g.applied = append(g.applied, k)
	}
	g.batch(bodyOf(k).text("batch"))
}

func (g *gathered) batch(name string) {
	if name != "" && !slices.Contains(g.batches, name) {
		g.batches = append(g.batches, name)
	}
}

// ofSeason is all of a year: what was put on, what was started, what went wrong.
func (d *Desk) ofSeason(ctx context.Context, g *gathered, year string, entries []journal.Kept) error {
	from, until, err := d.year(year)
	if err != nil {
		return err
	}
	within := func(t time.Time) bool { return !t.Before(from) && t.Before(until) }
	g.about = func(k journal.Kept) bool { return within(k.Time()) }
	all := d.holding.Batches()
	for i := len(all) - 1; i >= 0; i-- {
		if b := all[i]; b.StartedAt != nil && within(*b.StartedAt) {
			g.batch(b.Name)
		}
	}
	for _, k := range entries {
		if within(k.Time()) {
			g.take(k)
		}
	}
	return d.lotsBehind(ctx, g)
}

// lotsBehind finds the lots that the batches took.
func (d *Desk) lotsBehind(ctx context.Context, g *gathered) error {
	moved, err := d.standing(ctx, journal.Wanted{Kinds: []string{journal.Stock}})
	for _, k := range moved {
		body := bodyOf(k)
		if lot := body.text("lot"); lot != "" && slices.Contains(g.batches, body.text("batch")) && !slices.Contains(g.lots, lot) {
			g.lots = append(g.lots, lot)
		}
	}
	return err
}

// indexOf lists the papers of a folder, with the page on which each begins where
// that is known.
func indexOf(inside []*Paper, begins []int) Table {
	t := Table{Name: "index", Columns: []string{"number", "paper", "record", "gaps"}}
	if begins != nil {
		t.Columns = append(t.Columns, "page")
	}
	for i, p := range inside {
		row := []any{i + 1, p.Title, shortNumber(p), len(p.Missing)}
		if begins != nil {
			row = append(row, begins[i])
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// shortNumber is the beginning of an id, and any other number whole.
func shortNumber(p *Paper) string {
	if len(p.Number) == len("00000000-0000-7000-8000-000000000000") && !strings.Contains(p.Number, " ") {
		return short(p.Number)
	}
	return p.Number
}
