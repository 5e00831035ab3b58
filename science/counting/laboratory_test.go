package counting_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/science/counting"
)

func numbers(t *testing.T, cell string) []float64 {
	t.Helper()
	var values []float64
	for _, word := range strings.Fields(cell) {
		v, err := strconv.ParseFloat(word, 64)
		if err != nil {
			t.Fatal(err)
		}
		values = append(values, v)
	}
	return values
}

var rules = map[string]counting.Countable{"25-250": {Low: 25, High: 250}, "all plates": {}}

// TestPlatesMatchPublished: FDA BAM chapter 3, ISO 7218 and the tests of the
// R package MPN, as each row says.
func TestPlatesMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "plate-count.csv") {
		t.Run(row.Text("case"), func(t *testing.T) {
			var plates []counting.Plate
			for level, column := range []string{"colonies_on_plates_level_1", "colonies_on_plates_level_2"} {
				for _, count := range numbers(t, row.Text(column)) {
					plates = append(plates, counting.Plate{Level: level + 1, Dilution: row.Float("dilution_level_1") * math.Pow(0.1, float64(level)), Count: int(count)})
				}
			}
			got := counting.CountPlates(plates, row.Float("plated_volume_mL"), rules[row.Text("countable_rule")], counting.ExactInterval)
			switch row.Text("quantity") {
			case "count_unrounded":
				row.Near(*got.PerML, row.Float("expected"), row.Float("tolerance"))
			case "reported_less_than":
				row.Near(got.ReportedPerML, row.Float("expected"), 1e-9)
				if got.Relation != counting.LessThan {
					t.Errorf("relation %s", got.Relation)
				}
			default:
				row.Near(got.ReportedPerML, row.Float("expected"), 1e-9)
			}
		})
	}
}

func TestRoundingMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "count-rounding.csv") {
		row.Near(counting.TwoFigures(row.Float("calculated_CFU_per_g")), row.Float("expected"), 0)
	}
	for v, want := range map[float64]string{3.0490: "3.0", 42.73: "43", 1099.3: "1100", 0.3612: "0.36", 99.6: "100", 4.35 * 100: "440", 0: "0"} {
		if got := counting.TwoFiguresText(v); got != want {
			t.Errorf("%v is written %s, want %s", v, got, want)
		}
	}
}

func TestCountIntervalsMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "count-interval.csv") {
		plate := []counting.Plate{{Level: 1, Dilution: row.Float("sample_volume_on_plates_mL"), Count: int(row.Float("colonies_sum"))}}
		interval := counting.ExactInterval
		if strings.Contains(row.Text("quantity"), "normal") {
			interval = counting.NormalInterval
		}
		got := counting.CountPlates(plate, 1, counting.Countable{}, interval)
		end := got.Low95
		if strings.Contains(row.Text("quantity"), "high") {
			end = got.High95
		}
		row.Near(*end, row.Float("expected"), row.Float("tolerance"))
	}
}

// TestUncertaintyMatchesPublished: ISO/TS 19036 Amd 1, examples 1 to 3.
func TestUncertaintyMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "count-uncertainty.csv") {
		row.Near(counting.ExpandedUncertainty(row.Float("reproducibility_sd_log10"), int(row.Float("colonies_sum"))), row.Float("expected"), row.Float("tolerance"))
	}
}

func TestCrowdedPlates(t *testing.T) {
	rule := rules["25-250"]
	all := counting.CountPlates([]counting.Plate{{Level: 1, Dilution: 1e-2, Count: counting.TooMany}, {Level: 2, Dilution: 1e-3, Count: counting.TooMany}}, 1, rule, counting.ExactInterval)
	if all.Relation != counting.MoreThan || all.PerML != nil || all.ReportedPerML != 250000 {
		t.Errorf("all too many: %s %v %v", all.Relation, all.PerML, all.ReportedPerML)
	}
	one := counting.CountPlates([]counting.Plate{{Level: 1, Dilution: 1e-2, Count: counting.TooMany}, {Level: 2, Dilution: 1e-3, Count: 300}, {Level: 2, Dilution: 1e-3, Count: 280}}, 1, rule, counting.ExactInterval)
	if one.Relation != counting.Estimated || *one.PerML != 280000 || !one.Plates[2].Used || one.Plates[1].Used {
		t.Errorf("none inside: %s %v", one.Relation, *one.PerML)
	}
	none := counting.CountPlates([]counting.Plate{{Level: 1, Dilution: 0.1, Count: 0}}, 1, counting.Countable{}, counting.NormalInterval)
	if none.Relation != counting.LessThan || none.ReportedPerML != 10 || *none.PerML != 0 || math.Abs(*none.High95-36.88879) > 1e-4 {
		t.Errorf("nothing grew: %s %v %v", none.Relation, none.ReportedPerML, *none.High95)
	}
}

// TestFiltersMatchPublished: USGS National Field Manual 7.1.4.
func TestFiltersMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "membrane-filter.csv") {
		var filters []counting.Filter
		counts := numbers(t, row.Text("colonies_per_filter"))
		for i, volume := range numbers(t, row.Text("volumes_filtered_mL")) {
			filters = append(filters, counting.Filter{FilteredML: volume, Count: int(counts[i])})
		}
		row.Near(*counting.CountFilters(filters, counting.Countable{}, 1).Per100ML, row.Float("expected"), row.Float("tolerance"))
	}
}

func TestFiltersAgainstALimit(t *testing.T) {
	count := func(colonies int, volume float64) counting.FilterCount {
		return counting.CountFilters([]counting.Filter{{FilteredML: volume, Count: colonies}}, counting.Countable{}, 1)
	}
	for name, c := range map[string]struct {
		count counting.FilterCount
		limit float64
		want  counting.AgainstLimit
	}{
		"13 in 10 mL":   {count(13, 10), 126, counting.Undecided},
		"none in 100":   {count(0, 100), 126, counting.Below},
		"60 in 10 mL":   {count(60, 10), 126, counting.Above},
		"too many":      {count(counting.TooMany, 10), 126, counting.Above},
		"too many, big": {count(counting.TooMany, 100), 1000, counting.Undecided},
	} {
		if got := c.count.Against(c.limit); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
	if none := count(0, 100); none.Relation != counting.LessThan || none.Reported != 1 {
		t.Errorf("nothing on 100 mL: %s %v", none.Relation, none.Reported)
	}
	half := counting.CountFilters([]counting.Filter{{FilteredML: 10, Count: 20}}, counting.Countable{Low: 20, High: 80}, 0.5)
	if *half.Per100ML != 100 || half.Relation != counting.Equal {
		t.Errorf("half confirmed: %v %s", *half.Per100ML, half.Relation)
	}
}

// TestGeometricMeansMatchPublished: a handbook's example and the percentile
// formula of the Bathing Water Regulations 2013 (UK).
func TestGeometricMeansMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "geomean.csv") {
		findings, err := counting.ParseFindings("values", strings.ReplaceAll(row.Text("counts_per_100_mL"), " ", ","))
		if err != nil {
			t.Fatal(err)
		}
		got := counting.GeometricMeanOf(findings, 1, strings.HasPrefix(row.Text("option"), "population"))
		value := &got.Mean
		switch row.Text("quantity") {
		case "percentile_90_lognormal":
			value = got.Percentile90
		case "percentile_95_lognormal":
			value = got.Percentile95
		}
		row.Near(*value, row.Float("expected"), row.Float("tolerance"))
	}
}

// TestThresholdValuesMatchPublished: the printed threshold values of EPA 2012
// follow from the printed geometric means by the same formula.
func TestThresholdValuesMatchPublished(t *testing.T) {
	// The other rows are single-sample maxima of 1986, a 75th percentile.
	for _, row := range published.Where(published.Rows(t, "stv.csv"), "z", "1.282") {
		mean, sd := row.Float("geometric_mean_CFU_per_100_mL"), row.Float("log10_sd")
		low, high := mean*math.Pow(10, -sd), mean*math.Pow(10, sd)
		got := counting.GeometricMeanOf([]counting.Finding{{Value: low, Is: counting.Equal}, {Value: high, Is: counting.Equal}}, 1, true)
		row.Near(*got.Percentile90, row.Float("expected"), row.Float("tolerance"))
	}
}

func TestLimitedFindings(t *testing.T) {
	for text, want := range map[string]counting.MeanIs{
		"1,2": counting.ExactMean, "<1,2": counting.AtMost, "1,>2": counting.AtLeast, "<1,>2": counting.Substituted,
	} {
		findings, err := counting.ParseFindings("values", text)
		if err != nil {
			t.Fatal(err)
		}
		if got := counting.GeometricMeanOf(findings, 1, false); got.Is != want || (want == counting.AtLeast) != (got.Percentile90 == nil && got.BelowDetection == 0) {
			t.Errorf("%s: %s %v", text, got.Is, got.Percentile90)
		}
	}
	for _, text := range []string{"", "1,", "x", "-1", "<0", "1 mL", "nan", "inf"} {
		if _, err := counting.ParseFindings("values", text); err == nil {
			t.Errorf("%q was taken", text)
		}
	}
}

func TestNothingFoundMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "nondetect.csv") {
		row.Near(counting.UpperLimitWhenClean(row.Float("amount_examined"), row.Float("confidence")), row.Float("expected"), row.Float("tolerance"))
	}
	for _, row := range published.Rows(t, "nondetect-probability.csv") {
		row.Near(counting.ChanceOfMissing(row.Float("organisms_per_mL"), row.Float("volume_examined_mL")), row.Float("expected"), row.Float("tolerance"))
	}
	if got := counting.SamplesNeeded(0.01, 100, 0.95); got != 3 {
		t.Errorf("samples needed %v, want 3", got)
	}
}

// TestWellsMatchPublished: 51 equal wells, and two sizes of well.
func TestWellsMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "wells.csv") {
		levels := []counting.Tubes{{Positive: int(row.Float("positive_wells_1")), Total: int(row.Float("wells_1")), Amount: row.Float("well_volume_1_mL")}}
		if row.Has("wells_2") {
			levels = append(levels, counting.Tubes{Positive: int(row.Float("positive_wells_2")), Total: int(row.Float("wells_2")), Amount: row.Float("well_volume_2_mL")})
		}
		m, err := counting.MostProbableNumber(levels, counting.LogNormal)
		if err != nil {
			t.Fatal(err)
		}
		got := m.Estimate
		if row.Text("quantity") != "mpn" {
			got = m.High95
		}
		row.Near(*got*100, row.Float("expected"), row.Float("tolerance"))
	}
}

func FuzzParseFindings(f *testing.F) {
	for _, seed := range []string{"12, 28, <1, 90", ">2400", "<", "", "1e308,1e308"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		findings, err := counting.ParseFindings("values", text)
		if err == nil && len(findings) == 0 {
			t.Error("no finding and no fault")
		}
	})
}
