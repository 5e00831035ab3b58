package hygiene

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Sanitizer is a chemical that cleaned surfaces are wetted with.
type Sanitizer string

// The agents.
const (
	Hypochlorite Sanitizer = "sodium-hypochlorite"
	Peroxide     Sanitizer = "hydrogen-peroxide"
	Peracetic    Sanitizer = "peracetic-acid"
)

// Agent is what is known of a sanitizer. Minutes are nil where the label says.
type Agent struct {
	Usual          *quantity.Concentration // nil: by its label
	MinMinutes     *float64
	MaxMinutes     *float64
	NeverMix       []string
	NoRinseCeiling *quantity.Concentration // for food contact surfaces
}

// Agents are the sanitizers with their usual strength and contact time.
//
// Source: 21 CFR 178.1010 (200 mg/L of available chlorine without a rinse);
// strengths and times common practice on clean surfaces; what never meets what
// is general chemical safety: chlorine with acid gives chlorine gas.
var Agents = map[Sanitizer]Agent{
	Hypochlorite: {Usual: milligrams(200), MinMinutes: number(2), NoRinseCeiling: milligrams(200),
		NeverMix: []string{"acid", "ammonia", "hydrogen-peroxide", "peracetic-acid"}},
	Peroxide: {Usual: milligrams(30000), MinMinutes: number(10), MaxMinutes: number(30),
		NeverMix: []string{"sodium-hypochlorite", "acid"}},
	Peracetic: {NeverMix: []string{"sodium-hypochlorite"}},
}

func milligrams(v float64) *quantity.Concentration {
	c := quantity.MilligramsPerLitre(v)
	return &c
}

func number(v float64) *float64 { return &v }

// milligramsPerPercent is 1 % as grams per 100 mL.
const milligramsPerPercent = 10000

// Strength is a share read as mass per volume: 1 % is 10 g/L times the density
// of the liquid where the label's percent is by mass.
func Strength(share quantity.Share, density quantity.Density) quantity.Concentration {
	return quantity.MilligramsPerLitre(share.Percent() * milligramsPerPercent * density.GramsPerMillilitre())
}

// Dilution is how much of a bottle goes into how much water.
type Dilution struct {
	Stock, Water quantity.Volume
	Target       quantity.Concentration
}

// Dilute finds the stock for a made-up volume: volume x target / stock.
//
// Error: a fault where the target is not below the stock.
func Dilute(made quantity.Volume, target, stock quantity.Concentration) (Dilution, error) {
	if target >= stock {
		return Dilution{}, fault.New("target", "",
			wording.Say("hygiene.target-over-stock", wording.Places{"target": target, "stock": stock}),
			wording.Say("hygiene.target-over-stock.allowed", wording.Places{"stock": stock}), wording.Say("hygiene.target-over-stock.advice"))
	}
	v := quantity.Volume(float64(made) * float64(target) / float64(stock))
	return Dilution{Stock: v, Water: made - v, Target: target}, nil
}
