package counting_test

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"

	"aerosteep/fault"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/counting"
)

// ask reads the form of a sheet from "flag", "value" pairs and runs it.
func ask(name string, pairs ...string) (*worksheet.Result, error) {
	values := worksheet.Values{}
	for i := 0; i < len(pairs); i += 2 {
		values[pairs[i]] = append(values[pairs[i]], pairs[i+1])
	}
	for _, sheet := range counting.Sheets() {
		if sheet.Name == name {
			form, err := worksheet.Read(&sheet, values, nil)
			if err != nil {
				return nil, err
			}
			return sheet.Run(form)
		}
	}
	panic("no sheet " + name)
}

// answer is the JSON of an answered sheet.
func answer(t *testing.T, name string, pairs ...string) map[string]any {
	t.Helper()
	result, err := ask(name, pairs...)
	if err != nil {
		t.Fatal(err)
	}
	text, err := result.JSON(wording.Reader{Language: wording.English, Units: wording.US})
	if err != nil {
		t.Fatal(err)
	}
	var got map[string]any
	if err := json.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	return got
}

// at follows a path such as "per_ml.low95".
func at(got map[string]any, path string) any {
	var v any = got
	for _, key := range strings.Split(path, ".") {
		object, _ := v.(map[string]any)
		v = object[key]
	}
	return v
}

func expect(t *testing.T, got map[string]any, want map[string]any) {
	t.Helper()
	for path, w := range want {
		g := at(got, path)
		number, isNumber := w.(float64)
		if !isNumber {
			if g != w {
				t.Errorf("%s: got %v, want %v", path, g, w)
			}
			continue
		}
		if v, ok := g.(float64); !ok || math.Abs(v-number) > 2e-8*math.Abs(number) {
			t.Errorf("%s: got %v, want %.10g", path, g, number)
		}
	}
}

func TestWorkedCalls(t *testing.T) {
	slide := []string{"coverslip-side", "18 mm", "drop-volume", "0.05 mL", "field-diameter", "0.5 mm"}
	for name, c := range map[string]struct {
		sheet string
		pairs []string
		want  map[string]any
	}{
		"chamber": {"cells", []string{"counts", "12,15,9,11,14", "field-area", "0.04 mm2", "depth", "0.02 mm", "dilution", "100", "cell-volume", "0.2 um3"}, map[string]any{
			"per_ml.estimate": 1.525e9, "per_ml.low95": 1.166504164e9, "per_ml.high95": 1.958926298e9, "dispersion_chi2": 1.868852459,
			"dispersion_p": 0.759864258, "overdispersed": false, "carbon_ug_per_ml.estimate": 67.1, "carbon_ug_per_ml.low95": 51.326183,
			"carbon_ug_per_ml.high95": 86.192757, "interval": "poisson-exact", "dry_mass_ug_per_ml": nil, "basis": "standard",
		}},
		"cover slip": {"field-count", []string{"counts", "3,0,14,1,0,9,2,0,21,5", "field-diameter", "0.45 mm", "coverslip-side", "22 mm", "drop-volume", "0.02 mL", "dilution", "10"}, map[string]any{
			"dispersion_chi2": 82.636364, "overdispersed": true, "per_ml.estimate": 8368799.18, "per_ml.low95": 633645.97, "per_ml.high95": 16103952.39,
			"fields_per_coverslip": 3043.1997, "field_volume_ml": 6.57203009e-6, "film_depth_mm": 0.0413223140, "interval": "student-t",
		}},
		"hyphae": {"hyphae", append([]string{"intersections", "5,0,3,8,2,0,4,6,1,3", "grid", "0.1 mm"}, slide...), map[string]any{
			"total_length_mm": 2.51327412, "length_m_per_ml.estimate": 8.2944, "length_m_per_ml.low95": 3.44344917, "length_m_per_ml.high95": 13.1453508,
			"biomass_ug_per_ml.estimate": 13.4359635, "biomass_ug_per_ml.low95": 5.57798722, "biomass_ug_per_ml.high95": 21.2939397, "basis": "contested",
		}},
		"no hyphae": {"hyphae", append([]string{"lengths", "0, 0, 0, 0 um"}, slide...), map[string]any{
			"length_m_per_ml.estimate": 0.0, "length_m_per_ml.low95": 0.0, "interval": "zero-seen",
		}},
		"only a total": {"hyphae", append([]string{"total-length", "1850 um", "fields", "25"}, slide...), map[string]any{
			"length_m_per_ml.estimate": 2.442175306, "length_m_per_ml.low95": nil, "length_m_per_ml.high95": nil, "interval": "none",
		}},
		"ratio": {"fb-ratio", []string{"fungal", "12 ± 3 ug/mL", "bacterial", "30 ± 4 ug/mL"}, map[string]any{
			"ratio.estimate": 0.4, "ratio.low95": 0.23118381, "ratio.high95": 0.69208999, "relative_standard_error": 0.28333333, "customary_target": nil, "evidence": nil,
		}},
		"ratio with a target": {"fb-ratio", []string{"fungal", "12 ug/mL", "bacterial", "30 +- 4 ug/mL", "plants", "shrubs-berries"}, map[string]any{
			"ratio.low95": nil, "relative_standard_error": nil, "customary_target.low": 2.0, "customary_target.high": 5.0, "evidence": "contested",
		}},
		"nothing fungal": {"fb-ratio", []string{"fungal", "<0.5 ug/mL", "bacterial", "30 ug/mL"}, map[string]any{
			"ratio.estimate": nil, "ratio.low95": 0.0, "ratio.high95": 0.5 / 30,
		}},
		"fields": {"fields-needed", []string{"counts", "8,3,0,12,5,7,1,9,4,6", "within", "20"}, map[string]any{
			"mean_count": 5.5, "k": 3.72945205, "fields_exact": 43.2120023, "fields_total": 44.0, "fields_more": 34.0, "fields_counted": 10.0,
		}},
		"protozoa": {"protozoa", []string{"wells", "8/8, 8/8, 7/8, 3/8, 0/8", "volumes", "0.1 mL, 0.01 mL, 0.001 mL, 0.0001 mL, 0.00001 mL"}, map[string]any{
			"per_ml.estimate": 2592.36504, "standard_error_ln": 0.37537960, "interval": "log-normal",
		}},
		"no protozoa": {"protozoa", []string{"wells", "0/8, 0/8", "volumes", "0.1, 0.01 mL", "dilution", "10"}, map[string]any{
			"per_ml.estimate": 0.0, "per_ml.low95": 0.0, "per_ml.high95": 36.888794541 / 0.88, "standard_error_ln": nil, "interval": "all-negative",
		}},
		"chart": {"control-chart", []string{"file", "value\n49.6\n47.6\n49.9\n51.3\n47.8\n51.2\n52.6\n52.4\n53.6\n52.1\n"}, map[string]any{
			"mean": 50.81, "lower": 45.8159102, "upper": 55.8040898, "mean_moving_range": 1.87777778, "moving_range_upper": 6.1347, "scale": "as-measured", "values": 10.0,
		}},
	} {
		t.Run(name, func(t *testing.T) { expect(t, answer(t, c.sheet, c.pairs...), c.want) })
	}
}

// The chart of the handbook's twenty values, with labels and a comma file.
func TestEWMAFile(t *testing.T) {
	file, err := os.ReadFile("testdata/ewma.csv")
	if err != nil {
		t.Fatal(err)
	}
	got := answer(t, "control-chart", "file", string(file), "method", "ewma", "target", "50", "sigma", "2.0539")
	expect(t, got, map[string]any{"upper": 52.58843174, "lower": 47.41156826, "centre": 50.0})
	points := got["points"].([]any)
	last := points[len(points)-1].(map[string]any)
	if math.Abs(last["ewma"].(float64)-51.9882432586) > 1e-9 || last["label"] != "b20" || len(got["signals"].([]any)) != 0 {
		t.Errorf("last point %v, signals %v", last, got["signals"])
	}
}

// What must be refused, and the flag or column that the message names.
func TestRefusals(t *testing.T) {
	chamber := func(pairs ...string) []string { return append(pairs, "field-area", "0.04 mm2", "depth", "0.02 mm") }
	slip := func(pairs ...string) []string {
		return append(pairs, "coverslip-side", "18 mm", "drop-volume", "50 uL", "field-diameter", "0.5 mm")
	}
	for name, c := range map[string]struct {
		sheet string
		pairs []string
		field string
	}{
		"no counts":                {"cells", chamber(), "counts"},
		"counts with no fields":    {"cells", chamber("total", "12"), "fields"},
		"an empty place":           {"cells", chamber("counts", "12,,9"), "counts"},
		"half a count":             {"cells", chamber("counts", "12.5"), "counts"},
		"negative dilution":        {"cells", chamber("counts", "12", "dilution", "-10"), "dilution"},
		"dilution under one":       {"cells", chamber("counts", "12", "dilution", "0.1"), "dilution"},
		"NaN":                      {"cells", chamber("counts", "NaN"), "counts"},
		"infinity":                 {"cells", chamber("counts", "1", "dilution", "inf"), "dilution"},
		"a bare area":              {"cells", []string{"counts", "12", "field-area", "0.04", "depth", "0.02 mm"}, "field-area"},
		"a depth alone":            {"cells", []string{"counts", "12", "depth", "0.02 mm"}, "field-area"},
		"no depth":                 {"cells", []string{"counts", "12", "field-area", "0.04 mm2"}, "depth"},
		"both volumes":             {"cells", chamber("counts", "12", "each-volume", "5 mL"), "field-area"},
		"carbon without cells":     {"cells", chamber("counts", "12", "carbon", "220 fg/um3"), "cell-volume"},
		"a unit on a count":        {"cells", chamber("counts", "12 mL"), "counts"},
		"a field over the slip":    {"field-count", []string{"counts", "1", "field-diameter", "25 mm", "coverslip-side", "18 mm", "drop-volume", "50 uL"}, "field-diameter"},
		"no objective":             {"field-count", []string{"counts", "1", "field-number", "20 mm", "coverslip-side", "18 mm", "drop-volume", "50 uL"}, "objective"},
		"two slips":                {"field-count", append(slip("counts", "1"), "coverslip-area", "324 mm2"), "coverslip-side"},
		"two ways of length":       {"hyphae", slip("lengths", "1 um", "intersections", "3"), "intersections"},
		"crossings without a grid": {"hyphae", slip("intersections", "3,4"), "grid"},
		"a total without fields":   {"hyphae", slip("total-length", "18 um"), "fields"},
		"fields with lengths":      {"hyphae", slip("lengths", "18 um", "fields", "3"), "fields"},
		"a grid of lengths":        {"hyphae", slip("lengths", "18 um", "grid", "1 mm"), "grid"},
		"an area over the field":   {"hyphae", slip("lengths", "18 um", "counted-area", "1 mm2"), "counted-area"},
		"thick hyphae":             {"hyphae", slip("lengths", "18 um", "hypha-diameter", "21 um"), "hypha-diameter"},
		"no bacteria":              {"fb-ratio", []string{"fungal", "1 ug/mL", "bacterial", "0 ug/mL"}, "bacterial"},
		"bacteria as a limit":      {"fb-ratio", []string{"fungal", "1 ug/mL", "bacterial", "<1 ug/mL"}, "bacterial"},
		"a bare biomass":           {"fb-ratio", []string{"fungal", "12 ± 3", "bacterial", "1 ug/mL"}, "fungal"},
		"a limit with an error":    {"fb-ratio", []string{"fungal", "<1 ± 1 ug/mL", "bacterial", "1 ug/mL"}, "fungal"},
		"an unknown plant":         {"fb-ratio", []string{"fungal", "1 ug/mL", "bacterial", "1 ug/mL", "plants", "tomato"}, "plants"},
		"a pilot of one":           {"fields-needed", []string{"counts", "5", "within", "20"}, "counts"},
		"an empty pilot":           {"fields-needed", []string{"counts", "0,0", "within", "20"}, "counts"},
		"k with a pilot":           {"fields-needed", []string{"counts", "5,6", "k", "2", "within", "20"}, "k"},
		"two precisions":           {"fields-needed", []string{"mean", "5", "within", "20", "standard-error", "10"}, "standard-error"},
		"more positive than wells": {"protozoa", []string{"wells", "9/8", "volumes", "1 mL"}, "wells"},
		"wells without volumes":    {"protozoa", []string{"wells", "8/8,1/8", "volumes", "1 mL"}, "volumes"},
		"few values":               {"control-chart", []string{"file", "value\n1\n2\n3\n4\n"}, "file"},
		"a baseline over the file": {"control-chart", []string{"file", "value\n1\n2\n3\n4\n5\n", "baseline", "6"}, "baseline"},
		"lambda with individuals":  {"control-chart", []string{"file", "value\n1\n2\n3\n4\n5\n", "lambda", "0.2"}, "lambda"},
		"rules with ewma":          {"control-chart", []string{"file", "value\n1\n2\n3\n4\n5\n", "method", "ewma", "rules", "all"}, "rules"},
		"logarithm of nothing":     {"control-chart", []string{"file", "value\n1\n2\n0\n4\n5\n", "log10", "true"}, "file"},
		"a word among the values":  {"control-chart", []string{"file", "value\n1\n2\nx\n4\n5\n"}, "file"},
		"no such column":           {"control-chart", []string{"file", "value\n1\n", "column", "cfu"}, "file"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := ask(c.sheet, c.pairs...)
			faults := fault.Of(err)
			if len(faults) == 0 || faults[0].Field != c.field {
				t.Errorf("want a fault of %s, got %v", c.field, err)
			}
		})
	}
}

// With --log10 every number is one, and the odd batch is named by its label.
func TestLog10Chart(t *testing.T) {
	got := answer(t, "control-chart", "file", "value,batch\n10,a\n100,b\n,blank\n10,c\n100,d\n10,e\n1000000000,f\n", "log10", "true", "baseline", "5")
	expect(t, got, map[string]any{"scale": "log10", "values": 6.0, "baseline": 5.0, "mean": 1.4, "mean_moving_range": 1.0})
	signals := got["signals"].([]any)
	if len(signals) != 2 || signals[0].(map[string]any)["label"] != "f" || signals[0].(map[string]any)["value"] != 9.0 {
		t.Errorf("%v", signals)
	}
}

func TestBaselineIsAtLeastFive(t *testing.T) {
	if _, err := ask("control-chart", "file", "value\n1\n2\n3\n4\n5\n", "baseline", "4"); err == nil {
		t.Error("a baseline of 4 was taken")
	}
}
