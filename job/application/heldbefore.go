package application

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// HeldBefore is what was in an applicator last, as far as it matters to what
// lives in the tea and to the plants it goes on.
type HeldBefore string

// What an owner may say of it.
const (
	HeldTea       HeldBefore = "tea"
	HeldWater     HeldBefore = "water"
	HeldHerbicide HeldBefore = "herbicide"
	HeldCopper    HeldBefore = "copper"
	HeldOxidiser  HeldBefore = "oxidiser"
	HeldUnknown   HeldBefore = "unknown"
)

// Harmful tells whether traces of it can hurt the crop or the living product:
// then another tank is better. What nobody knows counts as the worst (common
// practice; labels and local codes come first).
func (h HeldBefore) Harmful() bool { return h != HeldTea && h != HeldWater }

// Advice tells what to do about it; use is false where another tank is to be
// taken.
func (h HeldBefore) Advice() (text wording.Text, use bool) {
	switch h {
	case HeldTea, HeldWater:
		return wording.Say("application.held.clean"), true
	case HeldCopper, HeldOxidiser:
		return wording.Say("application.held." + string(h)), true
	case HeldHerbicide:
		return wording.Say("application.held.herbicide"), false
	}
	return wording.Say("application.held.unknown"), false
}

// rinses is how often a tank is rinsed, each time with a tenth of what it holds
// (common practice of sprayer labels: triple rinse).
const rinses, rinsedWith = 3, 0.1

// Rinsing is how a tank is made as clean as it gets, where there is no other,
// and what doubt stays.
type Rinsing struct {
	Steps []wording.Text
	Doubt wording.Text
}

// Rinse is how to rinse an applicator of which something is known or feared.
// What it held in the past as tea or water needs no more than clean water. dead
// is what stays in pump, filter and hose; 0 is not known.
func (h HeldBefore) Rinse(tank, dead quantity.Volume) Rinsing {
	if !h.Harmful() {
		return Rinsing{}
	}
	r := Rinsing{Doubt: wording.Say("application.held.doubt")}
	say := func(key string, places ...wording.Places) {
		r.Steps = append(r.Steps, wording.Say("application.held.step."+key, places...))
	}
	say("empty")
	say("screens")
	say("rinse", wording.Places{"water": quantity.Volume(rinsedWith) * tank})
	switch h {
	case HeldOxidiser:
		say("air")
	case HeldCopper:
	default:
		say("cleaner")
	}
	say("plants")
	if left, err := Remaining(dead, quantity.Volume(rinsedWith)*tank, rinses); err == nil {
		r.Doubt = wording.Say("application.held.doubt.share", wording.Places{"n": math.Round(1 / left.Fraction())})
	}
	return r
}

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
func Remaining(stays, rinse quantity.Volume, times int) (quantity.Share, error) {
	if !(stays > 0) || !(rinse > 0) || times < 0 {
		return 0, fault.New("rinse", "", wording.Say("application.rinse"), wording.Say("application.rinse.allowed"), wording.Text{})
	}
	return quantity.Share(math.Pow(float64(stays/(stays+rinse)), float64(times))), nil
}
