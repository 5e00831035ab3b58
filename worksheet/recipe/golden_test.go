package recipe_test

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"aerosteep/fault"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/recipe"
)

// ask reads the form of a sheet from "flag", "value" pairs and runs it.
func ask(name string, pairs ...string) (*worksheet.Result, error) {
	values := worksheet.Values{}
	for i := 0; i < len(pairs); i += 2 {
		values[pairs[i]] = append(values[pairs[i]], pairs[i+1])
	}
	for _, sheet := range recipe.Sheets() {
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

// at follows a path such as "items.0.mass_g".
func at(got map[string]any, path string) any {
	var v any = got
	for _, key := range strings.Split(path, ".") {
		if list, isList := v.([]any); isList {
			n, _ := strconv.Atoi(key)
			if n >= len(list) {
				return nil
			}
			v = list[n]
			continue
		}
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
		if v, ok := g.(float64); !ok || math.Abs(v-number) > 3e-7*math.Abs(number) {
			t.Errorf("%s: got %v, want %.10g", path, g, number)
		}
	}
}

const leafy = `
[[ingredient]]
name = "molasses"
price = "18 USD / 5 kg"

[[ingredient]]
name = "nettle"
n_percent = 3.0

[[recipe]]
name = "Leafy"
for_volume = "4 gal"
lean = "bacterial"
items = [
  { ingredient = "compost", amount = "2 qt", bulk_density = "0.55 g/mL" },
  { ingredient = "molasses", amount = "20 mL" },
  { ingredient = "nettle", amount = "30 g/L", when = "finish" },
]

[[recipe]]
name = "Plain"
items = [ { ingredient = "vermicompost", amount = "20 g/L" } ]
`

func TestWorkedCalls(t *testing.T) {
	heap := "hour,temp_c\n0,25\n24,48\n48,58\n72,62\n96,64\n120,60\n144,40\n"
	for name, c := range map[string]struct {
		sheet string
		pairs []string
		want  map[string]any
	}{
		"molasses": {"food", []string{"food", "molasses", "percent", "0.2", "volume", "5 gal"}, map[string]any{
			"mass_g": 37.854118, "volume_ml": 26.846892, "household": "1 tbsp 2 1/2 tsp", "household_coarse": false, "percent_v_v": 0.1418440,
			"cod_mg_per_l": 1340.8580, "ready_cod_mg_per_l": 1002.6667, "regrowth": "none-seen", "name": "molasses", "basis": "measured",
		}},
		"a tablespoon a gallon": {"food", []string{"food", "Cane Molasses", "amount", "1 tbsp", "volume", "1 gal"}, map[string]any{
			"percent_w_v": 0.55078125, "regrowth": "untested",
		}},
		"glucose": {"food", []string{"formula", "C6H12O6"}, map[string]any{
			"thod_g_per_g": 16. / 15, "ready_g_per_g": nil, "mass_g": nil, "household": nil, "regrowth": nil, "n_mg_per_l": nil, "bulk_density_g_per_ml": nil,
		}},
		"a label": {"food", []string{"label", "sugars 47 %, other-carbohydrate 9 %, protein 4 %, fat 0.2 %", "percent", "1", "volume", "100 L"}, map[string]any{
			"thod_g_per_g": 0.670429023, "mass_g": 1000.0, "volume_ml": nil, "household": nil, "household_coarse": nil, "percent_v_v": nil, "n_mg_per_l": nil, "regrowth": "untested",
		}},
		"compost": {"food", []string{"food", "worm castings", "percent", "3", "volume", "100 L"}, map[string]any{"regrowth": "none-seen", "name": "vermicompost"}},
		"a recipe": {"scale", []string{"recipe", "bacterial", "volume", "5 gal"}, map[string]any{
			"items.0.mass_g": 567.81177, "items.0.household": "1 qt", "items.1.mass_g": 32.024584, "items.1.percent_w_v": 0.1692, "items.2.mass_g": 10.693788,
			"items.3.mass_g": 10.409882, "cod_mg_per_l": 1466.518, "ready_cod_mg_per_l": 918.1227, "compost_g_per_l": 30.0, "regrowth": "untested",
			"hours": 24.0, "cost": nil, "currency": nil, "items.0.bulk_density_from": "library", "items.0.when": "start",
		}},
		"a recipe of a file": {"scale", []string{"recipe", leafy, "pick", "leafy", "volume", "8 gal"}, map[string]any{
			"recipe": "Leafy", "hours": nil, "items.0.bulk_density_from": "recipe", "items.2.when": "finish", "items.2.volume_ml": nil, "items.2.household_coarse": nil,
			"items.2.bulk_density_from": nil, "currency": "USD", "cost": 40 * 1.41 * 18 / 5000, "items.0.mass_g": 4 * 946.352946 * 0.55, "items.2.mass_g": 30 * 8 * 3.785411784,
		}},
		"the shed wall": {"dose-chart", []string{"recipe", "unfed", "volumes", "5 gal, 25 gal", "rate", "20 gal/ac"}, map[string]any{
			"rows.0.items.0.mass_g": 567.81177, "rows.0.items.0.household": "1 qt", "rows.0.covers_m2": 1011.71411, "rows.1.items.0.mass_g": 2839.05884,
			"rows.1.items.0.household": "1 gal 1 qt", "rows.1.covers_m2": 5058.57053, "regrowth": "none-seen",
		}},
		"grass and leaves": {"compost-blend", []string{"part", "grass: 10 kg, CN 19, N 2.4 %, moisture 77 %", "add", "leaves: CN 80, N 0.75 %, moisture 35 %", "goal-cn", "30", "goal-moisture", "60"}, map[string]any{
			"cn_ratio": 19.0, "moisture_percent": 77.0, "to_add.0.mass_kg": 2.491076923, "to_add.0.moisture_percent": 68.624002, "to_add.1.mass_kg": 6.8,
			"to_add.1.cn_ratio": 41.887946, "to_add.0.goal": "cn", "to_add.0.why": nil, "start_cn_ok": false, "basis": "standard",
		}},
		"out of reach": {"compost-blend", []string{"part", "straw: 5 kg, C 45 %, N 0.5 %, moisture 10 %", "add", "more: C 45 %, N 0.5 %, moisture 10 %", "goal-cn", "30"}, map[string]any{
			"to_add.0.mass_kg": nil, "to_add.0.cn_ratio": nil, "to_add.0.why": "no amount of more brings the pile to C:N 30",
		}},
		"a static pile": {"compost-heat", []string{"file", heap, "method", "static-pile", "cn", "28"}, map[string]any{
			"hours_at_temperature": 85.2, "longest_run_h": 85.2, "meets": true, "nop.meets": "yes", "fda_b.meets": "ask", "fda_b.missing.0": "cured",
			"hours_needed": 72.0, "turnings_needed": 0.0, "points.0.highest_c": 64.0, "points.0.point": nil, "hours_above_limit": 0.0,
		}},
	} {
		t.Run(name, func(t *testing.T) { expect(t, answer(t, c.sheet, c.pairs...), c.want) })
	}
}

// Over twice the water a recipe was written for, the air has to be looked at.
func TestAirDoesNotScale(t *testing.T) {
	for volume, want := range map[string]bool{"199 L": false, "201 L": true} {
		cautions := answer(t, "scale", "recipe", "bacterial", "volume", volume)["cautions"].([]any)
		said := false
		for _, c := range cautions {
			said = said || strings.Contains(c.(string), "air")
		}
		if said != want {
			t.Errorf("%s: %v", volume, cautions)
		}
	}
}

func TestEveryRegrowthSaysHowPercentWasRead(t *testing.T) {
	got := answer(t, "food", "food", "molasses", "percent", "0.5", "volume", "5 gal")
	text := ""
	for _, c := range got["cautions"].([]any) {
		text += c.(string)
	}
	if !strings.Contains(text, "w/v") || !strings.Contains(text, "0.2 %") {
		t.Error(text)
	}
}

// Five windrow days that a gap breaks, two probes of which the cold one
// counts, and turnings that count only while it is hot.
func TestHeatLogs(t *testing.T) {
	two := "hour,temp_c,point,turned\n0,60,core,\n0,40,edge,1\n100,60,core,1\n100,56,edge,1\n"
	got := answer(t, "compost-heat", "file", two, "method", "windrow", "max-gap", "14 d")
	expect(t, got, map[string]any{"hours_at_temperature": 100. / 16, "turnings": 2.0, "meets": false, "hours_needed": 360.0, "turnings_needed": 5.0, "points.1.point": "edge"})
	got = answer(t, "compost-heat", "file", "hour;temp_f\n0;140\n30;140,5\n80;140\n", "method", "in-vessel")
	expect(t, got, map[string]any{"hours_at_temperature": 30.0, "gaps.0.from_hour": 30.0, "gaps.0.to_hour": 80.0, "fda_b.meets": "no", "fda_b.lacking.0": "days"})
	got = answer(t, "compost-heat", "file", "at,temp_c\n2026-04-01T08:00:00Z,80\n2026-04-02T08:00:00Z,80\n2026-04-03T08:00:00Z,60\n", "method", "in-vessel")
	expect(t, got, map[string]any{"hours_above_limit": 24 + 24*(80-76.7)/20, "longest_run_h": 48.0})
}

func TestRefusals(t *testing.T) {
	heap := func(rows string) []string {
		return []string{"file", "hour,temp_c,turned\n" + rows, "method", "windrow"}
	}
	for name, c := range map[string]struct {
		sheet string
		pairs []string
		field string
	}{
		"no food":                    {"food", nil, "food"},
		"two foods":                  {"food", []string{"food", "molasses", "formula", "CH4"}, "formula"},
		"a food of several":          {"food", []string{"food", "fish"}, "food"},
		"an ounce of two kinds":      {"food", []string{"food", "molasses", "amount", "1 oz", "volume", "5 gal"}, "amount"},
		"a percent of two kinds":     {"food", []string{"food", "molasses", "amount", "1 %", "volume", "5 gal"}, "amount"},
		"an amount per volume":       {"food", []string{"food", "molasses", "amount", "1 g/L", "volume", "5 gal"}, "amount"},
		"an amount without water":    {"food", []string{"food", "molasses", "amount", "1 g"}, "volume"},
		"water without an amount":    {"food", []string{"food", "molasses", "volume", "1 gal"}, "amount"},
		"both amounts":               {"food", []string{"food", "molasses", "amount", "1 g", "percent", "1", "volume", "1 gal"}, "percent"},
		"too much":                   {"food", []string{"food", "molasses", "percent", "20.1", "volume", "1 gal"}, "percent"},
		"a unit on a bare percent":   {"food", []string{"food", "molasses", "percent", "0.2 %", "volume", "1 gal"}, "percent"},
		"a cup of no density":        {"food", []string{"label", "sugars 50 %", "amount", "1 cup", "volume", "5 gal"}, "bulk-density"},
		"a heavy density":            {"food", []string{"food", "molasses", "bulk-density", "6 g/mL"}, "bulk-density"},
		"more than the whole":        {"food", []string{"label", "sugars 60 %, fat 41 %"}, "label"},
		"an unknown part":            {"food", []string{"label", "starch 60 %"}, "label"},
		"a bare part":                {"food", []string{"label", "sugars 60"}, "label"},
		"too much oxygen":            {"food", []string{"formula", "CO9"}, "formula"},
		"a tiny tank":                {"scale", []string{"recipe", "unfed", "volume", "0.05 L"}, "volume"},
		"an unknown recipe":          {"scale", []string{"recipe", "bacterail", "volume", "5 gal"}, "recipe"},
		"a file with two":            {"scale", []string{"recipe", leafy, "volume", "5 gal"}, "pick"},
		"a pick that is not there":   {"scale", []string{"recipe", leafy, "pick", "Leavy", "volume", "5 gal"}, "pick"},
		"an empty place":             {"dose-chart", []string{"recipe", "unfed", "volumes", "5 gal,,25 gal"}, "volumes"},
		"a rate of nothing":          {"dose-chart", []string{"recipe", "unfed", "volumes", "5 gal", "rate", "0 gal/ac"}, "rate"},
		"a part without a mass":      {"compost-blend", []string{"part", "grass: CN 19, N 2.4 %, moisture 77 %"}, "part"},
		"a part without water":       {"compost-blend", []string{"part", "grass: 10 kg, CN 19, N 2.4 %"}, "part"},
		"a part of water alone":      {"compost-blend", []string{"part", "grass: 10 kg, CN 19, N 2.4 %, moisture 100 %"}, "part"},
		"carbon twice":               {"compost-blend", []string{"part", "grass: 10 kg, C 40 %, CN 19, N 2.4 %, moisture 77 %"}, "part"},
		"no nitrogen at all":         {"compost-blend", []string{"part", "sawdust: 10 kg, C 40 %, N 0 %, moisture 30 %"}, "part"},
		"more than dry matter":       {"compost-blend", []string{"part", "x: 10 kg, C 99 %, N 2 %, moisture 30 %"}, "part"},
		"a material without a goal":  {"compost-blend", []string{"part", "g: 1 kg, C 40 %, N 2 %, moisture 70 %", "add", "l: C 40 %, N 1 %, moisture 30 %"}, "goal-cn"},
		"a goal without a material":  {"compost-blend", []string{"part", "g: 1 kg, C 40 %, N 2 %, moisture 70 %", "goal-moisture", "60"}, "add"},
		"degrees of the wrong scale": {"compost-heat", heap("0,131,\n"), "file"},
		"hours that stand still":     {"compost-heat", heap("0,60,\n0,61,\n"), "file"},
		"no reading":                 {"compost-heat", heap("0,,\n"), "file"},
		"turned twice":               {"compost-heat", heap("0,60,2\n"), "file"},
		"no temperature":             {"compost-heat", []string{"file", "hour,heat\n0,60\n", "method", "windrow"}, "file"},
		"no method":                  {"compost-heat", []string{"file", "hour,temp_c\n0,60\n"}, "method"},
		"a gap of a month":           {"compost-heat", append(heap("0,60,\n"), "max-gap", "30 d"), "max-gap"},
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
