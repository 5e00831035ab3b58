package report

import (
	"fmt"
	"time"

	"aerosteep/wording"
	"aerosteep/worksheet"
)

// Label names a key on a paper.
func Label(key string, r wording.Reader) string {
	if wording.Known("paper.key." + key) {
		return wording.Say("paper.key." + key).For(r)
	}
	return worksheet.Label(key, r)
}

// Spoken is a value on a paper: never an empty cell, and both systems of units
// where the other one says it otherwise.
func Spoken(key string, value any, r wording.Reader) string {
	switch v := value.(type) {
	case nil:
		return wording.Say("paper.not-written").For(r)
	case time.Time:
		return Stamp(v, r)
	case wording.Speaker:
		return v.Speak(r)
	case string:
		return wordOf(key, v, r)
	}
	said := worksheet.Value(key, value, r)
	other := r
	other.Units = wording.US
	if r.Units == wording.US {
		other.Units = wording.Metric
	}
	if also := worksheet.Value(key, value, other); also != said {
		return said + " (" + also + ")"
	}
	return said
}

// wordOf is a word of a fixed list in the reader's language; other words stay
// as they were written.
func wordOf(key, word string, r wording.Reader) string {
	for _, entry := range []string{"paper.word." + key + "." + word, "value." + key + "." + word} {
		if wording.Known(entry) {
			return wording.Say(entry).For(r)
		}
	}
	if word == "" {
		return wording.Say("paper.not-written").For(r)
	}
	return word
}

// Stamp is a moment with its day, clock and zone: 2026-05-12 15:45 −07:00.
func Stamp(t time.Time, r wording.Reader) string {
	_, seconds := t.Zone()
	sign := "+"
	if seconds < 0 {
		sign, seconds = "\u2212", -seconds
	}
	return wording.Say("paper.stamp", wording.Places{
		"year": fmt.Sprintf("%04d", t.Year()), "month": fmt.Sprintf("%02d", int(t.Month())), "date": fmt.Sprintf("%02d", t.Day()),
		"clock": t.Format("15:04"), "zone": fmt.Sprintf("%s%02d:%02d", sign, seconds/3600, seconds/60%60),
	}).For(r)
}

// grace is how far doing and writing may lie apart before a paper says so.
const grace = 15 * time.Minute

// Remark says that something was written down long after it happened, or
// before: then a clock was wrong. Nil where neither is so.
func Remark(at, recorded time.Time) any {
	late := recorded.Sub(at)
	switch {
	case late < -grace:
		return wording.Say("paper.clock-wrong", wording.Places{"wait": span(-late)})
	case late > grace:
		return wording.Say("paper.written-later", wording.Places{"wait": span(late)})
	}
	return nil
}

func span(d time.Duration) wording.Text {
	switch {
	case d < 90*time.Minute:
		return wording.Say("paper.span.minutes", wording.Places{"n": int(d.Minutes() + 0.5)})
	case d < 48*time.Hour:
		return wording.Say("paper.span.hours", wording.Places{"n": int(d.Hours() + 0.5)})
	}
	return wording.Say("paper.span.days", wording.Places{"n": int(d.Hours()/24 + 0.5)})
}

// short is the end of an entry's id, enough to find it in the logbook.
func short(id string) string {
	if len(id) <= 8 {
		return id
	}
	return id[len(id)-8:]
}
