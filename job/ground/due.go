package ground

import (
	"time"

	"aerosteep/quantity"
)

// Rhythm is how often a bed is treated, between a first and a last day.
type Rhythm struct {
	Every       quantity.Span
	First, Last *time.Time // nil: no bound
}

// Next is when a bed is due: the first day where nothing was put on since, else
// an interval after the last time; ok is false past the last day.
//
//	next = max(first, last time + every)
//
// A first day that is not given is now.
func (r Rhythm) Next(lastTime *time.Time, now time.Time) (next time.Time, ok bool) {
	switch {
	case lastTime != nil:
		next = lastTime.Add(time.Duration(r.Every.Seconds() * float64(time.Second)))
		if r.First != nil && next.Before(*r.First) {
			next = *r.First
		}
	case r.First != nil:
		next = *r.First
	default:
		next = now
	}
	if r.Last != nil && next.After(r.Last.AddDate(0, 0, 1)) {
		return time.Time{}, false
	}
	return next, true
}
