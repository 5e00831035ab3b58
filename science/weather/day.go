package weather

import (
	"math"
	"sort"
	"time"

	"aerosteep/table"
)

// DayKind says whether the sun crosses the horizon on a date.
type DayKind string

// The kinds of day.
const (
	OrdinaryDay DayKind = "ordinary"
	MidnightSun DayKind = "midnight-sun"
	PolarNight  DayKind = "polar-night"
)

// SunEvent is one crossing of the horizon.
type SunEvent struct {
	Rises bool
	At    time.Time
}

// SolarDay is the sun on one local date. A nil time does not occur on it.
type SolarDay struct {
	Sunrise, Sunset, Noon, CivilDawn, CivilDusk *time.Time
	Events                                      []SunEvent // in order
	Kind                                        DayKind
	Up                                          time.Duration // sun above the horizon within the date
	NoonElevation                               *float64      // degrees
}

// DateBounds are the moments at which a local date begins and ends: the two
// midnights, or the clock change that leaves one out. ok is false for a date
// that the zone has skipped.
func DateBounds(date time.Time, zone *time.Location) (start, end time.Time, ok bool) {
	start, end = dateStart(date, zone), dateStart(date.AddDate(0, 0, 1), zone)
	return start, end, start.Before(end)
}

// dateStart is the first moment that shows the date, or a later one where the
// zone has skipped it.
func dateStart(date time.Time, zone *time.Location) time.Time {
	y, m, d := date.Date()
	wall := time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
	first, _ := table.Readings(wall, zone)
	if first.Format(time.DateTime) == wall.Format(time.DateTime) {
		return first
	}
	const widestZone = 26 * time.Hour
	earliest := wall.Add(-widestZone)
	seconds := sort.Search(int(2*widestZone/time.Second), func(n int) bool {
		return earliest.Add(time.Duration(n)*time.Second).In(zone).Format(time.DateTime) >= wall.Format(time.DateTime)
	})
	return earliest.Add(time.Duration(seconds) * time.Second).In(zone)
}

// SunOn works out the sun on a local date. ok is false for a date that the
// zone has skipped.
//
// Sunrise and sunset are the moments at which the sun's centre stands 0.833°
// below the horizon, dawn and dusk 6°; good to a minute up to 60° of latitude.
// Source: NOAA Solar Calculator equations.
func SunOn(date time.Time, zone *time.Location, p Place) (day SolarDay, ok bool) {
	start, end, ok := DateBounds(date, zone)
	if !ok {
		return SolarDay{}, false
	}
	knots := knotsBetween(start, end, p)
	day.Events = crossings(knots, p, horizon)
	for _, e := range day.Events {
		keepFirst(e, &day.Sunrise, &day.Sunset)
	}
	for _, e := range crossings(knots, p, civil) {
		keepFirst(e, &day.CivilDawn, &day.CivilDusk)
	}
	if noon := nextNoon(start, p); noon.Before(end) {
		day.Noon, day.NoonElevation = &noon, new(elevation(noon, p))
	}
	day.Up = timeUp(start, end, day.Events, p)
	day.Kind = kindOf(day, start, p)
	return day, true
}

func keepFirst(e SunEvent, rise, set **time.Time) {
	which := set
	if e.Rises {
		which = rise
	}
	if *which == nil {
		*which = &e.At
	}
}

func kindOf(day SolarDay, start time.Time, p Place) DayKind {
	switch {
	case len(day.Events) > 0:
		return OrdinaryDay
	case elevation(start, p) > horizon:
		return MidnightSun
	}
	return PolarNight
}

func timeUp(start, end time.Time, events []SunEvent, p Place) time.Duration {
	up, since, isUp := time.Duration(0), start, elevation(start, p) > horizon
	for _, e := range events {
		if isUp {
			up += e.At.Sub(since)
		}
		since, isUp = e.At, e.Rises
	}
	if isUp {
		up += end.Sub(since)
	}
	return up
}

// knotsBetween are moments between which the sun only rises or only sinks:
// the ends, each half hour, and the culminations.
func knotsBetween(start, end time.Time, p Place) []time.Time {
	turns := []time.Time{}
	for t := nextNoon(start.Add(-24*time.Hour), p); t.Before(end.Add(24 * time.Hour)); t = nextNoon(t.Add(12*time.Hour), p) {
		turns = append(turns, t, t.Add(12*time.Hour))
	}
	knots := []time.Time{start}
	for t := start.Add(30 * time.Minute); t.Before(end); t = t.Add(30 * time.Minute) {
		for _, turn := range turns {
			if turn.After(knots[len(knots)-1]) && turn.Before(t) {
				knots = append(knots, turn)
			}
		}
		knots = append(knots, t)
	}
	return append(knots, end)
}

// nextNoon is the first culmination from a moment on.
func nextNoon(from time.Time, p Place) time.Time {
	ahead := -sunAt(from).hourAngle(from, p)
	if ahead < 0 {
		ahead += 360
	}
	noon := from.Add(angleTime(ahead))
	for range 3 {
		noon = noon.Add(angleTime(-sunAt(noon).hourAngle(noon, p)))
	}
	if noon.Before(from) {
		return nextNoon(from.Add(12*time.Hour), p)
	}
	return noon
}

func angleTime(degrees float64) time.Duration {
	return time.Duration(degrees / 15 * float64(time.Hour))
}

// crossings are the moments from the first knot up to, not including, the
// last at which the sun passes a height.
func crossings(knots []time.Time, p Place, height float64) []SunEvent {
	var events []SunEvent
	below := elevation(knots[0], p) <= height
	for i := 1; i < len(knots); i++ {
		now := elevation(knots[i], p) <= height
		if now != below {
			events = append(events, SunEvent{Rises: below, At: crossing(knots[i-1], knots[i], p, height, below)})
		}
		below = now
	}
	return events
}

// crossing halves an interval down to a hundredth of a second.
func crossing(from, to time.Time, p Place, height float64, rises bool) time.Time {
	for to.Sub(from) > 10*time.Millisecond {
		middle := from.Add(to.Sub(from) / 2)
		if (elevation(middle, p) <= height) == rises {
			from = middle
		} else {
			to = middle
		}
	}
	return to
}

// downWithin tells whether the sun is at or below the horizon at some moment
// of an interval of less than half a day. Its lowest moment is an end or the
// lower culmination.
func downWithin(from, to time.Time, p Place) bool {
	if elevation(from, p) <= horizon || elevation(to, p) <= horizon {
		return true
	}
	lowest := from.Add(angleTime(math.Mod(180-sunAt(from).hourAngle(from, p)+360, 360)))
	return lowest.Before(to) && elevation(lowest, p) <= horizon
}
