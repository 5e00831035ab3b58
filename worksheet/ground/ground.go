// Package ground holds the worksheets about the ground, the water and the sky:
// everything before the brew, and the hours after it.
package ground

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// Sheets are the worksheets of this room in the order of the work.
func Sheets() []worksheet.Sheet {
	return []worksheet.Sheet{area, soak, vesselVolume, fillTime, dechlorinate, mixWater, cooling, wetBulb, sun, sprayHours}
}

// over0 is a length, a volume or what else that must be more than nothing.
func over0(flag string, kind *worksheet.Kind, zero string) worksheet.Input {
	return worksheet.Input{Flag: flag, Kind: kind, Low: zero, Over: true}
}

func required(in worksheet.Input) worksheet.Input { in.Required = true; return in }

// needs refuses the first of the flags that was not given.
func needs(f *worksheet.Form, flags ...string) error {
	for _, flag := range flags {
		if !f.Has(flag) {
			return f.Refuse(flag, "worksheet.missing", wording.Places{"flag": "--" + flag})
		}
	}
	return nil
}

// mode is one way to fill a form in: the flags it takes and those it needs.
type mode struct {
	needs, takes []string
}

// check refuses a flag of another mode and a missing one of this.
func (m mode) check(f *worksheet.Form, name any, all ...string) error {
	if err := f.OnlyWith(name, append(append([]string{}, m.needs...), m.takes...), all...); err != nil {
		return err
	}
	return needs(f, m.needs...)
}

// without names the mode of a form in which a flag was left out.
func without(flag string) wording.Text {
	return wording.Say("ground.without", wording.Places{"flag": "--" + flag})
}

// slack keeps a limit a limit after a conversion of units.
const slack = 1e-9

// upTo refuses a flag's value over a limit that another input sets.
func upTo(f *worksheet.Form, flag string, limit float64, allowed wording.Speaker) error {
	if v := f.Number(flag); v > limit*(1+slack) {
		wrong := f.Refuse(flag, "worksheet.outside", wording.Places{"given": f.Text(flag)})
		wrong.Allowed = wording.Say("ground.at-most", wording.Places{"limit": allowed})
		return wrong
	}
	return nil
}

// asFlag gives the fault of a calculation the flag it is about.
func asFlag(err error, flag string) error {
	for _, wrong := range fault.Of(err) {
		if wrong.Field == "" {
			wrong.Field = flag
		}
	}
	return err
}

// finite refuses sizes that no number holds.
func finite(f *worksheet.Form, flag string, values ...float64) error {
	for _, v := range values {
		if math.IsInf(v, 0) || math.IsNaN(v) {
			return f.Refuse(flag, "quantity.too-large")
		}
	}
	return nil
}

func metres(l *quantity.Length) *float64 {
	if l == nil {
		return nil
	}
	return new(l.Metres())
}

func milligrams(c *quantity.Concentration) *float64 {
	if c == nil {
		return nil
	}
	return new(c.MilligramsPerLitre())
}

func hours(s *quantity.Span) *float64 {
	if s == nil {
		return nil
	}
	return new(s.Hours())
}
