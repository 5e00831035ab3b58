package plan

import (
	"aerosteep/quantity"
)

// costOf is what a batch costs; a missing price makes its part null.
func (p *planner) costOf(b *batch) Cost {
	var c Cost
	if p.File.Holding.Currency != "" {
		c.Currency = &p.File.Holding.Currency
	}
	weighed := b.weighed
	if weighed.Cost != nil && len(weighed.Unpriced) == 0 {
		c.Ingredients = weighed.Cost
		if c.Currency == nil {
			c.Currency = &weighed.Currency
		}
	}
	p.powerCost(b, &c)
	if costs := p.File.Costs; costs.Wage != nil && costs.MinutesPerBatch != nil {
		hours := *costs.MinutesPerBatch / 60
		labour := costs.Wage.For(quantity.Hours(hours).Seconds())
		c.Labour = &labour
	}
	if c.Ingredients != nil && c.Power != nil && c.Labour != nil {
		usable := b.volume.Litres() * (1 - p.File.Limits.Loss.Fraction())
		perLitre := (*c.Ingredients + *c.Power + *c.Labour) / usable
		c.PerL = &perLitre
		return c
	}
	p.caution("plan.caution.no-price")
	return c
}

// powerCost is the pump's power over the brew; a vessel without pump costs none.
func (p *planner) powerCost(b *batch, c *Cost) {
	pump, known := p.File.Pump(b.vessel.Pump)
	if !known && b.vessel.Pump == "" {
		nothing := 0.0
		c.Power = &nothing
		return
	}
	if price := p.File.Costs.Electricity; price != nil && pump.Power != nil {
		power := price.For(pump.Power.Watts() * quantity.Hours(b.brew.hours).Seconds())
		c.Power = &power
	}
}
