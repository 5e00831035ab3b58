package table

import (
	"time"

	"aerosteep/wording"
)

// localForms are how people and their spreadsheets write a local time.
var localForms = []string{"2006-01-02 15:04", "2006-01-02 15:04:05", "2006-01-02T15:04", "2006-01-02T15:04:05"}

// Moment reads a time that must be there: RFC 3339 (the seconds may be left
// out), or YYYY-MM-DD HH:MM[:SS] in the zone. With a nil zone only RFC 3339 is taken. A local hour that the
// clock change leaves out, or runs through twice, is refused with both
// readings named.
func (r Row) Moment(column string, zone *time.Location) (time.Time, error) {
	text := r.Text(column)
	if text == "" {
		return time.Time{}, r.Wrong(column, wording.Say("table.blank"), wording.Text{})
	}
	for _, form := range []string{time.RFC3339, "2006-01-02T15:04Z07:00"} {
		if at, err := time.Parse(form, text); err == nil {
			return at, nil
		}
	}
	if zone == nil {
		return time.Time{}, r.Wrong(column, wording.Say("table.not-rfc3339"), wording.Say("table.not-rfc3339.allowed"))
	}
	for _, form := range localForms {
		if wall, err := time.Parse(form, text); err == nil {
			return r.local(column, wall, zone)
		}
	}
	return time.Time{}, r.Wrong(column, wording.Say("table.not-a-time"), wording.Say("table.not-a-time.allowed"))
}

func (r Row) local(column string, wall time.Time, zone *time.Location) (time.Time, error) {
	first, second := Readings(wall, zone)
	switch {
	case first.Equal(second):
		return first, nil
	case sameClock(first, wall):
		return time.Time{}, r.twoReadings(column, "table.hour-twice", first, second)
	default:
		return time.Time{}, r.twoReadings(column, "table.hour-missing", first, second)
	}
}

func (r Row) twoReadings(column, key string, first, second time.Time) error {
	places := wording.Places{"first": first.Format(time.RFC3339), "second": second.Format(time.RFC3339)}
	return r.Wrong(column, wording.Say(key, places), wording.Say("table.hour.allowed", places))
}

// Readings are the two moments a wall clock's time can mean in a zone: the
// same moment twice for an ordinary hour; for an hour that occurs twice its
// two occurrences; for one that is left out, what it is by the offset after
// and before the change.
func Readings(wall time.Time, zone *time.Location) (first, second time.Time) {
	const aroundAnyChange = 26 * time.Hour
	guess := time.Date(wall.Year(), wall.Month(), wall.Day(), wall.Hour(), wall.Minute(), wall.Second(), 0, zone)
	_, before := guess.Add(-aroundAnyChange).Zone()
	_, after := guess.Add(aroundAnyChange).Zone()
	utc := time.Date(wall.Year(), wall.Month(), wall.Day(), wall.Hour(), wall.Minute(), wall.Second(), 0, time.UTC)
	byBefore := utc.Add(-time.Duration(before) * time.Second).In(zone)
	byAfter := utc.Add(-time.Duration(after) * time.Second).In(zone)
	switch beforeFits, afterFits := sameClock(byBefore, wall), sameClock(byAfter, wall); {
	case beforeFits && !afterFits:
		return byBefore, byBefore
	case afterFits && !beforeFits:
		return byAfter, byAfter
	case byAfter.Before(byBefore):
		return byAfter, byBefore
	default:
		return byBefore, byAfter
	}
}

// sameClock tells whether a moment shows that wall clock in its zone.
func sameClock(at, wall time.Time) bool {
	return at.Format(time.DateTime) == wall.Format(time.DateTime)
}
