package quantity

import (
	"math"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Within refuses an amount outside low to high, and one that is no number. A
// slack of 1 in 10^9 keeps a limit that was converted (104 °F) a limit. The
// field is what people know the input by: a flag without its dashes.
func Within[A Amount](field string, got, low, high A) error {
	if inside(float64(got), float64(low), float64(high)) {
		return nil
	}
	return outside(field, got, low, high)
}

// BareWithin is Within for a number without a unit.
func BareWithin(field string, got, low, high float64) error {
	if inside(got, low, high) {
		return nil
	}
	return outside(field, got, low, high)
}

func inside(got, low, high float64) bool {
	slack := 1e-9 * max(math.Abs(low), math.Abs(high))
	return got >= low-slack && got <= high+slack
}

func outside(field string, got, low, high any) error {
	given := wording.Say("quantity.given", wording.Places{"given": got})
	return fault.New(field, given.String(),
		wording.Say("quantity.outside", wording.Places{"given": given}),
		wording.Say("quantity.outside.allowed", wording.Places{"low": low, "high": high}),
		wording.Text{})
}
