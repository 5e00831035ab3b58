package counting

import "math"

// Counts is what was seen: a count in each field (or square), or only the sum
// over so many fields.
type Counts struct {
	Each   []int // nil where only the total is known
	Total  int
	Fields int
}

// EachField is a count for every field.
func EachField(counts []int) Counts {
	c := Counts{Each: counts, Fields: len(counts)}
	for _, n := range counts {
		c.Total += n
	}
	return c
}

// OnlyTotal is a sum over fields that were not written down one by one.
func OnlyTotal(total, fields int) Counts { return Counts{Total: total, Fields: fields} }

// Interval is how a range was drawn.
type Interval string

// The ways.
const (
	PoissonExact Interval = "poisson-exact"
	StudentT     Interval = "student-t"
	ZeroSeen     Interval = "zero-seen"
	NoInterval   Interval = "none"
)

// Summary is the mean count of a field and its 95 % range. Pointers are nil
// where the counts give no such number.
type Summary struct {
	Counts
	Mean           float64
	Low, High      float64 // 95 % range of the mean
	Interval       Interval
	Variance       *float64
	VarianceToMean *float64
	Dispersion     *float64 // index of dispersion X² = (n-1) s²/m
	DispersionP    *float64 // upper tail of chi-square with n-1 degrees
	Overdispersed  *bool    // clumped: p under 0.05
	CutAtZero      bool     // the lower limit came out below zero
}

// clumpedBelow is the tail under which counts are taken as clumped.
const clumpedBelow = 0.05

// Summarise judges first whether the counts are clumped (index of dispersion
// against chi-square); if not, or if that cannot be told, the range is the
// exact Poisson one of the total; if so it is m ± t s/√n over the fields.
//
// Input: at least one field. Source: Garwood 1936; Elliott 1977, Freshwater
// Biological Association Scientific Publication 25.
func Summarise(c Counts) Summary {
	n := float64(c.Fields)
	s := Summary{Counts: c, Mean: float64(c.Total) / n, Interval: PoissonExact}
	low, high := Poisson(c.Total)
	s.Low, s.High = low/n, high/n
	if len(c.Each) < 2 {
		return s
	}
	variance := sampleVariance(c.Each)
	clumped := false
	s.Variance, s.Overdispersed = &variance, &clumped
	if c.Total == 0 {
		return s
	}
	ratio := variance / s.Mean
	chi2 := (n - 1) * ratio
	p := chiSquaredTail(c.Fields-1, chi2)
	s.VarianceToMean, s.Dispersion, s.DispersionP = &ratio, &chi2, &p
	if clumped = p < clumpedBelow; clumped {
		half := student(c.Fields-1, 1-twoSided95) * math.Sqrt(variance/n)
		s.Interval, s.Low, s.High = StudentT, s.Mean-half, s.Mean+half
		if s.Low < 0 {
			s.Low, s.CutAtZero = 0, true
		}
	}
	return s
}

func sampleVariance(counts []int) float64 {
	values := make([]float64, len(counts))
	for i, n := range counts {
		values[i] = float64(n)
	}
	return variance(values)
}

// variance is the sample variance, in two passes so that nothing cancels.
func variance(values []float64) float64 {
	m, sum := mean(values), 0.0
	for _, v := range values {
		sum += (v - m) * (v - m)
	}
	return sum / float64(len(values)-1)
}

func mean(values []float64) float64 {
	sum := 0.0
	for _, v := range values {
		sum += v
	}
	return sum / float64(len(values))
}

// FieldsNeeded is how many fields a wanted precision takes:
//
//	n = (1/m + 1/k)/D²
//
// with D the standard error as a part of the mean, and k of the negative
// binomial (+Inf: the counts are random).
//
// Source: Elliott 1977, Freshwater Biological Association Scientific
// Publication 25.
func FieldsNeeded(mean, k, standardError float64) float64 {
	return (1/mean + 1/k) / (standardError * standardError)
}

// PilotFieldsNeeded is FieldsNeeded from the counts of a pilot, in which
// 1/m + 1/k is max(s², m)/m²: here clumping counts even where the test cannot
// prove it.
func PilotFieldsNeeded(counts []int, standardError float64) float64 {
	m := EachFieldMean(counts)
	return math.Max(sampleVariance(counts), m) / (m * m) / (standardError * standardError)
}

// EachFieldMean is the mean count.
func EachFieldMean(counts []int) float64 {
	return float64(EachField(counts).Total) / float64(len(counts))
}
