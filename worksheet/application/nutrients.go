package application

import (
	"aerosteep/fault"
	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var nutrients = worksheet.Sheet{
	Name: "nutrients", Group: worksheet.Application,
	Inputs: []worksheet.Input{
		{Flag: "analysis", Kind: worksheet.Text, Required: true},
		{Flag: "label-basis", Kind: worksheet.Choice, Choices: []string{"oxide", "element"}, Default: "oxide"},
		{Flag: "amount", Kind: worksheet.Text},
		{Flag: "density", Kind: worksheet.Density, Low: "0.5 kg/L", High: "3 kg/L"},
		{Flag: "target-n", Kind: worksheet.Concentration, Low: "0 mg/L", Over: true},
		{Flag: "volume", Kind: worksheet.Volume, Required: true, Low: "0 L", Over: true},
		{Flag: "area", Kind: worksheet.Area, Low: "0 m2", Over: true},
		{Flag: "tea-rate", Kind: worksheet.Dose, Low: "0 L/m2", Over: true},
	},
	Example: `--analysis 2-4-1 --amount "2 L" --density "1 kg/L" --volume "100 L" --tea-rate "187 L/ha"`,
	Sources: []source.Source{source.UMassFertilizer, source.IUPACMasses},
	Shape:   nutrientsAnswer{},
	Run:     runNutrients,
}

type nutrientsAnswer struct {
	Amount float64  `json:"amount_g"`
	N      float64  `json:"n_mg_per_l"`
	P2O5   float64  `json:"p2o5_mg_per_l"`
	K2O    float64  `json:"k2o_mg_per_l"`
	P      float64  `json:"p_mg_per_l"`
	K      float64  `json:"k_mg_per_l"`
	NHa    *float64 `json:"n_kg_per_ha"`
	P2O5Ha *float64 `json:"p2o5_kg_per_ha"`
	K2OHa  *float64 `json:"k2o_kg_per_ha"`
	PHa    *float64 `json:"p_kg_per_ha"`
	KHa    *float64 `json:"k_kg_per_ha"`
	Need   *float64 `json:"share_of_low_n_need_percent"`
}

func runNutrients(f *worksheet.Form) (*worksheet.Result, error) {
	label, err := application.ParseAnalysis(f.Text("analysis"), f.Text("label-basis") == "element")
	if err != nil {
		return nil, err
	}
	amount, err := readAmount(f, label)
	if err != nil {
		return nil, refused(f, err)
	}
	if len(f.Given("area", "tea-rate")) > 1 {
		return nil, f.Refuse("tea-rate", "worksheet.one-only", wording.Places{"flags": "--area, --tea-rate"})
	}
	brings := label.In(amount, f.Volume("volume"))
	answer := nutrientsAnswer{
		Amount: amount.Grams(), N: float64(brings.N), P2O5: float64(brings.P2O5), K2O: float64(brings.K2O), P: float64(brings.P), K: float64(brings.K),
	}
	places := wording.Places{"n": brings.N, "p": brings.P2O5, "k": brings.K2O, "amount": amount}
	r := &worksheet.Result{Answer: wording.Say("sheet.nutrients.answer", places), Sources: f.Sheet.Sources}
	if ground, there := treated(f); there {
		perHectare(label.On(amount, ground), &answer)
		r.Notes = []wording.Text{wording.Say("sheet.nutrients.ground", wording.Places{"n": quantity.GramsPerSquareMetre(*answer.NHa / 10), "share": quantity.Percent(*answer.Need)})}
	}
	r.Caution("application.no-fertilizer")
	r.Data = answer
	return r, nil
}

// treated is the ground that gets all of the liquid.
func treated(f *worksheet.Form) (quantity.Area, bool) {
	switch {
	case f.Has("area"):
		return f.Area("area"), true
	case f.Has("tea-rate"):
		return quantity.SquareMetres(f.Volume("volume").Litres() / f.Dose("tea-rate").LitresPerSquareMetre()), true
	}
	return 0, false
}

func perHectare(on application.Nutrients[quantity.MassDose], answer *nutrientsAnswer) {
	ha := func(d quantity.MassDose) *float64 { return worksheet.Some(d.KilogramsPerHectare()) }
	answer.NHa, answer.P2O5Ha, answer.K2OHa, answer.PHa, answer.KHa = ha(on.N), ha(on.P2O5), ha(on.K2O), ha(on.P), ha(on.K)
	answer.Need = worksheet.Some(float64(on.N/application.LowNitrogenNeed) * 100)
}

// readAmount reads a mass, a volume with its density, or the nitrogen that is
// to be reached.
func readAmount(f *worksheet.Form, label application.Analysis) (quantity.Mass, error) {
	mode, err := f.OneOf("amount", "target-n")
	if err != nil {
		return 0, err
	}
	if mode == "target-n" {
		return label.AmountFor(f.Concentration("target-n"), f.Volume("volume"))
	}
	mass, err := quantity.ParseMass(f.Text("amount"))
	if volume, liquid := quantity.ParseVolume(f.Text("amount")); err != nil && liquid == nil {
		if !f.Has("density") {
			return 0, f.Refuse("density", "application.liquid", wording.Places{"amount": volume})
		}
		mass, err = f.Density("density").MassOf(volume), nil
	}
	if err == nil && mass <= 0 {
		err = f.Refuse("amount", "application.amount.zero")
	}
	for _, wrong := range fault.Of(err) {
		wrong.Field, wrong.Allowed = "amount", wording.Say("application.amount.allowed")
	}
	return mass, err
}
