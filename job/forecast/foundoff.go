package forecast

import "math"

// Lost is a stretch in whose course the air stopped, nobody knows when: it was
// seen on at its start, and found off at its end.
type Lost struct {
	From, Until float64 // hours since the start
	Under       Range   // hours under the limit since its start, of the members
}

// lostAt are the stretches of a log, the earliest first.
func (q *Question) lostAt() []Lost {
	var all []Lost
	for i := range q.Log.Events {
		e := &q.Log.Events[i]
		if e.What != FoundOff || e.Hour > q.Now+sameMoment {
			continue
		}
		from := q.seenOn(e)
		if from < e.Hour-sameMoment {
			all = append(all, Lost{From: from, Until: e.Hour})
		}
	}
	return all
}

// seenOn is when the air was last known to run before it was found off: as was
// said, else at the last reading or change of the air, else at the start.
func (q *Question) seenOn(e *Event) float64 {
	if e.Seen > 0 {
		return math.Max(0, e.Hour-e.Seen.Hours())
	}
	last := 0.0
	for _, other := range q.Log.Events {
		if other.Hour < e.Hour-sameMoment && (other.What == AirOn || other.What == AirSet) {
			last = math.Max(last, other.Hour)
		}
	}
	for _, r := range q.Log.Readings {
		if r.Hour < e.Hour-sameMoment {
			last = math.Max(last, r.Hour)
		}
	}
	return last
}

// edgesOf are the hours at which steps must begin and end.
func edgesOf(lost []Lost) []float64 {
	var hours []float64
	for _, l := range lost {
		hours = append(hours, l.From, l.Until)
	}
	return hours
}

// markLost tells the steps of lost stretches, and those after them in which hours
// under the limit are counted.
func markLost(steps []step, lost []Lost) {
	for i := range steps {
		s := &steps[i]
		for _, l := range lost {
			if s.from >= l.From-sameMoment {
				s.counted = true
			}
			if s.from >= l.From-sameMoment && s.to() <= l.Until+sameMoment {
				s.lostUntil = l.Until
			}
			if math.Abs(s.from-l.From) < sameMoment {
				s.counts = true
			}
		}
	}
}

// stopSome lets the air of some members stop in a step of a lost stretch, so that
// over the whole of it every moment is as likely as another: of those that still
// run, hours / (hours left). Where it is found off, all have stopped.
func (e *ensemble) stopSome(s *step) {
	chance := s.hours / (s.lostUntil - s.from)
	for i := range e.members {
		m := &e.members[i]
		if m.air > 0 && e.noise.Uniform.Float64() < chance {
			m.setAir(0)
		}
	}
}

// countUnder adds the hours of a step to the members that are under the limit.
func (e *ensemble) countUnder(s *step) {
	for i := range e.members {
		m := &e.members[i]
		if s.counts {
			m.under = 0
		}
		if m.oxygen < e.limit {
			m.under += s.hours
		}
	}
}

// lastLost is the latest lost stretch with what it cost; nil where there is none.
func (f *follow) lastLost(lost []Lost) *Lost {
	if len(lost) == 0 {
		return nil
	}
	l := lost[len(lost)-1]
	b := f.band(func(m *member) float64 { return m.under })
	l.Under = Range{Median: b.Median, Low80: b.Low80, High80: b.High80}
	return &l
}
