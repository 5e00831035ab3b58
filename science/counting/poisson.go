// Package counting turns what was counted into how many there are, with an
// honest range: cells in squares, colonies on plates, hyphae across a grid,
// tubes that went cloudy. It is arithmetic on counts; which count is made and
// what it is for is decided elsewhere.
package counting

import "aerosteep/numeric"

// twoSided95 is the share of chance left out at each end of a 95 % range.
const twoSided95 = 0.025

// Z95 is the standard normal quantile of a two-sided 95 % range.
const Z95 = 1.959963984540054

// Poisson is the exact 95 % range of the expected count behind a count of
// things that fall independently.
//
//	low  = chi²(0.025; 2C)/2      (0 where nothing was counted)
//	high = chi²(0.975; 2C + 2)/2  (3.688879 where nothing was counted)
//
// Input: a count, zero or more; a negative one is treated as zero.
//
// Source: Garwood 1936, Biometrika 28:437-442.
func Poisson(count int) (low, high float64) { return PoissonLimits(count, 0.95) }

// PoissonLimits is Poisson at another confidence, over 0 and under 1.
func PoissonLimits(count int, confidence float64) (low, high float64) {
	tail := (1 - confidence) / 2
	if count > 0 {
		low = chiSquared(2*count, tail) / 2
	}
	return low, chiSquared(2*max(count, 0)+2, 1-tail) / 2
}

// PoissonUpper is the limit that the expected count stays under with a
// one-sided confidence: 2.9957 for nothing counted at 95 %.
func PoissonUpper(count int, confidence float64) float64 {
	return chiSquared(2*max(count, 0)+2, confidence) / 2
}

// chiSquared is the quantile of the chi-square distribution.
func chiSquared(degrees int, p float64) float64 {
	return numeric.ChiSquaredQuantile(p, float64(degrees))
}

// chiSquaredTail is the chance of a chi-square value above x.
func chiSquaredTail(degrees int, x float64) float64 {
	return numeric.ChiSquaredTail(x, float64(degrees))
}

// student is the quantile of Student's t.
func student(degrees int, p float64) float64 {
	return numeric.StudentQuantile(p, float64(degrees))
}
