package numeric

import (
	"math"
	"math/rand/v2"
	"slices"
)

// Normals draws standard normal numbers by the polar method (Marsaglia & Bray
// 1964, SIAM Review 6:260) from uniform ones handed in, with this package's
// Log, so that a seed gives the same numbers everywhere.
type Normals struct {
	Uniform *rand.Rand
	spare   float64
	kept    bool
}

// NewNormals draws from a PCG generator with this seed and stream.
func NewNormals(seed, stream uint64) *Normals {
	return &Normals{Uniform: rand.New(rand.NewPCG(seed, stream))}
}

// Next is the next standard normal number.
func (n *Normals) Next() float64 {
	if n.kept {
		n.kept = false
		return n.spare
	}
	for {
		u := float64(2*n.Uniform.Float64()) - 1
		v := float64(2*n.Uniform.Float64()) - 1
		s := float64(u*u) + float64(v*v)
		if s >= 1 || s == 0 {
			continue
		}
		f := math.Sqrt(float64(-2*Log(s)) / s)
		n.spare, n.kept = float64(v*f), true
		return float64(u * f)
	}
}

// LogNormal draws a value whose logarithm is normal: its median and the
// standard deviation of its natural logarithm are given.
func (n *Normals) LogNormal(median, spread float64) float64 {
	return median * Exp(float64(spread*n.Next()))
}

// Quantile is the p-quantile (0 to 1) of sorted values, linear between them
// (type 7 of Hyndman & Fan 1996, Am. Stat. 50:361). No values give NaN.
func Quantile(sorted []float64, p float64) float64 {
	n := len(sorted)
	if n == 0 {
		return math.NaN()
	}
	position := float64(p * float64(n-1))
	below := int(position)
	switch {
	case position <= 0:
		return sorted[0]
	case below >= n-1:
		return sorted[n-1]
	}
	share := position - float64(below)
	return sorted[below] + float64(share*(sorted[below+1]-sorted[below]))
}

// Quantiles sorts the values in place and reads several quantiles of them.
func Quantiles(values []float64, at ...float64) []float64 {
	slices.Sort(values)
	out := make([]float64, len(at))
	for i, p := range at {
		out[i] = Quantile(values, p)
	}
	return out
}

// Systematic draws as many indices as there are weights, each in proportion
// to its weight, with one uniform number u in [0, 1) (Kitagawa 1996, J.
// Comput. Graph. Stat. 5:1). The indices come in rising order. Weights need
// not add up to one; where they add up to nothing, every index comes once.
func Systematic(weights []float64, u float64, into []int) []int {
	n := len(weights)
	into = into[:0]
	total := 0.0
	for _, w := range weights {
		total += w
	}
	if !(total > 0) || math.IsInf(total, 1) {
		for i := range n {
			into = append(into, i)
		}
		return into
	}
	step := total / float64(n)
	threshold := float64(u * step)
	reached, i := weights[0], 0
	for range n {
		for reached < threshold && i < n-1 {
			i++
			reached += weights[i]
		}
		into = append(into, i)
		threshold += step
	}
	return into
}

// EffectiveSize is how many equal weights these are worth: (Σw)²/Σw².
func EffectiveSize(weights []float64) float64 {
	sum, squares := 0.0, 0.0
	for _, w := range weights {
		sum += w
		squares += float64(w * w)
	}
	if squares == 0 {
		return 0
	}
	return float64(sum*sum) / squares
}
