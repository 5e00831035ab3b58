package application

import (
	"slices"

	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var waterChlorine = worksheet.Input{Flag: "water-chlorine", Kind: worksheet.Concentration, Low: "0 mg/L", High: "20 mg/L"}

// detectable is the total chlorine that a kit still shows; less harms no tea
// that anybody could tell (common practice).
const detectable = quantity.Concentration(0.1)

var dilute = worksheet.Sheet{
	Name: "dilute", Group: worksheet.Application,
	Inputs: slices.Concat([]worksheet.Input{
		{Flag: "tea", Kind: worksheet.Volume, Low: "0 L", Over: true},
		{Flag: "water", Kind: worksheet.Volume, Low: "0 L"},
		{Flag: "tank", Kind: worksheet.Volume, Low: "0 L", Over: true},
	}, dilutionInputs(), []worksheet.Input{waterChlorine}),
	Example: `--tank "5 gal" --ratio 1:10`,
	Sources: []source.Source{source.MixingArithmetic},
	Shape:   diluteAnswer{},
	Run:     runDilute,
}

type diluteAnswer struct {
	Tea   float64 `json:"tea_l"`
	Water float64 `json:"water_l"`
	Total float64 `json:"total_l"`
	Words
	OneIn    float64       `json:"one_in"`
	Other    *otherReading `json:"other_reading"`
	Chlorine *float64      `json:"chlorine_in_mix_mg_per_l"`
}

type otherReading struct {
	Convention string  `json:"convention"`
	PercentTea float64 `json:"percent_tea"`
	Tea        float64 `json:"tea_l"`
	Water      float64 `json:"water_l"`
	Total      float64 `json:"total_l"`
}

func runDilute(f *worksheet.Form) (*worksheet.Result, error) {
	d, err := readDilution(f)
	if err != nil {
		return nil, err
	}
	known := application.Mixing{
		Tea: given[quantity.Volume](f, "tea"), Water: given[quantity.Volume](f, "water"),
		Tank: given[quantity.Volume](f, "tank"), Share: d.share,
	}
	mix, err := known.Amounts()
	if err != nil {
		return nil, refused(f, err)
	}
	answer := diluteAnswer{
		Tea: mix.Tea.Litres(), Water: mix.Water.Litres(), Total: mix.Total.Litres(),
		Words: words(&mix.Share), OneIn: application.OneIn(mix.Share), Other: readOtherwise(known, d),
	}
	r := &worksheet.Result{
		Answer:  wording.Say("sheet.dilute.answer", wording.Places{"tea": mix.Tea, "water": mix.Water, "total": mix.Total, "mix": mixText(mix.Share)}),
		Sources: f.Sheet.Sources,
	}
	d.askTurned(r)
	if f.Has("water-chlorine") {
		chlorine := mix.ChlorineInMix(f.Concentration("water-chlorine"))
		answer.Chlorine = worksheet.Some(chlorine.MilligramsPerLitre())
		cautionChlorine(r, chlorine)
	}
	r.Data = answer
	return r, nil
}

func readOtherwise(known application.Mixing, d dilution) *otherReading {
	if d.ratio == nil {
		return nil
	}
	other, possible := known.OtherReading(*d.ratio, d.convention)
	if !possible {
		return nil
	}
	return &otherReading{string(d.convention.Other()), other.Share.Percent(), other.Tea.Litres(), other.Water.Litres(), other.Total.Litres()}
}

func cautionChlorine(r *worksheet.Result, chlorine quantity.Concentration) {
	if chlorine > detectable*(1+1e-9) {
		r.Caution("application.chlorine", wording.Places{"chlorine": chlorine})
	}
}
