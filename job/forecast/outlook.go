package forecast

import (
	"math"
	"slices"

	"aerosteep/quantity"
)

// Outlook is a forecast of a batch from what is known before it starts.
type Outlook struct {
	Course     []Moment
	MinDO      Band    // mg/L, lowest of each member
	MinHour    Range   // hour of that
	Chance     float64 // in 100, of going under the limit
	Limit      quantity.Concentration
	PeakUptake Band      // mg/L/h
	PeakHours  []float64 // hour of highest uptake of each member, sorted
	BelowHours []float64 // hour at which each member goes under the limit, sorted; +Inf for never
}

// Moment is one row of a course.
type Moment struct {
	Hour              float64
	DO, Water, Uptake Band // mg/L, °C, mg/L/h
}

// Prior forecasts a batch without readings, over the recipe's hours.
func Prior(s Setup, members int, seed uint64) *Outlook { return prior(s, members, seed, true) }

// prior may leave the course out, where only the outcome is asked for.
func prior(s Setup, members int, seed uint64, course bool) *Outlook {
	end := s.Planned.Hours()
	e := newEnsemble(&s, members, seed)
	out := &Outlook{Limit: quantity.MilligramsPerLitre(e.limit)}
	if course {
		out.Course = append(out.Course, e.moment(0))
	}
	steps := timeline(&s, changesOf(s.Additions), end)
	for i := range steps {
		e.stride(&steps[i])
		if course && steps[i].row >= 0 {
			out.Course = append(out.Course, e.moment(steps[i].to()))
		}
	}
	e.summarise(out)
	return out
}

// PeakHours gives the hour of highest uptake of each member, sorted, from the
// start to 96 h, without what is put in to finish: what a recipe's hours are
// stretched by.
func PeakHours(s Setup, members int, seed uint64) []float64 {
	s.Planned = quantity.Hours(96)
	s.Additions = slices.DeleteFunc(slices.Clone(s.Additions), func(a Addition) bool { return a.Finish })
	e := newEnsemble(&s, members, seed)
	steps := timeline(&s, changesOf(s.Additions), 96)
	for i := range steps {
		e.stride(&steps[i])
	}
	hours := e.gather(func(m *member) float64 { return m.peakHour })
	slices.Sort(hours)
	return hours
}

// DefaultLimit is 6 mg/L, or 70 % of saturation at the water's temperature at
// the start where that is lower (common practice).
func DefaultLimit(s *Setup) quantity.Concentration {
	share := quantity.MilligramsPerLitre(0.7 * saturation(s.Start, s))
	return min(quantity.MilligramsPerLitre(6), share)
}

func (s *Setup) limit() float64 {
	if s.Limit > 0 {
		return s.Limit.MilligramsPerLitre()
	}
	return DefaultLimit(s).MilligramsPerLitre()
}

// gather reads one number of every member.
func (e *ensemble) gather(read func(*member) float64) []float64 {
	values := make([]float64, len(e.members))
	for i := range e.members {
		values[i] = read(&e.members[i])
	}
	return values
}

func (e *ensemble) moment(hour float64) Moment {
	return Moment{
		Hour:   hour,
		DO:     e.band(func(m *member) float64 { return m.oxygen }),
		Water:  e.band(func(m *member) float64 { return m.water }),
		Uptake: e.band(func(m *member) float64 { return m.uptake }),
	}
}

func (e *ensemble) summarise(out *Outlook) {
	out.MinDO = bandOf(e.gather(func(m *member) float64 { return m.lowestDO }))
	out.MinHour = rangeOf(e.gather(func(m *member) float64 { return m.lowestHour }))
	out.PeakUptake = bandOf(e.gather(func(m *member) float64 { return m.peakUptake }))
	out.PeakHours = e.gather(func(m *member) float64 { return m.peakHour })
	slices.Sort(out.PeakHours)
	out.BelowHours = e.gather(func(m *member) float64 { return m.belowHour })
	slices.Sort(out.BelowHours)
	out.Chance = e.chance()
}

// chance in 100 that a member goes under the limit.
func (e *ensemble) chance() float64 {
	under := 0
	for i := range e.members {
		if !math.IsInf(e.members[i].belowHour, 1) {
			under++
		}
	}
	return 100 * float64(under) / float64(len(e.members))
}
