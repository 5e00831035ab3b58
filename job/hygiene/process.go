package hygiene

import (
	"math"
	"slices"

	"aerosteep/quantity"
)

// Heap is what is known of how a compost was made. Nil and "" are unknown.
type Heap struct {
	Method          string // in-vessel, static-pile, windrow, other
	Lowest, Highest *quantity.Temperature
	Days            *float64
	Consecutive     *bool
	Turns           *int
	Cured           *bool
	CarbonNitrogen  *float64
	AllHeated       *bool
}

// HeapMethods are the ways of composting that the rules tell apart.
var HeapMethods = []string{inVessel, staticPile, windrow, otherMethod}

const (
	inVessel    = "in-vessel"
	staticPile  = "static-pile"
	windrow     = "windrow"
	otherMethod = "other"
)

// Meets is the answer to whether a heap meets a rule.
type Meets string

// The three answers.
const (
	MeetsYes Meets = "yes"
	MeetsNo  Meets = "no"
	MeetsAsk Meets = "ask"
)

// ProcessVerdict is what one rule says of a heap.
type ProcessVerdict struct {
	Meets   Meets
	Lacking []string // the requirements that are known not to be met
	Missing []string // the facts that the answer hangs on
	Rule    string
}

// ProcessVerdicts are what the four rules say.
type ProcessVerdicts struct{ NOP, NOP5021, FDA, EU ProcessVerdict }

// JudgeProcess compares a heap with the time and temperature rules for treated
// compost. Temperatures are compared at 0.1 °C, the step of the thermometer.
//
// Source: 7 CFR 205.203(c)(2); NOP 5021 (2011); 21 CFR 112.54(b); Regulation
// (EU) 2019/1009, Annex II, CMC 3 point 4.
func JudgeProcess(h Heap) ProcessVerdicts {
	return ProcessVerdicts{
		NOP:     h.byMethod("7 CFR 205.203(c)(2)", nopRequirements),
		NOP5021: answer5021(h),
		FDA:     h.byMethod("21 CFR 112.54(b)", fdaRequirements),
		EU:      answerEU(h),
	}
}

// requirement is one line of a rule: whether it is met, and the fact it hangs
// on where that is not known.
type requirement struct {
	name  string // as it is called where it is lacking
	fact  string
	state state
}

type state int

const (
	unknownState state = iota
	metState
	unmetState
)

func stateOf(known, met bool) state {
	switch {
	case !known:
		return unknownState
	case met:
		return metState
	}
	return unmetState
}

// The numbers of the rules.
const (
	hot           = 55.0 // °C, 131 °F
	tooHot        = 76.7 // °C, 170 °F
	shortDays     = 3
	windrowDays   = 15
	windrowTurns  = 5
	leanestCarbon = 25 // C:N
	richestCarbon = 40
)

func atThermometer(t quantity.Temperature) float64 { return math.Round(t.Celsius()*10) / 10 }

func (h Heap) hotEnough() requirement {
	met := h.Lowest != nil && atThermometer(*h.Lowest) >= hot
	return requirement{"temperature-low", "lowest_temp", stateOf(h.Lowest != nil, met)}
}

func (h Heap) longEnough(days float64) requirement {
	return requirement{"days", "days", stateOf(h.Days != nil, h.Days != nil && *h.Days >= days)}
}

func (h Heap) daysFor(method string) requirement {
	if method == windrow {
		return h.longEnough(windrowDays)
	}
	return h.longEnough(shortDays)
}

func (h Heap) turned() requirement {
	return requirement{"turns", "turns", stateOf(h.Turns != nil, h.Turns != nil && *h.Turns >= windrowTurns)}
}

func nopRequirements(h Heap, method string) []requirement {
	notTooHot := h.Highest != nil && atThermometer(*h.Highest) <= tooHot
	list := []requirement{
		h.hotEnough(),
		{"temperature-high", "highest_temp", stateOf(h.Highest != nil, notTooHot)},
		h.daysFor(method),
	}
	if method == windrow {
		list = append(list, h.turned())
	}
	known := h.CarbonNitrogen != nil
	return append(list,
		requirement{"cn-low", "cn", stateOf(known, known && *h.CarbonNitrogen >= leanestCarbon)},
		requirement{"cn-high", "cn", stateOf(known, known && *h.CarbonNitrogen <= richestCarbon)})
}

func fdaRequirements(h Heap, method string) []requirement {
	list := []requirement{h.hotEnough(), h.daysFor(method)}
	if method == windrow {
		list = append(list, h.turned())
	} else {
		list = append(list, requirement{"consecutive", "consecutive", stateOf(h.Consecutive != nil, h.Consecutive != nil && *h.Consecutive)})
	}
	return append(list, requirement{"curing", "cured", stateOf(h.Cured != nil, h.Cured != nil && *h.Cured)})
}

func answer5021(h Heap) ProcessVerdict {
	mixed := requirement{"mixing", "all_heated", stateOf(h.AllHeated != nil, h.AllHeated != nil && *h.AllHeated)}
	return judged("NOP 5021", []requirement{h.hotEnough(), h.longEnough(shortDays), mixed})
}

// answerEU asks for fewer days the hotter the heap was; below 55 °C no number
// of days will do.
func answerEU(h Heap) ProcessVerdict {
	const rule = "(EU) 2019/1009 Annex II CMC 3"
	low := h.hotEnough()
	switch {
	case low.state == unmetState:
		return judged(rule, []requirement{low})
	case low.state == metState:
		return judged(rule, []requirement{low, h.longEnough(euDays(atThermometer(*h.Lowest)))})
	case h.Days != nil && *h.Days < euDays(math.Inf(1)):
		return judged(rule, []requirement{{"days", "days", unmetState}})
	}
	return judged(rule, []requirement{low, {"days", "days", stateOf(h.Days != nil, true)}})
}

func euDays(lowest float64) float64 {
	switch {
	case lowest >= 70:
		return 3
	case lowest >= 65:
		return 5
	case lowest >= 60:
		return 7
	}
	return 14
}

// judged is no as soon as one known fact fails, ask if none fails and one is
// missing.
func judged(rule string, list []requirement) ProcessVerdict {
	v := ProcessVerdict{Meets: MeetsYes, Lacking: []string{}, Missing: []string{}, Rule: rule}
	for _, r := range list {
		switch {
		case r.state == unmetState:
			v.Lacking = append(v.Lacking, r.name)
		case r.state == unknownState && !slices.Contains(v.Missing, r.fact):
			v.Missing = append(v.Missing, r.fact)
		}
	}
	switch {
	case len(v.Lacking) > 0:
		v.Meets, v.Missing = MeetsNo, []string{}
	case len(v.Missing) > 0:
		v.Meets = MeetsAsk
	}
	return v
}

// byMethod judges by a rule whose requirements depend on the method. Another
// method than the rule's meets it by nothing; an unknown one is tried with
// every value, and is no only where it would be no with each.
func (h Heap) byMethod(rule string, list func(Heap, string) []requirement) ProcessVerdict {
	switch h.Method {
	case otherMethod:
		return ProcessVerdict{MeetsNo, []string{"method"}, []string{}, rule}
	case inVessel, staticPile, windrow:
		return judged(rule, list(h, h.Method))
	}
	open := ProcessVerdict{Meets: MeetsAsk, Lacking: []string{}, Missing: []string{"method"}, Rule: rule}
	var always, ever []string
	failing := 0
	for i, method := range []string{inVessel, staticPile, windrow} {
		v := judged(rule, list(h, method))
		if v.Meets == MeetsNo {
			failing++
		}
		open.Missing = union(open.Missing, v.Missing)
		ever = union(ever, v.Lacking)
		always = slices.DeleteFunc(always, func(s string) bool { return !slices.Contains(v.Lacking, s) })
		if i == 0 {
			always = v.Lacking
		}
	}
	if failing < 3 {
		return open
	}
	if len(always) == 0 {
		always = ever
	}
	return ProcessVerdict{MeetsNo, always, []string{}, rule}
}

func union(a, b []string) []string {
	for _, s := range b {
		if !slices.Contains(a, s) {
			a = append(a, s)
		}
	}
	return a
}
