package recipe

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Food is one food asked about alone: from the library, by the percentages of
// its label, or by its formula.
type Food struct {
	Ingredient  Ingredient
	Demand      float64  // g O2 per g as fed
	ReadyDemand *float64 // of it sugars; nil for a formula
	Listed      bool     // of the library, so that its nitrogen is known
}

// ListedFood is a food of the library.
func ListedFood(i Ingredient) Food {
	f := LabelFood(i.Composition)
	f.Ingredient, f.Listed = i, true
	return f
}

// LabelFood is a food by what its label says is in it.
func LabelFood(c Composition) Food {
	ready := c.ReadyDemand()
	return Food{Ingredient: Ingredient{Composition: c, Origin: Plant}, Demand: c.Demand(), ReadyDemand: &ready}
}

// FormulaFood is a pure substance.
func FormulaFood(f Formula) (Food, error) {
	demand, err := f.Demand()
	return Food{Demand: demand}, err
}

// Dose is a food in so much water. Pointers are nil where nothing is known:
// volumes without a bulk density, sugars of a formula, nitrogen off the list.
type Dose struct {
	Mass       quantity.Mass
	Volume     *quantity.Volume
	PercentWV  float64  // g per 100 mL of water
	PercentVV  *float64 // mL per 100 mL of water
	Demand     quantity.Mass
	DemandIn   quantity.Concentration
	ReadyIn    *quantity.Concentration
	NitrogenIn *quantity.Concentration
	Regrowth   Regrowth
}

// Dose puts an amount of a food into water. The food is not added to the
// water's volume.
//
// Errors: a fault where a volume was given and no bulk density is known.
func (f Food) Dose(a Amount, water quantity.Volume) (Dose, error) {
	item := Item{Ingredient: f.Ingredient, Amount: a}
	w, err := weigh(item, water, water)
	if err != nil {
		return Dose{}, err
	}
	perLitre := func(perGram float64) quantity.Concentration {
		return quantity.MilligramsPerLitre(w.PerLitre * perGram * 1000)
	}
	d := Dose{
		Mass: w.Mass, Volume: w.Volume, PercentWV: w.PercentWV(), Demand: w.Mass * quantity.Mass(f.Demand),
		DemandIn: perLitre(f.Demand), Regrowth: WholeRegrowth([]Weighed{w}),
	}
	if w.Volume != nil {
		vv := w.Volume.Litres() / water.Litres() * 100
		d.PercentVV = &vv
	}
	if f.ReadyDemand != nil {
		ready := perLitre(*f.ReadyDemand)
		d.ReadyIn = &ready
	}
	if f.Listed {
		n := perLitre(f.Ingredient.Composition.Nitrogen.Fraction())
		d.NitrogenIn = &n
	}
	return d, nil
}

// PerPercent is an amount of so many g per 100 mL of water.
func PerPercent(percent float64) Amount {
	return Amount{Mass: quantity.Grams(percent * 10), PerLitre: true}
}

// ParseFoodAmount reads a mass or a volume of a food.
func ParseFoodAmount(text string) (Amount, error) {
	a, err := ParseAmount(text)
	if err == nil && a.PerLitre {
		err = amountFault(text, "recipe.amount.per-volume", "")
	}
	if err != nil {
		f := fault.Of(err)[0]
		f.Allowed = wording.Say("recipe.food-amount.allowed")
		return Amount{}, f
	}
	return a, nil
}
