package ground

import (
	"time"

	"aerosteep/quantity"
)

// Site is a place with its position, its clock and the hours at which people
// work there.
type Site struct {
	Name                string
	Latitude, Longitude float64 // degrees, north and east positive
	Altitude            quantity.Length
	AltitudeKnown       bool
	WorkHours           *WorkHours // nil: any hour will do
	NoWork              []time.Weekday
	Drive               *quantity.Span // from the vessel; nil: not counted
}

// WorkHours is a span of the clock in minutes since midnight. One that ends
// before it begins runs over midnight and belongs to the day it begins.
type WorkHours struct{ From, Until int }

// WorksAt tells whether a local time falls into the hours of work, and its day
// is not a day off. The end of the hours still belongs to them.
func (s Site) WorksAt(t time.Time) bool {
	if s.WorkHours == nil {
		return !s.off(t.Weekday())
	}
	minute := t.Hour()*60 + t.Minute()
	exact := t.Second() == 0 && t.Nanosecond() == 0
	h := *s.WorkHours
	if h.From < h.Until {
		return minute >= h.From && before(minute, h.Until, exact) && !s.off(t.Weekday())
	}
	if minute >= h.From {
		return !s.off(t.Weekday())
	}
	return before(minute, h.Until, exact) && !s.off((t.Weekday()+6)%7)
}

func before(minute, until int, exact bool) bool {
	return minute < until || minute == until && exact
}

func (s Site) off(day time.Weekday) bool {
	for _, d := range s.NoWork {
		if d == day {
			return true
		}
	}
	return false
}
