package ground

import (
	"testing"
	"time"

	"aerosteep/quantity"
)

// Every 14 days is two weeks of the calendar after the last time, never before
// the first day and never after the last.
func TestNextTime(t *testing.T) {
	day := func(d int) *time.Time { return new(time.Date(2026, 5, d, 0, 0, 0, 0, time.UTC)) }
	every := quantity.Days(14)
	now := *day(10)
	for name, c := range map[string]struct {
		rhythm Rhythm
		last   *time.Time
		next   *time.Time
	}{
		"two weeks on":         {Rhythm{Every: every}, day(1), day(15)},
		"never put on":         {Rhythm{Every: every}, nil, day(10)},
		"before the first day": {Rhythm{Every: every, First: day(20)}, day(1), day(20)},
		"not yet begun":        {Rhythm{Every: every, First: day(12)}, nil, day(12)},
		"on the last day":      {Rhythm{Every: every, Last: day(15)}, day(1), day(15)},
		"over":                 {Rhythm{Every: every, Last: day(13)}, day(1), nil},
	} {
		next, ok := c.rhythm.Next(c.last, now)
		if ok != (c.next != nil) || ok && !next.Equal(*c.next) {
			t.Errorf("%s: %s %v", name, next, ok)
		}
	}
}
