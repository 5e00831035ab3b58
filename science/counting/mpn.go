package counting

import (
	"math"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Tubes is one level of a dilution series: so many tubes (or wells) with the
// same amount of sample in each, so many of them with growth.
type Tubes struct {
	Positive, Total int
	Amount          float64 // of undiluted sample in each tube: mL or g
}

// Method is how the range of a most probable number is drawn.
type Method string

// The methods, and the two cases in which the method does not matter.
const (
	LogNormal       Method = "log-normal"
	LikelihoodRatio Method = "likelihood-ratio"
	AllNegative     Method = "all-negative"
	AllPositive     Method = "all-positive"
)

// MPN is a most probable number per unit of amount (per mL or per g) with its
// 95 % range. Pointers are nil where the data give no such number.
type MPN struct {
	Estimate, Low95, High95 *float64
	SELn                    *float64 // standard error of ln(estimate)
	Rarity                  float64  // 1 = the likeliest outcome; under 1e-4 do not trust
	Interval                Method
}

// Category is Jarvis's class of an outcome: 1 likely, 2 rare, 3 doubtful.
func (m MPN) Category() int {
	switch {
	case m.Rarity >= 0.05:
		return 1
	case m.Rarity >= 0.01:
		return 2
	}
	return 3
}

// Trustworthy is false where the outcome is so improbable that the test should
// be repeated.
func (m MPN) Trustworthy() bool { return m.Rarity >= 1e-4 }

// MostProbableNumber finds the concentration under which the outcome of a
// dilution series is the likeliest:
//
//	sum x v/(1 - exp(-c v)) = sum n v
//
// with x of n tubes positive at amount v. The range is estimate x exp(±z SE),
// SE by observed information, or all c with 2 (ln L(ĉ) - ln L(c)) <= 3.8415.
// All tubes negative: 0 with the upper limit -ln(0.025)/sum(n v). All positive:
// only a lower limit, where that has a chance of 0.025.
//
// Errors: a fault for no level, a level without tubes, more positive tubes
// than tubes, an amount that is not over zero.
//
// Source: Cochran 1950; Jarvis, Wilrich and Wilrich 2010, J. Appl. Microbiol.
// 109:1660-1667 (range, rarity); Ridout 1994, Biometrics 50:289-296; Blodgett
// 2002 (rarity index); FDA BAM appendix 2.
func MostProbableNumber(levels []Tubes, method Method) (MPN, error) {
	if err := checkTubes(levels); err != nil {
		return MPN{}, err
	}
	positive, negative, amount := 0, 0, 0.0
	for _, l := range levels {
		positive += l.Positive
		negative += l.Total - l.Positive
		amount += float64(l.Total) * l.Amount
	}
	switch {
	case positive == 0:
		zero, low, high := 0.0, 0.0, -math.Log(twoSided95)/amount
		return MPN{Estimate: &zero, Low95: &low, High95: &high, Rarity: 1, Interval: AllNegative}, nil
	case negative == 0:
		low := solveFor(levels, func(c float64) float64 { return logLikelihood(levels, c) - math.Log(twoSided95) })
		return MPN{Low95: &low, Rarity: 1, Interval: AllPositive}, nil
	}
	return estimate(levels, method), nil
}

func checkTubes(levels []Tubes) error {
	wrong := func(key string) error {
		return fault.New("tubes", "", wording.Say(key), wording.Say("counting.tubes.allowed"), wording.Text{})
	}
	if len(levels) == 0 {
		return wrong("counting.tubes.none")
	}
	for _, l := range levels {
		switch {
		case l.Total < 1 || l.Positive < 0:
			return wrong("counting.tubes.none")
		case l.Positive > l.Total:
			return wrong("counting.tubes.more")
		case !(l.Amount > 0) || math.IsInf(l.Amount, 0):
			return wrong("counting.tubes.amount")
		}
	}
	return nil
}

func estimate(levels []Tubes, method Method) MPN {
	// The score falls as c rises; solveFor wants a rising function.
	c := solveFor(levels, func(c float64) float64 { return -score(levels, c) })
	se := math.Sqrt(1/information(levels, c)) / c
	low, high := c*math.Exp(-Z95*se), c*math.Exp(Z95*se)
	if method == LikelihoodRatio {
		low, high = likelihoodRange(levels, c)
	} else {
		method = LogNormal
	}
	return MPN{Estimate: &c, Low95: &low, High95: &high, SELn: &se, Rarity: rarity(levels, c), Interval: method}
}

// score is the derivative of the log likelihood.
func score(levels []Tubes, c float64) float64 {
	sum := 0.0
	for _, l := range levels {
		if l.Positive > 0 {
			sum += float64(l.Positive) * l.Amount / -math.Expm1(-c*l.Amount)
		}
		sum -= float64(l.Total) * l.Amount
	}
	return sum
}

// information is the observed information about c: sum x v² e^(-cv)/(1-e^(-cv))².
func information(levels []Tubes, c float64) float64 {
	sum := 0.0
	for _, l := range levels {
		p := -math.Expm1(-c * l.Amount)
		sum += float64(l.Positive) * l.Amount * l.Amount * math.Exp(-c*l.Amount) / (p * p)
	}
	return sum
}

// logLikelihood leaves out the binomial coefficients, which do not depend on c.
func logLikelihood(levels []Tubes, c float64) float64 {
	sum := 0.0
	for _, l := range levels {
		sum += levelLogLikelihood(l, l.Positive, c)
	}
	return sum
}

func levelLogLikelihood(l Tubes, positive int, c float64) float64 {
	sum := -float64(l.Total-positive) * c * l.Amount
	if positive > 0 {
		sum += float64(positive) * math.Log(-math.Expm1(-c*l.Amount))
	}
	return sum
}

// chiSquared95 is the 95 % quantile of chi-square with one degree of freedom.
const chiSquared95 = 3.841458820694124

func likelihoodRange(levels []Tubes, c float64) (low, high float64) {
	floor := logLikelihood(levels, c) - chiSquared95/2
	low = solveIn(math.Log(c)-60, math.Log(c), func(c float64) float64 { return logLikelihood(levels, c) - floor })
	high = solveIn(math.Log(c), math.Log(c)+60, func(c float64) float64 { return floor - logLikelihood(levels, c) })
	return low, high
}

// rarity is the likelihood of the outcome over that of the likeliest outcome
// at the same concentration, min(n, floor(p (n + 1))) at each level.
func rarity(levels []Tubes, c float64) float64 {
	sum := 0.0
	for _, l := range levels {
		p := -math.Expm1(-c * l.Amount)
		likeliest := min(l.Total, int(math.Floor(p*float64(l.Total+1))))
		sum += levelLogLikelihood(l, l.Positive, c) + logChoose(l.Total, l.Positive)
		sum -= levelLogLikelihood(l, likeliest, c) + logChoose(l.Total, likeliest)
	}
	return math.Min(1, math.Exp(sum))
}

func logChoose(n, k int) float64 { return logFactorial(n) - logFactorial(k) - logFactorial(n-k) }

func logFactorial(n int) float64 {
	v, _ := math.Lgamma(float64(n) + 1)
	return v
}

// solveFor finds where a function that rises with the concentration crosses
// zero, between far too thin for the largest tube and far too thick for the
// smallest.
func solveFor(levels []Tubes, f func(float64) float64) float64 {
	smallest, largest := math.Inf(1), 0.0
	for _, l := range levels {
		smallest, largest = math.Min(smallest, l.Amount), math.Max(largest, l.Amount)
	}
	return solveIn(math.Log(1e-9/largest), math.Log(1e3/smallest), f)
}

// solveIn halves the range of ln c until it cannot be told apart.
func solveIn(low, high float64, f func(float64) float64) float64 {
	for range 200 {
		middle := (low + high) / 2
		if middle == low || middle == high {
			break
		}
		if f(math.Exp(middle)) < 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Exp((low + high) / 2)
}

// Thomas is the old approximation: positive tubes over the root of the volume
// in negative tubes times the volume in all.
//
// Source: Thomas 1942; FDA BAM appendix 2.
func Thomas(levels []Tubes) float64 {
	positive, negativeAmount, amount := 0.0, 0.0, 0.0
	for _, l := range levels {
		positive += float64(l.Positive)
		negativeAmount += float64(l.Total-l.Positive) * l.Amount
		amount += float64(l.Total) * l.Amount
	}
	return positive / math.Sqrt(negativeAmount*amount)
}
