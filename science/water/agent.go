package water

import "aerosteep/quantity"

// Agent is a substance that takes chlorine out of water. Sulfites are left
// out on purpose: they take the oxygen with it.
type Agent string

// The agents.
const (
	AscorbicAcid      Agent = "ascorbic-acid"
	SodiumAscorbate   Agent = "sodium-ascorbate"
	SodiumThiosulfate Agent = "sodium-thiosulfate"
)

// Form is the form of thiosulfate on the bag: with or without crystal water.
type Form string

// The forms of thiosulfate; the other agents have none.
const (
	NoForm       Form = ""
	Anhydrous    Form = "anhydrous"
	Pentahydrate Form = "pentahydrate"
)

// fieldFactors are grams of agent per gram of chlorine at pH 7.
//
// Source: AWWA, Disinfection of Pipelines and Storage Facilities Field Guide,
// table 7-2. The guide does not name the form of thiosulfate.
var fieldFactors = map[Agent]float64{
	AscorbicAcid:      2.5,
	SodiumAscorbate:   2.8,
	SodiumThiosulfate: 1.9,
}

// stoichiometric are grams of agent per gram of chlorine for 1 mol to 1 mol,
// from IUPAC 2021 conventional molar masses.
var stoichiometric = map[Agent]float64{
	AscorbicAcid:    2.4841,
	SodiumAscorbate: 2.7942,
}

// thiosulfateSpan runs from the reaction to sulfate (1 mol takes 4 of Cl2) to
// the one to tetrathionate (2 mol take 1): a span of eight.
var thiosulfateSpan = map[Form][2]float64{
	Anhydrous:    {0.5575, 4.4597},
	Pentahydrate: {0.8751, 7.0006},
}

// Dose is what has to be weighed.
type Dose struct {
	Exact      quantity.Mass // by the field factor
	WithMargin quantity.Mass
	Low, High  quantity.Mass // what the chemistry may really need
}

// Neutralise works out the agent for a volume of water.
//
//	dose = factor x volume (m3) x chlorine (mg/L), g
//
// The range runs from the stoichiometric dose to the dose with margin; for
// thiosulfate over the whole span of its chemistry in the form given.
// The caller has checked that a form goes with thiosulfate and only with it.
func Neutralise(v quantity.Volume, chlorine quantity.Concentration, agent Agent, form Form, margin quantity.Share) Dose {
	perFactor := v.CubicMetres() * chlorine.MilligramsPerLitre()
	dose := Dose{Exact: quantity.Grams(fieldFactors[agent] * perFactor)}
	dose.WithMargin = dose.Exact * quantity.Mass(1+margin.Fraction())
	if agent == SodiumThiosulfate {
		span := thiosulfateSpan[form]
		dose.Low, dose.High = quantity.Grams(span[0]*perFactor), quantity.Grams(span[1]*perFactor)
		return dose
	}
	dose.Low, dose.High = quantity.Grams(stoichiometric[agent]*perFactor), dose.WithMargin
	return dose
}

// Contested tells whether studies disagree on what the agent does to this
// water: thiosulfate has no single factor, and on monochloramine trials of
// ascorbic acid differ (Basu and De Souza 2011).
func Contested(r Residual, agent Agent) bool {
	return agent == SodiumThiosulfate || r.Chloramine != Absent
}
