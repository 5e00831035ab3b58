package numeric

import (
	"errors"
	"math"
	"slices"
)

// Fit is the answer of a least-squares problem.
type Fit struct {
	Parameters []float64
	Covariance [][]float64 // of the parameters, with the residuals' own variance
	Residuals  []float64
	SumSquares float64
	Freedom    int // points less parameters
	Iterations int
}

// Deviation is the standard error of a parameter.
func (f *Fit) Deviation(i int) float64 { return math.Sqrt(f.Covariance[i][i]) }

// Errors of a least-squares problem.
var (
	ErrTooFewPoints  = errors.New("numeric: fewer points than parameters")
	ErrNoConvergence = errors.New("numeric: the fit did not settle")
)

// LeastSquares finds the parameters that make the sum of squared residuals
// least, from a first guess (Levenberg 1944, Marquardt 1963; scaling by the
// diagonal after Moré 1978). residuals writes one value a point. Derivatives
// are central differences. The covariance is s² (JᵀJ)⁻¹ with s² the residual
// variance, NaN where there is no freedom left.
func LeastSquares(residuals func(parameters, into []float64), first []float64, points int) (*Fit, error) {
	n := len(first)
	if points < n {
		return nil, ErrTooFewPoints
	}
	p := &problem{residuals: residuals, at: slices.Clone(first), r: make([]float64, points)}
	p.prepare(n, points)
	residuals(p.at, p.r)
	p.sum = sumOfSquares(p.r)
	if math.IsNaN(p.sum) || math.IsInf(p.sum, 0) {
		return nil, ErrNotFinite
	}
	damping := 1e-3
	for iteration := 1; iteration <= 500; iteration++ {
		p.differentiate()
		for {
			settled, better := p.try(damping)
			if better {
				damping = math.Max(damping/10, 1e-15)
				if settled {
					return p.fit(iteration)
				}
				break
			}
			if settled || damping > 1e15 {
				return p.fit(iteration)
			}
			damping *= 10
		}
	}
	return nil, ErrNoConvergence
}

// problem is the state of the search.
type problem struct {
	residuals       func(parameters, into []float64)
	at, trial, step []float64
	r, there, below []float64
	jacobian        [][]float64 // by parameter
	normal          [][]float64 // JᵀJ
	gradient        []float64
	sum             float64
}

func (p *problem) prepare(n, points int) {
	p.trial, p.step, p.gradient = make([]float64, n), make([]float64, n), make([]float64, n)
	p.there, p.below = make([]float64, points), make([]float64, points)
	p.jacobian, p.normal = make([][]float64, n), make([][]float64, n)
	for i := range n {
		p.jacobian[i], p.normal[i] = make([]float64, points), make([]float64, n)
	}
}

func (p *problem) differentiate() {
	for j := range p.at {
		value := p.at[j]
		delta := 6e-6 * math.Max(math.Abs(value), 1e-3)
		p.at[j] = value + delta
		p.residuals(p.at, p.there)
		p.at[j] = value - delta
		p.residuals(p.at, p.below)
		p.at[j] = value
		for i := range p.there {
			p.jacobian[j][i] = (p.there[i] - p.below[i]) / (2 * delta)
		}
	}
	for j := range p.at {
		for k := range p.at {
			p.normal[j][k] = dot(p.jacobian[j], p.jacobian[k])
		}
		p.gradient[j] = dot(p.jacobian[j], p.r)
	}
}

// try takes one damped step. It is better where the sum falls, and settled
// where neither the parameters nor the sum move any more.
func (p *problem) try(damping float64) (settled, better bool) {
	n := len(p.at)
	lu := NewLU(n)
	for j := range n {
		for k := range n {
			lu.Set(j, k, p.normal[j][k])
		}
		lu.Set(j, j, p.normal[j][j]*(1+damping)+1e-300)
		p.step[j] = -p.gradient[j]
	}
	if lu.Factor() != nil {
		return false, false
	}
	lu.Solve(p.step)
	small := true
	for j := range n {
		p.trial[j] = p.at[j] + p.step[j]
		small = small && math.Abs(p.step[j]) <= 1e-12*(math.Abs(p.at[j])+1e-12)
	}
	p.residuals(p.trial, p.there)
	sum := sumOfSquares(p.there)
	if !(sum <= p.sum) {
		return small, false
	}
	settled = small || p.sum-sum <= 1e-14*p.sum
	copy(p.at, p.trial)
	copy(p.r, p.there)
	p.sum = sum
	return settled, true
}

func (p *problem) fit(iterations int) (*Fit, error) {
	n := len(p.at)
	f := &Fit{
		Parameters: p.at, Residuals: p.r, SumSquares: p.sum,
		Freedom: len(p.r) - n, Iterations: iterations, Covariance: make([][]float64, n),
	}
	p.differentiate()
	variance := p.sum / float64(f.Freedom)
	lu := NewLU(n)
	for j := range n {
		for k := range n {
			lu.Set(j, k, p.normal[j][k])
		}
	}
	if err := lu.Factor(); err != nil {
		return nil, err
	}
	for j := range n {
		column := make([]float64, n)
		column[j] = variance
		lu.Solve(column)
		f.Covariance[j] = column
	}
	return f, nil
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

func sumOfSquares(v []float64) float64 { return dot(v, v) }
