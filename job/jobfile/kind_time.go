package jobfile

import (
	"regexp"
	"strconv"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/ground"
	"aerosteep/wording"
)

var momentKind = kind{name: "moment", schema: map[string]any{"type": "string", "format": "date-time"}, read: func(r reading) any {
	if r.shape != momentShape && r.shape != textShape {
		return r.wrongShape()
	}
	t, f := Moment(r.text, r.checker.zone)
	if f != nil && f.What.Key == "jobfile.no-zone" {
		r.checker.zoneNeeded()
		return nil
	}
	if f != nil {
		return r.refuse(f.What, f.Allowed, f.Advice)
	}
	return t
}}

var localLayouts = []string{"2006-01-02T15:04:05", "2006-01-02T15:04", "2006-01-02 15:04:05", "2006-01-02 15:04"}

// Moment reads a time: RFC 3339, or a local one in the zone. A local hour that
// the clocks skip or repeat is refused with both readings named.
func Moment(text string, zone *time.Location) (time.Time, *fault.Fault) {
	text = strings.TrimSpace(text)
	for _, layout := range []string{time.RFC3339Nano, "2006-01-02T15:04Z07:00", "2006-01-02 15:04:05Z07:00", "2006-01-02 15:04Z07:00"} {
		if t, err := time.Parse(layout, text); err == nil {
			return within(t, text, zone)
		}
	}
	for _, layout := range localLayouts {
		if t, err := time.Parse(layout, text); err == nil {
			if zone == nil {
				return time.Time{}, momentFault(text, wording.Say("jobfile.no-zone"))
			}
			return local(t, text, zone)
		}
	}
	return time.Time{}, momentFault(text, wording.Say("jobfile.not-a-moment"))
}

// within keeps times to years that calendars and RFC 3339 can say.
func within(t time.Time, text string, zone *time.Location) (time.Time, *fault.Fault) {
	if y := t.UTC().Year(); y < 1970 || y > 2200 {
		return time.Time{}, momentFault(text, wording.Say("jobfile.year"))
	}
	if zone != nil {
		t = t.In(zone)
	}
	return t, nil
}

func momentFault(text string, what wording.Text) *fault.Fault {
	return fault.New("", text, what, wording.Say("jobfile.kind.moment"), wording.Text{})
}

// local finds the instant at which the clocks of a zone show a wall time.
func local(wall time.Time, text string, zone *time.Location) (time.Time, *fault.Fault) {
	if _, f := within(wall, text, zone); f != nil {
		return time.Time{}, f
	}
	before, after := readings(wall, zone)
	shows := func(t time.Time) bool { return t.Format(localLayouts[0]) == wall.Format(localLayouts[0]) }
	switch {
	case shows(before) && shows(after) && !before.Equal(after):
		return time.Time{}, twoReadings(text, "jobfile.hour-twice", before, after)
	case shows(before):
		return before, nil
	case shows(after):
		return after, nil
	}
	return time.Time{}, twoReadings(text, "jobfile.hour-missing", before, after)
}

// readings are the instants that a wall time means with the offset of the day
// before and of the day after.
func readings(wall time.Time, zone *time.Location) (before, after time.Time) {
	with := func(day time.Time) time.Time {
		_, offset := day.In(zone).Zone()
		return wall.Add(-time.Duration(offset) * time.Second).In(zone)
	}
	return with(wall.Add(-36 * time.Hour)), with(wall.Add(36 * time.Hour))
}

func twoReadings(text, sentence string, one, other time.Time) *fault.Fault {
	if other.Before(one) {
		one, other = other, one
	}
	f := momentFault(text, wording.Say(sentence, wording.Places{"one": one.Format(time.RFC3339), "other": other.Format(time.RFC3339)}))
	f.Advice = wording.Say("jobfile.hour.advice")
	return f
}

// dateKind is a calendar day, kept as its midnight in UTC.
var dateKind = kind{name: "date", schema: map[string]any{"type": "string", "format": "date"}, read: func(r reading) any {
	if r.shape != momentShape && r.shape != textShape {
		return r.wrongShape()
	}
	t, err := time.Parse(time.DateOnly, strings.TrimSpace(r.text))
	if err != nil || t.Year() < 1970 || t.Year() > 2200 {
		return r.refuse(wording.Say("jobfile.not-a-date"), r.allowed(), wording.Text{})
	}
	return t
}}

var clockSpan = regexp.MustCompile(`^([01]\d|2[0-4]):([0-5]\d)\s*[-–]\s*([01]\d|2[0-4]):([0-5]\d)$`)

// hoursKind is a span of the clock: "06:30-19:00", or over midnight.
var hoursKind = kind{name: "hours", schema: map[string]any{"type": "string"}, read: func(r reading) any {
	m := clockSpan.FindStringSubmatch(strings.TrimSpace(r.text))
	if r.shape != textShape || m == nil {
		return r.refuse(wording.Say("jobfile.not-hours"), r.allowed(), wording.Text{})
	}
	var h [4]int
	for i := range h {
		h[i], _ = strconv.Atoi(m[i+1]) // two digits, by the pattern
	}
	from, until := h[0]*60+h[1], h[2]*60+h[3]
	if from > 1440 || until > 1440 || from == until || from == 1440 {
		return r.refuse(wording.Say("jobfile.not-hours"), r.allowed(), wording.Text{})
	}
	return ground.WorkHours{From: from, Until: until}
}}

var weekdays = map[string]time.Weekday{
	"sun": time.Sunday, "mon": time.Monday, "tue": time.Tuesday, "wed": time.Wednesday,
	"thu": time.Thursday, "fri": time.Friday, "sat": time.Saturday,
}

var weekdayWords = []string{"mon", "tue", "wed", "thu", "fri", "sat", "sun"}

// daysKind is a list of days of the week.
var daysKind = kind{name: "days", choice: weekdayWords, schema: map[string]any{
	"type": "array", "items": map[string]any{"enum": weekdayWords},
}, read: func(r reading) any {
	if r.shape != listShape {
		return r.wrongShape()
	}
	days := []time.Weekday{}
	for _, item := range r.list {
		day, known := weekdays[strings.ToLower(item.text)]
		if item.shape != textShape || !known {
			one := r
			one.value = item
			return one.wrongChoice()
		}
		days = append(days, day)
	}
	return days
}}
