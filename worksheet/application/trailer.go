package application

import (
	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var trailerWeight = worksheet.Sheet{
	Name: "trailer-weight", Group: worksheet.Application,
	Inputs: []worksheet.Input{
		{Flag: "volume", Kind: worksheet.Volume, Required: true, Low: "0 L", Over: true},
		{Flag: "density", Kind: worksheet.Density, Low: "0.9 kg/L", High: "1.5 kg/L", Default: "1 kg/L"},
		{Flag: "tank-mass", Kind: worksheet.Mass, Low: "0 kg", Default: "0 kg"},
		{Flag: "trailer-mass", Kind: worksheet.Mass, Low: "0 kg", Default: "0 kg"},
		{Flag: "other-mass", Kind: worksheet.Mass, Low: "0 kg", Default: "0 kg"},
		{Flag: "rated-mass", Kind: worksheet.Mass, Low: "0 kg", Over: true},
		{Flag: "tank-size", Kind: worksheet.Volume, Low: "0 L", Over: true},
	},
	Example: `--volume "500 gal" --tank-mass "120 kg" --trailer-mass "600 kg" --rated-mass "2500 kg"`,
	Sources: []source.Source{source.NISTSP811},
	Shape:   trailerAnswer{},
	Run:     runTrailer,
}

type trailerAnswer struct {
	Liquid  float64  `json:"liquid_kg"`
	Total   float64  `json:"total_kg"`
	Pounds  float64  `json:"total_lb"`
	Rated   *float64 `json:"rated_kg"`
	Margin  *float64 `json:"margin_kg"`
	Load    *float64 `json:"load_percent"`
	Within  *bool    `json:"within_rating"`
	MostVol *float64 `json:"max_volume_l"`
	Fill    *float64 `json:"fill_percent"`
}

func runTrailer(f *worksheet.Form) (*worksheet.Result, error) {
	haul := application.Haul{
		Liquid: f.Volume("volume"), Density: f.Density("density"),
		Tank: f.Mass("tank-mass"), Trailer: f.Mass("trailer-mass"), Other: f.Mass("other-mass"),
		Rated: given[quantity.Mass](f, "rated-mass"), TankSize: given[quantity.Volume](f, "tank-size"),
	}
	w, err := haul.Weigh()
	if err != nil {
		return nil, refused(f, err)
	}
	r := &worksheet.Result{
		Answer: trailerSentence(w), Sources: f.Sheet.Sources,
		Data: trailerAnswer{
			Liquid: w.Liquid.Kilograms(), Total: w.Total.Kilograms(), Pounds: w.Total.Pounds(),
			Rated: in(haul.Rated, quantity.Mass.Kilograms), Margin: in(w.Margin, quantity.Mass.Kilograms),
			Load: w.Load, Within: w.Within, MostVol: in(w.MostLiquid, quantity.Volume.Litres), Fill: w.Fill,
		},
	}
	if w.Within != nil && !*w.Within {
		r.Caution("application.over-plate", wording.Places{"over": -*w.Margin, "most": *w.MostLiquid})
	}
	r.Caution("application.axles")
	if w.Sloshes() {
		r.Caution("application.slosh", wording.Places{"fill": *w.Fill})
	}
	return r, nil
}

func trailerSentence(w application.Weight) wording.Text {
	places := wording.Places{"total": w.Total, "liquid": w.Liquid}
	switch {
	case w.Within == nil:
		return wording.Say("sheet.trailer-weight.answer", places)
	case *w.Within:
		places["margin"] = *w.Margin
		return wording.Say("sheet.trailer-weight.within", places)
	}
	places["over"] = -*w.Margin
	return wording.Say("sheet.trailer-weight.over", places)
}
