package hygiene

import (
	"aerosteep/fault"
	"aerosteep/job/hygiene"
	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var sanitizer = worksheet.Sheet{
	Name:  "sanitizer",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "agent", Kind: worksheet.Choice, Required: true, Choices: []string{string(hygiene.Hypochlorite), string(hygiene.Peroxide), string(hygiene.Peracetic)}},
		{Flag: "stock", Kind: worksheet.Text, Required: true},
		{Flag: "volume", Kind: worksheet.Volume, Required: true, Low: "0 L", Over: true},
		{Flag: "target", Kind: worksheet.Text},
		{Flag: "stock-density", Kind: worksheet.Density, Low: "0.5 kg/L", High: "2 kg/L"},
	},
	Example: "--agent sodium-hypochlorite --stock '5.25 %' --volume '1 gal' --target '200 mg/L'",
	Sources: []source.Source{source.CFR21Part178, source.CommonPractice},
	Shape:   sanitizing{},
	Run:     runSanitizer,
}

type sanitizing struct {
	StockML        float64        `json:"stock_ml"`
	WaterL         float64        `json:"water_l"`
	Target         float64        `json:"target_mg_per_l"`
	Household      *string        `json:"household"`
	ContactMinutes contactMinutes `json:"contact_minutes"`
	Rinse          bool           `json:"rinse"`
	OverNoRinse    *bool          `json:"over_no_rinse_limit"`
	NeverMix       []string       `json:"never_mix"`
}

type contactMinutes struct {
	Min *float64 `json:"min"`
	Max *float64 `json:"max"`
}

func runSanitizer(f *worksheet.Form) (*worksheet.Result, error) {
	agent := hygiene.Agents[hygiene.Sanitizer(f.Text("agent"))]
	density := quantity.GramsPerMillilitre(1)
	if f.Has("stock-density") {
		density = f.Density("stock-density")
	}
	stock, err := strength(f, "stock", density)
	if err != nil {
		return nil, err
	}
	target, err := targetOf(f, agent)
	if err != nil {
		return nil, err
	}
	d, err := hygiene.Dilute(f.Volume("volume"), target, stock)
	if err != nil {
		for _, w := range fault.Of(err) {
			w.Given = f.Text("target")
		}
		return nil, err
	}
	return sanitized(f, agent, d), nil
}

func targetOf(f *worksheet.Form, agent hygiene.Agent) (quantity.Concentration, error) {
	if f.Has("target") {
		return strength(f, "target", quantity.GramsPerMillilitre(1))
	}
	if agent.Usual == nil {
		return 0, wrong("target", "", "laboratory.target-by-label", "laboratory.strength.allowed")
	}
	return *agent.Usual, nil
}

// strength reads a percent or a mass per volume, over 0 and at most 100 %.
func strength(f *worksheet.Form, flag string, density quantity.Density) (quantity.Concentration, error) {
	text := f.Text(flag)
	c, err := quantity.ParseConcentration(text)
	if share, shareErr := quantity.ParseShare(text); shareErr == nil {
		if share.Fraction() > 1+1e-12 {
			return 0, wrong(flag, text, "worksheet.outside", "laboratory.strength.allowed", wording.Places{"given": text})
		}
		c, err = hygiene.Strength(share, density), nil
	}
	if err != nil {
		w := fault.Of(err)[0]
		w.Field, w.Given, w.Allowed = flag, text, wording.Say("laboratory.strength.allowed")
		return 0, w
	}
	if c <= 0 || c > hygiene.Strength(1, max(density, 1)) {
		return 0, wrong(flag, text, "worksheet.outside", "laboratory.strength.allowed", wording.Places{"given": text})
	}
	return c, nil
}

func sanitized(f *worksheet.Form, agent hygiene.Agent, d hygiene.Dilution) *worksheet.Result {
	data := sanitizing{
		StockML: d.Stock.Millilitres(), WaterL: d.Water.Litres(), Target: d.Target.MilligramsPerLitre(),
		ContactMinutes: contactMinutes{agent.MinMinutes, agent.MaxMinutes}, Rinse: true, NeverMix: agent.NeverMix,
	}
	if measure := recipe.Household(d.Stock, f.Units); measure.Text != "" {
		data.Household = &measure.Text
	}
	if agent.NoRinseCeiling != nil {
		data.OverNoRinse = worksheet.Some(d.Target > *agent.NoRinseCeiling)
	}
	result := &worksheet.Result{
		Answer: wording.Say("sheet.sanitizer.answer", wording.Places{"stock": d.Stock, "water": d.Water, "target": d.Target}),
		Data:   data, Basis: worksheet.Habit,
		Sources: []source.Source{source.CFR21Part178, source.CommonPractice},
	}
	result.Caution("laboratory.caution.mix." + f.Text("agent"))
	for _, key := range []string{"clean-first", "into-water", "protect", "label"} {
		result.Caution("laboratory.caution." + key)
	}
	if data.OverNoRinse != nil && *data.OverNoRinse {
		result.Caution("laboratory.caution.over-no-rinse")
	}
	return result
}
