package worksheet

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Has tells whether a flag was given.
func (f *Form) Has(flag string) bool { return len(f.values[f.input(flag).Flag]) > 0 }

// input finds a declared input; asking for another is a slip in the sheet.
func (f *Form) input(flag string) *Input {
	in, known := f.Sheet.Input(flag)
	if !known {
		panic("worksheet: sheet " + f.Sheet.Name + " has no input " + flag)
	}
	return in
}

// Text is a flag's text as typed, or its default.
func (f *Form) Text(flag string) string {
	in := f.input(flag)
	if texts := f.values[flag]; len(texts) > 0 {
		return texts[0]
	}
	return in.Default
}

// Texts are all the texts of a flag that may repeat.
func (f *Form) Texts(flag string) []string { return f.values[f.input(flag).Flag] }

// Words are the items of a list of choices.
func (f *Form) Words(flag string) []string {
	if text := f.Text(flag); text != "" {
		return SplitList(text)
	}
	return nil
}

// On tells whether a switch is on.
func (f *Form) On(flag string) bool {
	text := f.Text(flag)
	return text == "true" || text == "on"
}

// FileName is the name of a file that was given, for messages.
func (f *Form) FileName(flag string) string {
	if name := f.names[flag]; name != "" {
		return name
	}
	return flag
}

// IsFile tells whether a FileOrName came from a file, whose text is its Text.
func (f *Form) IsFile(flag string) bool { return f.names[flag] != "" }

// Number is the value of a numeric flag, or of its default, in the unit that
// the quantity's type keeps; 0 where there is neither.
func (f *Form) Number(flag string) float64 {
	in := f.input(flag)
	text := f.Text(flag)
	if text == "" {
		return 0
	}
	v, err := in.Kind.parse(text)
	if err != nil {
		panic(fmt.Sprintf("worksheet: --%s %q passed its check and then failed: %v", flag, text, err))
	}
	return v
}

// Numbers is the value of a numeric list.
func (f *Form) Numbers(flag string) []float64 {
	text := f.Text(flag)
	if text == "" {
		return nil
	}
	values, err := f.input(flag).numbers(text)
	if err != nil {
		panic(fmt.Sprintf("worksheet: --%s %q passed its check and then failed: %v", flag, text, err))
	}
	return values
}

// Int is the value of a whole number.
func (f *Form) Int(flag string) int { return int(math.Round(f.Number(flag))) }

// Day is the value of a date.
func (f *Form) Day(flag string) time.Time {
	t, _ := time.Parse(time.DateOnly, f.Text(flag))
	return t
}

// The typed values; the declared kind and the asked type agree by name.
func (f *Form) Temperature(flag string) quantity.Temperature {
	return quantity.Temperature(f.Number(flag))
}
func (f *Form) Length(flag string) quantity.Length     { return quantity.Length(f.Number(flag)) }
func (f *Form) Area(flag string) quantity.Area         { return quantity.Area(f.Number(flag)) }
func (f *Form) Volume(flag string) quantity.Volume     { return quantity.Volume(f.Number(flag)) }
func (f *Form) Mass(flag string) quantity.Mass         { return quantity.Mass(f.Number(flag)) }
func (f *Form) Pressure(flag string) quantity.Pressure { return quantity.Pressure(f.Number(flag)) }
func (f *Form) Speed(flag string) quantity.Speed       { return quantity.Speed(f.Number(flag)) }
func (f *Form) Flow(flag string) quantity.Flow         { return quantity.Flow(f.Number(flag)) }
func (f *Form) Span(flag string) quantity.Span         { return quantity.Span(f.Number(flag)) }
func (f *Form) Power(flag string) quantity.Power       { return quantity.Power(f.Number(flag)) }
func (f *Form) Density(flag string) quantity.Density   { return quantity.Density(f.Number(flag)) }
func (f *Form) Dose(flag string) quantity.Dose         { return quantity.Dose(f.Number(flag)) }
func (f *Form) PerTime(flag string) quantity.PerTime   { return quantity.PerTime(f.Number(flag)) }
func (f *Form) Uptake(flag string) quantity.Uptake     { return quantity.Uptake(f.Number(flag)) }
func (f *Form) Share(flag string) quantity.Share       { return quantity.Share(f.Number(flag)) }
func (f *Form) Concentration(flag string) quantity.Concentration {
	return quantity.Concentration(f.Number(flag))
}
func (f *Form) Conductivity(flag string) quantity.Conductivity {
	return quantity.Conductivity(f.Number(flag))
}
func (f *Form) DepthRate(flag string) quantity.DepthRate { return quantity.DepthRate(f.Number(flag)) }
func (f *Form) HeatLoss(flag string) quantity.HeatLoss   { return quantity.HeatLoss(f.Number(flag)) }

// Refuse makes a fault of a flag whose value does not fit with the others.
func (f *Form) Refuse(flag, key string, places ...wording.Places) *fault.Fault {
	in := f.input(flag)
	return fault.New(flag, f.Text(flag), wording.Say(key, places...), in.Allowed(), wording.Text{})
}

// Advise is Refuse with what to do.
func (f *Form) Advise(flag, key, advice string, places ...wording.Places) *fault.Fault {
	wrong := f.Refuse(flag, key, places...)
	wrong.Advice = wording.Say(advice, places...)
	return wrong
}

// OneOf refuses unless exactly one of the flags was given, and returns it.
func (f *Form) OneOf(flags ...string) (string, error) {
	given := f.Given(flags...)
	names := "--" + strings.Join(flags, ", --")
	switch len(given) {
	case 1:
		return given[0], nil
	case 0:
		return "", f.Refuse(flags[0], "worksheet.one-needed", wording.Places{"flags": names})
	}
	return "", f.Refuse(given[1], "worksheet.one-only", wording.Places{"flags": "--" + strings.Join(given, ", --")})
}

// Given lists those of the flags that were given.
func (f *Form) Given(flags ...string) []string {
	var given []string
	for _, flag := range flags {
		if f.Has(flag) {
			given = append(given, flag)
		}
	}
	return given
}

// Together refuses where only a part of the flags was given; the message
// names the first missing one.
func (f *Form) Together(flags ...string) error {
	given := f.Given(flags...)
	if len(given) == 0 || len(given) == len(flags) {
		return nil
	}
	for _, flag := range flags {
		if !f.Has(flag) {
			return f.Refuse(flag, "worksheet.together", wording.Places{"missing": "--" + flag, "given": "--" + given[0]})
		}
	}
	return nil
}

// OnlyWith refuses a flag that belongs to another mode than the chosen one.
func (f *Form) OnlyWith(mode any, allowed []string, all ...string) error {
	for _, flag := range all {
		if f.Has(flag) && !slices.Contains(allowed, flag) {
			return f.Refuse(flag, "worksheet.other-mode", wording.Places{"flag": "--" + flag, "mode": mode})
		}
	}
	return nil
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
