package hygiene

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/job/hygiene"
	"aerosteep/worksheet"
)

var interval = worksheet.Sheet{
	Name:   "interval",
	Group:  worksheet.Hygiene,
	Inputs: factInputs(),
	Example: "--material compost --animal-origin yes --human-waste no --treatment hot --process-record yes --nop-compost yes" +
		" --contaminated no --additives molasses --held '24 h' --water well --water-ecoli not-detected --sanitized yes" +
		" --pretest passed --crop-use food --market sold --covered yes --organic yes --edible-part touches-soil" +
		" --method drench --contact-during none --contact-after minimized --applied 2026-05-01",
	Sources: Sources(),
	Shape:   Ruling{},
	Run:     runInterval,
}

// factInputs makes one flag of each fact. No fact has a default.
func factInputs() []worksheet.Input {
	var inputs []worksheet.Input
	for _, fact := range hygiene.All() {
		in := worksheet.Input{Flag: flagOf(fact), Kind: worksheet.Choice, Unknown: true, Choices: fact.Values()}
		switch fact {
		case hygiene.Applied, hygiene.Harvest:
			in.Kind = worksheet.Date
		case hygiene.Held:
			in.Kind, in.Low, in.High, in.Choices = worksheet.LongSpan, "0 h", "30 d", nil
		case hygiene.Additives:
			in.Kind, in.Choices = worksheet.Text, nil
		}
		if in.Choices != nil && in.Choices[0] == "yes" {
			in.Choices = []string{"yes", "no", "true", "false"}
		}
		inputs = append(inputs, in)
	}
	return inputs
}

func flagOf(fact hygiene.Fact) string { return strings.ReplaceAll(fact.String(), "_", "-") }

func runInterval(f *worksheet.Form) (*worksheet.Result, error) {
	words := hygiene.Words{}
	for _, fact := range hygiene.All() {
		if f.Has(flagOf(fact)) {
			words[fact.String()] = f.Text(flagOf(fact))
		}
	}
	facts, err := hygiene.Read(words, hygiene.LarderOrigins)
	if err != nil {
		return nil, asFlags(err)
	}
	return Answered(hygiene.Decide(facts)), nil
}

// asFlags names the flags of facts with hyphens.
func asFlags(err error) error {
	for _, wrong := range fault.Of(err) {
		wrong.Field = strings.ReplaceAll(wrong.Field, "_", "-")
	}
	return err
}
