package plan

import (
	"sort"
	"time"

	"aerosteep/job/ground"
	"aerosteep/science/weather"
	"aerosteep/wording"
)

// candidate is one hour of a window, with what speaks for and against it.
type candidate struct {
	at      time.Time
	sky     int // 2 suits, 1 care, 0 stop, and 1 where the forecast does not reach
	outside int // steps by hand outside the hours of work
}

// candidates are the hours of an outing's window, best first: the weather that
// suits, then the fewest steps outside the hours of work, then the earliest.
func (p *planner) candidates(o *outing) []time.Time {
	var list []candidate
	for at := firstQuarter(later(o.from, p.Now)); !at.After(o.until); at = at.Add(p.stride(o)) {
		if !p.taken(o, at) {
			list = append(list, candidate{at.In(p.zone), p.sky(o, at), p.outside(o, at)})
		}
	}
	allowed := list
	if p.Weather != nil {
		allowed = list[:0:0]
		for _, c := range list {
			if c.sky > weather.Stop {
				allowed = append(allowed, c)
			}
		}
		if len(allowed) == 0 && len(list) > 0 {
			p.badSky(o)
			return nil
		}
	}
	sort.SliceStable(allowed, func(i, j int) bool {
		if allowed[i].sky != allowed[j].sky {
			return allowed[i].sky > allowed[j].sky
		}
		return allowed[i].outside < allowed[j].outside
	})
	hours := make([]time.Time, len(allowed))
	for i, c := range allowed {
		hours[i] = c.at
	}
	return hours
}

func later(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}

// firstQuarter is the next quarter hour at or after a time.
func firstQuarter(t time.Time) time.Time {
	if q := t.Truncate(quarter); q.Equal(t) {
		return q
	}
	return t.Truncate(quarter).Add(quarter)
}

// stride keeps the hours of a long window to a number that can be looked at.
func (p *planner) stride(o *outing) time.Duration {
	switch width := o.until.Sub(o.from); {
	case width <= 12*time.Hour:
		return quarter
	case width <= 4*24*time.Hour:
		return 2 * quarter
	}
	return 4 * quarter
}

// taken tells whether an applicator of the outing is out at that hour with
// another one.
func (p *planner) taken(o *outing, at time.Time) bool {
	ends := at.Add(p.lastStart(o))
	for _, w := range o.wants {
		ends = later(ends, at.Add(w.loadTime()))
	}
	for _, other := range p.outings {
		if other == o || len(other.wants) == 0 || other.inWindow() && !other.settled {
			continue
		}
		if sharesApplicator(o, other) && at.Before(other.at.Add(p.lastStart(other)+other.wants[len(other.wants)-1].loadTime())) && other.at.Before(ends) {
			return true
		}
	}
	return false
}

func sharesApplicator(a, b *outing) bool {
	for _, v := range a.wants {
		for _, w := range b.wants {
			if v.applicator != nil && w.applicator != nil && v.applicator.Name == w.applicator.Name {
				return true
			}
		}
	}
	return false
}

// outside counts the steps by hand that would fall outside the hours of work.
func (p *planner) outside(o *outing, at time.Time) int {
	n := 0
	for _, w := range o.wants {
		n += outsideAt(w.site, w.hasSite, at)
	}
	alone, together := p.suited(o, p.needed(o))
	if likely := append(alone, together...); len(likely) > 0 {
		site, known := p.File.Site(likely[0].Site)
		option, _ := p.timing(o, likely[0], at)
		for _, t := range []time.Time{option.load, option.ready, option.start, option.start.Add(-leads[1])} {
			n += outsideAt(site, known, t.In(p.zone))
		}
	}
	return n
}

func outsideAt(site ground.Site, known bool, at time.Time) int {
	if known && !site.WorksAt(at) {
		return 1
	}
	return 0
}

// sky is the worst mark of the hours that an outing takes.
func (p *planner) sky(o *outing, at time.Time) int {
	if p.Weather == nil {
		return weather.Suits
	}
	worst := weather.Suits
	for _, w := range o.wants {
		ends := at.Add(w.loadTime())
		for _, h := range p.scored(w) {
			if h.At.Add(time.Hour).After(at) && h.At.Before(ends) {
				worst = min(worst, markOf(h))
			}
		}
		if !p.reaches(at) {
			worst = min(worst, weather.Care)
		}
	}
	return worst
}

func markOf(h weather.Scored) int {
	if h.Score == nil {
		return weather.Care
	}
	return *h.Score
}

func (p *planner) reaches(at time.Time) bool {
	hours := p.Weather.Hours
	return len(hours) > 0 && !at.Before(hours[0].At) && at.Before(hours[len(hours)-1].At.Add(time.Hour))
}

// scored is the forecast judged for a want's site and method.
func (p *planner) scored(w *want) []weather.Scored {
	key := w.bed.Site + "/" + w.Method
	if p.skies[key] == nil {
		p.skies[key] = weather.Score(p.Weather, w.underSky())
	}
	return p.skies[key]
}

// underSky is what hours are judged for at a want's site, by its method.
func (w *want) underSky() weather.Question {
	question := weather.Question{Method: weather.Method(w.Method)}
	if w.hasSite {
		question.Place = &weather.Place{Latitude: w.site.Latitude, Longitude: w.site.Longitude}
		question.Altitude = w.site.Altitude
	}
	return question
}

// badSky leaves an outing unmet because no hour of its window suits.
func (p *planner) badSky(o *outing) {
	w := o.wants[0]
	limiting := map[weather.Factor]int{}
	for _, h := range p.scored(w) {
		if !h.At.Before(o.from.Add(-time.Hour)) && h.At.Before(o.until) && h.Limiting != "" {
			limiting[h.Limiting]++
		}
	}
	most := weather.Rain
	for _, f := range weather.Factors {
		if limiting[f] > limiting[most] {
			most = f
		}
	}
	nearest := wording.Say("plan.nearest.no-sky")
	if windows := weather.Windows(p.scored(w), 1, true); len(windows) > 0 {
		nearest = wording.Say("plan.nearest.sky", wording.Places{"from": Clock(windows[0].Start.In(p.zone)), "until": Clock(windows[0].End.In(p.zone))})
	}
	p.refuse(o, ByWeather, wording.Say("plan.unmet.weather", wording.Places{"factor": wording.Say("plan.sky." + string(most))}), nearest)
}

// fixedSky says where the hour that was asked for does not suit.
func (p *planner) fixedSky(o *outing) {
	if p.Weather == nil || o.inWindow() {
		return
	}
	for _, w := range o.wants {
		for _, h := range p.scored(w) {
			if h.At.Add(time.Hour).After(o.at) && !h.At.After(o.at) && markOf(h) == weather.Stop {
				p.caution("plan.caution.sky", wording.Places{"bed": w.Bed, "hour": Clock(o.at), "factor": wording.Say("plan.sky." + string(h.Limiting))})
			}
		}
	}
}
