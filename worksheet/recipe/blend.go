package recipe

import (
	"aerosteep/job/bench"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var compostBlend = worksheet.Sheet{
	Name:  "compost-blend",
	Group: worksheet.Recipe,
	Inputs: []worksheet.Input{
		{Flag: "part", Kind: worksheet.Text, Required: true, Repeat: true},
		{Flag: "add", Kind: worksheet.Text},
		{Flag: "goal-cn", Kind: worksheet.Bare, Low: "0", Over: true, High: "500"},
		{Flag: "goal-moisture", Kind: worksheet.Bare, Low: "0", Over: true, High: "100"},
	},
	Example: `--part "grass: 10 kg, CN 19, N 2.4 %, moisture 77 %" --add "leaves: CN 80, N 0.75 %, moisture 35 %" --goal-cn 30 --goal-moisture 60`,
	Sources: []source.Source{source.CornellMix, source.CFR7Part205},
	Shape:   blendData{},
	Run:     runBlend,
}

type blendData struct {
	Mass            float64    `json:"mass_kg"`
	DryMass         float64    `json:"dry_mass_kg"`
	Moisture        float64    `json:"moisture_percent"`
	Ratio           float64    `json:"cn_ratio"`
	Carbon          float64    `json:"carbon_percent_dry"`
	Nitrogen        float64    `json:"nitrogen_percent_dry"`
	StartRatioOK    bool       `json:"start_cn_ok"`
	StartMoistureOK bool       `json:"start_moisture_ok"`
	ToAdd           []addition `json:"to_add"`
}

type addition struct {
	Name     string        `json:"name"`
	Goal     string        `json:"goal"`
	Target   float64       `json:"target"`
	Mass     *float64      `json:"mass_kg"`
	Moisture *float64      `json:"moisture_percent"`
	Ratio    *float64      `json:"cn_ratio"`
	Why      *wording.Text `json:"why"`
}

func runBlend(f *worksheet.Form) (*worksheet.Result, error) {
	blend, err := readBlend(f)
	if err != nil {
		return nil, err
	}
	toAdd, err := additions(f, blend)
	if err != nil {
		return nil, err
	}
	dry := func(m quantity.Mass) float64 { return float64(m/blend.Dry) * 100 }
	data := blendData{
		Mass: blend.Mass.Kilograms(), DryMass: blend.Dry.Kilograms(), Moisture: blend.Moisture().Percent(), Ratio: blend.CarbonToNitrogen(),
		Carbon: dry(blend.Carbon), Nitrogen: dry(blend.Nitrogen), StartRatioOK: blend.StartRatioOK(), StartMoistureOK: blend.StartMoistureOK(), ToAdd: toAdd,
	}
	r := &worksheet.Result{
		Answer: wording.Say("recipe.blend.answer", wording.Places{"ratio": data.Ratio, "moisture": data.Moisture}),
		Data:   data, Basis: worksheet.Standard, Sources: []source.Source{source.CornellMix, source.CFR7Part205},
	}
	for _, a := range toAdd {
		if a.Mass != nil {
			r.Notes = append(r.Notes, wording.Say("recipe.blend.add."+a.Goal, wording.Places{"mass": quantity.Grams(*a.Mass * 1000), "name": a.Name, "target": a.Target}))
		}
	}
	if len(toAdd) == 2 {
		r.Caution("recipe.blend.both")
	}
	return r, nil
}

func readBlend(f *worksheet.Form) (bench.Blend, error) {
	var parts []bench.Part
	for _, text := range f.Texts("part") {
		p, err := bench.ParsePart("part", text)
		if err != nil {
			return bench.Blend{}, err
		}
		parts = append(parts, p)
	}
	blend := bench.Mix(parts...)
	if blend.Nitrogen <= 0 {
		return blend, f.Refuse("part", "recipe.blend.no-nitrogen")
	}
	return blend, nil
}

// additions says how much of the other material reaches each goal.
func additions(f *worksheet.Form, blend bench.Blend) ([]addition, error) {
	goals := f.Given("goal-cn", "goal-moisture")
	switch {
	case f.Has("add") && len(goals) == 0:
		return nil, f.Refuse("goal-cn", "recipe.blend.no-goal")
	case !f.Has("add") && len(goals) > 0:
		return nil, f.Refuse("add", "worksheet.together", wording.Places{"missing": "--add", "given": "--" + goals[0]})
	case !f.Has("add"):
		return []addition{}, nil
	}
	material, err := bench.ParseMaterial("add", f.Text("add"))
	if err != nil {
		return nil, err
	}
	var all []addition
	if f.Has("goal-cn") {
		mass, possible := blend.ForRatio(material, f.Number("goal-cn"))
		all = append(all, added(blend, material, "cn", f.Number("goal-cn"), mass, possible))
	}
	if f.Has("goal-moisture") {
		mass, possible := blend.ForMoisture(material, quantity.Percent(f.Number("goal-moisture")))
		all = append(all, added(blend, material, "moisture", f.Number("goal-moisture"), mass, possible))
	}
	return all, nil
}

func added(blend bench.Blend, material bench.Material, goal string, target float64, mass quantity.Mass, possible bool) addition {
	a := addition{Name: material.Name, Goal: goal, Target: target}
	if !possible {
		a.Why = worksheet.Some(wording.Say("recipe.blend.why."+goal, wording.Places{"name": material.Name, "target": target}))
		return a
	}
	after := blend.And(bench.Part{Material: material, Mass: mass})
	a.Mass, a.Moisture, a.Ratio = worksheet.Some(mass.Kilograms()), worksheet.Some(after.Moisture().Percent()), worksheet.Some(after.CarbonToNitrogen())
	return a
}
