package counting

import (
	"regexp"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// target is a customary range of a plant group, for soil.
type target struct {
	plants    string
	low, high float64
}

// targets are those of a teaching chart; copies of it disagree and no data
// were published behind it.
var targets = []target{
	{"weeds", 0.1, 0.1}, {"brassicas", 0.3, 0.75}, {"early-grasses", 0.3, 0.3}, {"vegetables", 0.75, 0.75},
	{"row-crops", 1, 1}, {"shrubs-berries", 2, 5}, {"deciduous-trees", 5, 100}, {"conifers", 100, 1000},
}

func plantGroups() []string {
	names := make([]string, len(targets))
	for i, t := range targets {
		names[i] = t.plants
	}
	return names
}

var fbRatio = worksheet.Sheet{
	Name:  "fb-ratio",
	Group: worksheet.Counting,
	Inputs: []worksheet.Input{
		{Flag: "fungal", Kind: worksheet.Text, Required: true},
		{Flag: "bacterial", Kind: worksheet.Text, Required: true},
		{Flag: "plants", Kind: worksheet.Choice, Choices: plantGroups()},
	},
	Example: `--fungal "12 ± 3 ug/mL" --bacterial "30 ± 4 ug/mL"`,
	Sources: []source.Source{source.RatioOfLogNormals, source.TeachingChart, source.He2020, source.Wang2019},
	Shape:   ratioData{},
	Run:     runRatio,
}

type ratioData struct {
	Ratio                 worksheet.Estimate `json:"ratio"`
	RelativeStandardError *float64           `json:"relative_standard_error"`
	CustomaryTarget       *targetRange       `json:"customary_target"`
	Evidence              *string            `json:"evidence"`
}

type targetRange struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

func runRatio(f *worksheet.Form) (*worksheet.Result, error) {
	bacterial, below, err := readMass(f, "bacterial")
	if err == nil && below {
		err = f.Refuse("bacterial", "counting.ratio.below-bacterial")
	}
	fungal, nothing, err2 := readMass(f, "fungal")
	if wrong := append(fault.Of(err2), fault.Of(err)...); len(wrong) > 0 {
		return nil, wrong
	}
	ratio := counting.FungalBacterial(fungal, bacterial)
	if nothing {
		ratio = counting.FungalBelow(fungal.Value, bacterial)
	}
	data := ratioData{Ratio: worksheet.Estimate{Estimate: ratio.Estimate, Low95: ratio.Low95, High95: ratio.High95}, RelativeStandardError: ratio.RelativeError}
	r := &worksheet.Result{Answer: ratioAnswer(ratio), Basis: worksheet.Contested, Sources: []source.Source{source.RatioOfLogNormals, source.Wang2019}}
	r.Caution("counting.ratio.same-mass")
	r.Caution("counting.ratio.method")
	if ratio.Low95 == nil {
		r.Caution("counting.ratio.no-range", wording.Places{"missing": missingErrors(fungal, bacterial)})
	}
	if f.Has("plants") {
		data.aim(f.Text("plants"), r)
	}
	r.Data = data
	return r, nil
}

func (d *ratioData) aim(plants string, r *worksheet.Result) {
	for _, t := range targets {
		if t.plants == plants {
			d.CustomaryTarget, d.Evidence = &targetRange{t.low, t.high}, worksheet.Some(string(worksheet.Contested))
		}
	}
	r.Caution("counting.ratio.target")
	r.Sources = append(r.Sources, source.TeachingChart, source.He2020)
}

func ratioAnswer(ratio counting.Ratio) wording.Text {
	switch {
	case ratio.Estimate == nil:
		return wording.Say("counting.ratio.below", wording.Places{"high": *ratio.High95})
	case ratio.Low95 == nil:
		return wording.Say("counting.ratio.alone", wording.Places{"ratio": *ratio.Estimate})
	}
	return wording.Say("counting.ratio.answer", wording.Places{"ratio": *ratio.Estimate, "low": *ratio.Low95, "high": *ratio.High95})
}

func missingErrors(fungal, bacterial counting.Mass) string {
	var missing []string
	if fungal.StandardError == nil {
		missing = append(missing, "--fungal")
	}
	if bacterial.StandardError == nil {
		missing = append(missing, "--bacterial")
	}
	return strings.Join(missing, ", ")
}

// plusMinus is how one standard error is typed.
var plusMinus = regexp.MustCompile(`\s*(?:±|\+/-|\+-)\s*`)

// readMass reads "12 ± 3 ug/mL" or, for nothing seen, "<0.5 ug/mL".
func readMass(f *worksheet.Form, flag string) (counting.Mass, bool, error) {
	text := strings.TrimSpace(f.Text(flag))
	rest, below := strings.CutPrefix(text, "<")
	parts := plusMinus.Split(strings.TrimSpace(rest), -1)
	if len(parts) > 2 || below && len(parts) > 1 {
		return counting.Mass{}, false, massFault(f, flag, wording.Say("counting.ratio.form"))
	}
	values := make([]float64, len(parts))
	for i, part := range worksheet.WithSharedUnit(parts) {
		c, err := quantity.ParseConcentration(part)
		if err != nil {
			return counting.Mass{}, false, massFault(f, flag, fault.Of(err)[0].What)
		}
		values[i] = c.MilligramsPerLitre()
	}
	if values[0] <= 0 {
		return counting.Mass{}, false, massFault(f, flag, wording.Say("counting.ratio.zero"))
	}
	m := counting.Mass{Value: values[0]}
	if len(values) == 2 {
		m.StandardError = &values[1]
	}
	return m, below, nil
}

func massFault(f *worksheet.Form, flag string, what wording.Text) *fault.Fault {
	return fault.New(flag, f.Text(flag), what, wording.Say("counting.ratio.allowed"), wording.Say("counting.ratio.advice"))
}
