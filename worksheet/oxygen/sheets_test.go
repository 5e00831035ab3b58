package oxygen_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"aerosteep/fault"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/oxygen"
)

// ask runs a sheet on "flag=value" words; "flag" alone is a switch, and a
// word that starts with a line of CSV heads is the file.
func ask(t *testing.T, name string, words ...string) (map[string]any, *worksheet.Result, error) {
	t.Helper()
	for _, sheet := range oxygen.Sheets() {
		if sheet.Name != name {
			continue
		}
		given := worksheet.Values{}
		for _, word := range words {
			flag, value, found := strings.Cut(word, "=")
			if !found {
				value = "true"
			}
			given[flag] = append(given[flag], value)
		}
		form, err := worksheet.Read(&sheet, given, map[string]string{"file": "test.csv"})
		if err != nil {
			return nil, nil, err
		}
		result, err := sheet.Run(form)
		if err != nil {
			return nil, nil, err
		}
		return object(t, result), result, nil
	}
	t.Fatalf("no sheet %s", name)
	return nil, nil, nil
}

func object(t *testing.T, r *worksheet.Result) map[string]any {
	t.Helper()
	text, err := r.JSON(wording.Reader{Language: wording.English, Units: wording.Metric})
	if err != nil {
		t.Fatal(err)
	}
	var o map[string]any
	if err := json.Unmarshal(text, &o); err != nil {
		t.Fatal(err)
	}
	return o
}

// at finds a value by its path: "kla_per_h.low95".
func at(o map[string]any, path string) any {
	var v any = o
	for _, key := range strings.Split(path, ".") {
		inner, isObject := v.(map[string]any)
		if !isObject {
			return fmt.Sprintf("(no %s)", path)
		}
		var has bool
		if v, has = inner[key]; !has {
			return fmt.Sprintf("(no %s)", path)
		}
	}
	return v
}

// matches compares a value with what is wanted of it: a number to half a unit
// of its last written digit, a word, true, or null.
func matches(got any, want string) bool {
	number, isNumber := got.(float64)
	if !isNumber {
		return fmt.Sprint(got) == strings.Replace(want, "null", "<nil>", 1)
	}
	var w float64
	if _, err := fmt.Sscan(want, &w); err != nil {
		return false
	}
	decimals := 0
	if point := strings.IndexByte(want, '.'); point >= 0 {
		decimals = len(want) - point - 1
	}
	return math.Abs(number-w) <= 0.5001*math.Pow(10, -float64(decimals))
}

func check(t *testing.T, o map[string]any, wants string) {
	t.Helper()
	for _, want := range strings.Split(wants, " · ") {
		path, value, _ := strings.Cut(want, " = ")
		if got := at(o, path); !matches(got, value) {
			t.Errorf("%s is %v, want %s", path, got, value)
		}
	}
}

func example(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile("../../examples/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return "file=" + string(text)
}

// The worked calls of the contract, each to the digits that it prints. They
// were worked out by an independent program (scipy for the fits).
func TestWorkedCalls(t *testing.T) {
	rise, off := example(t, "reaeration.csv"), example(t, "pump-off.csv")
	for _, c := range []struct {
		sheet string
		words []string
		want  string
	}{
		{"saturation", []string{"temp=67F", "altitude=2100 ft", "conductivity=1200 uS/cm", "depth=0.6 m", "reading=10 mg/L", "steady"},
			"saturation_mg_per_l = 8.4684 · sea_level_saturation_mg_per_l = 9.1573 · pressure_kpa = 93.868 · pressure_from = altitude · salinity_psu = 0.6715 · mid_depth_saturation_mg_per_l = 8.7397 · percent_saturation = 118.09 · plausible_to_mg_per_l = 8.940 · credible_to_mg_per_l = 9.377 · verdict = not-credible · basis = physics"},
		{"saturation", []string{"temp=67F", "altitude=2100 ft", "conductivity=1200 uS/cm", "depth=0.6 m", "reading=10 mg/L"},
			"credible_to_mg_per_l = 11.125 · verdict = above-saturation"},
		{"saturation", []string{"temp=67F", "reading=10 mg/L"}, "percent_saturation = 108.8 · verdict = above-saturation · pressure_from = default · mid_depth_saturation_mg_per_l = null"},
		{"saturation", []string{"temp=67F", "reading=10 ppm", "steady"}, "verdict = not-credible"},
		{"saturation", []string{"temp=20C", "sea-level-pressure=1020 hPa", "altitude=1500 m"}, "pressure_from = sea-level-pressure · percent_saturation = null · verdict = null · advice = null · basis = standard"},
		{"reaeration", []string{rise, "temp=18C", "volume=100 L"},
			"kla_per_h.estimate = 10.455 · kla_per_h.low95 = 10.353 · kla_per_h.high95 = 10.556 · kla20_per_h.estimate = 10.962 · kla20_per_h.low95 = 10.856 · kla20_per_h.high95 = 11.069 · c_inf_mg_per_l.estimate = 8.9605 · c_inf_mg_per_l.high95 = 8.9772 · c0_mg_per_l.estimate = 1.1988 · c0_mg_per_l.low95 = 1.1688 · residual_rms_mg_per_l = 0.01163 · reached_percent = 99.46 · saturation_mg_per_l = 9.4670 · c_inf_percent_of_saturation = 94.65 · sotr_g_per_h.estimate = 9.434 · sotr_g_per_h.low95 = 9.354 · used_points = 11 · skipped_rows = 0 · temp_c = 18 · basis = measured"},
		{"uptake", []string{off, "temp=20C", "limit=5 mg/L"},
			"our_mg_per_l_h.estimate = 16.071 · our_mg_per_l_h.low95 = 15.604 · our_mg_per_l_h.high95 = 16.539 · used_points = 8 · start_do_mg_per_l = 7.93 · minutes_to_limit.estimate = 10.939 · minutes_to_limit.low95 = 10.629 · minutes_to_limit.high95 = 11.267 · kla_per_h.estimate = 15.146 · kla_per_h.low95 = 14.612 · kla_per_h.high95 = 15.680 · used_points_rise = 16 · c_steady_mg_per_l.estimate = 7.9322 · saturation_implied_mg_per_l = 8.9933 · saturation_mg_per_l = 9.0924 · our_by_balance_mg_per_l_h = 17.573 · agrees = true · rise_note = null · verdict = measurable"},
		{"uptake", []string{"from=8.0 mg/L", "to=7.4 mg/L", "after=2 min", "limit=6 mg/L"},
			"our_mg_per_l_h.estimate = 18.00 · our_mg_per_l_h.low95 = 13.76 · our_mg_per_l_h.high95 = 22.24 · minutes_to_limit.estimate = 6.667 · minutes_to_limit.low95 = 5.395 · minutes_to_limit.high95 = 8.72 · used_points = 2 · kla_per_h = null · agrees = null · saturation_mg_per_l = null"},
		{"transfer", []string{"volume=100 L", "airflow=60 L/min", "depth=0.6 m", "bubbles=medium", "temp=22C", "altitude=640 m", "our=20 mg/L/h", "diameter=50 cm"},
			"sotr_g_per_h.estimate = 18.055 · kla20_per_h.estimate = 19.857 · kla20_per_h.low95 = 13.900 · kla20_per_h.high95 = 25.815 · saturation_mg_per_l = 8.0835 · max_our_mg_per_l_h.estimate = 26.010 · max_our_mg_per_l_h.low95 = 18.207 · max_our_mg_per_l_h.high95 = 33.814 · aotr_g_per_h.estimate = 2.6010 · steady_do_mg_per_l.estimate = 6.444 · steady_do_mg_per_l.low95 = 5.811 · steady_do_mg_per_l.high95 = 6.785 · airflow_needed_l_per_min.estimate = 46.135 · airflow_needed_l_per_min.low95 = 35.489 · airflow_needed_l_per_min.high95 = 65.908 · kla20_needed_per_h = 15.269 · verdict = uncertain · gas_velocity_mm_per_s = 5.093 · kla20_heijnen_vant_riet_per_h = 28.60 · kla20_deckwer_per_h = 22.15 · basis = habit"},
		{"depletion", []string{"do=7 mg/L", "our=20 mg/L/h", "limit=2 mg/L", "surface-kla=0.1 /h", "temp=22C", "altitude=640 m"},
			"minutes_to_limit = 15.274 · equilibrium_do_mg_per_l = -191.917 · saturation_mg_per_l = 8.0835 · reaches_limit = true · basis = physics"},
		{"depletion", []string{"do=7 mg/L", "our=20 mg/L/h", "limit=2 mg/L"}, "minutes_to_limit = 15.000 · equilibrium_do_mg_per_l = null · saturation_mg_per_l = null"},
		{"depletion", []string{"do=7 mg/L", "our=20 mg/L/h", "limit=2 mg/L", "surface-kla=0.1 /h", "temp=22C", "altitude=640 m", "dilution=9"}, "minutes_to_limit = 161.93 · our_used_mg_per_l_h = 2.2222"},
		{"operating-point", []string{"pump=60 L/min@0 kPa, 45 L/min@10 kPa, 25 L/min@20 kPa, 0 L/min@28 kPa", "depth=0.6 m", "tube-bore=9.5 mm", "tube-length=4 m", "diffuser-loss=2.4 kPa", "fittings=2", "extra-k=1", "temp=22C", "altitude=640 m"},
			"airflow_l_per_min = 45.866 · pressure_kpa = 9.422 · static_kpa = 5.871 · tube_loss_kpa = 1.152 · diffuser_loss_kpa = 2.400 · air_power_w = 6.959 · verdict = works · basis = physics"},
		{"blower-power", []string{"airflow=60 L/min", "pressure-rise=12 kPa", "efficiency=0.30", "hours=24"},
			"power_w = 38.414 · ideal_power_w = 11.524 · pressure_ratio = 1.11843 · ideal_outlet_temp_c = 29.526 · energy_kwh = 0.92194 · basis = physics"},
		// 2 L in 14 s is 8.5714 L/min; (93.869 + 3.914 - 2.644)/93.869 · 293.15/295.15 by hand, vapour of water at 22 °C 2.644 kPa (IAPWS-IF97)
		{"jug-test", []string{"jug=2 L", "filled=14 s", "depth=0.4 m", "temp=22C", "altitude=640 m"}, "airflow_l_per_min = 8.63 · caught_l_per_min = 8.571 · basis = measured"},
		{"blower-power", []string{"airflow=60 L/min", "pressure-rise=12 kPa", "efficiency=30 %"}, "power_w = 38.414 · energy_kwh = null"},
	} {
		t.Run(c.sheet+" "+c.words[len(c.words)-1], func(t *testing.T) {
			o, _, err := ask(t, c.sheet, c.words...)
			if err != nil {
				t.Fatal(err)
			}
			check(t, o, c.want)
		})
	}
}

// What depends on the case: null where it does not apply, 0 where no air can.
func TestCases(t *testing.T) {
	transfer := []string{"volume=100 L", "temp=28C", "altitude=2000 m", "our=20 mg/L/h"}
	for _, c := range []struct {
		sheet string
		words []string
		want  string
	}{
		{"transfer", append(transfer, "airflow=60 L/min", "depth=0.6 m", "sote-per-m=3 %"),
			"verdict = out-of-reach · max_our_mg_per_l_h.estimate = 0 · max_our_mg_per_l_h.low95 = 0 · aotr_g_per_h.high95 = 0 · airflow_needed_l_per_min = null · kla20_needed_per_h = null · alpha = 0.7 · basis = standard"},
		{"transfer", append(transfer, "kla20=1000 /h", "limit=2 mg/L"), "verdict = holds · kla20_per_h.low95 = null · max_our_mg_per_l_h.high95 = null · airflow_needed_l_per_min = null · gas_velocity_mm_per_s = null"},
		{"transfer", append(transfer[:3:3], "kla20=20 /h", "our=1900 mg/L/h", "limit=2 mg/L"), "steady_do_mg_per_l.estimate = 0 · verdict = falls-short"},
		{"transfer", append(transfer[:3:3], "kla20=20 /h"), "verdict = null · steady_do_mg_per_l = null"},
		{"depletion", []string{"do=7 mg/L", "our=0 mg/L/h", "limit=2 mg/L"}, "minutes_to_limit = null · reaches_limit = false"},
		{"depletion", []string{"do=2 mg/L", "our=0 mg/L/h", "limit=2 mg/L"}, "minutes_to_limit = 0 · reaches_limit = true"},
		{"depletion", []string{"do=7 mg/L", "our=0.5 mg/L/h", "limit=2 mg/L", "surface-kla=0.1 /h", "temp=20C"}, "minutes_to_limit = null · reaches_limit = false"},
		{"operating-point", []string{"pump=30 L/min@0 kPa, 0 L/min@3 kPa", "depth=1 m", "tube-bore=6 mm", "tube-length=1 m"},
			"verdict = no-flow · airflow_l_per_min = 0 · tube_loss_kpa = 0 · air_power_w = 0 · pressure_kpa = 3"},
		{"uptake", []string{"from=7 mg/L", "to=7 mg/L", "after=2 min", "limit=2 mg/L"}, "verdict = not-measurable · minutes_to_limit = null"},
		{"uptake", []string{"from=7 mg/L", "to=6.9 mg/L", "after=2 min", "limit=2 mg/L"}, "minutes_to_limit.high95 = null · verdict = not-measurable"},
		{"uptake", []string{"from=2 mg/L", "to=1.5 mg/L", "after=2 min", "limit=2 mg/L"}, "minutes_to_limit.estimate = 0 · minutes_to_limit.low95 = 0 · minutes_to_limit.high95 = 0"},
	} {
		t.Run(c.sheet+" "+c.words[len(c.words)-1], func(t *testing.T) {
			o, _, err := ask(t, c.sheet, c.words...)
			if err != nil {
				t.Fatal(err)
			}
			check(t, o, c.want)
		})
	}
}

// Wrong input names its flag.
func TestRefusals(t *testing.T) {
	pump := []string{"depth=0.6 m", "tube-bore=9.5 mm", "tube-length=4 m"}
	blower := []string{"airflow=60 L/min", "efficiency=0.3"}
	transfer := []string{"volume=100 L", "temp=20C"}
	for _, c := range []struct {
		field, says string
		sheet       string
		words       []string
	}{
		{"temp", "needed", "saturation", nil},
		{"temp", "outside", "saturation", []string{"temp=68C"}},
		{"temp", "no unit", "saturation", []string{"temp=20"}},
		{"reading", "mg/L", "saturation", []string{"temp=20C", "reading=9 mg/mL"}},
		{"reading", "mg/L", "saturation", []string{"temp=20C", "reading=98 %"}},
		{"pressure", "--altitude", "saturation", []string{"temp=20C", "pressure=1 atm", "altitude=3 m"}},
		{"pressure", "--sea-level-pressure", "saturation", []string{"temp=20C", "pressure=1 atm", "sea-level-pressure=1 atm"}},
		{"sea-level-pressure", "--altitude", "saturation", []string{"temp=20C", "sea-level-pressure=1 atm"}},
		{"sea-level-pressure", "out of range", "saturation", []string{"temp=20C", "sea-level-pressure=88 kPa", "altitude=5000 m"}},
		{"salinity", "--conductivity", "saturation", []string{"temp=20C", "salinity=3", "conductivity=1 mS/cm"}},
		{"kla20", "--bubbles", "transfer", transfer},
		{"bubbles", "--kla20", "transfer", append(transfer, "kla20=20 /h", "bubbles=fine")},
		{"airflow", "--kla20", "transfer", append(transfer, "kla20=20 /h", "airflow=20 L/min")},
		{"depth", "--airflow", "transfer", append(transfer, "airflow=20 L/min", "bubbles=fine")},
		{"airflow", "--depth", "transfer", append(transfer, "depth=1 m", "bubbles=fine")},
		{"temp", "--surface-kla", "depletion", []string{"do=7 mg/L", "our=20 mg/L/h", "limit=2 mg/L", "surface-kla=0.1 /h"}},
		{"pump", "1 point", "operating-point", append(pump, "pump=60 L/min@0 kPa")},
		{"pump", "@", "operating-point", append(pump, "pump=60 L/min, 40 L/min@2 kPa")},
		{"pump", "higher pressure", "operating-point", append(pump, "pump=60 L/min@0 kPa, 50 L/min@1 kPa")},
		{"pump", "lower pressure", "operating-point", append(pump, "pump=20 L/min@20 kPa, 10 L/min@30 kPa")},
		{"pump", "does not fall", "operating-point", append(pump, "pump=20 L/min@20 kPa, 20 L/min@30 kPa")},
		{"outlet-pressure", "--pressure-rise", "blower-power", append(blower, "outlet-pressure=12 kPa")},
		{"pressure-rise", "--outlet-pressure", "blower-power", blower},
		{"pressure-rise", "three times", "blower-power", append(blower, "pressure-rise=200 kPa", "altitude=4000 m")},
		{"efficiency", "outside", "blower-power", []string{"airflow=60 L/min", "efficiency=30", "pressure-rise=12 kPa"}},
		{"altitude", "--inlet-pressure", "blower-power", append(blower, "pressure-rise=12 kPa", "altitude=4 m", "inlet-pressure=1 atm")},
		{"file", "--after", "uptake", nil},
		{"to", "--from", "uptake", []string{"from=8 mg/L"}},
		{"skip", "--from", "uptake", []string{"from=8 mg/L", "to=7 mg/L", "after=2 min", "skip=15 s"}},
		{"fit-lag", "lag", "reaeration", []string{"file=minutes,do_mg_per_l\n0,1\n", "temp=20C", "fit-lag"}},
	} {
		_, _, err := ask(t, c.sheet, c.words...)
		faults := fault.Of(err)
		if len(faults) == 0 || faults[0].Field != c.field || !strings.Contains(faults[0].Error(), c.says) {
			t.Errorf("%s %q: %v; want a fault of %s that says %q", c.sheet, c.words, err, c.field, c.says)
		}
	}
}

// Cautions stand where somebody could be hurt or misled.
func TestCautions(t *testing.T) {
	transfer := []string{"volume=100 L", "temp=28C"}
	for _, c := range []struct {
		sheet string
		words []string
		says  string
	}{
		{"saturation", []string{"temp=20C"}, "sea level"},
		{"saturation", []string{"temp=20C", "pressure=1 atm"}, "1500 m"},
		{"transfer", append(transfer, "kla20=20 /h"), "alpha"},
		{"transfer", append(transfer, "kla20=20 /h", "altitude=2000 m"), "saturation"},
		{"transfer", append(transfer, "kla20=20 /h", "our=1900 mg/L/h"), "ends at 0"},
		{"transfer", append(transfer, "airflow=1 L/min", "depth=1 m", "bubbles=fine", "our=50 mg/L/h"), "Q^0.7"},
		{"transfer", append(transfer, "airflow=1 L/min", "depth=1 m", "bubbles=fine", "diameter=1 m"), "extrapolat"},
		{"depletion", []string{"do=7 mg/L", "our=20 mg/L/h", "limit=0.5 mg/L"}, "slows"},
		{"operating-point", []string{"pump=30 L/min@0 kPa, 0 L/min@3 kPa", "depth=1 m", "tube-bore=6 mm", "tube-length=1 m"}, "depth"},
		{"operating-point", []string{"pump=30 L/min@0 kPa, 0 L/min@30 kPa", "depth=1 m", "tube-bore=6 mm", "tube-length=1 m"}, "check valve"},
		{"blower-power", []string{"airflow=60 L/min", "efficiency=0.3", "pressure-rise=12 kPa"}, "residual-current"},
		{"blower-power", []string{"airflow=60 L/min", "efficiency=0.3", "pressure-rise=12 kPa"}, "heat of compression"},
		{"uptake", []string{"from=7 mg/L", "to=7 mg/L", "after=2 min"}, "chlorine"},
		{"reaeration", []string{example(t, "reaeration.csv"), "temp=18C"}, "obalt"},
		{"reaeration", []string{example(t, "reaeration.csv"), "temp=18C"}, "meter"},
		{"reaeration", []string{example(t, "reaeration.csv"), "temp=18C", "probe-tau=40 s"}, "probe"},
	} {
		_, result, err := ask(t, c.sheet, c.words...)
		if err != nil {
			t.Errorf("%s %q: %v", c.sheet, c.words, err)
			continue
		}
		if all := fmt.Sprint(worksheet.Sentences(result.Cautions, wording.Reader{Language: wording.English})); !strings.Contains(all, c.says) {
			t.Errorf("%s %q: no caution says %q in %s", c.sheet, c.words, c.says, all)
		}
	}
}

// The advice on a reading says where to look.
func TestAdviceOnReadings(t *testing.T) {
	for _, reading := range []string{"10 mg/L", "14 mg/L"} {
		o, _, err := ask(t, "saturation", "temp=67F", "reading="+reading)
		if err != nil {
			t.Fatal(err)
		}
		if advice := fmt.Sprint(o["advice"]); !strings.Contains(advice, "meter") || !strings.Contains(advice, "calibrat") {
			t.Errorf("%s: advice %q", reading, advice)
		}
	}
}
