package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// moreAir looks for the kLa20 that keeps the chance of a batch with a share of
// its food within what is accepted, up to four times that of today.
func (p *planner) moreAir(b *batch, share float64) *cure {
	at := p.vesselIndex(b.vessel.Name)
	if b.vessel.Pump == "" && b.vessel.KLa20 == nil {
		return nil
	}
	for _, times := range []float64{1.25, 1.5, 2, 3, 4} {
		s := withFood(b.brew.setup, share)
		t := quantity.PerTime(times)
		s.Transfer.Estimate, s.Transfer.Low95, s.Transfer.High95 = s.Transfer.Estimate*t, s.Transfer.Low95*t, s.Transfer.High95*t
		if forecast.Prior(s, tryMembers, seed).Chance > 0.8*p.File.Limits.Chance {
			continue
		}
		e := b.kla
		text := func(v float64) string { return number(roundTo3(v*times)) + " /h" }
		c := cure{"plan.advice.more-air", wording.Places{"vessel": b.vessel.Name, "kla": quantity.PerHour(e.Estimate * times), "times": times}, nil, 0}
		for _, k := range []struct {
			key   string
			value float64
		}{{"kla20", e.Estimate}, {"kla20_low95", e.Low95}, {"kla20_high95", e.High95}} {
			c.changes = append(c.changes, jobfile.Change{Op: "add", Path: fmt.Sprintf("/vessel/%d/%s", at, k.key), Value: text(k.value)})
		}
		return &c
	}
	return nil
}

func roundTo3(v float64) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
	if err != nil {
		return v
	}
	return rounded
}

func (p *planner) vesselIndex(name string) int {
	for i, v := range p.File.Vessels {
		if v.Name == name {
			return i
		}
	}
	return -1
}

// airWithoutFood is both at once, for a batch that neither alone brings within
// what is accepted.
func (p *planner) airWithoutFood(b *batch) *cure {
	c := p.moreAir(b, 0)
	if c != nil && b.outing.recipe.Fed() {
		c.sentence = "plan.advice.air-without-food"
		c.places["recipe"] = b.outing.recipe.Name
		c.changes = append(c.changes, p.foodCure(b, 0).changes...)
	}
	return c
}

// cooler starts with water 5 °C cooler, where that is not too cold to brew in.
func (p *planner) cooler(b *batch) *cure {
	const step, coldest = 5, 8 // °C
	t := p.File.Water.Temperature.Celsius() - step
	if t < coldest {
		return nil
	}
	change := jobfile.Change{Op: "add", Path: "/water/temperature", Value: number(roundTo3(t)) + " °C"}
	if !p.File.HasTable("water") {
		change = jobfile.Change{Op: "add", Path: "/water", Value: map[string]any{"temperature": number(roundTo3(t)) + " °C"}}
	}
	return &cure{"plan.advice.cooler", wording.Places{"temperature": quantity.Celsius(t)}, []jobfile.Change{change}, 0}
}

// shorter ends the brew before more members than are accepted have gone under
// the limit, where that leaves it long enough to be called a brew and takes in
// all that is fed. What it is then short of ripeness, the plan of the changed
// file says.
func (p *planner) shorter(b *batch) *cure {
	at20 := p.peaks[peakKey{b.vessel.Name, b.outing.recipe.Name, 0, true}]
	if len(b.brew.peaks) == 0 || len(at20) == 0 {
		return nil
	}
	below := b.brew.outlook.BelowHours
	accepted := int(float64(len(below)) * p.File.Limits.Chance / 100)
	end := math.Floor(below[min(accepted, len(below)-1)]*4) / 4
	hours := math.Floor(end/ripening{b.brew.peaks, at20}.stretch()*2) / 2
	before := recipeHours(b.outing.recipe)
	fedLater := func(i recipe.Item) bool { return i.When.Hours >= hours }
	if end < shortest || hours >= before || slices.ContainsFunc(b.outing.recipe.Items, fedLater) {
		return nil
	}
	return &cure{
		sentence: "plan.advice.shorter",
		places:   wording.Places{"recipe": b.outing.recipe.Name, "hours": hours, "usual": before, "end": end, "now": b.brew.hours},
		changes:  []jobfile.Change{p.hoursChange(b.outing.recipe, hours)},
	}
}

// smallerFill looks for the filling that the pump can keep within what is
// accepted, down to half, with as much less tea on each bed. A transfer that was
// measured is taken to be the same at every filling: there it is no cure.
func (p *planner) smallerFill(b *batch) *cure {
	for _, share := range []float64{0.85, 0.7, 0.5} {
		volume := b.volume * quantity.Volume(share)
		weighed, err := recipe.Scale(b.outing.recipe, volume)
		if err != nil || p.aerate(b.vessel, volume).kla20 <= quantity.PerHour(b.kla.Estimate) {
			return nil
		}
		s := p.setup(b.vessel, weighed, volume, b.start, b.brew.hours)
		if forecast.Prior(s, tryMembers, seed).Chance > 0.8*p.File.Limits.Chance {
			continue
		}
		c := cure{sentence: "plan.advice.smaller-fill", places: wording.Places{
			"vessel": b.vessel.Name, "volume": volume, "percent": math.Round(share * 100),
		}}
		for _, served := range b.serves {
			c.changes = append(c.changes, lessTea(served.want, share))
		}
		return &c
	}
	return nil
}

// lessTea puts a share of the tea on the bed of a want, as its amount was given.
func lessTea(w *want, share float64) jobfile.Change {
	key, value := "mix_rate", ""
	switch {
	case w.Tea != nil:
		key, value = "tea", number(floor3(w.Tea.Litres()*share))+" L"
	case w.TeaRate != nil:
		key, value = "tea_rate", number(floor3(w.TeaRate.LitresPerSquareMetre()*share))+" L/m2"
	default:
		value = number(floor3(w.MixRate.LitresPerSquareMetre()*share)) + " L/m2"
	}
	return jobfile.Change{Op: "replace", Path: fmt.Sprintf("/want/%d/%s", w.Index, key), Value: value}
}
