package counting

import "math"

// Filter is one membrane: the volume that went through it in mL, and its
// colonies or TooMany.
type Filter struct {
	FilteredML float64
	Count      int
}

// FilterUse says whether a filter was used, and why.
type FilterUse struct {
	Filter
	Used bool
	Why  string
}

// FilterCount is what a set of membrane filters comes to, per 100 mL.
type FilterCount struct {
	Per100ML      *float64 // nil where every filter was too crowded
	Low95, High95 *float64
	Relation      Relation
	Reported      float64
	Filters       []FilterUse
}

// mostOnFilter is the count from which a filter is too crowded.
const mostOnFilter = 200

// CountFilters turns colonies on filters into a number per 100 mL:
// 100 x colonies / mL over the filters used, times the share of colonies that
// was confirmed; the exact range is scaled alike.
//
// Inputs: filters with counts of 0 or more, or TooMany; volumes over 0 mL; the
// confirmed share, over 0 up to 1. At least one filter.
//
// A countable range takes the filters inside it, or, with none inside, all
// that could be counted ("~"). No colony at all: "<" one colony. Only crowded
// filters: ">" 200 colonies on the smallest volume.
//
// Source: USGS National Field Manual 7.1.4 (formula, rounding); Garwood 1936.
func CountFilters(filters []Filter, rule Countable, verified float64) FilterCount {
	c := FilterCount{Relation: Equal, Filters: useFilters(filters, rule)}
	inside, counted := 0, 0
	for _, f := range c.Filters {
		inside += one(f.Used)
		counted += one(f.Count != TooMany)
	}
	if counted == 0 {
		c.Relation = MoreThan
		c.Reported = reportFilters(100 * mostOnFilter / smallestVolume(filters))
		return c
	}
	if inside == 0 {
		c.Relation = Estimated
		for i := range c.Filters {
			c.Filters[i].Used = c.Filters[i].Count != TooMany
		}
	}
	c.count(verified)
	return c
}

func useFilters(filters []Filter, rule Countable) []FilterUse {
	uses := make([]FilterUse, len(filters))
	for i, f := range filters {
		uses[i] = FilterUse{f, rule.holds(f.Count), rule.why(f.Count)}
	}
	return uses
}

func smallestVolume(filters []Filter) float64 {
	smallest := filters[0].FilteredML
	for _, f := range filters {
		smallest = math.Min(smallest, f.FilteredML)
	}
	return smallest
}

func (c *FilterCount) count(verified float64) {
	colonies, volume := 0, 0.0
	for _, f := range c.Filters {
		if f.Used {
			colonies += f.Count
			volume += f.FilteredML
		}
	}
	low, high := Poisson(colonies)
	scale := 100 * verified / volume
	estimate := float64(colonies) * scale
	low, high = low*scale, high*scale
	c.Per100ML, c.Low95, c.High95 = &estimate, &low, &high
	if c.Reported = reportFilters(estimate); colonies == 0 {
		c.Relation, c.Reported = LessThan, math.Max(1, reportFilters(100/volume))
	}
}

// reportFilters rounds: below 10 to whole numbers, else to two figures.
func reportFilters(v float64) float64 {
	if v < 10 {
		return math.RoundToEven(v)
	}
	return TwoFigures(v)
}

// AgainstLimit says how a count stands to a limit.
type AgainstLimit string

// The three answers.
const (
	Below     AgainstLimit = "below"
	Above     AgainstLimit = "above"
	Undecided AgainstLimit = "undecided"
)

// Against compares the whole range with a limit per 100 mL: a result is below
// it or above it only where all of its 95 % range is.
func (c FilterCount) Against(limit float64) AgainstLimit {
	switch {
	case c.Per100ML == nil && c.Reported > limit, c.Low95 != nil && *c.Low95 > limit:
		return Above
	case c.High95 != nil && *c.High95 <= limit:
		return Below
	}
	return Undecided
}
