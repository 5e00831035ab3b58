package hygiene

// Judge decides many cases and remembers what it has worked out: beds and
// batches of one holding share most of their facts. It is not for use by
// several goroutines at once.
type Judge struct{ known map[question]Verdict }

// question is everything but the dates themselves that a verdict hangs on.
type question struct {
	value [factCount]uint8
	days  uint32
}

// NewJudge is a judge who remembers nothing yet.
func NewJudge() *Judge { return &Judge{known: map[question]Verdict{}} }

// Decide is the same as the function Decide.
func (j *Judge) Decide(facts Facts) Verdict {
	days := calendar{facts.Applied, facts.Harvest}
	q := question{facts.value, theLaw().daysMatter(days)}
	known, asked := j.known[q]
	if !asked {
		known = Decide(facts)
		j.known[q] = known
		return known
	}
	return known.redated(facts, days)
}

// daysMatter is what the dates mean for a verdict: which of them are known,
// and which waits are over by harvest.
func (l *law) daysMatter(c calendar) uint32 {
	bits := uint32(toAnswer(c.applied != nil)) | uint32(toAnswer(c.harvest != nil))<<1
	for i, wait := range l.waits {
		bits |= uint32(toAnswer(c.passed(wait))) << (i + 2)
	}
	return bits
}

// redated is a verdict on the same facts with other dates that mean the same.
func (v Verdict) redated(facts Facts, days calendar) Verdict {
	pathogens := v.Facts.value[Pathogens]
	v.Facts = facts
	v.Facts.value[Pathogens] = pathogens
	v.Until, v.LatestApplication = days.until(v.IntervalDays), days.latest(v.IntervalDays)
	if v.AtWorst != nil {
		worst := *v.AtWorst
		worst.Until = days.until(worst.IntervalDays)
		v.AtWorst = &worst
	}
	sets := make([]SetVerdict, len(v.Sets))
	for i, s := range v.Sets {
		s.Until = days.until(s.IntervalDays)
		sets[i] = s
	}
	v.Sets = sets
	return v
}
