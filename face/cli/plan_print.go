package cli

import (
	"fmt"
	"io"
	"math"
	"strings"
	"time"

	"aerosteep/job/plan"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// planPrinter prints a plan that a person can follow.
type planPrinter struct {
	w io.Writer
	r wording.Reader
	p *plan.Plan
}

func printPlan(w io.Writer, p *plan.Plan, r wording.Reader) error {
	pp := &planPrinter{w, r, p}
	pp.answer()
	for _, u := range p.Unmet {
		pp.paragraph("", pp.say("cli.plan.unmet", wording.Places{"n": u.Want + 1, "bed": u.Bed, "reason": u.Reason, "nearest": u.Nearest}))
	}
	for i := range p.Batches {
		pp.batch(&p.Batches[i])
	}
	for i := range p.Runs {
		pp.run(&p.Runs[i])
	}
	printCautions(w, p.Cautions, r)
	return nil
}

func (pp *planPrinter) say(key string, places wording.Places) string {
	return wording.Say(key, places).For(pp.r)
}

func (pp *planPrinter) paragraph(indent, text string) {
	fmt.Fprintln(pp.w, wrap(text, columns, indent))
}

// hour is a time as the plan's own sentences say it.
func (pp *planPrinter) hour(t time.Time) string { return plan.Clock(t).Speak(pp.r) }

func litres(v float64) quantity.Volume { return quantity.Litres(v) }

// answer is the first sentence: when to begin, or that nothing can be done.
func (pp *planPrinter) answer() {
	if len(pp.p.Batches) == 0 {
		pp.paragraph("", pp.say("cli.plan.nothing", nil))
		return
	}
	first := pp.p.Batches[0]
	pp.paragraph("", pp.say("cli.plan.answer", wording.Places{
		"batches": len(pp.p.Batches), "wants": len(pp.p.Needs) - len(pp.p.Unmet), "all": len(pp.p.Needs),
		"begin": pp.hour(first.Steps[0].At), "vessel": first.Vessel,
	}))
}

func (pp *planPrinter) batch(b *plan.Batch) {
	beds := make([]string, 0, len(b.Serves))
	for _, s := range b.Serves {
		beds = append(beds, s.Bed)
	}
	fmt.Fprintln(pp.w)
	pp.paragraph("", pp.say("cli.plan.batch", wording.Places{
		"id": b.ID, "volume": litres(b.VolumeL), "recipe": b.Recipe, "vessel": b.Vessel, "beds": beds,
	}))
	pp.paragraph("  ", b.WhyRecipe)
	for _, s := range b.Steps {
		pp.step(s)
	}
	for _, t := range b.Water.Tempering {
		pp.paragraph("  ", t.Text)
	}
	pp.outlook(b)
	pp.cost(b)
	if b.Waiting != nil {
		pp.paragraph("  ", b.Waiting.Text)
	}
	for _, a := range pp.p.Advice {
		if a.Batch == b.ID {
			pp.paragraph("  ", pp.say("cli.plan.advice", wording.Places{"text": a.Text}))
		}
	}
}

// step is one line, or several that hang beneath its hour.
func (pp *planPrinter) step(s plan.Step) {
	text := s.Text
	if s.OutsideWork {
		text += " " + pp.say("cli.plan.outside", nil)
	}
	head := fmt.Sprintf("  %-16s ", pp.hour(s.At))
	body := wrap(text, columns-2, strings.Repeat(" ", len([]rune(head))))
	fmt.Fprintln(pp.w, head+strings.TrimLeft(body, " "))
}

func (pp *planPrinter) outlook(b *plan.Batch) {
	f := b.Forecast
	pp.paragraph("  ", pp.say("cli.plan.outlook", wording.Places{
		"chance": wording.InHundred(f.Chance), "limit": quantity.DissolvedOxygen(f.Limit),
		"lowest": quantity.DissolvedOxygen(f.MinDO.Median), "low": quantity.DissolvedOxygen(f.MinDO.Low80), "high": quantity.DissolvedOxygen(f.MinDO.High80),
		"hour": math.Round(f.HourOfMinimum.Median),
	}))
	pp.paragraph("  ", pp.say("cli.plan.air", wording.Places{
		"kla": quantity.PerHour(b.Air.KLa20.Estimate), "low": quantity.PerHour(b.Air.KLa20.Low95), "high": quantity.PerHour(b.Air.KLa20.High95),
		"basis": wording.Say("cli.plan.basis." + b.Air.Basis),
	}))
	pp.paragraph("  ", pp.say("cli.plan.clock", wording.Places{
		"ready": pp.hour(b.ReadyAt), "from": pp.hour(b.ReadyRange[0]), "until": pp.hour(b.ReadyRange[1]), "use_by": pp.hour(b.UseBy),
	}))
}

func (pp *planPrinter) cost(b *plan.Batch) {
	if b.Cost.PerL == nil {
		return
	}
	currency := ""
	if b.Cost.Currency != nil {
		currency = *b.Cost.Currency
	}
	total := *b.Cost.Ingredients + *b.Cost.Power + *b.Cost.Labour
	pp.paragraph("  ", pp.say("cli.plan.cost", wording.Places{"total": wording.Fixed(total, 2, pp.r), "currency": currency}))
}

func (pp *planPrinter) run(run *plan.Run) {
	with := wording.Say("cli.plan.no-applicator")
	if run.Applicator != nil {
		with = wording.Verbatim(*run.Applicator)
	}
	fmt.Fprintln(pp.w)
	pp.paragraph("", pp.say("cli.plan.run", wording.Places{"at": pp.hour(run.At), "with": with, "beds": run.Beds, "ends": pp.hour(run.EndsAt)}))
	if run.Sky != nil {
		pp.paragraph("  ", run.Sky.Text)
	}
	for _, prime := range run.Prime {
		pp.paragraph("  ", pp.say("cli.plan.prime", wording.Places{"tea": litres(prime.TeaL), "water": litres(prime.WaterL)}))
	}
	for first := 0; first < len(run.Loads); {
		next := first + 1
		for next < len(run.Loads) && alike(run.Loads[first], run.Loads[next]) {
			next++
		}
		pp.paragraph("  ", pp.load(first, next-1, run.Loads[first]))
		first = next
	}
}

// alike tells whether two loads are mixed and poured the same.
func alike(a, b plan.Load) bool {
	near := func(x, y float64) bool { return math.Abs(x-y) <= 1e-9*math.Abs(x) }
	covers := a.Covers == nil && b.Covers == nil || a.Covers != nil && b.Covers != nil && near(*a.Covers, *b.Covers)
	return a.Bed == b.Bed && a.Batch == b.Batch && near(a.TeaL, b.TeaL) && near(a.WaterL, b.WaterL) && covers
}

// load says a load, or several alike at once.
func (pp *planPrinter) load(first, last int, l plan.Load) string {
	number := fmt.Sprint(first + 1)
	if last > first {
		number = pp.say("cli.plan.loads", wording.Places{"first": first + 1, "last": last + 1})
	}
	places := wording.Places{"n": number, "tea": litres(l.TeaL), "water": litres(l.WaterL), "bed": l.Bed}
	if l.Covers == nil {
		return pp.say("cli.plan.load", places)
	}
	places["covers"] = quantity.SquareMetres(*l.Covers)
	return pp.say("cli.plan.load.covers", places)
}
