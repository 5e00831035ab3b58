package intake

import (
	"strings"
	"time"

	"aerosteep/table"
)

// How loggers write the day and the hour.
var (
	yearFirst  = []string{"2006-01-02", "2006/1/2", "2006.01.02", "20060102"}
	monthFirst = []string{"1/2/2006", "1/2/06", "1-2-2006"}
	dayFirst   = []string{"2/1/2006", "2/1/06", "2-1-2006"}
	dotted     = []string{"2.1.2006", "2.1.06"} // always the day first
	hourForms  = []string{"15:04:05", "15:04", "3:04:05 PM", "3:04 PM", "150405"}
	joined     = []string{time.RFC3339, "2006-01-02T15:04Z07:00", "2006-01-02T15:04:05", "2006-01-02T15:04"}
)

// clock reads the moments of one file: the form that fitted the last row is
// tried first, so that a million rows cost a million readings and no more.
type clock struct {
	zone  *time.Location
	forms []string
	last  int

	day     int64 // of the last row, since 1970
	changes bool  // the clock changes near it
}

func newClock(zone *time.Location, day bool) *clock {
	slashed := monthFirst
	if day {
		slashed = dayFirst
	}
	c := &clock{zone: zone, forms: append([]string{}, joined...)}
	for _, days := range [][]string{yearFirst, slashed, dotted} {
		for _, d := range days {
			for _, h := range hourForms {
				c.forms = append(c.forms, d+" "+h)
			}
		}
	}
	return c
}

// moment reads a time; false where it is none, or an hour that the clock change
// leaves out. Of an hour that occurs twice the first is taken.
func (c *clock) moment(text string) (time.Time, bool) {
	if at, ok := c.by(c.last, text); ok {
		return at, true
	}
	for i := range c.forms {
		if at, ok := c.by(i, text); ok {
			c.last = i
			return at, true
		}
	}
	return time.Time{}, false
}

func (c *clock) by(form int, text string) (time.Time, bool) {
	at, err := time.ParseInLocation(c.forms[form], text, c.zone)
	if err != nil || strings.HasSuffix(c.forms[form], "Z07:00") {
		return at, err == nil
	}
	if !c.near(at) {
		return at, true
	}
	wall, err := time.Parse(c.forms[form], text)
	if err != nil {
		return at, false
	}
	first, _ := table.Readings(wall, c.zone)
	return first, first.Format(time.DateTime) == wall.Format(time.DateTime)
}

// near tells whether the clock changes on the day of a moment or beside it.
func (c *clock) near(at time.Time) bool {
	if day := at.Unix() / 86400; day != c.day {
		_, before := at.Add(-36 * time.Hour).Zone()
		_, after := at.Add(36 * time.Hour).Zone()
		c.day, c.changes = day, before != after
	}
	return c.changes
}

// Order is which comes first in a day written with slashes or hyphens.
type Order string

// The orders: Either where no row tells.
const (
	Day    Order = "day"
	Month  Order = "month"
	Either Order = ""
)

// orderIn looks for a row that tells: a number over 12 is no month.
func orderIn(days []string) (Order, bool) {
	slashed := false
	for _, day := range days {
		day, _, _ = strings.Cut(day, " ")
		parts := strings.FieldsFunc(day, func(r rune) bool { return r == '/' || r == '-' })
		if len(parts) != 3 || len(parts[0]) > 2 || len(parts[1]) > 2 {
			continue
		}
		slashed = true
		switch {
		case over12(parts[0]):
			return Day, true
		case over12(parts[1]):
			return Month, true
		}
	}
	return Either, slashed
}

func over12(text string) bool { return len(text) == 2 && text > "12" }
