package recipe

import "aerosteep/quantity"

// Stage is what a crop is doing when tea is wanted.
type Stage string

// The stages that finishing knows.
const (
	Leaf  Stage = "leaf"
	Bloom Stage = "bloom"
	Fruit Stage = "fruit"
)

// finishing is what is stirred in last, per litre of brew: nitrogen for leafy
// growth, phosphorus and potassium for flower and fruit. Common practice; the
// amounts stay inside the ranges of published recipes, and no trial shows an
// effect of them.
var finishing = map[Stage][]string{
	Leaf:  {"fish hydrolysate 0.5 mL/L"},
	Bloom: {"soft rock phosphate 0.5 g/L", "liquid seaweed 1 mL/L"},
	Fruit: {"liquid seaweed 1 mL/L", "potassium humate 0.05 g/L"},
}

// Finishing is the items to stir in at the finish for a stage of growth; none
// for a stage it does not know.
func Finishing(stage Stage) []Item {
	var items []Item
	for _, line := range finishing[stage] {
		item := starterItem(line)
		item.When = When{Finish: true}
		items = append(items, item)
	}
	return items
}

// Nutrients are mg/L (ppm) of nitrogen, phosphate and potash, all of them
// total: not all of it dissolves.
type Nutrients struct{ Nitrogen, Phosphate, Potash quantity.Concentration }

// Adds is what items bring to each litre of brew. Where an item is not per
// volume it belongs to the water it is stirred into.
func Adds(items []Item, water quantity.Volume) (Nutrients, error) {
	b, err := Scale(Recipe{Name: "finish", ForVolume: water, Items: items}, water)
	return Nutrients{b.Nitrogen, b.Phosphate, b.Potash}, err
}
