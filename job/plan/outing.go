package plan

import (
	"math"
	"sort"
	"time"

	"aerosteep/job/recipe"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// outing is wants that share recipe and hour, and so their batches. In a
// window the hour is still to be chosen.
type outing struct {
	recipe      recipe.Recipe
	whyRecipe   string
	at          time.Time
	from, until time.Time // of a window; zero where the hour is given
	wants       []*want
	settled     bool // its hour is fixed
	batches     []*batch
}

func (o *outing) inWindow() bool { return !o.until.IsZero() }

// runKey parts wants into runs: one site, hour and applicator.
type runKey struct {
	site, applicator string
	at               int64
}

func (w *want) runKey(at time.Time) runKey {
	k := runKey{site: w.bed.Site, at: at.Unix()}
	if w.applicator != nil {
		k.applicator = w.applicator.Name
	}
	return k
}

// gatherOutings puts wants that share recipe and hour together: first those
// whose hour is given, then those in a window, which join an outing of their
// recipe where one falls into it.
func (p *planner) gatherOutings() {
	for _, w := range p.wants {
		if !w.unmet && w.At != nil {
			p.join(w, *w.At, time.Time{}, time.Time{})
		}
	}
	p.dropLate()
	for _, w := range p.wants {
		if w.unmet || w.At != nil || p.joinWithin(w) {
			continue
		}
		p.join(w, *w.From, *w.From, *w.Until)
	}
	sort.SliceStable(p.outings, func(i, j int) bool {
		a, b := p.outings[i], p.outings[j]
		if a.inWindow() != b.inWindow() {
			return !a.inWindow()
		}
		return a.at.Before(b.at)
	})
}

func (p *planner) join(w *want, at, from, until time.Time) {
	for _, o := range p.outings {
		if o.recipe.Name == w.recipe.Name && o.at.Equal(at) && o.from.Equal(from) && o.until.Equal(until) {
			o.wants, w.outing = append(o.wants, w), o
			return
		}
	}
	w.outing = &outing{
		recipe: w.recipe, whyRecipe: w.whyRecipe, at: at.In(p.zone), from: from, until: until, wants: []*want{w},
	}
	p.outings = append(p.outings, w.outing)
}

// joinWithin adds a want in a window to an outing of its recipe whose hour
// lies in it, as long as one vessel can hold them all.
func (p *planner) joinWithin(w *want) bool {
	for _, o := range p.outings {
		if o.inWindow() || o.recipe.Name != w.recipe.Name || o.at.Before(*w.From) || o.at.After(*w.Until) {
			continue
		}
		sum := w.tea
		for _, other := range o.wants {
			sum += other.tea
		}
		with := &outing{at: o.at, wants: append(append([]*want(nil), o.wants...), w)}
		if p.brewedFor(sum+p.primes(with)) <= p.largestBrew(o.recipe) && p.lastStart(with) <= mostWait {
			o.wants, w.outing = with.wants, o
			sort.SliceStable(o.wants, func(i, j int) bool { return o.wants[i].Index < o.wants[j].Index })
			return true
		}
	}
	return false
}

// brewedFor is what has to be brewed so that so much can be loaded.
func (p *planner) brewedFor(loaded quantity.Volume) quantity.Volume {
	return loaded / quantity.Volume(1-p.File.Limits.Loss.Fraction())
}

func (p *planner) largestBrew(r recipe.Recipe) quantity.Volume {
	var most quantity.Volume
	for _, v := range p.File.Vessels {
		if p.suits(v, r) {
			most = max(most, v.Brew)
		}
	}
	return most
}

// mostWait is how long after its hour a want's first load may start.
const mostWait = 2 * time.Hour

// loadTime is how long the loads of a want take.
func (w *want) loadTime() time.Duration {
	minutes := 20.0
	loads := 1.0
	if a := w.applicator; a != nil {
		minutes = a.MinutesPerLoad
		if a.Tank != nil {
			loads = math.Ceil((w.mix / *a.Tank).Litres() - 1e-9)
		}
	}
	return time.Duration(math.Max(1, loads) * minutes * float64(time.Minute))
}

// lastStart is when the last want of an outing starts, after its hour.
func (p *planner) lastStart(o *outing) time.Duration {
	waits := map[runKey]time.Duration{}
	var last time.Duration
	for _, w := range o.wants {
		k := w.runKey(o.at)
		last = max(last, waits[k])
		waits[k] += w.loadTime()
	}
	return last
}

// dropLate takes out wants that could not start within two hours of theirs:
// one applicator cannot be everywhere at once.
func (p *planner) dropLate() {
	waits := map[runKey]time.Duration{}
	for _, w := range p.wants {
		if w.unmet || w.At == nil {
			continue
		}
		k := w.runKey(*w.At)
		if waits[k] > mostWait {
			p.unmet(w, ByTime, wording.Say("plan.unmet.queue", wording.Places{"hour": Clock(w.At.In(p.zone)), "start": Clock(w.At.In(p.zone).Add(waits[k]))}),
				wording.Say("plan.nearest.queue", wording.Places{"start": Clock(w.At.In(p.zone).Add(waits[k]))}))
			continue
		}
		waits[k] += w.loadTime()
	}
	for _, o := range p.outings {
		o.wants = met(o.wants)
	}
	p.sameApplicator()
}

// sameApplicator says where one applicator is wanted on two sites at once.
func (p *planner) sameApplicator() {
	first := map[runKey]string{}
	for _, w := range p.wants {
		if w.unmet || w.At == nil || w.applicator == nil {
			continue
		}
		k := runKey{applicator: w.applicator.Name, at: w.At.Unix()}
		if site, seen := first[k]; seen && site != w.bed.Site {
			p.caution("plan.caution.two-sites", wording.Places{"applicator": w.applicator.Name, "hour": Clock(w.At.In(p.zone))})
		}
		first[k] = w.bed.Site
	}
}

func met(wants []*want) []*want {
	kept := wants[:0:0]
	for _, w := range wants {
		if !w.unmet {
			kept = append(kept, w)
		}
	}
	return kept
}

// primes is the tea that fills the dead volume of the outing's runs: once for
// each run, at the strength of its first want.
func (p *planner) primes(o *outing) quantity.Volume {
	var sum quantity.Volume
	for _, w := range p.firsts(o) {
		sum += w.primeTea()
	}
	return sum
}

func (w *want) primeTea() quantity.Volume {
	if w.applicator == nil {
		return 0
	}
	return w.applicator.DeadVolume * quantity.Volume(w.Share())
}

// firsts are the wants of an outing with which a run begins: no want before
// them in the file goes with the same run.
func (p *planner) firsts(o *outing) []*want {
	var firsts []*want
	for _, w := range o.wants {
		first := true
		for _, other := range p.pieces {
			if other.Index < w.Index && !other.unmet && !other.split && p.goesAt(other, o.at) && other.runKey(o.at) == w.runKey(o.at) {
				first = false
			}
		}
		if first {
			firsts = append(firsts, w)
		}
	}
	return firsts
}

// goesAt tells whether a want is put on at an hour, as far as it is settled.
func (p *planner) goesAt(w *want, at time.Time) bool {
	o := w.outing
	return o != nil && o.at.Equal(at) && (!o.inWindow() || o.settled)
}

// suits tells whether a recipe can be made in a vessel at all: one without a
// pump is stirred by hand, which is enough for an unfed extract of an hour.
func (p *planner) suits(v rig.Vessel, r recipe.Recipe) bool {
	return v.Pump != "" || v.KLa20 != nil || isExtract(r)
}
