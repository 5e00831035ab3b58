package hygiene

import (
	"math"
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/counting"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// yesNoInput is a plain question that may stay unanswered.
func yesNoInput(flag string) worksheet.Input {
	return worksheet.Input{Flag: flag, Kind: worksheet.Choice, Choices: []string{"yes", "no"}, Unknown: true}
}

// answered is the answer of a plain question, nil where there is none.
func answered(f *worksheet.Form, flag string) *bool {
	if !f.Has(flag) {
		return nil
	}
	is := f.Text(flag) == "yes"
	return &is
}

// given is a number that may be left out.
func given(f *worksheet.Form, flag string) *float64 {
	if !f.Has(flag) {
		return nil
	}
	v := f.Number(flag)
	return &v
}

// wrong is a fault of a flag with what it takes.
func wrong(flag, text, what, allowed string, places ...wording.Places) *fault.Fault {
	return fault.New(flag, text, wording.Say(what, places...), wording.Say(allowed), wording.Text{})
}

// readCount reads a count of colonies, or TNTC.
func readCount(flag, text, item string) (int, error) {
	if strings.EqualFold(item, "TNTC") {
		return counting.TooMany, nil
	}
	n, err := strconv.Atoi(item)
	if err != nil || n < 0 || n > mostColonies {
		return 0, wrong(flag, text, "laboratory.no-count", "laboratory.no-count.allowed", wording.Places{"item": item})
	}
	return n, nil
}

// mostColonies is more than anybody counts.
const mostColonies = 1_000_000

// readCounts reads "38, 4, TNTC".
func readCounts(flag, text, list string) ([]int, error) {
	var counts []int
	for _, item := range strings.Split(list, ",") {
		n, err := readCount(flag, text, strings.TrimSpace(item))
		if err != nil {
			return nil, err
		}
		counts = append(counts, n)
	}
	return counts, nil
}

// wholeFindings refuses results that are not whole numbers: they are counts.
func wholeFindings(flag, text string) ([]counting.Finding, error) {
	findings, err := counting.ParseFindings(flag, text)
	for _, f := range findings {
		if f.Value != math.Trunc(f.Value) {
			return nil, wrong(flag, text, "laboratory.no-count", "counting.finding.allowed", wording.Places{"item": strconv.FormatFloat(f.Value, 'g', -1, 64)})
		}
	}
	return findings, err
}

// differentLengths refuses two lists that belong together and do not match.
func differentLengths(flag, text, first, second string, n, m int) error {
	return wrong(flag, text, "laboratory.lengths", "laboratory.lengths.allowed", wording.Places{
		"first": "--" + first, "second": "--" + second, "n": n, "m": m,
	})
}

// amounts is a list of volumes in mL, or of masses in g.
type amounts struct {
	values []float64
	isMass bool
}

// readAmounts reads a list that is all volumes or all masses, each over 0. A
// bare item takes the unit of the last one.
func readAmounts(flag, text string) (amounts, error) {
	var all amounts
	items := worksheet.WithSharedUnit(worksheet.SplitList(text))
	for i, item := range items {
		v, isMass, err := readAmount(flag, text, item)
		if err != nil {
			return all, err
		}
		if i > 0 && isMass != all.isMass {
			return all, wrong(flag, text, "laboratory.two-kinds", "laboratory.amount.allowed")
		}
		all.isMass = isMass
		all.values = append(all.values, v)
	}
	return all, nil
}

func readAmount(flag, text, item string) (v float64, isMass bool, err error) {
	if volume, volumeErr := quantity.ParseVolume(item); volumeErr == nil {
		v = volume.Millilitres()
	} else if mass, massErr := quantity.ParseMass(item); massErr == nil {
		v, isMass = mass.Grams(), true
	} else {
		f := fault.Of(volumeErr)[0]
		f.Field, f.Given, f.Allowed = flag, text, wording.Say("laboratory.amount.allowed")
		return 0, false, f
	}
	if v <= 0 {
		return 0, false, wrong(flag, text, "laboratory.amount.zero", "laboratory.amount.allowed")
	}
	return v, isMass, nil
}

// ranges are the countable ranges by the word of the flag.
var ranges = map[string]counting.Countable{
	"all": {}, "25-250": {Low: 25, High: 250}, "30-300": {Low: 30, High: 300}, "10-300": {Low: 10, High: 300},
	"20-80": {Low: 20, High: 80}, "20-60": {Low: 20, High: 60},
}

// limits puts an estimate and its ends into one value.
func limits(estimate, low, high *float64) worksheet.Estimate {
	return worksheet.Estimate{Estimate: estimate, Low95: low, High95: high}
}

// times scales an estimate.
func times(e worksheet.Estimate, by float64) worksheet.Estimate {
	return worksheet.Estimate{Estimate: scaled(e.Estimate, by), Low95: scaled(e.Low95, by), High95: scaled(e.High95, by)}
}

func scaled(v *float64, by float64) *float64 {
	if v == nil {
		return nil
	}
	s := *v * by
	return &s
}
