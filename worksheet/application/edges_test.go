package application_test

import (
	"strings"
	"testing"

	"aerosteep/wording"
	"aerosteep/worksheet/application"
)

func TestDilutionIsAskedOnce(t *testing.T) {
	refuses(t, "dilute", `--tank 5 gal --ratio 1 to 8`, "ratio", "1:8")
	refuses(t, "dilute", `--tank 5 gal --ratio 1/8`, "ratio", "1:8", "1 in 8", "1 to 8")
	refuses(t, "dilute", `--tank 5 gal --ratio 8`, "ratio", "1:8")
	refuses(t, "dilute", `--tank 5 gal --ratio 12 %`, "ratio", "1:8")
	refuses(t, "dilute", `--tank 5 gal --ratio 1:8 --percent-tea 12.5`, "percent-tea", "11.1", "12.5")
	refuses(t, "dilute", `--tank 5 gal --convention total`, "ratio", "--ratio", "--convention")
	refuses(t, "dilute", `--tank 5 gal --ratio 4:1 --convention total`, "ratio")
	refuses(t, "dilute", `--tank 5 gal --percent-tea 0`, "percent-tea")
	refuses(t, "dilute", `--tank 5 gal`, "ratio", "1:0")
	holds(t, "total", ask(t, "dilute", `--tank 8 L --ratio 1:8 --convention total --percent-tea 12.6`), map[string]any{"percent_tea": 12.5, "other_reading.convention": "parts"})
	turned := ask(t, "dilute", `--tank 5 L --ratio 4:1`)
	holds(t, "4:1", turned, map[string]any{"percent_tea": 80.0, "other_reading": nil})
	if !cautions(turned, "1:4") {
		t.Error("4:1 is not asked about")
	}
	for _, undiluted := range []string{"--ratio 1:0", "--ratio 1:1 --convention total", "--percent-tea 100"} {
		holds(t, undiluted, ask(t, "dilute", "--tank 5 L "+undiluted), map[string]any{"mix_words": "undiluted tea (100 % tea)", "water_l": 0.0, "parts_water_per_part_tea": 0.0})
	}
}

func TestDiluteEdges(t *testing.T) {
	refuses(t, "dilute", `--tea 5 gal --tank 2 gal`, "tea", "--tea", "--tank")
	refuses(t, "dilute", `--water 1 gal --ratio 1:0`, "water")
	refuses(t, "dilute", `--tea 1 L --water 8 L --ratio 1:4`, "ratio", "11.1", "20")
	refuses(t, "dilute", `--tank 5 --ratio 1:8`, "tank")
	refuses(t, "dilute", `--tank 5 oz --ratio 1:8`, "tank", "fl oz")
	refuses(t, "dilute", `--tank NaN L --ratio 1:8`, "tank")
	holds(t, "three volumes", ask(t, "dilute", `--tea 1 L --water 8 L --tank 9.05 L`), map[string]any{"total_l": 9.0})
	holds(t, "tea in tank", ask(t, "dilute", `--tea 5 L --tank 5 L`), map[string]any{"water_l": 0.0, "percent_tea": 100.0})
	chlorine := ask(t, "dilute", `--tank 11 L --ratio 1:10 --water-chlorine 1 mg/L`)
	holds(t, "chlorine", chlorine, map[string]any{"chlorine_in_mix_mg_per_l": 10. / 11})
	if !cautions(chlorine, "chlorine") {
		t.Error("0.9 mg/L of chlorine is not cautioned")
	}
}

func TestLoadsEdges(t *testing.T) {
	const field = `--area 1 ac --tank 50 gal --ratio 1:0 --tea-rate `
	if !cautions(ask(t, "loads", field+"88 gal/ac"), "--mix-rate") || cautions(ask(t, "loads", field+"87 gal/ac"), "--mix-rate") {
		t.Error("the question about --mix-rate starts over 87 gal/ac")
	}
	small := ask(t, "loads", `--area 100 m2 --tea-rate 1.02 L/m2 --ratio 1:0 --tank 100 L`)
	if !cautions(small, "--split equal") {
		t.Error("a last load of 2 L is not cautioned")
	}
	equal := ask(t, "loads", `--area 100 m2 --tea-rate 1.02 L/m2 --ratio 1:0 --tank 100 L --split equal`)
	holds(t, "equal", equal, map[string]any{"load_count": 2.0, "full_loads": 0.0, "last_load_mix_l": 51.0, "loads.0.part_load": true})
	plants := ask(t, "loads", `--plants 10 --tank 2 gal --tea-per-plant 1 cup --ratio 1:4`)
	holds(t, "plants", plants, map[string]any{"plants": 10.0, "area_m2": nil, "tea_rate_l_per_ha": nil, "loads.0.covers_plants": 6.4, "loads.0.covers_m2": nil})
	tea := ask(t, "loads", `--tea 10 L --mix-rate 1000 L/ha --ratio 1:9 --tank 100 L --speed 3.6 km/h --swath 1 m --field-efficiency 1`)
	holds(t, "tea", tea, map[string]any{"area_m2": 1000.0, "tea_total_l": 10.0, "field_hours": 1000. / 3600, "last_load_mix_l": 0.0})
	both := ask(t, "loads", `--area 1 ha --tea-rate 100 L/ha --mix-rate 1000 L/ha --tank 1000 L`)
	holds(t, "both rates", both, map[string]any{"percent_tea": 10.0, "last_load_mix_l": 0.0})

	refuses(t, "loads", `--area 1 ac --plants 3 --tank 5 gal`, "plants")
	refuses(t, "loads", `--area 1 ac --tank 5 gal --ratio 1:8`, "tea-rate", "--mix-rate")
	refuses(t, "loads", `--area 1 ac --tank 5 gal --tea-rate 5 gal/ac`, "ratio", "1:0")
	refuses(t, "loads", `--area 1 ac --tank 5 gal --tea-rate 10 gal/ac --mix-rate 5 gal/ac`, "mix-rate")
	refuses(t, "loads", `--area 1 ac --tank 5 gal --tea-rate 10 gal/ac --ratio 1:4 --dead-volume 5 gal`, "dead-volume")
	refuses(t, "loads", `--tea 1 L --tank 5 gal --tea-rate 10 gal/ac --ratio 1:4 --dead-volume 2 gal`, "tea")
	refuses(t, "loads", `--area 100 ac --tank 1 cup --tea-rate 10 gal/ac --ratio 1:4`, "tank", "10000")
	refuses(t, "loads", `--area 1 ac --tank 5 gal --tea-rate 10 gal/ac --ratio 1:4 --speed 3 mph`, "swath")
	refuses(t, "loads", `--area 1 ac --tank 5 gal --tea-rate 2 m --ratio 1:4`, "tea-rate")
	refuses(t, "loads", `--plants 3 --tank 5 gal --tea-rate 2 L/m2 --ratio 1:4`, "tea-rate")
	refuses(t, "loads", `--area 1 ac --tank 5 gal --rate 2 L/m2 --ratio 1:4`, "rate", "--tea-rate", "--mix-rate")
}

func TestHaulEdges(t *testing.T) {
	refuses(t, "trailer-weight", `--volume 500 L --tank-size 400 L`, "tank-size")
	refuses(t, "trailer-weight", `--volume 500 L --density 2 kg/L`, "density")
	light := ask(t, "trailer-weight", `--volume 500 L --tank-size 1000 L --trailer-mass 900 kg --rated-mass 800 kg`)
	holds(t, "no room", light, map[string]any{"max_volume_l": 0.0, "fill_percent": 50.0, "within_rating": false})
	if !cautions(light, "slosh") || !cautions(light, "axle") {
		t.Error("slosh or axles are not cautioned")
	}
	if cautions(ask(t, "trailer-weight", `--volume 950 L --tank-size 1000 L`), "slosh") {
		t.Error("95 % full is said to slosh")
	}
	holds(t, "just at the plate", ask(t, "trailer-weight", `--volume 500 L --rated-mass 500 kg`), map[string]any{"within_rating": true, "margin_kg": 0.0})
}

func TestStrainerEdges(t *testing.T) {
	refuses(t, "strainers", `--chain 400 um, 55 mesh`, "chain", "50", "60", "um")
	refuses(t, "strainers", `--chain 400, 50 mesh`, "chain")
	refuses(t, "strainers", `--chain 400 um,, 50 mesh`, "chain")
	refuses(t, "strainers", `--chain 400 um --nozzle-flow 1 L/min`, "pressure")
	refuses(t, "strainers", `--chain 400 um --nozzle-flow 0.8 L/min --pressure 3 bar --orifice 1 mm`, "orifice")
	wrong := ask(t, "strainers", `--chain 50 mesh, 300 um --orifice 0.3 mm`)
	holds(t, "same twice", wrong, map[string]any{"stages.1.verdict": "not-finer", "chain_ok": false, "fungal_strands": "pass"})
	if !cautions(wrong, "orifice") {
		t.Error("an orifice of 300 µm is not cautioned")
	}
	holds(t, "too coarse", ask(t, "strainers", `--chain 0.4 mm; 0,35 mm --orifice 0.35 mm`), map[string]any{"stages.1.verdict": "passes-too-much", "stages.1.given": "0,35 mm"})
	holds(t, "no orifice", ask(t, "strainers", `--chain 200 um`), map[string]any{"orifice_um": nil, "last_to_orifice": nil, "fungal_strands": "pass"})
}

func TestSprayerEdges(t *testing.T) {
	holds(t, "speed alone", ask(t, "sprayer", `--course 88 ft --course-time 1 min`), map[string]any{"speed_mph": 1.0, "mix_rate_gpa": nil})
	holds(t, "pressure", ask(t, "sprayer", `--rated-flow 0.2 gal/min --rated-pressure 40 psi --nozzle-flow 0.4 gal/min`), map[string]any{"pressure_kpa": 160 * 6.894757293168})
	holds(t, "flow", ask(t, "sprayer", `--rated-flow 0.8 L/min --rated-pressure 3 bar --pressure 12 bar`), map[string]any{"nozzle_l_per_min": 1.6})
	holds(t, "ounces", ask(t, "sprayer", `--caught 15 fl oz --test-area 340.3125 sq ft --ratio 1:4`), map[string]any{"mix_rate_gpa": 15.0, "tea_rate_gpa": 3.0})
	two := ask(t, "sprayer", `--caught 16 fl oz --test-area 340.3125 sq ft --mph 4 --spacing-in 20 --nozzle-flow 0.2 gal/min`)
	holds(t, "two methods", two, map[string]any{
		"mix_rate_gpa": 16.0, "methods.0.name": "caught", "methods.1.name": "flow-speed-width",
		"methods_differ_percent": (16 - 14.85) / ((16 + 14.85) / 2) * 100,
	})
	if !cautions(two, "apart") {
		t.Error("methods 7 % apart are not cautioned")
	}
	if !cautions(ask(t, "sprayer", `--rated-flow 1 L/min --rated-pressure 3 bar --pressure 1.4 bar`), "change the nozzle") {
		t.Error("under half the rated pressure is not cautioned")
	}
	refuses(t, "sprayer", `--gpa 20`, "speed", "--spacing", "--nozzle-flow")
	refuses(t, "sprayer", `--pressure 40 psi --mph 3`, "pressure", "--rated-flow", "--rated-pressure")
	refuses(t, "sprayer", `--gpa 20 --mph 4 --spacing-in 20 --nozzle-flow 1 gal/min`, "mix-rate")
	refuses(t, "sprayer", `--gpa 20 --caught 15 fl oz --test-area 340 sq ft`, "mix-rate")
	refuses(t, "sprayer", `--mph 4 --speed 5 mph`, "mph", "4 mph", "5 mph")
	refuses(t, "sprayer", `--mph 100 --spacing-in 20 --gpa 10`, "mph")
	refuses(t, "sprayer", `--spacing-in 0.1 --mph 4 --gpa 10`, "spacing-in")
	refuses(t, "sprayer", `--caught 15 fl oz`, "test-area")
	refuses(t, "sprayer", `--caught 15 fl oz --test-area 340 sq ft --test-length 8.5 ft --test-width 18.5 ft`, "test-area", "157", "340", "sq ft")
	refuses(t, "course", `--plot-length 8.5 ft --plot-width 18.5 ft --plot-area 340 sq ft`, "plot-area", "157", "340")
	refuses(t, "course", ``, "spacing")
	refuses(t, "course", `--spacing 2 cm`, "spacing")
}

func TestNozzleEdges(t *testing.T) {
	refuses(t, "nozzles", `--flows 0,41, 0,40, 0,44 L/min`, "flows", "decimal comma")
	refuses(t, "nozzles", `--flows 0, 0 L/min`, "flows")
	refuses(t, "nozzles", `--flows 1 L/min --caught 1 L --time 30 s`, "caught")
	refuses(t, "nozzles", `--caught 16, 17 fl oz`, "time")
	refuses(t, "nozzles", `--flows 1 L/min --wear-limit 60`, "wear-limit")
	refuses(t, "nozzles", `--flows `+strings.Repeat("1, ", 200)+`1 L/min`, "flows", "201")
	holds(t, "decimal commas", ask(t, "nozzles", `--flows 0,41; 0,40; 0,44 L/min`), map[string]any{"mean_l_per_min": 1.25 / 3, "replace.0": 3.0})
	holds(t, "caught", ask(t, "nozzles", `--caught 500, 510 mL --time 30 s`), map[string]any{"nozzles.0.flow_l_per_min": 1.0, "nozzles.0.over_rated_percent": nil})
	holds(t, "exactly 10 % over", ask(t, "nozzles", `--flows 0.22 gal/min --rated 0.20 gal/min`), map[string]any{"nozzles.0.verdict": "keep", "cv_percent": nil, "even": true})
}

func TestHoseAndLineEdges(t *testing.T) {
	refuses(t, "hose-end", `--delivered 5 gal --ratio 1:5`, "drawn")
	refuses(t, "hose-end", `--flow 5 gal/min`, "test-time")
	refuses(t, "hose-end", `--delivered 5 gal --drawn 5 gal`, "drawn")
	refuses(t, "hose-end", `--delivered 5 gal --job-area 1 ac`, "test-area")
	refuses(t, "hose-end", `--delivered 5 gal --flow 1 gal/min --test-time 4 min`, "delivered", "4 gal", "5 gal")
	perPlant := ask(t, "hose-end", `--delivered 2 qt --test-time 35 s --plants 6`)
	holds(t, "2 qt a tree, 6 trees: 3 gal (Pesticide Environmental Stewardship)", perPlant, map[string]any{"job_mix_l": 3 * 3.785411784, "job_minutes": 3.5, "percent_tea": nil})
	off := ask(t, "hose-end", `--delivered 10 gal --drawn 1 gal --ratio 1:4 --water-chlorine 1 mg/L`)
	holds(t, "off", off, map[string]any{"expected_percent_tea": 20.0, "off_percent": -50.0, "chlorine_in_mix_mg_per_l": 0.9})
	if !cautions(off, "vacuum breaker") || !cautions(off, "50") {
		t.Error("backflow or the siphon is not cautioned")
	}

	refuses(t, "inject", `--tea 5 gal --injector 1:200 --ratio 1:100 --flow 4 gal/min`, "ratio", "0.5 %")
	refuses(t, "inject", `--tea 5 gal --injector 1:100`, "flow")
	refuses(t, "inject", `--tea 5 gal --injector 1:1 --flow 4 gal/min`, "injector")
	refuses(t, "inject", `--tea 5 gal`, "injector")
	refuses(t, "inject", `--tea 5 gal --over 1 min --flow 4 gal/min`, "over")
	refuses(t, "inject", `--tea 5 gal --over 1 h --line-length 100 ft --line-bore 1 in`, "flow")
	refuses(t, "inject", `--tea 5 gal --injector 1:100 --flow 4 gal/min --line-length 100 ft`, "line-bore")
	pump := ask(t, "inject", `--tea 350 gal --over 22 h`)
	holds(t, "350 gal in 22 h", pump, map[string]any{"injection_l_per_h": 350 * 3.785411784 / 22, "mix_l": nil, "percent_tea": nil, "injector_share_percent": nil, "stock_percent_tea": 100.0})
	holds(t, "pump with flow", ask(t, "inject", `--tea 10 L --over 10 min --flow 100 L/min`), map[string]any{"percent_tea": 1.0, "mix_l": 1000.0, "carrier_l": 990.0})
	holds(t, "parts", ask(t, "inject", `--tea 5 L --injector 1:100 --injector-convention parts --flow 10 L/min`), map[string]any{"minutes": 50.5, "stock_water_l": 0.0})
	if !cautions(pump, "backflow") {
		t.Error("backflow is not cautioned")
	}
}

func TestDoseAndRestEdges(t *testing.T) {
	refuses(t, "doses", `--use foilar`, "use", "foliar, foliar-garden, soil, lawn, greens")
	lawn := ask(t, "doses", `--use lawn --area 1000 sq ft --height 10 m`)
	holds(t, "lawn", lawn, map[string]any{"rows.0.tea_high_l": 2 * 3.785411784, "rows.0.canopy_factor": 1.0})
	if !cautions(lawn, "no agronomic standard") {
		t.Error("the missing standard is not said")
	}
	holds(t, "greens", ask(t, "doses", `--use greens`), map[string]any{"rows.0.basis": "measured"})

	refuses(t, "reconcile", `--area 1 ac --done-area 2 ac --gone 5 gal --mix-rate 5 gal/ac --ratio 1:0`, "done-area")
	refuses(t, "reconcile", `--area 2 ac --done-area 1 ac --gone 5 gal --dead-volume 5 gal --mix-rate 5 gal/ac --ratio 1:0`, "dead-volume")
	thin := ask(t, "reconcile", `--area 2 ac --done-area 1 ac --gone 40 gal --tea-rate 50 gal/ac --mix-rate 50 gal/ac`)
	holds(t, "cannot hold the dose", thin, map[string]any{"verdict": "under", "hold_dose_percent_tea": nil, "hold_dose_words": nil, "difference_percent": -20.0})
	holds(t, "exactly 10 %", ask(t, "reconcile", `--area 2 ac --done-area 1 ac --gone 55 gal --mix-rate 50 gal/ac --ratio 1:1`), map[string]any{"verdict": "on-dose"})

	refuses(t, "tree-row-volume", `--width 10 ft --height 8 ft`, "row-spacing")
	holds(t, "one carrier", ask(t, "tree-row-volume", `--width 3 m --height 2.5 m --row-spacing 5 m --carrier 0.1 L/m3 --ratio 1:9`), map[string]any{"mix_rate_low_l_per_ha": 1500.0, "mix_rate_high_l_per_ha": 1500.0, "tea_rate_high_l_per_ha": 150.0, "flow_low_l_per_min": nil})
}

func TestNutrientAndCostEdges(t *testing.T) {
	refuses(t, "nutrients", `--analysis 2-4-1 --amount 2 L --volume 100 L`, "density", "--density")
	refuses(t, "nutrients", `--analysis 2-4-1 --amount 2 oz --volume 100 L`, "amount", "fl oz")
	refuses(t, "nutrients", `--analysis 2-4 --amount 2 g --volume 100 L`, "analysis")
	refuses(t, "nutrients", `--analysis 50-40-20 --amount 2 g --volume 100 L`, "analysis")
	refuses(t, "nutrients", `--analysis 0-4-1 --target-n 100 mg/L --volume 100 L`, "target-n")
	refuses(t, "nutrients", `--analysis 2-4-1 --amount 0 g --volume 100 L`, "amount")
	holds(t, "target", ask(t, "nutrients", `--analysis 20-20-20 --target-n 200 mg/L --volume 100 gal`), map[string]any{"amount_g": 13.352647 * 28.349523125, "n_kg_per_ha": nil})
	holds(t, "element", ask(t, "nutrients", `--analysis 0-43.6427-0 --label-basis element --amount 100 g --volume 100 L`), map[string]any{"p_mg_per_l": 436.427})
	holds(t, "area", ask(t, "nutrients", `--analysis 2-4-1 --amount 500 g --volume 100 L --area 1000 m2`), map[string]any{"n_kg_per_ha": 0.1})

	refuses(t, "cost", `--volume 200 L`, "item", "--item")
	refuses(t, "cost", `--volume 200 L --item compost 10`, "item", "colon")
	refuses(t, "cost", `--volume 200 L --labour 2 h`, "wage", "--wage")
	refuses(t, "cost", `--volume 200 L --item a: 1 --travel 5`, "visit-tea", "--visit-tea")
	refuses(t, "cost", `--volume 200 L --equipment-price 100 --years 5`, "batches-per-year")
	refuses(t, "cost", `--volume 200 L --equipment-price 100 --salvage 200 --years 5 --batches-per-year 4`, "salvage")
	visit := ask(t, "cost", `--volume 100 L --item tea 5: 00 --item tea: half: 10 --reject-percent 50 --visit-tea 10 L --visit-time 1 h --wage 20 --travel 5 --overhead 3 --margin-percent 25`)
	holds(t, "visit", visit, map[string]any{"parts.1.name": "tea: half", "cost_per_l": 0.2, "visit_tea_cost": 2.0, "cost_per_visit": 30.0, "price_per_visit": 40.0})
}

// Every flag and every key has a name in both languages.
func TestEverythingHasAName(t *testing.T) {
	for _, s := range application.Sheets() {
		for i := range s.Inputs {
			if key := s.Inputs[i].Label(s.Name).Key; !wording.Known(key) {
				t.Errorf("%s: %s has no name", s.Name, key)
			}
		}
	}
	for _, w := range workedExamples {
		for key := range ask(t, w.sheet, w.flags) {
			if key != "sources" && key != "cautions" && !wording.Known("key."+key) {
				t.Errorf("%s: key.%s has no name", w.sheet, key)
			}
		}
	}
}

// Whatever is typed, a worksheet answers or refuses: no panic, no number that
// is not one.
func FuzzWorksheets(f *testing.F) {
	for _, w := range workedExamples {
		f.Add(w.sheet, w.flags)
	}
	f.Fuzz(func(t *testing.T, name, flags string) {
		sheets := application.Sheets()
		for i := range sheets {
			if sheets[i].Name != name {
				continue
			}
			result, err := run(&sheets[i], form(flags))
			if err != nil {
				return
			}
			if _, err := result.JSON(wording.Reader{Language: wording.English, Units: wording.US}); err != nil {
				t.Errorf("%s %s: %v", name, flags, err)
			}
		}
	})
}
