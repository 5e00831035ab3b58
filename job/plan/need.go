package plan

import (
	"strconv"

	"aerosteep/job/ground"
	"aerosteep/job/jobfile"
	"aerosteep/job/recipe"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// want is a wish with all that it refers to.
type want struct {
	jobfile.Want
	bed        jobfile.Bed
	site       ground.Site
	hasSite    bool
	tea        quantity.Volume // lands on the bed
	mix        quantity.Volume
	recipe     recipe.Recipe
	whyRecipe  string
	applicator *rig.Applicator // nil: the file has none
	outing     *outing
	whole      quantity.Volume // tea of the want, of which this may be a part
	split      bool            // its parts stand among the pieces
	unmet      bool
}

// readWants works out what each want needs, and what it will be put on with.
func (p *planner) readWants() {
	for _, given := range p.File.Wants {
		w := &want{Want: given}
		w.bed, _ = p.File.Bed(given.Bed) // the file has been checked
		w.site, w.hasSite = p.File.Site(w.bed.Site)
		w.size()
		w.recipe, w.whyRecipe = p.chooseRecipe(w)
		p.wants = append(p.wants, w)
		p.pieces = append(p.pieces, w)
		p.plan.Needs = append(p.plan.Needs, Need{
			Want: w.Index, Bed: w.Bed, Method: w.Method, TeaL: w.tea.Litres(), MixL: w.mix.Litres(),
			Dilution: dilutionWord(w.Dilution), PercentTea: w.Share().Percent(), Why: p.whyNeed(w),
		})
		p.chooseApplicator(w)
	}
}

// size is how much tea lands on the bed: area x rate, or as given.
func (w *want) size() {
	w.tea, _ = w.TeaOn(w.bed) // the file has been checked
	w.mix, w.whole = w.tea*quantity.Volume(1+w.Dilution), w.tea
}

func dilutionWord(water float64) string { return "1:" + strconv.FormatFloat(water, 'g', 6, 64) }

func (p *planner) whyNeed(w *want) string {
	places := wording.Places{"tea": w.tea, "mix": w.mix}
	switch {
	case w.Tea != nil:
		return p.say("plan.need.tea", places)
	case w.Each != nil || w.Cans != nil:
		if mix, tea, known := w.PerArea(w.bed); known {
			places["mix-rate"], places["tea-rate"] = mix, tea
			return p.say("plan.need.said.area", places)
		}
		return p.say("plan.need.said", places)
	case w.TeaRate != nil:
		places["area"], places["rate"] = *w.bed.Area, *w.TeaRate
		return p.say("plan.need.tea-rate", places)
	}
	places["area"], places["rate"] = *w.bed.Area, *w.MixRate
	return p.say("plan.need.mix-rate", places)
}

// mostLoads of one applicator for one bed: more is a slip of a unit, not a job.
const mostLoads = 1000

// chooseApplicator takes the one that is named, or the first whose kind fits,
// and refuses one that would have to be filled without end.
func (p *planner) chooseApplicator(w *want) {
	p.findApplicator(w)
	if a := w.applicator; a != nil && a.Tank != nil && w.mix > mostLoads**a.Tank {
		p.unmet(w, ByApplicator, wording.Say("plan.unmet.too-many-loads", wording.Places{"applicator": a.Name, "tank": *a.Tank, "mix": w.mix}), wording.Say("plan.nearest.applicator"))
	}
}

func (p *planner) findApplicator(w *want) {
	fits := func(a rig.Applicator) bool { return w.Method != "foliar" || a.Kind.Sprays() }
	if w.Applicator != "" {
		a, _ := p.File.Applicator(w.Applicator)
		w.applicator = &a
		if !fits(a) {
			p.unmet(w, ByApplicator, wording.Say("plan.unmet.applicator", wording.Places{"applicator": a.Name}), wording.Say("plan.nearest.applicator"))
		}
		return
	}
	for i := range p.File.Applicators {
		if fits(p.File.Applicators[i]) {
			w.applicator = &p.File.Applicators[i]
			return
		}
	}
	if len(p.File.Applicators) > 0 {
		p.unmet(w, ByApplicator, wording.Say("plan.unmet.no-applicator"), wording.Say("plan.nearest.applicator"))
		return
	}
	p.caution("plan.caution.no-applicators")
}
