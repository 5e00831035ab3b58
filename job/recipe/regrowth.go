package recipe

import "aerosteep/quantity"

// Regrowth is what trials saw at a dose: whether pathogens that were put into
// the brew grew. It is measured fact, not permission; the rules stand in
// job/hygiene.
type Regrowth string

// What was seen.
const (
	NoneSeen Regrowth = "none-seen"
	Untested Regrowth = "untested"
	Seen     Regrowth = "seen"
)

// The doses that were tried, in % w/v. The abstracts do not say w/v or v/v:
// w/v is taken, the stricter reading for anything heavier than water.
//
// Sources: molasses, Salmonella and E. coli O157:H7 over 72 h, Duffy et al.
// 2004; fish and seaweed, harmless E. coli M23, Palmer et al. 2010.
const (
	molassesNoGrowth  = 0.2
	molassesGrowth    = 1.0
	fishGrowth        = 0.8
	seaweedNoGrowth   = 0.5
	seaweedTestedUpTo = 2.0
)

// tested gives a dose that was meant to be 0.2 % the benefit of rounding.
const tested = 1 + 1e-9

// DoseRegrowth judges one additive by its dose in % w/v.
func DoseRegrowth(ingredient string, percent float64) Regrowth {
	switch additive(ingredient) {
	case "molasses":
		if percent <= molassesNoGrowth*tested {
			return NoneSeen
		}
		if percent*tested >= molassesGrowth {
			return Seen
		}
	case "fishhydrolysate":
		if percent*tested >= fishGrowth {
			return Seen
		}
	case "liquidseaweed":
		if percent*tested >= seaweedNoGrowth && percent <= seaweedTestedUpTo*tested {
			return NoneSeen
		}
	}
	return Untested
}

// additive is the row of the trials an ingredient belongs to; the two
// molasses are one.
func additive(ingredient string) string {
	if key := Key(ingredient); key != "kitchenmolasses" {
		return key
	}
	return "molasses"
}

// WholeRegrowth judges a recipe. Composts are not additives. With several
// additives the single-dose results no longer vouch for anything: mixtures let
// pathogens grow by 1 to 4 log (Ingram and Millner 2007).
func WholeRegrowth(items []Weighed) Regrowth {
	doses := map[string]float64{}
	for _, w := range items {
		if !w.Item.Ingredient.Compost {
			doses[additive(w.Item.Ingredient.Name)] += w.PercentWV()
		}
	}
	if len(doses) == 0 {
		return NoneSeen
	}
	worst := Untested
	for name, percent := range doses {
		seen := DoseRegrowth(name, percent)
		if len(doses) == 1 {
			return seen
		}
		if seen == Seen {
			worst = Seen
		}
	}
	return worst
}

// Ceiling is the dose of molasses that is kept only with a reason, until the
// user sets another: the largest at which the trials saw no growth.
const Ceiling = quantity.Share(molassesNoGrowth / 100)

// OverCeiling tells whether a dose is above the ceiling.
func OverCeiling(dose quantity.Share) bool { return Over(dose, Ceiling) }

// Molasses is the dose of molasses in a batch, % w/v of all its items together.
func (b Batch) Molasses() quantity.Share {
	percent := 0.0
	for _, w := range b.Items {
		if IsMolasses(w.Item.Ingredient.Name) {
			percent += w.PercentWV()
		}
	}
	return quantity.Percent(percent)
}

// Over tells whether a dose is above a ceiling that the user set.
func Over(dose, ceiling quantity.Share) bool { return dose > ceiling*tested }

// IsMolasses tells whether the ceiling is about this ingredient.
func IsMolasses(ingredient string) bool { return additive(ingredient) == "molasses" }
