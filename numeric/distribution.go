package numeric

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// The quantiles that intervals are made from, by the incomplete beta and gamma
// functions alone: the larger library of distributions would more than double
// what a phone has to fetch.

// StudentQuantile is the value that a Student t variable with so many degrees
// of freedom stays under with probability p, 0 < p < 1.
//
// With x = ν/(ν + t²), the tail beyond |t| is I_x(ν/2, 1/2)/2.
//
// Source: Abramowitz and Stegun 1964, Handbook of Mathematical Functions,
// 26.7.1.
func StudentQuantile(p, degrees float64) float64 {
	if p == 0.5 {
		return 0
	}
	tail := min(p, 1-p)
	x := mathext.InvRegIncBeta(degrees/2, 0.5, 2*tail)
	t := math.Sqrt(degrees * (1 - x) / x)
	return math.Copysign(t, p-0.5)
}

// ChiSquaredQuantile is the value that a chi-squared variable with so many
// degrees of freedom stays under with probability p, 0 <= p < 1.
//
// Source: Abramowitz and Stegun 1964, 26.4.19: P(ν/2, x/2).
func ChiSquaredQuantile(p, degrees float64) float64 {
	return 2 * mathext.GammaIncRegInv(degrees/2, p)
}

// ChiSquaredTail is the probability that a chi-squared variable exceeds x.
func ChiSquaredTail(x, degrees float64) float64 {
	if x <= 0 {
		return 1
	}
	return mathext.GammaIncRegComp(degrees/2, x/2)
}
