package jobfile_test

import (
	"math"
	"testing"

	"aerosteep/job/jobfile"
)

// Doses as people say them. A US cup is 236.588 mL (NIST SP 811, appendix B.8:
// 2.365882 E-04 m³); the tea is the part that the ratio says.
func TestDosesAsPeopleSayThem(t *testing.T) {
	const rest = `
[[bed]]
name = "B"
area = "10 m2"
[[bed]]
name = "Trees"
trees = 12
drip_radius = "1 m"
[[applicator]]
name = "Can"
kind = "can"
tank = "2 gal"
[[want]]
method = "drench"
at = 2026-05-16T08:00:00Z
`
	for said, tea := range map[string]float64{
		`bed = "B"` + "\n" + `each = "1 cup"` + "\ncount = 40\ndilution = \"1:4\"":                40 * 0.2365882 / 5,
		`bed = "B"` + "\n" + `cans = 2` + "\napplicator = \"Can\"\ndilution = \"1:1\"":            2 * 2 * 3.785412 / 2,
		`bed = "Trees"` + "\n" + `each = "3 L"`:                                                   36,
		`bed = "Trees"` + "\n" + `each = "3 L"` + "\ncount = 2":                                   6,
		`bed = "B"` + "\n" + `cans = 2` + "\ncount = 3\napplicator = \"Can\"\ndilution = \"1:3\"": 3 * 2 * 2 * 3.785412 / 4,
	} {
		file, problems := jobfile.Read([]byte("[holding]\nzone = \"UTC\"\n"+rest+said+"\n"), "said.toml", jobfile.Whole)
		if len(problems) > 0 {
			t.Fatalf("%s: %v", said, problems)
		}
		w := file.Wants[0]
		bed, _ := file.Bed(w.Bed)
		if got, known := w.TeaOn(bed); !known || math.Abs(got.Litres()-tea) > 1e-5*tea {
			t.Errorf("%s: %g L of tea, not %g", said, got.Litres(), tea)
		}
		if mix, part, ok := w.PerArea(bed); !ok || math.Abs(float64(mix)*bed.Area.SquareMetres()-tea*(1+w.Dilution)) > 1e-4*tea*(1+w.Dilution) || part > mix {
			t.Errorf("%s: %g and %g L/m²", said, mix, part)
		}
	}
	for _, wrong := range []string{`each = "1 cup"` + "\ntea = \"1 L\"", "cans = 2", `each = "1 cup"` + "\ncans = 1", "count = 3"} {
		if _, problems := jobfile.Read([]byte("[holding]\nzone = \"UTC\"\n"+rest+"bed = \"B\"\n"+wrong+"\n"), "said.toml", jobfile.Whole); len(problems) == 0 {
			t.Errorf("%q is taken", wrong)
		}
	}
}

// A holding that does without molasses takes every built-in recipe without it,
// by one word.
func TestWithoutMolassesOnceForAll(t *testing.T) {
	for word, sweet := range map[string]bool{"": true, "molasses = false\n": false} {
		file, problems := jobfile.Read([]byte("[holding]\nzone = \"UTC\"\n"+word), "h.toml", jobfile.Whole)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		found := false
		for _, name := range []string{"bacterial", "balanced", "fungal"} {
			r, known := file.Recipe(name)
			if !known {
				t.Fatal(name)
			}
			for _, item := range r.Items {
				found = found || item.Ingredient.Name == "molasses"
			}
		}
		if found != sweet {
			t.Errorf("%q: molasses in the recipes: %v", word, found)
		}
	}
}
