package report

import (
	"context"
	"math"
	"slices"
	"time"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// stock is what lies in the shed, lot by lot: what to buy, what is too old, and
// what the records do not explain.
func (d *Desk) stock(_ context.Context, name string) (*Paper, error) {
	p := d.paper("stock", name)
	shelves := d.holding.Shelves(d.file, d.now)
	lots := Table{Name: "shelves", Columns: []string{"ingredient", "lot", "left_g", "expires", "state"}}
	sums := Table{Name: "buying", Columns: []string{"ingredient", "left_g", "used_per_day_g", "lasts_days", "reorder_g", "state"}}
	low := 0
	for _, s := range shelves {
		var lasts, reorder, state any
		if days, known := s.LastsDays(); known {
			lasts = math.Floor(days)
		}
		if s.Reorder != nil {
			reorder, state = s.Reorder.Grams(), "enough"
		}
		if s.Low {
			low++
			state = "buy"
		}
		sums.Rows = append(sums.Rows, []any{s.Ingredient, s.Left.Grams(), s.PerDay.Grams(), lasts, reorder, state})
		for _, l := range s.Lots {
			var until any
			if l.Expires != nil {
				until = l.Expires.AddDate(0, 0, -1).Format(time.DateOnly)
			}
			state := "good"
			switch {
			case l.Negative:
				state = "unexplained"
				p.missing("stock.negative", wording.Places{"ingredient": s.Ingredient, "lot": l.Lot})
			case l.Expired(d.now):
				state = "too-old"
			}
			lots.Rows = append(lots.Rows, []any{s.Ingredient, l.Lot, l.Left.Grams(), until, state})
		}
	}
	p.Lede = wording.Say("paper.stock.lede", wording.Places{"n": len(shelves), "low": low})
	p.Tables = []Table{sums, lots}
	p.caution("stock")
	return p, nil
}

// crew is the list of initials: the only paper with names.
func (d *Desk) crew(ctx context.Context, name string) (*Paper, error) {
	p := d.paper("crew", name)
	t := Table{Name: "crew", Columns: []string{"initials", "full_name", "role", "training", "language"}}
	known := []string{}
	for _, person := range d.file.People {
		known = append(known, person.Initials)
		t.Rows = append(t.Rows, []any{person.Initials, person.FullName, person.Role, person.Training, string(person.Language)})
		if person.FullName == "" || person.Training == "" {
			p.missing("crew.person", wording.Places{"initials": person.Initials})
		}
	}
	entries, err := d.standing(ctx, journal.Wanted{Kinds: []string{journal.Applied, journal.Cleaned, journal.Start, journal.End, journal.Reading, journal.Test}, Newest: 20_000})
	if err != nil {
		return nil, err
	}
	for _, k := range entries {
		if k.By != "" && !slices.Contains(known, k.By) {
			known = append(known, k.By)
			p.missing("crew.unknown", wording.Places{"initials": k.By})
		}
	}
	p.Tables = []Table{t}
	p.caution("crew")
	return p, nil
}

// notice hangs at the gate or door of a bed: what, when, how long to keep off,
// whom to call. What went on last counts until it is a day old, then what is
// wanted next.
func (d *Desk) notice(ctx context.Context, bed string) (*Paper, error) {
	known, set := d.file.Bed(bed)
	if !set {
		wrong := fault.New("bed", bed, wording.Say("paper.notice.bed"), wording.Text{}, wording.Text{})
		for _, b := range d.file.Beds {
			wrong.Nearest = fault.Nearest(bed, append([]string{b.Name}, wrong.Nearest))
		}
		return nil, wrong
	}
	p := d.paper("notice", bed)
	p.Signed, p.Rules, p.Large = false, "", true
	at, method, err := d.appliedOrWanted(ctx, bed)
	if err != nil {
		return nil, err
	}
	p.Lede = wording.Say("paper.notice.lede")
	p.fact("what", wording.Say("paper.notice.what"))
	p.fact("place", d.place(known.Site))
	p.fact("bed", bed)
	p.known("method", method)
	if at.IsZero() {
		p.missing("notice.when", wording.Places{"bed": bed})
	} else {
		p.fact("at", at.In(d.now.Location()))
	}
	p.fact("keep_off", wording.Say("paper.notice.keep-off"))
	p.known("keep_off_what", listed(known.KeepOff))
	p.fact("call", d.file.Holding.Emergency)
	if d.file.Holding.Emergency == "" {
		p.missing("notice.call")
	}
	p.caution("notice")
	p.caution("judge")
	return p, nil
}

func (d *Desk) appliedOrWanted(ctx context.Context, bed string) (at time.Time, method string, err error) {
	entries, err := d.standing(ctx, journal.Wanted{Kinds: []string{journal.Applied}, Subject: "bed:" + bed, Since: d.now.AddDate(0, 0, -1)})
	if err != nil {
		return at, "", err
	}
	if n := len(entries); n > 0 {
		return entries[n-1].Time(), bodyOf(entries[n-1]).text("method"), nil
	}
	for _, w := range d.file.Wants {
		from := hourOf(w)
		if w.Bed == bed && !from.IsZero() && !from.Before(d.now) && (at.IsZero() || from.Before(at)) {
			at, method = from, w.Method
		}
	}
	return at, method, nil
}

// hourOf is the hour of a want, or the start of its window.
func hourOf(w jobfile.Want) time.Time {
	switch {
	case w.At != nil:
		return *w.At
	case w.From != nil:
		return *w.From
	}
	return time.Time{}
}
