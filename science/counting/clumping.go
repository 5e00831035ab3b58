package counting

import (
	"math"

	"aerosteep/fault"
	"aerosteep/wording"
)

// ClumpingByMoments is k of the negative binomial by moments,
//
//	k = m²/(s² - m)
//
// the smaller, the more clumped. Where s² <= m the counts are no more clumped
// than chance and there is no k: a fault says so.
//
// Source: Elliott 1977; Bliss and Fisher 1953, Biometrics 9:176-200.
func ClumpingByMoments(counts []int) (float64, error) {
	m, s2 := EachFieldMean(counts), sampleVariance(counts)
	if !(s2 > m) {
		return 0, notClumped()
	}
	return m * m / (s2 - m), nil
}

// ClumpingByLikelihood is k by maximum likelihood: the root of
//
//	n ln(1 + m/k) = sum over fields of (1/k + 1/(k+1) + … + 1/(k+x-1))
//
// Source: Bliss and Fisher 1953, Biometrics 9:176-200.
func ClumpingByLikelihood(counts []int) (float64, error) {
	if _, err := ClumpingByMoments(counts); err != nil {
		return 0, err
	}
	m, n := EachFieldMean(counts), float64(len(counts))
	above := make([]float64, largest(counts)) // fields with more than i counts
	for _, x := range counts {
		for i := range x {
			above[i]++
		}
	}
	score := func(k float64) float64 {
		sum := -n * math.Log1p(m/k)
		for i, fields := range above {
			sum += fields / (k + float64(i))
		}
		return -sum
	}
	return solveIn(math.Log(1e-6), math.Log(1e9), score), nil
}

func largest(counts []int) int {
	most := 0
	for _, x := range counts {
		most = max(most, x)
	}
	return most
}

func notClumped() error {
	return fault.New("counts", "", wording.Say("counting.not-clumped"), wording.Say("counting.not-clumped.allowed"), wording.Text{})
}
