package web

import (
	"net/http"
	"net/url"

	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// recipesView compares all recipes for one volume of water, the one that asks
// least of the air first.
type recipesView struct {
	Volume field
	Rows   []recipeRow
	Faults []mend
	Priced bool
}

// recipeRow is one recipe side by side with the others.
type recipeRow struct {
	Name, Link, From, Food        string
	Demand, Ready, Compost        string
	Nitrogen, Phosphate, Potash   string
	Cost, Regrowth, RegrowthState string
}

// own are the holding's recipes and then those that are built in; one that
// bears a built-in name stands in its place.
func (s *Site) recipesKnown() (own, builtIn []recipe.Recipe) {
	taken := map[string]bool{}
	shelf := recipe.Library()
	if file := s.held(); file != nil {
		own, shelf = file.Recipes, file.Larder
	}
	for _, r := range own {
		taken[recipe.Key(r.Name)] = true
	}
	for _, r := range recipe.Starters() {
		if !taken[recipe.Key(r.Name)] {
			builtIn = append(builtIn, r.On(shelf))
		}
	}
	return own, builtIn
}

// recipes lists them.
func (s *Site) recipes(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "rig")
	p.Heading, p.Title = p.Say("web.recipes.title"), p.Say("web.recipes.title")
	p.Back, p.BackTo = "/rig", p.Say("web.place.rig")
	view := &recipesView{}
	p.View = view
	status := http.StatusOK
	volume, asked, err := s.brewVolume(p, r)
	view.Volume = volumeField(p, asked)
	if err != nil {
		status = http.StatusUnprocessableEntity
		view.Faults = []mend{{"volume", faultText(p, scaleSheet(), faultsOf(err)[0])}}
		view.Volume.Error = view.Faults[0].Text
		volume = quantity.Litres(100)
	}
	own, builtIn := s.recipesKnown()
	view.compare(p, volume, own, builtIn)
	s.show(w, status, "recipes", p)
}

func (v *recipesView) compare(p *page, volume quantity.Volume, own, builtIn []recipe.Recipe) {
	mine := map[string]bool{}
	var all []recipe.Recipe
	for _, r := range append(append([]recipe.Recipe{}, own...), builtIn...) {
		if _, err := recipe.Scale(r, volume); err != nil {
			v.Faults = append(v.Faults, mend{"volume", r.Name + ": " + faultsOf(err)[0].What.For(p.Reader)})
			continue
		}
		all = append(all, r)
	}
	for _, r := range own {
		mine[r.Name] = true
	}
	batches, err := recipe.Compare(volume, all...)
	if err != nil {
		return // each was weighed out above
	}
	for _, b := range batches {
		row := rowOf(p, b)
		row.From = p.Say("web.recipes.built-in")
		if mine[b.Recipe.Name] {
			row.From = p.Say("web.recipes.own")
		}
		v.Priced = v.Priced || row.Cost != ""
		v.Rows = append(v.Rows, row)
	}
}

func rowOf(p *page, b recipe.Batch) recipeRow {
	food := 0.0
	for _, f := range b.Feeds() {
		food += f.PercentWV
	}
	row := recipeRow{
		Name: b.Recipe.Name, Link: "/recipes/" + url.PathEscape(b.Recipe.Name), Food: percentWV(p, food),
		Demand: b.Demand.Speak(p.Reader), Ready: b.ReadyDemand.Speak(p.Reader), Compost: wording.Number(b.CompostPerL, 3, p.Reader) + "\u00a0g/L",
		Nitrogen: b.Nitrogen.Speak(p.Reader), Phosphate: b.Phosphate.Speak(p.Reader), Potash: b.Potash.Speak(p.Reader),
		Regrowth: worksheet.Value("regrowth", string(b.Regrowth), p.Reader),
	}
	if b.Cost != nil {
		row.Cost = wording.Fixed(*b.Cost, 2, p.Reader) + "\u00a0" + b.Currency
	}
	return row
}

func percentWV(p *page, percent float64) string {
	return wording.Number(percent, 3, p.Reader) + "\u00a0%\u00a0w/v"
}

func scaleSheet() *worksheet.Sheet {
	sheet, _ := scopeInput("scale", "volume")
	return sheet
}

// brewVolume is the water that was asked for, else what the holding's first
// vessel is filled with, else a tank of 100 L.
func (s *Site) brewVolume(p *page, r *http.Request) (quantity.Volume, string, error) {
	sheet, in := scopeInput("scale", "volume")
	asked := r.URL.Query().Get("volume")
	if asked == "" {
		volume := quantity.Litres(100)
		if file := s.held(); file != nil && len(file.Vessels) > 0 {
			volume = file.Vessels[0].Brew
		}
		return volume, volume.Speak(p.Reader), nil
	}
	text := withBoxUnit(in, asked, p)
	form, err := worksheet.Read(sheet, worksheet.Values{"recipe": {"unfed"}, "volume": {text}}, nil)
	if err != nil {
		return 0, asked, err
	}
	return form.Volume("volume"), text, nil
}

func volumeField(p *page, value string) field {
	sheet, in := scopeInput("scale", "volume")
	return field{Name: "volume", Label: in.Label(sheet.Name).For(p.Reader), Hint: in.Allowed().For(p.Reader), Value: value, Kind: "text"}
}
