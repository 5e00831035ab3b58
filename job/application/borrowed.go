package application

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// LastHeld is what an applicator held before, as its owner says.
type LastHeld string

const (
	HeldTea       LastHeld = "tea"
	HeldWater     LastHeld = "water"
	HeldHerbicide LastHeld = "herbicide"
	HeldCopper    LastHeld = "copper"
	HeldOxidiser  LastHeld = "oxidiser"
	HeldUnknown   LastHeld = "unknown"
)

// Harmful tells whether traces of it can hurt the crop or the living product:
// then another tank is better, and what is not known counts as harmful
// (common practice).
func (h LastHeld) Harmful() bool { return h != HeldTea && h != HeldWater }

// Remaining is the share of what a tank held that is still in it after some
// rinses, when each mixes fully with what stays behind and is then let out:
//
//	(stays / (stays + rinse))^n
//
// stays and rinse over 0, n 0 or more. It says nothing of what clings to walls,
// hoses and screens: for a herbicide that remains the doubt, and the label of
// what was in it decides.
//
// Source: arithmetic of serial dilution.
func Remaining(stays, rinse quantity.Volume, rinses int) (quantity.Share, error) {
	if !(stays > 0) || !(rinse > 0) || rinses < 0 {
		return 0, fault.New("rinse", "", wording.Say("application.rinse"), wording.Say("application.rinse.allowed"), wording.Text{})
	}
	return quantity.Share(math.Pow(float64(stays/(stays+rinse)), float64(rinses))), nil
}
