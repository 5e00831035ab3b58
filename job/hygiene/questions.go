package hygiene

import "slices"

// Questions orders the facts that are missing for some of the cases by how
// much one answer settles: first the fact that, over all its answers, leaves
// the fewest cases asking; then the one whose answers leave the fewest other
// facts to ask for; then the order of asking.
func Questions(cases []Facts) []Fact {
	var missing []Fact
	for _, c := range cases {
		for _, f := range Decide(c).Missing {
			if !slices.Contains(missing, f) {
				missing = append(missing, f)
			}
		}
	}
	slices.Sort(missing)
	left := make(map[Fact]burden, len(missing))
	for _, f := range missing {
		left[f] = leftBy(f, cases)
	}
	slices.SortStableFunc(missing, func(a, b Fact) int { return left[a].compare(left[b]) })
	return missing
}

// burden is what is left to ask on average after one answer.
type burden struct{ asking, facts float64 }

func (b burden) compare(c burden) int {
	switch {
	case b.asking < c.asking, b.asking == c.asking && b.facts < c.facts:
		return -1
	case b == c:
		return 0
	}
	return 1
}

func leftBy(f Fact, cases []Facts) burden {
	answers := f.Values()
	if answers == nil { // a date settles itself and nothing else
		answers = []string{""}
	}
	var left burden
	for _, c := range cases {
		for _, answer := range answers {
			v := theLaw().outlookOf(c.With(f, answer))
			if v.Allowed == Ask {
				left.asking += 1 / float64(len(answers))
			}
			left.facts += float64(len(v.Missing)) / float64(len(answers))
		}
	}
	return left
}

// outlookOf is the overall part of a verdict alone.
func (l *law) outlookOf(f Facts) Verdict {
	settled, days := f.settled(), calendar{f.Applied, f.Harvest}
	v := Verdict{Ruling: days.ruling(l.look(l.overall, &settled, same).ends)}
	if v.Allowed == Ask {
		v.Missing = l.missing(l.overall, &settled, days)
	}
	return v
}
