package web

import (
	"fmt"
	"math"
	"strings"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/wording"
)

// oxygenCourse is what the chart of a batch is drawn from.
type oxygenCourse struct {
	start    time.Time // hour 0, in the site's zone
	now      float64   // hour of now; negative where nothing runs yet
	end      float64   // last hour drawn
	limit    float64   // mg/L
	rows     []forecast.Moment
	hold     []float64 // what the water can hold at each row, mg/L
	readings []readingMark
	events   []eventMark
	lowest   *lowestMark
}

// readingMark is one reading in the chart.
type readingMark struct {
	hour     float64
	do, temp *float64
	doubted  bool
}

// eventMark is something done or due.
type eventMark struct {
	hour float64
	icon string
	word string
}

// lowestMark is the lowest oxygen expected.
type lowestMark struct {
	hour, do float64
	text     string
}

// chartView is a chart as the template draws it.
type chartView struct {
	Title, Right, Spoken string
	Grid                 []string
	Shapes               []shape
	YLabels, XLabels     []label
	Words                []label
	Events               []eventLabel
	Diamond              string
}

type eventLabel struct{ Class, Icon, Word string }

// field is the drawing's plane: hours along, a quantity up.
type plane struct{ x, y scale }

func (f plane) point(hour, v float64) (float64, float64) {
	return f.x.at(hour), f.y.size - f.y.at(v)
}

func (f plane) left(hour float64) string { return fmt.Sprintf("left:%.2f%%", f.x.at(hour)/10) }
func (f plane) top(v float64) string     { return fmt.Sprintf("top:%.2f%%", 100-f.y.at(v)/f.y.size*100) }

// drawOxygen lays out the oxygen chart: bands, readings, limit, what the water
// can hold, now, and what is done and due.
func drawOxygen(p *page, c oxygenCourse) *chartView {
	f := c.plane()
	view := &chartView{Title: p.Say("web.chart.oxygen")}
	for _, t := range ticks(f.y.low, f.y.high) {
		view.Grid = append(view.Grid, fmt.Sprintf("%.1f", 400-f.y.at(t)))
		view.YLabels = append(view.YLabels, label{p.At(f.top(t)), wording.Number(t, 3, p.Reader)})
	}
	view.nights(c, f)
	view.fan(c, f)
	view.limit(p, c, f)
	view.readings(c, f)
	view.XLabels = c.hourLabels(p, f)
	for _, e := range c.events {
		x := f.x.at(e.hour)
		view.Shapes = append(view.Shapes, shape{Class: "event", Path: fmt.Sprintf("M%.1f 0V400", x)})
		view.Events = append(view.Events, eventLabel{p.At(f.left(math.Min(math.Max(e.hour, f.x.high*.03), f.x.high*.97))), e.icon, e.word})
	}
	if c.lowest != nil {
		view.Diamond = p.At(f.left(c.lowest.hour) + ";" + f.top(c.lowest.do))
		at := math.Min(math.Max(c.lowest.hour, f.x.high*.14), f.x.high*.86)
		view.Words = append(view.Words, label{"lowest " + p.At(f.left(at)+";"+f.top(c.lowest.do)), c.lowest.text})
	}
	return view
}

// plane spans the hours of the brew and the oxygen that occurs, with the limit
// always in sight.
func (c oxygenCourse) plane() plane {
	low, high := c.limit-0.5, c.limit+1
	for i, r := range c.rows {
		low, high = math.Min(low, r.DO.Low95), math.Max(high, math.Max(r.DO.High95, at(c.hold, i)))
	}
	for _, r := range c.readings {
		if r.do != nil {
			low, high = math.Min(low, *r.do), math.Max(high, *r.do)
		}
	}
	low, high = math.Max(0, math.Floor(low)), math.Ceil(high*2)/2
	return plane{scale{0, math.Max(c.end, 1), 1000}, scale{low, high, 400}}
}

func at(values []float64, i int) float64 {
	if i < len(values) {
		return values[i]
	}
	return 0
}

// nights shades the dark hours, 20:00 to 06:00 by the clock on the wall.
func (v *chartView) nights(c oxygenCourse, f plane) {
	for h := 0.0; h < c.end; h += 0.25 {
		clock := c.start.Add(time.Duration(h * float64(time.Hour))).Hour()
		if clock < 6 || clock >= 20 {
			v.Shapes = append(v.Shapes, shape{Class: "dark", Path: fmt.Sprintf("M%.1f 0H%.1fV400H%.1fZ", f.x.at(h), f.x.at(math.Min(h+0.25, c.end)), f.x.at(h))})
		}
	}
}

// fan draws the nested bands from now on, the edges of the 80 as lines, the
// middle as small dots, and all this water can hold.
func (v *chartView) fan(c oxygenCourse, f plane) {
	ahead := c.ahead()
	bands := []struct {
		class     string
		low, high func(forecast.Band) float64
	}{
		{"fan f95", func(b forecast.Band) float64 { return b.Low95 }, func(b forecast.Band) float64 { return b.High95 }},
		{"fan f80", func(b forecast.Band) float64 { return b.Low80 }, func(b forecast.Band) float64 { return b.High80 }},
		{"fan f50", func(b forecast.Band) float64 { return b.Low50 }, func(b forecast.Band) float64 { return b.High50 }},
	}
	xs := hoursOf(ahead)
	for _, b := range bands {
		v.Shapes = append(v.Shapes, shape{Class: b.class, Path: bandPath(xs, oxygenOf(ahead, b.low), oxygenOf(ahead, b.high), f.x, f.y)})
	}
	edge := bands[1]
	v.Shapes = append(v.Shapes,
		shape{Class: "fan-edge", Path: linePath(xs, oxygenOf(ahead, edge.low), f.x, f.y)},
		shape{Class: "fan-edge", Path: linePath(xs, oxygenOf(ahead, edge.high), f.x, f.y)},
		shape{Class: "mid", Path: linePath(xs, oxygenOf(ahead, func(b forecast.Band) float64 { return b.Median }), f.x, f.y)})
	if len(c.hold) == len(c.rows) && len(c.hold) > 0 {
		v.Shapes = append(v.Shapes, shape{Class: "hold", Path: linePath(hoursOf(c.rows), c.hold, f.x, f.y)})
	}
}

// ahead is the part of the course that is still to come.
func (c oxygenCourse) ahead() []forecast.Moment {
	for i, r := range c.rows {
		if r.Hour >= c.now-1e-6 {
			return c.rows[i:]
		}
	}
	return nil
}

func hoursOf(rows []forecast.Moment) []float64 {
	hours := make([]float64, len(rows))
	for i, r := range rows {
		hours[i] = r.Hour
	}
	return hours
}

func oxygenOf(rows []forecast.Moment, read func(forecast.Band) float64) []float64 {
	values := make([]float64, len(rows))
	for i, r := range rows {
		values[i] = read(r.DO)
	}
	return values
}

func (v *chartView) limit(p *page, c oxygenCourse, f plane) {
	_, y := f.point(0, c.limit)
	v.Shapes = append(v.Shapes,
		shape{Class: "under", Path: fmt.Sprintf("M0 %.1fH1000V400H0Z", y)},
		shape{Class: "limit", Path: fmt.Sprintf("M0 %.1fH1000", y)})
	v.Words = append(v.Words, label{"stop " + p.At("left:2px;"+f.top(c.limit)), p.Say("web.chart.limit", "limit", wording.Fixed(c.limit, 1, p.Reader))})
	if len(c.hold) > 0 {
		last := c.hold[len(c.hold)-1]
		v.Words = append(v.Words, label{"hold " + p.At("right:2px;"+f.top(math.Min(f.y.high-0.2, last+0.35))), p.Say("web.chart.hold")})
	}
	if c.now >= 0 {
		v.Shapes = append(v.Shapes, shape{Class: "now", Path: fmt.Sprintf("M%.1f 0V400", f.x.at(c.now))})
	}
}

// readings draws each reading as a ring, the latest filled, a doubted one as a
// square of the second kind.
func (v *chartView) readings(c oxygenCourse, f plane) {
	var rings, doubts strings.Builder
	last := ""
	for _, r := range c.readings {
		if r.do == nil {
			continue
		}
		x, y := f.point(r.hour, *r.do)
		if r.doubted {
			doubts.WriteString(dot(x, y))
			continue
		}
		if last != "" {
			rings.WriteString(last)
		}
		last = dot(x, y)
	}
	v.Shapes = append(v.Shapes, shape{Class: "ring", Path: rings.String()}, shape{Class: "ring-in", Path: rings.String()},
		shape{Class: "doubted", Path: doubts.String()}, shape{Class: "ring last", Path: last})
}

// hourLabels are the clock's hours under the chart, with the day where it
// begins, and now.
func (c oxygenCourse) hourLabels(p *page, f plane) []label {
	step := 6.0
	if c.end > 40 {
		step = 12
	}
	var all []label
	first := c.start.Truncate(time.Hour)
	for t := first; t.Before(c.start.Add(time.Duration(c.end * float64(time.Hour)))); t = t.Add(time.Hour) {
		h := t.Sub(c.start).Hours()
		if h < 0 || h > c.end*.96 || math.Mod(float64(t.Hour()), step) != 0 || c.now >= 0 && math.Abs(h-c.now) < c.end*.07 {
			continue
		}
		all = append(all, label{p.At(f.left(h)), t.Format("15") + " " + p.weekdayShort(t)})
	}
	if c.now >= 0 && c.now <= c.end {
		now := c.start.Add(time.Duration(c.now * float64(time.Hour)))
		at := math.Min(math.Max(c.now, c.end*.08), c.end*.92)
		all = append(all, label{"tag " + p.At(f.left(at)), p.Say("web.chart.now", "clock", now.Format("15:04"))})
	}
	return all
}
