package jobfile

import (
	"regexp"
	"strconv"

	"aerosteep/fault"
	"aerosteep/job/recipe"
	"aerosteep/wording"
)

// larder puts the [[ingredient]] tables on the shelf and reads the [[recipe]]
// tables from it; the recipe room judges them, this room says on which line.
func (c *checker) larder() (recipe.Shelf, []recipe.Recipe) {
	shelf := recipe.Library()
	for _, r := range c.records["ingredient"] {
		next, faults := shelf.With(ingredientTable(r))
		c.take(r, faults)
		if len(faults) == 0 {
			shelf = next
		}
	}
	recipes := []recipe.Recipe{}
	for _, r := range c.records["recipe"] {
		if len(itemsOf(r)) == 0 {
			continue // said already
		}
		read, faults := recipe.FromTable(recipeTable(r), shelf)
		c.take(r, faults)
		recipes = append(recipes, read)
	}
	return shelf, recipes
}

func ingredientTable(r *record) recipe.IngredientTable {
	return recipe.IngredientTable{
		Name:                     r.name(),
		BulkDensity:              optional[string](r, "bulk_density"),
		SugarsPercent:            optional[float64](r, "sugars_percent"),
		OtherCarbohydratePercent: optional[float64](r, "other_carbohydrate_percent"),
		ProteinPercent:           optional[float64](r, "protein_percent"),
		FatPercent:               optional[float64](r, "fat_percent"),
		NPercent:                 optional[float64](r, "n_percent"),
		P2O5Percent:              optional[float64](r, "p2o5_percent"),
		K2OPercent:               optional[float64](r, "k2o_percent"),
		Origin:                   optional[string](r, "origin"),
		Price:                    optional[string](r, "price"),
		Stock:                    optional[string](r, "stock"),
		ReorderAt:                optional[string](r, "reorder_at"),
	}
}

func itemsOf(r *record) []*record { return or(r, "items", []*record(nil)) }

func recipeTable(r *record) recipe.RecipeTable {
	t := recipe.RecipeTable{
		Name:      r.name(),
		ForVolume: optional[string](r, "for_volume"),
		Hours:     optional[float64](r, "hours"),
		Lean:      optional[string](r, "lean"),
		Note:      optional[string](r, "note"),
		Because:   optional[string](r, "because"),
	}
	for _, item := range itemsOf(r) {
		t.Items = append(t.Items, recipe.ItemTable{
			Ingredient:  or(item, "ingredient", ""),
			Amount:      or(item, "amount", ""),
			When:        optional[string](item, "when"),
			BulkDensity: optional[string](item, "bulk_density"),
		})
	}
	return t
}

var inItem = regexp.MustCompile(`^items\[(\d+)\]\.(.+)$`)

// take adopts what the recipe room says is wrong: with the line, unless the
// same key has been refused already for what it looks like.
func (c *checker) take(r *record, faults fault.List) {
	for _, f := range faults {
		at, key, path := r, f.Field, r.form.name
		if m := inItem.FindStringSubmatch(f.Field); m != nil {
			n, _ := strconv.Atoi(m[1]) // digits, by the pattern
			at, key, path = itemsOf(r)[n], m[2], r.form.name+".items"
		}
		if v := at.table.get(key); v == nil && r.form.must(key) || v != nil && at.values[key] == nil {
			continue
		}
		said := *f
		said.Field, said.Line = path+"."+key, at.lineOf(key)
		if v := at.table.get(key); v != nil {
			said.Given = v.given()
		}
		if said.Allowed.IsZero() {
			said.Allowed = wording.Say("jobfile.kind.text")
		}
		c.note(&said)
	}
}

// must tells whether a key of the form, or of its items, has to be there.
func (f *form) must(name string) bool {
	if k, known := f.find(name); known {
		return k.must
	}
	k, known := itemForm.find(name)
	return known && k.must
}
