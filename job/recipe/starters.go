package recipe

import (
	"fmt"

	"aerosteep/quantity"
)

// starterVolume is the water that the built-in amounts belong to.
const starterVolume quantity.Volume = 100

// starters are the built-in recipes, per 100 L: common practice, inside the
// ranges of published recipes. The fed ones are followed by their unfed twins.
var starters = buildStarters()

func buildStarters() []Recipe {
	fed := []Recipe{
		starter("unfed", 24, NoLean, "compost 3 kg"),
		starter("bacterial", 24, Bacterial, "compost 3 kg", "molasses 120 mL", "fish hydrolysate 50 mL", "liquid seaweed 50 mL"),
		starter("balanced", 30, Balanced, "compost 2 kg", "vermicompost 1 kg", "molasses 70 mL", "fish hydrolysate 80 mL",
			"liquid seaweed 50 mL", "liquid humic acid 100 mL", "oat flour 30 g", "rock dust 50 g"),
		starter("fungal", 30, Fungal, "leaf mould 4 kg", "fish hydrolysate 150 mL", "liquid seaweed 100 mL",
			"liquid humic acid 150 mL", "oat flour 100 g", "rock dust 75 g"),
		// An extract is stirred, not brewed: an hour at the most, so that nothing
		// has the time to grow.
		starter("extract", 1, NoLean, "compost 5 kg"),
		starter("castings", 24, NoLean, "vermicompost 3 kg"),
	}
	all := fed
	for _, r := range fed {
		if r.Fed() {
			all = append(all, r.Unfed())
		}
	}
	return all
}

// starter writes a recipe from lines such as "fish hydrolysate 50 mL".
func starter(name string, hours float64, lean Lean, lines ...string) Recipe {
	r := Recipe{Name: name, ForVolume: starterVolume, Hours: &hours, Lean: lean}
	for _, line := range lines {
		r.Items = append(r.Items, starterItem(line))
	}
	return r
}

// starterItem parts the name from the amount at the first digit. A slip in the
// table above is a mistake that no build should survive.
func starterItem(line string) Item {
	at := 0
	for at < len(line) && (line[at] < '0' || line[at] > '9') {
		at++
	}
	ingredient, err := Library().Find(line[:at-1])
	if err != nil {
		panic(fmt.Sprint("recipe: starter line ", line, ": ", err))
	}
	amount, err := ParseAmount(line[at:])
	if err != nil {
		panic(fmt.Sprint("recipe: starter line ", line, ": ", err))
	}
	return Item{Ingredient: ingredient, Amount: amount}
}

// Starters lists the built-in recipes.
func Starters() []Recipe { return append([]Recipe(nil), starters...) }

// Starter finds a built-in recipe by name.
func Starter(name string) (Recipe, bool) {
	for _, r := range starters {
		if Key(r.Name) == Key(name) {
			return r, true
		}
	}
	return Recipe{}, false
}

// On puts a recipe on another shelf: its ingredients with that holding's own
// densities and prices.
func (r Recipe) On(shelf Shelf) Recipe {
	moved := r
	moved.Items = append([]Item(nil), r.Items...)
	for i := range moved.Items {
		if found, err := shelf.Find(moved.Items[i].Ingredient.Name); err == nil {
			moved.Items[i].Ingredient = found
		}
	}
	return moved
}
