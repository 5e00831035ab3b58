package report

import (
	"context"
	"slices"

	"aerosteep/fault"
	"aerosteep/job/hygiene"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// lotsOf are the lots of ingredients that a batch took.
func (d *Desk) lotsOf(ctx context.Context, batch string) ([]string, error) {
	if batch == "" {
		return nil, nil
	}
	moved, err := d.standing(ctx, journal.Wanted{Kinds: []string{journal.Stock}})
	var lots []string
	for _, k := range moved {
		body := bodyOf(k)
		if lot := body.text("lot"); body.text("batch") == batch && lot != "" && !slices.Contains(lots, lot) {
			lots = append(lots, lot)
		}
	}
	return lots, err
}

// path is where a lot went: the movements of stock that name it, its batches,
// and what became of their tea.
type path struct {
	came, went []journal.Kept // in and out of the store
	batches    []string
	applied    []journal.Kept
	left       []journal.Kept // tea that went to others
}

func (d *Desk) follow(ctx context.Context, lot string) (path, error) {
	var way path
	entries, err := d.standing(ctx, journal.Wanted{Kinds: []string{journal.Stock, journal.Applied}})
	if err != nil {
		return way, err
	}
	for _, k := range entries {
		if body := bodyOf(k); k.Kind == journal.Stock && body.text("lot") == lot {
			way.take(k, body)
		}
	}
	if _, said := d.holding.Lot(lot); !said && len(way.came)+len(way.went) == 0 {
		return way, fault.New("lot", lot, wording.Say("paper.trace.unknown", wording.Places{"lot": lot}), wording.Text{}, wording.Say("paper.trace.unknown.advice"))
	}
	for _, k := range entries {
		what, name := k.About()
		switch body := bodyOf(k); {
		case k.Kind == journal.Applied && slices.Contains(way.batches, body.text("batch")):
			way.applied = append(way.applied, k)
		case what == "batch" && body.text("receiver") != "" && slices.Contains(way.batches, name):
			way.left = append(way.left, k)
		}
	}
	return way, nil
}

// take notes a movement of the lot itself.
func (w *path) take(k journal.Kept, body said) {
	if body.value("received_g") != nil {
		w.came = append(w.came, k)
	} else {
		w.went = append(w.went, k)
	}
	batch := body.text("batch")
	if what, name := k.About(); what == "batch" {
		batch = name
	}
	if batch != "" && !slices.Contains(w.batches, batch) {
		w.batches = append(w.batches, batch)
	}
}

// trace follows a lot both ways: from whom it came, into which batches it
// went, on which beds and to whom their tea.
func (d *Desk) trace(ctx context.Context, lot string) (*Paper, error) {
	way, err := d.follow(ctx, lot)
	if err != nil {
		return nil, err
	}
	p := d.paper("trace", lot)
	p.Lede = wording.Say("paper.trace.lede", wording.Places{"batches": len(way.batches), "beds": len(bedsOf(way.applied)), "receivers": len(way.left)})
	p.Tables = []Table{d.lotFacts(lot), d.moved("came", way.came), d.moved("used", way.went), d.batchesOf(way.batches), d.wentOn(way.applied), d.receivers(way.left)}
	papers, err := d.attached(ctx, func(k journal.Kept) bool { return k.Subject == "lot:"+lot })
	if err != nil {
		return nil, err
	}
	p.Tables = append(p.Tables, papers)
	if len(way.came) == 0 {
		p.missing("trace.came", wording.Places{"lot": lot})
	}
	if len(way.batches) == 0 {
		p.missing("trace.batches", wording.Places{"lot": lot})
	}
	p.caution("judge")
	return p, nil
}

// lotFacts is what is known of a lot, and what is not.
func (d *Desk) lotFacts(name string) Table {
	t := Table{Name: "lot_facts", Columns: []string{"fact", "answer"}}
	l, _ := d.holding.Lot(name)
	for _, fact := range hygiene.OfCompost() {
		var answer any
		if word := l.Facts[fact.String()]; word != "" {
			answer = word
		}
		t.Rows = append(t.Rows, []any{fact.String(), answer})
	}
	for _, paper := range holding.LotPapers {
		if answer := l.Paper(paper); answer != "" {
			t.Rows = append(t.Rows, []any{string(paper), answer})
		}
	}
	return t
}

// recall is the notice to all who have tea of a lot.
func (d *Desk) recall(ctx context.Context, lot string) (*Paper, error) {
	way, err := d.follow(ctx, lot)
	if err != nil {
		return nil, err
	}
	p := d.paper("recall", lot)
	p.Lede = wording.Say("paper.recall.lede", wording.Places{"lot": lot, "batches": len(way.batches)})
	p.fact("lot", lot)
	p.fact("batches", listed(way.batches))
	p.fact("maker", p.Holding)
	p.Tables = []Table{d.receivers(way.left), d.wentOn(way.applied)}
	if len(way.left) == 0 {
		p.missing("recall.nobody", wording.Places{"lot": lot})
	}
	p.caution("recall.stop")
	p.caution("recall.crops")
	p.caution("judge")
	return p, nil
}

func bedsOf(applied []journal.Kept) []string {
	var beds []string
	for _, k := range applied {
		if _, bed := k.About(); !slices.Contains(beds, bed) {
			beds = append(beds, bed)
		}
	}
	return beds
}

func (d *Desk) moved(name string, entries []journal.Kept) Table {
	t := Table{Name: name, Columns: []string{"at", "ingredient", "received_g", "used_g", "supplier", "batch", "by", "record"}}
	for _, k := range entries {
		body := bodyOf(k)
		_, about := k.About()
		t.Rows = append(t.Rows, []any{d.when(k), about, body.value("received_g"), body.value("used_g"), body.value("supplier"), body.value("batch"), k.By, short(k.ID)})
	}
	return t
}

func (d *Desk) batchesOf(names []string) Table {
	t := Table{Name: "batches", Columns: []string{"batch", "recipe", "started_at", "volume_l", "outcome"}}
	for _, name := range names {
		b, _ := d.holding.Batch(name)
		row := []any{name, b.Recipe, nil, nil, nil}
		if b.StartedAt != nil {
			row[2] = b.StartedAt.In(d.now.Location())
		}
		if b.Volume != nil {
			row[3] = b.Volume.Litres()
		}
		if b.Ended != nil {
			row[4] = b.Ended.Outcome
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func (d *Desk) wentOn(applied []journal.Kept) Table {
	t := Table{Name: "went", Columns: []string{"at", "bed", "crop", "batch", "method", "tea_l", "by", "record"}}
	for _, k := range applied {
		body := bodyOf(k)
		_, name := k.About()
		bed, _ := d.file.Bed(name)
		t.Rows = append(t.Rows, []any{d.when(k), name, bed.Crop, body.value("batch"), body.value("method"), body.value("tea_l"), k.By, short(k.ID)})
	}
	return t
}

func (d *Desk) receivers(left []journal.Kept) Table {
	t := Table{Name: "receivers", Columns: []string{"at", "receiver", "batch", "volume_l", "text", "by", "record"}}
	for _, k := range left {
		body := bodyOf(k)
		_, batch := k.About()
		t.Rows = append(t.Rows, []any{d.when(k), body.value("receiver"), batch, body.value("volume_l"), body.value("text"), k.By, short(k.ID)})
	}
	return t
}

// attached are the papers of others about something, by the hash that they are
// kept under.
func (d *Desk) attached(ctx context.Context, about func(journal.Kept) bool) (Table, error) {
	t := Table{Name: "attached", Columns: []string{"at", "what", "about", "file", "by", "sha256", "record"}}
	papers, err := d.holding.Attachments(ctx)
	for _, a := range papers {
		if about(a.Kept) {
			_, name := a.About()
			t.Rows = append(t.Rows, []any{d.when(a.Kept), a.What, name, a.File, a.By, a.Hash[:16], short(a.ID)})
		}
	}
	return t, err
}
