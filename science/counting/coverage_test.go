package counting_test

import (
	"math"
	"testing"

	"aerosteep/science/counting"
)

// outcomes goes through every outcome of a series of three levels.
func outcomes(tubes int, amounts []float64, take func(levels []counting.Tubes)) {
	n := tubes + 1
	for code := range n * n * n {
		levels := make([]counting.Tubes, 3)
		for i, rest := 0, code; i < 3; i, rest = i+1, rest/n {
			levels[i] = counting.Tubes{Positive: rest % n, Total: tubes, Amount: amounts[i]}
		}
		take(levels)
	}
}

// chanceOf is the exact chance of an outcome at a concentration: binomial, tube
// for tube, with exp(-c v) for a tube that stays clear.
func chanceOf(levels []counting.Tubes, c float64) float64 {
	chance := 1.0
	for _, l := range levels {
		clear := math.Exp(-c * l.Amount)
		lgN, _ := math.Lgamma(float64(l.Total + 1))
		lgX, _ := math.Lgamma(float64(l.Positive + 1))
		lgR, _ := math.Lgamma(float64(l.Total - l.Positive + 1))
		chance *= math.Exp(lgN-lgX-lgR) * math.Pow(1-clear, float64(l.Positive)) * math.Pow(clear, float64(l.Total-l.Positive))
	}
	return chance
}

// The 95 % range of a most probable number covers the truth about as often as it
// says, by exact enumeration of all outcomes (as Garthright and Blodgett 2003,
// Food Microbiol. 20:439-445, judge the intervals of printed tables; from memory):
// on average over what the series can tell in 95 of 100 or more, and at its worst,
// where few outcomes carry the chance, in 89.
func TestCoverageByEnumeration(t *testing.T) {
	amounts := []float64{0.1, 0.01, 0.001}
	for _, tubes := range []int{3, 5} {
		for _, method := range []counting.Method{counting.LogNormal, counting.LikelihoodRatio} {
			sum, n, worst, at := 0.0, 0, 1.0, 0.0
			for step := range 101 {
				c := 3 * math.Pow(10, 2.5*float64(step)/100) // 3 to 950 per mL
				covered, all := 0.0, 0.0
				outcomes(tubes, amounts, func(levels []counting.Tubes) {
					p := chanceOf(levels, c)
					all += p
					m, err := counting.MostProbableNumber(levels, method)
					if err != nil {
						t.Fatal(err)
					}
					if (m.Low95 == nil || *m.Low95 <= c) && (m.High95 == nil || c <= *m.High95) {
						covered += p
					}
				})
				if math.Abs(all-1) > 1e-9 {
					t.Fatalf("the chances of all outcomes add up to %g", all)
				}
				sum, n = sum+covered, n+1
				if covered < worst {
					worst, at = covered, c
				}
			}
			mean := sum / float64(n)
			if mean < 0.95 || worst < 0.89 {
				t.Errorf("%d tubes, %s: mean %.4f, lowest %.4f at %.3g per mL", tubes, method, mean, worst, at)
			}
		}
	}
}
