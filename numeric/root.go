package numeric

import (
	"errors"
	"math"
)

// ErrNoRoot says that a function has the same sign at both ends.
var ErrNoRoot = errors.New("numeric: no change of sign between the ends")

// Root finds where f is zero between a and b, which must give opposite signs,
// to within tolerance of x (Brent 1973, Algorithms for Minimization without
// Derivatives, ch. 4).
func Root(f func(float64) float64, a, b, tolerance float64) (float64, error) {
	fa, fb := f(a), f(b)
	switch {
	case fa == 0:
		return a, nil
	case fb == 0:
		return b, nil
	case !(fa*fb < 0):
		return math.NaN(), ErrNoRoot
	}
	c, fc := a, fa
	step, last := b-a, b-a
	for range 500 {
		if fb*fc > 0 {
			c, fc = a, fa
			step, last = b-a, b-a
		}
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		least := 2*2.2e-16*math.Abs(b) + tolerance/2
		middle := (c - b) / 2
		if math.Abs(middle) <= least || fb == 0 {
			return b, nil
		}
		step, last = brentStep(a, b, c, fa, fb, fc, step, last, middle, least)
		a, fa = b, fb
		if math.Abs(step) > least {
			b += step
		} else {
			b += math.Copysign(least, middle)
		}
		fb = f(b)
	}
	return b, nil
}

// brentStep is an interpolation where it behaves, else a bisection.
func brentStep(a, b, c, fa, fb, fc, step, last, middle, least float64) (float64, float64) {
	if math.Abs(last) < least || math.Abs(fa) <= math.Abs(fb) {
		return middle, middle
	}
	s := fb / fa
	var p, q float64
	if a == c {
		p, q = 2*middle*s, 1-s
	} else {
		u, r := fa/fc, fb/fc
		p = s * (2*middle*u*(u-r) - (b-a)*(r-1))
		q = (u - 1) * (r - 1) * (s - 1)
	}
	if p > 0 {
		q = -q
	}
	p = math.Abs(p)
	if 2*p < math.Min(3*middle*q-math.Abs(least*q), math.Abs(last*q)) {
		return p / q, step
	}
	return middle, middle
}
