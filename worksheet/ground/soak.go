package ground

import (
	"aerosteep/job/ground"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var soak = worksheet.Sheet{
	Name:  "soak",
	Group: worksheet.Ground,
	Inputs: []worksheet.Input{
		over0("volume", worksheet.Volume, "0 L"),
		over0("area", worksheet.Area, "0 m2"),
		{Flag: "water-depth", Kind: worksheet.WaterDepth, Low: "0 mm", High: "1 m", Over: true},
		{Flag: "wet-depth", Kind: worksheet.SmallLength, Low: "0 m", High: "5 m", Over: true},
		{Flag: "soil", Kind: worksheet.Choice, Choices: textures()},
		{Flag: "available-water", Kind: worksheet.WaterHolding, Low: "1 mm/m", High: "600 mm/m"},
		over0("intake", worksheet.DepthRate, "0 mm/h"),
		{Flag: "depleted", Kind: worksheet.Bare, Default: "50", Low: "1", High: "100"},
		over0("over", worksheet.Span, "0 s"),
		{Flag: "surface-storage", Kind: worksheet.SmallLength, Default: "2 mm", Low: "0 mm", High: "10 cm"},
		{Flag: "slope", Kind: worksheet.Bare, Default: "0", Low: "0", High: "100"},
	},
	Example: `--volume "20 L" --area "10 m2" --soil loam --over "5 min"`,
	Sources: []source.Source{source.NMSUSoil, source.CommonPractice},
	Shape:   soakAnswer{},
	Run:     runSoak,
}

func textures() []string {
	names := make([]string, len(ground.Soils))
	for i, s := range ground.Soils {
		names[i] = string(s.Texture)
	}
	return names
}

type soakAnswer struct {
	AppliedMM       float64  `json:"applied_mm"`
	AppliedL        *float64 `json:"applied_l"`
	WettedDepthMM   float64  `json:"wetted_depth_mm"`
	AvailableWater  float64  `json:"available_water_mm_per_m"`
	Intake          float64  `json:"intake_mm_per_h"`
	NoPondingMinute float64  `json:"no_ponding_minutes"`
	Rate            *float64 `json:"rate_mm_per_h"`
	PondingMM       *float64 `json:"ponding_mm"`
	Verdict         *string  `json:"verdict"`
}

func runSoak(f *worksheet.Form) (*worksheet.Result, error) {
	soil, err := reservoir(f)
	if err != nil {
		return nil, err
	}
	applied, err := drench(f, soil)
	if err != nil {
		return nil, err
	}
	if !f.Has("over") {
		if err := f.OnlyWith(without("over"), nil, "surface-storage", "slope"); err != nil {
			return nil, err
		}
	}
	a := soakAnswer{
		AppliedMM:       applied.LitresPerSquareMetre(),
		WettedDepthMM:   soil.WettedDepth(applied).Millimetres(),
		AvailableWater:  soil.Available.MillimetresPerMetre(),
		Intake:          soil.Intake.MillimetresPerHour(),
		NoPondingMinute: soil.NoPonding(applied).Minutes(),
	}
	if f.Has("area") {
		a.AppliedL = new(applied.LitresPerSquareMetre() * f.Number("area"))
	}
	r := &worksheet.Result{Basis: worksheet.Habit, Sources: f.Sheet.Sources}
	r.Answer = wording.Say("sheet.soak.answer", wording.Places{"applied": quantity.Metres(a.AppliedMM / 1000), "depth": quantity.Metres(a.WettedDepthMM / 1000)})
	if f.Has("over") {
		soakRate(f, soil, applied, &a, r)
	}
	r.Caution("sheet.soak.try")
	r.Data = a
	return r, finite(f, "area", a.AppliedMM, a.WettedDepthMM, a.NoPondingMinute)
}

// reservoir is the soil's numbers, each overridden by its own flag.
func reservoir(f *worksheet.Form) (ground.Reservoir, error) {
	r := ground.Reservoir{Depleted: quantity.Percent(f.Number("depleted"))}
	if f.Has("soil") {
		soil, _ := ground.FindSoil(ground.Texture(f.Text("soil")))
		r.Available, r.Intake = soil.AvailableWater(), soil.FinalIntake
	} else if len(f.Given("available-water", "intake")) == 0 {
		return r, f.Refuse("soil", "worksheet.missing", wording.Places{"flag": "--soil"})
	} else if err := needs(f, "available-water", "intake"); err != nil {
		return r, err
	}
	if f.Has("available-water") {
		r.Available = quantity.WaterHolding(f.Number("available-water"))
	}
	if f.Has("intake") {
		r.Intake = f.DepthRate("intake")
	}
	return r, nil
}

// drench is what is put on, by whichever way it was said.
func drench(f *worksheet.Form, soil ground.Reservoir) (quantity.Dose, error) {
	flag, err := f.OneOf("volume", "water-depth", "wet-depth")
	if err != nil {
		return 0, err
	}
	switch flag {
	case "volume":
		return quantity.LitresPerSquareMetre(f.Number("volume") / f.Number("area")), needs(f, "area")
	case "water-depth":
		return f.Dose("water-depth"), nil
	}
	return soil.ToWet(f.Length("wet-depth")), nil
}

// soakRate adds what the time of applying does.
func soakRate(f *worksheet.Form, soil ground.Reservoir, applied quantity.Dose, a *soakAnswer, r *worksheet.Result) {
	on := soil.Apply(applied, f.Span("over"), ground.Surface{Storage: f.Length("surface-storage"), Slope: quantity.Percent(f.Number("slope"))})
	a.Rate, a.PondingMM, a.Verdict = new(on.Rate.MillimetresPerHour()), new(on.Ponding.Millimetres()), new(string(on.Verdict))
	r.Notes = append(r.Notes, wording.Say("sheet.soak."+string(on.Verdict), wording.Places{"ponding": on.Ponding, "time": soil.NoPonding(applied)}))
	if on.Verdict == ground.RunsOff {
		r.Caution("sheet.soak.pulses", wording.Places{"time": soil.NoPonding(applied)})
	}
}
