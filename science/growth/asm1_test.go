package growth_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/numeric"
	"aerosteep/science/growth"
)

// tolerance reads "1e-9 rel", "1e-6 rel or 1e-6", "1% of value or 0.02" and
// plain numbers, for an expected value.
func tolerance(t *testing.T, text string, want float64) float64 {
	t.Helper()
	words := strings.Fields(strings.Replace(text, "1% of value", "1e-2 rel", 1))
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatalf("tolerance %q", text)
		}
		return v
	}
	least := number(words[0])
	if len(words) > 1 && words[1] == "rel" {
		least *= math.Abs(want)
	}
	if len(words) == 4 {
		least = math.Max(least, number(words[3]))
	}
	return math.Max(least, 1e-12)
}

// Source: the matrix of Henze et al. 1987 with BSM1's constants.
func TestMatrixIsPublished(t *testing.T) {
	m := growth.BSM1.Matrix()
	for _, row := range published.Rows(t, "asm1-stoichiometry.csv") {
		p := m.Processes[int(row.Float("process"))-1]
		want := row.Float("expected")
		row.Near(p.Yield[row.Text("component")], want, math.Max(tolerance(t, row.Text("tolerance"), want), 1e-9))
	}
}

// Oxygen demand and nitrogen close in every row.
func TestRowsBalance(t *testing.T) {
	for name, set := range map[string]growth.ASM1{"BSM1": growth.BSM1, "1987": growth.Default20} {
		m := set.Matrix()
		for _, p := range m.Processes {
			cod, nitrogen := m.Imbalance(p)
			if math.Abs(cod) > 1e-12 || math.Abs(nitrogen) > 1e-12 {
				t.Errorf("%s: %s makes %g COD and %g N from nothing", name, p.Name, cod, nitrogen)
			}
		}
	}
}

// Source: an independent simulator's printed rates, and the same computed to
// more digits.
func TestRatesArePublished(t *testing.T) {
	m := growth.BSM1.Matrix()
	for _, row := range published.Rows(t, "asm1-rates.csv") {
		state := make([]float64, len(m.Components))
		for i, c := range m.Components {
			for _, unit := range []string{"_g_per_m3", "_mol_per_m3"} {
				if row.Has(c.Name + unit) {
					state[i] = row.Float(c.Name + unit)
				}
			}
		}
		rates, err := m.Rates(state)
		if err != nil {
			t.Fatal(err)
		}
		what, want := row.Text("quantity"), row.Float("expected")
		got := 0.0
		if number, isRate := strings.CutPrefix(what, "rho_"); isRate {
			i, _ := strconv.Atoi(number)
			got = rates[i-1]
		} else {
			name := strings.TrimPrefix(strings.TrimPrefix(what, "r_"), "d")
			got = m.Change(rates)[m.Column(name)]
		}
		row.Near(got, want, tolerance(t, row.Text("tolerance"), want))
	}
}

// Nothing of a group, no food, no oxygen: that rate is exactly 0, never NaN.
func TestNothingGivesNothing(t *testing.T) {
	m := growth.BSM1.Matrix()
	state := make([]float64, len(m.Components))
	rates, err := m.Rates(state)
	for i, r := range rates {
		if r != 0 || err != nil {
			t.Errorf("%s goes at %v in nothing (%v)", m.Processes[i].Name, r, err)
		}
	}
	state[m.Column("X_BH")] = -1
	if _, err := m.Rates(state); err == nil {
		t.Error("a negative state must be refused")
	}
}

// Decay of ASM1 is death and regrowth: 0.62 /d is 0.24 /d as endogenous
// respiration (0.62 x 0.3836).
func TestDecayIsNotEndogenous(t *testing.T) {
	if got := float64(growth.Default20.Endogenous()); math.Abs(got-0.62*0.3836) > 1e-12 {
		t.Errorf("endogenous %v", got)
	}
	if got := growth.PerDay(6).PerHour(); got != 0.25 {
		t.Errorf("6 per day is %v per hour", got)
	}
}

// batch runs the three aerobic processes of a tea in hours.
func batch(food, slow, living, kla, saturation float64, until float64, watch func(numeric.Stride)) (numeric.Solution, error) {
	a := growth.Default20
	full := a.Matrix()
	m, _ := growth.NewMatrix(full.Components, []growth.Process{full.Processes[0], full.Processes[3], full.Processes[6]})
	y := make([]float64, len(m.Components))
	y[m.Column("S_S")], y[m.Column("X_S")], y[m.Column("X_BH")], y[m.Column("S_O")] = food, slow, living, saturation
	f := func(_ float64, y, rate []float64) {
		held := make([]float64, len(y))
		for i, v := range y {
			held[i] = math.Max(0, v)
		}
		held[m.Column("S_NH")] = 0
		rates, err := m.Rates(held)
		if err != nil {
			rate[0] = math.NaN()
			return
		}
		for i, v := range m.Change(rates) {
			rate[i] = v / 24
		}
		rate[m.Column("S_NH")], rate[m.Column("X_ND")], rate[m.Column("S_ALK")] = 0, 0, 0
		rate[m.Column("S_O")] += kla * (saturation - y[m.Column("S_O")])
	}
	return numeric.Integrate(f, 0, y, until, numeric.Tolerance{Relative: 1e-9, Absolute: 1e-9, Watch: watch})
}

// Source: the same equations integrated by LSODA (beside each row).
func TestAeratedBatchIsPublished(t *testing.T) {
	m := growth.Default20.Matrix()
	for _, row := range published.Rows(t, "asm1-batch.csv") {
		at := row.Float("time_h")
		got, err := batch(row.Float("ss0_g_cod_per_m3"), row.Float("xs0_g_cod_per_m3"), row.Float("xbh0_g_cod_per_m3"), row.Float("kla_per_h"), row.Float("do_saturation_g_per_m3"), at, nil)
		if err != nil {
			t.Fatal(err)
		}
		want, name := row.Float("expected"), row.Text("component")
		value := got.Y[m.Column("S_O")]
		switch name {
		case "OUR":
			continue
		case "S_O", "S_S", "X_S", "X_BH", "X_P":
			value = got.Y[m.Column(name)]
		}
		row.Near(value, want, tolerance(t, row.Text("tolerance"), want))
	}
}

// Source: as above; minimum of oxygen and the hour of it.
func TestAeratedBatchMinimum(t *testing.T) {
	m := growth.Default20.Matrix()
	for _, row := range published.Rows(t, "asm1-batch-summary.csv") {
		lowest, hour := math.Inf(1), 0.0
		y := make([]float64, len(m.Components))
		_, err := batch(row.Float("ss0_g_cod_per_m3"), row.Float("xs0_g_cod_per_m3"), row.Float("xbh0_g_cod_per_m3"), row.Float("kla_per_h"), row.Float("do_saturation_g_per_m3"), 48,
			func(s numeric.Stride) {
				for share := 0.05; share <= 1; share += 0.05 {
					at := s.From + share*(s.To-s.From)
					s.At(at, y)
					if c := y[m.Column("S_O")]; c < lowest {
						lowest, hour = c, at
					}
				}
			})
		if err != nil {
			t.Fatal(err)
		}
		want := row.Float("expected_min_do_g_per_m3")
		row.Near(lowest, want, math.Max(0.02, 0.01*want))
		row.Near(hour, row.Float("expected_time_of_min_h"), 0.01*row.Float("expected_time_of_min_h")+0.1)
	}
}
