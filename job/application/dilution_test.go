package application_test

import (
	"math"
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// TestDilutionMatchesPublished holds both readings of a ratio to C1 V1 = C2 V2.
func TestDilutionMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "dilution.csv") {
		t.Run(row.Name(), func(t *testing.T) {
			ratio := application.Ratio{Tea: row.Float("ratio_tea"), Water: row.Float("ratio_water")}
			share := must(ratio.Share(application.Convention(row.Text("convention"))))(t)
			volume := quantity.Litres(row.Float("value_l"))
			known := application.Mixing{Share: &share}
			if row.Text("given") == "water" {
				known.Water = &volume
			} else {
				known.Tank = &volume
			}
			mix := must(known.Amounts())(t)
			row.Check(mix.Tea.Litres(), "L tea")
			row.Near(mix.Water.Litres(), row.Float("expected_water_l"), 1e-6)
			row.Near(mix.Total.Litres(), row.Float("expected_total_l"), 1e-6)
			row.Near(share.Percent(), row.Float("expected_percent_tea"), 1e-6)
		})
	}
}

// Common practice, checked against itself in three ways people say it: two
// cups to the gallon is 1:8; 1:10 in a 5 gal sprayer is 0.45 gal of tea and
// 4.55 gal of water.
func TestCommonPracticeRatios(t *testing.T) {
	cups, gallon := quantity.USGallons(2./16), quantity.USGallons(1)
	mix := must(application.Mixing{Tea: &cups, Water: &gallon}.Amounts())(t)
	near(t, "water to one of tea", application.WaterPerTea(mix.Share), 8, 1e-9)
	near(t, "one in", application.OneIn(mix.Share), 9, 1e-9)

	sprayer := application.MixOf(quantity.USGallons(5), must(application.Ratio{Tea: 1, Water: 10}.Share(application.Parts))(t))
	near(t, "tea", sprayer.Tea.USGallons(), 0.45, 0.005)
	near(t, "water", sprayer.Water.USGallons(), 4.55, 0.005)
}

func TestOtherReadingHoldsTheSameVolume(t *testing.T) {
	tank := quantity.USGallons(5)
	other, possible := application.Mixing{Tank: &tank}.OtherReading(application.Ratio{Tea: 1, Water: 10}, application.Parts)
	if !possible {
		t.Fatal("1:10 has another reading")
	}
	near(t, "tea", other.Tea.Litres(), tank.Litres()/10, 1e-12)
	if _, possible := (application.Mixing{Tank: &tank}).OtherReading(application.Ratio{Tea: 4, Water: 1}, application.Parts); possible {
		t.Error("4 made up to 1 is not possible")
	}
	if _, possible := (application.Mixing{Water: &tank}).OtherReading(application.Ratio{Tea: 1, Water: 1}, application.Parts); possible {
		t.Error("undiluted tea holds no water")
	}
}

func TestMixWords(t *testing.T) {
	spanish := wording.Reader{Language: wording.Spanish}
	for _, c := range []struct {
		share    float64
		en, inES string
	}{
		{1. / 9, "1 part tea + 8 parts water (11.1 % tea)", "1 parte de té + 8 partes de agua (11,1 % de té)"},
		{1. / 2001, "1 part tea + 2000 parts water (0.05 % tea)", "1 parte de té + 2000 partes de agua (0,05 % de té)"},
		{1. / 10001, "1 part tea + 10000 parts water (0.01 % tea)", "1 parte de té + 10000 partes de agua (0,01 % de té)"},
		{0.5, "1 part tea + 1 part water (50 % tea)", "1 parte de té + 1 parte de agua (50 % de té)"},
		{0.8, "1 part tea + 0.25 parts water (80 % tea)", "1 parte de té + 0,25 partes de agua (80 % de té)"},
		{1, "undiluted tea (100 % tea)", "té sin diluir (100 % de té)"},
		{1. / 1235.6, "1 part tea + 1230 parts water (0.0809 % tea)", "1 parte de té + 1230 partes de agua (0,0809 % de té)"},
	} {
		words := application.MixWords(c.share)
		if got := words.String(); got != c.en {
			t.Errorf("%v: %q, want %q", c.share, got, c.en)
		}
		if got := words.Speak(spanish); got != c.inES {
			t.Errorf("%v: %q, want %q", c.share, got, c.inES)
		}
	}
}

func TestRatioRefuses(t *testing.T) {
	for _, text := range []string{"", "8", "1 to 8", "1/8", "12 %", "0:8", "-1:8", "1:-1", "1:10001", "1:8:2", "a:b", "1:", "NaN:1", "1:Inf", "1 L:8 L"} {
		_, err := application.ParseRatio(text)
		faults := fault.Of(err)
		if len(faults) != 1 || faults[0].Field != "ratio" {
			t.Errorf("%q: %v, want one fault of ratio", text, err)
		}
	}
	if _, err := (application.Ratio{Tea: 4, Water: 1}).Share(application.Total); err == nil {
		t.Error("4 made up to 1 was taken")
	}
}

func TestMixingRefuses(t *testing.T) {
	one, two, five := quantity.Litres(1), quantity.Litres(2), quantity.Litres(5)
	half, all := quantity.Percent(50), quantity.Percent(100)
	for name, c := range map[string]struct {
		known application.Mixing
		field string
	}{
		"nothing":             {application.Mixing{}, "tea"},
		"one volume alone":    {application.Mixing{Tank: &five}, "ratio"},
		"tea over tank":       {application.Mixing{Tea: &five, Tank: &two}, "tea"},
		"water fills tank":    {application.Mixing{Water: &two, Tank: &two}, "water"},
		"water undiluted":     {application.Mixing{Water: &two, Share: &all}, "water"},
		"three that disagree": {application.Mixing{Tea: &one, Water: &two, Tank: &five}, "tank"},
		"share that differs":  {application.Mixing{Tea: &one, Water: &two, Share: &half}, "ratio"},
	} {
		_, err := c.known.Amounts()
		if faults := fault.Of(err); len(faults) != 1 || faults[0].Field != c.field {
			t.Errorf("%s: %v, want a fault of %s", name, err, c.field)
		}
	}
}

// A thinner ratio holds less tea and needs more water.
func TestThinnerHoldsLess(t *testing.T) {
	tank, before := quantity.Litres(100), math.Inf(1)
	for _, water := range []float64{0, 1, 4, 10, 100} {
		mix := application.MixOf(tank, must(application.Ratio{Tea: 1, Water: water}.Share(application.Parts))(t))
		if mix.Tea.Litres() >= before {
			t.Errorf("1:%v holds %v", water, mix.Tea)
		}
		before = mix.Tea.Litres()
	}
}

func FuzzParseRatio(f *testing.F) {
	for _, seed := range []string{"1:8", "1/8", "1:0", "1,5:3", "½:4", "4:1", "1:1e9", "::"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		ratio, err := application.ParseRatio(text)
		if err != nil {
			return
		}
		share, err := ratio.Share(application.Parts)
		if err != nil || !(share > 0 && share <= 1) {
			t.Errorf("%q: share %v, %v", text, float64(share), err)
		}
	})
}

func must[T any](v T, err error) func(*testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.10g, want %.10g ± %g", what, got, want, tolerance)
	}
}
