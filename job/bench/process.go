package bench

import "aerosteep/quantity"

// Method is how a heap is kept.
type Method string

// The methods that the rules know.
const (
	Windrow    Method = "windrow"
	StaticPile Method = "static-pile"
	InVessel   Method = "in-vessel"
)

// Methods lists them.
var Methods = []string{string(Windrow), string(StaticPile), string(InVessel)}

// HoursNeeded is 3 days, for a windrow 15.
func (m Method) HoursNeeded() float64 {
	if m == Windrow {
		return 15 * 24
	}
	return 3 * 24
}

// TurningsNeeded is 5 for a windrow.
func (m Method) TurningsNeeded() int {
	if m == Windrow {
		return 5
	}
	return 0
}

// Starting C:N by 7 CFR 205.203(c)(2).
const (
	LeanestRatio = 25.0
	RichestRatio = 40.0
)

// Meets is an answer that may have to wait for a fact.
type Meets string

// The answers.
const (
	Yes Meets = "yes"
	No  Meets = "no"
	Ask Meets = "ask"
)

// Judgement is one rule held against a log.
type Judgement struct {
	Meets        Meets
	Lacking      []string // days, turns, cn-low, cn-high, curing
	Missing      []string // facts that were not given: cn, cured
	Rule         string
	HoursCounted quantity.Span
}

// Facts are what a log of temperatures cannot show; nil is not known.
type Facts struct {
	Ratio *float64 // starting C:N
	Cured *bool
}

// NOP holds the log against 7 CFR 205.203(c)(2).
func (h Heat) NOP(m Method, f Facts) Judgement {
	j := h.judgement(m, h.AtTemperature, "7 CFR 205.203(c)(2)")
	switch {
	case f.Ratio == nil:
		j.Missing = append(j.Missing, "cn")
	case *f.Ratio < LeanestRatio*(1-hair):
		j.Lacking = append(j.Lacking, "cn-low")
	case *f.Ratio > RichestRatio*(1+hair):
		j.Lacking = append(j.Lacking, "cn-high")
	}
	return j.decided()
}

// FDA holds the log against 21 CFR 112.54(b), which asks for consecutive days
// except of a windrow.
func (h Heat) FDA(m Method, f Facts) Judgement {
	j := h.judgement(m, h.counted(m), "21 CFR 112.54(b)")
	switch {
	case f.Cured == nil:
		j.Missing = append(j.Missing, "cured")
	case !*f.Cured:
		j.Lacking = append(j.Lacking, "curing")
	}
	return j.decided()
}

func (h Heat) counted(m Method) quantity.Span {
	if m == Windrow {
		return h.HotOrMore
	}
	return h.LongestRun
}

func (h Heat) judgement(m Method, counted quantity.Span, rule string) Judgement {
	j := Judgement{Rule: rule, HoursCounted: counted, Lacking: []string{}, Missing: []string{}}
	if !enough(counted, m) {
		j.Lacking = append(j.Lacking, "days")
	}
	if h.Turnings < m.TurningsNeeded() {
		j.Lacking = append(j.Lacking, "turns")
	}
	return j
}

func enough(counted quantity.Span, m Method) bool { return counted.Hours() >= m.HoursNeeded()*(1-hair) }

func (j Judgement) decided() Judgement {
	switch {
	case len(j.Lacking) > 0:
		j.Meets = No
	case len(j.Missing) > 0:
		j.Meets = Ask
	default:
		j.Meets = Yes
	}
	return j
}

// Meets tells whether time and turnings satisfy both rules.
func (h Heat) Meets(m Method) bool {
	return enough(h.AtTemperature, m) && enough(h.counted(m), m) && h.Turnings >= m.TurningsNeeded()
}
