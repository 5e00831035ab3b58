// Package recipe holds the worksheets about what goes into the tank: one food,
// a recipe for a tank, the dose chart for the shed wall, and the pile behind
// it.
package recipe

import (
	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"

	larder "aerosteep/job/recipe"
)

// Sheets are the worksheets of this room, in the order of the work.
func Sheets() []worksheet.Sheet {
	return []worksheet.Sheet{food, scale, doseChart, compostBlend, compostHeat}
}

// The water of a batch.
const (
	leastWater = "0.1 L"
	mostWater  = "50000 L"
)

// Household is an amount as a person can measure it.
type Household struct {
	Household    *string  `json:"household"`
	ErrorPercent *float64 `json:"household_error_percent"`
	Coarse       *bool    `json:"household_coarse"`
}

// household rounds a volume to the reader's measures; without a volume there
// is nothing to round.
func household(v *quantity.Volume, units wording.Units) Household {
	if v == nil {
		return Household{}
	}
	m := larder.Household(*v, units)
	h := Household{ErrorPercent: m.ErrorPercent, Coarse: &m.Coarse}
	if m.Text != "" {
		h.Household = &m.Text
	}
	return h
}

func millilitres(v *quantity.Volume) *float64 {
	if v == nil {
		return nil
	}
	return worksheet.Some(v.Millilitres())
}

func perLitre(c *quantity.Concentration) *float64 {
	if c == nil {
		return nil
	}
	return worksheet.Some(c.MilligramsPerLitre())
}

// over0 is a density that is known.
func over0(d quantity.Density) *float64 {
	if d <= 0 {
		return nil
	}
	return worksheet.Some(d.GramsPerMillilitre())
}

// cautionRegrowth says what the word for regrowth means and how the trials'
// percent was read.
func cautionRegrowth(r *worksheet.Result, regrowth larder.Regrowth) {
	r.Caution("recipe.caution." + string(regrowth))
	r.Caution("recipe.caution.w-v")
}
