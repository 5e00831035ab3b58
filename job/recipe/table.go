package recipe

import (
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// IngredientTable is an [[ingredient]] of a file as it was written; nil is a
// key that was left out.
type IngredientTable struct {
	Name                     string
	BulkDensity              *string
	SugarsPercent            *float64
	OtherCarbohydratePercent *float64
	ProteinPercent           *float64
	FatPercent               *float64
	NPercent                 *float64
	P2O5Percent              *float64
	K2OPercent               *float64
	Origin                   *string
	Price                    *string
	Stock                    *string
	ReorderAt                *string
}

// RecipeTable is a [[recipe]] of a file as it was written.
type RecipeTable struct {
	Name      string
	ForVolume *string
	Hours     *float64
	Lean      *string
	Note      *string
	Because   *string
	Items     []ItemTable
}

// ItemTable is one of its items.
type ItemTable struct {
	Ingredient  string
	Amount      string
	When        *string
	BulkDensity *string
}

// The densities of anything that is poured or scooped.
const (
	lightest quantity.Density = 0.05
	heaviest quantity.Density = 5
)

// ParseBulkDensity reads "0.55 g/mL" or "1000 lb/yd3", 0.05 to 5 g/mL.
func ParseBulkDensity(text string) (quantity.Density, error) {
	d, err := quantity.ParseDensity(text)
	if err != nil {
		f := err.(*fault.Fault)
		f.Field, f.Given, f.Allowed = "bulk_density", text, wording.Say("recipe.bulk.allowed")
		return 0, f
	}
	if d < lightest || d > heaviest {
		return 0, fault.New("bulk_density", text, wording.Say("recipe.bulk.range", wording.Places{"density": d}), wording.Say("recipe.bulk.allowed"), wording.Say("recipe.bulk.advice"))
	}
	return d, nil
}

// With puts an [[ingredient]] on the shelf: a known name has only the keys it
// gives replaced; a new name is a new food. A fault's field is the key.
func (s Shelf) With(t IngredientTable) (Shelf, fault.List) {
	var faults fault.List
	i := Ingredient{Name: strings.TrimSpace(t.Name), Origin: Plant}
	if i.Name == "" {
		faults = append(faults, fault.New("name", t.Name, wording.Say("recipe.name"), wording.Text{}, wording.Text{}))
	}
	if at := s.index(t.Name); at >= 0 {
		i = s.ingredients[at]
	}
	if t.BulkDensity != nil {
		i.Bulk, faults = keep(ParseBulkDensity, *t.BulkDensity, faults)
		i.BulkFrom, i.BulkRange = FromFile, [2]quantity.Density{}
	}
	if t.Origin != nil {
		i.Origin, faults = keep(parseOrigin, *t.Origin, faults)
	}
	if t.Price != nil {
		var p Price
		p, faults = keep(ParsePrice, *t.Price, faults)
		i.Price = &p
	}
	if t.Stock != nil {
		var stock Stock
		stock, faults = keep(ParseStock, *t.Stock, faults)
		i.Stock = &stock
	}
	if t.ReorderAt != nil {
		var stock Stock
		stock, faults = keep(ParseStock, *t.ReorderAt, faults)
		i.ReorderAt = &stock
	}
	faults = append(faults, t.compose(&i.Composition)...)
	if len(faults) > 0 {
		return s, faults
	}
	return s.put(i), nil
}

// keep reads one value and gathers its fault.
func keep[T any](read func(string) (T, error), text string, faults fault.List) (T, fault.List) {
	value, err := read(text)
	if err != nil {
		faults = append(faults, fault.Of(err)...)
	}
	return value, faults
}

// compose sets the percentages that the table gives.
func (t IngredientTable) compose(c *Composition) fault.List {
	var faults fault.List
	for _, part := range []struct {
		key   string
		value *float64
		into  *quantity.Share
	}{
		{"sugars_percent", t.SugarsPercent, &c.Sugars},
		{"other_carbohydrate_percent", t.OtherCarbohydratePercent, &c.OtherCarbohydrate},
		{"protein_percent", t.ProteinPercent, &c.Protein},
		{"fat_percent", t.FatPercent, &c.Fat},
		{"n_percent", t.NPercent, &c.Nitrogen},
		{"p2o5_percent", t.P2O5Percent, &c.Phosphate},
		{"k2o_percent", t.K2OPercent, &c.Potash},
	} {
		if part.value == nil {
			continue
		}
		if !(*part.value >= 0 && *part.value <= 100) {
			faults = append(faults, fault.New(part.key, number(*part.value), wording.Say("recipe.percent"), wording.Say("recipe.percent.allowed"), wording.Text{}))
		}
		*part.into = quantity.Percent(*part.value)
	}
	if sum := c.parts(); len(faults) == 0 && sum > 100*(1+1e-9) {
		faults = append(faults, fault.New("sugars_percent", number(sum), wording.Say("recipe.parts", wording.Places{"sum": sum}), wording.Say("recipe.parts.allowed"), wording.Text{}))
	}
	return faults
}

func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

func parseOrigin(text string) (Origin, error) {
	for _, o := range []Origin{Plant, Animal} {
		if string(o) == strings.ToLower(strings.TrimSpace(text)) {
			return o, nil
		}
	}
	return "", choiceFault("origin", text, Origins)
}

// ParseLean reads bacterial, balanced or fungal.
func ParseLean(text string) (Lean, error) {
	for _, l := range []Lean{Bacterial, Balanced, Fungal} {
		if string(l) == strings.ToLower(strings.TrimSpace(text)) {
			return l, nil
		}
	}
	return NoLean, choiceFault("lean", text, Leans)
}

func choiceFault(field, given string, allowed []string) *fault.Fault {
	f := fault.New(field, given, wording.Say("recipe.choice"), wording.Say("recipe.choice.allowed", wording.Places{"words": allowed}), wording.Text{})
	f.Nearest = fault.Nearest(given, allowed)
	return f
}

// FromTable reads a [[recipe]]. All that is wrong is reported at once; the
// field of a fault is its key, inside an item "items[2].amount" (from 0).
func FromTable(t RecipeTable, shelf Shelf) (Recipe, fault.List) {
	var faults fault.List
	r := Recipe{Name: strings.TrimSpace(t.Name), Hours: t.Hours}
	if r.Name == "" {
		faults = append(faults, fault.New("name", t.Name, wording.Say("recipe.name"), wording.Text{}, wording.Text{}))
	}
	if t.Because != nil {
		r.Because = *t.Because
	}
	if t.Note != nil {
		r.Note = *t.Note
	}
	if t.Lean != nil {
		r.Lean, faults = keep(ParseLean, *t.Lean, faults)
	}
	if t.ForVolume != nil {
		r.ForVolume, faults = keep(parseForVolume, *t.ForVolume, faults)
	}
	if h := t.Hours; h != nil && !(*h > 0 && *h <= longestBrew) {
		faults = append(faults, fault.New("hours", number(*h), wording.Say("recipe.hours"), wording.Say("recipe.hours.allowed"), wording.Text{}))
	}
	if len(t.Items) == 0 {
		faults = append(faults, fault.New("items", "", wording.Say("recipe.items"), wording.Say("recipe.items.allowed"), wording.Text{}))
	}
	for n, line := range t.Items {
		item, wrong := line.read(shelf)
		for _, f := range wrong {
			f.Field = "items[" + strconv.Itoa(n) + "]." + f.Field
		}
		faults = append(faults, wrong...)
		r.Items = append(r.Items, item)
	}
	if len(faults) == 0 {
		faults = append(faults, r.check(t.ForVolume != nil)...)
	}
	return r, faults
}

func parseForVolume(text string) (quantity.Volume, error) {
	v, err := quantity.ParseVolume(text)
	if err == nil && v > 0 {
		return v, nil
	}
	if err == nil {
		return 0, fault.New("for_volume", text, wording.Say("recipe.for-volume.zero"), wording.Say("recipe.for-volume.allowed"), wording.Text{})
	}
	f := err.(*fault.Fault)
	f.Field, f.Given = "for_volume", text
	return 0, f
}

func (t ItemTable) read(shelf Shelf) (Item, fault.List) {
	var faults fault.List
	var item Item
	item.Ingredient, faults = keep(shelf.Find, t.Ingredient, faults)
	item.Amount, faults = keep(ParseAmount, t.Amount, faults)
	if t.When != nil {
		item.When, faults = keep(ParseWhen, *t.When, faults)
	}
	if t.BulkDensity != nil {
		item.Bulk, faults = keep(ParseBulkDensity, *t.BulkDensity, faults)
	}
	if bulk, _ := item.bulk(); len(faults) == 0 && item.Amount.Volume > 0 && bulk == 0 {
		faults = append(faults, noBulk(item.Ingredient.Name, t.Amount))
	}
	return item, faults
}

// noBulk refuses a cup of something whose density nobody knows.
func noBulk(name, amount string) *fault.Fault {
	return fault.New("bulk_density", amount, wording.Say("recipe.no-bulk", wording.Places{"name": name}), wording.Say("recipe.bulk.allowed"), wording.Say("recipe.no-bulk.advice"))
}

// check holds what concerns more than one key.
func (r Recipe) check(forVolume bool) fault.List {
	var faults fault.List
	for _, item := range r.Items {
		if !item.Amount.PerLitre && !forVolume {
			faults = append(faults, fault.New("for_volume", "", wording.Say("recipe.for-volume", wording.Places{"name": item.Ingredient.Name, "amount": item.Amount.Typed}), wording.Say("recipe.for-volume.allowed"), wording.Text{}))
			break
		}
	}
	if _, _, err := currency(r.Items); err != nil {
		faults = append(faults, err)
	}
	return faults
}
