package hygiene

import (
	"math"
	"slices"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// Way is something to do differently, and what the same rules say then.
type Way struct {
	Changes []Change
	Ruling
}

// Change is one decision of the grower that can be taken otherwise.
type Change struct {
	Key  string       // "unfed"
	Text wording.Text // what to do
}

// decision is a change with its effect on the facts. It is only offered where
// it changes something that is known.
type decision struct {
	key   string
	apply func(Facts) Facts
}

// decisions are the changes a grower can make, the least trouble first. None
// of them changes what is true of the farm, the crop or the law.
var decisions = []decision{
	{"sanitize", func(f Facts) Facts { return f.With(Sanitized, "yes") }},
	{"keep-off", func(f Facts) Facts { return keptOff(f, f.Value(Method)) }},
	{"drench", drenched},
	{"drip", func(f Facts) Facts { return keptOff(f, "drip").With(ContactAfter, "none") }},
	{"unfed", func(f Facts) Facts { f.AdditiveNames = nil; return f.With(Additives, "none") }},
	{"extract", func(f Facts) Facts { return f.HoldingFor(quantity.Hours(1)) }},
	{"good-water", func(f Facts) Facts { return f.With(Water, "municipal").With(WaterEColi, "not-detected") }},
	{"pretest", func(f Facts) Facts { return f.With(Pretest, "passed") }},
	{"documented-compost", documented},
}

// keptOff puts the liquid on the ground, below the part people eat. The leaves
// are no longer wetted, so what is left is splash.
func keptOff(f Facts, method string) Facts {
	if method == "foliar" || method == "" {
		return f
	}
	f = f.With(Method, method).With(ContactDuring, "none")
	if f.Value(ContactAfter) == "contact" {
		f = f.With(ContactAfter, "minimized")
	}
	return f
}

// drenched pours on the soil what was to be sprayed.
func drenched(f Facts) Facts {
	if f.Value(Method) != "foliar" {
		return f
	}
	return keptOff(f, "drench")
}

// documented takes hot compost whose record is on file in place of what there
// is.
func documented(f Facts) Facts {
	if m := f.Value(Material); m == "raw-manure" || m == "leachate" {
		f = f.With(Material, "compost")
	}
	f = f.With(Treatment, "hot").With(ProcessRecord, "yes").With(NOPCompost, "yes")
	return f.With(Contaminated, "no").With(HumanWaste, "no").With(Pathogens, "not-found")
}

// NearestWays computes what would be allowed instead of a no or a wait: each
// single decision that leads to a better verdict, and, where no single one
// does, each two. A wait also names the first day of harvest that ends it.
func NearestWays(v Verdict) []Way { return NewJudge().NearestWays(v) }

// NearestWays is the same as the function NearestWays.
func (j *Judge) NearestWays(v Verdict) []Way {
	if v.Allowed != No && v.Allowed != WaitUntil {
		return nil
	}
	var ways []Way
	for i := range decisions {
		ways = j.appendBetter(ways, v, decisions[i])
	}
	if len(ways) == 0 {
		for i := range decisions {
			for k := i + 1; k < len(decisions); k++ {
				ways = j.appendBetter(ways, v, decisions[i], decisions[k])
			}
		}
	}
	if v.Allowed == WaitUntil {
		ways = append(ways, laterHarvest(v))
	}
	slices.SortStableFunc(ways, func(a, b Way) int { return strictness(a.Ruling) - strictness(b.Ruling) })
	return ways
}

// Text says all changes of the way, and what is allowed then.
func (w Way) Text() wording.Text {
	text := w.Changes[0].Text
	for _, c := range w.Changes[1:] {
		text = wording.Say("hygiene.way.and", wording.Places{"first": text, "second": c.Text})
	}
	if w.Allowed == WaitUntil {
		return wording.Say("hygiene.way.then-wait", wording.Places{"way": text, "until": wording.Day(*w.Until)})
	}
	return wording.Say("hygiene.way.then-yes", wording.Places{"way": text})
}

func (j *Judge) appendBetter(ways []Way, v Verdict, changes ...decision) []Way {
	facts := v.Facts
	way := Way{}
	for _, d := range changes {
		changed := d.apply(facts)
		if changed.value == facts.value {
			return ways
		}
		facts = changed
		way.Changes = append(way.Changes, Change{d.key, wording.Say("hygiene.way." + d.key)})
	}
	then := j.Decide(facts)
	if then.Allowed == Ask || strictness(then.Ruling) >= strictness(v.Ruling) {
		return ways
	}
	way.Ruling = then.Ruling
	return append(ways, way)
}

// laterHarvest is the wait itself, said as a decision.
func laterHarvest(v Verdict) Way {
	then := v.Ruling
	then.Allowed = Yes
	text := wording.Say("hygiene.way.later-harvest", wording.Places{"until": wording.Day(*v.Until)})
	if v.LatestApplication != nil {
		text = wording.Say("hygiene.way.later-harvest-or-earlier", wording.Places{"until": wording.Day(*v.Until), "latest": wording.Day(*v.LatestApplication)})
	}
	return Way{Changes: []Change{{"later-harvest", text}}, Ruling: then}
}

// daysBefore1970 keeps the number of a day above zero from the year 1 on.
const daysBefore1970 = 719163

// strictness orders rulings: yes, then waits by their last day, then no.
func strictness(r Ruling) int {
	switch {
	case r.Allowed == Yes:
		return 0
	case r.Allowed == WaitUntil && r.Until != nil:
		return int(r.Until.Unix()/86400) + daysBefore1970
	}
	return math.MaxInt32
}
