package plan

import (
	"sort"

	"aerosteep/wording"
)

// fileCautions say what the plan had to suppose because the file does not say
// it.
func (p *planner) fileCautions() {
	if len(p.wants) == 0 {
		p.caution("plan.caution.no-wants")
		return
	}
	for _, s := range p.File.Sites {
		if !s.AltitudeKnown {
			p.caution("plan.caution.altitude", wording.Places{"site": s.Name})
		}
	}
	if len(p.File.Sites) == 0 {
		p.caution("plan.caution.no-site")
	}
	if !p.File.Water.TemperatureGiven {
		p.caution("plan.caution.water-temperature")
	}
	if p.Weather == nil {
		p.caution("plan.caution.no-weather")
	}
	p.driving()
	p.caution("plan.caution.habit")
}

// driving says which sites lie elsewhere without a drive being given.
func (p *planner) driving() {
	for _, w := range p.wants {
		if !w.hasSite || w.site.Drive != nil || len(p.File.Sites) < 2 {
			continue
		}
		for _, v := range p.File.Vessels {
			if v.Site != "" && v.Site != w.bed.Site {
				p.caution("plan.caution.drive", wording.Places{"site": w.site.Name})
			}
		}
	}
}

// missingNumbers names the one number nobody has given that would narrow the
// plan most, and how to get it with pail, clock and tape.
func (p *planner) missingNumbers() {
	keys := make([]string, 0, len(p.doubts))
	for k := range p.doubts {
		if k != "vessel.kla20" || p.File.Holding.OxygenMeter {
			keys = append(keys, k) // a transfer cannot be measured without a meter
		}
	}
	sort.Slice(keys, func(i, j int) bool {
		if p.doubts[keys[i]] != p.doubts[keys[j]] {
			return p.doubts[keys[i]] > p.doubts[keys[j]]
		}
		return keys[i] < keys[j]
	})
	for i, k := range keys {
		text := p.say("plan.missing." + k)
		p.plan.Missing = append(p.plan.Missing, MissingNumber{Key: k, Text: text})
		if i == 0 {
			p.caution("plan.caution.narrow", wording.Places{"how": text})
		}
	}
}
