package application

import (
	"math"
	"strconv"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// MixWords says a share the way it is measured out, so that nobody has to
// know a convention: "1 part tea + 8 parts water (11.1 % tea)".
type MixWords quantity.Share

// String is the mix in English, the fixed form of records and programs.
func (m MixWords) String() string { return m.Speak(wording.Reader{Language: wording.English}) }

// Speak puts the mix into the reader's language.
func (m MixWords) Speak(r wording.Reader) string {
	share := quantity.Share(m)
	if Undiluted(share) {
		return wording.Say("application.mix.undiluted").For(r)
	}
	parts := digits3(WaterPerTea(share))
	key := "application.mix"
	if parts == "1" {
		key = "application.mix.one"
	}
	return wording.Say(key, wording.Places{
		"parts":   marked(parts, r),
		"percent": marked(digits3(share.Percent()), r),
	}).For(r)
}

// digits3 rounds to 3 significant digits, in plain digits with no trailing
// zeros and no grouping.
func digits3(v float64) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// marked gives plain digits the reader's decimal mark.
func marked(digits string, r wording.Reader) string {
	if r.Language != wording.Spanish {
		return digits
	}
	b := []byte(digits)
	for i := range b {
		if b[i] == '.' {
			b[i] = ','
		}
	}
	return string(b)
}
