package hygiene

import (
	"time"

	"aerosteep/wording"
)

// Allowed is the word of a verdict.
type Allowed string

// The words, from the freest to the strictest; Ask stands beside them.
const (
	Yes       Allowed = "yes"
	WaitUntil Allowed = "wait-until"
	No        Allowed = "no"
	Ask       Allowed = "ask"
)

// Effect is what a reason does to the verdict.
type Effect string

// The effects of a reason.
const (
	Allows  Effect = "allows"
	Forbids Effect = "forbids"
	Delays  Effect = "delays"
	Asks    Effect = "asks"
	Advises Effect = "advises"
)

// Verdict is what may be done with one batch on one bed, by all rule sets.
type Verdict struct {
	Ruling
	LatestApplication *time.Time // the day of harvest less the interval
	AtWorst           *Ruling    // the strictest that can come out of an Ask
	DecidedBy         []string   // the applying sets that say the same
	Sets              []SetVerdict
	Missing           []Fact
	Derived           []Derived
	Facts             Facts
	Contested         bool // rests on a reading or a recommendation that is argued about
	Why               []Reason
}

// Ruling is an answer with its interval.
type Ruling struct {
	Allowed      Allowed
	Until        *time.Time // the first day on which the crop may be picked
	IntervalDays *int       // 0 none; nil where forbidden or not yet settled
}

// SetVerdict is what one rule set says.
type SetVerdict struct {
	Name            string
	Applies         *bool // nil where it is not known
	Ruling                // Allowed is "" where the set does not apply
	Force           string
	Missing         []Fact
	HasStatus       bool // the set sorts material into treated and untreated
	Status          string
	AgriculturalTea *bool
	deciding        answer
	contested       bool
	couldApply      bool
}

// Derived is a fact that was taken from what a job file says anyway.
type Derived struct {
	Fact  Fact
	Value string
	From  string
}

// Reason is one sentence of why, with its paragraph.
type Reason struct {
	Set      string
	Rule     string // the paragraph; Citation has its title before it
	Citation string
	Text     wording.Text
	Effect   Effect
	Force    string
	Read     string // the day on which the paragraph was last read, or "memory"
}

// calendar turns an interval into a ruling, given the days that are known.
type calendar struct{ applied, harvest *time.Time }

// passed tells whether a wait of so many days is over at the planned harvest.
func (c calendar) passed(days outcome) bool {
	return c.applied != nil && c.harvest != nil && !c.harvest.Before(c.applied.AddDate(0, 0, int(days)))
}

// as sorts an outcome into what it means on these days: a wait that is over by
// harvest is a yes.
func (c calendar) as(o outcome) answer {
	if o > 0 && o < forbidden && c.passed(o) {
		return 0
	}
	return o
}

func (c calendar) word(o outcome) Allowed {
	switch {
	case o == forbidden:
		return No
	case c.as(o) == 0:
		return Yes
	}
	return WaitUntil
}

// until is the first day of harvest after an interval, if the day of
// application is known.
func (c calendar) until(days *int) *time.Time {
	if c.applied == nil || days == nil {
		return nil
	}
	day := c.applied.AddDate(0, 0, *days)
	return &day
}

func (c calendar) latest(days *int) *time.Time {
	if c.harvest == nil || days == nil {
		return nil
	}
	day := c.harvest.AddDate(0, 0, -*days)
	return &day
}

// ruling is what the outcomes come to that can still come out. They are one
// answer if they mean the same; a wait whose beginning is unknown is none.
func (c calendar) ruling(ends []outcome) Ruling {
	r := Ruling{Allowed: c.word(ends[0])}
	same := true
	for _, o := range ends[1:] {
		same = same && o == ends[0]
		if c.as(o) != c.as(ends[0]) {
			r.Allowed = Ask
		}
	}
	if c.hangsOnDay(ends) {
		r.Allowed = Ask
	}
	if same && ends[0] != forbidden {
		days := int(ends[0])
		r.IntervalDays = &days
		r.Until = c.until(r.IntervalDays)
	}
	return r
}

// hangsOnDay tells whether the day of application is missing for an answer.
func (c calendar) hangsOnDay(ends []outcome) bool {
	if c.applied != nil {
		return false
	}
	for _, o := range ends {
		if o > 0 && o < forbidden {
			return true
		}
	}
	return false
}

// worst is the strictest of the outcomes.
func (c calendar) worst(ends []outcome) outcome {
	worst := ends[0]
	for _, o := range ends[1:] {
		worst = max(worst, o)
	}
	return worst
}
