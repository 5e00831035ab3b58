package plan

import (
	"math"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/quantity"
	"aerosteep/science/weather"
	"aerosteep/wording"
)

// Sky is the chance that the weather leaves an outing the hours it takes.
type Sky struct {
	From    time.Time `json:"from"`
	Until   time.Time `json:"until"`
	Hours   int       `json:"hours"`            // in a row that it takes
	Chance  float64   `json:"chance_of_window"` // in 100
	Covered float64   `json:"covered_percent"`  // of the hours, by the forecast
	Text    string    `json:"text"`
}

// Waiting is what a day of waiting for the sky costs a batch.
type Waiting struct {
	Hours    float64  `json:"hours"`
	Chance   float64  `json:"chance_below_limit"` // in 100, over brew and waiting
	EnergyWh *float64 `json:"energy_wh"`
	Power    *float64 `json:"power"`
	Currency *string  `json:"currency"`
	Text     string   `json:"text"`
}

const (
	skyDraws   = 200
	waitingDay = 24.0
)

// skyOf is the chance of a window: in that of the wants, or where their hour is
// fixed, of that hour.
func (p *planner) skyOf(w *want, at, ends time.Time) *Sky {
	if p.Weather == nil {
		return nil
	}
	from := at.Truncate(time.Hour)
	needed := int(math.Max(1, math.Ceil(ends.Sub(from).Hours())))
	until := from.Add(time.Duration(needed) * time.Hour)
	if o := w.outing; o.inWindow() {
		from, until = later(o.from, p.Now), o.until.Add(ends.Sub(at))
	}
	odds, known := weather.ChanceOfWindow(p.Weather, w.underSky(), p.Now, from, until, needed, skyDraws, seed)
	if !known {
		return nil
	}
	sky := &Sky{From: from.In(p.zone), Until: until.In(p.zone), Hours: needed, Chance: odds.Percent, Covered: odds.Covered}
	sky.Text = p.say("plan.sky.window", wording.Places{
		"needed": needed, "from": Clock(sky.From), "until": Clock(sky.Until),
		"chance": wording.InHundred(odds.Percent), "covered": math.Round(odds.Covered),
	})
	return sky
}

// surfaceCautions say where leaves may be wet or the ground may take nothing in.
func (p *planner) surfaceCautions(wants []*want, at time.Time) {
	if p.Weather == nil {
		return
	}
	for _, w := range wants {
		for _, h := range p.scored(w) {
			if h.At.After(at) || !h.At.Add(time.Hour).After(at) {
				continue
			}
			for _, sign := range h.Surface {
				p.caution("plan.caution.surface", wording.Places{"bed": w.Bed, "hour": Clock(at.In(p.zone)), "sign": sign.Text()})
			}
		}
	}
}

// waitingOf foresees a batch that brews a day longer than planned.
func (p *planner) waitingOf(b *batch) *Waiting {
	if p.Weather == nil || isExtract(b.outing.recipe) {
		return nil
	}
	longer := b.brew.setup
	longer.Planned += quantity.Hours(waitingDay)
	w := &Waiting{Hours: waitingDay, Chance: forecast.Prior(longer, tryMembers, seed).Chance}
	w.Chance = math.Max(w.Chance, b.brew.outlook.Chance)
	w.Text = p.say("plan.waiting", wording.Places{
		"vessel": b.vessel.Name, "before": wording.InHundred(b.brew.outlook.Chance), "after": wording.InHundred(w.Chance),
	}) + p.powerOfWaiting(b, w) + p.say("plan.waiting.else")
	return w
}

// powerOfWaiting is what the pump takes meanwhile, as far as it is known.
func (p *planner) powerOfWaiting(b *batch, w *Waiting) string {
	pump, known := p.File.Pump(b.vessel.Pump)
	if !known || pump.Power == nil {
		return ""
	}
	energy := quantity.Joules(pump.Power.Watts() * quantity.Hours(waitingDay).Seconds())
	w.EnergyWh = new(1000 * energy.KilowattHours())
	text := p.say("plan.waiting.power", wording.Places{"energy": energy})
	if price := p.File.Costs.Electricity; price != nil && p.File.Holding.Currency != "" {
		w.Power, w.Currency = new(price.For(energy.Joules())), &p.File.Holding.Currency
		text += p.say("plan.waiting.cost", wording.Places{"cost": wording.Fixed(*w.Power, 2, p.Reader), "currency": *w.Currency})
	}
	return text
}
