package counting

import "math"

// Constants of a chart of individual values with ranges of two.
const (
	rangeToSigma = 1.128 // d2: neither 2/√π nor 3/2.66, as the handbook prints it
	rangeLimit   = 3.267 // D4
)

// Baseline is the spread that values are judged by.
type Baseline struct {
	Mean      float64
	MeanRange float64 // mean moving range |x(i) - x(i-1)|
}

// Sigma is MR/1.128.
func (b Baseline) Sigma() float64 { return b.MeanRange / rangeToSigma }

// RangeUpper is the limit of a single step, 3.267 MR.
func (b Baseline) RangeUpper() float64 { return rangeLimit * b.MeanRange }

// BaselineOf takes the mean and the mean moving range of two values or more.
//
// Source: NIST/SEMATECH e-Handbook 6.3.2.2.
func BaselineOf(values []float64) Baseline {
	sum := 0.0
	for i := 1; i < len(values); i++ {
		sum += math.Abs(values[i] - values[i-1])
	}
	return Baseline{Mean: mean(values), MeanRange: sum / float64(len(values)-1)}
}

// Chart is values judged against limits.
type Chart struct {
	Baseline     Baseline
	Centre       float64
	Sigma        float64
	Lower, Upper float64
	Points       []EWMAPoint // of an EWMA chart
	Signals      []Signal
}

// Signal is a rule that fits at a point.
type Signal struct {
	Rule  Rule
	Index int // of the point that completes it, from 1
}

// EWMAPoint is one step of the moving average with the limits of that step.
type EWMAPoint struct{ Average, Lower, Upper float64 }

// Individuals judges each value against mean ± 3 MR/1.128.
//
// Input: values, at least two of them in the baseline, which is the first so
// many. Source: NIST/SEMATECH e-Handbook 6.3.2.2; the rules are those of
// Western Electric as printed in 6.3.2 (from memory).
func Individuals(values []float64, baseline int, rules []Rule) Chart {
	b := BaselineOf(values[:baseline])
	c := Chart{Baseline: b, Centre: b.Mean, Sigma: b.Sigma()}
	c.Lower, c.Upper = c.Centre-3*c.Sigma, c.Centre+3*c.Sigma
	for i := range values {
		for _, rule := range rules {
			if rule.fits(c, values, i) {
				c.Signals = append(c.Signals, Signal{rule, i + 1})
			}
		}
	}
	return c
}

// EWMA judges an exponentially weighted moving average that starts at the
// centre: z = λ x + (1 - λ) z, limits centre ± L s √(λ/(2 - λ)), and for step t
// these times √(1 - (1 - λ)^(2t)).
//
// Source: NIST/SEMATECH e-Handbook 6.3.2.4.
func EWMA(values []float64, baseline Baseline, centre, sigma, lambda, width float64) Chart {
	c := Chart{Baseline: baseline, Centre: centre, Sigma: sigma}
	half := width * sigma * math.Sqrt(lambda/(2-lambda))
	c.Lower, c.Upper = centre-half, centre+half
	average := centre
	for i, x := range values {
		average = lambda*x + (1-lambda)*average
		part := half * math.Sqrt(1-math.Pow(1-lambda, 2*float64(i+1)))
		c.Points = append(c.Points, EWMAPoint{average, centre - part, centre + part})
		if c.outside(average) {
			c.Signals = append(c.Signals, Signal{EWMABeyondLimits, i + 1})
		}
	}
	return c
}

// hair keeps a value that equals its limit inside it in spite of rounding.
func (c Chart) hair() float64 { return 1e-9 * (math.Abs(c.Centre) + c.Sigma) }

func (c Chart) outside(x float64) bool { return x < c.Lower-c.hair() || x > c.Upper+c.hair() }
