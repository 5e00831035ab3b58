package holding

import (
	"aerosteep/job/jobfile"
	"aerosteep/job/recipe"
	"aerosteep/quantity"
)

// OverCeiling is the dose of molasses of a recipe in a volume where it is over
// the ceiling of the holding, with the recipe's own reason; ok is false where it
// is within, or cannot be worked out.
func OverCeiling(file *jobfile.File, name string, volume quantity.Volume) (dose quantity.Share, because string, ok bool) {
	r, known := file.Recipe(name)
	if !known {
		return 0, "", false
	}
	weighed, err := recipe.Scale(r, volume)
	if err != nil {
		return 0, "", false
	}
	dose = weighed.Molasses()
	return dose, r.Because, recipe.Over(dose, file.Limits.Molasses)
}
