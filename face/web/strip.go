package web

import (
	"fmt"
	"math"
	"slices"
	"time"
	"unicode/utf8"

	"aerosteep/science/weather"
	"aerosteep/wording"
)

// strip is the hours strip: a row for the verdict, one for each factor. A bar
// in a factor's row means that the factor says no or take care; an empty
// column is good.
type strip struct {
	Title, Spoken string
	Class         string // says how many hours the strip has
	Nights        []string
	Rows          []stripRow
	Ticks         []tick
}

type stripRow struct {
	Name, Class string
	Bars        []stripBar
}

// stripBar is a run of hours in a row. Two lines for the verdict: from, until.
type stripBar struct{ Class, Word, Until string }

type tick struct{ Class, Clock, Day string }

// spell is an unbroken run of hours that share a word.
type spell struct {
	from, until time.Time
	word        string
	hours       []*weather.Scored
}

// spells parts hours into runs by a word; hours without a word belong to none.
// A gap in the forecast ends a run.
func spells(hours []weather.Scored, word func(*weather.Scored) string) []spell {
	var all []spell
	for i := range hours {
		h := &hours[i]
		w := word(h)
		if w == "" {
			continue
		}
		if n := len(all); n > 0 && all[n-1].word == w && all[n-1].until.Equal(h.At) {
			all[n-1].until = h.At.Add(time.Hour)
			all[n-1].hours = append(all[n-1].hours, h)
			continue
		}
		all = append(all, spell{h.At, h.At.Add(time.Hour), w, []*weather.Scored{h}})
	}
	return all
}

// stripFrame is the span of time that a strip is drawn in.
type stripFrame struct {
	p      *page
	start  time.Time
	hours  float64
	method weather.Method
}

func (f stripFrame) end() time.Time {
	return f.start.Add(time.Duration(f.hours * float64(time.Hour)))
}

// at places something from one moment to another.
func (f stripFrame) at(from, until time.Time) string {
	a, b := from.Sub(f.start).Hours(), until.Sub(f.start).Hours()
	return f.p.At(fmt.Sprintf("--a:%.2f;--b:%.2f", math.Max(0, a), math.Min(f.hours, b)))
}

// draw makes the strip. Where quiet, factors that nothing is said of have no
// row.
func (f stripFrame) draw(hours []weather.Scored, quiet bool) *strip {
	s := &strip{Class: f.p.At(fmt.Sprintf("--n:%.0f", f.hours)), Ticks: f.ticks()}
	shown := f.within(hours)
	for _, night := range spells(shown, dark) {
		s.Nights = append(s.Nights, f.at(night.from, night.until))
	}
	s.Rows = append(s.Rows, f.verdicts(shown))
	for _, factor := range weather.Factors {
		if !f.method.Minds(factor) {
			continue
		}
		if row := f.factor(shown, factor); !quiet || len(row.Bars) > 0 {
			s.Rows = append(s.Rows, row)
		}
	}
	for _, sign := range weather.SurfaceSigns {
		if row := f.surface(shown, sign); len(row.Bars) > 0 {
			s.Rows = append(s.Rows, row)
		}
	}
	return s
}

// surface is the row of a sign of leaves or soil: always "take care", since only
// a look on the spot settles it.
func (f stripFrame) surface(hours []weather.Scored, sign weather.SurfaceSign) stripRow {
	row := stripRow{Name: f.p.Text(sign.Name())}
	for _, run := range spells(hours, func(h *weather.Scored) string {
		if slices.Contains(h.Surface, sign) {
			return "care"
		}
		return ""
	}) {
		row.Bars = append(row.Bars, stripBar{Class: run.word + " " + f.at(run.from, run.until)})
	}
	return row
}

func (f stripFrame) within(hours []weather.Scored) []weather.Scored {
	var shown []weather.Scored
	for _, h := range hours {
		if h.At.Add(time.Hour).After(f.start) && h.At.Before(f.end()) {
			shown = append(shown, h)
		}
	}
	return shown
}

// dark is the word of an hour with the sun below the horizon.
func dark(h *weather.Scored) string {
	if h.SunElevation != nil && *h.SunElevation < -0.833 {
		return "dark"
	}
	return ""
}

func (f stripFrame) verdicts(hours []weather.Scored) stripRow {
	row := stripRow{Name: f.p.Say("web.hours.suits"), Class: "suits"}
	for _, run := range spells(hours, func(h *weather.Scored) string { return string(h.Verdict) }) {
		if run.word != string(weather.VerdictSuits) && run.word != string(weather.VerdictCare) {
			continue
		}
		bar := stripBar{Class: run.word + " " + f.at(run.from, run.until)}
		if run.word == string(weather.VerdictSuits) && run.until.Sub(run.from) > time.Hour {
			f.clocks(&bar, run)
		}
		row.Bars = append(row.Bars, bar)
	}
	return row
}

// clocks writes the times of a spell over its bar; one that runs on beyond the
// strip has no end there.
func (f stripFrame) clocks(bar *stripBar, run spell) {
	from, until := run.from.In(f.start.Location()), run.until.In(f.start.Location())
	if from.After(f.start) {
		bar.Word = f.p.Clock(from)
	}
	if until.Before(f.end()) {
		bar.Until = f.p.Say("web.hours.until", "clock", f.p.Clock(until))
	}
	switch {
	case from.Sub(f.start).Hours() > 0.8*f.hours:
		bar.Class += " end"
	case until.Sub(f.start).Hours() < 0.2*f.hours:
		bar.Class += " begin"
	}
}

// markClass is how a mark below "suits" is drawn.
func markClass(found weather.Finding) string {
	switch {
	case found.Mark == nil:
		return "unknown"
	case *found.Mark == weather.Stop:
		return "stop"
	case *found.Mark == weather.Care:
		return "care"
	}
	return ""
}

func (f stripFrame) factor(hours []weather.Scored, factor weather.Factor) stripRow {
	row := stripRow{Name: f.p.Say("web.hours.row." + string(factor))}
	for _, run := range spells(hours, func(h *weather.Scored) string {
		found := h.Findings[factor]
		if factor == weather.Gust && found.Mark == nil {
			return "" // nobody forecast gusts: they do not count
		}
		return markClass(found)
	}) {
		bar := stripBar{Class: run.word + " " + f.at(run.from, run.until)}
		if word := f.word(factor, run); fits(word, run.until.Sub(run.from).Hours()/f.hours) {
			bar.Word = word
		}
		row.Bars = append(row.Bars, bar)
	}
	return row
}

// fits tells whether a word has room in a share of the phone's track, taken as
// 270 px with 8 px a letter.
func fits(word string, share float64) bool {
	return float64(utf8.RuneCountInString(word)*8+10) <= share*270
}

// word is the little word in a bar, for its worst hour.
func (f stripFrame) word(factor weather.Factor, run spell) string {
	if run.word == "unknown" {
		return "?"
	}
	middle := run.hours[len(run.hours)/2]
	value := middle.Findings[factor].Value
	switch factor {
	case weather.Wind, weather.Gust:
		if run.word == "care" {
			return f.p.Say("web.hours.still")
		}
		return f.p.Text(wording.Say("web.hours.value", wording.Places{"value": strongest(run, factor)}))
	case weather.Inversion:
		return f.p.Say("web.hours.inversion." + string(middle.Inversion))
	case weather.Depression:
		if middle.Depression != nil && weather.Rate(*middle.Depression) == weather.DryTooLittle {
			return f.p.Say("web.hours.damp")
		}
		return f.p.Say("web.hours.dry")
	case weather.Temperature:
		if value != nil && *value > 20 {
			return f.p.Say("web.hours.hot")
		}
		return f.p.Say("web.hours.cold")
	case weather.UV:
		return f.p.Say("web.hours.uv." + run.word)
	}
	return ""
}

// strongest is the highest wind or gust of a run.
func strongest(run spell, factor weather.Factor) wording.Speaker {
	most := run.hours[0].Wind
	for _, h := range run.hours {
		v := h.Wind
		if factor == weather.Gust {
			v = h.Gust
		}
		if most == nil || factor == weather.Gust && most == run.hours[0].Wind || v != nil && *v > *most {
			most = v
		}
	}
	return *most
}

// ticks stand at every sixth hour of the clock, the day under the first of it.
func (f stripFrame) ticks() []tick {
	var all []tick
	day := -1
	first := f.start.Truncate(time.Hour)
	if first.Before(f.start) {
		first = first.Add(time.Hour)
	}
	for t := first; t.Before(f.end()); t = t.Add(time.Hour) {
		if t.Hour()%6 != 0 || t.Sub(f.start).Hours() > f.hours-1 {
			continue
		}
		mark := tick{Class: f.at(t, t), Clock: fmt.Sprintf("%02d", t.Hour())}
		if t.YearDay() != day {
			day, mark.Day = t.YearDay(), f.p.weekdayShort(t)
		}
		all = append(all, mark)
	}
	return all
}
