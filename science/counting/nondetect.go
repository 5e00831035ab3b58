package counting

import "math"

// UpperLimitWhenClean is the concentration that lies above the true one with
// the given one-sided confidence when nothing was found in what was examined:
// -ln(1 - confidence)/examined, per unit of examined.
//
// Inputs: examined over 0 (mL or g); confidence 0.5 to 0.9999.
//
// Source: zero term of the Poisson distribution; Garwood 1936.
func UpperLimitWhenClean(examined, confidence float64) float64 {
	return -math.Log1p(-confidence) / examined
}

// ShareAboveAtMost is the largest share of all batches that may still be unclean
// when n batches were tested and all were clean: 1 - (1 - confidence)^(1/n).
//
// Source: zero term of the binomial distribution.
func ShareAboveAtMost(samples int, confidence float64) float64 {
	return -math.Expm1(math.Log1p(-confidence) / float64(samples))
}

// ChanceOfMissing is the chance that nothing is found in what is examined
// although there are so many per unit: exp(-c x examined).
func ChanceOfMissing(concentration, examined float64) float64 {
	return math.Exp(-concentration * examined)
}

// SamplesNeeded is how many samples of an amount must be clean to show, with
// the given confidence, that there are fewer than so many per unit.
func SamplesNeeded(concentration, amount, confidence float64) float64 {
	needed := -math.Log1p(-confidence) / (concentration * amount)
	return math.Max(1, math.Ceil(needed-1e-9*needed))
}
