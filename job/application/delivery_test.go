package application_test

import (
	"strings"
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/job/application"
	"aerosteep/quantity"
)

func TestInjectorMatchesPublished(t *testing.T) {
	rows := published.Rows(t, "injector.csv")
	for _, row := range published.Where(rows, "find", "minutes") {
		convention := application.Total
		if strings.HasPrefix(row.Text("convention"), "parts") {
			convention = application.Parts
		}
		share := must(must(application.ParseRatio(row.Text("ratio")))(t).Share(convention))(t)
		flow := quantity.LitresPerMinute(row.Float("flow_l_per_min"))
		run := must(application.Injection{Tea: quantity.Litres(row.Float("tea_l")), Share: &share, Flow: &flow}.Run())(t)
		row.Check(run.Time.Minutes(), "min")
		near(t, "stock is tea", run.Stock.Water.Litres(), 0, 1e-12)
	}
	rate := published.Where(rows, "find", "injection rate")[0]
	over := quantity.Hours(rate.Float("injection_time_h"))
	pump := must(application.Injection{Tea: quantity.USGallons(rate.Float("volume_gal")), Over: &over}.Run())(t)
	rate.Check(pump.Rate.USGallonsPerMinute()*60, "US gal/h")
}

func TestRatesMatchPublished(t *testing.T) {
	units := map[string]string{"US gal/acre": "gal/ac", "US gal/1000 sq ft": "gal/1000 sq ft"}
	per := map[string]quantity.Dose{
		"US pt/1000 sq ft": must(quantity.ParseDose("1 pt/1000 sq ft"))(t), "L/ha": quantity.LitresPerHectare(1),
		"mL/m2": must(quantity.ParseDose("1 mL/m2"))(t), "L/100 m2": must(quantity.ParseDose("1 L/100 m2"))(t),
	}
	for _, row := range published.Rows(t, "rates.csv") {
		unit, plain := units[row.Text("from_unit")]
		if !plain {
			continue
		}
		dose := must(quantity.ParseDose(row.Text("from_rate") + " " + unit))(t)
		row.Check(float64(dose/per[row.Text("unit")]), row.Text("unit"))
	}
}

// 20 gal/acre of tea at 1:4 is 100 of mix; 5 gal/acre on 18 ft trees is 15.
func TestMixRateAndCanopy(t *testing.T) {
	rows := published.Rows(t, "rates.csv")
	share := must(application.Ratio{Tea: 1, Water: 4}.Share(application.Parts))(t)
	tea := quantity.USGallonsPerAcre(20)
	strength := must(application.Settle(&tea, nil, &share, "tea-rate", "mix-rate"))(t)
	published.Where(rows, "find", "US gal/acre of mix")[0].Check(strength.Mix.USGallonsPerAcre(), "US gal/acre")

	foliar := must(application.DoseFor("foliar"))(t)
	tall := foliar.Low * quantity.Dose(foliar.CanopyFactor(quantity.Feet(18)))
	published.Where(rows, "find", "US gal/acre of tea")[0].Check(tall.USGallonsPerAcre(), "US gal/acre")
	near(t, "low plants", foliar.CanopyFactor(quantity.Feet(3)), 1, 0)
	soil := must(application.DoseFor("soil"))(t)
	near(t, "soil under trees", soil.CanopyFactor(quantity.Feet(18)), 1, 0)
	if _, err := application.DoseFor("leaf"); fault.Of(err) == nil {
		t.Error("an unknown use was taken")
	}
}

func TestNutrientsMatchPublished(t *testing.T) {
	rows := published.Rows(t, "nutrients.csv")
	find := func(name string) published.Row { return published.Where(rows, "find", name)[0] }
	find("P2O5 to P").Check(application.PhosphorusInOxide, "kg/kg")
	find("K2O to K").Check(application.PotassiumInOxide, "kg/kg")
	find("P to P2O5").Check(1/application.PhosphorusInOxide, "kg/kg")

	onePercent := application.Analysis{N: 0.01}
	ounce := must(quantity.ParseMass("1 oz wt"))(t)
	find("ppm from 1 oz in 100 gal").Check(float64(onePercent.In(ounce, quantity.USGallons(100)).N), "mg/L")
	twenty := must(application.ParseAnalysis("20-20-20", false))(t)
	mass := must(twenty.AmountFor(200, quantity.USGallons(100)))(t)
	find("oz for 200 ppm N").Check(float64(mass/ounce), "oz")
	find("oz for 200 ppm N exact").Check(float64(mass/ounce), "oz")

	label := must(application.ParseAnalysis("2-4-1", false))(t)
	brings := label.In(quantity.Grams(500), quantity.Litres(100))
	find("ppm N").Check(float64(brings.N), "mg/L")
	find("ppm P from P2O5 label").Check(float64(brings.P), "mg/L")
	find("ppm K from K2O label").Check(float64(brings.K), "mg/L")
	find("kg N per ha").Check(label.On(quantity.Grams(500), quantity.SquareMetres(1000)).N.KilogramsPerHectare(), "kg/ha")
}

// A load that is over by a quarter: slower pressure, faster going or thinner
// mix each bring the actual dose back to the plan.
func TestEachWayBackRestoresTheDose(t *testing.T) {
	planned := application.Strength[quantity.Dose]{Tea: 1, Mix: 4, Share: 0.25}
	c := must(application.FirstLoad{Ground: 100, Done: 20, Gone: 101, Dead: 1, Planned: planned}.Reconcile())(t)
	near(t, "actual", float64(c.Actual.Mix), 5, 1e-12)
	near(t, "faster", float64(c.Actual.Mix)/c.SpeedFactor, 4, 1e-12)
	near(t, "less pressure, squared", c.PressureFactor, 0.64, 1e-12)
	near(t, "thinner", float64(c.Actual.Mix)*c.HoldDose.Fraction(), 1, 1e-12)
	near(t, "tea for the rest", c.TeaForRest.Litres(), 80, 1e-12)
	if c.Verdict != application.OverDose {
		t.Errorf("verdict %s", c.Verdict)
	}
}

// A 15 L knapsack weighs about 20 kg full (common practice: 5 kg empty).
func TestWeigh(t *testing.T) {
	w := must(application.Haul{Liquid: 15, Density: 1, Tank: quantity.Grams(5000)}.Weigh())(t)
	near(t, "kg", w.Total.Kilograms(), 20, 1e-12)
	if w.Within != nil || w.Sloshes() {
		t.Error("without a plate and a size nothing is said of them")
	}
}

func FuzzParseAnalysis(f *testing.F) {
	for _, seed := range []string{"2-4-1", "0,5-0-0", "50-40-20", "--", "2--1", "1e2-0-0"} {
		f.Add(seed, true)
	}
	f.Fuzz(func(t *testing.T, text string, element bool) {
		a, err := application.ParseAnalysis(text, element)
		if err == nil && !(a.N >= 0 && a.P2O5 >= 0 && a.K2O >= 0 && a.N <= 1+1e-6) {
			t.Errorf("%q read as %+v", text, a)
		}
	})
}

func FuzzParseScreen(f *testing.F) {
	for _, seed := range []string{"400 um", "50 mesh", "55mesh", "mesh", "1e9 mesh", "-3 mm", "1/64 in"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if s, err := application.ParseScreen(text); err == nil && !(s.Opening > 0) {
			t.Errorf("%q read as %+v", text, s)
		}
	})
}
