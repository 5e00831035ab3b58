package bench

import (
	"math"
	"sort"

	"aerosteep/quantity"
)

// The band of both US rules, compared at 0.1 °C: 131 and 170 °F.
const (
	Hot    quantity.Temperature = 55.0
	TooHot quantity.Temperature = 76.7
)

// Reading is one temperature of one place in a heap.
type Reading struct {
	Hour        float64 // from the start of the log
	Temperature quantity.Temperature
}

// Probe is a place in the heap with its readings in order of time.
type Probe struct {
	Name     string
	Readings []Reading
}

// HeatLog is what was measured and done at one heap.
type HeatLog struct {
	Probes []Probe
	Turned []float64     // hours at which it was turned
	MaxGap quantity.Span // a longer stretch without a reading proves nothing
}

// ProbeHeat is what one place went through.
type ProbeHeat struct {
	Name              string
	AtTemperature     quantity.Span // between 55.0 and 76.7 °C
	HotOrMore         quantity.Span // at 55.0 °C and over
	LongestRun        quantity.Span // of that, unbroken
	AboveLimit        quantity.Span // over 76.7 °C
	Highest           quantity.Temperature
	firstHot, lastHot float64
	everHot           bool
}

// Gap is a stretch without a reading, in hours.
type Gap struct{ From, To float64 }

// Heat is the whole log judged: each place by itself, the worst one counts.
type Heat struct {
	Probes        []ProbeHeat
	AtTemperature quantity.Span
	HotOrMore     quantity.Span
	LongestRun    quantity.Span
	AboveLimit    quantity.Span
	Turnings      int
	Gaps          []Gap
}

// Judge joins the readings, rounded to 0.1 °C, by straight lines and counts
// the time that the line spends inside the band, ends included. A stretch
// longer than the gap counts nothing and breaks a run.
func (l HeatLog) Judge() Heat {
	h := Heat{AtTemperature: quantity.Span(math.Inf(1)), HotOrMore: quantity.Span(math.Inf(1)), LongestRun: quantity.Span(math.Inf(1))}
	first, last, ever := math.Inf(1), math.Inf(-1), false
	for _, p := range l.Probes {
		heat := l.probe(p)
		h.Probes = append(h.Probes, heat)
		h.AtTemperature, h.HotOrMore = min(h.AtTemperature, heat.AtTemperature), min(h.HotOrMore, heat.HotOrMore)
		h.LongestRun, h.AboveLimit = min(h.LongestRun, heat.LongestRun), max(h.AboveLimit, heat.AboveLimit)
		h.Gaps = append(h.Gaps, l.gaps(p)...)
		if heat.everHot {
			first, last, ever = math.Min(first, heat.firstHot), math.Max(last, heat.lastHot), true
		}
	}
	h.Gaps = distinctGaps(h.Gaps)
	if ever {
		h.Turnings = turningsWithin(l.Turned, first, last)
	}
	return h
}

// turningsWithin counts each hour once, both ends included.
func turningsWithin(hours []float64, first, last float64) int {
	seen := map[float64]bool{}
	for _, hour := range hours {
		if hour >= first-hair && hour <= last+hair {
			seen[hour] = true
		}
	}
	return len(seen)
}

func distinctGaps(gaps []Gap) []Gap {
	sort.SliceStable(gaps, func(i, j int) bool { return gaps[i].From < gaps[j].From })
	kept := []Gap{}
	seen := map[Gap]bool{}
	for _, g := range gaps {
		if !seen[g] {
			kept, seen[g] = append(kept, g), true
		}
	}
	return kept
}

func (l HeatLog) gaps(p Probe) []Gap {
	var gaps []Gap
	for i := 1; i < len(p.Readings); i++ {
		if l.isGap(p.Readings[i-1], p.Readings[i]) {
			gaps = append(gaps, Gap{p.Readings[i-1].Hour, p.Readings[i].Hour})
		}
	}
	return gaps
}

func (l HeatLog) isGap(a, b Reading) bool { return b.Hour-a.Hour > l.MaxGap.Hours()*(1+hair) }

// tenth rounds as the rules are read.
func tenth(t quantity.Temperature) quantity.Temperature {
	return quantity.Temperature(math.Round(float64(t)*10) / 10)
}

func (l HeatLog) probe(p Probe) ProbeHeat {
	heat := ProbeHeat{Name: p.Name, Highest: quantity.Temperature(math.Inf(-1))}
	for _, r := range p.Readings {
		heat.Highest = max(heat.Highest, tenth(r.Temperature))
		if tenth(r.Temperature) >= Hot {
			heat.hotAt(r.Hour, r.Hour)
		}
	}
	run := 0.0
	for i := 1; i < len(p.Readings); i++ {
		a, b := p.Readings[i-1], p.Readings[i]
		if l.isGap(a, b) {
			run = 0
			continue
		}
		run = heat.stretch(line{a.Hour, b.Hour, float64(tenth(a.Temperature)), float64(tenth(b.Temperature))}, run)
	}
	return heat
}

func (p *ProbeHeat) hotAt(from, to float64) {
	if !p.everHot || from < p.firstHot {
		p.firstHot = from
	}
	if !p.everHot || to > p.lastHot {
		p.lastHot = to
	}
	p.everHot = true
}

// stretch adds one straight line and answers the run that is still open at its
// end.
func (p *ProbeHeat) stretch(l line, run float64) float64 {
	from, to, hot := l.between(float64(Hot), math.Inf(1))
	if !hot {
		return 0
	}
	p.hotAt(from, to)
	p.HotOrMore += quantity.Hours(to - from)
	if low, high, in := l.between(float64(Hot), float64(TooHot)); in {
		p.AtTemperature += quantity.Hours(high - low)
	}
	if low, high, in := l.between(float64(TooHot), math.Inf(1)); in && (l.startT > float64(TooHot) || l.endT > float64(TooHot)) {
		p.AboveLimit += quantity.Hours(high - low)
	}
	if l.startT < float64(Hot) {
		run = 0
	}
	run += to - from
	p.LongestRun = max(p.LongestRun, quantity.Hours(run))
	if l.endT < float64(Hot) {
		return 0
	}
	return run
}

// line joins two readings.
type line struct{ start, end, startT, endT float64 }

// between is the time the line spends from low to high, ends included.
func (l line) between(low, high float64) (from, to float64, any bool) {
	least, most := math.Min(l.startT, l.endT), math.Max(l.startT, l.endT)
	switch {
	case most < low || least > high:
		return 0, 0, false
	case least == most:
		return l.start, l.end, true
	}
	from, to = l.when(low), l.when(high)
	if l.startT > l.endT {
		from, to = to, from
	}
	return math.Max(l.start, from), math.Min(l.end, to), true
}

// when is the moment a line that is not level passes a temperature.
func (l line) when(t float64) float64 {
	return l.start + (t-l.startT)/(l.endT-l.startT)*(l.end-l.start)
}
