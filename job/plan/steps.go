package plan

import (
	"math"
	"sort"
	"time"

	"aerosteep/job/ground"
	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// kinds are the kinds of step in the order in which they follow each other.
var kinds = []string{"clean", "fill", "dechlorinate", "pre-feed", "feed", "air-on", "read", "finish", "air-off", "strain", "load", "apply", "rinse"}

func kindOrder(what string) int {
	for i, k := range kinds {
		if k == what {
			return i
		}
	}
	return len(kinds)
}

// stepList gathers the steps of one batch.
type stepList struct {
	p     *planner
	b     *batch
	site  ground.Site
	known bool
	steps []Step
}

func (l *stepList) add(at time.Time, what, text string, amounts []Amount) {
	l.addAt(l.site, l.known, at, what, text, amounts)
}

func (l *stepList) addAt(site ground.Site, known bool, at time.Time, what, text string, amounts []Amount) {
	at = at.In(l.p.zone)
	if amounts == nil {
		amounts = []Amount{}
	}
	l.steps = append(l.steps, Step{At: at, What: what, Text: text, Amounts: amounts, OutsideWork: known && !site.WorksAt(at)})
}

// steps are everything a batch asks for, in order of time.
func (p *planner) steps(b *batch, w Water, applied []applying) []Step {
	l := &stepList{p: p, b: b}
	l.site, l.known = p.File.Site(b.vessel.Site)
	l.prepare(w)
	l.feedAndAir()
	l.look()
	l.finish()
	l.putOn(applied)
	sort.SliceStable(l.steps, func(i, j int) bool {
		a, c := l.steps[i], l.steps[j]
		if !a.At.Equal(c.At) {
			return a.At.Before(c.At)
		}
		return kindOrder(a.What) < kindOrder(c.What)
	})
	return l.steps
}

func (l *stepList) places() wording.Places {
	return wording.Places{"vessel": l.b.vessel.Name, "volume": l.b.volume, "recipe": l.b.outing.recipe.Name}
}

// prepare is cleaning, filling and taking the chlorine out, with as much time
// as the lead leaves.
func (l *stepList) prepare(w Water) {
	b, p := l.b, l.p
	l.add(b.start.Add(-b.lead), "clean", p.say("plan.step.clean", l.places()), nil)
	l.add(b.start.Add(-b.lead*2/3), "fill", p.say("plan.step.fill", l.places()), nil)
	if w.Agent != nil {
		grams := *w.AgentG * (1 + margin.Fraction())
		places := l.places()
		places["dose"] = wording.Number(grams, 2, p.Reader) + "\u00a0g"
		l.add(b.start.Add(-b.lead/3), "dechlorinate", p.say("plan.step.dechlorinate", places), nil)
	}
	l.prefeed()
}

// Compost for a fungal tea is kept moist and warm for some days beforehand
// (common practice).
const (
	prefeedDays   = 3
	prefeedAtMost = 24 * time.Hour // before air on, later is of no use
)

// prefeed asks for the compost to be prepared days earlier, in hours of work
// where there are some.
func (l *stepList) prefeed() {
	b, p := l.b, l.p
	if b.outing.recipe.Lean != recipe.Fungal || isExtract(b.outing.recipe) {
		return
	}
	first := firstQuarter(later(b.start.AddDate(0, 0, -prefeedDays), p.Now))
	last := b.start.Add(-prefeedAtMost)
	if first.After(last) {
		p.caution("plan.caution.no-prefeed", wording.Places{"batch": b.id})
		return
	}
	at := first
	for t := first; !t.After(last); t = t.Add(quarter) {
		if !l.known || l.site.WorksAt(t.In(p.zone)) {
			at = t
			break
		}
	}
	l.add(at, "pre-feed", p.say("plan.step.pre-feed", l.places()), nil)
}

// feedAndAir is what goes in at the start and later, and the air.
func (l *stepList) feedAndAir() {
	b, p := l.b, l.p
	l.feed(b.start, "feed", func(w recipe.When) bool { return !w.Finish && w.Hours == 0 })
	for _, hour := range laterHours(b.weighed) {
		l.feed(b.start.Add(span(math.Min(hour, b.brew.hours))), "feed", func(w recipe.When) bool { return !w.Finish && w.Hours == hour })
	}
	on := "plan.step.air-on"
	if b.vessel.Pump == "" {
		on = "plan.step.stir"
	}
	l.add(b.start, "air-on", p.say(on, l.places()), nil)
}

func laterHours(b recipe.Batch) []float64 {
	var hours []float64
	for _, w := range b.Items {
		if h := w.Item.When.Hours; h > 0 && (len(hours) == 0 || !contains(hours, h)) {
			hours = append(hours, h)
		}
	}
	sort.Float64s(hours)
	return hours
}

func contains(list []float64, v float64) bool {
	for _, x := range list {
		if x == v {
			return true
		}
	}
	return false
}

// feed is one step that puts in what belongs to it.
func (l *stepList) feed(at time.Time, what string, belongs func(recipe.When) bool) {
	var amounts []Amount
	var said []string
	for _, w := range l.b.weighed.Items {
		if !belongs(w.Item.When) {
			continue
		}
		a := l.p.amountOf(w)
		amounts = append(amounts, a)
		said = append(said, l.p.amountWords(w, a))
	}
	if len(amounts) == 0 && what != "feed" {
		return
	}
	places := l.places()
	places["items"] = said
	l.add(at, what, l.p.say("plan.step."+what, places), amounts)
}

func (p *planner) amountOf(w recipe.Weighed) Amount {
	a := Amount{Ingredient: w.Item.Ingredient.Name, MassG: w.Mass.Grams()}
	if w.Volume != nil {
		ml := w.Volume.Millilitres()
		a.VolumeML = &ml
		if text := recipe.Household(*w.Volume, p.Reader.Units).Text; text != "" {
			a.Household = &text
		}
	}
	return a
}

// amountWords is an amount as a person weighs or scoops it.
func (p *planner) amountWords(w recipe.Weighed, a Amount) string {
	places := wording.Places{"ingredient": a.Ingredient, "mass": w.Mass}
	if a.Household == nil {
		return p.say("plan.amount", places)
	}
	places["household"] = *a.Household
	return p.say("plan.amount.household", places)
}

// look asks for readings when they tell most: early, and around the hour at
// which oxygen is expected to be lowest. Where there is no oxygen meter it asks
// for nose and eyes only.
func (l *stepList) look() {
	b, p := l.b, l.p
	if b.brew.hours <= 2 {
		return
	}
	lowest := math.Round(b.brew.outlook.MinHour.Median*4) / 4
	sentence := "plan.step.read"
	if !p.File.Holding.OxygenMeter {
		sentence = "plan.step.smell"
	}
	places := l.places()
	places["limit"] = b.brew.outlook.Limit
	seen := map[time.Time]bool{}
	for _, hour := range []float64{2, lowest, b.brew.hours - 1} {
		at := l.atWork(b.start.Add(span(math.Min(math.Max(hour, 0.5), b.brew.hours))))
		if !seen[at] {
			seen[at] = true
			l.add(at, "read", p.say(sentence, places), nil)
		}
	}
}

// atWork moves an hour that can be moved into the hours of work, within the
// brew; where that cannot be it stays.
func (l *stepList) atWork(at time.Time) time.Time {
	if !l.known {
		return at
	}
	for d := time.Duration(0); d <= 8*time.Hour; d += quarter {
		for _, t := range []time.Time{at.Add(-d), at.Add(d)} {
			if t.After(l.b.start) && !t.After(l.b.ready) && l.site.WorksAt(t.In(l.p.zone)) {
				return t
			}
		}
	}
	return at
}

// finish is the end of the brew: finish items, air off, strain, load.
func (l *stepList) finish() {
	b, p := l.b, l.p
	l.feed(b.start.Add(span(additionHour(recipe.When{Finish: true}, b.brew.hours))), "finish", func(w recipe.When) bool { return w.Finish })
	off := "plan.step.air-off"
	if b.vessel.Pump == "" {
		off = "plan.step.stir-off"
	}
	l.add(b.ready, "air-off", p.say(off, l.places()), nil)
	l.add(b.ready, "strain", p.strainText(b, l.places()), nil)
	places := l.places()
	places["use_by"] = Clock(b.useBy.In(p.zone))
	load := "plan.step.load"
	if b.useBy.Before(b.load) {
		load = "plan.step.load-late"
	}
	l.add(b.load, "load", p.say(load, places), nil)
}

// applying is one want of a batch being put on.
type applying struct {
	want *want
	at   time.Time
	ends time.Time
	tea  serving
}

func (l *stepList) putOn(applied []applying) {
	ends := l.b.load
	for _, a := range applied {
		places := wording.Places{
			"bed": a.want.Bed, "tea": a.tea.tea, "mix": a.tea.tea * volumeTimes(1+a.want.Dilution),
			"dilution": dilutionWord(a.want.Dilution), "method": wording.Say("plan.method." + a.want.Method),
		}
		l.addAt(a.want.site, a.want.hasSite, a.at, "apply", l.p.say("plan.step.apply", places), nil)
		ends = later(ends, a.ends)
	}
	l.add(ends, "rinse", l.p.say("plan.step.rinse", l.places()), nil)
}

// strainText also says where the spent compost goes, with its volume as it was
// weighed in; what washed out of it is little (judged). A compost of which no bulk
// density is known is not told.
func (p *planner) strainText(b *batch, places wording.Places) string {
	var spent quantity.Volume
	for _, w := range b.weighed.Items {
		if w.Item.Ingredient.Compost && w.Volume != nil {
			spent += *w.Volume
		}
	}
	if spent == 0 {
		return p.say("plan.step.strain", places)
	}
	places["spent"] = spent
	return p.say("plan.step.strain-spent", places)
}
