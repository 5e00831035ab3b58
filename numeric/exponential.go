package numeric

import "math"

// The constants split ln 2, and a 128th of it, into a part with zeros at its
// end, so that a whole multiple of it is exact, and the rest.
const (
	ln2High    = 6.93147180369123816490e-01
	ln2Low     = 1.90821492927058770002e-10
	partHigh   = 0x1.62e42feep-8
	partLow    = 0x1.a39ef35793c76p-40
	partsInOne = 0x1.71547652b82fep+7 // 128/ln 2
	expLargest = 7.09782712893383973096e+02
	expLeast   = -7.45133219101941108420e+02
	expPlain   = 708.0 // within it the result is finite and not subnormal
)

// A number added to wholes and wholesBits taken from the sum's bits leave the
// nearest whole number.
const (
	wholes     = 0x1.8p52
	wholesBits = 0x4338000000000000
)

// Exp is e to the power x, within 0.6 units in the last place. The library's
// Exp differs between amd64 and WebAssembly in the last bit; this one does
// not. NaN gives NaN, +Inf +Inf, -Inf 0.
//
// Method: x = k ln 2/128 + r with |r| <= ln 2/256, 2^(k/128) from a table, and
// the series of exp(r) to r^5, which leaves 6e-19 (Tang 1989, ACM Trans. Math.
// Softw. 15:144).
func Exp(x float64) float64 {
	if !(math.Abs(x) < expPlain) {
		return expAtItsEnds(x)
	}
	y, k := expOfParts(x)
	return math.Float64frombits(math.Float64bits(y) + uint64(k)<<52)
}

// expOfParts is exp(x) = y times 2 to the power k with y from 1 to 2, but for
// rounding.
func expOfParts(x float64) (y float64, k int64) {
	shifted := float64(x*partsInOne) + wholes
	parts := int64(math.Float64bits(shifted)) - wholesBits
	count := shifted - wholes
	r := (x - float64(count*partHigh)) - float64(count*partLow)
	square := float64(r * r)
	series := r + float64(square*(0.5+float64(r*(1.0/6))+float64(square*(1.0/24+float64(r*(1.0/120))))))
	power := &powersOfTwo[parts&127]
	return power.value + float64(power.value*(power.rest+series)), parts >> 7
}

// expAtItsEnds is Exp where the result is subnormal, zero or beyond all.
func expAtItsEnds(x float64) float64 {
	switch {
	case math.IsNaN(x):
		return x
	case x > expLargest:
		return math.Inf(1)
	case x < expLeast:
		return 0
	}
	y, k := expOfParts(x)
	return math.Ldexp(y, int(k))
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
	fraction, exponent := halves(x)
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

// halves is math.Frexp, quicker where x is neither zero nor subnormal.
func halves(x float64) (fraction float64, exponent int) {
	const half, mantissa = 1022, 1<<52 - 1
	bits := math.Float64bits(x)
	exponent = int(bits >> 52)
	if exponent == 0 {
		return math.Frexp(x)
	}
	return math.Float64frombits(bits&mantissa | half<<52), exponent - half
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
