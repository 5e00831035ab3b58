package plan

import (
	"math"

	"aerosteep/quantity"
	"aerosteep/science/water"
	"aerosteep/source"
	"aerosteep/wording"
)

// supposedChlorine is what mains water that nobody has tested is taken to hold
// at most: the largest running average that 40 CFR 141.65 allows for chlorine,
// and for chloramine, as Cl2.
const supposedChlorine quantity.Concentration = 4

// margin is added to a dose of agent, as dechlorinate does.
const margin quantity.Share = 0.1

// residual is the chlorine of the water: as tested; untested mains water is
// treated as if it may hold chloramine; other water has none added.
func (p *planner) residual() (r water.Residual, tested bool) {
	w := p.File.Water
	test := water.Test{Free: w.FreeChlorine, Total: w.TotalChlorine, Combined: w.Chloramine}
	if read, err := test.Read(); err == nil {
		return read, true
	}
	if w.Source == "municipal" || w.Source == "" {
		p.cite(source.MaximumResidual)
		return water.Residual{Chloramine: water.Unknown, DoseOn: supposedChlorine}, false
	}
	return water.Residual{Chloramine: water.Absent}, true
}

// waterOf is what is filled in and what is done about its chlorine.
func (p *planner) waterOf(b *batch) Water {
	r, tested := p.residual()
	w := Water{FillL: b.volume.Litres(), Chloramine: string(r.Chloramine), TemperatureC: p.File.Water.Temperature.Celsius(), Tempering: p.tempering(b)}
	const detected = 0.1 // mg/L, what a kit can see
	if r.DoseOn >= detected {
		agent := string(water.AscorbicAcid)
		dose := water.Neutralise(b.volume, r.DoseOn, water.AscorbicAcid, water.NoForm, margin)
		grams := dose.Exact.Grams()
		w.Agent, w.AgentG = &agent, &grams
		p.cite(source.AWWAFieldGuide)
	}
	if wait := water.Aeration(r, detected, nil); wait != nil && tested {
		w.AerationHours = &Hours{Low: wait.Low.Hours(), High: wait.High.Hours()}
		if wait.Estimate != nil {
			hours := wait.Estimate.Hours()
			w.AerationHours.Estimate = &hours
		}
	}
	if at := p.File.Water.OldTest; at != nil {
		p.caution("plan.caution.old-water-test", wording.Places{"days": math.Round(p.Now.Sub(*at).Hours() / 24)})
	}
	switch {
	case !tested:
		p.caution("plan.caution.untested-water")
	case r.Chloramine == water.Unknown:
		p.caution("plan.caution.chloramine-unknown")
	}
	return w
}
