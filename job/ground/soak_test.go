package ground_test

import (
	"math"
	"strings"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/job/ground"
	"aerosteep/quantity"
)

func soil(t *testing.T, texture string) ground.Soil {
	t.Helper()
	s, known := ground.FindSoil(ground.Texture(strings.ReplaceAll(texture, " ", "-")))
	if !known {
		t.Fatalf("no soil %s", texture)
	}
	return s
}

// TestSoilTable: New Mexico State University's table, every texture.
func TestSoilTable(t *testing.T) {
	seen := map[string]bool{}
	for _, row := range published.Rows(t, "soil_water.csv") {
		s := soil(t, row.Text("texture"))
		seen[row.Text("texture")] = true
		row.Near(s.FieldCapacity, row.Float("field_capacity_mass_percent"), 0)
		row.Near(s.WiltingPoint, row.Float("wilting_point_mass_percent"), 0)
		row.Near(s.Bulk.GramsPerMillilitre(), row.Float("bulk_density_g_per_cm3"), 0)
		switch row.Text("find") {
		case "available water":
			row.Check(s.AvailableWater().MillimetresPerMetre(), "mm/m")
		case "final intake rate":
			row.Check(s.FinalIntake.MillimetresPerHour(), "mm/h")
		case "depth wetted from half-depleted":
			r := ground.Reservoir{Available: s.AvailableWater(), Depleted: quantity.Percent(50), Intake: s.FinalIntake}
			applied := quantity.LitresPerSquareMetre(row.Float("applied_mm"))
			row.Check(r.WettedDepth(applied).Millimetres(), "mm")
			row.Near(float64(r.ToWet(r.WettedDepth(applied))), float64(applied), 1e-12)
		default:
			t.Fatalf("nobody finds %s", row.Text("find"))
		}
	}
	if len(seen) != len(ground.Soils) {
		t.Errorf("%d textures were checked of %d", len(seen), len(ground.Soils))
	}
}

func TestRateOfApplying(t *testing.T) {
	for _, row := range published.Rows(t, "infiltration.csv") {
		r := ground.Reservoir{Available: 150, Depleted: 0.5, Intake: quantity.MillimetresPerHour(row.Float("final_intake_mm_per_h"))}
		applied := quantity.LitresPerSquareMetre(row.Float("applied_volume_l") / row.Float("area_m2"))
		row.Near(applied.LitresPerSquareMetre(), row.Float("expected_depth_mm"), 1e-4)
		row.Check(r.Apply(applied, quantity.Minutes(row.Float("time_min")), ground.Surface{}).Rate.MillimetresPerHour(), "mm/h")
	}
}

func TestVerdicts(t *testing.T) {
	loam := ground.Reservoir{Available: 168.8, Depleted: 0.5, Intake: 10}
	for name, c := range map[string]struct {
		minutes, storage, slope float64
		want                    ground.Verdict
	}{
		"slow enough":        {12, 2, 0, ground.SoaksIn},
		"puddles":            {5, 2, 5, ground.Ponds},
		"a slope":            {5, 2, 6, ground.RunsOff},
		"more than it holds": {1, 1, 0, ground.RunsOff},
	} {
		got := loam.Apply(2, quantity.Minutes(c.minutes), ground.Surface{Storage: quantity.Metres(c.storage / 1000), Slope: quantity.Percent(c.slope)})
		if got.Verdict != c.want {
			t.Errorf("%s: %+v, want %s", name, got, c.want)
		}
	}
	if m := loam.NoPonding(2).Minutes(); math.Abs(m-12) > 1e-12 {
		t.Errorf("2 mm into 10 mm/h take %g min, want 12", m)
	}
}
