package plan

import (
	"strings"

	"aerosteep/job/ground"
	"aerosteep/job/recipe"
	"aerosteep/source"
	"aerosteep/wording"
)

// woody are words by which a crop is known to stand for years in wood: such
// soil is fed with more fungal teas (common practice).
var woody = []string{
	"apple", "pear", "plum", "cherry", "peach", "apricot", "citrus", "orange", "lemon", "avocado", "olive", "nut",
	"almond", "walnut", "hazel", "fig", "tree", "orchard", "vine", "grape", "blueberr", "raspberr", "currant",
	"shrub", "rose", "conifer", "oak", "maple",
	"manzan", "peral", "ciruel", "cerez", "durazn", "naranj", "limon", "aguacate", "olivo", "nogal", "árbol", "vid", "uva",
}

// leanFor is what a crop at its stage is given by common practice, and the
// sentence that says why.
func leanFor(crop string, stage ground.Stage) (recipe.Lean, string) {
	if stage != ground.Establishing && isWoody(crop) {
		return recipe.Fungal, "plan.recipe.woody"
	}
	switch stage {
	case ground.Establishing, ground.Vegetative:
		return recipe.Bacterial, "plan.recipe.leafy"
	case ground.Flowering, ground.Fruiting:
		return recipe.Balanced, "plan.recipe.fruiting"
	case ground.Dormant, ground.BareGround:
		return recipe.Fungal, "plan.recipe.resting"
	}
	return recipe.Balanced, "plan.recipe.unknown-stage"
}

func isWoody(crop string) bool {
	crop = strings.ToLower(crop)
	for _, word := range woody {
		if strings.Contains(crop, word) {
			return true
		}
	}
	return false
}

// chooseRecipe takes the named recipe, else one by crop and stage: of the
// holding first, then a built-in one.
func (p *planner) chooseRecipe(w *want) (recipe.Recipe, string) {
	if w.Recipe != "" {
		r, _ := p.File.Recipe(w.Recipe) // the file has been checked
		return r, p.say("plan.recipe.named")
	}
	p.cite(source.CommonPractice)
	if !p.hasAir() {
		r, _ := p.File.Recipe("extract")
		return r, p.say("plan.recipe.no-air")
	}
	lean, why := leanFor(w.bed.Crop, w.bed.Stage)
	for _, r := range p.File.Recipes {
		if r.Lean == lean {
			return r, p.say(why, wording.Places{"crop": w.bed.Crop, "recipe": r.Name})
		}
	}
	r, _ := p.File.Recipe(string(lean))
	return r, p.say(why, wording.Places{"crop": w.bed.Crop, "recipe": r.Name})
}

// hasAir tells whether any vessel has a pump, or its air was measured.
func (p *planner) hasAir() bool {
	for _, v := range p.File.Vessels {
		if v.Pump != "" || v.KLa20 != nil {
			return true
		}
	}
	return len(p.File.Vessels) == 0
}
