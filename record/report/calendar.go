package report

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"aerosteep/job/plan"
)

// stepMinutes is how long a step stands in a calendar.
const stepMinutes = 15

// Visit is when to look after a living batch again: its next reading.
type Visit struct {
	Batch, Text string
	At          time.Time
}

// Calendar is a plan's steps and the next visits of living batches as RFC 5545:
// one event for each, times in UTC, stamped with the plan's own now. An event's
// UID is made of batch and step, so that a plan made again moves the events and
// does not double them.
func Calendar(p *plan.Plan, visits ...Visit) []byte {
	c := &icalendar{}
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//aerosteep//plan//EN")
	c.line("CALSCALE", "GREGORIAN")
	for _, v := range visits {
		c.event(p.Now, plan.Batch{ID: v.Batch}, plan.Step{What: "read", Text: v.Text, At: v.At}, 1)
	}
	for _, b := range p.Batches {
		seen := map[string]int{}
		for _, s := range b.Steps {
			seen[s.What]++
			c.event(p.Now, b, s, seen[s.What])
		}
	}
	c.line("END", "VCALENDAR")
	return []byte(c.text.String())
}

type icalendar struct{ text strings.Builder }

func (c *icalendar) event(now time.Time, b plan.Batch, s plan.Step, n int) {
	c.line("BEGIN", "VEVENT")
	c.line("UID", uid(b.ID, s.What, n))
	c.line("DTSTAMP", utc(now))
	c.line("DTSTART", utc(s.At))
	c.line("DTEND", utc(s.At.Add(stepMinutes*time.Minute)))
	c.line("SUMMARY", escape(s.Text))
	c.line("DESCRIPTION", escape(b.ID+" · "+s.What))
	c.reminder(s.Text)
	c.line("END", "VEVENT")
}

// reminder rings the phone before a step, since nobody else calls (RFC 5545,
// 3.6.6: a display alarm has action, description and trigger).
func (c *icalendar) reminder(text string) {
	c.line("BEGIN", "VALARM")
	c.line("ACTION", "DISPLAY")
	c.line("DESCRIPTION", escape(text))
	c.line("TRIGGER", "-PT10M")
	c.line("END", "VALARM")
}

// uid names an event for good: a digest of the batch's id, the kind of step,
// and which of its kind it is.
func uid(batch, what string, n int) string {
	digest := sha256.Sum256([]byte(batch))
	return fmt.Sprintf("%s-%s-%d@aerosteep", hex.EncodeToString(digest[:8]), what, n)
}

func utc(t time.Time) string { return t.UTC().Format("20060102T150405Z") }

// escape writes TEXT as RFC 5545 section 3.3.11 asks.
func escape(s string) string {
	return strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\r\n", `\n`, "\n", `\n`, "\r", "").Replace(s)
}

// line writes one content line, folded at 75 octets between letters (section
// 3.1).
func (c *icalendar) line(name, value string) {
	const most = 75
	rest := name + ":" + value
	room := most
	for len(rest) > room {
		cut := room
		for cut > 1 && !utf8.RuneStart(rest[cut]) {
			cut--
		}
		c.text.WriteString(rest[:cut] + "\r\n ")
		rest, room = rest[cut:], most-1
	}
	c.text.WriteString(rest + "\r\n")
}
