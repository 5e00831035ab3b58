package numeric

import "math"

// rosenbrock holds the six stages of RODAS: the Jacobian stands in every
// stage, one factoring serves all.
type rosenbrock struct {
	f        System
	given    func(t float64, y []float64, into [][]float64)
	least    float64 // of a component that a difference is taken over
	u        [6][]float64
	stage    []float64
	rate     []float64
	drift    []float64 // df/dt
	start    []float64
	rateAt   [2][]float64 // rates at both ends, for the solution between
	end      []float64
	h        float64
	jacobian [][]float64
	lu       *LU
	calls    int
}

// The coefficients of RODAS (Hairer & Wanner 1996, IV.7, from memory; the
// tests' published problems would show a wrong one).
var (
	rodasGamma = 0.25
	rodasNodes = [6]float64{0, 0.386, 0.21, 0.63, 1, 1}
	rodasDrift = [6]float64{0.25, -0.1043, 0.1035, -0.0362, 0, 0}
	rodasA     = [6][5]float64{
		{},
		{1.544},
		{0.9466785280815826, 0.2557011698983284},
		{3.314825187068521, 2.896124015972201, 0.9986419139977817},
		{1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950},
		{1.221224509226641, 6.019134481288629, 12.53708332932087, -0.6878860361058950, 1},
	}
	rodasC = [6][5]float64{
		{},
		{-5.6688},
		{-2.430093356833875, -0.2063599157091915},
		{-0.1073529058151375, -9.594562251023355, -20.47028614809616},
		{7.496443313967647, -10.24680431464352, -33.99990352819905, 11.70890893206160},
		{8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054},
	}
)

func newRosenbrock(f System, n int, tol Tolerance) *rosenbrock {
	r := &rosenbrock{f: f, given: tol.Jacobian, least: tol.filled().Absolute, lu: NewLU(n)}
	r.stage, r.rate, r.drift = make([]float64, n), make([]float64, n), make([]float64, n)
	r.start, r.end = make([]float64, n), make([]float64, n)
	r.rateAt = [2][]float64{make([]float64, n), make([]float64, n)}
	r.jacobian = make([][]float64, n)
	for i := range r.jacobian {
		r.jacobian[i] = make([]float64, n)
	}
	for i := range r.u {
		r.u[i] = make([]float64, n)
	}
	return r
}

func (r *rosenbrock) order() float64   { return 4 }
func (r *rosenbrock) evaluations() int { return r.calls }
func (r *rosenbrock) accept()          {}

func (r *rosenbrock) eval(t float64, y, rate []float64) {
	r.f(t, y, rate)
	r.calls++
}

func (r *rosenbrock) attempt(t, h float64, y, next, err []float64) {
	copy(r.start, y)
	r.h = h
	r.linearise(t, h, y)
	r.factor(h)
	for s := range r.u {
		for i := range y {
			r.stage[i] = y[i]
			for j := range s {
				r.stage[i] += rodasA[s][j] * r.u[j][i]
			}
		}
		r.eval(t+rodasNodes[s]*h, r.stage, r.rate)
		for i := range y {
			sum := r.rate[i] + h*rodasDrift[s]*r.drift[i]
			for j := range s {
				sum += rodasC[s][j] * r.u[j][i] / h
			}
			r.u[s][i] = sum
		}
		r.lu.Solve(r.u[s])
	}
	for i := range y {
		next[i] = r.stage[i] + r.u[5][i]
		err[i] = r.u[5][i]
	}
	copy(r.end, next)
	r.eval(t+h, next, r.rateAt[1])
}

// factor factors 1/(gamma h) - J.
func (r *rosenbrock) factor(h float64) {
	for i, row := range r.jacobian {
		for j, v := range row {
			r.lu.Set(i, j, -v)
		}
		r.lu.Set(i, i, 1/(rodasGamma*h)-row[i])
	}
	r.lu.Factor()
}

// linearise writes the Jacobian and df/dt at (t, y), by differences where
// none is given.
func (r *rosenbrock) linearise(t, h float64, y []float64) {
	r.eval(t, y, r.rateAt[0])
	ahead := math.Max(1e-8*math.Abs(t), 1e-8*math.Abs(h))
	ahead = math.Copysign(ahead, h)
	r.eval(t+ahead, y, r.rate)
	for i := range y {
		r.drift[i] = (r.rate[i] - r.rateAt[0][i]) / ahead
	}
	if r.given != nil {
		r.given(t, y, r.jacobian)
		return
	}
	copy(r.stage, y)
	for j := range y {
		delta := 1.5e-8 * math.Max(math.Abs(y[j]), math.Max(r.least, math.Abs(h*r.rateAt[0][j])))
		r.stage[j] = y[j] + delta
		r.eval(t, r.stage, r.rate)
		for i := range y {
			r.jacobian[i][j] = (r.rate[i] - r.rateAt[0][i]) / delta
		}
		r.stage[j] = y[j]
	}
}

// between is the cubic through both ends and their rates.
func (r *rosenbrock) between(share float64, into []float64) {
	rest := 1 - share
	for i := range into {
		change := r.end[i] - r.start[i]
		bend := rest*(r.h*r.rateAt[0][i]-change) - share*(r.h*r.rateAt[1][i]-change)
		into[i] = r.start[i] + share*change + share*rest*bend
	}
}
