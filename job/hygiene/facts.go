// Package hygiene tells whether a batch may go on a bed, and when the crop may
// be picked: the produce rule of 21 CFR Part 112, the organic rules of 7 CFR
// Part 205 with the compost tea recommendations, and, where neither binds, the
// care a careful grower takes.
//
// The rules are data (rules.csv). What is known about a case are its Facts; a
// fact that nobody stated stays unknown, and the unknown is never a yes:
//
//	facts, err := hygiene.Read(hygiene.Words{"material": "compost", "crop_use": "food"}, origins)
//	verdict := hygiene.Decide(facts)
//	verdict.Allowed  // "ask"
//	verdict.Missing  // the facts that can change the answer
//
// Several sources of facts (bed, batch, holding) are laid over one another by
// Layers. Nothing here is legal advice, and every verdict says so.
package hygiene

import (
	"time"

	"aerosteep/quantity"
)

// Fact is one thing to know about a batch, a crop or the way between them.
type Fact int

// The facts, in the order in which people are asked for them. The two dates
// and the words behind additives and held are kept beside them in Facts.
const (
	Material Fact = iota
	AnimalOrigin
	HumanWaste
	Treatment
	ProcessRecord
	NOPCompost
	Contaminated
	Additives
	Held
	Water
	WaterEColi
	Sanitized
	Pretest
	Pathogens
	CropUse
	Market
	Covered
	Organic
	EdiblePart
	Method
	ContactDuring
	ContactAfter
	factCount

	Applied Fact = factCount
	Harvest Fact = factCount + 1
)

// yesNo are the values of a plain question.
var yesNo = []string{"yes", "no"}

// definitions name each fact and the values it can have.
var definitions = [factCount]struct {
	name   string
	values []string
}{
	Material:      {"material", []string{"compost", "vermicompost", "raw-manure", "leachate"}},
	AnimalOrigin:  {"animal_origin", yesNo},
	HumanWaste:    {"human_waste", yesNo},
	Treatment:     {"treatment", []string{"validated", "hot", "none"}},
	ProcessRecord: {"process_record", yesNo},
	NOPCompost:    {"nop_compost", yesNo},
	Contaminated:  {"contaminated", yesNo},
	Additives:     {"additives", []string{"none", "plant", "animal"}},
	Held:          {"held", []string{"up-to-1h", "over-1h"}},
	Water:         {"water", []string{"municipal", "treated", "well", "rain", "surface"}},
	WaterEColi:    {"water_ecoli", []string{"not-detected", "detected"}},
	Sanitized:     {"sanitized", yesNo},
	Pretest:       {"pretest", []string{"passed", "failed", "none"}},
	Pathogens:     {"pathogens", []string{"not-tested", "not-found", "found"}},
	CropUse:       {"crop_use", []string{"food", "grain", "sprouts", "non-food"}},
	Market:        {"market", []string{"sold", "own-use"}},
	Covered:       {"covered", yesNo},
	Organic:       {"organic", yesNo},
	EdiblePart:    {"edible_part", []string{"in-soil", "touches-soil", "clear-of-soil"}},
	Method:        {"method", []string{"foliar", "drench", "drip"}},
	ContactDuring: {"contact_during", []string{"none", "minimized", "contact"}},
	ContactAfter:  {"contact_after", []string{"none", "minimized", "contact"}},
}

// String is the fact's name, the same as its key in a file.
func (f Fact) String() string {
	switch {
	case f == Applied:
		return "applied"
	case f == Harvest:
		return "harvest"
	case f >= 0 && f < factCount:
		return definitions[f].name
	}
	return ""
}

// Values are the words that a fact can have; nil for the two dates.
func (f Fact) Values() []string {
	if f < 0 || f >= factCount {
		return nil
	}
	return definitions[f].values
}

// All lists every fact in the order of asking.
func All() []Fact {
	all := make([]Fact, 0, factCount+2)
	for f := Material; f <= Harvest; f++ {
		all = append(all, f)
	}
	return all
}

// Names lists every fact's name in the order of asking.
func Names() []string {
	names := make([]string, 0, factCount+2)
	for _, f := range All() {
		names = append(names, f.String())
	}
	return names
}

// FactNamed finds a fact by its name.
func FactNamed(name string) (Fact, bool) {
	for _, f := range All() {
		if f.String() == name {
			return f, true
		}
	}
	return 0, false
}

// Facts is what is known about one bed and batch. The zero value knows
// nothing.
type Facts struct {
	value [factCount]uint8 // 0 unknown, else one more than the place in Values

	HeldFor       *quantity.Span // behind Held
	AdditiveNames []string       // behind Additives, as they were named
	Applied       *time.Time     // the day of application, midnight UTC
	Harvest       *time.Time     // the day of first harvest, midnight UTC
}

// Value is the word that a fact has, or "" where it is unknown.
func (f Facts) Value(fact Fact) string {
	if fact < 0 || fact >= factCount || f.value[fact] == 0 {
		return ""
	}
	return definitions[fact].values[f.value[fact]-1]
}

// With is the facts with one of them changed; "" makes it unknown. A word that
// the fact cannot have leaves it as it was.
func (f Facts) With(fact Fact, value string) Facts {
	if fact < 0 || fact >= factCount {
		return f
	}
	if value == "" {
		f.value[fact] = 0
	} else if at := indexOf(definitions[fact].values, value); at >= 0 {
		f.value[fact] = uint8(at + 1)
	}
	return f
}

func indexOf(words []string, word string) int {
	for i, w := range words {
		if w == word {
			return i
		}
	}
	return -1
}
