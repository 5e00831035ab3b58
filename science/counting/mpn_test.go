package counting_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/science/counting"
)

func TestPoissonMatchesGarwood(t *testing.T) {
	for _, row := range published.Rows(t, "poisson-limits.csv") {
		count, confidence := int(row.Float("colonies_counted")), row.Float("confidence")
		low, high := counting.PoissonLimits(count, confidence)
		if row.Text("interval") == "one-sided upper" {
			high = counting.PoissonUpper(count, confidence)
		}
		got := low
		if row.Text("quantity") == "high" {
			got = high
		}
		row.Check(got, "colonies")
	}
}

// Known to six digits in every table: nothing seen in the sample still leaves
// room for 3.688879 at 95 %.
func TestPoissonOfNothing(t *testing.T) {
	low, high := counting.Poisson(0)
	if low != 0 || math.Abs(high-3.688879) > 5e-7 {
		t.Errorf("%g to %.7f", low, high)
	}
}

func levels(t *testing.T, row published.Row) []counting.Tubes {
	t.Helper()
	positive, total, amount := strings.Fields(row.Text("positive_tubes")), strings.Fields(row.Text("tubes")), strings.Fields(row.Text("amount_per_tube_g_or_mL"))
	all := make([]counting.Tubes, len(positive))
	for i := range all {
		p, err1 := strconv.Atoi(positive[i])
		n, err2 := strconv.Atoi(total[i])
		v, err3 := strconv.ParseFloat(amount[i], 64)
		if err1 != nil || err2 != nil || err3 != nil {
			t.Fatal(err1, err2, err3)
		}
		all[i] = counting.Tubes{Positive: p, Total: n, Amount: v}
	}
	return all
}

func mpn(t *testing.T, l []counting.Tubes, method counting.Method) counting.MPN {
	t.Helper()
	m, err := counting.MostProbableNumber(l, method)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// The figures of the FDA's own solver and of published worked examples, and
// the likelihood solved to nine digits.
func TestMostProbableNumberMatchesPublished(t *testing.T) {
	for _, name := range []string{"mpn-computed.csv", "mpn-examples.csv"} {
		for _, row := range published.Rows(t, name) {
			l := levels(t, row)
			normal, ratio := mpn(t, l, counting.LogNormal), mpn(t, l, counting.LikelihoodRatio)
			var got float64
			switch q := row.Text("quantity"); q {
			case "mpn", "mpn_mle":
				got = *normal.Estimate
			case "mpn_per_100_mL":
				got = 100 * *normal.Estimate
			case "se_log10", "se_log10_observed_information":
				got = *normal.SELn / math.Ln10
			case "ci95_low_lognormal":
				got = *normal.Low95
			case "ci95_high_lognormal":
				got = *normal.High95
			case "ci95_low_likelihood_ratio":
				got = *ratio.Low95
			case "ci95_high_likelihood_ratio":
				got = *ratio.High95
			case "rarity_index":
				got = normal.Rarity
			case "thomas_approximation":
				got = counting.Thomas(l)
			case "upper_limit_all_negative_alpha_0.025":
				got = *normal.High95
			case "lower_limit_all_positive_alpha_0.025":
				got = *normal.Low95
			default:
				t.Errorf("%s: %q is not tested", row.Name(), q)
				continue
			}
			row.Check(got, row.Text("unit"))
		}
	}
}

// FDA BAM appendix 2 and Standard Methods 9221: every printed row, to its two
// figures.
func TestMostProbableNumberMatchesPrintedTables(t *testing.T) {
	for _, row := range published.Rows(t, "mpn-tables.csv") {
		var l []counting.Tubes
		for i := 1; i <= 3; i++ {
			n := strconv.Itoa(i)
			l = append(l, counting.Tubes{
				Positive: int(row.Float("positive_tubes_" + n)), Total: int(row.Float("tubes_per_dilution")), Amount: row.Float("amount_per_tube_" + n),
			})
		}
		m := mpn(t, l, counting.LogNormal)
		per := 1.0
		if row.Text("unit") == "MPN/100 mL" {
			per = 100
		}
		row.Near(per**m.Estimate, row.Float("mle_unrounded"), 1e-6*row.Float("mle_unrounded"))
		row.Near(per**m.Estimate, row.Float("expected"), row.Float("tolerance")*1.0001)
	}
}

// Soil protozoa by Darbyshire et al. 1974: eight wells a step.
func TestProtozoaSeries(t *testing.T) {
	for _, row := range published.Rows(t, "protozoa-mpn.csv") {
		in := map[string][]string{}
		for _, part := range strings.Split(row.Text("inputs"), "; ") {
			name, list, _ := strings.Cut(part, "=")
			in[name] = strings.Split(list, "|")
		}
		var l []counting.Tubes
		for i := range in["wells"] {
			n, _ := strconv.Atoi(in["wells"][i])
			x, _ := strconv.Atoi(in["positive"][i])
			v, _ := strconv.ParseFloat(in["volumes_mL"][i], 64)
			l = append(l, counting.Tubes{Positive: x, Total: n, Amount: v})
		}
		m := mpn(t, l, counting.LogNormal)
		got := *m.Estimate
		if row.Text("quantity") == "standard error of ln MPN" {
			got = *m.SELn
		}
		row.Near(got, row.Float("expected"), 1e-5*row.Float("expected"))
	}
}

func TestMostProbableNumberEnds(t *testing.T) {
	none := mpn(t, []counting.Tubes{{0, 8, 0.1}, {0, 8, 0.01}}, counting.LikelihoodRatio)
	if *none.Estimate != 0 || none.SELn != nil || none.Interval != counting.AllNegative || math.Abs(*none.High95-3.6888794541/0.88) > 1e-6 {
		t.Errorf("nothing grew: %+v", none)
	}
	all := mpn(t, []counting.Tubes{{3, 3, 0.1}, {3, 3, 0.01}, {3, 3, 0.001}}, counting.LogNormal)
	if all.Estimate != nil || all.High95 != nil || all.SELn != nil || all.Interval != counting.AllPositive || math.Abs(*all.Low95-357.8211) > 1e-3 {
		t.Errorf("all grew: %+v", all)
	}
	for _, l := range [][]counting.Tubes{nil, {{4, 3, 1}}, {{-1, 3, 1}}, {{0, 0, 1}}, {{1, 3, 0}}, {{1, 3, math.NaN()}}, {{1, 3, math.Inf(1)}}} {
		if m, err := counting.MostProbableNumber(l, counting.LogNormal); err == nil {
			t.Errorf("%v was taken: %+v", l, m)
		}
	}
}

// A positive tube more must never give a smaller number.
func TestMostProbableNumberRises(t *testing.T) {
	before := 0.0
	for x := 1; x < 8; x++ {
		m := mpn(t, []counting.Tubes{{8, 8, 0.1}, {x, 8, 0.01}, {0, 8, 0.001}}, counting.LogNormal)
		if *m.Estimate <= before || *m.Low95 >= *m.Estimate || *m.High95 <= *m.Estimate {
			t.Errorf("%d positive: %g (%g to %g) after %g", x, *m.Estimate, *m.Low95, *m.High95, before)
		}
		before = *m.Estimate
	}
}

func TestParseTubes(t *testing.T) {
	l, err := counting.ParseTubes("wells", "8/8, 7/8 ; 0/8")
	if err == nil {
		t.Errorf("two list marks were read as %v", l)
	}
	if l, err = counting.ParseTubes("wells", "8/8, 7/8,0/8"); err != nil || len(l) != 3 || l[1].Positive != 7 {
		t.Errorf("%v, %v", l, err)
	}
	for _, text := range []string{"", "3", "4/3", "-1/3", "1.5/3", "1/0", "1/1001", "1/3,,2/3", "NaN/3", strings.Repeat("1/3,", 20) + "1/3"} {
		if l, err := counting.ParseTubes("tubes", text); err == nil {
			t.Errorf("%q was read as %v", text, l)
		}
	}
}

func FuzzParseTubes(f *testing.F) {
	f.Add("3/3, 1/3, 0/3")
	f.Add("1;2")
	f.Fuzz(func(t *testing.T, text string) {
		l, err := counting.ParseTubes("tubes", text)
		if err != nil {
			return
		}
		for i := range l {
			l[i].Amount = math.Pow(10, -float64(i))
		}
		if _, err := counting.MostProbableNumber(l, counting.LogNormal); err != nil {
			t.Errorf("%q: %v", text, err)
		}
	})
}
