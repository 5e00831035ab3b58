package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// How advice is searched: with a small ensemble, then proved with the full one
// on the changed file.
const (
	tryMembers  = 150
	fullAdvices = 2    // batches that get every kind of advice; others get less food
	longList    = 60   // wants from which the other kinds are tried only where less food is no cure
	noFood      = 0.03 // share of the food under which all of it is left out
)

// cure is a change of the file that may bring a chance down.
type cure struct {
	sentence string
	places   wording.Places
	changes  []jobfile.Change
	hours    float64 // that the recipe is given besides; 0: as it was
}

// advise says, for every batch whose chance of going under the limit is more
// than is accepted, what would cure it, by computed amounts. Batches that share
// a brew share its advice; those of one recipe share the search for the food.
func (p *planner) advise() {
	var risky, firsts []*batch
	place := map[*brew]int{}
	share := map[string]float64{}
	for _, o := range p.outings {
		for _, b := range o.batches {
			if _, known := place[b.brew]; known || b.brew.outlook.Chance <= p.File.Limits.Chance {
				continue
			}
			place[b.brew] = len(risky)
			risky = append(risky, b)
			if _, searched := share[o.recipe.Name]; !searched {
				share[o.recipe.Name] = 0
				firsts = append(firsts, b)
			}
		}
	}
	found := make([]float64, len(firsts))
	atOnce(len(firsts), func(i int) { found[i] = p.foodShare(firsts[i]) })
	for i, b := range firsts {
		share[b.outing.recipe.Name] = found[i]
	}
	lists := make([][]Advice, len(risky))
	atOnce(len(risky), func(i int) { lists[i] = p.cures(risky[i], share[risky[i].outing.recipe.Name], i < fullAdvices) })
	for _, o := range p.outings {
		for _, b := range o.batches {
			if i, known := place[b.brew]; known {
				p.plan.Advice = append(p.plan.Advice, named(lists[i], b.id)...)
			}
		}
	}
}

// named is a list of advice for one batch.
func named(list []Advice, batch string) []Advice {
	for i := range list {
		list[i].Batch = batch
	}
	return append([]Advice(nil), list...)
}

// cures are the changes that were tried and help. Where less food cures a batch
// of a long list, nothing else is tried.
func (p *planner) cures(b *batch, share float64, all bool) []Advice {
	tries := []func() *Advice{func() *Advice { return p.lessFood(b, share) }}
	others := []func() *Advice{
		func() *Advice { return p.try(b, p.moreAir(b, 1)) },
		func() *Advice { return p.try(b, p.cooler(b)) },
		func() *Advice { return p.try(b, p.shorter(b)) },
		func() *Advice { return p.try(b, p.smallerFill(b)) },
	}
	if all && len(p.wants) <= longList {
		tries = append(tries, others...)
	}
	list := helping(tries)
	if !all || p.cured(list) {
		return list
	}
	if len(tries) == 1 {
		list = append(list, helping(others)...)
		if p.cured(list) {
			return list
		}
	}
	return append(list, helping([]func() *Advice{func() *Advice { return p.try(b, p.airWithoutFood(b)) }})...)
}

// cured tells whether any advice brings the chance within what is accepted.
func (p *planner) cured(list []Advice) bool {
	return slices.ContainsFunc(list, func(a Advice) bool { return a.Effect.After <= p.File.Limits.Chance })
}

// helping makes the tries side by side and keeps, in their order, what helps.
func helping(tries []func() *Advice) []Advice {
	found := make([]*Advice, len(tries))
	atOnce(len(tries), func(i int) { found[i] = tries[i]() })
	var list []Advice
	for _, a := range found {
		if a != nil {
			list = append(list, *a)
		}
	}
	return list
}

// try proves a cure; nil where it does not help.
func (p *planner) try(b *batch, c *cure) *Advice {
	if c == nil {
		return nil
	}
	if proven, after, ok := p.prove(b, *c); ok && after < b.brew.outlook.Chance-1 {
		return p.advice(b, proven, after)
	}
	return nil
}

func (p *planner) advice(b *batch, c cure, after float64) *Advice {
	c.places["before"], c.places["after"] = math.Round(b.brew.outlook.Chance), math.Round(after)
	text := p.say(c.sentence, c.places)
	if c.hours > 0 {
		text += "; " + p.say("plan.advice.hours", wording.Places{"recipe": b.outing.recipe.Name, "hours": c.hours})
	}
	return &Advice{
		Text: text, Change: c.changes,
		Effect: Effect{Before: b.brew.outlook.Chance, After: after},
	}
}

// lessFood finds the largest share of the food that keeps the chance within
// what is accepted. Where no food at all does not help enough, leaving it out
// is still said if it helps.
func (p *planner) lessFood(b *batch, share float64) *Advice {
	if !b.outing.recipe.Fed() {
		return nil
	}
	for try := 0; ; try++ {
		if share < noFood || try == 4 {
			share = 0
		}
		c := p.foodCure(b, share)
		proven, after, ok := p.prove(b, c)
		if ok && (after <= p.File.Limits.Chance || share == 0 && after < b.brew.outlook.Chance) {
			return p.advice(b, proven, after)
		}
		if share == 0 {
			return nil
		}
		share *= 0.85
	}
}

// foodShare halves the range of shares with a small ensemble.
func (p *planner) foodShare(b *batch) float64 {
	low, high := 0.0, 1.0
	if !b.outing.recipe.Fed() {
		return low
	}
	for range 6 {
		mid := (low + high) / 2
		if p.chanceWith(b, mid) <= 0.8*p.File.Limits.Chance {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// chanceWith is the chance of a batch with a share of its food.
func (p *planner) chanceWith(b *batch, share float64) float64 {
	return forecast.Prior(withFood(b.brew.setup, share), tryMembers, seed).Chance
}

// withFood is a set-up with a share of its food.
func withFood(s forecast.Setup, share float64) forecast.Setup {
	s.Additions = append([]forecast.Addition(nil), s.Additions...)
	for i := range s.Additions {
		a := &s.Additions[i]
		f := quantity.Concentration(share)
		a.Ready, a.Slow, a.Nitrogen = a.Ready*f, a.Slow*f, a.Nitrogen*f
	}
	return s
}

// foodCure writes the recipe with a share of its food: amounts are changed
// where they stand; a built-in recipe is added to the file under its own name.
func (p *planner) foodCure(b *batch, share float64) cure {
	r := b.outing.recipe
	c := cure{sentence: "plan.advice.less-food", places: wording.Places{"percent": math.Round(share * 100), "recipe": r.Name}}
	if share == 0 {
		c.sentence = "plan.advice.no-food"
	}
	at := p.recipeIndex(r.Name)
	switch {
	case at < 0:
		c.changes = []jobfile.Change{{Op: "add", Path: p.recipeEnd(), Value: p.recipeValue(recipeTable(r, share))}}
	case share == 0:
		c.changes = []jobfile.Change{{Op: "replace", Path: fmt.Sprintf("/recipe/%d/items", at), Value: recipeTable(r, 0)["items"]}}
	default:
		for i, item := range r.Items {
			if !item.Ingredient.Compost {
				c.changes = append(c.changes, jobfile.Change{Op: "replace", Path: fmt.Sprintf("/recipe/%d/items/%d/amount", at, i), Value: typed(item.Amount, share)})
			}
		}
	}
	return c
}

func (p *planner) recipeIndex(name string) int {
	for i, r := range p.File.Recipes {
		if r.Name == name {
			return i
		}
	}
	return -1
}

// recipeEnd is the path behind the last recipe of the file, recipeValue what
// goes there.
func (p *planner) recipeEnd() string {
	if len(p.File.Recipes) == 0 {
		return "/recipe"
	}
	return "/recipe/-"
}

func (p *planner) recipeValue(table map[string]any) any {
	if len(p.File.Recipes) == 0 {
		return []any{table}
	}
	return table
}

// recipeTable is a recipe as the file's JSON has it, with a share of its food.
func recipeTable(r recipe.Recipe, share float64) map[string]any {
	items := []any{}
	for _, item := range r.Items {
		part := share
		if item.Ingredient.Compost {
			part = 1
		}
		if part == 0 {
			continue
		}
		line := map[string]any{"ingredient": item.Ingredient.Name, "amount": typed(item.Amount, part)}
		if when := item.When.String(); when != "start" {
			line["when"] = when
		}
		items = append(items, line)
	}
	table := map[string]any{"name": r.Name, "hours": recipeHours(r), "items": items}
	if r.ForVolume > 0 {
		table["for_volume"] = number(r.ForVolume.Litres()) + " L"
	}
	if r.Lean != recipe.NoLean {
		table["lean"] = string(r.Lean)
	}
	return table
}

// typed is a share of an amount as a file has it, rounded down to 3 digits; a
// whole amount stays as it was typed.
func typed(a recipe.Amount, share float64) string {
	if share == 1 {
		return a.Typed
	}
	unit, v := " g", a.Mass.Grams()
	if a.Volume > 0 {
		unit, v = " mL", a.Volume.Millilitres()
	}
	if a.PerLitre {
		unit += "/L"
	}
	return number(floor3(v*share)) + unit
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// floor3 rounds down to three significant digits.
func floor3(v float64) float64 {
	scale := math.Pow(10, 2-math.Floor(math.Log10(v)))
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(math.Floor(v*scale)/scale, 'g', 3, 64), 64)
	if err != nil {
		return v
	}
	return rounded
}
