package application

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Standard atomic masses, g/mol (IUPAC).
const (
	phosphorusMass = 30.973762
	potassiumMass  = 39.0983
	oxygenMass     = 15.999
)

// Labels state phosphorus and potassium as oxides; these turn them into the
// elements: 2 P / P2O5 = 0.436427 and 2 K / K2O = 0.830151.
const (
	PhosphorusInOxide = 2 * phosphorusMass / (2*phosphorusMass + 5*oxygenMass)
	PotassiumInOxide  = 2 * potassiumMass / (2*potassiumMass + oxygenMass)
)

// LowNitrogenNeed is the low end of what crops take in a year, 50 to 200
// kg/ha of N.
var LowNitrogenNeed = quantity.GramsPerSquareMetre(5)

// Analysis is what a label states, as mass fractions of the oxides.
type Analysis struct{ N, P2O5, K2O float64 }

// ParseAnalysis reads "2-4-1", percent by mass. With element the last two are
// P and K instead of their oxides.
func ParseAnalysis(text string, element bool) (Analysis, error) {
	parts := strings.Split(strings.TrimSpace(text), "-")
	if len(parts) != 3 {
		return Analysis{}, badAnalysis(text, wording.Say("application.analysis.three"))
	}
	var percent [3]float64
	for i, part := range parts {
		v, err := quantity.Bare(part)
		if err != nil || v < 0 {
			return Analysis{}, badAnalysis(text, wording.Say("application.analysis.numbers"))
		}
		percent[i] = v
	}
	if sum := percent[0] + percent[1] + percent[2]; over(sum, 100) {
		return Analysis{}, badAnalysis(text, wording.Say("application.analysis.sum", wording.Places{"sum": sum}))
	}
	a := Analysis{percent[0] / 100, percent[1] / 100, percent[2] / 100}
	if element {
		a.P2O5 /= PhosphorusInOxide
		a.K2O /= PotassiumInOxide
	}
	return a, nil
}

func badAnalysis(text string, what wording.Text) *fault.Fault {
	return fault.New("analysis", text, what, wording.Say("application.analysis.allowed"), wording.Text{})
}

// Nutrients are five ways to count the same label, in one unit.
type Nutrients[Q ~float64] struct{ N, P2O5, K2O, P, K Q }

func (a Analysis) times(q float64) [5]float64 {
	return [5]float64{a.N * q, a.P2O5 * q, a.K2O * q, a.P2O5 * PhosphorusInOxide * q, a.K2O * PotassiumInOxide * q}
}

// In is what an amount brings to a volume: mass x fraction / volume. The
// volume must be over 0.
//
// Source: University of Massachusetts Extension, fertilizer calculations.
func (a Analysis) In(amount quantity.Mass, volume quantity.Volume) Nutrients[quantity.Concentration] {
	v := a.times(amount.Milligrams() / volume.Litres())
	return Nutrients[quantity.Concentration]{quantity.Concentration(v[0]), quantity.Concentration(v[1]), quantity.Concentration(v[2]), quantity.Concentration(v[3]), quantity.Concentration(v[4])}
}

// On is what an amount brings to ground that gets all of it. The area must be
// over 0.
func (a Analysis) On(amount quantity.Mass, ground quantity.Area) Nutrients[quantity.MassDose] {
	v := a.times(amount.Grams() / ground.SquareMetres())
	return Nutrients[quantity.MassDose]{quantity.MassDose(v[0]), quantity.MassDose(v[1]), quantity.MassDose(v[2]), quantity.MassDose(v[3]), quantity.MassDose(v[4])}
}

// AmountFor is the mass that brings a volume to a concentration of nitrogen.
// A label without nitrogen cannot.
func (a Analysis) AmountFor(nitrogen quantity.Concentration, volume quantity.Volume) (quantity.Mass, error) {
	if a.N == 0 {
		return 0, fault.New("target-n", "", wording.Say("application.no-nitrogen"), wording.Say("application.no-nitrogen.allowed"), wording.Say("application.no-nitrogen.advice"))
	}
	return quantity.Grams(nitrogen.GramsPerLitre() * volume.Litres() / a.N), nil
}
