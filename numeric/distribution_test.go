package numeric_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"aerosteep/numeric"
)

// Printed percentage points: NIST/SEMATECH e-Handbook of Statistical Methods,
// 1.3.6.7.2 (t) and 1.3.6.7.4 (chi-squared), three decimals.
func TestPrintedPercentagePoints(t *testing.T) {
	for _, c := range []struct{ got, want float64 }{
		{numeric.StudentQuantile(0.975, 1), 12.706}, {numeric.StudentQuantile(0.975, 9), 2.262},
		{numeric.StudentQuantile(0.95, 30), 1.697}, {numeric.StudentQuantile(0.025, 10), -2.228},
		{numeric.ChiSquaredQuantile(0.95, 1), 3.841}, {numeric.ChiSquaredQuantile(0.975, 10), 20.483},
		{numeric.ChiSquaredQuantile(0.025, 10), 3.247},
	} {
		if math.Abs(c.got-c.want) > 0.0006 {
			t.Errorf("%.4f, printed %.3f", c.got, c.want)
		}
	}
}

// The same by a general-purpose library of distributions.
func TestQuantilesAgreeWithALibrary(t *testing.T) {
	for _, degrees := range []float64{1, 2, 3, 7, 20, 99, 1000, 20000} {
		for _, p := range []float64{0.001, 0.025, 0.2, 0.5, 0.9, 0.975, 0.9999} {
			check(t, "t", numeric.StudentQuantile(p, degrees), distuv.StudentsT{Sigma: 1, Nu: degrees}.Quantile(p))
			chi := numeric.ChiSquaredQuantile(p, degrees)
			check(t, "chi-squared", chi, distuv.ChiSquared{K: degrees}.Quantile(p))
			check(t, "tail", numeric.ChiSquaredTail(chi, degrees), 1-p)
		}
	}
}

func check(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*(1+math.Abs(want)) {
		t.Errorf("%s: %.12g, by the library %.12g", what, got, want)
	}
}
