package plan

import (
	"maps"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/job/recipe"
	"aerosteep/quantity"
)

// calendar is when one vessel is taken: bookings in order of time.
type calendar struct{ taken []booking }

// booking is a batch in a vessel, from its first step to its strain.
type booking struct {
	first  time.Time // first step other than pre-feeding
	start  time.Time // air on
	strain time.Time
}

// free tells whether a booking fits: the vessel is not cleaned for the next
// batch before the one before is strained, and the turnaround lies between
// that and the next air on.
func (c *calendar) free(b booking, turnaround time.Duration) bool {
	for _, other := range c.taken {
		if !after(b, other, turnaround) && !after(other, b, turnaround) {
			return false
		}
	}
	return true
}

// after tells whether b may follow a in one vessel.
func after(b, a booking, turnaround time.Duration) bool {
	return !b.first.Before(a.strain) && !b.start.Before(a.strain.Add(turnaround))
}

func (c *calendar) take(b booking) { c.taken = append(c.taken, b) }

func (p *planner) calendarOf(vessel string) *calendar {
	if p.calendars[vessel] == nil {
		p.calendars[vessel] = &calendar{}
	}
	return p.calendars[vessel]
}

// takeRunningBatches books vessels in which a batch of the file still brews.
func (p *planner) takeRunningBatches() {
	for _, b := range p.File.Batches {
		if b.Vessel == "" || b.StartedAt == nil || b.StartedAt.After(p.Now) {
			continue
		}
		hours := usualHours
		if r, known := p.File.Recipe(b.Recipe); known {
			hours = recipeHours(r)
		}
		strain := b.StartedAt.Add(span(hours))
		if strain.After(p.Now) {
			p.calendarOf(b.Vessel).take(booking{first: *b.StartedAt, start: *b.StartedAt, strain: strain})
		}
	}
}

// stock is what is left in the shed as batches are planned, by ingredient.
// Ingredients whose stock is not given never run out.
type stock struct {
	mass   map[string]quantity.Mass
	volume map[string]quantity.Volume
}

func (s *stock) copy() stock { return stock{maps.Clone(s.mass), maps.Clone(s.volume)} }

// newStock reads what the file says is in the shed.
func newStock(f *jobfile.File) *stock {
	s := &stock{map[string]quantity.Mass{}, map[string]quantity.Volume{}}
	for _, i := range f.Larder.All() {
		switch {
		case i.Stock == nil:
		case i.Stock.Volume > 0:
			s.volume[recipe.Key(i.Name)] = i.Stock.Volume
		default:
			s.mass[recipe.Key(i.Name)] = i.Stock.Mass
		}
	}
	return s
}

// short says which ingredient is short for a batch, and for what share of the
// batch it would do.
func (s *stock) short(b recipe.Batch) (name string, share float64) {
	share = 1
	for _, item := range b.Items {
		key := recipe.Key(item.Item.Ingredient.Name)
		if left, limited := s.mass[key]; limited && item.Mass > left*(1+1e-9) {
			if part := float64(left / item.Mass); part < share {
				name, share = item.Item.Ingredient.Name, part
			}
		}
		if left, limited := s.volume[key]; limited && item.Volume != nil && *item.Volume > left*(1+1e-9) {
			if part := float64(left / *item.Volume); part < share {
				name, share = item.Item.Ingredient.Name, part
			}
		}
	}
	return name, share
}

func (s *stock) take(b recipe.Batch) {
	for _, item := range b.Items {
		key := recipe.Key(item.Item.Ingredient.Name)
		if _, limited := s.mass[key]; limited {
			s.mass[key] -= item.Mass
		}
		if _, limited := s.volume[key]; limited && item.Volume != nil {
			s.volume[key] -= *item.Volume
		}
	}
}
