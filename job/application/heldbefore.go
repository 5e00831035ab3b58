package application

import "aerosteep/wording"

// HeldBefore is what was in an applicator last, as far as it matters to what
// lives in the tea and to the plants it goes on.
type HeldBefore string

// Advice tells what to do about it; use is false where another tank is to be
// taken. What nobody knows counts as the worst (common practice; labels and local
// codes come first).
func (h HeldBefore) Advice() (text wording.Text, use bool) {
	switch h {
	case "tea", "water":
		return wording.Say("application.held.clean"), true
	case "copper", "oxidiser":
		return wording.Say("application.held." + string(h)), true
	case "herbicide":
		return wording.Say("application.held.herbicide"), false
	}
	return wording.Say("application.held.unknown"), false
}
