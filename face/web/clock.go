package web

import (
	"fmt"
	"time"

	"aerosteep/wording"
)

// weekdayShort is the day's name in three letters or so.
func (p *page) weekdayShort(t time.Time) string {
	return p.Say(fmt.Sprintf("web.day.%d", int(t.Weekday())))
}

// weekday is the day's whole name.
func (p *page) weekday(t time.Time) string {
	return p.Say(fmt.Sprintf("web.weekday.%d", int(t.Weekday())))
}

// Date is a day as people say it: "Wed 10 June".
func (p *page) Date(t time.Time) string {
	return p.Say("web.date", "day", p.weekdayShort(t), "n", t.Day(), "month", p.Say(fmt.Sprintf("web.month.%d", int(t.Month()))))
}

// Clock is the time of day.
func (p *page) Clock(t time.Time) string { return t.Format("15:04") }

// When is the clock with the day unless it is today.
func (p *page) When(t, now time.Time) string {
	if sameDay(t, now) {
		return p.Clock(t)
	}
	return p.weekdayShort(t) + "\u00a0" + p.Clock(t)
}

// Beside is what stands small beside a clock time: the wait when it is short,
// the day when it is another one.
func (p *page) Beside(t, now time.Time) string {
	wait := t.Sub(now)
	switch {
	case wait > 0 && wait < 2*time.Hour:
		if wait < time.Hour {
			return p.Say("web.in-minutes", "n", int(wait.Minutes()+0.5))
		}
		return p.Say("web.in-hours", "h", int(wait.Hours()), "min", int(wait.Minutes())%60)
	case sameDay(t, now):
		return ""
	case t.Sub(now) < 6*24*time.Hour && t.After(now):
		return p.weekday(t)
	}
	return p.Date(t)
}

func sameDay(a, b time.Time) bool {
	b = b.In(a.Location())
	return a.YearDay() == b.YearDay() && a.Year() == b.Year()
}

// around is a forecast's clock time, to 10 minutes.
func around(t time.Time) time.Time { return t.Round(10 * time.Minute) }

// Chance is a chance in words: never 0, never 100.
func (p *page) Chance(in100 float64) string { return p.Text(wording.Chance(in100)) }

// oneDecimal is dissolved oxygen as a sentence says it.
func (p *page) oneDecimal(v float64) string { return wording.Fixed(v, 1, p.Reader) }
