package hygiene

import (
	"aerosteep/job/hygiene"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var classATime = worksheet.Sheet{
	Name:  "class-a-time",
	Group: worksheet.Hygiene,
	Inputs: []worksheet.Input{
		{Flag: "temp", Kind: worksheet.Temperature, Required: true, Low: "50 °C", High: "100 °C", Reason: "laboratory.class-a.cold"},
		{Flag: "solids", Kind: worksheet.Share, Low: "0 %", High: "100 %", Unknown: true},
		yesNoInput("small-particles"),
	},
	Example: "--temp 65C",
	Sources: []source.Source{source.CFR40Part503},
	Shape:   holding{},
	Run:     runClassATime,
}

type holding struct {
	Days         float64 `json:"days"`
	Hours        float64 `json:"hours"`
	Equation     int     `json:"equation"`
	Regime       string  `json:"regime"`
	FloorApplied bool    `json:"floor_applied"`
}

func runClassATime(f *worksheet.Form) (*worksheet.Result, error) {
	t := f.Temperature("temp")
	if f.Has("solids") && f.Share("solids").Fraction() < 0.07-1e-12 && f.Text("small-particles") == "yes" {
		return nil, wrong("small-particles", "yes", "laboratory.class-a.thin", "laboratory.class-a.thin.allowed")
	}
	solids := worksheet.Some(f.Share("solids"))
	if !f.Has("solids") {
		solids = nil
	}
	h := hygiene.ClassATime(t, solids, f.Text("small-particles") == "yes")
	result := &worksheet.Result{
		Answer:  wording.Say("sheet.class-a-time.answer", wording.Places{"time": h.For, "temp": t, "regime": h.Regime}),
		Data:    holding{h.For.Days(), h.For.Hours(), h.Equation, h.Regime, h.FloorApplied},
		Basis:   worksheet.Standard,
		Sources: []source.Source{source.CFR40Part503},
	}
	if h.Equation == 3 && h.FloorApplied {
		result.Caution("laboratory.caution.class-a-gap")
	}
	result.Caution("laboratory.caution.class-a")
	return result, nil
}
