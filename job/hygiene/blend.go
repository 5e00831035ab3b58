package hygiene

// ofCompost are the facts that a lot of compost carries, with the values from
// the strictest on; "" is where not knowing stands. What one bad lot does to a
// blend is known whatever the others are; what one good lot does is not, as
// long as another is unknown. Leachate is a liquid of its own and no lot to be
// mixed: other rules hold for it, so what it is mixed into has to be asked.
var ofCompost = []struct {
	fact   Fact
	strict []string
}{
	{Material, []string{"raw-manure", "", "vermicompost", "compost"}},
	{AnimalOrigin, []string{"yes", "", "no"}},
	{HumanWaste, []string{"yes", "", "no"}},
	{Treatment, []string{"none", "", "hot", "validated"}},
	{ProcessRecord, []string{"no", "", "yes"}},
	{NOPCompost, []string{"no", "", "yes"}},
	{Contaminated, []string{"yes", "", "no"}},
	{Pathogens, []string{"found", "", "not-tested", "not-found"}},
}

// OfCompost are the facts that a lot of compost carries into its batches.
func OfCompost() []Fact {
	facts := make([]Fact, len(ofCompost))
	for i, c := range ofCompost {
		facts[i] = c.fact
	}
	return facts
}

// Blended is what is known of a mixture of lots: of each fact of compost the
// strictest that any lot has.
func Blended(lots ...Words) Words {
	blend := Words{}
	if len(lots) == 0 {
		return blend
	}
	for _, c := range ofCompost {
		strictest := len(c.strict) - 1
		for _, lot := range lots {
			strictest = min(strictest, place(c.strict, lot[c.fact.String()]))
		}
		if word := c.strict[strictest]; word != "" {
			blend[c.fact.String()] = word
		}
	}
	return blend
}

// place is where a word stands among the values; any other word is one that
// says that nobody knows.
func place(strict []string, word string) int {
	if at := indexOf(strict, word); at >= 0 {
		return at
	}
	return indexOf(strict, "")
}
