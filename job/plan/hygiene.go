package plan

import (
	"sync"
	"time"

	"aerosteep/job/hygiene"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// judge asks hygiene before anything is scheduled: a want that is a no is not
// planned, nor one whose bed is picked before the wait is over.
func (p *planner) judge() {
	for _, w := range p.wants {
		hours := recipeHours(w.recipe)
		v := p.verdict(w, quantity.Hours(hours)+quantity.Minutes(p.File.Limits.StrainMinutes), w.day())
		switch {
		case v.Allowed == hygiene.No:
			p.unmet(w, ByHygiene, wording.Say("plan.unmet.hygiene", wording.Places{"bed": w.Bed, "why": whyOf(v)}), wayOf(v))
		case v.Allowed == hygiene.WaitUntil && v.Until != nil && v.Facts.Harvest != nil && v.Facts.Harvest.Before(*v.Until):
			p.unmet(w, ByHygiene, wording.Say("plan.unmet.harvest", wording.Places{
				"bed": w.Bed, "until": v.Until.Format(time.DateOnly), "harvest": v.Facts.Harvest.Format(time.DateOnly),
			}), wayOf(v))
		}
	}
}

// day is the local day on which a want is put on, as far as it is known.
func (w *want) day() time.Time {
	if w.outing != nil && w.outing.settled {
		return w.outing.at
	}
	if w.At != nil {
		return *w.At
	}
	return *w.From
}

// rejudge gives each bed that has a want its verdict with the hours that the
// plan found.
func (p *planner) rejudge() {
	for _, w := range p.wants {
		held := quantity.Hours(recipeHours(w.recipe)) + quantity.Minutes(p.File.Limits.StrainMinutes)
		var id *string
		if o := w.outing; o != nil && !w.unmet && len(o.batches) > 0 {
			b := batchOf(o, w)
			held = quantity.Seconds(o.at.Sub(b.start).Seconds())
			id = &b.id
		}
		v := p.verdict(w, held, w.day())
		p.plan.Verdicts = append(p.plan.Verdicts, Verdict{w.Bed, id, v})
		if v.Allowed == hygiene.Ask && !w.unmet {
			p.caution("plan.caution.ask", wording.Places{"bed": w.Bed, "facts": hygiene.FactNames(v.Missing)})
		}
		if v.Allowed == hygiene.WaitUntil && v.Until != nil && !w.unmet {
			p.caution("plan.caution.wait", wording.Places{"bed": w.Bed, "until": v.Until.Format(time.DateOnly)})
		}
	}
}

// batchOf is the batch that most of a want's tea comes from.
func batchOf(o *outing, w *want) *batch {
	best, most := o.batches[0], quantity.Volume(0)
	for _, b := range o.batches {
		for _, s := range b.serves {
			if s.want == w && s.tea > most {
				best, most = b, s.tea
			}
		}
	}
	return best
}

// verdicts keeps what hygiene has said. A cure changes recipes, vessels, water's
// temperature and amounts, and no fact of a bed: of what is judged by, only the
// words of the key.
type verdicts struct {
	sync.Mutex
	known map[verdictKey]hygiene.Verdict
}

type verdictKey struct {
	want                     int
	held, applied, additives string
}

// verdict is the decision for one want; it is made once.
func (p *planner) verdict(w *want, held quantity.Span, day time.Time) hygiene.Verdict {
	key := verdictKey{w.Index, heldWords(held), day.In(p.zone).Format(time.DateOnly), additivesOf(w)}
	p.verdicts.Lock()
	v, known := p.verdicts.known[key]
	p.verdicts.Unlock()
	if known {
		return v
	}
	v = p.decide(w, key)
	p.verdicts.Lock()
	p.verdicts.known[key] = v
	p.verdicts.Unlock()
	return v
}

// decide asks hygiene for one want, by the facts of bed and holding, and by what
// the file says anyway.
func (p *planner) decide(w *want, key verdictKey) hygiene.Verdict {
	words := hygiene.Words{}
	for name, word := range p.File.Hygiene {
		words[name] = word
	}
	for name, word := range w.bed.Facts {
		words[name] = word
	}
	var derived []hygiene.Derived
	derive := func(name, value, from string) {
		if _, given := words[name]; given || value == "" {
			return
		}
		words[name] = value
		if fact, known := hygiene.FactNamed(name); known {
			derived = append(derived, hygiene.Derived{Fact: fact, Value: value, From: from})
		}
	}
	derive("water", p.File.Water.Source, "[water] source")
	derive("method", w.Method, "[[want]] method")
	derive("applied", key.applied, "[[want]] at")
	derive("held", key.held, "the plan")
	derive("additives", key.additives, "[[recipe]] items")
	facts, err := hygiene.Read(words, hygiene.OriginsOf(p.File.Larder))
	if err != nil {
		p.caution("plan.caution.facts", wording.Places{"bed": w.Bed})
		facts = hygiene.Facts{}
	}
	v := hygiene.Decide(facts)
	v.Derived = derived
	return v
}

func heldWords(held quantity.Span) string {
	return wording.Number(held.Hours(), 6, wording.Reader{Language: wording.English}) + " h"
}

// additivesOf is the food in a recipe: everything that is not compost.
func additivesOf(w *want) string {
	names := ""
	for _, item := range w.recipe.Items {
		if item.Ingredient.Compost {
			continue
		}
		if names != "" {
			names += ", "
		}
		names += item.Ingredient.Name
	}
	if names == "" {
		return "none"
	}
	return names
}

// whyOf is the sentence behind a refusal.
func whyOf(v hygiene.Verdict) wording.Text {
	for _, r := range v.Why {
		if r.Effect == hygiene.Forbids {
			return r.Text
		}
	}
	if len(v.Why) > 0 {
		return v.Why[0].Text
	}
	return wording.Say("plan.unmet.hygiene.rules")
}

// wayOf is the nearest way that would be allowed.
func wayOf(v hygiene.Verdict) wording.Text {
	if ways := hygiene.NearestWays(v); len(ways) > 0 {
		return ways[0].Text()
	}
	return wording.Say("plan.nearest.hygiene")
}
