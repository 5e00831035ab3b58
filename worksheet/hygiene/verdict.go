package hygiene

import (
	"slices"
	"time"

	"aerosteep/job/hygiene"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// Ruling is one verdict as every face's JSON shows it.
type Ruling struct {
	Allowed           string           `json:"allowed"`
	Until             *string          `json:"until"`
	IntervalDays      *int             `json:"interval_days"`
	LatestApplication *string          `json:"latest_application"`
	AtWorst           *Worst           `json:"at_worst"`
	DecidedBy         []string         `json:"decided_by"`
	RuleSets          worksheet.Object `json:"rule_sets"`
	Missing           []string         `json:"missing"`
	Derived           []Derived        `json:"derived"`
	Facts             worksheet.Object `json:"facts"`
	RulesAsOf         string           `json:"rules_as_of"`
	Basis             string           `json:"basis"`
	Why               []Reason         `json:"why"`
	Nearest           []Way            `json:"nearest"`
}

// Worst is the strictest end of a verdict that asks.
type Worst struct {
	Allowed      string  `json:"allowed"`
	IntervalDays *int    `json:"interval_days"`
	Until        *string `json:"until"`
}

// Derived is a fact taken from what a job file says anyway.
type Derived struct {
	Fact  string `json:"fact"`
	Value string `json:"value"`
	From  string `json:"from"`
}

// Reason is one sentence of why.
type Reason struct {
	Set      string       `json:"set"`
	Rule     string       `json:"rule"`
	Text     wording.Text `json:"text"`
	Effect   string       `json:"effect"`
	Force    string       `json:"force"`
	Citation string       `json:"citation"`
	Read     string       `json:"read"`
}

// RuleSet is what one set says.
type RuleSet struct {
	Applies      *bool    `json:"applies"`
	Allowed      *string  `json:"allowed"`
	Until        *string  `json:"until"`
	IntervalDays *int     `json:"interval_days"`
	Force        string   `json:"force"`
	Missing      []string `json:"missing"`
}

// SortingSet is a set that sorts material into treated and untreated.
type SortingSet struct {
	RuleSet
	Status          *string `json:"status"`
	AgriculturalTea *bool   `json:"agricultural_tea"`
}

// RulingOf puts a verdict into the form that faces show.
func RulingOf(v hygiene.Verdict) Ruling { return rulingOf(v, hygiene.NewJudge()) }

// rulingOf asks a judge who may have seen such a case before.
func rulingOf(v hygiene.Verdict, judge *hygiene.Judge) Ruling {
	r := Ruling{
		Allowed: string(v.Allowed), Until: date(v.Until), IntervalDays: v.IntervalDays,
		LatestApplication: date(v.LatestApplication), DecidedBy: orNone(v.DecidedBy),
		RuleSets: ruleSets(v.Sets), Missing: names(v.Missing), Derived: []Derived{},
		Facts: factsUsed(v.Facts), RulesAsOf: hygiene.RulesAsOf, Basis: string(basisOf(v)),
		Why: []Reason{}, Nearest: []Way{},
	}
	if w := v.AtWorst; w != nil {
		r.AtWorst = &Worst{string(w.Allowed), w.IntervalDays, date(w.Until)}
	}
	for _, d := range v.Derived {
		r.Derived = append(r.Derived, Derived{d.Fact.String(), d.Value, d.From})
	}
	for _, why := range v.Why {
		r.Why = append(r.Why, Reason{why.Set, why.Rule, why.Text, string(why.Effect), why.Force, why.Citation, why.Read})
	}
	for _, way := range judge.NearestWays(v) {
		r.Nearest = append(r.Nearest, wayOf(way))
	}
	return r
}

func basisOf(v hygiene.Verdict) worksheet.Basis {
	if v.Contested {
		return worksheet.Contested
	}
	return worksheet.Standard
}

// ruleSets keeps the sets in their order as one object.
func ruleSets(sets []hygiene.SetVerdict) worksheet.Object {
	object := worksheet.Object{}
	for _, s := range sets {
		one := RuleSet{Applies: s.Applies, Until: date(s.Until), IntervalDays: s.IntervalDays, Force: s.Force, Missing: names(s.Missing)}
		if s.Allowed != "" {
			one.Allowed = worksheet.Some(string(s.Allowed))
		}
		var shown any = one
		if s.HasStatus {
			sorting := SortingSet{RuleSet: one, AgriculturalTea: s.AgriculturalTea}
			if s.Status != "" {
				sorting.Status = worksheet.Some(s.Status)
			}
			shown = sorting
		}
		object = append(object, member(s.Name, shown))
	}
	return object
}

// member puts a struct without sentences under a key.
func member(key string, value any) worksheet.Member {
	node, err := worksheet.Tree(value, wording.Reader{})
	if err != nil {
		panic("hygiene: " + key + ": " + err.Error())
	}
	return worksheet.Member{Key: key, Value: node}
}

// factsUsed shows every fact as it was used; what nobody knows is null.
func factsUsed(f hygiene.Facts) worksheet.Object {
	object := worksheet.Object{}
	for _, fact := range hygiene.All() {
		object = append(object, worksheet.Member{Key: fact.String(), Value: factUsed(f, fact)})
	}
	return object
}

func factUsed(f hygiene.Facts, fact hygiene.Fact) any {
	switch {
	case fact == hygiene.Applied && f.Applied != nil:
		return *date(f.Applied)
	case fact == hygiene.Harvest && f.Harvest != nil:
		return *date(f.Harvest)
	case fact == hygiene.Held && f.HeldFor != nil:
		return wording.Number(f.HeldFor.Hours(), 6, wording.Reader{Language: wording.English}) + " h"
	case f.Value(fact) != "":
		return f.Value(fact)
	}
	return nil
}

func names(facts []hygiene.Fact) []string {
	all := make([]string, len(facts))
	for i, f := range facts {
		all[i] = f.String()
	}
	return all
}

func orNone(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}

func date(t *time.Time) *string {
	if t == nil {
		return nil
	}
	s := t.Format(time.DateOnly)
	return &s
}

// Sources are those behind every verdict.
func Sources() []source.Source {
	return []source.Source{source.CFR21Part112, source.CFR7Part205, source.NOSB2004, source.Duffy2004, source.Ingram2007}
}

// Cautions are those that stand with every verdict.
func Cautions() []wording.Text {
	return []wording.Text{
		wording.Say("hygiene.caution.law"), wording.Say("hygiene.caution.test"),
		wording.Say("hygiene.caution.edible"), wording.Say("hygiene.caution.people"),
	}
}

// told are the keys that Notes say better than a figure.
var told = []string{"allowed", "interval_days", "at_worst", "decided_by", "rule_sets", "derived", "facts", "why", "nearest"}

// Answered is a verdict as the answer to one question.
func Answered(v hygiene.Verdict) *worksheet.Result {
	result := &worksheet.Result{
		Answer: Sentence(v), Notes: Notes(v), Data: RulingOf(v), Told: told, Sources: Sources(), Cautions: Cautions(),
	}
	if len(v.Missing) <= hygiene.ReadableFacts {
		result.Told = append(slices.Clone(told), "missing")
	}
	if v.Allowed != hygiene.WaitUntil {
		result.Told = append(slices.Clone(result.Told), "until")
	}
	return result
}

// Notes are the reasons of a verdict and the nearest ways out, each with its
// rule set and paragraph.
func Notes(v hygiene.Verdict) []wording.Text {
	var notes []wording.Text
	for _, why := range v.Why {
		notes = append(notes, wording.Say("hygiene.note", wording.Places{
			"set": wording.Say("hygiene.set." + why.Set), "text": why.Text, "rule": why.Citation, "force": wording.Say("hygiene.force." + why.Force),
		}))
	}
	for _, way := range hygiene.NearestWays(v) {
		notes = append(notes, way.Text())
	}
	return notes
}

// Sentence says a verdict in one sentence, the answer first.
func Sentence(v hygiene.Verdict) wording.Text {
	switch v.Allowed {
	case hygiene.Yes:
		return wording.Say("hygiene.answer.yes")
	case hygiene.No:
		return wording.Say("hygiene.answer.no")
	case hygiene.WaitUntil:
		return wording.Say("hygiene.answer.wait-until", wording.Places{"until": wording.Day(*v.Until), "days": *v.IntervalDays})
	}
	if len(v.Missing) > hygiene.ReadableFacts {
		return wording.Say("hygiene.answer.ask-many", wording.Places{"n": len(v.Missing), "first": hygiene.FactNames(hygiene.Questions([]hygiene.Facts{v.Facts})[:1])})
	}
	return wording.Say("hygiene.answer.ask", wording.Places{"facts": hygiene.FactNames(v.Missing)})
}

// Way is something to do differently, and what the same rules say then.
type Way struct {
	Change       []string     `json:"change"`
	Text         wording.Text `json:"text"`
	Allowed      string       `json:"allowed"`
	Until        *string      `json:"until"`
	IntervalDays *int         `json:"interval_days"`
}

func wayOf(w hygiene.Way) Way {
	way := Way{Text: w.Text(), Allowed: string(w.Allowed), Until: date(w.Until), IntervalDays: w.IntervalDays}
	for _, c := range w.Changes {
		way.Change = append(way.Change, c.Key)
	}
	return way
}
