package numeric

import "math"

// The constants split ln 2 into a part with zeros at its end, so that a whole
// multiple of it is exact, and the rest.
const (
	ln2High    = 6.93147180369123816490e-01
	ln2Low     = 1.90821492927058770002e-10
	log2OfE    = 1.44269504088896338700e+00
	expLargest = 7.09782712893383973096e+02
	expLeast   = -7.45133219101941108420e+02
)

// Exp is e to the power x, within one unit in the last place. The library's
// Exp differs between amd64 and WebAssembly in the last bit; this one does
// not. NaN gives NaN, +Inf +Inf, -Inf 0.
//
// Method: x = k ln 2 + r with |r| <= 0.35, and a rational form for exp(r)
// (FreeBSD msun, e_exp.c).
func Exp(x float64) float64 {
	switch {
	case math.IsNaN(x):
		return x
	case x > expLargest:
		return math.Inf(1)
	case x < expLeast:
		return 0
	}
	half := 0.5
	if x < 0 {
		half = -0.5
	}
	k := int(float64(log2OfE*x) + half)
	high := x - float64(float64(k)*ln2High)
	low := float64(float64(k) * ln2Low)
	return scale(expOfRest(high, low), k)
}

// expOfRest is exp(high - low) for |high - low| <= 0.35.
func expOfRest(high, low float64) float64 {
	const (
		p1 = 1.66666666666666657415e-01
		p2 = -2.77777777770155933842e-03
		p3 = 6.61375632143793436117e-05
		p4 = -1.65339022054652515390e-06
		p5 = 4.13813679705723846039e-08
	)
	r := high - low
	t := float64(r * r)
	c := p4 + float64(t*p5)
	c = p3 + float64(t*c)
	c = p2 + float64(t*c)
	c = p1 + float64(t*c)
	c = r - float64(t*c)
	return 1 - ((low - float64(r*c)/(2-c)) - high)
}

// scale is y times 2 to the power k, also where the result is subnormal.
func scale(y float64, k int) float64 {
	if k < -1021 || k > 1023 {
		return math.Ldexp(y, k)
	}
	return y * math.Float64frombits(uint64(k+1023)<<52)
}

// Log is the natural logarithm, within one unit in the last place and the
// same on every machine (FreeBSD msun, e_log.c). Below zero it is NaN.
func Log(x float64) float64 {
	const (
		l1 = 6.666666666666735130e-01
		l2 = 3.999999999940941908e-01
		l3 = 2.857142874366239149e-01
		l4 = 2.222219843214978396e-01
		l5 = 1.818357216161805012e-01
		l6 = 1.531383769920937332e-01
		l7 = 1.479819860511658591e-01
	)
	switch {
	case math.IsNaN(x) || math.IsInf(x, 1):
		return x
	case x < 0:
		return math.NaN()
	case x == 0:
		return math.Inf(-1)
	}
	fraction, exponent := math.Frexp(x)
	if fraction < math.Sqrt2/2 {
		fraction *= 2
		exponent--
	}
	f := fraction - 1
	k := float64(exponent)
	s := f / (2 + f)
	s2 := float64(s * s)
	s4 := float64(s2 * s2)
	odd := float64(s2 * (l1 + float64(s4*(l3+float64(s4*(l5+float64(s4*l7)))))))
	even := float64(s4 * (l2 + float64(s4*(l4+float64(s4*l6)))))
	r := odd + even
	halfSquare := float64(0.5*f) * f
	inner := float64(s*(halfSquare+r)) + float64(k*ln2Low)
	return float64(k*ln2High) - ((halfSquare - inner) - f)
}

// Pow is x to the power y for x >= 0, the same on every machine. Its relative
// error is at most about 2e-16 (1 + |y ln x|): enough for the rate and
// transfer laws it serves. A negative x gives NaN.
func Pow(x, y float64) float64 {
	switch {
	case y == 0 || x == 1:
		return 1
	case x == 0 && y > 0:
		return 0
	}
	return Exp(float64(y * Log(x)))
}
