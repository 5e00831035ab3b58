package hygiene

import (
	"strings"

	"aerosteep/job/recipe"
)

// OriginsOf looks origins up on a shelf of ingredients.
func OriginsOf(shelf recipe.Shelf) Origins {
	return func(name string) (Origin, bool, bool) {
		if strings.EqualFold(strings.TrimSpace(name), "water") {
			return Origin{}, false, true
		}
		ingredient, err := shelf.Find(name)
		if err != nil {
			return Origin{}, false, false
		}
		return Origin{Animal: ingredient.Origin == recipe.Animal}, !ingredient.Compost, true
	}
}

// LarderOrigins looks origins up in the built-in library.
var LarderOrigins = OriginsOf(recipe.Library())
