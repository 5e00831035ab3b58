package counting

import "math"

// TooMany stands in place of a count that nobody could make.
const TooMany = -1

// Relation says how a result stands to the true value.
type Relation string

// The relations: a plain result, one that is only an upper or a lower limit,
// and one from a plate outside the countable range.
const (
	Equal     Relation = "="
	LessThan  Relation = "<"
	MoreThan  Relation = ">"
	Estimated Relation = "~"
)

// Countable is a range of colonies within which a plate or filter is counted,
// both ends included. The zero value takes every count there is.
type Countable struct{ Low, High int }

// All tells whether every count is taken.
func (c Countable) All() bool { return c.High == 0 }

func (c Countable) holds(count int) bool {
	return count != TooMany && (c.All() || count >= c.Low && count <= c.High)
}

// mostWithoutRule is the count from which plates are called crowded where no
// rule sets another.
const mostWithoutRule = 300

func (c Countable) high() int {
	if c.All() {
		return mostWithoutRule
	}
	return c.High
}

// Plate is one plate: the share of undiluted sample in what was plated, and
// its colonies or TooMany.
type Plate struct {
	Level    int // from 1
	Dilution float64
	Count    int
}

// PlateInterval is how the range of a plate count is drawn.
type PlateInterval string

// The two ways: exact Poisson, or the normal approximation of ISO 7218.
const (
	ExactInterval  PlateInterval = "exact"
	NormalInterval PlateInterval = "normal"
)

// PlateUse says whether a plate was used, and why.
type PlateUse struct {
	Plate
	Used bool
	Why  string // in-range, below, above, too-many, nearest, counted
}

// PlateCount is what a set of plates comes to.
type PlateCount struct {
	PerML         *float64 // nil where every plate was too crowded
	Low95, High95 *float64
	Relation      Relation
	ReportedPerML float64
	Colonies      *int
	ExaminedML    *float64 // of undiluted sample on the plates used
	Plates        []PlateUse
}

// CountPlates turns colonies into a number per mL: colonies on the plates used
// over the volume of sample on them, which is the Poisson maximum likelihood
// and, for two tenfold dilutions, the weighted mean of the printed rules.
//
// Inputs: plates with counts of 0 or more, or TooMany; dilutions over 0 up to
// 1; the volume plated in mL, over 0. At least one plate.
//
// Used are all plates inside the countable range. With none inside and all
// below, the result is "<" the lower end on the least diluted plate, and all
// plates give estimate and range. With none inside otherwise, the one counted
// plate nearest the upper end stands for all. With no plate counted the result
// is ">" the upper end on the most diluted plate.
//
// Source: FDA BAM chapter 3 (Maturin and Peeler 2001); ISO 7218:2007 10.3
// (normal interval, 10-300); Garwood 1936 (exact interval).
func CountPlates(plates []Plate, platedML float64, rule Countable, interval PlateInterval) PlateCount {
	c := PlateCount{Plates: make([]PlateUse, len(plates)), Relation: Equal}
	inside, counted, below := 0, 0, 0
	for i, p := range plates {
		c.Plates[i] = PlateUse{Plate: p, Used: rule.holds(p.Count), Why: rule.why(p.Count)}
		inside += one(c.Plates[i].Used)
		counted += one(p.Count != TooMany)
		below += one(p.Count != TooMany && p.Count < rule.Low)
	}
	switch {
	case counted == 0:
		c.Relation = MoreThan
		c.ReportedPerML = TwoFigures(float64(rule.high()) / (platedML * leastDilution(plates)))
		return c
	case inside == 0 && below == len(plates):
		c.Relation = LessThan
		c.ReportedPerML = TwoFigures(float64(rule.Low) / (platedML * mostDilution(plates)))
		c.useAll()
	case inside == 0:
		c.Relation = Estimated
		c.useNearest(rule.high())
	}
	c.count(platedML, interval)
	if *c.Colonies == 0 && rule.All() {
		c.Relation = LessThan
		c.ReportedPerML = TwoFigures(1 / (platedML * mostDilution(plates)))
	}
	if c.Relation == Equal || c.Relation == Estimated {
		c.ReportedPerML = TwoFigures(*c.PerML)
	}
	return c
}

func (c Countable) why(count int) string {
	switch {
	case count == TooMany:
		return "too-many"
	case c.All():
		return "counted"
	case count < c.Low:
		return "below"
	case count > c.High:
		return "above"
	}
	return "in-range"
}

func one(is bool) int {
	if is {
		return 1
	}
	return 0
}

func mostDilution(plates []Plate) float64 {
	most := plates[0].Dilution
	for _, p := range plates {
		most = math.Max(most, p.Dilution)
	}
	return most
}

func leastDilution(plates []Plate) float64 {
	least := plates[0].Dilution
	for _, p := range plates {
		least = math.Min(least, p.Dilution)
	}
	return least
}

func (c *PlateCount) useAll() {
	for i := range c.Plates {
		c.Plates[i].Used = true
	}
}

// useNearest takes the counted plate nearest the upper end, then the more
// dilute one.
func (c *PlateCount) useNearest(high int) {
	best := -1
	for i, p := range c.Plates {
		if p.Count == TooMany {
			continue
		}
		if best < 0 || p.nearer(c.Plates[best], high) {
			best = i
		}
	}
	c.Plates[best].Used, c.Plates[best].Why = true, "nearest"
}

func (p PlateUse) nearer(q PlateUse, high int) bool {
	a, b := math.Abs(float64(p.Count-high)), math.Abs(float64(q.Count-high))
	return a < b || a == b && p.Dilution < q.Dilution
}

// count sums the plates used.
func (c *PlateCount) count(platedML float64, interval PlateInterval) {
	colonies, volume := 0, 0.0
	for _, p := range c.Plates {
		if p.Used {
			colonies += p.Count
			volume += platedML * p.Dilution
		}
	}
	low, high := Poisson(colonies)
	if interval == NormalInterval && colonies > 0 {
		low, high = normalLimits(colonies)
	}
	estimate := float64(colonies) / volume
	low, high = low/volume, high/volume
	c.Colonies, c.ExaminedML = &colonies, &volume
	c.PerML, c.Low95, c.High95 = &estimate, &low, &high
}

// normalLimits are C + 1.92 ± 1.96 sqrt(C), as ISO 7218 has them. They say
// nothing of a count of 0, for which the exact limits are taken.
func normalLimits(colonies int) (low, high float64) {
	c := float64(colonies)
	return c + 1.92 - 1.96*math.Sqrt(c), c + 1.92 + 1.96*math.Sqrt(c)
}

// ExpandedUncertainty is the uncertainty of the log10 of a plate count with
// coverage factor 2: 2 sqrt(s² + 0.18861/C), s the reproducibility standard
// deviation in log10 and C over 0 colonies counted.
//
// Source: ISO/TS 19036:2006/Amd 1:2009, 8.2.
func ExpandedUncertainty(reproducibility float64, colonies int) float64 {
	return 2 * math.Sqrt(reproducibility*reproducibility+0.18861/float64(colonies))
}
