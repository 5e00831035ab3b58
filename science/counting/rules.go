package counting

import "math"

// Rule is a pattern that pure chance seldom makes.
type Rule string

// The rules.
const (
	BeyondLimits             Rule = "beyond-limits"
	MovingRangeBeyondLimit   Rule = "moving-range-beyond-limit"
	EightOnOneSide           Rule = "eight-on-one-side"
	TwoOfThreeBeyondTwoSigma Rule = "two-of-three-beyond-two-sigma"
	FourOfFiveBeyondOneSigma Rule = "four-of-five-beyond-one-sigma"
	SixInARowUpOrDown        Rule = "six-in-a-row-up-or-down"
	EWMABeyondLimits         Rule = "ewma-beyond-limits"
)

// BasicRules are few enough to give one false alarm in about 371 points of
// limits; AllRules see more and cry wolf in about 92.
var (
	BasicRules = []Rule{BeyondLimits, MovingRangeBeyondLimit, EightOnOneSide}
	AllRules   = []Rule{BeyondLimits, MovingRangeBeyondLimit, EightOnOneSide, TwoOfThreeBeyondTwoSigma, FourOfFiveBeyondOneSigma, SixInARowUpOrDown}
)

// fits tells whether the rule is completed by value i.
func (r Rule) fits(c Chart, values []float64, i int) bool {
	switch r {
	case BeyondLimits:
		return c.outside(values[i])
	case MovingRangeBeyondLimit:
		return i > 0 && math.Abs(values[i]-values[i-1]) > c.Baseline.RangeUpper()+c.hair()
	case EightOnOneSide:
		return c.onOneSide(values, i, 8, 8, 0)
	case TwoOfThreeBeyondTwoSigma:
		return c.onOneSide(values, i, 3, 2, 2)
	case FourOfFiveBeyondOneSigma:
		return c.onOneSide(values, i, 5, 4, 1)
	case SixInARowUpOrDown:
		return trend(values, i, 6)
	}
	return false
}

// onOneSide tells whether value i and enough of the last so many lie more than
// so many sigma from the mean on the same side.
func (c Chart) onOneSide(values []float64, i, last, enough int, sigmas float64) bool {
	beyond := func(x, side float64) bool { return side*(x-c.Centre) > sigmas*c.Sigma+c.hair() }
	for _, side := range []float64{1, -1} {
		count := 0
		for j := max(0, i-last+1); j <= i; j++ {
			if beyond(values[j], side) {
				count++
			}
		}
		if beyond(values[i], side) && count >= enough {
			return true
		}
	}
	return false
}

// trend tells whether the last so many values each lie above, or each below,
// the one before.
func trend(values []float64, i, last int) bool {
	if i < last-1 {
		return false
	}
	up, down := true, true
	for j := i - last + 2; j <= i; j++ {
		up, down = up && values[j] > values[j-1], down && values[j] < values[j-1]
	}
	return up || down
}
