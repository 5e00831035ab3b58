package worksheet

import (
	"math"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Form is a sheet's inputs as somebody gave them, read and checked. Inside
// Run every single value is known to be of its kind and in its range; what
// remains to be checked is what depends on more than one of them.
type Form struct {
	Sheet  *Sheet
	Units  wording.Units // of the person who asks, for what is rounded to their measures
	values map[string][]string
	names  map[string]string // of files
	faults fault.List
}

// Values is what was given: the texts of each flag, in order. A switch that
// is on has the text "true"; a file has the file's text.
type Values map[string][]string

// Read checks what was given against the sheet and reports everything that is
// wrong with it at once.
func Read(sheet *Sheet, given Values, fileNames map[string]string) (*Form, error) {
	f := &Form{Sheet: sheet, values: map[string][]string{}, names: fileNames}
	f.takeKnown(given)
	for i := range sheet.Inputs {
		f.check(&sheet.Inputs[i])
	}
	return f, f.faults.OrNil()
}

// takeKnown keeps the values of known flags and refuses the others. Hyphens
// and underscores are alike.
func (f *Form) takeKnown(given Values) {
	for _, name := range sortedKeys(given) {
		flag := strings.ReplaceAll(name, "_", "-")
		if _, known := f.Sheet.Input(flag); known {
			f.values[flag] = append(f.values[flag], given[name]...)
			continue
		}
		wrong := fault.New(flag, strings.Join(given[name], ", "), wording.Say("worksheet.unknown-flag", wording.Places{"flag": "--" + flag}), wording.Say("worksheet.allowed.choices", wording.Places{"choices": strings.Join(f.Sheet.Flags(), ", ")}), wording.Text{})
		if flag == "rate" {
			wrong.Advice = wording.Say("worksheet.rate-of-what")
		} else if wrong.Nearest = fault.Nearest(flag, f.Sheet.Flags()); wrong.Nearest != "" {
			wrong.Advice = wording.Say("worksheet.nearest", wording.Places{"nearest": "--" + wrong.Nearest})
		}
		f.faults = append(f.faults, wrong)
	}
}

func (f *Form) check(in *Input) {
	texts := f.values[in.Flag]
	if in.Unknown && len(texts) == 1 && texts[0] == "unknown" {
		delete(f.values, in.Flag)
		return
	}
	if len(texts) == 0 {
		if in.Required {
			f.faults = append(f.faults, fault.New(in.Flag, "", wording.Say("worksheet.missing", wording.Places{"flag": in.shown()}), in.Allowed(), wording.Text{}))
		}
		return
	}
	if len(texts) > 1 && !in.Repeat {
		f.refuse(in, strings.Join(texts, ", "), wording.Say("worksheet.twice"))
		return
	}
	for _, text := range texts {
		f.checkValue(in, text)
	}
}

func (in *Input) shown() string {
	if in.Argument {
		return strings.ToUpper(in.Flag)
	}
	return "--" + in.Flag
}

func (f *Form) checkValue(in *Input, text string) {
	switch {
	case in.Kind == Switch:
		if text != "true" && text != "false" && text != "on" {
			f.refuse(in, text, wording.Say("worksheet.switch"))
		}
	case in.Kind == Choice && in.List:
		for _, item := range SplitList(text) {
			f.checkChoice(in, item)
		}
	case in.Kind == Choice:
		f.checkChoice(in, text)
	case in.Kind == Date:
		if _, err := time.Parse(time.DateOnly, text); err != nil {
			f.refuse(in, text, wording.Say("worksheet.no-date"))
		}
	case strings.TrimSpace(text) == "" && in.Kind != File:
		f.refuse(in, text, wording.Say("quantity.empty"))
	case in.Kind.Numeric() && in.List:
		_, err := in.numbers(text)
		f.add(in, text, err)
	case in.Kind.Numeric():
		v, err := in.Kind.parse(text)
		if err == nil {
			err = in.within(v, text)
		}
		f.add(in, text, err)
	}
}

// checkChoice takes spaces for hyphens ("sandy loam"). Why a word is left out
// on purpose stands under refused.<flag>.<word>.
func (f *Form) checkChoice(in *Input, text string) {
	hyphened := strings.ReplaceAll(strings.TrimSpace(text), " ", "-")
	for _, c := range in.Choices {
		if text == c {
			return
		}
		if hyphened == c && !in.List {
			f.values[in.Flag] = []string{c}
			return
		}
	}
	wrong := f.refuse(in, text, wording.Say("worksheet.no-choice", wording.Places{"given": text}))
	if wrong.Nearest = fault.Nearest(text, in.Choices); wrong.Nearest != "" {
		wrong.Advice = wording.Say("worksheet.nearest", wording.Places{"nearest": wrong.Nearest})
	}
	if why := "refused." + in.Flag + "." + hyphened; wording.Known(why) {
		wrong.Nearest, wrong.Advice = "", wording.Say(why)
	}
}

// within checks a read value against the input's ends, with a slack of 1 in
// 10^9 so that a converted limit still counts as the limit.
func (in *Input) within(v float64, given string) error {
	low, high := in.bound(in.Low, math.Inf(-1)), in.bound(in.High, math.Inf(1))
	tooLow := v < low-in.slack(low) || in.Over && v <= low+in.slack(low)
	tooHigh := v > high+in.slack(high) || in.Under && v >= high-in.slack(high)
	if !tooLow && !tooHigh && !math.IsNaN(v) {
		return nil
	}
	return fault.New(in.Flag, given, wording.Say("worksheet.outside", wording.Places{"given": given}), in.Allowed(), in.meant(given, low, high))
}

func (in *Input) bound(limit string, without float64) float64 {
	if limit == "" {
		return without
	}
	v, err := in.Kind.parse(limit)
	if err != nil {
		panic("worksheet: limit " + limit + " of --" + in.Flag + " cannot be read: " + err.Error())
	}
	return v
}

func (in *Input) slack(limit float64) float64 {
	switch {
	case math.IsInf(limit, 0):
		return 0
	case in.Kind == Temperature: // 32 °F is 0 °C but for the last digit
		return 1e-9 * (math.Abs(limit) + 273.15)
	}
	return 1e-9 * math.Abs(limit)
}

// meant guesses the commonest slip: a temperature typed in the other scale.
func (in *Input) meant(given string, low, high float64) wording.Text {
	if in.Kind != Temperature {
		return in.reason()
	}
	number := strings.TrimRight(given, " °CcFfKk")
	for _, scale := range []string{"F", "C"} {
		t, err := quantity.ParseTemperature(number + scale)
		if err == nil && float64(t) >= low && float64(t) <= high {
			return wording.Say("worksheet.other-scale", wording.Places{"typed": number + scale, "is": t})
		}
	}
	return in.reason()
}

func (in *Input) reason() wording.Text {
	if in.Reason == "" {
		return wording.Text{}
	}
	return wording.Say(in.Reason)
}

// refuse notes a fault of an input.
func (f *Form) refuse(in *Input, given string, what wording.Text) *fault.Fault {
	wrong := fault.New(in.Flag, given, what, in.Allowed(), wording.Text{})
	f.faults = append(f.faults, wrong)
	return wrong
}

// add notes the fault in a reading error, if there is one, under the input.
func (f *Form) add(in *Input, given string, err error) {
	if err == nil {
		return
	}
	for _, wrong := range fault.Of(err) {
		wrong.Field = in.Flag
		if wrong.Given == "" {
			wrong.Given = given
		}
		if in.Low != "" || in.High != "" || wrong.Allowed.IsZero() {
			wrong.Allowed = in.Allowed()
		}
		f.faults = append(f.faults, wrong)
	}
}
