package plan

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"sync"

	"aerosteep/job/jobfile"
	"aerosteep/job/recipe"
)

// prove plans the whole file again with a cure and finds the batch that serves
// the same wants: what a change does to the vessels' hours counts as much as
// what it does to the air. Less food or colder water make a tea ripen later;
// where it would then not be ready in time, or where the longer brew undoes
// what was won, the recipe's hours are shortened besides, so that the brew takes
// as long as before.
func (p *planner) prove(b *batch, c cure) (cure, float64, bool) {
	after, ok := p.chanceIn(b, c.changes, nil)
	if ok && after <= p.File.Limits.Chance {
		return c, after, true
	}
	shorter, possible := p.inTheSameTime(b, c)
	if !possible {
		return c, after, ok
	}
	if sooner, also := p.chanceIn(b, shorter.changes, p.trials.of(c.changes)); also && (!ok || sooner < after) {
		return shorter, sooner, true
	}
	return c, after, ok
}

// chanceIn is the chance of the batch that serves the same wants in the changed
// file; what an earlier trial found out is taken over.
func (p *planner) chanceIn(b *batch, changes []jobfile.Change, earlier *trial) (float64, bool) {
	t := p.trials.of(changes)
	t.schedule.Do(func() { t.planner = p.replanned(changes, earlier) })
	if t.planner == nil {
		return 0, false
	}
	again := t.planner.serving(b)
	if again == nil {
		return 0, false
	}
	again.brew.foresee()
	return again.brew.outlook.Chance, true
}

// replanned is the changed file's plan before its forecasts, nil where the
// change makes no file.
func (p *planner) replanned(changes []jobfile.Change, earlier *trial) *planner {
	file, problems := p.File.With(changes)
	if len(problems) > 0 {
		return nil
	}
	q := newPlanner(Input{File: file, Now: p.Now, Weather: p.Weather, Reader: p.Reader})
	q.trial, q.verdicts = true, p.verdicts
	q.knowPeaksOf(p)
	if earlier != nil && earlier.planner != nil {
		earlier.peaks.Lock()
		q.knowPeaksOf(earlier.planner)
		earlier.peaks.Unlock()
	}
	q.schedule()
	return q
}

// trials keeps the changed plans that were tried: the batches of one recipe try
// the same changes.
type trials struct {
	sync.Mutex
	known map[string]*trial
}

type trial struct {
	schedule sync.Once
	peaks    sync.Mutex // held while those of the planner are read or added to
	planner  *planner
}

func (t *trials) of(changes []jobfile.Change) *trial {
	t.Lock()
	defer t.Unlock()
	key := fmt.Sprint(changes)
	if t.known[key] == nil {
		t.known[key] = &trial{}
	}
	return t.known[key]
}

// knowPeaksOf takes over the hours of highest uptake of the vessels and recipes
// that a change of the file left as they were; those at 20 °C stay true where
// only the temperature of the water is another.
func (p *planner) knowPeaksOf(before *planner) {
	water, warmth := before.File.Water, before.File.Water.Temperature
	water.Temperature = p.File.Water.Temperature
	if !reflect.DeepEqual(p.File.Water, water) {
		return
	}
	for key, peaks := range before.peaks {
		if !key.held && p.File.Water.Temperature != warmth {
			continue
		}
		v, _ := p.File.Vessel(key.vessel)
		was, _ := before.File.Vessel(key.vessel)
		r, _ := p.File.Recipe(key.recipe)
		wasRecipe, _ := before.File.Recipe(key.recipe)
		if reflect.DeepEqual(v, was) && p.ripensAlike(r, wasRecipe) {
			p.peaks[key] = peaks
		}
	}
}

// ripensAlike tells recipes that differ at most in their hours, where nothing is
// added at an hour of its own and no weather is read over them.
func (p *planner) ripensAlike(a, b recipe.Recipe) bool {
	if p.Weather == nil && !slices.ContainsFunc(a.Items, func(i recipe.Item) bool { return i.When.Hours > 0 }) {
		a.Hours = b.Hours
	}
	return reflect.DeepEqual(a, b)
}

// serving is the batch that serves the same wants as one of another plan, in
// the same vessel where there are several, and nil where none does.
func (p *planner) serving(other *batch) *batch {
	var found *batch
	for _, o := range p.outings {
		for _, b := range o.batches {
			if sameWants(b, other) && (found == nil || b.vessel.Name == other.vessel.Name && found.vessel.Name != other.vessel.Name) {
				found = b
			}
		}
	}
	return found
}

func sameWants(a, b *batch) bool {
	wants := map[int]bool{}
	for _, s := range a.serves {
		wants[s.want.Index] = true
	}
	others := map[int]bool{}
	for _, s := range b.serves {
		others[s.want.Index] = true
	}
	return reflect.DeepEqual(wants, others)
}

// inTheSameTime gives the recipe fewer hours besides a cure, so that the
// changed tea is brewed no longer than the one it replaces.
func (p *planner) inTheSameTime(b *batch, c cure) (cure, bool) {
	t := p.trials.of(c.changes)
	if t.planner == nil {
		return c, false
	}
	t.peaks.Lock()
	defer t.peaks.Unlock()
	q := t.planner
	r, _ := q.File.Recipe(b.outing.recipe.Name)
	v, _ := q.File.Vessel(b.vessel.Name)
	ripe, ok := q.ripening(v, r, b.ready.Add(-span(recipeHours(r))))
	if !ok {
		return c, false
	}
	c.hours = math.Max(1, math.Floor(b.brew.hours/ripe.stretch()*2)/2)
	if c.hours >= recipeHours(r) {
		return c, false
	}
	c.changes = append(append([]jobfile.Change(nil), c.changes...), q.hoursChange(r, c.hours))
	return c, true
}

// hoursChange gives a recipe other hours: where it stands, else a built-in one
// is added to the file under its own name.
func (p *planner) hoursChange(r recipe.Recipe, hours float64) jobfile.Change {
	if at := p.recipeIndex(r.Name); at >= 0 {
		return jobfile.Change{Op: "add", Path: fmt.Sprintf("/recipe/%d/hours", at), Value: hours}
	}
	r.Hours = &hours
	return jobfile.Change{Op: "add", Path: p.recipeEnd(), Value: p.recipeValue(recipeTable(r, 1))}
}
