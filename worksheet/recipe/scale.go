package recipe

import (
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"

	larder "aerosteep/job/recipe"
)

var scale = worksheet.Sheet{
	Name:    "scale",
	Group:   worksheet.Recipe,
	Inputs:  append(append([]worksheet.Input{}, recipeInputs...), worksheet.Input{Flag: "volume", Kind: worksheet.Volume, Required: true, Low: leastWater, High: mostWater}),
	Example: `--recipe bacterial --volume "5 gal"`,
	Sources: []source.Source{source.VanLierCOD, source.FoodDataCentral, source.TypicalLabels, source.CommonPractice, source.Duffy2004, source.Ingram2007},
	Shape:   scaleData{},
	Run:     runScale,
}

type scaleData struct {
	Recipe   string      `json:"recipe"`
	Volume   float64     `json:"volume_l"`
	Hours    *float64    `json:"hours"`
	Items    []scaleItem `json:"items"`
	Compost  float64     `json:"compost_g_per_l"`
	COD      float64     `json:"cod_mg_per_l"`
	ReadyCOD float64     `json:"ready_cod_mg_per_l"`
	N        float64     `json:"n_mg_per_l"`
	Regrowth string      `json:"regrowth"`
	Cost     *float64    `json:"cost"`
	Currency *string     `json:"currency"`
}

type scaleItem struct {
	Name     string   `json:"name"`
	When     string   `json:"when"`
	Mass     float64  `json:"mass_g"`
	Volume   *float64 `json:"volume_ml"`
	Bulk     *float64 `json:"bulk_density_g_per_ml"`
	BulkFrom *string  `json:"bulk_density_from"`
	Household
	PercentWV float64  `json:"percent_w_v"`
	COD       float64  `json:"cod_g"`
	N         float64  `json:"n_g"`
	P2O5      float64  `json:"p2o5_g"`
	K2O       float64  `json:"k2o_g"`
	Cost      *float64 `json:"cost"`
}

func runScale(f *worksheet.Form) (*worksheet.Result, error) {
	recipe, err := openRecipe(f)
	if err != nil {
		return nil, err
	}
	b, err := larder.Scale(recipe, f.Volume("volume"))
	if err != nil {
		return nil, err
	}
	data := scaleData{
		Recipe: recipe.Name, Volume: b.Volume.Litres(), Hours: recipe.Hours, Items: []scaleItem{}, Compost: b.CompostPerL,
		COD: b.Demand.MilligramsPerLitre(), ReadyCOD: b.ReadyDemand.MilligramsPerLitre(), N: b.Nitrogen.MilligramsPerLitre(),
		Regrowth: string(b.Regrowth), Cost: b.Cost,
	}
	if b.Cost != nil {
		data.Currency = &b.Currency
	}
	for _, w := range b.Items {
		data.Items = append(data.Items, scaleRow(w, f.Units))
	}
	r := &worksheet.Result{
		Answer: wording.Say("recipe.scale.answer", wording.Places{"recipe": recipe.Name, "volume": b.Volume, "demand": b.Demand}),
		Data:   data, Basis: worksheet.Measured, Sources: batchSources(b),
	}
	cautionBatch(r, b)
	return r, nil
}

func scaleRow(w larder.Weighed, units wording.Units) scaleItem {
	row := scaleItem{
		Name: w.Item.Ingredient.Name, When: w.Item.When.String(), Mass: w.Mass.Grams(), Volume: millilitres(w.Volume), Bulk: over0(w.Bulk),
		Household: household(w.Volume, units), PercentWV: w.PercentWV(), COD: w.Demand.Grams(), N: w.Nitrogen.Grams(),
		P2O5: w.Phosphate.Grams(), K2O: w.Potash.Grams(), Cost: w.Cost,
	}
	if row.Bulk != nil {
		row.BulkFrom = worksheet.Some(string(w.BulkFrom))
	}
	return row
}

// batchSources are the sources of the ingredients that went in, each once.
func batchSources(b larder.Batch) []source.Source {
	sources := []source.Source{source.VanLierCOD, source.Duffy2004, source.Palmer2010, source.Ingram2007}
	seen := map[string]bool{}
	for _, w := range b.Items {
		for _, s := range w.Item.Ingredient.Sources {
			if !seen[s.Key] {
				sources, seen[s.Key] = append(sources, s), true
			}
		}
	}
	return sources
}

func cautionBatch(r *worksheet.Result, b larder.Batch) {
	if b.LargerThanTwo {
		r.Caution("recipe.caution.air", wording.Places{"for": b.Recipe.ForVolume, "volume": b.Volume})
	}
	r.Caution("recipe.caution.spread")
	cautionRegrowth(r, b.Regrowth)
	for _, w := range b.Items {
		cautionMolasses(r, w.Item.Ingredient.Name, w.PercentWV())
	}
	if coarse := coarseNames(b); len(coarse) > 0 {
		r.Caution("recipe.caution.coarse", wording.Places{"names": coarse})
	}
	if b.Cost != nil && len(b.Unpriced) > 0 {
		r.Caution("recipe.caution.unpriced", wording.Places{"names": b.Unpriced})
	}
}

// coarseNames are the items that are better weighed.
func coarseNames(b larder.Batch) []string {
	var names []string
	for _, w := range b.Items {
		if w.Volume != nil && larder.Household(*w.Volume, wording.US).Coarse {
			names = append(names, w.Item.Ingredient.Name)
		}
	}
	return names
}
