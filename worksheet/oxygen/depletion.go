package oxygen

import (
	"aerosteep/quantity"
	"aerosteep/science/oxygen"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/place"
)

var depletion = worksheet.Sheet{
	Name:  "depletion",
	Group: worksheet.Air,
	Inputs: withPlace(
		worksheet.Input{Flag: "do", Kind: worksheet.Oxygen, Required: true, Low: "0 mg/L", High: "50 mg/L"},
		worksheet.Input{Flag: "our", Kind: worksheet.Uptake, Required: true, Low: "0 mg/L/h", High: "2000 mg/L/h"},
		worksheet.Input{Flag: "limit", Kind: worksheet.Oxygen, Required: true, Low: "0 mg/L", High: "50 mg/L"},
		worksheet.Input{Flag: "dilution", Kind: worksheet.Bare, Default: "1", Low: "1", High: "10000"},
		worksheet.Input{Flag: "surface-kla", Kind: worksheet.PerTime, Default: "0 /h", Low: "0 /h", High: "10 /h"},
		worksheet.Input{Flag: "temp", Kind: worksheet.Temperature, Low: "0 °C", High: "40 °C"},
	),
	Example: `--do "7 mg/L" --our "20 mg/L/h" --limit "2 mg/L" --surface-kla "0.1 /h" --temp 22C --altitude "640 m"`,
	Sources: depletionSources,
	Shape:   depletionAnswer{},
	Run:     runDepletion,
}

var depletionSources = []source.Source{source.MassBalance, source.BensonKrause1984, place.Source}

type depletionAnswer struct {
	Minutes     *float64 `json:"minutes_to_limit"`
	Reaches     bool     `json:"reaches_limit"`
	UptakeUsed  float64  `json:"our_used_mg_per_l_h"`
	Equilibrium *float64 `json:"equilibrium_do_mg_per_l"`
	Saturation  *float64 `json:"saturation_mg_per_l"`
	place.Keys
}

// thinTail is the limit below which life slows and the answer errs.
const thinTail = quantity.Concentration(1)

func runDepletion(f *worksheet.Form) (*worksheet.Result, error) {
	at, err := place.Read(f)
	if err != nil {
		return nil, err
	}
	limit := f.Concentration("limit")
	standing := oxygen.Standing{
		Start:      f.Concentration("do"),
		Uptake:     f.Uptake("our") / quantity.Uptake(f.Number("dilution")),
		SurfaceKLa: f.PerTime("surface-kla"),
	}
	answer := depletionAnswer{UptakeUsed: float64(standing.Uptake)}
	r := &worksheet.Result{Basis: worksheet.Physics, Sources: depletionSources}
	if standing.SurfaceKLa > 0 {
		if err := answer.surface(f, at, &standing); err != nil {
			return nil, err
		}
		at.Tell(r)
	}
	left, reaches, err := standing.TimeTo(limit)
	if err != nil {
		return nil, err
	}
	answer.Reaches = reaches
	r.Answer = wording.Say("sheet.depletion.never", wording.Places{"limit": limit})
	if reaches {
		answer.Minutes = worksheet.Some(left.Minutes())
		r.Answer = wording.Say("sheet.depletion.answer", wording.Places{"time": left, "limit": limit, "do": standing.Start})
		r.Plot = standingPlot(standing, limit, left, r.Answer)
	}
	r.Caution("oxygen.depletion.mixed")
	if limit < thinTail {
		r.Caution("oxygen.depletion.tail")
	}
	r.Data = answer
	return r, nil
}

// surface fills in what an open surface gives back.
func (a *depletionAnswer) surface(f *worksheet.Form, at place.Place, s *oxygen.Standing) error {
	if !f.Has("temp") {
		return f.Refuse("temp", "worksheet.together", wording.Places{"missing": "--temp", "given": "--surface-kla"})
	}
	held, err := oxygen.Saturation(f.Temperature("temp"), at.Pressure, 0)
	if err != nil {
		return err
	}
	s.Saturation = held
	a.Saturation, a.Equilibrium, a.Keys = number(held), number(s.Equilibrium()), at.Keys()
	return nil
}
