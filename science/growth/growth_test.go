package growth_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/numeric"
	"aerosteep/quantity"
	"aerosteep/science/growth"
)

// Source: the integrated Monod equation, beside each row.
func TestMonodBatch(t *testing.T) {
	for _, row := range published.Rows(t, "monod-batch.csv") {
		mu, ks, yield := row.Float("mu_max_per_h"), row.Float("ks_g_per_m3"), row.Float("yield_g_per_g")
		f := func(_ float64, y, r []float64) {
			r[0] = mu * growth.Monod(y[1], ks) * y[0]
			r[1] = -r[0] / yield
		}
		got, err := numeric.Integrate(f, 0, []float64{row.Float("x0_g_per_m3"), row.Float("s0_g_per_m3")}, row.Float("time_h"), numeric.Tolerance{})
		if err != nil {
			t.Fatal(err)
		}
		want, value := row.Float("expected"), got.Y[0]
		if row.Text("quantity") == "S" {
			value = got.Y[1]
		}
		row.Near(value, want, math.Max(1e-6*math.Abs(want), 1e-6))
	}
}

// Source: Verhulst's closed form, beside each row.
func TestLogistic(t *testing.T) {
	for _, row := range published.Rows(t, "logistic.csv") {
		r, most, n0 := row.Float("r_per_h"), row.Float("carrying_capacity"), row.Float("n0")
		f := func(_ float64, y, d []float64) { d[0] = r * y[0] * (1 - y[0]/most) }
		got, err := numeric.Integrate(f, 0, []float64{n0}, row.Float("time_h"), numeric.Tolerance{Relative: 1e-12, Absolute: 1e-12})
		if err != nil {
			t.Fatal(err)
		}
		want := row.Float("expected")
		row.Near(got.Y[0], want, 1e-9*want)
	}
}

// Source: Rosso et al. 1993, beside each row.
func TestCardinalTemperatures(t *testing.T) {
	for _, row := range published.Where(published.Rows(t, "temperature.csv"), "model", "ctmi") {
		c := growth.Cardinal{
			Least: quantity.Celsius(row.Float("t_min_C")), Best: quantity.Celsius(row.Float("t_opt_C")), Most: quantity.Celsius(row.Float("t_max_C")),
		}
		want := row.Float("expected")
		row.Near(row.Float("mu_opt_per_h")*c.Factor(quantity.Celsius(row.Float("temperature_C"))), want, math.Max(1e-9, 1e-8*want))
	}
	c := growth.Cardinal{Least: 5, Best: 30, Most: 40}
	if c.Factor(5) != 0 || c.Factor(40) != 0 || math.Abs(c.Factor(30)-1) > 1e-12 || c.Factor(50) != 0 {
		t.Error("the ends must be 0, the best 1")
	}
	if growth.Theta(1.024, 20, 20) != 1 {
		t.Error("theta is 1 at its own reference")
	}
}

// Source: Curds & Cockburn 1968 with Taylor 1977, beside each row.
func TestGrazing(t *testing.T) {
	for _, row := range published.Where(published.Rows(t, "grazing.csv"), "quantity", "specific growth rate") {
		if !row.Has("mu_max_per_h") {
			continue
		}
		want := row.Float("expected")
		got := row.Float("mu_max_per_h") * growth.Grazing(row.Float("bacteria_per_mL_or_doubling_h"), row.Float("half_saturation_cells_per_mL"), 0)
		row.Near(got, want, 1e-8*want)
	}
	if growth.Grazing(3, 10, 3) != 0 || growth.Grazing(2, 10, 3) != 0 {
		t.Error("nothing is eaten at and under the floor")
	}
}

func anyKinetics(r *rand.Rand) growth.Kinetics {
	return growth.Kinetics{
		Growth: 0.1 + r.Float64(), HalfReady: 1 + 30*r.Float64(), Yield: 0.4 + 0.3*r.Float64(), Endogenous: 0.02 * r.Float64(),
		FungalGrowth: 0.2 * r.Float64(), FungalYield: 0.5, Hydrolysis: 0.3 * r.Float64(), HalfSurface: 0.05, Repression: 1 + 100*r.Float64(),
		Grazing: 0.2 * r.Float64(), HalfPrey: 50, PreyFloor: 5 * r.Float64(), GrazerYield: 0.4, GrazerLoss: 0.01,
		HalfOxygen: 0.2, HalfNitrogen: 0.08, SlimeShare: r.Float64(), CellNitrogen: 0.086, SlowNitrogen: 0.05, InertFraction: 0.08,
	}
}

func anyBrew(r *rand.Rand) growth.Brew {
	b := growth.Brew{
		Ready: 2000 * r.Float64(), Slow: 500 * r.Float64(), Bacteria: 300 * r.Float64(), Fungi: 50 * r.Float64(),
		Grazers: 20 * r.Float64(), Nitrogen: 30 * r.Float64(),
	}
	b.Bound = 0.07 * (b.Bacteria + b.Fungi + b.Grazers)
	return b
}

// What is eaten and not built into cells is breathed, and no nitrogen comes
// from nothing: over any state the living model's oxygen demand closes but for
// what decays into inert matter, and its nitrogen closes.
func TestLivingModelBalances(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 2000 {
		k, b := anyKinetics(r), anyBrew(r)
		c := growth.Climate{Bacteria: 2 * r.Float64(), Fungi: 2 * r.Float64(), Decay: 2 * r.Float64()}
		var p growth.Pace
		k.Pace(&p, &b, c, 1.0/6)
		decay := c.Decay * (k.Endogenous*b.Bacteria + 0.5*k.Endogenous*b.Fungi + k.GrazerLoss*b.Grazers)
		cod := p.Ready + p.Slow + p.Bacteria + p.Fungi + p.Grazers + p.Demand + k.InertFraction*decay
		nitrogen := p.Nitrogen + p.Bound + k.SlowNitrogen*p.Slow
		size := b.Ready + b.Slow + b.Bacteria
		if math.Abs(cod) > 1e-10*size || math.Abs(nitrogen) > 1e-10*size {
			t.Fatalf("oxygen demand is off by %g, nitrogen by %g", cod, nitrogen)
		}
		if p.Demand < 0 {
			t.Fatalf("life gives oxygen off: %g", p.Demand)
		}
	}
}

// Nothing falls under zero however long the step, and no oxygen stops all.
func TestLivingModelStaysAboveZero(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 500 {
		k, b := anyKinetics(r), anyBrew(r)
		before := b
		var p growth.Pace
		k.Pace(&p, &b, growth.Climate{Bacteria: 1, Fungi: 1, Decay: 1}, 0.5)
		b.Go(&p, &p, 0, 0.5)
		if b != before {
			t.Fatal("without oxygen something went on")
		}
		for range 100 {
			var p growth.Pace
			k.Pace(&p, &b, growth.Climate{Bacteria: 1, Fungi: 1, Decay: 1}, 0.5)
			b.Go(&p, &p, 1, 0.5)
			for _, v := range []float64{b.Ready, b.Slow, b.Bacteria, b.Fungi, b.Grazers, b.Nitrogen, b.Bound} {
				if !(v >= 0) {
					t.Fatalf("a state is %v", v)
				}
			}
		}
	}
}
