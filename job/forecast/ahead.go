package forecast

import (
	"math"
	"slices"
)

// paths are the members' ways from now on, by rows of time.
type paths struct {
	hours  []float64
	oxygen [][]float64 // by row, then member
	water  [][]float64
	uptake [][]float64

	moments []Moment
}

// horizon is how far ahead a number is asked for.
type horizon struct {
	now, judged, planned, end float64 // judged: until then the limit counts
}

func (q *Question) horizon() horizon {
	h := horizon{now: q.Now, planned: q.Setup.Planned.Hours()}
	h.judged = math.Min(q.Now+q.Hours, h.planned)
	h.end = math.Max(q.Now+q.Hours, h.planned)
	return h
}

// ahead walks the members from now to the end.
func (f *Forecast) ahead() {
	h := f.question.horizon()
	f.paths = f.now.future(f.question, f.changes, h)
	for _, m := range f.paths.moments {
		if m.Hour <= f.question.Now+f.question.Hours+sameMoment {
			f.Course = append(f.Course, m)
		}
	}
	f.Ready = f.now.ready(h)
	f.holdReady()
	if h.judged <= h.now {
		return
	}
	low := bandOf(f.now.gather(func(m *member) float64 { return m.lowestDO }))
	at := rangeOf(f.now.gather(func(m *member) float64 { return m.lowestHour }))
	chance := f.now.chance()
	f.MinDO, f.MinHour, f.Chance = &low, &at, &chance
	if chance > 50 {
		below := f.now.crossing()
		f.BelowAt = &below
	}
}

// crossing is the median hour at which members go under the limit, of those
// that do.
func (e *ensemble) crossing() float64 {
	hours := e.gather(func(m *member) float64 { return m.belowHour })
	hours = slices.DeleteFunc(hours, func(h float64) bool { return math.IsInf(h, 1) })
	slices.Sort(hours)
	return hours[len(hours)/2]
}

// future walks every member on; the noise begins anew, so that two futures
// differ only by what was changed.
func (e *ensemble) future(q *Question, changes []change, h horizon) *paths {
	e.noise = e.noiseOf(q.Seed)
	p := &paths{}
	for i := range e.members {
		m := &e.members[i]
		m.lowestDO, m.lowestHour, m.belowHour = math.Inf(1), h.now, math.Inf(1)
		m.remember(h.now, e.limit)
	}
	steps := timeline(&q.Setup, changes, h.end, h.now)
	for i := range steps {
		s := &steps[i]
		if s.from < h.now-sameMoment {
			continue
		}
		e.strideTo(s, h)
		if s.row >= 0 {
			p.record(e, s.to())
		}
	}
	return p
}

// strideTo is stride that stops judging at the end of what is asked.
func (e *ensemble) strideTo(s *step, h horizon) {
	surges := e.surges() * fading(s.from-h.now)
	judged, planned := s.to() <= h.judged+sameMoment, s.to() <= h.planned+sameMoment
	for i := range e.members {
		m := &e.members[i]
		if s.knot {
			m.wander(e.noise, surges)
		}
		for j := range s.changes {
			m.happen(&s.changes[j], e.noise)
		}
		m.advance(s, e.climate)
		if planned && m.uptake > m.peakUptake {
			m.peakUptake, m.peakHour = m.uptake, s.to()
		}
		if judged {
			m.rememberLow(s.to(), e.limit)
		}
	}
}

func (p *paths) record(e *ensemble, hour float64) {
	p.hours = append(p.hours, hour)
	p.moments = append(p.moments, e.moment(hour))
	p.oxygen = append(p.oxygen, e.gather(func(m *member) float64 { return m.oxygen }))
	p.water = append(p.water, e.gather(func(m *member) float64 { return m.water }))
	p.uptake = append(p.uptake, e.gather(func(m *member) float64 { return m.uptake }))
}

// readyChance is the chance, in 100, from which a brew is called ready.
const readyChance = 80

// ready reads off the members when their uptake was or will be highest.
func (e *ensemble) ready(h horizon) Ready {
	hours := e.gather(func(m *member) float64 { return m.peakHour })
	slices.Sort(hours)
	past := 0
	for _, hour := range hours {
		if hour < h.now {
			past++
		}
	}
	r := Ready{Chance: 100 * float64(past) / float64(len(hours)), Range: rangeOf(hours)}
	if at := hours[len(hours)*readyChance/100]; at < h.planned-courseHours {
		at = math.Max(at, 0)
		r.Hour = &at
	}
	return r
}

// Oxygen that falls by more than this in an hour, in mg/L, under air that runs
// says that uptake still grows: whatever the members think, the brew is not
// called ready then.
const (
	stillFalling = 0.1
	notYetReady  = readyChance - 1
)

// holdReady keeps the chance under the mark while the oxygen falls, as the
// members have it for the hour that was or for the hour to come.
func (f *Forecast) holdReady() {
	if f.Ready.Chance < readyChance || f.past == 0 {
		return
	}
	now, before, after := f.State.DO.Median, math.NaN(), math.NaN()
	for _, m := range f.Course {
		switch hour := m.Hour - f.question.Now; {
		case hour >= -1.5 && hour <= -0.75:
			before = m.DO.Median
		case hour >= 0.75 && hour <= 1.5 && math.IsNaN(after):
			after = m.DO.Median
		}
	}
	if before-now > stillFalling || now-after > stillFalling {
		f.Ready.Chance = notYetReady
	}
}
