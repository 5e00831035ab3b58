package plan

import (
	"time"

	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// refuse leaves all wants of an outing unmet for one reason.
func (p *planner) refuse(o *outing, kind Kind, reason, nearest wording.Text) {
	for _, w := range o.wants {
		p.unmet(w, kind, reason, nearest)
	}
	o.wants, o.batches = nil, nil
}

// cannot says why no vessel can make an outing's tea for its hour.
func (p *planner) cannot(o *outing) {
	switch {
	case p.trial: // nobody reads why
		p.refuse(o, ByTime, wording.Text{}, wording.Text{})
		return
	case len(p.File.Vessels) == 0:
		p.refuse(o, ByVolume, wording.Say("plan.unmet.no-vessel"), wording.Say("plan.nearest.vessel"))
		return
	case p.largestBrew(o.recipe) == 0:
		p.refuse(o, ByTime, wording.Say("plan.unmet.stirred", wording.Places{"recipe": o.recipe.Name}), wording.Say("plan.nearest.stirred"))
		return
	}
	reason := wording.Say("plan.unmet.busy", wording.Places{"hour": Clock(o.at), "tea": p.teaOf(o)})
	if soonest, known := p.soonest(o); known && o.at.Before(soonest) {
		reason = wording.Say("plan.unmet.too-soon", wording.Places{"hour": Clock(o.at), "recipe": o.recipe.Name})
	}
	wants := o.wants
	for _, w := range wants {
		p.unmet(w, ByTime, reason, p.nearest(o, w, ByTime))
	}
	o.wants, o.batches = nil, nil
}

func (p *planner) teaOf(o *outing) quantity.Volume {
	var sum quantity.Volume
	for _, w := range o.wants {
		sum += w.tea
	}
	return sum
}

// soonest is the first hour for which any vessel that suits could be ready if
// it were started now.
func (p *planner) soonest(o *outing) (time.Time, bool) {
	var first time.Time
	for _, v := range p.File.Vessels {
		if !p.suits(v, o.recipe) {
			continue
		}
		hours, _ := p.hoursOf(v, o.recipe, p.Now)
		strain := time.Duration(p.File.Limits.StrainMinutes * float64(time.Minute))
		at := p.Now.Add(leads[len(leads)-1] + span(hours) + strain + p.drive(o))
		if first.IsZero() || at.Before(first) {
			first = at
		}
	}
	if whole := first.Truncate(quarter); whole.Before(first) {
		first = whole.Add(quarter)
	}
	return first, !first.IsZero()
}

// nearest is what would work for a want: another hour, or as much as fits.
func (p *planner) nearest(o *outing, w *want, kind Kind) wording.Text {
	if kind == ByVolume {
		most := p.allBrew(o) * quantity.Volume(1-p.File.Limits.Loss.Fraction())
		return wording.Say("plan.nearest.volume", wording.Places{"most": most})
	}
	alone := &outing{recipe: o.recipe, at: o.at, wants: []*want{w}, settled: true}
	const ahead = 14 * 24
	from, _ := p.soonest(alone)
	for h := 0; h <= ahead; h++ {
		at := from.Add(time.Duration(h) * time.Hour)
		if !at.Before(o.at) || h == 0 {
			if p.holds(p.options(alone, at), p.needed(alone)) {
				return wording.Say("plan.nearest.hour", wording.Places{"hour": Clock(at.In(p.zone))})
			}
		}
	}
	return wording.Say("plan.nearest.no-hour")
}

// shortOf says which ingredient is short for the fillings, and for what share
// of them it would do.
func (p *planner) shortOf(o *outing, fillings []filling) (string, float64) {
	var all quantity.Volume
	for _, f := range fillings {
		all += f.volume
	}
	weighed, err := recipe.Scale(o.recipe, all)
	if err != nil {
		return "", 1
	}
	return p.stock.short(weighed)
}

// outOfStock leaves an outing unmet for want of an ingredient.
func (p *planner) outOfStock(o *outing, ingredient string, share float64) {
	tea := p.teaOf(o) * quantity.Volume(share)
	wants := o.wants
	for _, w := range wants {
		p.unmet(w, ByStock, wording.Say("plan.unmet.stock", wording.Places{"ingredient": ingredient, "recipe": o.recipe.Name}),
			wording.Say("plan.nearest.stock", wording.Places{"tea": tea, "ingredient": ingredient}))
	}
	o.wants, o.batches = nil, nil
}
