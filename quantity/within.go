package quantity

import (
	"aerosteep/fault"
	"aerosteep/wording"
)

// Within refuses an amount outside low to high, and one that is no number. The
// field is what people know the input by: a flag without its dashes.
func Within[A Amount](field string, got, low, high A) error {
	if got >= low && got <= high {
		return nil
	}
	return outside(field, got, low, high)
}

// BareWithin is Within for a number without a unit.
func BareWithin(field string, got, low, high float64) error {
	if got >= low && got <= high {
		return nil
	}
	return outside(field, got, low, high)
}

func outside(field string, got, low, high any) error {
	given := wording.Say("quantity.given", wording.Places{"given": got})
	return fault.New(field, given.String(),
		wording.Say("quantity.outside", wording.Places{"given": given}),
		wording.Say("quantity.outside.allowed", wording.Places{"low": low, "high": high}),
		wording.Text{})
}
