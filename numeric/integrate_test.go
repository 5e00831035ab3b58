package numeric_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/numeric"
)

// published problems by name, as systems.
var problems = map[string]numeric.System{
	"robertson": func(_ float64, y, r []float64) {
		r[0] = -0.04*y[0] + 1e4*y[1]*y[2]
		r[2] = 3e7 * y[1] * y[1]
		r[1] = -r[0] - r[2]
	},
	"hires": func(_ float64, y, r []float64) {
		r[0] = -1.71*y[0] + 0.43*y[1] + 8.32*y[2] + 0.0007
		r[1] = 1.71*y[0] - 8.75*y[1]
		r[2] = -10.03*y[2] + 0.43*y[3] + 0.035*y[4]
		r[3] = 8.32*y[1] + 1.71*y[2] - 1.12*y[3]
		r[4] = -1.745*y[4] + 0.43*y[5] + 0.43*y[6]
		r[5] = -280*y[5]*y[7] + 0.69*y[3] + 1.71*y[4] - 0.43*y[5] + 0.69*y[6]
		r[6] = 280*y[5]*y[7] - 1.81*y[6]
		r[7] = -r[6]
	},
	"van_der_pol_mu_1000": func(_ float64, y, r []float64) {
		r[0] = y[1]
		r[1] = 1000*(1-y[0]*y[0])*y[1] - y[0]
	},
	"oregonator": func(_ float64, y, r []float64) {
		r[0] = 77.27 * (y[1] - y[0]*y[1] + y[0] - 8.375e-6*y[0]*y[0])
		r[1] = (-y[1] - y[0]*y[1] + y[2]) / 77.27
		r[2] = 0.161 * (y[0] - y[2])
	},
	"detest_A1": func(_ float64, y, r []float64) { r[0] = -y[0] },
	"detest_A2": func(_ float64, y, r []float64) { r[0] = -y[0] * y[0] * y[0] / 2 },
	"detest_A3": func(t float64, y, r []float64) { r[0] = y[0] * math.Cos(t) },
	"detest_A4": func(_ float64, y, r []float64) { r[0] = y[0] / 4 * (1 - y[0]/20) },
	"detest_A5": func(t float64, y, r []float64) { r[0] = (y[0] - t) / (y[0] + t) },
	"detest_B1_predator_prey": func(_ float64, y, r []float64) {
		r[0] = 2 * (y[0] - y[0]*y[1])
		r[1] = -(y[1] - y[0]*y[1])
	},
}

// TestPublishedProblems integrates the stiff test set of Bari and DETEST to
// their published end values. Source: beside each row of the table.
func TestPublishedProblems(t *testing.T) {
	for _, row := range published.Rows(t, "ode-tests.csv") {
		name := row.Text("problem")
		f, known := problems[name]
		if !known {
			t.Fatalf("problem %s has no system", name)
		}
		y0 := numbers(t, row.Text("y0"))
		tol := numeric.Tolerance{Relative: 1e-10, Absolute: 1e-16}
		solve := numeric.Integrate
		if row.Text("stiff") == "yes" {
			solve = numeric.IntegrateStiff
		}
		got, err := solve(f, row.Float("t0"), y0, row.Float("t_end"), tol)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		component := int(row.Float("component")) - 1
		want := row.Float("expected")
		row.Near(got.Y[component], want, relative(t, row.Text("tolerance"))*math.Abs(want))
	}
}

func numbers(t *testing.T, text string) []float64 {
	t.Helper()
	var out []float64
	for _, word := range strings.Fields(text) {
		v, err := strconv.ParseFloat(word, 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, v)
	}
	return out
}

// relative reads the first word of "1e-4 rel at rtol 1e-10".
func relative(t *testing.T, text string) float64 {
	t.Helper()
	return numbers(t, strings.Fields(text)[0])[0]
}

// Halving the tolerance never makes the error ten times worse, and the error
// follows the tolerance. Reference: DETEST A4 in closed form (logistic).
func TestWorkAndPrecision(t *testing.T) {
	const exact = 17.73016648131483
	for name, solve := range map[string]func(numeric.System, float64, []float64, float64, numeric.Tolerance) (numeric.Solution, error){
		"explicit": numeric.Integrate, "stiff": numeric.IntegrateStiff,
	} {
		before := math.Inf(1)
		for rtol := 1e-4; rtol > 1e-11; rtol /= 2 {
			got, err := solve(problems["detest_A4"], 0, []float64{1}, 20, numeric.Tolerance{Relative: rtol, Absolute: 1e-14})
			if err != nil {
				t.Fatal(err)
			}
			off := math.Abs(got.Y[0]-exact) / exact
			if off > 10*before && off > 1e-13 {
				t.Errorf("%s: at %g the error is %g, at twice that tolerance it was %g", name, rtol, off, before)
			}
			if off > 100*rtol {
				t.Errorf("%s: at %g the error is %g", name, rtol, off)
			}
			before = off
		}
	}
}

func TestGoingNowhereGivesTheStart(t *testing.T) {
	got, err := numeric.Integrate(problems["detest_A1"], 3, []float64{7}, 3, numeric.Tolerance{})
	if err != nil || got.Y[0] != 7 || got.T != 3 || got.Steps != 0 {
		t.Errorf("got %+v, %v", got, err)
	}
}

// The event is met where the closed form says: e^-t = 1/2 at ln 2, and the
// dense output between the steps follows the solution.
func TestEventAndDenseOutput(t *testing.T) {
	for name, solve := range map[string]func(numeric.System, float64, []float64, float64, numeric.Tolerance) (numeric.Solution, error){
		"explicit": numeric.Integrate, "stiff": numeric.IntegrateStiff,
	} {
		worst, y := 0.0, make([]float64, 1)
		got, err := solve(problems["detest_A1"], 0, []float64{1}, 5, numeric.Tolerance{
			Relative: 1e-10,
			Event:    func(_ float64, y []float64) float64 { return y[0] - 0.5 },
			Watch: func(s numeric.Stride) {
				for share := 0.0; share <= 1; share += 0.125 {
					at := s.From + share*(s.To-s.From)
					s.At(at, y)
					worst = math.Max(worst, math.Abs(y[0]-math.Exp(-at)))
				}
			},
		})
		if err != nil || !got.Stopped || math.Abs(got.T-math.Ln2) > 1e-7 || math.Abs(got.Y[0]-0.5) > 1e-9 {
			t.Errorf("%s: stopped at %v with %v (%v)", name, got.T, got.Y, err)
		}
		if worst > 1e-7 {
			t.Errorf("%s: between the steps the solution is off by %g", name, worst)
		}
	}
}

// Food eaten at a Monod rate that is steep near zero stays at or above it.
func TestStaysAboveZero(t *testing.T) {
	eaten := func(_ float64, y, r []float64) { r[0] = -50 * y[0] / (1e-3 + math.Abs(y[0])) }
	lowest := 0.0
	_, err := numeric.Integrate(eaten, 0, []float64{1}, 1, numeric.Tolerance{
		Relative: 1e-6, Absolute: 1e-9, NotNegative: true,
		Watch: func(s numeric.Stride) {
			y := make([]float64, 1)
			s.At(s.To, y)
			lowest = math.Min(lowest, y[0])
		},
	})
	if err != nil || lowest < -1e-8 {
		t.Errorf("fell to %g (%v)", lowest, err)
	}
}

func TestRunawayIsRefused(t *testing.T) {
	_, err := numeric.Integrate(func(_ float64, y, r []float64) { r[0] = y[0] * y[0] }, 0, []float64{1}, 2, numeric.Tolerance{})
	if err == nil {
		t.Error("the solution goes to infinity at t = 1, and no error came")
	}
}
