package recipe_test

import (
	"testing"

	"aerosteep/job/recipe"
)

func fed(t *testing.T) recipe.Batch {
	t.Helper()
	r, faults := recipe.FromTable(recipe.RecipeTable{Name: "split", Items: []recipe.ItemTable{
		{Ingredient: "compost", Amount: "30 g/L"},
		{Ingredient: "kelp meal", Amount: "0.1 % w/v", When: ptr("finish")},
		{Ingredient: "molasses", Amount: "0.05 % w/v", When: ptr("6 h")},
		{Ingredient: "molasses", Amount: "0.05 % w/v"},
		{Ingredient: "fish hydrolysate", Amount: "0.05 % w/v"},
	}}, recipe.Library())
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	b, err := recipe.Scale(r, 100)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The feeds come in order of time and add up to the batch without its compost.
func TestFeedsAddUp(t *testing.T) {
	b := fed(t)
	feeds := b.Feeds()
	if len(feeds) != 3 || feeds[0].When.String() != "start" || feeds[1].When.String() != "6 h" || feeds[2].When.String() != "finish" {
		t.Fatalf("%+v", feeds)
	}
	sum := 0.0
	for _, f := range feeds {
		sum += f.Demand.MilligramsPerLitre()
	}
	compost := b.Items[0].Demand.Milligrams() / 100
	near(t, "demand of all feeds", sum, b.Demand.MilligramsPerLitre()-compost, 1e-12)
	// 0.5 g/L of molasses at 0.670429 g O2/g, and as much fish at 0.369678.
	near(t, "first feed", feeds[0].Demand.MilligramsPerLitre(), 500*(0.670429023+0.369678304), 1e-8)
	if skip, found := recipe.SkipFirst(feeds); !found || skip.When.String() != "6 h" {
		t.Errorf("skip %v first", skip.When)
	}
	if _, found := recipe.SkipFirst(feeds[:1]); found {
		t.Error("the only feed was to be skipped")
	}
}

func TestCompareOrdersByDemand(t *testing.T) {
	var recipes []recipe.Recipe
	for _, name := range []string{"bacterial", "fungal", "unfed"} {
		r, _ := recipe.Starter(name)
		recipes = append(recipes, r)
	}
	batches, err := recipe.Compare(20, recipes...)
	if err != nil || batches[0].Recipe.Name != "unfed" {
		t.Fatalf("%v, %v", batches, err)
	}
	for i := 1; i < len(batches); i++ {
		if batches[i].Demand < batches[i-1].Demand {
			t.Errorf("%s before %s", batches[i-1].Recipe.Name, batches[i].Recipe.Name)
		}
	}
}

// 0.5 mL/L of fish hydrolysate (1.13 g/mL, 2.2-4-0.5 by its table) is 12.43 ppm
// N; a liquid seaweed of 3 % K2O at 1 mL/L is 33 ppm.
func TestFinishingInPPM(t *testing.T) {
	leaf, err := recipe.Adds(recipe.Finishing(recipe.Leaf), 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "N", leaf.Nitrogen.MilligramsPerLitre(), 12.43, 1e-9)
	bloom, err := recipe.Adds(recipe.Finishing(recipe.Bloom), 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "K2O", bloom.Potash.MilligramsPerLitre(), 33, 1e-9)
	if bloom.Phosphate <= leaf.Phosphate || len(recipe.Finishing("dormant")) != 0 {
		t.Errorf("bloom %v, leaf %v", bloom, leaf)
	}
	for _, item := range recipe.Finishing(recipe.Fruit) {
		if item.When.String() != "finish" {
			t.Errorf("%s goes in at the %s", item.Ingredient.Name, item.When)
		}
	}
}
