package quantity

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// ParseOxygen reads dissolved oxygen. It refuses what meters and papers tempt
// people into: percent, which says nothing until one knows percent of what,
// and mg/mL, a thousandfold slip that stands in print.
func ParseOxygen(text string) (Concentration, error) {
	reading, err := Read(text)
	if err != nil {
		return ParseConcentration(text)
	}
	slip := ""
	switch {
	case reading.Unit.Name == "%":
		slip = "quantity.oxygen-percent"
	case reading.Unit.Dim == massPerVolume && strings.EqualFold(strings.ReplaceAll(reading.Unit.Name, " ", ""), "mg/ml"):
		slip = "quantity.oxygen-mg-per-ml"
	default:
		return ParseConcentration(text)
	}
	return 0, fault.New("", text, wording.Say(slip), concKind.allowed(), wording.Say(slip+".advice", wording.Places{"number": Digits(reading.Number, 12)}))
}

// ParseFraction reads a part of one: a bare fraction, or a share with %.
func ParseFraction(text string) (Share, error) {
	if strings.Contains(text, "%") {
		return ParseShare(text)
	}
	v, err := Bare(text)
	return Share(v), err
}
