package application

import (
	"aerosteep/fault"
	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// dilutionInputs are the ways to state a dilution.
func dilutionInputs() []worksheet.Input {
	return []worksheet.Input{
		{Flag: "ratio", Kind: worksheet.Text},
		{Flag: "convention", Kind: worksheet.Choice, Choices: conventions, Default: string(application.Parts)},
		{Flag: "percent-tea", Kind: worksheet.Bare, Low: "0", Over: true, High: "100"},
	}
}

var conventions = []string{string(application.Parts), string(application.Total)}

// dilution is what was said of a dilution; the share is nil where nothing was.
type dilution struct {
	share      *quantity.Share
	ratio      *application.Ratio
	convention application.Convention
}

// readDilution reads ratio, convention and percentage. Stated both ways they
// must agree, and the ratio is used.
func readDilution(f *worksheet.Form) (dilution, error) {
	d := dilution{convention: application.Convention(f.Text("convention"))}
	if f.Has("convention") && !f.Has("ratio") {
		return d, f.Refuse("ratio", "worksheet.together", wording.Places{"missing": "--ratio", "given": "--convention"})
	}
	if f.Has("percent-tea") {
		share := quantity.Percent(f.Number("percent-tea"))
		d.share = &share
	}
	if !f.Has("ratio") {
		return d, nil
	}
	ratio, share, err := readRatio(f, "ratio", d.convention)
	if err != nil {
		return d, err
	}
	if d.share != nil && !application.Agree(share.Fraction(), d.share.Fraction(), application.FiguresAgree) {
		return d, f.Advise("percent-tea", "application.disagree", "application.disagree.advice", wording.Places{
			"first": "--ratio", "second": "--percent-tea", "a": share, "b": *d.share,
		})
	}
	d.ratio, d.share = &ratio, &share
	return d, nil
}

// readRatio reads the ratio of a flag.
func readRatio(f *worksheet.Form, flag string, c application.Convention) (application.Ratio, quantity.Share, error) {
	ratio, err := application.ParseRatio(f.Text(flag))
	if err == nil {
		var share quantity.Share
		if share, err = ratio.Share(c); err == nil {
			return ratio, share, nil
		}
	}
	for _, wrong := range fault.Of(err) {
		wrong.Field, wrong.Given = flag, f.Text(flag)
	}
	return ratio, 0, err
}

// askTurned adds the question whether 4:1 was meant as 1:4.
func (d dilution) askTurned(r *worksheet.Result) {
	if d.ratio != nil && d.ratio.LooksTurned() {
		r.Caution("application.turned", wording.Places{"ratio": d.ratio.String(), "turned": d.ratio.Turned().String(), "percent": *d.share})
	}
}
