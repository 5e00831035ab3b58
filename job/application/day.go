package application

import (
	"time"

	"aerosteep/quantity"
)

// Stop is one place on the day's run.
type Stop struct {
	Name, Site, Crop string
	Batch            string
	Tea              quantity.Volume
	Work             quantity.Span // loading and putting on
}

// Day is a run of stops. Way is the drive between two sites; UseBy is when
// the tea of a batch must be on the ground.
type Day struct {
	Start time.Time
	From  string // the vessel's site
	Stops []Stop
	UseBy map[string]time.Time
	Way   func(from, to string) quantity.Span
}

// Visit is a stop with its clock.
type Visit struct {
	Stop
	Arrive, Done time.Time
	UseBy        time.Time // zero where the batch has none
	InTime       bool      // done by then
	Rinse        bool      // before it: another site or another crop (common practice)
}

// Visits runs the clock through the stops in their order.
func (d Day) Visits() []Visit {
	visits := make([]Visit, 0, len(d.Stops))
	at, site := d.Start, d.From
	for i, s := range d.Stops {
		v := d.visit(at, site, s)
		v.Rinse = i > 0 && (s.Site != d.Stops[i-1].Site || s.Crop != d.Stops[i-1].Crop)
		visits = append(visits, v)
		at, site = v.Done, s.Site
	}
	return visits
}

func (d Day) visit(at time.Time, site string, s Stop) Visit {
	arrive := at.Add(duration(d.Way(site, s.Site)))
	done := arrive.Add(duration(s.Work))
	useBy, ends := d.UseBy[s.Batch]
	return Visit{Stop: s, Arrive: arrive, Done: done, UseBy: useBy, InTime: !ends || !done.After(useBy)}
}

func duration(s quantity.Span) time.Duration {
	return time.Duration(s.Seconds() * float64(time.Second))
}

// mostReordered is the number of stops up to which every order is tried; more
// keep their order and drop what is late.
const mostReordered = 8

// Rescue is a day whose clock has run out, made to fit.
type Rescue struct {
	Day     Day    // with the stops that can be reached, in their new order
	Dropped []Stop // what cannot be reached in time
	Moved   bool   // the order is not the one that was asked for
}

// Rescue keeps the most stops that can be done by the use-by of their tea, and
// among equals the order that was asked for, then the earliest finish. With
// more than eight stops the order stays and late stops are dropped.
func (d Day) Rescue() Rescue {
	best := search{day: d}
	if len(d.Stops) > mostReordered {
		best.inOrder()
	} else {
		best.extend(d.Start, d.From, nil, make([]bool, len(d.Stops)))
	}
	return best.rescue()
}

// search looks for the order that keeps the most stops.
type search struct {
	day  Day
	kept []int
	ends time.Time
}

// extend tries every stop that is left after those already chosen.
func (s *search) extend(at time.Time, site string, chosen []int, used []bool) {
	if s.better(chosen, at) {
		s.kept, s.ends = append([]int(nil), chosen...), at
	}
	for i, stop := range s.day.Stops {
		if used[i] {
			continue
		}
		if v := s.day.visit(at, site, stop); v.InTime {
			used[i] = true
			s.extend(v.Done, stop.Site, append(chosen, i), used)
			used[i] = false
		}
	}
}

func (s *search) better(chosen []int, ends time.Time) bool {
	if len(chosen) != len(s.kept) {
		return len(chosen) > len(s.kept)
	}
	if swaps, before := disorder(chosen), disorder(s.kept); swaps != before {
		return swaps < before
	}
	return ends.Before(s.ends)
}

// disorder counts the pairs that stand the other way round than asked.
func disorder(order []int) int {
	pairs := 0
	for i := range order {
		for j := i + 1; j < len(order); j++ {
			if order[i] > order[j] {
				pairs++
			}
		}
	}
	return pairs
}

func (s *search) inOrder() {
	at, site := s.day.Start, s.day.From
	for i, stop := range s.day.Stops {
		if v := s.day.visit(at, site, stop); v.InTime {
			s.kept = append(s.kept, i)
			at, site = v.Done, stop.Site
		}
	}
}

func (s *search) rescue() Rescue {
	r := Rescue{Day: s.day, Moved: disorder(s.kept) > 0}
	r.Day.Stops = nil
	kept := make([]bool, len(s.day.Stops))
	for _, i := range s.kept {
		kept[i] = true
		r.Day.Stops = append(r.Day.Stops, s.day.Stops[i])
	}
	for i, stop := range s.day.Stops {
		if !kept[i] {
			r.Dropped = append(r.Dropped, stop)
		}
	}
	return r
}
