package plan

import (
	"math"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/job/recipe"
	"aerosteep/source"
	"aerosteep/wording"
)

// finished is a batch as the plan shows it.
func (p *planner) finished(b *batch, applied []applying) Batch {
	w, air := p.waterOf(b), p.aerate(b.vessel, b.volume)
	b.kla = air.estimate()
	out := Batch{
		ID: b.id, Vessel: b.vessel.Name, Recipe: b.outing.recipe.Name, WhyRecipe: b.outing.whyRecipe,
		VolumeL: b.volume.Litres(), StartAt: b.start.In(p.zone), ReadyAt: b.ready.In(p.zone),
		ReadyRange: p.readyRange(b), UseBy: b.useBy.In(p.zone), Serves: []Serving{},
		Steps: p.steps(b, w, applied), Items: p.items(b), Water: w, Air: airOf(air),
		Forecast: outlookOf(b.brew.outlook), Cost: p.costOf(b), Waiting: p.waitingOf(b),
	}
	for _, s := range b.serves {
		out.Serves = append(out.Serves, Serving{s.want.Index, s.want.Bed, s.tea.Litres()})
	}
	out.OverChance = out.Forecast.Chance > p.File.Limits.Chance
	p.batchCautions(b, air, out)
	return out
}

// readyRange is the 80 % range of the hour of highest uptake.
func (p *planner) readyRange(b *batch) [2]time.Time {
	if len(b.brew.peaks) == 0 {
		return [2]time.Time{b.ready.In(p.zone), b.ready.In(p.zone)}
	}
	at := func(q float64) time.Time {
		return b.start.Add(span(quantile(b.brew.peaks, q)).Round(time.Minute)).In(p.zone)
	}
	return [2]time.Time{at(0.1), at(0.9)}
}

func (p *planner) items(b *batch) []Item {
	items := []Item{}
	for _, w := range b.weighed.Items {
		a := p.amountOf(w)
		items = append(items, Item{
			Ingredient: a.Ingredient, When: w.Item.When.String(), MassG: a.MassG,
			VolumeML: a.VolumeML, Household: a.Household, PercentWV: w.PercentWV(),
		})
		p.cite(w.Item.Ingredient.Sources...)
	}
	return items
}

func airOf(found aeration) Air {
	a := Air{KLa20: found.estimate(), Basis: found.basis}
	if f := found.airflow; f != nil {
		flow := f.LitresPerMinute()
		a.Airflow = &flow
	}
	if q := found.pressure; q != nil {
		pressure := q.Kilopascals()
		a.Pressure = &pressure
	}
	return a
}

func outlookOf(o *forecast.Outlook) Outlook {
	out := Outlook{
		MinDO: o.MinDO, Chance: o.Chance, Limit: o.Limit.MilligramsPerLitre(),
		HourOfMinimum: o.MinHour, PeakOUR: o.PeakUptake.Median, Course: []CoursePoint{},
	}
	for _, m := range o.Course {
		out.Course = append(out.Course, CoursePoint{Hour: m.Hour, DO: m.DO, TempC: m.Water.Median})
	}
	return out
}

// sureEnough is the chance, in 100, of being past the highest uptake from which
// a brew counts as ready.
const sureEnough = 80

func (p *planner) batchCautions(b *batch, found aeration, out Batch) {
	p.cite(source.CommonPractice)
	places := wording.Places{"batch": b.id, "vessel": b.vessel.Name}
	if out.OverChance {
		places["chance"] = math.Round(out.Forecast.Chance)
		places["accepted"] = p.File.Limits.Chance
		places["limit"] = b.brew.outlook.Limit
		p.caution("plan.caution.over-chance", places)
	}
	p.ceilingCaution(b)
	if peaks := b.brew.peaks; len(peaks) > 0 && pastPeak(peaks, b.brew.hours) < sureEnough {
		sure := b.start.Add(span(quantile(peaks, sureEnough/100.)).Round(time.Minute))
		p.caution("plan.caution.not-past-peak", wording.Places{
			"batch": b.id, "chance": wording.InHundred(pastPeak(peaks, b.brew.hours)), "hour": Clock(sure.In(p.zone)),
		})
	}
	if found.basis != "measured" && b.vessel.Pump != "" && p.File.Holding.OxygenMeter {
		p.caution("plan.caution.air-by-plate", wording.Places{"vessel": b.vessel.Name})
	}
	for key, d := range found.doubts {
		p.doubts[key] = math.Max(p.doubts[key], d)
	}
	if b.volume > p.brewedFor(b.pours)+1 && b.volume <= b.vessel.Least {
		p.caution("plan.caution.least", wording.Places{"vessel": b.vessel.Name, "least": b.vessel.Least})
	}
}

// ceilingCaution says where a dose of molasses is over the ceiling, and why it is
// kept.
func (p *planner) ceilingCaution(b *batch) {
	dose, r := b.weighed.Molasses(), b.outing.recipe
	if !recipe.Over(dose, p.File.Limits.Molasses) {
		return
	}
	places := wording.Places{"recipe": r.Name, "dose": dose, "ceiling": p.File.Limits.Molasses, "why": r.Because}
	if r.Because == "" {
		p.caution("plan.caution.ceiling", places)
		return
	}
	p.caution("plan.caution.ceiling.because", places)
}

// pastPeak is the chance in 100 that the highest uptake is over at an hour.
func pastPeak(sorted []float64, hour float64) float64 {
	n := 0
	for _, h := range sorted {
		if h <= hour {
			n++
		}
	}
	return 100 * float64(n) / float64(len(sorted))
}
