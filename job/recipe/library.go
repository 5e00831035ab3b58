package recipe

import (
	"aerosteep/quantity"
	"aerosteep/source"
)

// row is one ingredient of the library as its tables print it: bulk density in
// g/mL (low, typical, high) and parts in % of the mass as fed.
type row struct {
	name     string
	density  [3]float64
	food     [4]float64 // sugars, other carbohydrate, protein, fat
	minerals [3]float64 // N, P2O5, K2O
	obtained Obtained
	source   source.Source
}

// foods are the built-in ingredients. The natural spread of every one is 10 to
// 30 %: weigh it and read the label. A test holds each row to the table it was
// taken from.
var foods = []row{
	{"molasses", [3]float64{1.38, 1.41, 1.43}, [4]float64{47, 9, 4, 0.2}, [3]float64{0.6, 0.3, 3.5}, Partly, source.CaldwellMolasses},
	{"kitchen molasses", [3]float64{1.39, 1.424, 1.44}, [4]float64{55.5, 19.2, 0, 0.1}, [3]float64{0, 0.07, 1.76}, Partly, source.FoodDataCentral},
	{"white sugar", [3]float64{0.8, 0.85, 0.95}, [4]float64{99.9, 0, 0, 0}, [3]float64{0, 0, 0}, Memory, source.KitchenMeasures},
	{"oat flour", [3]float64{0.4, 0.44, 0.5}, [4]float64{0.8, 64.9, 14.66, 9.12}, [3]float64{2.51, 1.03, 0.45}, Partly, source.FoodDataCentral},
	{"rolled oats", [3]float64{0.32, 0.34, 0.41}, [4]float64{1, 66.7, 13.2, 6.5}, [3]float64{2.26, 0.94, 0.44}, Memory, source.FoodDataCentral},
	{"wheat flour", [3]float64{0.48, 0.51, 0.55}, [4]float64{0.4, 71.6, 13.2, 2.5}, [3]float64{2.3, 0.82, 0.44}, Memory, source.FoodDataCentral},
	{"kelp meal", [3]float64{0.55, 0.65, 0.8}, [4]float64{6, 52, 7, 3}, [3]float64{1.0, 0.2, 2.5}, Memory, source.GardenGuides},
	{"seaweed powder", [3]float64{0.5, 0.6, 0.75}, [4]float64{5, 40, 6, 0.5}, [3]float64{1.0, 0.5, 16}, Memory, source.TypicalLabels},
	{"liquid seaweed", [3]float64{1.05, 1.1, 1.2}, [4]float64{1, 7, 1, 0}, [3]float64{0.2, 0.1, 3}, Memory, source.TypicalLabels},
	{"fish hydrolysate", [3]float64{1.08, 1.13, 1.2}, [4]float64{0, 1, 13, 6}, [3]float64{2.2, 4.0, 0.5}, Memory, source.TypicalLabels},
	{"fish emulsion", [3]float64{1.15, 1.2, 1.26}, [4]float64{0, 1, 30, 3}, [3]float64{5.0, 2.0, 2.0}, Partly, source.GardenGuides},
	{"fish meal", [3]float64{0.55, 0.62, 0.7}, [4]float64{0, 1, 60, 9}, [3]float64{9.0, 7.0, 0}, Partly, source.GardenGuides},
	{"alfalfa meal", [3]float64{0.25, 0.35, 0.64}, [4]float64{7, 55, 17, 2.5}, [3]float64{2.7, 0.6, 2.4}, Memory, source.GardenGuides},
	{"soybean meal", [3]float64{0.55, 0.62, 0.7}, [4]float64{9, 25, 46, 1.5}, [3]float64{7.3, 1.5, 2.6}, Memory, source.FeedTables},
	{"cottonseed meal", [3]float64{0.55, 0.6, 0.65}, [4]float64{5, 36, 41, 2.5}, [3]float64{6.0, 2.5, 2.0}, Partly, source.GardenGuides},
	{"liquid humic acid", [3]float64{1.05, 1.08, 1.12}, [4]float64{0, 0, 0, 0}, [3]float64{0.1, 0, 1.5}, Memory, source.TypicalLabels},
	{"potassium humate", [3]float64{0.5, 0.6, 0.75}, [4]float64{0, 0, 0, 0}, [3]float64{0.9, 0.1, 11}, Memory, source.TypicalLabels},
	{"liquid fulvic acid", [3]float64{1.02, 1.08, 1.2}, [4]float64{0, 0, 0, 0}, [3]float64{0.1, 0, 0.5}, Memory, source.TypicalLabels},
	{"rock dust", [3]float64{1.2, 1.45, 1.7}, [4]float64{0, 0, 0, 0}, [3]float64{0, 0.3, 1.0}, Memory, source.TypicalLabels},
	{"soft rock phosphate", [3]float64{0.9, 1.0, 1.3}, [4]float64{0, 0, 0, 0}, [3]float64{0, 20, 0}, Memory, source.TypicalLabels},
	{"vegetable oil", [3]float64{0.91, 0.918, 0.925}, [4]float64{0, 0, 0, 100}, [3]float64{0, 0, 0}, Partly, source.FoodDataCentral},
	{"dried yeast", [3]float64{0.55, 0.65, 0.75}, [4]float64{2, 34, 48, 4}, [3]float64{7.5, 3.0, 2.0}, Memory, source.FeedTables},
}

// composts are the three that are not additives; their organic matter counts as
// inert within a brew, so only their sugars take oxygen.
var composts = []row{
	{"compost", [3]float64{0.475, 0.593, 0.71}, [4]float64{0.2, 0, 0, 0}, [3]float64{0.75, 0.4, 0.5}, Partly, source.CompostWeight},
	{"vermicompost", [3]float64{0.45, 0.6, 0.8}, [4]float64{0.1, 0, 0, 0}, [3]float64{0.7, 0.5, 0.4}, Memory, source.TypicalLabels},
	{"leaf mould", [3]float64{0.25, 0.35, 0.5}, [4]float64{0.1, 0, 0, 0}, [3]float64{0.5, 0.1, 0.1}, Partly, source.CompostWeight},
}

// aliases are other names that the trade uses for the same thing.
var aliases = map[string][]string{
	"molasses":     {"cane molasses"},
	"vermicompost": {"worm castings"},
	"leaf mould":   {"leaf mold"},
}

// ofAnimals are the additives of animal origin.
var ofAnimals = map[string]bool{"fish hydrolysate": true, "fish emulsion": true, "fish meal": true}

// library is all of them, ready to use.
var library = buildLibrary()

func buildLibrary() []Ingredient {
	all := make([]Ingredient, 0, len(foods)+len(composts))
	for _, r := range foods {
		all = append(all, r.ingredient(false))
	}
	for _, r := range composts {
		all = append(all, r.ingredient(true))
	}
	return all
}

func (r row) ingredient(compost bool) Ingredient {
	i := Ingredient{
		Name: r.name, Aliases: aliases[r.name], Compost: compost, Origin: Plant,
		Bulk: quantity.Density(r.density[1]), BulkFrom: FromLibrary,
		BulkRange: [2]quantity.Density{quantity.Density(r.density[0]), quantity.Density(r.density[2])},
		Composition: Composition{
			Sugars: quantity.Percent(r.food[0]), OtherCarbohydrate: quantity.Percent(r.food[1]),
			Protein: quantity.Percent(r.food[2]), Fat: quantity.Percent(r.food[3]),
			Nitrogen: quantity.Percent(r.minerals[0]), Phosphate: quantity.Percent(r.minerals[1]), Potash: quantity.Percent(r.minerals[2]),
		},
		Obtained: r.obtained, Sources: []source.Source{r.source},
	}
	if ofAnimals[r.name] {
		i.Origin = Animal
	}
	return i
}
