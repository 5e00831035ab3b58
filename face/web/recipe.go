package web

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/record/report"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// recipeView is one recipe for one tank.
type recipeView struct {
	Learned   *learnedLine
	Volume    field
	Faults    []mend
	Say       string
	Items     []weighedRow
	Lines     []worksheet.Line
	Feeds     []feedRow
	Skip      string
	Unfed     string
	UnfedLink string
	Stages    []stageRow
	Myths     []mythNote
	Basis     string
	Cautions  []string
	Sources   []source.Source
	Chart     worksheet.Grid
	PDF       string
	ChartFrom string
}

type weighedRow struct{ Name, When, Metric, US, Household, Percent, Demand string }

type feedRow struct{ When, Percent, Demand, Ready string }

type stageRow struct{ Stage, Items, Nitrogen, Phosphate, Potash string }

type mythNote struct {
	Note   string
	Source source.Source
}

// findRecipe finds one by its name, the holding's own first.
func (s *Site) findRecipe(name string) (recipe.Recipe, bool) {
	own, builtIn := s.recipesKnown()
	for _, r := range append(append([]recipe.Recipe{}, own...), builtIn...) {
		if recipe.Key(r.Name) == recipe.Key(name) {
			return r, true
		}
	}
	return recipe.Recipe{}, false
}

// recipe shows one.
func (s *Site) recipe(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "rig")
	found, known := s.findRecipe(r.PathValue("name"))
	if !known {
		s.nothingHere(w, r)
		return
	}
	p.Heading, p.Title = found.Name, p.Say("web.recipe.title", "name", found.Name)
	p.Back, p.BackTo = "/recipes", p.Say("web.recipes.title")
	view := &recipeView{}
	p.View = view
	volume, asked, err := s.brewVolume(p, r)
	view.Volume = volumeField(p, asked)
	var b recipe.Batch
	if err == nil {
		b, err = recipe.Scale(found, volume)
	}
	if err != nil {
		view.Faults = []mend{{"volume", faultText(p, scaleSheet(), faultsOf(err)[0])}}
		view.Volume.Error = view.Faults[0].Text
		s.show(w, http.StatusUnprocessableEntity, "recipe", p)
		return
	}
	view.weigh(p, b)
	view.feed(p, b)
	view.finish(p, volume)
	view.unfed(p, s, found)
	for _, m := range recipe.MythsIn(found.Name + " " + found.Note) {
		view.Myths = append(view.Myths, mythNote{m.Note().For(p.Reader), m.Source})
	}
	if s.Holding != nil {
		view.Learned = s.taughtOfRecipe(p, r, found.Name, s.now())
	}
	view.scaled(p, s, found.Name, volume)
	view.chart(p, s, found.Name, volume)
	s.show(w, http.StatusOK, "recipe", p)
}

func (v *recipeView) weigh(p *page, b recipe.Batch) {
	metric, us := wording.Reader{Language: p.Language, Units: wording.Metric}, wording.Reader{Language: p.Language, Units: wording.US}
	for _, w := range b.Items {
		row := weighedRow{
			Name: w.Item.Ingredient.Name, When: choiceWord(p, "when", w.Item.When.String()), Metric: w.Mass.Speak(metric), US: w.Mass.Speak(us),
			Percent: percentWV(p, w.PercentWV()), Demand: w.Demand.Speak(metric),
		}
		if w.Volume != nil {
			if m := recipe.Household(*w.Volume, p.Units); m.Text != "" {
				row.Household = m.Text
				if m.Coarse {
					row.Household += " (" + p.Say("web.recipe.weigh-it") + ")"
				}
			}
		}
		v.Items = append(v.Items, row)
	}
}

// feed parts the food into its feeds, with their sum, and names the one to
// leave out first.
func (v *recipeView) feed(p *page, b recipe.Batch) {
	feeds := b.Feeds()
	var sum recipe.Feed
	for _, f := range feeds {
		v.Feeds = append(v.Feeds, feedRow{choiceWord(p, "when", f.When.String()), percentWV(p, f.PercentWV), f.Demand.Speak(p.Reader), f.ReadyDemand.Speak(p.Reader)})
		sum.PercentWV += f.PercentWV
		sum.Demand += f.Demand
		sum.ReadyDemand += f.ReadyDemand
	}
	if len(feeds) > 1 {
		v.Feeds = append(v.Feeds, feedRow{p.Say("web.recipe.sum"), percentWV(p, sum.PercentWV), sum.Demand.Speak(p.Reader), sum.ReadyDemand.Speak(p.Reader)})
	}
	switch first, any := recipe.SkipFirst(feeds); {
	case any:
		v.Skip = p.Say("web.recipe.skip", "when", choiceWord(p, "when", first.When.String()), "demand", first.Demand)
	case len(feeds) > 0:
		v.Skip = p.Say("web.recipe.skip.none")
	}
}

// finish says what stirring something in for a stage of growth would add.
func (v *recipeView) finish(p *page, volume quantity.Volume) {
	for _, stage := range []recipe.Stage{recipe.Leaf, recipe.Bloom, recipe.Fruit} {
		items := recipe.Finishing(stage)
		adds, err := recipe.Adds(items, volume)
		if err != nil {
			continue // the built-in finishes are all per volume
		}
		var names []string
		for _, item := range items {
			names = append(names, item.Ingredient.Name+" "+item.Amount.Typed)
		}
		v.Stages = append(v.Stages, stageRow{
			p.Say("web.recipe.stage." + string(stage)), strings.Join(names, ", "),
			adds.Nitrogen.Speak(p.Reader), adds.Phosphate.Speak(p.Reader), adds.Potash.Speak(p.Reader),
		})
	}
}

func (v *recipeView) unfed(p *page, s *Site, found recipe.Recipe) {
	if !found.Fed() {
		return
	}
	twin := found.Unfed()
	var composts []string
	for _, item := range twin.Items {
		composts = append(composts, item.Ingredient.Name)
	}
	v.Unfed = p.Say("web.recipe.unfed", "composts", strings.Join(composts, ", "))
	if _, known := s.findRecipe(twin.Name); known {
		v.UnfedLink = "/recipes/" + url.PathEscape(twin.Name)
	}
}

// asked runs a worksheet that asks for a recipe, knowing the holding's.
func (s *Site) asked(p *page, name string, values worksheet.Values) (*worksheet.Result, error) {
	sheet, _ := catalog.Find(name)
	if s.Holding != nil {
		s.Holding.HandIn(sheet, values)
	}
	return ask(name, values, p)
}

// scaled is what the worksheet says of the whole batch.
func (v *recipeView) scaled(p *page, s *Site, name string, volume quantity.Volume) {
	result, err := s.asked(p, "scale", worksheet.Values{"recipe": {name}, "volume": {inLitres(volume)}})
	if err != nil {
		s.log("scale of a recipe", err)
		return
	}
	v.Say = result.Answer.For(p.Reader)
	v.Lines, _, _ = result.Figures(p.Reader)
	v.Cautions = worksheet.Sentences(result.Cautions, p.Reader)
	v.Sources = result.Sources
	v.Basis = p.Say("web.basis." + string(result.Basis))
}

func inLitres(v quantity.Volume) string { return strconv.FormatFloat(v.Litres(), 'f', -1, 64) + " L" }

// chartVolumes are the tanks of the dose chart: the holding's vessels, else a
// pail, a barrel and a tote as they are sold.
func (s *Site) chartVolumes(p *page) string {
	var tanks []string
	if file := s.held(); file != nil {
		seen := map[string]bool{}
		for _, vessel := range file.Vessels {
			if text := inLitres(vessel.Brew); !seen[text] && len(tanks) < 24 {
				seen[text] = true
				tanks = append(tanks, text)
			}
		}
	}
	switch {
	case len(tanks) > 0:
		return strings.Join(tanks, ", ")
	case p.Units == wording.US:
		return "5 gal, 50 gal, 275 gal"
	}
	return "20 L, 200 L, 1000 L"
}

// chart is the table for the shed wall, with the way to its paper.
func (v *recipeView) chart(p *page, s *Site, name string, volume quantity.Volume) {
	volumes := s.chartVolumes(p)
	v.PDF = "/recipes/" + url.PathEscape(name) + "/dose-chart.pdf"
	v.ChartFrom = "/worksheets/dose-chart?" + url.Values{"recipe": {name}, "volumes": {volumes}}.Encode()
	result, err := s.asked(p, "dose-chart", worksheet.Values{"recipe": {name}, "volumes": {volumes}})
	if err != nil {
		s.log("dose chart", err)
		return
	}
	v.Chart = worksheet.Grid{Label: p.Say("web.recipe.chart"), Heads: []string{p.Say("web.recipe.tank"), p.Say("web.recipe.portions")}}
	for _, note := range result.Notes {
		tank, portions, _ := strings.Cut(note.For(p.Reader), ": ")
		v.Chart.Rows = append(v.Chart.Rows, []string{tank, portions})
	}
}

// doseChart is the dose chart on paper.
func (s *Site) doseChart(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "rig")
	found, known := s.findRecipe(r.PathValue("name"))
	if !known {
		s.nothingHere(w, r)
		return
	}
	volumes := r.URL.Query().Get("volumes")
	if volumes == "" {
		volumes = s.chartVolumes(p)
	}
	result, err := s.asked(p, "dose-chart", worksheet.Values{"recipe": {found.Name}, "volumes": {volumes}})
	var paper []byte
	if err == nil {
		paper, err = report.DoseChart(result, p.Reader)
	}
	if err != nil {
		http.Error(w, s.reason(p, err), http.StatusUnprocessableEntity)
		return
	}
	w.Header().Set("Content-Type", "application/pdf")
	w.Header().Set("Content-Disposition", `inline; filename="dose-chart.pdf"`)
	_, _ = w.Write(paper)
}
