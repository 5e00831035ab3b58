package heat

import (
	"testing"

	"aerosteep/quantity"
)

// Three ice cubes of 6 g cool 0.25 kg of soda from 20 °C to 13 °C (OpenStax,
// College Physics 2e, example 14.4, "Calculate the Final Temperature from Phase
// Change"; the answer is given to whole degrees).
func TestIceCoolsASoda(t *testing.T) {
	soda := quantity.Litres(0.25)
	most, least := IceToCool(soda, 20, 12.5).Grams(), IceToCool(soda, 20, 13.5).Grams()
	if !(least < 18 && 18 < most) {
		t.Errorf("18 g lies outside %.1f to %.1f g", least, most)
	}
	if IceToCool(soda, 10, 20) != 0 {
		t.Error("ice for water that is cool enough")
	}
}
