package recipe

import (
	"strings"

	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"

	larder "aerosteep/job/recipe"
)

var doseChart = worksheet.Sheet{
	Name:  "dose-chart",
	Group: worksheet.Recipe,
	Inputs: append(append([]worksheet.Input{}, recipeInputs...),
		worksheet.Input{Flag: "volumes", Kind: worksheet.Volume, List: true, Required: true, Low: leastWater, High: mostWater},
		worksheet.Input{Flag: "rate", Kind: worksheet.Dose, Low: "0 L/ha", Over: true},
		worksheet.Input{Flag: "pdf", Kind: worksheet.OutFile},
	),
	Example: `--recipe unfed --volumes "5 gal, 25 gal" --rate "20 gal/ac"`,
	Sources: []source.Source{source.CommonPractice, source.Duffy2004, source.Ingram2007},
	Shape:   Chart{},
	Run:     runDoseChart,
}

// Chart is the table for the shed wall.
type Chart struct {
	Recipe   string     `json:"recipe"`
	Regrowth string     `json:"regrowth"`
	Rows     []ChartRow `json:"rows"`
}

// ChartRow is one tank.
type ChartRow struct {
	Volume float64     `json:"volume_l"`
	Covers *float64    `json:"covers_m2"`
	Items  []ChartItem `json:"items"`
}

// ChartItem is what goes into that tank.
type ChartItem struct {
	Name   string   `json:"name"`
	When   string   `json:"when"`
	Mass   float64  `json:"mass_g"`
	Volume *float64 `json:"volume_ml"`
	Household
}

// mostRows is what one page on the wall holds.
const mostRows = 24

func runDoseChart(f *worksheet.Form) (*worksheet.Result, error) {
	volumes := f.Numbers("volumes")
	if len(volumes) > mostRows {
		return nil, f.Refuse("volumes", "recipe.chart.rows", wording.Places{"n": len(volumes)})
	}
	recipe, err := openRecipe(f)
	if err != nil {
		return nil, err
	}
	chart := Chart{Recipe: recipe.Name}
	r := &worksheet.Result{Basis: worksheet.Measured, Sources: []source.Source{source.CommonPractice}}
	for i, v := range volumes {
		b, err := larder.Scale(recipe, quantity.Litres(v))
		if err != nil {
			return nil, err
		}
		chart.Regrowth = string(b.Regrowth)
		chart.Rows = append(chart.Rows, chartRow(b, f))
		r.Notes = append(r.Notes, wording.Say("recipe.chart.row", wording.Places{"volume": b.Volume, "portions": portions(b.Items)}))
		if i == len(volumes)-1 {
			r.Sources = batchSources(b)
			cautionBatch(r, b)
		}
	}
	r.Answer = wording.Say("recipe.chart.answer", wording.Places{"recipe": recipe.Name, "n": len(volumes)})
	r.Data = chart
	return r, nil
}

func chartRow(b larder.Batch, f *worksheet.Form) ChartRow {
	row := ChartRow{Volume: b.Volume.Litres()}
	if f.Has("rate") {
		row.Covers = worksheet.Some(b.Volume.Litres() / f.Dose("rate").LitresPerSquareMetre())
	}
	for _, w := range b.Items {
		row.Items = append(row.Items, ChartItem{
			Name: w.Item.Ingredient.Name, When: w.Item.When.String(), Mass: w.Mass.Grams(),
			Volume: millilitres(w.Volume), Household: household(w.Volume, f.Units),
		})
	}
	return row
}

// portions says the items of a tank one after the other: by measure and by
// mass, for whoever has a scale.
type portions []larder.Weighed

// Speak names each item as the reader measures it.
func (p portions) Speak(r wording.Reader) string {
	items := make([]string, len(p))
	for i, w := range p {
		items[i] = w.Item.Ingredient.Name + " " + w.Mass.Speak(r)
		if h := household(w.Volume, r.Units); h.Household != nil {
			items[i] = w.Item.Ingredient.Name + " " + *h.Household + " (" + w.Mass.Speak(r) + ")"
		}
	}
	return strings.Join(items, ", ")
}
