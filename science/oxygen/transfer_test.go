package oxygen_test

import (
	"math"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/science/oxygen"
)

// aeration is one aeration that somebody measured, at the row's conditions.
func aeration(t *testing.T, row published.Row, kla20 float64) oxygen.Aeration {
	a := oxygen.Aeration{
		KLa20: quantity.Alone(quantity.PerHour(kla20)), Alpha: 1, Beta: 1, Fouling: 1,
		Water: quantity.Celsius(row.Float("temperature_c")),
	}
	a.Saturation = quantity.Concentration(saturation(t, row.Float("temperature_c"), mmHg(row.Float("pressure_mmhg")), 0))
	for column, factor := range map[string]*float64{"alpha": &a.Alpha, "beta": &a.Beta, "fouling": &a.Fouling} {
		if row.Has(column) {
			*factor = row.Float(column)
		}
	}
	return a
}

func TestTemperatureFactorMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "kla-temperature.csv") {
		from, to := quantity.Celsius(row.Float("from_c")), quantity.Celsius(row.Float("to_c"))
		row.Check(row.Float("kla_per_h")*oxygen.TemperatureFactor(to)/oxygen.TemperatureFactor(from), "1/h")
	}
}

func TestSOTRMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "sotr-from-air.csv") {
		sotr, err := oxygen.SOTR(quantity.Flow(row.Float("free_air_l_per_min_20c")), quantity.Share(row.Float("sote_per_m")), quantity.Metres(row.Float("depth_m")))
		if err != nil {
			t.Fatal(err)
		}
		row.Check(sotr.GramsPerHour(), "g/h")
	}
	for _, row := range published.Where(published.Rows(t, "in-air.csv"), "id", "air-20", "scfm-asce") {
		row.Check(oxygen.OxygenInAir, "kg/m3")
	}
}

// The field conversion of ASCE/EWRI 2: AOTR is K (β C* - C) V, and SOR the
// same turned round; here per litre of volume.
func TestFieldConversionMatchesPublished(t *testing.T) {
	rows := published.Rows(t, "sotr-aotr.csv")
	const volume = quantity.Volume(1000)
	for _, row := range published.Where(rows, "check", "aotr-from-sotr") {
		kla20, err := oxygen.KLa20FromSOTR(quantity.MassRate(row.Float("rate")), volume)
		if err != nil {
			t.Fatal(err)
		}
		most := aeration(t, row, float64(kla20.Value)).MostUptake(quantity.Concentration(row.Float("do_mg_per_l")))
		row.Check(most.Value.MilligramsPerLitreHour()*volume.Litres()/1000, "g/h")
	}
	for _, row := range published.Where(rows, "check", "sor-from-aor") {
		perHour := quantity.Uptake(row.Float("rate") * 1000 / 24) // kg/(m³ d) is 1000/24 mg/(L h)
		needed, _ := aeration(t, row, 1).KLa20Needed(perHour, quantity.Concentration(row.Float("do_mg_per_l")))
		row.Check(oxygen.SOTRFromKLa20(needed, 1000).GramsPerHour()*24/1000, "kg/(m3 d)")
	}
}

func TestAirNeededMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "air-needed.csv") {
		const one = quantity.Flow(1)
		sotr, err := oxygen.SOTR(one, quantity.Share(row.Float("sote_per_m")), quantity.Metres(row.Float("depth_m")))
		if err != nil {
			t.Fatal(err)
		}
		kla20, err := oxygen.KLa20FromSOTR(sotr, quantity.Litres(row.Float("volume_l")))
		if err != nil {
			t.Fatal(err)
		}
		a := aeration(t, row, float64(kla20.Value))
		needed, reachable := a.AirNeeded(one, quantity.Uptake(row.Float("our_mg_per_l_h")), quantity.Concentration(row.Float("do_mg_per_l")))
		if !reachable {
			t.Errorf("%s: out of reach", row.Name())
		}
		row.Check(float64(needed.Value), "L/min")
	}
}

func TestSteadyOxygenMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "steady-state.csv") {
		a := aeration(t, row, row.Float("kla20_per_h"))
		uptake := row.Float("our20_mg_per_l_h") * math.Pow(row.Float("our_theta"), row.Float("temperature_c")-20)
		row.Check(a.SteadyOxygen(quantity.Uptake(uptake)).Value.MilligramsPerLitre(), "mg/L")
	}
	for _, row := range published.Rows(t, "kla-required.csv") {
		a := oxygen.Aeration{Alpha: 1, Beta: 1, Fouling: 1, Water: 20, Saturation: quantity.Concentration(row.Float("c_star_mg_per_l"))}
		needed, _ := a.KLa20Needed(quantity.Uptake(row.Float("our_mg_per_l_h")), quantity.Concentration(row.Float("do_target_mg_per_l")))
		row.Check(needed.PerHour(), "1/h")
	}
}

func TestBubbleColumnsMatchPublished(t *testing.T) {
	for _, row := range published.Rows(t, "bubble-column.csv") {
		v := oxygen.GasVelocity(quantity.Flow(row.Float("free_air_l_per_min")), quantity.Metres(row.Float("vessel_diameter_m")))
		if row.Text("correlation") == "deckwer" {
			row.Check(oxygen.Deckwer(v).PerHour(), "1/h")
		} else {
			row.Check(oxygen.HeijnenVantRiet(v).PerHour(), "1/h")
		}
	}
}

func TestSurfaceMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "schmidt.csv") {
		row.Check(oxygen.Schmidt(quantity.Celsius(row.Float("temperature_c"))), "1")
	}
	for _, row := range published.Rows(t, "surface-kla.csv") {
		k, err := oxygen.SurfaceKLa(quantity.Celsius(row.Float("temperature_c")), quantity.MetresPerSecond(row.Float("wind_10m_m_per_s")), quantity.Metres(row.Float("depth_m")))
		if err != nil {
			t.Fatal(err)
		}
		row.Check(k.PerHour(), "1/h")
	}
}

func TestDepletionMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "depletion.csv") {
		s := oxygen.Standing{
			Start:      quantity.Concentration(row.Float("do_start_mg_per_l")),
			Uptake:     quantity.Uptake(row.Float("our_mg_per_l_h")),
			SurfaceKLa: quantity.PerHour(row.Float("surface_kla_per_h")),
			Saturation: quantity.Concentration(row.Float("c_star_mg_per_l")),
		}
		took, reaches, err := s.TimeTo(quantity.Concentration(row.Float("do_limit_mg_per_l")))
		if err != nil {
			t.Fatal(err)
		}
		if never := row.Text("expected") == "never"; never || !reaches {
			if never == reaches {
				t.Errorf("%s: reaches the limit: %v, published %s", row.Name(), reaches, row.Text("expected"))
			}
			continue
		}
		row.Check(took.Minutes(), "min")
	}
}

// More air, or more of it taken up, must give more; a warmer or higher place
// less of what holds a limit.
func TestTransferDirections(t *testing.T) {
	base := oxygen.Aeration{KLa20: quantity.Between[quantity.PerTime](10, 7, 13), Alpha: 0.65, Beta: 0.98, Fouling: 1, Water: 20, Saturation: 9}
	higher := base
	higher.Saturation = 8
	if base.MostUptake(6).Value <= higher.MostUptake(6).Value {
		t.Error("thinner air held the limit better")
	}
	steady := base.SteadyOxygen(10)
	if !(steady.Low95 < steady.Value && steady.Value < steady.High95) {
		t.Errorf("the ends of %v do not lie around the value", steady)
	}
	if got := base.SteadyOxygen(500).Value; got != 0 {
		t.Errorf("a demand beyond the air ends at %v, want 0", got)
	}
	if p, err := air.PressureAt(3000); err != nil || p >= quantity.StandardAtmosphere {
		t.Errorf("at 3000 m: %v, %v", p, err)
	}
}

func TestVerdicts(t *testing.T) {
	a := oxygen.Aeration{KLa20: quantity.Between[quantity.PerTime](10, 7, 13), Alpha: 1, Beta: 1, Fouling: 1, Water: 20, Saturation: 9}
	for uptake, want := range map[quantity.Uptake]oxygen.Holding{
		0: oxygen.Holds, 21: oxygen.Holds, 21.1: oxygen.Uncertain, 38.9: oxygen.Uncertain, 39.1: oxygen.FallsShort,
	} {
		if got := a.Verdict(uptake, 6); got != want {
			t.Errorf("uptake %v: %s, want %s", uptake, got, want)
		}
	}
	if got := a.Verdict(1, 9); got != oxygen.NoAirCan {
		t.Errorf("a limit at saturation: %s", got)
	}
}
