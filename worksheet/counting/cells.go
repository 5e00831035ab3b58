package counting

import (
	"aerosteep/quantity"
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var cells = worksheet.Sheet{
	Name:  "cells",
	Group: worksheet.Counting,
	Inputs: join(countInputs, []worksheet.Input{
		{Flag: "field-area", Kind: worksheet.SlideArea, Low: "0 mm2", Over: true},
		{Flag: "depth", Kind: worksheet.SlideLength, Low: "0 mm", Over: true},
		{Flag: "each-volume", Kind: worksheet.SmallVolume, Low: "0 mL", Over: true},
	}, thinning, biomass),
	Example: `--counts "12,15,9,11,14" --field-area "0.04 mm2" --depth "0.02 mm" --dilution 100 --cell-volume "0.2 um3"`,
	Sources: []source.Source{source.Garwood1936, source.Elliott1977, source.BratbakDundas1984},
	Shape:   Tally{},
	Run:     runCells,
}

func runCells(f *worksheet.Form) (*worksheet.Result, error) {
	counts, err := readCounts(f)
	if err != nil {
		return nil, err
	}
	volume, err := lookedThrough(f)
	if err != nil {
		return nil, err
	}
	data, result, err := tallyUp(f, counts, volume)
	if err != nil {
		return nil, err
	}
	result.Data = data
	return result, nil
}

// lookedThrough is the volume behind each count.
func lookedThrough(f *worksheet.Form) (quantity.Volume, error) {
	if f.Has("each-volume") {
		if given := f.Given("field-area", "depth"); len(given) > 0 {
			return 0, f.Refuse(given[0], "worksheet.one-only", wording.Places{"flags": "--each-volume, --" + given[0]})
		}
		return f.Volume("each-volume"), nil
	}
	if !f.Has("field-area") && !f.Has("depth") {
		return 0, f.Refuse("field-area", "counting.no-volume")
	}
	if err := f.Together("field-area", "depth"); err != nil {
		return 0, err
	}
	return counting.Chamber(f.Area("field-area"), f.Length("depth")), nil
}
