package recipe

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"

	larder "aerosteep/job/recipe"
)

var food = worksheet.Sheet{
	Name:  "food",
	Group: worksheet.Recipe,
	Inputs: []worksheet.Input{
		{Flag: "food", Kind: worksheet.Text},
		{Flag: "label", Kind: worksheet.Text},
		{Flag: "formula", Kind: worksheet.Text},
		{Flag: "amount", Kind: worksheet.Text},
		{Flag: "percent", Kind: worksheet.Bare, Low: "0", Over: true, High: "20"},
		{Flag: "volume", Kind: worksheet.Volume, Low: leastWater, High: mostWater},
		{Flag: "bulk-density", Kind: worksheet.Density, Low: "0.05 g/mL", High: "5 g/mL"},
	},
	Example: `--food molasses --percent 0.2 --volume "5 gal"`,
	Sources: []source.Source{source.VanLierCOD, source.FoodDataCentral, source.Duffy2004, source.Palmer2010, source.Ingram2007},
	Shape:   foodData{},
	Run:     runFood,
}

type foodData struct {
	Name   *string  `json:"name"`
	Demand float64  `json:"thod_g_per_g"`
	Ready  *float64 `json:"ready_g_per_g"`
	Bulk   *float64 `json:"bulk_density_g_per_ml"`
	Mass   *float64 `json:"mass_g"`
	Volume *float64 `json:"volume_ml"`
	Household
	PercentWV *float64 `json:"percent_w_v"`
	PercentVV *float64 `json:"percent_v_v"`
	COD       *float64 `json:"cod_g"`
	CODIn     *float64 `json:"cod_mg_per_l"`
	ReadyIn   *float64 `json:"ready_cod_mg_per_l"`
	N         *float64 `json:"n_mg_per_l"`
	Regrowth  *string  `json:"regrowth"`
}

func runFood(f *worksheet.Form) (*worksheet.Result, error) {
	asked, name, err := readFood(f)
	if err != nil {
		return nil, err
	}
	data := foodData{Name: name, Demand: asked.Demand, Ready: asked.ReadyDemand, Bulk: over0(asked.Ingredient.Bulk)}
	r := &worksheet.Result{Basis: worksheet.Measured, Sources: append([]source.Source{source.VanLierCOD}, asked.Ingredient.Sources...)}
	r.Answer = wording.Say("recipe.food.demand", wording.Places{"name": called(name), "demand": asked.Demand})
	if asked.Listed {
		r.Caution("recipe.caution.spread")
	}
	amount, dosed, err := readDose(f)
	if err != nil {
		return nil, err
	}
	if dosed {
		dose, err := asked.Dose(amount, f.Volume("volume"))
		if err != nil {
			return nil, atFlag(err, "bulk-density")
		}
		data.take(dose, f.Units)
		r.Answer = foodAnswer(name, dose, data)
		r.Sources = append(r.Sources, source.Duffy2004, source.Palmer2010)
		cautionRegrowth(r, dose.Regrowth)
		cautionMolasses(r, asked.Ingredient.Name, dose.PercentWV)
	}
	r.Data = data
	return r, nil
}

// atFlag names the flag instead of the key of a file.
func atFlag(err error, flag string) error {
	for _, wrong := range fault.Of(err) {
		wrong.Field = flag
	}
	return err
}

func called(name *string) any {
	if name == nil {
		return wording.Say("recipe.food.it")
	}
	return *name
}

// readFood takes the food from the library, a label or a formula.
func readFood(f *worksheet.Form) (larder.Food, *string, error) {
	way, err := f.OneOf("food", "label", "formula")
	if err != nil {
		return larder.Food{}, nil, err
	}
	var asked larder.Food
	var name *string
	switch way {
	case "food":
		var i larder.Ingredient
		i, err = larder.Library().Find(f.Text("food"))
		asked, name = larder.ListedFood(i), &i.Name
	case "label":
		var c larder.Composition
		c, err = larder.ParseLabel(f.Text("label"))
		asked = larder.LabelFood(c)
	default:
		var formula larder.Formula
		if formula, err = larder.ParseFormula(f.Text("formula")); err == nil {
			asked, err = larder.FormulaFood(formula)
		}
		name = worksheet.Some(f.Text("formula"))
	}
	if f.Has("bulk-density") {
		asked.Ingredient.Bulk = f.Density("bulk-density")
	}
	if err != nil {
		return asked, nil, atFlag(err, way)
	}
	return asked, name, nil
}

// readDose takes the amount, or the percent, that goes into the water.
func readDose(f *worksheet.Form) (larder.Amount, bool, error) {
	given := f.Given("amount", "percent")
	switch {
	case len(given) == 2:
		return larder.Amount{}, false, f.Refuse("percent", "worksheet.one-only", wording.Places{"flags": "--amount, --percent"})
	case len(given) == 1 && !f.Has("volume"):
		return larder.Amount{}, false, f.Refuse("volume", "worksheet.together", wording.Places{"missing": "--volume", "given": "--" + given[0]})
	case len(given) == 0 && f.Has("volume"):
		return larder.Amount{}, false, f.Refuse("amount", "recipe.food.no-amount")
	case len(given) == 0:
		return larder.Amount{}, false, nil
	case given[0] == "percent":
		return larder.PerPercent(f.Number("percent")), true, nil
	}
	amount, err := larder.ParseFoodAmount(f.Text("amount"))
	return amount, true, err
}

func (d *foodData) take(dose larder.Dose, units wording.Units) {
	d.Mass, d.Volume = worksheet.Some(dose.Mass.Grams()), millilitres(dose.Volume)
	d.Household = household(dose.Volume, units)
	d.PercentWV, d.PercentVV = &dose.PercentWV, dose.PercentVV
	d.COD, d.CODIn = worksheet.Some(dose.Demand.Grams()), worksheet.Some(dose.DemandIn.MilligramsPerLitre())
	d.ReadyIn, d.N = perLitre(dose.ReadyIn), perLitre(dose.NitrogenIn)
	d.Regrowth = worksheet.Some(string(dose.Regrowth))
}

func foodAnswer(name *string, dose larder.Dose, data foodData) wording.Text {
	places := wording.Places{"name": called(name), "mass": dose.Mass, "percent": dose.PercentWV, "demand": dose.DemandIn, "household": ""}
	if data.Household.Household != nil {
		places["household"] = *data.Household.Household
		return wording.Say("recipe.food.answer", places)
	}
	return wording.Say("recipe.food.answer.weighed", places)
}

// cautionMolasses says what a dose above the ceiling costs: 0.2 % w/v until the
// user sets another.
func cautionMolasses(r *worksheet.Result, name string, percent float64) {
	if larder.IsMolasses(name) && larder.OverCeiling(quantity.Percent(percent)) {
		r.Caution("recipe.caution.ceiling", wording.Places{"percent": percent})
	}
}
