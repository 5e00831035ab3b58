package application_test

import (
	"slices"
	"testing"

	"aerosteep/worksheet"
	"aerosteep/worksheet/application"
)

type worked struct {
	sheet, flags string
	want         map[string]any
}

// The worked examples of the room's contract: arithmetic on exact units, held
// to 1 part in a million; those of nutrients rest on IUPAC masses.
var workedExamples = []worked{
	{"doses", `--use foliar --height 18 ft`, map[string]any{
		"rows.0.tea_rate_low_l_per_ha": 140.309343, "rows.0.tea_rate_high_l_per_ha": 280.618687, "rows.0.canopy_factor": 3.0,
		"rows.0.tea_low_l": nil, "rows.0.basis": "habit",
	}},
	{"dilute", `--tea 2 cup --water 1 gal`, map[string]any{
		"tea_l": 0.473176473, "water_l": 3.785411784, "total_l": 4.258588257, "percent_tea": 11.1111111,
		"parts_water_per_part_tea": 8.0, "one_in": 9.0, "mix_words": "1 part tea + 8 parts water (11.1 % tea)",
		"other_reading": nil, "chlorine_in_mix_mg_per_l": nil,
	}},
	{"dilute", `--tank 5 gal --ratio 1:10`, map[string]any{
		"tea_l": 1.72064172, "water_l": 17.2064172, "percent_tea": 9.09090909,
		"other_reading.convention": "total", "other_reading.percent_tea": 10.0, "other_reading.tea_l": 1.89270589,
	}},
	{"loads", `--area 250 m2 --tea-rate 187 L/ha --ratio 1:10 --tank 15 L --dead-volume 0.5 L`, map[string]any{
		"load_count": 4.0, "full_loads": 3.0, "loads.0.tea_l": 1.36363636, "loads.0.water_l": 13.6363636,
		"loads.0.covers_m2": 70.4910063, "loads.1.covers_m2": 72.9217307, "loads.3.mix_l": 6.925, "loads.3.tea_l": 0.629545455,
		"loads.3.covers_m2": 33.6655323, "loads.3.part_load": true, "loads.0.part_load": false, "loads.0.covers_plants": nil,
		"mix_sprayed_l": 51.425, "mix_prepared_l": 51.925, "tea_total_l": 4.72045455, "water_total_l": 47.2045455,
		"last_load_mix_l": 6.925, "left_over_l": 0.5, "area_m2": 250.0, "plants": nil, "field_hours": nil,
		"tea_rate_l_per_ha": 187.0, "mix_rate_l_per_ha": 2057.0,
	}},
	{"trailer-weight", `--volume 500 gal --tank-mass 120 kg --trailer-mass 600 kg --rated-mass 2500 kg`, map[string]any{
		"liquid_kg": 1892.70589, "total_kg": 2612.70589, "total_lb": 5760.03051, "margin_kg": -112.705892,
		"load_percent": 104.508236, "within_rating": false, "max_volume_l": 1780.0, "fill_percent": nil,
	}},
	{"strainers", `--chain 400 um, 50 mesh, 80 mesh --nozzle-flow 0.8 L/min --pressure 3 bar`, map[string]any{
		"stages.0.opening_um": 400.0, "stages.1.opening_um": 300.0, "stages.2.opening_um": 180.0, "stages.0.sieve_no": nil, "stages.2.sieve_no": 80.0,
		"orifice_um": 877.536845, "last_to_orifice": 0.205119592, "advised_last_low_um": 438.768422, "advised_last_high_um": 585.024563,
		"fungal_strands": "held-back", "chain_ok": true, "basis": "habit", "finest_um": 180.0,
	}},
	{"sprayer", `--gpa 20 --mph 4 --spacing-in 20 --rated-flow 0.2 gal/min --rated-pressure 40 psi`, map[string]any{
		"nozzle_gpm": 0.269360269, "nozzle_l_per_min": 1.01963954, "mix_rate_l_per_ha": 187.079125, "pressure_kpa": 500.248803,
		"methods": nil, "test_area_m2": nil, "tea_rate_gpa": nil, "mix_words": nil,
	}},
	{"course", `--spacing 30 in`, map[string]any{
		"distance_ft": 136.125, "distance_m": 41.4909, "distance_100m2_m": 131.233596, "area_sq_ft": 340.3125,
		"area_m2": 31.6160658, "square_side_ft": 18.4475608, "plot_area_m2": nil,
	}},
	{"course", `--plot-length 8.5 ft --plot-width 18.5 ft`, map[string]any{
		"plot_area_sq_ft": 157.25, "gpa_per_fl_oz": 2.16414944, "distance_ft": nil,
	}},
	// AEX-520: 340.3125 sq ft is 1/128 acre, so that 20 fl oz are 20 gal/acre;
	// G1270A: 5940 x 0.4 / (6 x 20) = 19.8.
	{"calibrate", `--caught 20 fl oz --test-area 340.3125 sq ft --nozzle-flow 0.4 gal/min --course 88 ft --course-time 10 s --spacing 20 in --course-caught 40 fl oz`, map[string]any{
		"mix_rate_gpa": 20.0, "ways.0.mix_rate_l_per_ha": 187.079125, "ways.1.mix_rate_l_per_ha": 185.208334, "ways.2.mix_rate_l_per_ha": 374.15825, "ways_agree": false,
		"way_to_repeat": "fluid-ounce-course", "distance_m": 62.23635,
	}},
	{"calibrate", `--caught 20 fl oz --test-length 20 ft --test-width 17.015625 ft`, map[string]any{
		"mix_rate_gpa": 20.0, "spread_percent": nil, "ways_agree": nil, "way_to_repeat": nil, "distance_m": nil,
	}},
	// The textbook's newsboy (from memory): 7 against 5, normal 50 +- 20: 38.68.
	{"orders", `--mean 50 L --spread 20 L --price 7 --cost 5`, map[string]any{"critical_percent": 28.5714286, "all_served_percent": 28.5714286, "days": 0.0}},
	{"orders", `--orders 12 L, 8 L, 15 L, 9 L --price 4 --cost 1`, map[string]any{"brew_l": 12.0, "critical_percent": 75.0, "all_served_percent": 75.0, "poured_away_l": 1.75, "turned_away_l": 0.75, "days": 4.0}},
	{"nozzles", `--flows 0.80, 0.82, 0.79, 0.91 L/min --rated 0.80 L/min`, map[string]any{
		"mean_l_per_min": 0.83, "cv_percent": 6.59906696, "spread_percent": 14.4578313, "nozzles.3.over_rated_percent": 13.75,
		"nozzles.3.off_mean_percent": 9.63855422, "nozzles.3.verdict": "replace", "nozzles.0.verdict": "keep",
		"nozzles.1.verdict": "keep", "nozzles.2.verdict": "keep", "even": false, "replace.0": 4.0, "basis": "habit",
	}},
	{"hose-end", `--drawn 1 gal --flow 3.4 gal/min --test-time 5 min --ratio 1:16 --test-area 1000 sq ft`, map[string]any{
		"delivered_l": 64.3520003, "one_in": 17.0, "mix_words": "1 part tea + 16 parts water (5.88 % tea)", "off_percent": 0.0,
		"mix_rate_l_per_ha": 6926.79167, "mix_rate_gpa": 740.52, "tea_rate_l_per_ha": 407.458333, "job_mix_l": nil,
		"mix_rate_gal_per_1000_sq_ft": 17.0,
	}},
	{"inject", `--tea 5 gal --injector 1:100 --ratio 1:200 --flow 4 gal/min --line-length 100 ft --line-bore 0.625 in --emitter-spacing 1 ft`, map[string]any{
		"stock_percent_tea": 49.7512438, "stock_l": 38.0433884, "mix_l": 3804.33884, "carrier_l": 3766.29545, "minutes": 251.25,
		"percent_tea": 0.497512438, "line_volume_l": 6.03298592, "travel_minutes": 1.83486821, "flush_flow_l_per_min": 3.61979155,
	}},
	{"tree-row-volume", `--width 10 ft --height 8 ft --row-spacing 18 ft --speed 2.5 mph`, map[string]any{
		"volume_cu_ft_per_ac": 193600.0, "volume_m3_per_ha": 13546.6667, "mix_rate_low_gpa": 135.52, "mix_rate_high_gpa": 193.6,
		"flow_low_l_per_min": 46.6362732, "flow_high_l_per_min": 66.6232474, "tea_rate_low_l_per_ha": nil, "basis": "habit",
	}},
	{"reconcile", `--area 4 ac --done-area 1 ac --gone 93 gal --tea-rate 15 gal/ac --ratio 1:4`, map[string]any{
		"expected_gone_l": 283.905884, "difference_l": 68.1374121, "difference_percent": 24.0, "verdict": "over",
		"actual_tea_rate_gpa": 18.6, "speed_factor": 1.24, "pressure_factor": 0.650364204,
		"hold_dose_words": "1 part tea + 5.2 parts water (16.1 % tea)", "tea_for_rest_l": 170.343530, "basis": "habit",
	}},
	{"nutrients", `--analysis 2-4-1 --amount 2 L --density 1 kg/L --volume 100 L --tea-rate 187 L/ha`, map[string]any{
		"amount_g": 2000.0, "n_mg_per_l": 400.0, "p2o5_mg_per_l": 800.0, "k2o_mg_per_l": 200.0,
		"n_kg_per_ha": 0.0748, "share_of_low_n_need_percent": 0.1496,
	}},
	{"cost", `--volume 200 L --item compost: 10 --power 60 W --air-time 36 h --kwh-price 0.30 --labour 1.5 h --wage 24 --tea-rate 150 L/ha`, map[string]any{
		"electricity_kwh": 2.16, "parts.0.cost": 10.0, "parts.1.cost": 0.648, "parts.2.cost": 36.0, "parts.0.name": "compost", "batch_cost": 46.648,
		"cost_per_l": 0.23324, "cost_per_ha": 34.986, "cost_per_ac": 14.1583319, "cost_per_visit": nil, "equipment_per_year": nil,
	}},
}

func TestWorkedExamples(t *testing.T) {
	for _, w := range workedExamples {
		holds(t, w.sheet+" "+w.flags, ask(t, w.sheet, w.flags), w.want)
	}
}

// P and K of the worked label, to 3 parts in 10 000 as IUPAC masses allow, and
// the price of a gallon as it is printed.
func TestPrintedToFewerDigits(t *testing.T) {
	label := ask(t, "nutrients", `--analysis 2-4-1 --amount 2 L --density 1 kg/L --volume 100 L`)
	for key, want := range map[string]float64{"p_mg_per_l": 349.141, "k_mg_per_l": 166.030} {
		if got := label[key].(float64); got < want*(1-3e-4) || got > want*(1+3e-4) {
			t.Errorf("%s is %v, want %v", key, got, want)
		}
	}
	if got := ask(t, "cost", `--volume 200 L --item all: 46.648`)["cost_per_gal"].(float64); got < 0.8829085 || got > 0.8829095 {
		t.Errorf("a gallon costs %v, want 0.882909", got)
	}
}

// The worksheets stand in the order of the day, and each example is a
// worked one.
func TestOrderOfTheDay(t *testing.T) {
	want := []string{"doses", "dilute", "loads", "trailer-weight", "strainers", "sprayer", "course", "calibrate", "nozzles", "hose-end", "inject", "tree-row-volume", "reconcile", "nutrients", "cost", "orders"}
	var got []string
	for _, s := range application.Sheets() {
		got = append(got, s.Name)
		if s.Group != worksheet.Application {
			t.Errorf("%s stands under %s", s.Name, s.Group)
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("order %v, want %v", got, want)
	}
}
