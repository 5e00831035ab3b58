package numeric_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"aerosteep/numeric"
)

// ulps is the distance in units in the last place.
func ulps(a, b float64) float64 {
	if a == b {
		return 0
	}
	next := math.Nextafter(math.Abs(b), math.Inf(1)) - math.Abs(b)
	return math.Abs(a-b) / next
}

// Reference: the standard library, itself within one unit in the last place.
func TestExpAndLogAgainstTheLibrary(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 200_000 {
		x := 1400*r.Float64() - 700
		if d := ulps(numeric.Exp(x), math.Exp(x)); d > 2 {
			t.Fatalf("exp(%v) is %v ulp off", x, d)
		}
		y := math.Exp(x)
		if d := ulps(numeric.Log(y), math.Log(y)); d > 2 {
			t.Fatalf("log(%v) is %v ulp off", y, d)
		}
	}
}

// Reference: e to the x in 200 binary digits, by its series (math/big).
func TestExpIsWithinSixTenthsOfAUnit(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	worst := 0.0
	for range 20_000 {
		x := 80*r.Float64() - 60
		got := numeric.Exp(x)
		unit := math.Nextafter(got, math.Inf(1)) - got
		off, _ := new(big.Float).Sub(exactExp(x), big.NewFloat(got)).Float64()
		worst = math.Max(worst, math.Abs(off)/unit)
	}
	if worst > 0.6 {
		t.Errorf("exp is %.3f units in the last place off", worst)
	}
}

// exactExp is exp(x / 2^10) by its series, squared ten times.
func exactExp(x float64) *big.Float {
	const digits, halvings = 200, 10
	of := func(v float64) *big.Float { return new(big.Float).SetPrec(digits).SetFloat64(v) }
	z, sum, term := of(math.Ldexp(x, -halvings)), of(1), of(1)
	for i := 1; i < 60; i++ {
		term.Mul(term, z).Quo(term, of(float64(i)))
		sum.Add(sum, term)
	}
	for range halvings {
		sum.Mul(sum, sum)
	}
	return sum
}

func TestExpAtItsEnds(t *testing.T) {
	for _, c := range []struct{ x, want float64 }{
		{0, 1}, {1, math.E}, {math.Inf(1), math.Inf(1)}, {math.Inf(-1), 0}, {710, math.Inf(1)}, {-746, 0},
	} {
		if got := numeric.Exp(c.x); ulps(got, c.want) > 1 && got != c.want {
			t.Errorf("exp(%v) = %v, want %v", c.x, got, c.want)
		}
	}
	if !math.IsNaN(numeric.Exp(math.NaN())) || !math.IsNaN(numeric.Log(-1)) {
		t.Error("NaN is lost")
	}
	if numeric.Exp(-740) == 0 {
		t.Error("exp(-740) is subnormal, not zero")
	}
}

// The bits themselves, so that another machine's are compared with these.
func TestBitsAreTheSameEverywhere(t *testing.T) {
	sum := uint64(0)
	for i := range 20_000 {
		x := -3 + 6*float64(i)/20_000
		sum = sum*31 + math.Float64bits(numeric.Exp(x))
		sum = sum*31 + math.Float64bits(numeric.Pow(1.024, 10*x))
	}
	const want = 9572970780174415636
	if sum != want {
		t.Errorf("digest of exp and pow is %d, on amd64 it is %d", sum, uint64(want))
	}
}

// θ^(T-20) for kLa: 1.024^5 = 1.125899906842624 exactly in decimals.
func TestPow(t *testing.T) {
	for _, c := range []struct{ x, y, want float64 }{
		{1.024, 5, 1.125899906842624}, {2, 10, 1024}, {0, 2, 0}, {5, 0, 1}, {1, 1e300, 1}, {0.25, 0.5, 0.5},
	} {
		if got := numeric.Pow(c.x, c.y); math.Abs(got-c.want) > 4e-16*math.Max(1, c.want)*8 {
			t.Errorf("pow(%v, %v) = %v, want %v", c.x, c.y, got, c.want)
		}
	}
}

// Reference: R's quantile(c(1,2,4,8), …) of type 7.
func TestQuantile(t *testing.T) {
	for p, want := range map[float64]float64{0: 1, 0.25: 1.75, 0.5: 3, 0.9: 6.8, 1: 8} {
		if got := numeric.Quantile([]float64{1, 2, 4, 8}, p); math.Abs(got-want) > 1e-12 {
			t.Errorf("quantile %v = %v, want %v", p, got, want)
		}
	}
	if !math.IsNaN(numeric.Quantile(nil, 0.5)) {
		t.Error("no values must give NaN")
	}
}

// Systematic resampling gives each index its expected count, rounded up or
// down (its defining property; Douc, Cappé & Moulines 2005).
func TestSystematicCounts(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 3))
	for range 200 {
		weights := make([]float64, 50)
		total := 0.0
		for i := range weights {
			weights[i] = r.ExpFloat64()
			total += weights[i]
		}
		counts := make([]int, len(weights))
		for _, i := range numeric.Systematic(weights, r.Float64(), nil) {
			counts[i]++
		}
		for i, w := range weights {
			expected := w / total * float64(len(weights))
			if math.Abs(float64(counts[i])-expected) > 1+1e-9 {
				t.Fatalf("index %d came %d times, expected %g", i, counts[i], expected)
			}
		}
	}
	if got := numeric.Systematic([]float64{0, 0}, 0.5, nil); len(got) != 2 || got[0] != 0 || got[1] != 1 {
		t.Errorf("no weight at all gave %v", got)
	}
}

func TestEffectiveSize(t *testing.T) {
	if got := numeric.EffectiveSize([]float64{2, 2, 2, 2}); got != 4 {
		t.Errorf("four equal weights are worth %v", got)
	}
	if got := numeric.EffectiveSize([]float64{1, 0, 0}); got != 1 {
		t.Errorf("one weight is worth %v", got)
	}
}

// Moments of the standard normal: 0, 1, 0, 3, within five standard errors.
func TestNormals(t *testing.T) {
	n := numeric.NewNormals(1, 7)
	const draws = 200_000
	var m [4]float64
	for range draws {
		x := n.Next()
		m[0] += x
		m[1] += x * x
		m[2] += x * x * x
		m[3] += x * x * x * x
	}
	for i, want := range []float64{0, 1, 0, 3} {
		spread := []float64{1, math.Sqrt(2), math.Sqrt(15), math.Sqrt(96)}[i] / math.Sqrt(draws)
		if got := m[i] / draws; math.Abs(got-want) > 5*spread {
			t.Errorf("moment %d is %v, want %v", i+1, got, want)
		}
	}
}

// Reference: Brent 1973; x - cos x is zero at 0.7390851332151607 (Dottie
// number, OEIS A003957).
func TestRoot(t *testing.T) {
	calls := 0
	got, err := numeric.Root(func(x float64) float64 { calls++; return x - math.Cos(x) }, 0, 1, 1e-14)
	if err != nil || math.Abs(got-0.7390851332151607) > 1e-14 || calls > 12 {
		t.Errorf("got %v after %d calls (%v)", got, calls, err)
	}
	if _, err := numeric.Root(func(x float64) float64 { return 1 + x*x }, -1, 1, 1e-9); err == nil {
		t.Error("no change of sign must be an error")
	}
	steep, err := numeric.Root(func(x float64) float64 { return math.Pow(x, 19) - 1e-30 }, 0, 4, 1e-12)
	if err != nil || math.Abs(steep-math.Pow(1e-30, 1.0/19)) > 1e-11 {
		t.Errorf("steep root %v (%v)", steep, err)
	}
}

// Reference: NIST StRD nonlinear regression, Misra1a (certified values; data
// and values from memory of the NIST page, and they agree with each other).
func TestLeastSquaresMisra1a(t *testing.T) {
	x := []float64{77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0}
	y := []float64{10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78}
	for _, start := range [][]float64{{500, 0.0001}, {250, 0.0005}} {
		fit, err := numeric.LeastSquares(func(b, r []float64) {
			for i := range x {
				r[i] = b[0]*(1-math.Exp(-b[1]*x[i])) - y[i]
			}
		}, start, len(x))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct{ got, want float64 }{
			{fit.Parameters[0], 2.3894212918e+02}, {fit.Parameters[1], 5.5015643181e-04},
			{fit.Deviation(0), 2.7070075241}, {fit.Deviation(1), 7.2668688436e-06},
			{fit.SumSquares, 1.2455138894e-01},
		} {
			if math.Abs(c.got-c.want) > 1e-6*c.want {
				t.Errorf("from %v: got %.11g, certified %.11g", start, c.got, c.want)
			}
		}
	}
}

func TestLeastSquaresRefusals(t *testing.T) {
	line := func(b, r []float64) { r[0] = b[0] + b[1] - 1 }
	if _, err := numeric.LeastSquares(line, []float64{0, 0}, 1); err == nil {
		t.Error("one point cannot fit two parameters")
	}
	bad := func(b, r []float64) { r[0], r[1] = math.NaN(), 0 }
	if _, err := numeric.LeastSquares(bad, []float64{0}, 2); err == nil {
		t.Error("NaN must be refused")
	}
}

func BenchmarkExp(b *testing.B) {
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		sum += numeric.Exp(float64(i&1023) * -0.01)
	}
	if sum < 0 {
		b.Fatal(sum)
	}
}
