package plan

import (
	"sort"

	"aerosteep/quantity"
)

// spread places an outing that no single hour of its window can hold: want by
// want, and a want that is more than all vessels hold on several days.
func (p *planner) spread(o *outing) bool {
	if !o.inWindow() {
		return false
	}
	if len(o.wants) == 1 {
		return p.overDays(o)
	}
	for _, w := range o.wants {
		alone := &outing{recipe: o.recipe, whyRecipe: o.whyRecipe, at: o.from.In(p.zone), from: o.from, until: o.until, wants: []*want{w}}
		w.outing = alone
		p.outings = append(p.outings, alone)
		p.place(alone)
	}
	o.wants = nil
	return true
}

// overDays shares one want out over several hours of its window, each with as
// much as the vessels that are free for it hold. Where that is not enough,
// nothing is booked.
func (p *planner) overDays(o *outing) bool {
	w := o.wants[0]
	hours := p.candidates(o)
	sort.Slice(hours, func(i, j int) bool { return hours[i].Before(hours[j]) })
	before := p.remember()
	left := w.tea
	for _, at := range hours {
		o.at = at
		if p.taken(o, at) {
			continue
		}
		options := p.options(o, at)
		take := min(left, p.loadable(options)-w.primeTea())
		if take <= 0 {
			continue
		}
		p.settle(p.part(o, w, take), options)
		if left -= take; left <= 1e-9*w.tea {
			o.wants, w.split = nil, true
			return true
		}
	}
	p.restore(before)
	return false
}

// loadable is what can be loaded of all that the options hold.
func (p *planner) loadable(options []option) quantity.Volume {
	var sum quantity.Volume
	for _, o := range options {
		sum += o.vessel.Brew
	}
	return sum * quantity.Volume(1-p.File.Limits.Loss.Fraction())
}

// part is an outing of its own for some of a want's tea.
func (p *planner) part(o *outing, w *want, tea quantity.Volume) *outing {
	some := *w
	some.tea, some.mix = tea, tea*quantity.Volume(1+w.Dilution)
	sub := &outing{recipe: o.recipe, whyRecipe: o.whyRecipe, at: o.at, wants: []*want{&some}}
	some.outing, w.outing = sub, sub
	p.outings = append(p.outings, sub)
	p.pieces = append(p.pieces, &some)
	return sub
}

// memory is what booking changes.
type memory struct {
	outings, pieces int
	taken           map[string]int
	stock           stock
}

func (p *planner) remember() memory {
	m := memory{len(p.outings), len(p.pieces), map[string]int{}, p.stock.copy()}
	for name, c := range p.calendars {
		m.taken[name] = len(c.taken)
	}
	return m
}

// restore forgets what was booked since.
func (p *planner) restore(m memory) {
	for _, o := range p.outings[m.outings:] {
		for _, b := range o.batches {
			delete(p.named, b.id)
		}
	}
	p.outings, p.pieces, *p.stock = p.outings[:m.outings], p.pieces[:m.pieces], m.stock
	for name, c := range p.calendars {
		c.taken = c.taken[:m.taken[name]]
	}
}
