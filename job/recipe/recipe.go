// Package recipe is what goes into the tank: the ingredients a grower can
// name, how much of each a recipe asks for, and what that means in grams,
// spoons, oxygen demand, nutrients and money for a tank of any size.
//
// How other rooms use it:
//
//	shelf := recipe.Library()                           // 25 built-in ingredients
//	shelf, faults := shelf.With(table)                  // an [[ingredient]] of a file
//	r, faults := recipe.FromTable(table, shelf)         // a [[recipe]] of a file
//	r, known := recipe.Starter("bacterial")             // one that is built in
//	batch, err := recipe.Scale(r, volume)               // what to weigh out
//	batch.Items[1].Mass, batch.Items[1].ReadyDemand     // and what it demands
//	recipe.Household(v, wording.US).Text                // "1 tbsp 2 1/2 tsp"
//
// Amounts are plain arithmetic on typed quantities; nothing here reads files,
// the clock or a random number.
package recipe

import (
	"strings"

	"aerosteep/quantity"
)

// Recipe is what one brew is made of. The amounts of its items that are not
// per volume belong to ForVolume of water.
type Recipe struct {
	Name      string
	ForVolume quantity.Volume // 0 where every amount is per volume
	Hours     *float64        // of brewing at 20 °C; nil where the file gives none
	Lean      Lean
	Note      string
	Because   string // why a dose over the ceiling is kept; "" where nobody said
	Items     []Item
}

// Item is one line of a recipe.
type Item struct {
	Ingredient Ingredient
	Amount     Amount
	When       When
	Bulk       quantity.Density // of this line; 0 where the ingredient's own holds
}

// bulk is the density that turns this line's volumes into mass, and who gave it.
func (i Item) bulk() (quantity.Density, BulkFrom) {
	if i.Bulk > 0 {
		return i.Bulk, FromRecipe
	}
	return i.Ingredient.Bulk, i.Ingredient.BulkFrom
}

// Lean is what a recipe is meant to favour: a word of the trade, not a
// measured outcome.
type Lean string

// The leans that a recipe may state.
const (
	NoLean    Lean = ""
	Bacterial Lean = "bacterial"
	Balanced  Lean = "balanced"
	Fungal    Lean = "fungal"
)

// Leans lists the words that a file may use.
var Leans = []string{string(Bacterial), string(Balanced), string(Fungal)}

// Fed tells whether anything but compost goes in.
func (r Recipe) Fed() bool {
	for _, item := range r.Items {
		if !item.Ingredient.Compost {
			return true
		}
	}
	return false
}

// Unfed is the same brew without its additives: the composts alone.
func (r Recipe) Unfed() Recipe {
	twin := r
	twin.Name, twin.Items = r.Name+" unfed", nil
	for _, item := range r.Items {
		if item.Ingredient.Compost {
			twin.Items = append(twin.Items, item)
		}
	}
	return twin
}

// Without is the same brew with no item of that name, for a holding that has
// decided once not to use it ("without molasses").
func (r Recipe) Without(ingredient string) Recipe {
	kept := r
	kept.Items = nil
	for _, item := range r.Items {
		if Key(item.Ingredient.Name) != Key(ingredient) {
			kept.Items = append(kept.Items, item)
		}
	}
	return kept
}

// Key is a name as it is looked up: case, spaces, hyphens and underscores do
// not matter.
func Key(name string) string {
	return strings.Map(func(c rune) rune {
		switch c {
		case ' ', '-', '_', '\t', '\u00a0':
			return -1
		}
		return c
	}, strings.ToLower(name))
}
