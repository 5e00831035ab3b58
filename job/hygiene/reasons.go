package hygiene

import (
	"slices"

	"aerosteep/wording"
)

// why gives at least one reason for each set that applies or may apply: the
// row that decides, the rows that decided what it asks, and what helps.
func (l *law) why(v *Verdict, facts *Facts) []Reason {
	var why []Reason
	for i := range v.Sets {
		s := &v.Sets[i]
		if s.couldApply {
			why = append(why, l.reasons(s, facts)...)
		}
		v.Contested = v.Contested || s.couldApply && (s.contested || facts.arguedAdditive())
	}
	return append(why, l.advice(v, facts)...)
}

// reasons are those of one set. The rows behind the deciding one come first:
// "untreated, because food was added", then "untreated must not touch".
func (l *law) reasons(s *SetVerdict, facts *Facts) []Reason {
	if s.deciding == notApplying {
		return nil
	}
	row := &l.rows[s.deciding]
	text := wording.Say(row.key())
	effect := effectOf(s.Allowed)
	if s.Allowed == Ask {
		return []Reason{l.reason(s.Name, row, asks(s.Missing, text), Asks)}
	}
	var why []Reason
	for _, c := range row.when {
		if behind, found := l.behind(c, facts); found {
			why = append(why, l.reason(s.Name, behind, wording.Say(behind.key()), effect))
		}
	}
	if l.outcome[s.deciding] > 0 && s.Allowed == Yes {
		text = wording.Say("hygiene.over-by-harvest", wording.Places{"rule": text})
	}
	return append(why, l.reason(s.Name, row, text, effect))
}

// ReadableFacts is how many facts a sentence can list and still be read.
const ReadableFacts = 5

func asks(missing []Fact, worst wording.Text) wording.Text {
	if len(missing) > ReadableFacts {
		return wording.Say("hygiene.asks-many", wording.Places{"n": len(missing), "worst": worst})
	}
	return wording.Say("hygiene.asks", wording.Places{"facts": FactNames(missing), "worst": worst})
}

// behind finds the row of an asked table that gave the answer which a
// condition wants; one that the known facts alone are enough for comes first.
func (l *law) behind(c condition, facts *Facts) (*row, bool) {
	asked, isTable := l.tables[c.name]
	if !isTable {
		return nil, false
	}
	best := neverReached
	for _, a := range l.look(asked, facts, same).ends {
		if !slices.Contains(c.values, l.rows[a].then) {
			continue
		}
		sure, bestSure := l.certain(a, facts), best != neverReached && l.certain(best, facts)
		if best == neverReached || sure && !bestSure || sure == bestSure && a < best {
			best = a
		}
	}
	if best == neverReached {
		return nil, false
	}
	return &l.rows[best], true
}

func (l *law) reason(set string, r *row, text wording.Text, effect Effect) Reason {
	force := r.force
	if l.setForce(set) == "guidance" {
		force = "guidance"
	}
	return Reason{Set: set, Rule: r.rule, Citation: r.citation(), Text: text, Effect: effect, Force: force, Read: r.read}
}

func effectOf(a Allowed) Effect {
	switch a {
	case No:
		return Forbids
	case WaitUntil:
		return Delays
	case Ask:
		return Asks
	}
	return Allows
}

// advice is what helps beside the rules: it changes no verdict.
func (l *law) advice(v *Verdict, facts *Facts) []Reason {
	var why []Reason
	for i := range v.Sets {
		s := &v.Sets[i]
		if !s.couldApply || !s.HasStatus {
			continue
		}
		exposed := s.Status == "untreated" || s.Status == "treated-b"
		if exposed && facts.Value(EdiblePart) == "in-soil" {
			why = append(why, advise(s.Name, "2018 draft guidance", "hygiene.advice.root-crop"))
		}
		if s.Allowed != No && s.Name == "fda" {
			why = append(why, advise(s.Name, "112.43", "hygiene.advice.water"))
		}
	}
	if food := facts.Value(Additives); food == "plant" || food == "animal" {
		for _, s := range v.Sets {
			if s.couldApply {
				return append(why, advise(s.Name, "Duffy 2004; Ingram and Millner 2007", "hygiene.advice.additives"))
			}
		}
	}
	return why
}

func advise(set, rule, key string) Reason {
	citation := rule
	if rule == "112.43" {
		citation = "21 CFR " + rule
	}
	return Reason{Set: set, Rule: rule, Citation: citation, Text: wording.Say(key), Effect: Advises, Force: "guidance", Read: "memory"}
}

// FactNames are facts as a list in words: "held and water".
func FactNames(facts []Fact) wording.Speaker { return named(facts) }

type named []Fact

// Speak lists the facts as a person calls them.
func (n named) Speak(r wording.Reader) string {
	items := make([]string, len(n))
	for i, f := range n {
		items[i] = wording.Say("hygiene.fact." + f.String()).For(r)
	}
	return wording.List(items, r)
}
