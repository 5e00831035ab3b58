package ground_test

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"
	_ "time/tzdata"

	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/ground"
)

// words parts a typed call as a shell does.
func words(line string) []string {
	var all []string
	var word strings.Builder
	quote, open := rune(0), false
	for _, c := range line + " " {
		switch {
		case quote == 0 && (c == '"' || c == '\''):
			quote, open = c, true
		case c == quote && quote != 0:
			quote = 0
		case c == ' ' && quote == 0:
			if open {
				all = append(all, word.String())
			}
			word.Reset()
			open = false
		default:
			word.WriteRune(c)
			open = true
		}
	}
	return all
}

func sheetOf(t *testing.T, name string) *worksheet.Sheet {
	t.Helper()
	for _, s := range ground.Sheets() {
		if s.Name == name {
			return &s
		}
	}
	t.Fatalf("no sheet %s", name)
	return nil
}

// run answers a call as it would be typed; a file is read from testdata.
func run(t *testing.T, call string) (map[string]any, *worksheet.Result, error) {
	t.Helper()
	typed := words(call)
	sheet := sheetOf(t, typed[0])
	given, names := worksheet.Values{}, map[string]string{}
	for i := 1; i < len(typed); i++ {
		flag, isFlag := strings.CutPrefix(typed[i], "--")
		in, known := sheet.Input(flag)
		switch {
		case !isFlag:
			given["file"], names["file"] = []string{fileText(t, typed[i])}, typed[i]
		case known && in.Kind == worksheet.Switch:
			given[flag] = []string{"true"}
		default:
			i++
			given[flag] = append(given[flag], typed[i])
			if known && in.Kind == worksheet.File {
				given[flag], names[flag] = []string{fileText(t, typed[i])}, typed[i]
			}
		}
	}
	form, err := worksheet.Read(sheet, given, names)
	if err != nil {
		return nil, nil, err
	}
	result, err := sheet.Run(form)
	if err != nil {
		return nil, nil, err
	}
	text, err := result.JSON(wording.Reader{})
	if err != nil {
		t.Fatalf("%s: %v", call, err)
	}
	var object map[string]any
	if err := json.Unmarshal(text, &object); err != nil {
		t.Fatal(err)
	}
	return object, result, nil
}

func fileText(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// at finds a value by its path: "agent_range_g.low", "hours.0.verdict".
func at(object any, path string) any {
	for _, key := range strings.Split(path, ".") {
		switch v := object.(type) {
		case map[string]any:
			value, there := v[key]
			if !there {
				return "absent"
			}
			object = value
		case []any:
			i := int(key[0] - '0')
			if i >= len(v) {
				return "absent"
			}
			object = v[i]
		default:
			return "absent"
		}
	}
	return object
}

// want is a value with its tolerance; a plain value must be the same.
type want map[string]any

type near struct{ value, tolerance float64 }

func check(t *testing.T, call string, got map[string]any, wanted want) {
	t.Helper()
	for path, w := range wanted {
		value := at(got, path)
		switch w := w.(type) {
		case near:
			if v, isNumber := value.(float64); !isNumber || !(math.Abs(v-w.value) <= w.tolerance) {
				t.Errorf("%s\n  %s is %v, want %g ± %g", call, path, value, w.value, w.tolerance)
			}
		default:
			if value != w {
				t.Errorf("%s\n  %s is %v, want %v", call, path, value, w)
			}
		}
	}
}

// The worked calls, each with the digits it was published with.
var worked = []struct {
	call string
	want want
}{
	{`area --shape polygon --corners "44.12,-123.05; 44.12,-123.0496; 44.1203,-123.0496; 44.1203,-123.05" --gps-error "3 m"`, want{
		"area_m2": near{1067.289, 1e-3}, "perimeter_m": near{130.704, 1e-3}, "area_range_m2.low80": near{889.59, 0.01},
		"area_range_m2.high80": near{1244.99, 0.01}, "count": 1.0, "field_m2": nil, "treated_percent": nil}},
	{`area --shape drip-line --canopy-diameter "5 m" --clear-diameter "60 cm" --count 40`, want{
		"area_m2": near{774.0884, 1e-4}, "each_m2": near{774.0884 / 40, 1e-5}, "count": 40.0, "perimeter_m": nil, "area_range_m2": nil}},
	{`area --shape triangle --sides "13, 14, 15 m"`, want{"area_m2": near{84, 1e-9}, "perimeter_m": near{42, 1e-9}}},
	{`area --shape triangle --sides "3,4,5 m"`, want{"area_m2": near{6, 1e-9}}},
	{`area --shape rows --rows 10 --row-length "20 m" --band-width "50 cm" --row-spacing "2 m"`, want{
		"area_m2": near{100, 1e-9}, "field_m2": near{400, 1e-9}, "treated_percent": near{25, 1e-9}}},
	{`area --shape polygon --geojson unclosed.geojson`, want{"area_m2": near{12309, 1}, "cautions.0": "A ring of the file did not end where it began; it was closed."}},
	{`soak --volume "20 L" --area "10 m2" --soil loam --over "5 min"`, want{
		"applied_mm": near{2, 1e-12}, "applied_l": near{20, 1e-12}, "wetted_depth_mm": near{23.697, 1e-3}, "rate_mm_per_h": near{24, 1e-9},
		"ponding_mm": near{1.13872, 1e-5}, "verdict": "ponds", "no_ponding_minutes": near{11.6106, 1e-4}, "basis": "habit"}},
	{`soak --wet-depth "10 cm" --area "25 m2" --soil clay`, want{
		"applied_mm": near{11.2949, 1e-4}, "applied_l": near{282.3725, 1e-4}, "rate_mm_per_h": nil, "ponding_mm": nil, "verdict": nil}},
	{`soak --water-depth "10 L/m2" --soil "sandy loam"`, want{"applied_mm": near{10, 1e-12}, "applied_l": nil}},
	{`vessel-volume --shape cone-bottom --diameter "80 cm" --height "90 cm" --cone-height "30 cm" --headspace "25 cm" --displaced "6 L"`, want{
		"full_l": near{502.65482, 1e-5}, "volume_l": near{376.99112, 1e-5}, "net_l": near{370.99112, 1e-5}, "fill_depth_m": near{0.95, 1e-12},
		"fill_percent": near{75, 1e-9}, "surface_m2": near{0.502655, 1e-6}, "displaced_l": 6.0, "headspace_m": near{0.25, 1e-12}}},
	{`vessel-volume --shape horizontal-cylinder --diameter "1 m" --length "2 m" --volume "785.398163397 L"`, want{"fill_depth_m": near{0.5, 1e-9}}},
	{`fill-time --volume "1200 gal" --caught "5 gal" --seconds 60`, want{"minutes": near{240, 1e-9}, "flow_l_per_min": near{18.92705892, 1e-9}}},
	{`dechlorinate --volume "55 gal" --free-chlorine "0.2 mg/L" --total-chlorine "2.2 ppm"`, want{
		"chloramine": "present", "dose_on_mg_per_l": near{2.2, 1e-12}, "agent_g": near{1.145087, 1e-6}, "agent_with_margin_g": near{1.259596, 1e-6},
		"aeration_hours": nil, "ammonia_n_mg_per_l": near{0.395, 1e-9}, "half_life_h": nil, "agent_with_margin_ml": nil,
		"basis": "contested", "retest": "total-chlorine", "agent": "ascorbic-acid"}},
	{`dechlorinate --volume "100 L" --free-chlorine "2 mg/L"`, want{
		"chloramine": "unknown", "agent_g": near{0.5, 1e-12}, "aeration_hours.estimate": nil, "aeration_hours.low": near{4.3219, 1e-4},
		"aeration_hours.high": near{25.9316, 1e-4}, "combined_chlorine_mg_per_l": nil, "total_chlorine_mg_per_l": nil, "ammonia_n_mg_per_l": nil}},
	{`dechlorinate --volume "1 m3" --total-chlorine "1 mg/L" --agent sodium-thiosulfate --form pentahydrate`, want{
		"agent_g": near{1.9, 1e-12}, "agent_range_g.low": near{0.8751, 1e-9}, "agent_range_g.high": near{7.0006, 1e-9}, "basis": "contested", "aeration_hours": nil}},
	{`dechlorinate --volume "1 m3" --free-chlorine "2 mg/L" --total-chlorine "2 mg/L" --later "0.5 mg/L" --after "6 h" --bulk-density "0.5 g/mL"`, want{
		"half_life_h": near{3, 1e-12}, "aeration_hours.estimate": near{12.96578, 1e-4}, "aeration_hours.low": near{12.96578, 1e-4},
		"agent_with_margin_ml": near{11, 1e-9}, "basis": "standard"}},
	{`mix-water --parts "10 L@12C, 5 L@60C"`, want{"volume_l": near{15, 1e-12}, "temperature_c": near{28, 1e-9}, "add_l": nil, "hot_l": nil, "cold_l": nil}},
	{`mix-water --parts "50 L@10C" --add-at 60C --target 20C`, want{"add_l": near{12.5, 1e-9}, "volume_l": near{62.5, 1e-9}, "temperature_c": near{20, 1e-12}}},
	{`mix-water --volume "200 L" --cold 9C --hot 50C --target 18C`, want{"hot_l": near{43.902439, 1e-6}, "cold_l": near{156.097561, 1e-6}, "add_l": nil}},
	{`cooling --volume "20 L" --start-temp 22C --air-temp 15C --hours 6 --ua "2 W/K" --pump-heat "5 W" --target 20C`, want{
		"temperature_c": near{20.186, 1e-3}, "settles_at_c": near{17.5, 1e-9}, "time_constant_h": near{11.628, 1e-3}, "hours_to_target": near{6.835, 1e-3},
		"ua_from": "given", "basis": "physics", "hours_to_freezing": nil, "evaporation_l": 0.0, "heat_w.walls": near{-14, 1e-9}, "heat_w.pump": 5.0}},
	{`cooling --volume "200 L" --start-temp 25C --air-temp 35C --humidity 20 --airflow "500 L/min" --hours 12`, want{
		"ua_w_per_k": near{9.466, 1e-3}, "temperature_c": near{22.82, 0.02}, "settles_at_c": near{22.57, 0.02}, "evaporation_l": near{4.615, 0.069},
		"heat_w.bubbles": near{-204.8, 2}, "ua_from": "typical", "basis": "habit", "hours_to_target": nil}},
	{`cooling --volume "20 L" --start-temp 32F --air-temp 15C --hours 6`, want{"ua_from": "typical"}},
	{`wet-bulb --air-temp 30C --humidity 40 --altitude "640 m"`, want{
		"wet_bulb_c": near{19.827, 0.001}, "depression_c": near{10.173, 0.001}, "rating": "too-high", "dew_point_c": near{14.94, 0.01},
		"pressure_kpa": near{93.869, 1e-3}, "basis": "standard"}},
	{`sun --lat 44.12 --lon -123.05 --date 2026-06-10 --zone America/Los_Angeles --at 08:00`, want{
		"noon_elevation_deg": near{68.94, 0.01}, "day_length_h": near{15.439, 0.001}, "elevation_deg": near{24.25, 0.01}, "azimuth_deg": near{80.72, 0.01},
		"uv_index_clear_sky": near{1.451, 0.002}, "day_kind": "ordinary", "at": "2026-06-10T08:00:00-07:00", "events.0.what": "sunrise"}},
	{`spray-hours june.csv --method foliar --lat 44.12 --lon -123.05 --altitude "640 m"`, want{
		"hours.0.verdict": "stop", "hours.0.limiting_factor": "inversion", "hours.0.conflict": true, "hours.0.factors.inversion.value": "likely",
		"hours.1.limiting_factor": "depression", "hours.2.verdict": "suits", "hours.2.limiting_factor": nil, "hours.2.factors.gust.mark": nil,
		"hours.7.limiting_factor": "depression", "hours.7.depression_c": near{10.20, 0.01}, "hours.8.uv_index": near{10.52, 0.01},
		"windows.0.start_at": "2026-06-10T07:00:00-07:00", "windows.0.end_at": "2026-06-10T09:00:00-07:00", "windows.0.hours": 2.0,
		"windows.1": "absent", "best_at": "2026-06-10T07:00:00-07:00", "conflict_hours": 1.0, "basis": "habit", "latitude": 44.12}},
	{`spray-hours june.csv --method drench --zone UTC`, want{
		"latitude": nil, "hours.0.at": "2026-06-10T12:00:00Z", "hours.0.uv_index": nil, "hours.0.inversion": nil, "hours.0.verdict": "suits", "conflict_hours": 0.0}},
}

func TestWorkedCalls(t *testing.T) {
	for _, c := range worked {
		got, _, err := run(t, c.call)
		if err != nil {
			t.Errorf("%s\n  %v", c.call, err)
			continue
		}
		check(t, c.call, got, c.want)
	}
}

// Sunrise and sunset of the worked day, to the seconds it allows.
func TestWorkedSunTimes(t *testing.T) {
	got, _, err := run(t, `sun --lat 44.12 --lon -123.05 --date 2026-06-10 --zone America/Los_Angeles`)
	if err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]string{"sunrise": "2026-06-10T05:28:4", "sunset": "2026-06-10T20:55:0", "solar_noon": "2026-06-10T13:11:4"} {
		if s, _ := got[key].(string); !strings.HasPrefix(s, want) {
			t.Errorf("%s is %v, want %s…", key, got[key], want)
		}
	}
	for _, key := range []string{"at", "elevation_deg", "azimuth_deg", "uv_index_clear_sky"} {
		if value, there := got[key]; !there || value != nil {
			t.Errorf("%s is %v without --at, want null", key, value)
		}
	}
}
