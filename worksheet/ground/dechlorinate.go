package ground

import (
	"aerosteep/quantity"
	"aerosteep/science/water"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var dechlorinate = worksheet.Sheet{
	Name:  "dechlorinate",
	Group: worksheet.Water,
	Inputs: []worksheet.Input{
		{Flag: "volume", Kind: worksheet.Volume, Required: true, Low: "0 L", High: "1000 m3", Over: true},
		{Flag: "free-chlorine", Kind: worksheet.Concentration, Low: "0 mg/L", High: "10 mg/L"},
		{Flag: "total-chlorine", Kind: worksheet.Concentration, Low: "0 mg/L", High: "10 mg/L"},
		{Flag: "chloramine", Kind: worksheet.Concentration, Low: "0 mg/L", High: "10 mg/L"},
		{Flag: "agent", Kind: worksheet.Choice, Default: "ascorbic-acid", Choices: []string{"ascorbic-acid", "sodium-ascorbate", "sodium-thiosulfate"}},
		{Flag: "form", Kind: worksheet.Choice, Choices: []string{"anhydrous", "pentahydrate"}},
		{Flag: "margin", Kind: worksheet.Bare, Default: "10", Low: "0", High: "50"},
		{Flag: "target", Kind: worksheet.Concentration, Default: "0.1 mg/L", Low: "0.01 mg/L", High: "1 mg/L"},
		{Flag: "half-life", Kind: worksheet.LongSpan, Low: "1 min"},
		over0("later", worksheet.Concentration, "0 mg/L"),
		over0("after", worksheet.LongSpan, "0 s"),
		over0("bulk-density", worksheet.Density, "0 g/mL"),
	},
	Example: `--volume "55 gal" --free-chlorine "0.2 mg/L" --total-chlorine "2.2 ppm"`,
	Sources: []source.Source{source.AWWAFieldGuide, source.MolarMasses, source.BasuDeSouza2011, source.CommonPractice},
	Shape:   chlorineAnswer{},
	Run:     runDechlorinate,
}

type chlorineAnswer struct {
	Free       *float64  `json:"free_chlorine_mg_per_l"`
	Combined   *float64  `json:"combined_chlorine_mg_per_l"`
	Total      *float64  `json:"total_chlorine_mg_per_l"`
	Chloramine string    `json:"chloramine"`
	DoseOn     float64   `json:"dose_on_mg_per_l"`
	Agent      string    `json:"agent"`
	AgentG     float64   `json:"agent_g"`
	WithMargin float64   `json:"agent_with_margin_g"`
	MarginML   *float64  `json:"agent_with_margin_ml"`
	RangeG     lowHigh   `json:"agent_range_g"`
	HalfLifeH  *float64  `json:"half_life_h"`
	Target     float64   `json:"target_mg_per_l"`
	Aeration   *waitJSON `json:"aeration_hours"`
	AmmoniaN   *float64  `json:"ammonia_n_mg_per_l"`
	Retest     string    `json:"retest"`
}

type lowHigh struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

type waitJSON struct {
	Estimate *float64 `json:"estimate"`
	Low      float64  `json:"low"`
	High     float64  `json:"high"`
}

func runDechlorinate(f *worksheet.Form) (*worksheet.Result, error) {
	if err := thiosulfateForm(f); err != nil {
		return nil, err
	}
	halfLife, err := halfLife(f)
	if err != nil {
		return nil, err
	}
	residual, err := chlorineTest(f).Read()
	if err != nil {
		return nil, err
	}
	agent := water.Agent(f.Text("agent"))
	dose := water.Neutralise(f.Volume("volume"), residual.DoseOn, agent, water.Form(f.Text("form")), quantity.Percent(f.Number("margin")))
	wait := water.Aeration(residual, f.Concentration("target"), halfLife)
	a := chlorineFigures(residual, dose, halfLife, wait)
	a.Agent, a.Target = string(agent), f.Number("target")
	if f.Has("bulk-density") {
		a.MarginML = new(f.Density("bulk-density").VolumeOf(dose.WithMargin).Millilitres())
	}
	r := &worksheet.Result{Data: a, Basis: worksheet.Standard, Sources: []source.Source{source.AWWAFieldGuide, source.MolarMasses, source.CommonPractice}}
	if water.Contested(residual, agent) {
		r.Basis = worksheet.Contested
		r.Sources = append(r.Sources, source.BasuDeSouza2011)
	}
	sayChlorine(r, residual, dose, agent, wait)
	return r, finite(f, "half-life", a.WithMargin, a.RangeG.High)
}

func thiosulfateForm(f *worksheet.Form) error {
	thiosulfate := f.Text("agent") == string(water.SodiumThiosulfate)
	switch {
	case thiosulfate && !f.Has("form"):
		return f.Advise("form", "sheet.dechlorinate.form-needed", "sheet.dechlorinate.form-needed.advice")
	case !thiosulfate:
		return f.OnlyWith("--agent "+f.Text("agent"), nil, "form")
	}
	return nil
}

// halfLife is the user's own, given or from two readings; nil where there is
// none.
func halfLife(f *worksheet.Form) (*quantity.Span, error) {
	if err := f.Together("later", "after"); err != nil {
		return nil, err
	}
	if !f.Has("later") {
		if f.Has("half-life") {
			return new(f.Span("half-life")), nil
		}
		return nil, nil
	}
	if err := f.OnlyWith("--later", nil, "half-life"); err != nil {
		return nil, err
	}
	if err := needs(f, "free-chlorine"); err != nil {
		return nil, err
	}
	first, later := f.Concentration("free-chlorine"), f.Concentration("later")
	if later >= first*(1-slack) {
		return nil, f.Advise("later", "sheet.dechlorinate.later", "sheet.dechlorinate.later.advice", wording.Places{"first": first})
	}
	return new(water.HalfLife(first, later, f.Span("after"))), nil
}

func chlorineTest(f *worksheet.Form) water.Test {
	reading := func(flag string) *quantity.Concentration {
		if !f.Has(flag) {
			return nil
		}
		return new(f.Concentration(flag))
	}
	return water.Test{Free: reading("free-chlorine"), Total: reading("total-chlorine"), Combined: reading("chloramine")}
}

func chlorineFigures(r water.Residual, dose water.Dose, halfLife *quantity.Span, wait *water.Wait) chlorineAnswer {
	a := chlorineAnswer{
		Free: milligrams(r.Free), Combined: milligrams(r.Combined), Total: milligrams(r.Total),
		Chloramine: string(r.Chloramine), DoseOn: r.DoseOn.MilligramsPerLitre(),
		AgentG: dose.Exact.Grams(), WithMargin: dose.WithMargin.Grams(), RangeG: lowHigh{dose.Low.Grams(), dose.High.Grams()},
		HalfLifeH: hours(halfLife), AmmoniaN: milligrams(r.Ammonia()), Retest: "total-chlorine",
	}
	if wait != nil {
		a.Aeration = &waitJSON{hours(wait.Estimate), wait.Low.Hours(), wait.High.Hours()}
	}
	return a
}

// sayChlorine words the answer and what has to be watched.
func sayChlorine(r *worksheet.Result, residual water.Residual, dose water.Dose, agent water.Agent, wait *water.Wait) {
	key := "sheet.dechlorinate.answer"
	if residual.DoseOn == 0 {
		key = "sheet.dechlorinate.none"
	}
	r.Answer = wording.Say(key, wording.Places{"dose": dose.WithMargin, "agent": wording.Say("value.agent." + string(agent)), "on": residual.DoseOn})
	r.Caution("sheet.dechlorinate.retest")
	r.Caution("sheet.dechlorinate.chloramine-" + string(residual.Chloramine))
	if residual.Chloramine == water.Unknown && wait != nil {
		r.Caution("sheet.dechlorinate.free-only")
	}
	if residual.Chloramine != water.Absent {
		r.Caution("sheet.dechlorinate.contested")
	}
	if agent == water.SodiumThiosulfate {
		r.Caution("sheet.dechlorinate.thiosulfate")
	}
	r.Caution("sheet.dechlorinate.handling")
}
