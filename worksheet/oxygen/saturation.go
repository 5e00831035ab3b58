package oxygen

import (
	"aerosteep/quantity"
	"aerosteep/science/oxygen"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/place"
)

var saturation = worksheet.Sheet{
	Name:  "saturation",
	Group: worksheet.Air,
	Inputs: withPlace(
		worksheet.Input{Flag: "temp", Kind: worksheet.Temperature, Required: true, Low: "0 °C", High: "40 °C"},
		worksheet.Input{Flag: "conductivity", Kind: worksheet.Conductivity, Low: "0 mS/cm", High: "50 mS/cm"},
		worksheet.Input{Flag: "salinity", Kind: worksheet.Bare, Low: "0", High: "40"},
		worksheet.Input{Flag: "depth", Kind: worksheet.Length, Low: "0 m", High: "5 m"},
		worksheet.Input{Flag: "reading", Kind: worksheet.Oxygen, Low: "0 mg/L", High: "50 mg/L"},
		worksheet.Input{Flag: "steady", Kind: worksheet.Switch},
	),
	Example: `--temp 67F --altitude "2100 ft" --conductivity "1200 uS/cm" --depth "0.6 m" --reading "10 mg/L" --steady`,
	Sources: saturationSources,
	Shape:   saturationAnswer{},
	Run:     runSaturation,
}

var saturationSources = []source.Source{source.BensonKrause1984, source.USGS201103, source.StandardMethods4500O, place.Source, source.Kell1975}

type saturationAnswer struct {
	Saturation         float64 `json:"saturation_mg_per_l"`
	SeaLevelSaturation float64 `json:"sea_level_saturation_mg_per_l"`
	place.Keys
	Salinity    float64       `json:"salinity_psu"`
	MidDepth    *float64      `json:"mid_depth_saturation_mg_per_l"`
	Percent     *float64      `json:"percent_saturation"`
	PlausibleTo *float64      `json:"plausible_to_mg_per_l"`
	CredibleTo  *float64      `json:"credible_to_mg_per_l"`
	Verdict     *string       `json:"verdict"`
	Advice      *wording.Text `json:"advice"`
}

func runSaturation(f *worksheet.Form) (*worksheet.Result, error) {
	at, err := place.Read(f)
	if err != nil {
		return nil, err
	}
	salt, err := salinity(f)
	if err != nil {
		return nil, err
	}
	water := f.Temperature("temp")
	held, err := oxygen.Saturation(water, at.Pressure, salt)
	if err != nil {
		return nil, err
	}
	atSea, err := oxygen.Saturation(water, quantity.StandardAtmosphere, salt)
	if err != nil {
		return nil, err
	}
	answer := saturationAnswer{
		Saturation: float64(held), SeaLevelSaturation: float64(atSea),
		Keys: at.Keys(), Salinity: salt.PSU(),
	}
	r := &worksheet.Result{
		Answer: wording.Say("sheet.saturation.answer", wording.Places{"held": held, "temp": water}),
		Basis:  worksheet.Standard, Sources: saturationSources,
	}
	ceiling := held
	if f.Has("depth") {
		if ceiling, err = oxygen.SaturationAtDepth(water, at.Pressure, salt, f.Length("depth")); err != nil {
			return nil, err
		}
		answer.MidDepth = number(ceiling)
	}
	if f.Has("reading") {
		answer.judge(f.Concentration("reading"), held, oxygen.CeilingOf(ceiling, f.On("steady")), r)
	}
	at.Tell(r)
	r.Data = answer
	return r, nil
}

// salinity is typed, or follows from the conductivity, or is none.
func salinity(f *worksheet.Form) (quantity.Salinity, error) {
	if f.Has("conductivity") && f.Has("salinity") {
		return 0, f.Refuse("salinity", "worksheet.one-only", wording.Places{"flags": "--conductivity, --salinity"})
	}
	if f.Has("conductivity") {
		return oxygen.SaltFromConductivity(f.Conductivity("conductivity"))
	}
	return quantity.Salinity(f.Number("salinity")), nil
}

// judge fills in what a reading says about its meter.
func (a *saturationAnswer) judge(reading, held quantity.Concentration, ceiling oxygen.Ceiling, r *worksheet.Result) {
	verdict := ceiling.Judge(reading)
	percent := oxygen.Percent(reading, held)
	advice := wording.Say("oxygen.reading."+string(verdict)+".advice", wording.Places{"to": ceiling.PlausibleTo})
	a.Percent = &percent
	a.PlausibleTo, a.CredibleTo = number(ceiling.PlausibleTo), number(ceiling.CredibleTo)
	a.Verdict, a.Advice = worksheet.Some(string(verdict)), &advice
	r.Basis = worksheet.Physics
	r.Notes = append(r.Notes, wording.Say("oxygen.reading."+string(verdict), wording.Places{"reading": reading, "percent": percent, "to": ceiling.PlausibleTo}))
}
