package numeric

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// System writes dy/dt at (t, y) into rate.
type System func(t float64, y, rate []float64)

// Tolerance says how exact an integration must be and how far it may go.
type Tolerance struct {
	Relative    float64 // of each component; 0 takes 1e-8
	Absolute    float64 // 0 takes 1e-10
	NotNegative bool    // a step that makes a component negative by more than its tolerance is tried again, shorter
	MaxSteps    int     // 0 takes 1,000,000
	// Event stops the integration where it passes through zero.
	Event func(t float64, y []float64) float64
	// Watch sees every accepted stride, with the solution inside it.
	Watch func(Stride)
	// Jacobian writes df/dy by rows; nil takes differences. Only the stiff
	// method uses it.
	Jacobian func(t float64, y []float64, into [][]float64)
}

// Solution is where an integration ended and what it took.
type Solution struct {
	T                            float64
	Y                            []float64
	Stopped                      bool // at the event
	Steps, Rejected, Evaluations int
}

// Stride is one accepted step.
type Stride struct {
	From, To float64
	between  func(share float64, into []float64)
}

// At writes the solution at a time inside the stride.
func (s Stride) At(t float64, into []float64) {
	s.between((t-s.From)/(s.To-s.From), into)
}

// Errors of an integration.
var (
	ErrTooManySteps = errors.New("numeric: too many steps")
	ErrNoProgress   = errors.New("numeric: the step became too small to move on")
	ErrNotFinite    = errors.New("numeric: the state is not finite")
)

// method is one way of taking a step.
type method interface {
	// attempt writes the state after h hours and an estimate of its error.
	attempt(t, h float64, y, next, err []float64)
	// between writes the solution inside the step just attempted.
	between(share float64, into []float64)
	// accept tells the method that the step counts.
	accept()
	order() float64
	evaluations() int
}

// Integrate solves dy/dt = f from t0 to end with the explicit pair of Dormand
// & Prince 1980 (J. Comput. Appl. Math. 6:19), order 5 with error by order 4
// and dense output of order 4 (Hairer, Nørsett & Wanner 1993, II.6). end may
// lie before t0. With end = t0 it returns y0.
func Integrate(f System, t0 float64, y0 []float64, end float64, tol Tolerance) (Solution, error) {
	return drive(newDormandPrince(f, len(y0)), f, t0, y0, end, tol)
}

// IntegrateStiff solves the same where fast terms would force an explicit
// method to crawl: a Rosenbrock method of order 4 with error by order 3,
// stiffly accurate (RODAS; Hairer & Wanner 1996, IV.7).
func IntegrateStiff(f System, t0 float64, y0 []float64, end float64, tol Tolerance) (Solution, error) {
	return drive(newRosenbrock(f, len(y0), tol), f, t0, y0, end, tol)
}

func (t Tolerance) filled() Tolerance {
	if t.Relative == 0 {
		t.Relative = 1e-8
	}
	if t.Absolute == 0 {
		t.Absolute = 1e-10
	}
	if t.MaxSteps == 0 {
		t.MaxSteps = 1_000_000
	}
	return t
}

// driver walks a method from t0 to the end, choosing the steps.
type driver struct {
	method
	tol             Tolerance
	solution        Solution
	end             float64
	h               float64
	next, err       []float64
	eventBefore     float64
	rejectedJustNow bool
}

func drive(m method, f System, t0 float64, y0 []float64, end float64, tol Tolerance) (Solution, error) {
	tol = tol.filled()
	d := &driver{method: m, tol: tol, end: end, next: make([]float64, len(y0)), err: make([]float64, len(y0))}
	d.solution = Solution{T: t0, Y: slices.Clone(y0)}
	if end == t0 {
		return d.solution, nil
	}
	d.h = firstStep(f, t0, y0, end, tol, m.order())
	if tol.Event != nil {
		d.eventBefore = tol.Event(t0, y0)
	}
	var err error
	for err == nil && d.solution.T != end && !d.solution.Stopped {
		err = d.step()
	}
	d.solution.Evaluations = m.evaluations()
	if err != nil {
		return d.solution, fmt.Errorf("%w at t = %g", err, d.solution.T)
	}
	return d.solution, nil
}

// step tries one step and accepts it or makes the next one shorter.
func (d *driver) step() error {
	s := &d.solution
	switch {
	case s.Steps+s.Rejected >= d.tol.MaxSteps:
		return ErrTooManySteps
	case math.Abs(d.h) <= 4e-16*math.Abs(s.T):
		return ErrNoProgress
	}
	last := math.Abs(s.T+1.01*d.h-s.T) >= math.Abs(d.end-s.T)
	if last {
		d.h = d.end - s.T
	}
	d.attempt(s.T, d.h, s.Y, d.next, d.err)
	size := d.sizeOfError()
	if math.IsNaN(size) {
		size = 1e6
	}
	if size > 1 || d.tooNegative() {
		s.Rejected++
		d.rejectedJustNow = true
		d.h *= math.Max(0.1, math.Min(0.5, 0.9*math.Pow(size, -1/d.order())))
		if !finite(s.Y) {
			return ErrNotFinite
		}
		return nil
	}
	d.take(last)
	d.longer(size)
	return nil
}

// take accepts the step: the event is looked for, the stride shown.
func (d *driver) take(last bool) {
	s := &d.solution
	from, to := s.T, s.T+d.h
	if last {
		to = d.end
	}
	stride := Stride{From: from, To: to, between: d.between}
	if d.tol.Event != nil {
		if at, found := d.locate(stride); found {
			stride.At(at, d.next)
			part := (at - from) / (to - from)
			stride = Stride{From: from, To: at, between: func(share float64, into []float64) {
				d.between(share*part, into)
			}}
			to, s.Stopped = at, true
		}
	}
	if d.tol.Watch != nil {
		d.tol.Watch(stride)
	}
	copy(s.Y, d.next)
	s.T = to
	s.Steps++
	d.accept()
}

// locate finds where the event passes through zero within a stride.
func (d *driver) locate(stride Stride) (float64, bool) {
	after := d.tol.Event(stride.To, d.next)
	before := d.eventBefore
	d.eventBefore = after
	if before == 0 || before*after > 0 {
		return 0, false
	}
	y := make([]float64, len(d.next))
	at, err := Root(func(t float64) float64 {
		stride.At(t, y)
		return d.tol.Event(t, y)
	}, stride.From, stride.To, 1e-12*math.Max(1, math.Abs(stride.To)))
	return at, err == nil
}

func (d *driver) longer(size float64) {
	factor := 0.9 * math.Pow(math.Max(size, 1e-10), -1/d.order())
	most := 5.0
	if d.rejectedJustNow {
		most = 1
	}
	d.h *= math.Min(most, math.Max(0.2, factor))
	d.rejectedJustNow = false
}

// sizeOfError is the root mean square of the error in units of the tolerance.
func (d *driver) sizeOfError() float64 {
	sum := 0.0
	for i, e := range d.err {
		scale := d.tol.Absolute + d.tol.Relative*math.Max(math.Abs(d.solution.Y[i]), math.Abs(d.next[i]))
		sum += (e / scale) * (e / scale)
	}
	return math.Sqrt(sum / float64(len(d.err)))
}

func (d *driver) tooNegative() bool {
	if !d.tol.NotNegative {
		return false
	}
	for i, v := range d.next {
		if v < -(d.tol.Absolute + d.tol.Relative*math.Abs(d.solution.Y[i])) {
			return true
		}
	}
	return false
}

// firstStep guesses from how fast the state and its rate change (Hairer,
// Nørsett & Wanner 1993, II.4).
func firstStep(f System, t0 float64, y0 []float64, end float64, tol Tolerance, order float64) float64 {
	n := len(y0)
	rate, moved, rateThere := make([]float64, n), make([]float64, n), make([]float64, n)
	f(t0, y0, rate)
	norm := func(v []float64) float64 {
		sum := 0.0
		for i := range v {
			scale := tol.Absolute + tol.Relative*math.Abs(y0[i])
			sum += (v[i] / scale) * (v[i] / scale)
		}
		return math.Sqrt(sum / float64(n))
	}
	d0, d1 := norm(y0), norm(rate)
	h := 1e-6
	if d0 > 1e-5 && d1 > 1e-5 {
		h = 0.01 * d0 / d1
	}
	h = math.Min(h, math.Abs(end-t0))
	direction := math.Copysign(1, end-t0)
	for i := range y0 {
		moved[i] = y0[i] + direction*h*rate[i]
	}
	f(t0+direction*h, moved, rateThere)
	for i := range rateThere {
		rateThere[i] -= rate[i]
	}
	d2 := norm(rateThere) / h
	better := math.Max(1e-6, h*1e-3)
	if most := math.Max(d1, d2); most > 1e-15 {
		better = math.Pow(0.01/most, 1/order)
	}
	return direction * math.Min(math.Min(100*h, better), math.Abs(end-t0))
}

func finite(y []float64) bool {
	for _, v := range y {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
