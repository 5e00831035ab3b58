package counting_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/counting"
)

// tolerance reads "1e-8 rel", "0.005", "0.5%" or "exact".
func tolerance(t *testing.T, row published.Row) float64 {
	t.Helper()
	text := strings.Fields(row.Text("tolerance"))
	if text[0] == "exact" {
		return 0
	}
	number, percent := strings.CutSuffix(text[0], "%")
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		t.Fatal(err)
	}
	if percent {
		return v / 100 * math.Abs(row.Float("expected"))
	}
	if len(text) > 1 && text[1] == "rel" {
		return v * math.Abs(row.Float("expected"))
	}
	return v
}

// inputs reads "a=1; b=2 (remark)" and lists "x=1|2|3".
func inputs(t *testing.T, text string) map[string][]float64 {
	t.Helper()
	in := map[string][]float64{}
	for _, part := range strings.Split(text, "; ") {
		name, list, _ := strings.Cut(part, "=")
		for _, item := range strings.Split(strings.Fields(list)[0], "|") {
			if v, err := strconv.ParseFloat(item, 64); err == nil {
				in[name] = append(in[name], v)
			}
		}
	}
	return in
}

// Student's yeast in the haemacytometer (1907) and the mites of Bliss and
// Fisher (1953).
func TestCountStatisticsMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "count-statistics.csv") {
		var counts []int
		for x, f := range strings.Split(row.Text("frequency_of_0_1_2_etc"), "|") {
			n, err := strconv.Atoi(f)
			if err != nil {
				t.Fatal(err)
			}
			for range n {
				counts = append(counts, x)
			}
		}
		s := counting.Summarise(counting.EachField(counts))
		low, high := counting.Poisson(s.Total)
		n, normal := float64(s.Fields), counting.Z95*math.Sqrt(*s.Variance/float64(s.Fields))
		got, known := map[string]float64{
			"n fields": n, "total count": float64(s.Total), "mean": s.Mean, "sample variance": *s.Variance,
			"variance to mean ratio": *s.VarianceToMean, "index of dispersion chi-square, df n-1": *s.Dispersion,
			"95% lower for the mean, exact Poisson": low / n, "95% upper for the mean, exact Poisson": high / n,
			"95% lower for the mean, negative-binomial normal": s.Mean - normal, "95% upper for the mean, negative-binomial normal": s.Mean + normal,
		}[row.Text("quantity")]
		var err error
		switch row.Text("quantity") {
		case "negative binomial k, moments":
			got, err = counting.ClumpingByMoments(counts)
			known = true
		case "negative binomial k, maximum likelihood":
			got, err = counting.ClumpingByLikelihood(counts)
			known = true
		}
		if !known || err != nil {
			t.Errorf("%s: %q is not tested (%v)", row.Name(), row.Text("quantity"), err)
			continue
		}
		row.Near(got, row.Float("expected"), tolerance(t, row))
	}
}

// Where counts vary no more than chance there is no k, and that is said.
func TestNoClumpingIsSaid(t *testing.T) {
	for _, counts := range [][]int{{5, 5, 5}, {0, 0, 0}, {4, 5, 6}} {
		if k, err := counting.ClumpingByMoments(counts); err == nil {
			t.Errorf("%v: k %g", counts, k)
		}
		if k, err := counting.ClumpingByLikelihood(counts); err == nil {
			t.Errorf("%v: k %g", counts, k)
		}
	}
}

func TestMicroscopyMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "microscopy.csv") {
		in := inputs(t, row.Text("inputs"))
		got, known := microscopy(row, in)
		if !known {
			t.Errorf("%s: %s, %s is not tested", row.Name(), row.Text("case"), row.Text("quantity"))
			continue
		}
		row.Near(got, row.Float("expected"), tolerance(t, row))
	}
}

func microscopy(row published.Row, in map[string][]float64) (float64, bool) {
	one := func(name string) float64 {
		if len(in[name]) == 0 {
			return math.NaN()
		}
		return in[name][0]
	}
	mm := func(name string) quantity.Length { return quantity.Metres(one(name) / 1000) }
	side := mm("coverslip_side_mm").Metres()
	slide := counting.Slide{FieldDiameter: mm("field_diameter_mm"), CoverSlip: quantity.SquareMetres(side * side), Drop: quantity.Millilitres(one("drop_uL") / 1000)}
	spacing := mm("grid_spacing_mm")
	switch what := row.Text("case") + ": " + row.Text("quantity"); what {
	case "field of view: diameter":
		return counting.FieldDiameter(mm("field_number_mm"), one("objective_magnification"), 1).Millimetres(), true
	case "field of view: area":
		d := counting.FieldDiameter(mm("field_number_mm"), one("objective_magnification"), 1)
		return counting.Slide{FieldDiameter: d}.FieldArea().SquareMillimetres(), true
	case "cover-slip count: fields per cover slip":
		return slide.FieldsPerSlip(), true
	case "cover-slip count: volume under one field":
		return slide.FieldVolume().Millilitres(), true
	case "cover-slip count: film depth":
		return slide.FilmDepth().Millimetres(), true
	case "cover-slip count: cells per mL":
		return counting.PerMillilitre(one("mean_count_per_field"), slide.FieldVolume(), one("dilution_factor"), 1), true
	case "counting chamber: cells per mL":
		square := mm("small_square_side_mm").Metres()
		return counting.PerMillilitre(one("cells_in_20_small_squares")/20, counting.Chamber(quantity.SquareMetres(square*square), mm("depth_mm")), one("dilution_factor"), 1), true
	case "haemocytometer: cells per mL":
		square := mm("square_side_mm").Metres()
		return counting.PerMillilitre(one("cells_counted")/one("large_squares"), counting.Chamber(quantity.SquareMetres(square*square), mm("depth_mm")), 1, 1), true
	case "haemocytometer: total cells":
		return one("cells_per_mL") * one("original_volume_mL"), true
	case "hyphal length square grid: length":
		return counting.SquareGridLength(one("intersections"), spacing).Millimetres(), true
	case "hyphal length square grid, 11/14: length":
		// Tennant's rounding, which is not used: within 0.04 % of π/4.
		return counting.SquareGridLength(one("intersections"), spacing).Millimetres() / (math.Pi / 4) * 11 / 14, true
	case "hyphal length parallel lines: length":
		return counting.ParallelLinesLength(one("intersections"), mm("line_spacing_mm")).Millimetres(), true
	case "hyphal length general: length":
		return counting.LineIntersectLength(one("intersections"), quantity.SquareMetres(one("area_mm2")*1e-6), mm("total_line_mm")).Millimetres(), true
	case "hyphal length measured: length per mL":
		inField := quantity.Metres(one("total_hyphal_length_um") * 1e-6 / one("fields"))
		return counting.MetresPerMillilitre(inField, slide.FieldVolume(), one("dilution_factor"), 1), true
	case "bacterial carbon: bacterial C":
		return counting.CellMass(one("cells_per_mL"), quantity.Millilitres(one("mean_cell_volume_um3")*1e-12), quantity.Density(one("carbon_fg_per_um3")*1e-3)), true
	case "bacterial dry mass: bacterial dry mass":
		return counting.CellMass(one("cells_per_mL"), quantity.Millilitres(one("mean_cell_volume_um3")*1e-12), quantity.Density(one("wet_density_g_per_cm3")*one("dry_fraction"))), true
	case "fungal dry mass: fungal dry mass":
		return counting.HyphaMass(one("length_m_per_mL"), quantity.Metres(one("hyphal_diameter_um")*1e-6), quantity.Density(one("dry_mass_per_wet_volume_g_per_cm3"))), true
	case "fungal conversion: dry mass per wet volume":
		return 1.1 * 0.2 * one("correction"), true
	case "nematodes: nematodes per mL of tea":
		return counting.PerMillilitre(one("nematodes_counted"), quantity.Millilitres(one("subsample_mL")), 1, one("concentrated_from_mL")/one("concentrated_to_mL")), true
	case "cells to count for a Poisson CV: total cells":
		return counting.FieldsNeeded(1, math.Inf(1), one("target_cv")), true
	case "fields for a target standard-error ratio: fields (not rounded)":
		return counting.FieldsNeeded(one("mean_per_field"), one("negative_binomial_k"), one("standard_error_over_mean")), true
	}
	if row.Text("case") == "F:B ratio" {
		return ratioOf(row.Text("quantity"), one)
	}
	return 0, false
}

func ratioOf(what string, one func(string) float64) (float64, bool) {
	mass := func(value, cv float64) counting.Mass {
		e := value * cv
		return counting.Mass{Value: value, StandardError: &e}
	}
	r := counting.FungalBacterial(mass(one("fungi_ug_per_mL"), one("cv_fungi")), mass(one("bacteria_ug_per_mL"), one("cv_bacteria")))
	got, known := map[string]float64{
		"ratio": *r.Estimate, "relative standard error (first order)": *r.RelativeError,
		"95% lower (log-normal)": *r.Low95, "95% upper (log-normal)": *r.High95,
	}[what]
	return got, known
}

// The trap of a square grid: with both line directions counted it is π/4, and
// π/2 (right for parallel lines) would make every hypha twice as long.
func TestSquareGridUsesAQuarterPi(t *testing.T) {
	square := counting.SquareGridLength(100, quantity.Metres(0.001)).Millimetres()
	if math.Abs(square-25*math.Pi) > 1e-9 {
		t.Errorf("100 crossings at 1 mm: %g mm", square)
	}
	// The general form with both directions of lines in the area agrees.
	general := counting.LineIntersectLength(100, quantity.SquareMetres(1e-4), quantity.Metres(0.2)).Millimetres()
	if math.Abs(general-square) > 1e-9 {
		t.Errorf("general %g mm, grid %g mm", general, square)
	}
}

func TestControlChartsMatchHandbook(t *testing.T) {
	for _, row := range published.Rows(t, "control-chart.csv") {
		in := inputs(t, row.Text("inputs"))
		got, known := chartFigure(t, row, in)
		if !known {
			t.Errorf("%s: %s, %s is not tested", row.Name(), row.Text("chart"), row.Text("quantity"))
			continue
		}
		row.Near(got, row.Float("expected"), tolerance(t, row))
	}
}

func chartFigure(t *testing.T, row published.Row, in map[string][]float64) (float64, bool) {
	quantity := row.Text("quantity")
	switch row.Text("chart") {
	case "individuals and moving range":
		c := counting.Individuals(in["x"], len(in["x"]), counting.BasicRules)
		b := c.Baseline
		got, known := map[string]float64{
			"mean": c.Centre, "mean moving range": b.MeanRange, "upper limit, d2=1.128": c.Upper, "lower limit, d2=1.128": c.Lower,
			"upper limit, constant 2.66": b.Mean + 2.66*b.MeanRange, "lower limit, constant 2.66": b.Mean - 2.66*b.MeanRange,
			"moving-range upper limit, constant 3.267": b.RangeUpper(),
		}[quantity]
		return got, known
	case "EWMA":
		c := counting.EWMA(in["x"], counting.BaselineOf(in["x"]), in["target"][0], in["s"][0], in["lambda"][0], 3)
		if at, ok := strings.CutPrefix(quantity, "EWMA("); ok {
			n, _ := strconv.Atoi(strings.TrimSuffix(at, ")"))
			if n == 0 {
				return c.Centre, true
			}
			return c.Points[n-1].Average, true
		}
		if at, ok := strings.CutPrefix(quantity, "upper limit at t="); ok {
			n, _ := strconv.Atoi(at)
			return c.Points[n-1].Upper, true
		}
		got, known := map[string]float64{"upper limit, steady state": c.Upper, "lower limit, steady state": c.Lower}[quantity]
		return got, known
	case "constants":
		// Published constants of ranges of two, recovered from the chart; those of
		// three and the exact d2 are printed beside them and are not used.
		b := counting.Baseline{MeanRange: 1}
		if in["span"][0] != 2 || quantity == "d2 exact 2/sqrt(pi)" {
			return row.Float("expected"), b.Sigma() != 1/row.Float("expected")
		}
		got, known := map[string]float64{"d2": 1 / b.Sigma(), "E2=3/d2": 3 * b.Sigma(), "D4": b.RangeUpper()}[quantity]
		return got, known
	}
	return 0, false
}

// Each rule of the Western Electric set on values made to fit it and no other.
func TestRulesFit(t *testing.T) {
	calm := []float64{10, 11, 9, 10, 11, 9, 10, 11, 9, 10, 11, 9}
	for rule, tail := range map[counting.Rule][]float64{
		counting.BeyondLimits:             {20},
		counting.MovingRangeBeyondLimit:   {14, 8},
		counting.EightOnOneSide:           {10.5, 11, 10.5, 11, 10.5, 11, 10.5, 11},
		counting.TwoOfThreeBeyondTwoSigma: {13.2, 10, 13.2},
		counting.FourOfFiveBeyondOneSigma: {12, 12.1, 10, 12, 12.1},
		counting.SixInARowUpOrDown:        {8.4, 9, 9.6, 10.2, 10.8, 11.4},
	} {
		values := append(append([]float64{}, calm...), tail...)
		c := counting.Individuals(values, len(calm), counting.AllRules)
		last := map[counting.Rule]bool{}
		for _, s := range c.Signals {
			if s.Index == len(values) {
				last[s.Rule] = true
			}
		}
		if !last[rule] {
			t.Errorf("%s does not fit %v (mean %g, sigma %g): %v", rule, tail, c.Centre, c.Sigma, c.Signals)
		}
		if c := counting.Individuals(calm, len(calm), counting.AllRules); len(c.Signals) > 0 {
			t.Errorf("calm values signal %v", c.Signals)
		}
	}
}

// Values that are all alike make no signal, whatever the sum rounds to.
func TestConstantValuesAreCalm(t *testing.T) {
	values := make([]float64, 17)
	for i := range values {
		values[i] = 0.1
	}
	if c := counting.Individuals(values, 17, counting.AllRules); len(c.Signals) > 0 {
		t.Errorf("%v", c.Signals)
	}
}

// A range of a clumped count must never be narrower than the Poisson one.
func TestSummariseChoosesTheRange(t *testing.T) {
	clumped := counting.Summarise(counting.EachField([]int{3, 0, 14, 1, 0, 9, 2, 0, 21, 5}))
	if !*clumped.Overdispersed || clumped.Interval != counting.StudentT || math.Abs(*clumped.Dispersion-82.636364) > 1e-6 {
		t.Errorf("%+v", clumped)
	}
	alone := counting.Summarise(counting.EachField([]int{7}))
	if alone.Overdispersed != nil || alone.Variance != nil || alone.Interval != counting.PoissonExact {
		t.Errorf("one field: %+v", alone)
	}
	none := counting.Summarise(counting.EachField([]int{0, 0, 0}))
	if *none.Overdispersed || none.Low != 0 || math.Abs(none.High-3.688879/3) > 1e-6 || none.Dispersion != nil {
		t.Errorf("nothing seen: %+v", none)
	}
	few := counting.Summarise(counting.EachField([]int{0, 0, 0, 0, 9}))
	if !few.CutAtZero || few.Low != 0 {
		t.Errorf("few fields: %+v", few)
	}
}

func TestHyphaeRanges(t *testing.T) {
	d := quantity.Metres(0.5e-3)
	none := counting.SummariseLengths(counting.EachFieldLength(make([]quantity.Length, 10)), d)
	if none.Interval != counting.ZeroSeen || math.Abs(none.High.Millimetres()-3.688879*0.05) > 1e-6 {
		t.Errorf("nothing seen: %+v", none)
	}
	total := counting.SummariseLengths(counting.Lengths{Total: d, Fields: 4}, d)
	if total.Interval != counting.NoInterval || total.Mean != d/4 {
		t.Errorf("only a total: %+v", total)
	}
}

func TestRatioWithNothingFungal(t *testing.T) {
	e := 4.0
	with, without := counting.FungalBelow(0.5, counting.Mass{Value: 30, StandardError: &e}), counting.FungalBelow(0.5, counting.Mass{Value: 30})
	if with.Estimate != nil || *without.High95 != 0.5/30 || *with.High95 <= *without.High95 {
		t.Errorf("%+v, %+v", with, without)
	}
}
