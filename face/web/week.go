package web

import (
	"fmt"
	"slices"
	"time"

	"aerosteep/job/plan"
	"aerosteep/quantity"
)

// lane is one row (or column) of the week: the days, a vessel, or the ground.
type lane struct {
	Class, Head, Small string
	Blocks             []block
}

// block is one thing in a lane, placed by its start and end hour.
type block struct {
	Class, Link, Name, Line, Spoken string
}

// frame is the span of hours that the week is drawn in.
type frame struct {
	p     *page
	start time.Time
	hours float64
}

// weekLanes lays the plan out: one list in the page, placed by hours; down on
// the phone, across on the desk.
func weekLanes(p *page, result *plan.Plan, now time.Time) []lane {
	if len(result.Batches) == 0 {
		return nil
	}
	f := planFrame(p, result, now)
	lanes := []lane{f.days()}
	var vessels []string
	for _, b := range result.Batches {
		if !slices.Contains(vessels, b.Vessel) {
			vessels = append(vessels, b.Vessel)
		}
	}
	for _, v := range vessels {
		lanes = append(lanes, f.vessel(v, result.Batches, now))
	}
	return append(lanes, f.ground(result, now))
}

func planFrame(p *page, result *plan.Plan, now time.Time) frame {
	first, last := now, now
	for _, b := range result.Batches {
		if s := b.Steps[0].At; s.Before(first) {
			first = s
		}
		if b.UseBy.After(last) {
			last = b.UseBy
		}
	}
	for _, r := range result.Runs {
		if r.EndsAt.After(last) {
			last = r.EndsAt
		}
	}
	first = first.In(now.Location())
	start := time.Date(first.Year(), first.Month(), first.Day(), 0, 0, 0, 0, now.Location())
	days := int(last.Sub(start).Hours()/24) + 1
	return frame{p, start, float64(days * 24)}
}

// at is the class that places a block from one moment to another.
func (f frame) at(from, to time.Time, more string) string {
	a, b := from.Sub(f.start).Hours(), to.Sub(f.start).Hours()
	return f.p.At(fmt.Sprintf("--a:%.2f;--b:%.2f%s", max(0, a), max(a+0.2, b), more))
}

// Hours is the class that says how many hours the week has.
func (f frame) span() string { return f.p.At(fmt.Sprintf("--hours:%.0f", f.hours)) }

func (f frame) days() lane {
	l := lane{Class: "days " + f.span(), Head: f.p.Say(fmt.Sprintf("web.month.%d", int(f.start.Month())))}
	for t := f.start; t.Before(f.start.Add(time.Duration(f.hours) * time.Hour)); t = t.AddDate(0, 0, 1) {
		l.Blocks = append(l.Blocks, block{Class: "day " + f.at(t, t.AddDate(0, 0, 1), ""), Name: f.p.weekdayShort(t), Line: fmt.Sprint(t.Day())})
	}
	return l
}

func (f frame) vessel(name string, batches []plan.Batch, now time.Time) lane {
	l := lane{Class: f.span(), Head: name}
	for _, b := range batches {
		if b.Vessel != name {
			continue
		}
		l.Small = quantity.Litres(b.VolumeL).Speak(f.p.Reader)
		l.Blocks = append(l.Blocks, f.brew(b, now)...)
	}
	l.Blocks = append(l.Blocks, block{Class: "now-bar " + f.at(now, now, "")})
	return l
}

// brew is a batch as planned, the taper of its use-by, and its cleaning.
func (f frame) brew(b plan.Batch, now time.Time) []block {
	class := "brew "
	if b.OverChance {
		class += "care "
	}
	blocks := []block{{
		Class: class + f.at(b.StartAt, b.ReadyAt, ""), Link: "#batch-" + b.ID, Name: b.ID,
		Line: f.p.When(b.StartAt.In(now.Location()), now),
	}, {Class: "fit " + f.at(b.ReadyAt, b.UseBy, "")}}
	for _, s := range b.Steps {
		if s.What == "clean" {
			blocks = append(blocks, block{Class: "clean " + f.at(s.At, s.At.Add(time.Hour), "")})
		}
	}
	return blocks
}

func (f frame) ground(result *plan.Plan, now time.Time) lane {
	l := lane{Class: "ground " + f.span(), Head: f.p.Say("web.place.ground")}
	for i, r := range result.Runs {
		class := "job "
		if !r.BeforeUseBy {
			class += "doubtful "
		}
		name := ""
		if len(r.Beds) > 0 {
			name = r.Beds[0]
		}
		if len(r.Beds) > 1 {
			name += f.p.Say("web.plan.and-more", "n", len(r.Beds)-1)
		}
		l.Blocks = append(l.Blocks, block{
			Class: class + f.at(r.At, r.EndsAt, fmt.Sprintf(";--row:%d", i%2)), Link: "#runs",
			Name: name, Line: f.p.When(r.At.In(now.Location()), now),
		})
	}
	return l
}
