package recipe_test

import (
	"math"
	"strings"
	"testing"

	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/wording"
)

func scaled(t *testing.T, name string, volume quantity.Volume) recipe.Batch {
	t.Helper()
	r, known := recipe.Starter(name)
	if !known {
		t.Fatalf("no starter %q", name)
	}
	b, err := recipe.Scale(r, volume)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The bacterial starter in a 5 gal pail, worked by hand from the composition
// tables (120 mL of molasses at 1.41 g/mL in 100 L is 1.692 g/L …).
func TestScaleBacterialToAPail(t *testing.T) {
	b := scaled(t, "bacterial", quantity.USGallons(5))
	for i, want := range []float64{567.81177, 32.024584, 10.693788, 10.409882} {
		near(t, b.Items[i].Item.Ingredient.Name, b.Items[i].Mass.Grams(), want, 1e-7)
	}
	near(t, "molasses % w/v", b.Items[1].PercentWV(), 0.1692, 1e-12)
	near(t, "demand", b.Demand.MilligramsPerLitre(), 1466.518, 1e-6)
	near(t, "ready demand", b.ReadyDemand.MilligramsPerLitre(), 918.1227, 1e-7)
	near(t, "compost", b.CompostPerL, 30, 1e-12)
	if b.Regrowth != recipe.Untested {
		t.Errorf("regrowth %s", b.Regrowth)
	}
	if b.Cost != nil {
		t.Errorf("a cost of %v without a price", *b.Cost)
	}
}

// 5 -> 1,000 -> 5 gal comes back, household spoons and all, within 0.5 %.
func TestScaleRoundTrip(t *testing.T) {
	for _, r := range recipe.Starters() {
		small := scaled(t, r.Name, quantity.USGallons(5))
		large := scaled(t, r.Name, quantity.USGallons(1000))
		back := r
		back.ForVolume = quantity.USGallons(1000)
		back.Items = nil
		for _, w := range large.Items {
			item := w.Item
			item.Amount = recipe.Amount{Mass: w.Mass}
			back.Items = append(back.Items, item)
		}
		again, err := recipe.Scale(back, quantity.USGallons(5))
		if err != nil {
			t.Fatal(err)
		}
		for i := range small.Items {
			near(t, r.Name+" "+small.Items[i].Item.Ingredient.Name, again.Items[i].Mass.Grams(), small.Items[i].Mass.Grams(), 0.005)
		}
	}
}

func TestUnfedTwinsHoldNothingButCompost(t *testing.T) {
	for _, name := range []string{"bacterial", "balanced", "fungal"} {
		fed, twin := scaled(t, name, 100), scaled(t, name+"-unfed", 100)
		if twin.Regrowth != recipe.NoneSeen || twin.Recipe.Fed() {
			t.Errorf("%s: the twin is fed", name)
		}
		near(t, name, twin.CompostPerL, fed.CompostPerL, 1e-12)
	}
	r, _ := recipe.Starter("balanced")
	if got := r.Without("Molasses"); len(got.Items) != len(r.Items)-1 {
		t.Errorf("without molasses %d items are left of %d", len(got.Items), len(r.Items))
	}
}

// Doses of Duffy et al. 2004 (molasses) and Palmer et al. 2010 (fish, seaweed).
func TestRegrowthAtTheTestedDoses(t *testing.T) {
	for _, c := range []struct {
		name    string
		percent float64
		want    recipe.Regrowth
	}{
		{"molasses", 0.2, recipe.NoneSeen}, {"molasses", 0.2001, recipe.Untested}, {"molasses", 1, recipe.Seen},
		{"kitchen molasses", 0.2, recipe.NoneSeen}, {"fish hydrolysate", 0.79, recipe.Untested}, {"fish hydrolysate", 0.8, recipe.Seen},
		{"liquid seaweed", 0.49, recipe.Untested}, {"liquid seaweed", 0.5, recipe.NoneSeen}, {"liquid seaweed", 2, recipe.NoneSeen},
		{"liquid seaweed", 2.1, recipe.Untested}, {"kelp meal", 0.01, recipe.Untested},
	} {
		if got := recipe.DoseRegrowth(c.name, c.percent); got != c.want {
			t.Errorf("%s %g %%: %s, want %s", c.name, c.percent, got, c.want)
		}
	}
}

func TestRegrowthOfMixtures(t *testing.T) {
	for want, items := range map[recipe.Regrowth][][2]string{
		recipe.Untested: {{"molasses", "0.01 % w/v"}, {"liquid seaweed", "0.5 % w/v"}},
		recipe.Seen:     {{"molasses", "0.6 % w/v"}, {"kitchen molasses", "0.5 % w/v"}},
		recipe.NoneSeen: {{"compost", "30 g/L"}, {"molasses", "0.1 % w/v"}, {"kitchen molasses", "0.1 % w/v"}},
	} {
		if got := table(t, items).Regrowth; got != want {
			t.Errorf("%v: %s, want %s", items, got, want)
		}
	}
}

func table(t *testing.T, items [][2]string) recipe.Batch {
	t.Helper()
	tab := recipe.RecipeTable{Name: "mix"}
	for _, i := range items {
		tab.Items = append(tab.Items, recipe.ItemTable{Ingredient: i[0], Amount: i[1]})
	}
	r, faults := recipe.FromTable(tab, recipe.Library())
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	b, err := recipe.Scale(r, 20)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func ptr[T any](v T) *T { return &v }

func TestPricesAndOverrides(t *testing.T) {
	shelf, faults := recipe.Library().With(recipe.IngredientTable{Name: "Molasses", Price: ptr("18 USD / 5 kg"), BulkDensity: ptr("1.4 g/mL")})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	shelf, faults = shelf.With(recipe.IngredientTable{Name: "barley straw", SugarsPercent: ptr(2.0), Price: ptr("0.5 USD / L")})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	r, faults := recipe.FromTable(recipe.RecipeTable{Name: "x", ForVolume: ptr("100 L"), Items: []recipe.ItemTable{
		{Ingredient: "molasses", Amount: "100 mL"}, {Ingredient: "barley straw", Amount: "50 g"},
		{Ingredient: "compost", Amount: "1 cup", BulkDensity: ptr("0.55 g/mL")},
	}}, shelf)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	b, err := recipe.Scale(r, 250)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "cost", *b.Cost, 350*18./5000, 1e-12)
	if b.Currency != "USD" || strings.Join(b.Unpriced, ",") != "barley straw,compost" || !b.LargerThanTwo {
		t.Errorf("currency %s, unpriced %v, larger %v", b.Currency, b.Unpriced, b.LargerThanTwo)
	}
	if b.Items[0].BulkFrom != recipe.FromFile || b.Items[2].BulkFrom != recipe.FromRecipe || b.Items[1].Volume != nil {
		t.Errorf("bulk from %s, %s; straw's volume %v", b.Items[0].BulkFrom, b.Items[2].BulkFrom, b.Items[1].Volume)
	}
	near(t, "sugars kept from the library", b.Items[0].Item.Ingredient.Composition.Sugars.Percent(), 47, 1e-12)
}

func TestTablesRefuse(t *testing.T) {
	shelf, _ := recipe.Library().With(recipe.IngredientTable{Name: "straw", Price: ptr("1 EUR / kg")})
	shelf, _ = shelf.With(recipe.IngredientTable{Name: "molasses", Price: ptr("1 USD / kg")})
	one := func(i recipe.ItemTable) recipe.RecipeTable {
		return recipe.RecipeTable{Name: "x", ForVolume: ptr("5 gal"), Items: []recipe.ItemTable{i}}
	}
	for field, tab := range map[string]recipe.RecipeTable{
		"items":                 {Name: "x"},
		"name":                  {Items: []recipe.ItemTable{{Ingredient: "compost", Amount: "1 g/L"}}},
		"for_volume":            {Name: "x", Items: []recipe.ItemTable{{Ingredient: "compost", Amount: "1 lb"}}},
		"items[0].ingredient":   one(recipe.ItemTable{Ingredient: "kelp", Amount: "1 lb"}),
		"items[0].amount":       one(recipe.ItemTable{Ingredient: "molasses", Amount: "1 oz"}),
		"items[0].when":         one(recipe.ItemTable{Ingredient: "molasses", Amount: "1 g", When: ptr("noon")}),
		"items[0].bulk_density": one(recipe.ItemTable{Ingredient: "straw", Amount: "1 cup"}),
		"price":                 {Name: "x", Items: []recipe.ItemTable{{Ingredient: "straw", Amount: "1 g/L"}, {Ingredient: "molasses", Amount: "1 g/L"}}},
	} {
		_, faults := recipe.FromTable(tab, shelf)
		if len(faults) != 1 || faults[0].Field != field {
			t.Errorf("want one fault of %s, got %v", field, faults)
		}
	}
	for field, tab := range map[string]recipe.IngredientTable{
		"sugars_percent":  {Name: "x", SugarsPercent: ptr(60.0), FatPercent: ptr(41.0)},
		"protein_percent": {Name: "x", ProteinPercent: ptr(-1.0)},
		"bulk_density":    {Name: "x", BulkDensity: ptr("9 g/mL")},
		"origin":          {Name: "x", Origin: ptr("mineral")},
		"price":           {Name: "x", Price: ptr("18 / kg")},
		"stock":           {Name: "x", Stock: ptr("3 m")},
		"n_percent":       {Name: "x", NPercent: ptr(math.NaN())},
	} {
		_, faults := recipe.Library().With(tab)
		if len(faults) != 1 || faults[0].Field != field {
			t.Errorf("want one fault of %s, got %v", field, faults)
		}
	}
}

// Spoons and cups by NIST SP 811; the texts by hand.
func TestHousehold(t *testing.T) {
	for _, c := range []struct {
		mL   float64
		want string
		off  float64
	}{
		{26.846892, "1 tbsp 2 1/2 tsp", 0.977}, {957.524, "1 qt", -1.167}, {4787.62, "1 gal 1 qt", -1.167},
		{236.5882, "1 cup", 0}, {4.92892, "1 tsp", 0}, {3785.41178, "1 gal", 0},
	} {
		m := recipe.Household(quantity.Millilitres(c.mL), wording.US)
		if m.Text != c.want || math.Abs(*m.ErrorPercent-c.off) > 0.001 || m.Coarse {
			t.Errorf("%g mL: %q %+.3f %%, want %q %+.3f %%", c.mL, m.Text, *m.ErrorPercent, c.want, c.off)
		}
	}
	for mL, want := range map[float64]string{7.4: "7.5 mL", 1240: "1.25 L", 99.4: "99 mL", 996: "1 L", 0.26: "0.5 mL", 123: "120 mL"} {
		if m := recipe.Household(quantity.Millilitres(mL), wording.Metric); m.Text != want {
			t.Errorf("%g mL: %q, want %q", mL, m.Text, want)
		}
	}
	for units, mL := range map[wording.Units]float64{wording.US: 0.3, wording.Metric: 0.24} {
		if m := recipe.Household(quantity.Millilitres(mL), units); m.Text != "" || m.ErrorPercent != nil || !m.Coarse {
			t.Errorf("%g mL is measurable: %v", mL, m)
		}
	}
}

// From 1 1/4 tsp up a person is never more than 5 % off, uses at most three
// measures, and the text reads back as the same volume.
func TestHouseholdReadsBack(t *testing.T) {
	for mL := 6.2; mL < 60000; mL *= 1.0137 {
		m := recipe.Household(quantity.Millilitres(mL), wording.US)
		if m.Coarse || math.Abs(*m.ErrorPercent) > 5 {
			t.Errorf("%g mL: %q is %.2f %% off", mL, m.Text, *m.ErrorPercent)
		}
		v, err := quantity.ParseVolume(m.Text)
		if err != nil {
			t.Fatalf("%q: %v", m.Text, err)
		}
		near(t, m.Text, v.Millilitres(), mL*(1+*m.ErrorPercent/100), 1e-9)
		measures := strings.Count(m.Text, "gal") + strings.Count(m.Text, "qt") + strings.Count(m.Text, "cup") + strings.Count(m.Text, "tbsp") + strings.Count(m.Text, "tsp")
		if measures > 3 {
			t.Errorf("%q has %d measures", m.Text, measures)
		}
	}
}

func FuzzParseAmount(f *testing.F) {
	for _, s := range []string{"1 lb", "1/2 cup", "0.2 % w/v", "1 tbsp/gal", "oz", "%", "1 %%w/v", "½ cup"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		a, err := recipe.ParseAmount(s)
		if err == nil && !(a.Mass > 0 != (a.Volume > 0)) {
			t.Errorf("%q was read as %+v", s, a)
		}
		recipe.ParsePrice(s)
		recipe.ParseStock(s)
		recipe.ParseWhen(s)
		if formula, err := recipe.ParseFormula(s); err == nil {
			if d, err := formula.Demand(); err == nil && !(d >= 0 && !math.IsInf(d, 0)) {
				t.Errorf("%q has a demand of %v", s, d)
			}
		}
	})
}

func FuzzParseLabel(f *testing.F) {
	for _, s := range []string{"sugars 47 %, other-carbohydrate 9 %", "fat 0,2 %; protein 4 %", "sugars-", "-, 1 %", "sugars 1e9 %"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c, err := recipe.ParseLabel(s)
		if d := c.Demand(); err == nil && !(d >= 0 && d < 3) {
			t.Errorf("%q has a demand of %v", s, d)
		}
	})
}
