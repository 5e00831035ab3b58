package recipe

import (
	"aerosteep/quantity"
	"aerosteep/source"
)

// Ingredient is a food or a compost by its name.
type Ingredient struct {
	Name        string
	Aliases     []string
	Compost     bool // compost, vermicompost, leaf mould: not an additive
	Origin      Origin
	Bulk        quantity.Density // 0 where nobody gave one
	BulkFrom    BulkFrom
	BulkRange   [2]quantity.Density // natural spread; zero where unknown
	Composition Composition
	Price       *Price
	Stock       *Stock
	ReorderAt   *Stock // buy again under this
	Obtained    Obtained
	Sources     []source.Source
}

// Composition is the parts of an ingredient by its mass as fed.
type Composition struct {
	Sugars, OtherCarbohydrate, Protein, Fat quantity.Share
	Nitrogen, Phosphate, Potash             quantity.Share // N, P2O5, K2O
}

// Origin is what hygiene rules ask of an additive.
type Origin string

// The two origins.
const (
	Plant  Origin = "plant"
	Animal Origin = "animal"
)

// Origins lists the words that a file may use.
var Origins = []string{string(Plant), string(Animal)}

// BulkFrom says who gave a bulk density.
type BulkFrom string

// Who may give it, nearest first.
const (
	FromRecipe  BulkFrom = "recipe"
	FromFile    BulkFrom = "file"
	FromLibrary BulkFrom = "library"
)

// Obtained says how well a composition is attested.
type Obtained string

// How a row of the library was obtained.
const (
	Printed Obtained = "printed" // every figure seen in a published table
	Partly  Obtained = "partly"  // density or N-P-K seen, the rest from memory
	Memory  Obtained = "memory"  // from memory: weigh it and read the label
)

// The oxygen that 1 g of each part takes when it is burnt to CO2, water and
// ammonia: glucose, starch, protein and triolein with whole atomic masses. A
// test derives all four from the formulas.
const (
	sugarDemand        = 16. / 15   // C6H12O6
	carbohydrateDemand = 32. / 27   // C6H10O5
	proteinDemand      = 160. / 113 // C5H7O2N
	fatDemand          = 640. / 221 // C57H104O6
)

// Demand is the theoretical oxygen demand of an ingredient in g O2 per g as
// fed:
//
//	16/15 sugars + 32/27 other carbohydrate + 160/113 protein + 640/221 fat
//
// Humic matter and the organic matter of compost are not among the parts:
// within a brew of days they count as inert.
//
// Source: parts by the reaction of van Lier 2012 (see FormulaDemand).
func (c Composition) Demand() float64 {
	return c.ReadyDemand() +
		carbohydrateDemand*c.OtherCarbohydrate.Fraction() +
		proteinDemand*c.Protein.Fraction() +
		fatDemand*c.Fat.Fraction()
}

// ReadyDemand is the part of Demand that microbes take up at once: the sugars.
func (c Composition) ReadyDemand() float64 { return sugarDemand * c.Sugars.Fraction() }

// parts is the sum that cannot exceed the whole.
func (c Composition) parts() float64 {
	return (c.Sugars + c.OtherCarbohydrate + c.Protein + c.Fat).Percent()
}
