package counting

import (
	"aerosteep/quantity"
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// The widest and narrowest field any microscope shows.
const (
	narrowestField = "0.01 mm"
	widestField    = "50 mm"
)

// slideInputs ask for the field of view, the cover slip and the drop.
var slideInputs = []worksheet.Input{
	{Flag: "field-diameter", Kind: worksheet.SlideLength, Low: narrowestField, High: widestField},
	{Flag: "field-number", Kind: worksheet.SlideLength, Low: "0 mm", Over: true},
	{Flag: "objective", Kind: worksheet.Bare, Low: "0", Over: true},
	{Flag: "tube-factor", Kind: worksheet.Bare, Low: "0", Over: true, Default: "1"},
	{Flag: "coverslip-area", Kind: worksheet.SlideArea, Low: "0 mm2", Over: true},
	{Flag: "coverslip-side", Kind: worksheet.SlideLength, Low: "0 mm", Over: true},
	{Flag: "drop-volume", Kind: worksheet.SmallVolume, Low: "0.1 uL", High: "5 mL", Required: true},
}

func readSlide(f *worksheet.Form) (counting.Slide, error) {
	diameter, err := fieldDiameter(f)
	if err != nil {
		return counting.Slide{}, err
	}
	slip, err := f.OneOf("coverslip-area", "coverslip-side")
	if err != nil {
		return counting.Slide{}, err
	}
	s := counting.Slide{FieldDiameter: diameter, CoverSlip: f.Area("coverslip-area"), Drop: f.Volume("drop-volume")}
	if slip == "coverslip-side" {
		side := f.Length("coverslip-side").Metres()
		s.CoverSlip = quantity.SquareMetres(side * side)
	}
	return s, s.Check()
}

func fieldDiameter(f *worksheet.Form) (quantity.Length, error) {
	if f.Has("field-diameter") {
		if given := f.Given("field-number", "objective", "tube-factor"); len(given) > 0 {
			return 0, f.Refuse(given[0], "worksheet.one-only", wording.Places{"flags": "--field-diameter, --" + given[0]})
		}
		return f.Length("field-diameter"), nil
	}
	if len(f.Given("field-number", "objective", "tube-factor")) == 0 {
		return 0, f.Refuse("field-diameter", "counting.no-field")
	}
	if err := f.Together("field-number", "objective"); err != nil {
		return 0, err
	}
	if !f.Has("field-number") {
		return 0, f.Refuse("field-number", "worksheet.together", wording.Places{"missing": "--field-number", "given": "--tube-factor"})
	}
	d := counting.FieldDiameter(f.Length("field-number"), f.Number("objective"), f.Number("tube-factor"))
	if low, high := quantity.Metres(1e-5), quantity.Metres(0.05); d < low || d > high {
		return 0, f.Refuse("field-number", "counting.field-diameter", wording.Places{"diameter": d, "low": low, "high": high})
	}
	return d, nil
}

var fieldCount = worksheet.Sheet{
	Name:    "field-count",
	Group:   worksheet.Counting,
	Inputs:  join(countInputs, slideInputs, thinning, biomass),
	Example: `--counts "3,0,14,1,0,9,2,0,21,5" --field-diameter "0.45 mm" --coverslip-side "22 mm" --drop-volume "0.02 mL" --dilution 10`,
	Sources: []source.Source{source.FieldOfView, source.Garwood1936, source.Elliott1977, source.StudentT, source.BratbakDundas1984},
	Shape:   slideTally{},
	Run:     runFieldCount,
}

type slideTally struct {
	Tally
	FieldDiameter float64 `json:"field_diameter_mm"`
	FieldArea     float64 `json:"field_area_mm2"`
	FieldsPerSlip float64 `json:"fields_per_coverslip"`
	FilmDepth     float64 `json:"film_depth_mm"`
}

func runFieldCount(f *worksheet.Form) (*worksheet.Result, error) {
	counts, err := readCounts(f)
	if err != nil {
		return nil, err
	}
	slide, err := readSlide(f)
	if err != nil {
		return nil, err
	}
	tally, result, err := tallyUp(f, counts, slide.FieldVolume())
	if err != nil {
		return nil, err
	}
	if tally.Interval == string(counting.StudentT) {
		result.Sources = append(result.Sources, source.StudentT)
	}
	result.Sources = append(result.Sources, source.FieldOfView)
	cautionFilm(result, slide)
	result.Data = slideTally{
		Tally: tally, FieldDiameter: slide.FieldDiameter.Millimetres(), FieldArea: slide.FieldArea().SquareMillimetres(),
		FieldsPerSlip: slide.FieldsPerSlip(), FilmDepth: slide.FilmDepth().Millimetres(),
	}
	return result, nil
}

func cautionFilm(r *worksheet.Result, s counting.Slide) {
	if s.FilmDepth() > counting.DeepFilm {
		r.Caution("counting.deep-film", wording.Places{"depth": s.FilmDepth().Millimetres()})
	}
}
