package hygiene_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/hygiene"
)

var reader = wording.Reader{Language: wording.English, Units: wording.Metric}

// call runs a sheet with flag and value in turn.
func call(t *testing.T, name string, flags ...string) (*worksheet.Result, error) {
	t.Helper()
	values := worksheet.Values{}
	for i := 0; i+1 < len(flags); i += 2 {
		values[flags[i]] = []string{flags[i+1]}
	}
	for _, sheet := range hygiene.Sheets() {
		if sheet.Name == name {
			form, err := worksheet.Read(&sheet, values, nil)
			if err != nil {
				return nil, err
			}
			return sheet.Run(form)
		}
	}
	t.Fatalf("no sheet %s", name)
	return nil, nil
}

// answer is the JSON of a call, as a tree.
func answer(t *testing.T, name string, flags ...string) map[string]any {
	t.Helper()
	result, err := call(t, name, flags...)
	if err != nil {
		t.Fatalf("%s %v: %v", name, flags, err)
	}
	text, err := result.JSON(reader)
	if err != nil {
		t.Fatal(err)
	}
	var tree map[string]any
	if err := json.Unmarshal(text, &tree); err != nil {
		t.Fatal(err)
	}
	return tree
}

// at follows a path of keys.
func at(tree map[string]any, path string) any {
	var here any = tree
	for _, key := range strings.Split(path, ".") {
		inner, is := here.(map[string]any)
		if !is {
			return fmt.Sprintf("nothing at %s", path)
		}
		here = inner[key]
	}
	return here
}

// TestWorkedCalls: the worked calls of the sheets; numbers to their printed
// digits (FDA BAM for plates, EPA and UK texts for the mean, 40 CFR 503.32).
func TestWorkedCalls(t *testing.T) {
	tubes := []string{"tubes", "3/3, 1/3, 0/3", "volumes", "0.1 mL, 0.01 mL, 0.001 mL"}
	grams := func(tubes string) []string { return []string{"tubes", tubes, "volumes", "0.1 g, 0.01 g, 0.001 g"} }
	bam := []string{"counts", "232,244;33,28", "dilutions", "1e-2,1e-3", "plated", "1 mL"}
	for _, c := range []struct {
		sheet string
		flags []string
		want  map[string]any
	}{
		{"compost-process", []string{"method", "windrow", "lowest-temp", "131F", "highest-temp", "160F", "days", "15", "turns", "4", "cn", "30", "cured", "yes"},
			map[string]any{"nop.meets": "no", "nop.lacking": "[turns]", "fda_b.meets": "no", "fda_b.lacking": "[turns]", "nop_5021.meets": "ask", "nop_5021.missing": "[all_heated]", "eu_cmc3.meets": "yes"}},
		{"pretest", []string{"ecoli", "100, 140"}, map[string]any{"mean_ecoli_per_100_ml": 120.0, "verdict": "passed"}},
		{"pretest", []string{"ecoli", "100, 160"}, map[string]any{"mean_ecoli_per_100_ml": 130.0, "verdict": "failed"}},
		{"records-due", []string{"made", "2026-06-15"}, map[string]any{"fda_keep_until": "2028-06-15", "nop_keep_until": "2031-06-15", "keep_until": "2031-06-15", "days_left": nil}},
		{"sanitizer", []string{"agent", "sodium-hypochlorite", "stock", "5.25 %", "target", "200 mg/L", "volume", "1 gal"},
			map[string]any{"stock_ml": 14.42061632, "target_mg_per_l": 200.0, "contact_minutes.min": 2.0, "contact_minutes.max": nil, "over_no_rinse_limit": false, "rinse": true}},
		{"mpn", tubes, map[string]any{"mpn_per_ml.estimate": 42.72882, "mpn_per_ml.low95": 9.7942, "mpn_per_ml.high95": 186.41, "se_log10": 0.326410, "rarity": 1.0, "category": 1.0, "reported": "4300", "mpn_per_g": nil}},
		{"mpn", append([]string{"interval", "likelihood-ratio"}, tubes...), map[string]any{"mpn_per_ml.low95": 9.82496, "mpn_per_ml.high95": 164.694}},
		{"mpn", grams("3/3, 1/3, 0/3"), map[string]any{"reported": "43", "mpn_per_ml": nil}},
		{"mpn", grams("0/3, 0/3, 0/3"), map[string]any{"mpn_per_g.high95": 11.07772, "reported": "<3.0", "relation": "<", "se_log10": nil}},
		{"mpn", grams("3/3, 3/3, 3/3"), map[string]any{"mpn_per_g.low95": 357.8211, "reported": ">1100", "mpn_per_g.high95": nil}},
		{"plate", bam, map[string]any{"cfu_per_ml.estimate": 24409.09, "cfu_per_ml.low95": 22387.99, "cfu_per_ml.high95": 26563.67, "reported_cfu_per_ml": 24000.0, "relation": "="}},
		{"plate", []string{"counts", "120;23", "dilutions", "1e-2,1e-3", "plated", "1 mL"}, map[string]any{"reported_cfu_per_ml": 12000.0}},
		{"plate", []string{"counts", "120;23", "dilutions", "1e-2,1e-3", "plated", "1 mL", "rule", "all"}, map[string]any{"reported_cfu_per_ml": 13000.0}},
		{"membrane-filter", []string{"counts", "38, 4", "filtered", "10 mL, 1 mL"}, map[string]any{"cfu_per_100_ml.estimate": 381.8182, "cfu_per_100_ml.low95": 275.181, "cfu_per_100_ml.high95": 516.107, "reported_cfu_per_100_ml": 380.0}},
		{"membrane-filter", []string{"counts", "13", "filtered", "10 mL", "limit", "126"}, map[string]any{"cfu_per_100_ml.estimate": 130.0, "cfu_per_100_ml.low95": 69.2195, "cfu_per_100_ml.high95": 222.304, "against_limit": "undecided"}},
		{"geomean", []string{"values", "<1, 12, 90, 33", "limit-gm", "126", "limit-stv", "410"},
			map[string]any{"geometric_mean": 13.739927, "geometric_mean_is": "at-most", "log10_sd": 0.8385595, "stv_estimate": 163.3119, "percentile_95": 332.3592, "meets_gm": true, "meets_stv": true}},
		{"nondetect", []string{"amount", "100 mL", "samples", "5", "against", "1 /100 mL"},
			map[string]any{"upper_limit_per_ml": 0.005991465, "upper_limit_per_100_ml": 0.5991465, "share_of_batches_below": 0.4507197, "chance_of_missing": 0.006737947, "samples_needed": 3.0, "upper_limit_per_g": nil}},
		{"sampling-plan", []string{"counts", "10,200,900,1000,5"}, map[string]any{"verdict": "accept", "between": 5.0, "over": 0.0}},
		{"class-a-time", []string{"temp", "65C"}, map[string]any{"days": 0.1046130, "hours": 2.510713, "regime": "A", "equation": 2.0, "floor_applied": false}},
	} {
		t.Run(c.sheet+" "+strings.Join(c.flags, " "), func(t *testing.T) {
			tree := answer(t, c.sheet, c.flags...)
			for path, want := range c.want {
				got := at(tree, path)
				if number, is := want.(float64); is {
					v, isNumber := got.(float64)
					if !isNumber || math.Abs(v-number) > 2e-5*math.Abs(number) {
						t.Errorf("%s is %v, want %v", path, got, want)
					}
				} else if fmt.Sprint(got) != fmt.Sprint(want) {
					t.Errorf("%s is %v, want %v", path, got, want)
				}
			}
		})
	}
}

// worked is the case that interval is explained with.
var worked = []string{
	"material", "compost", "animal-origin", "yes", "human-waste", "no", "treatment", "hot", "process-record", "yes", "nop-compost", "yes",
	"contaminated", "no", "additives", "molasses", "held", "24 h", "water", "well", "water-ecoli", "not-detected", "sanitized", "yes",
	"pretest", "passed", "crop-use", "food", "market", "sold", "covered", "yes", "organic", "yes", "edible-part", "touches-soil",
	"method", "drench", "contact-during", "none", "contact-after", "minimized", "applied", "2026-05-01",
}

func TestIntervalAsWorked(t *testing.T) {
	tree := answer(t, "interval", worked...)
	for path, want := range map[string]any{
		"allowed": "wait-until", "until": "2026-08-29", "interval_days": 120.0, "decided_by": "[fda]", "missing": "[]",
		"rule_sets.fda.status": "untreated", "rule_sets.fda.allowed": "wait-until", "rule_sets.fda.applies": true, "rule_sets.fda.agricultural_tea": true,
		"rule_sets.nop.allowed": "yes", "rule_sets.care.applies": false, "rule_sets.care.allowed": nil, "at_worst": nil, "facts.held": "24 h",
	} {
		if got := at(tree, path); fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s is %v, want %v", path, got, want)
		}
	}
	if why := fmt.Sprint(tree["why"]); !strings.Contains(why, "112.51(b)(5)") || !strings.Contains(why, "112.56(a)(1)") {
		t.Errorf("the paragraphs are missing: %s", why)
	}
}

func TestIntervalNeverRefusesWhatIsMissing(t *testing.T) {
	if tree := answer(t, "interval"); tree["allowed"] != "ask" || at(tree, "at_worst.allowed") != "no" {
		t.Errorf("with nothing known: %v", tree["allowed"])
	}
	if tree := answer(t, "interval", "held", "unknown", "applied", "unknown", "organic", "unknown"); tree["allowed"] != "ask" {
		t.Errorf("unknown is not the same as left out: %v", tree["allowed"])
	}
}

// TestWrongInputNamesTheFlag: each slip is refused under its own flag.
func TestWrongInputNamesTheFlag(t *testing.T) {
	for _, c := range []struct {
		sheet, field string
		flags        []string
	}{
		{"interval", "harvest", []string{"applied", "2026-05-01", "harvest", "2026-04-30"}},
		{"interval", "applied", []string{"applied", "2026-02-30"}},
		{"interval", "additives", []string{"additives", "moon dust"}},
		{"interval", "held", []string{"held", "24"}},
		{"compost-process", "highest-temp", []string{"lowest-temp", "60C", "highest-temp", "55C"}},
		{"pretest", "ecoli", nil},
		{"pretest", "enterococci", []string{"ecoli", "1,2", "enterococci", "1"}},
		{"pretest", "ecoli", []string{"ecoli", "1,-2"}},
		{"sanitizer", "target", []string{"agent", "peracetic-acid", "stock", "5 %", "volume", "1 L"}},
		{"sanitizer", "target", []string{"agent", "hydrogen-peroxide", "stock", "3 %", "volume", "1 L"}},
		{"sanitizer", "stock", []string{"agent", "hydrogen-peroxide", "stock", "101 %", "volume", "1 L"}},
		{"mpn", "tubes", []string{"tubes", "4/3", "volumes", "1 mL"}},
		{"mpn", "volumes", []string{"tubes", "1/3, 0/3", "volumes", "1 mL"}},
		{"mpn", "volumes", []string{"tubes", "1/3, 0/3", "volumes", "1 mL, 1 g"}},
		{"mpn", "volumes", []string{"tubes", "1/3", "volumes", "1"}},
		{"plate", "dilutions", []string{"counts", "3", "dilutions", "1:100", "plated", "1 mL"}},
		{"plate", "dilutions", []string{"counts", "3;4", "dilutions", "0.1,0.1", "plated", "1 mL"}},
		{"plate", "counts", []string{"counts", "3.5", "dilutions", "0.1", "plated", "1 mL"}},
		{"membrane-filter", "filtered", []string{"counts", "3,4", "filtered", "1 mL"}},
		{"geomean", "values", []string{"values", "0, 3"}},
		{"geomean", "values", []string{"values", ""}},
		{"nondetect", "against", []string{"amount", "100 mL", "against", "1 /g"}},
		{"nondetect", "amount", []string{"amount", "100"}},
		{"sampling-plan", "lower", []string{"counts", "1", "lower", "10", "upper", "5"}},
		{"sampling-plan", "allowed", []string{"counts", "1", "allowed", "6"}},
		{"sampling-plan", "salmonella", []string{"counts", "1", "salmonella", "6/5"}},
		{"class-a-time", "temp", []string{"temp", "49C"}},
		{"class-a-time", "small-particles", []string{"temp", "60C", "solids", "5 %", "small-particles", "yes"}},
	} {
		_, err := call(t, c.sheet, c.flags...)
		if err == nil || !strings.HasPrefix(err.Error(), c.field+":") {
			t.Errorf("%s %v: %v, want a fault of %s", c.sheet, c.flags, err, c.field)
		}
	}
}
