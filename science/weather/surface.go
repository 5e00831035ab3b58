package weather

import (
	"time"

	"aerosteep/wording"
)

// SurfaceSign is what the hours before say of leaves and soil. Signs stand
// beside the marks and change none: only a look on the spot settles them.
type SurfaceSign string

// The signs.
const (
	WetLeaves   SurfaceSign = "wet-leaves"  // drops run together and off; for foliar
	FrozenSoil  SurfaceSign = "frozen-soil" // takes nothing in: it runs off
	Waterlogged SurfaceSign = "waterlogged"
)

// SurfaceSigns lists them in the order in which they are said.
var SurfaceSigns = []SurfaceSign{WetLeaves, FrozenSoil, Waterlogged}

// From when a sign is given. That frozen, flooded and saturated ground takes no
// liquid is the rule of 40 CFR 503.14(b) for biosolids (a yardstick, tea has no
// rule of its own); relative humidity of 90 % and more stands for wet leaves
// after Sentelhas et al. 2008, Agric. For. Meteorol. 148:392 (from memory). The
// hours and millimetres are judged.
const (
	wetFrom        = 90.0 // % relative humidity
	wetAfterRain   = 2 * time.Hour
	frozenOver     = 24 * time.Hour
	frozenUnder    = 0.0 // °C, mean air over that time
	floodedOver    = 24 * time.Hour
	floodedFrom    = 25.0 // mm
	fewestOfADay   = 12   // hours known, for a day to be spoken of
	wateredFarther = 48 * time.Hour
	wateredFrom    = 40.0
)

// surfaceSigns looks at an hour and those before it, as far as the file goes.
func surfaceSigns(hours []Hour, i int, m Method) []SurfaceSign {
	var signs []SurfaceSign
	if m == Foliar && wetLeaves(hours, i) {
		signs = append(signs, WetLeaves)
	}
	if mean, n := meanBefore(hours, i, frozenOver); n >= fewestOfADay && mean < frozenUnder {
		signs = append(signs, FrozenSoil)
	}
	if rainBefore(hours, i, floodedOver) >= floodedFrom || rainBefore(hours, i, wateredFarther) >= wateredFrom {
		signs = append(signs, Waterlogged)
	}
	return signs
}

// wetLeaves are wet of dew, or of rain in the two hours before.
func wetLeaves(hours []Hour, i int) bool {
	if rainBefore(hours, i, wetAfterRain) > 0 {
		return true
	}
	humidity, known := hours[i].relativeHumidity()
	return known && humidity >= wetFrom
}

// rainBefore is the rain of the hours that began within a time before an hour,
// mm; a sum over hours that are not known is one over those that are.
func rainBefore(hours []Hour, i int, within time.Duration) float64 {
	sum := 0.0
	for j := i - 1; j >= 0 && hours[i].At.Sub(hours[j].At) <= within; j-- {
		if r := hours[j].Rain; r != nil {
			sum += r.Millimetres()
		}
	}
	return sum
}

// meanBefore is the mean air over an hour and those before it, °C, and of how
// many hours.
func meanBefore(hours []Hour, i int, within time.Duration) (mean float64, n int) {
	sum := 0.0
	for j := i; j >= 0 && hours[i].At.Sub(hours[j].At) <= within; j-- {
		if t := hours[j].Temperature; t != nil {
			sum, n = sum+t.Celsius(), n+1
		}
	}
	return sum / float64(max(n, 1)), n
}

// Text says a sign and what to look at.
func (s SurfaceSign) Text() wording.Text { return wording.Say("weather.surface." + string(s)) }

// Name is the sign in a word or two.
func (s SurfaceSign) Name() wording.Text {
	return wording.Say("weather.surface." + string(s) + ".name")
}
