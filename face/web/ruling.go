package web

import (
	"strings"
	"time"

	"aerosteep/job/hygiene"
)

// ruling is a hygiene verdict as a page tells it: the verdict, the reason, the
// number, the paragraph.
func (p *page) ruling(bed string, v *hygiene.Verdict) ruling {
	r := ruling{Bed: bed, Class: string(v.Allowed), Icon: map[hygiene.Allowed]string{
		hygiene.Yes: "yes", hygiene.No: "no", hygiene.WaitUntil: "clock", hygiene.Ask: "doubt",
	}[v.Allowed]}
	switch v.Allowed {
	case hygiene.Yes:
		r.Say = p.Say("web.ruling.yes", "bed", bed)
	case hygiene.No:
		r.Say = p.Say("web.ruling.no", "bed", bed)
	case hygiene.WaitUntil:
		r.Say = p.Say("web.ruling.wait", "bed", bed, "day", p.day(v.Until))
	default:
		facts := make([]string, len(v.Missing))
		for i, f := range v.Missing {
			facts[i] = factWord(p, f.String())
		}
		r.Say = p.Say("web.ruling.ask", "bed", bed, "facts", strings.Join(facts, ", "))
	}
	if len(v.Why) > 0 { // the deciding row; the rest stands on the page of the verdict
		r.Why = v.Why[0].Text.For(p.Reader)
		if cite := v.Why[0].Citation; cite != "" {
			r.Why += " (" + cite + ")"
		}
	}
	return r
}

func factWord(p *page, fact string) string { return choiceWord(p, "fact", fact) }

func (p *page) day(t *time.Time) string {
	if t == nil {
		return p.Say("web.day.unknown")
	}
	return p.Date(*t)
}
