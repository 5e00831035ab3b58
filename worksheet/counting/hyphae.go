package counting

import (
	"aerosteep/quantity"
	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var hyphae = worksheet.Sheet{
	Name:  "hyphae",
	Group: worksheet.Counting,
	Inputs: join([]worksheet.Input{
		{Flag: "lengths", Kind: worksheet.TinyLength, List: true, Low: "0 um"},
		{Flag: "total-length", Kind: worksheet.TinyLength, Low: "0 um"},
		{Flag: "intersections", Kind: worksheet.Whole, List: true, Low: "0", High: most},
		{Flag: "total-intersections", Kind: worksheet.Whole, Low: "0", High: most},
		{Flag: "fields", Kind: worksheet.Whole, Low: "1", High: most},
		{Flag: "grid", Kind: worksheet.SlideLength, Low: "0 mm", Over: true},
		{Flag: "grid-lines", Kind: worksheet.Choice, Choices: []string{"both", "one"}, Default: "both"},
		{Flag: "line-length", Kind: worksheet.SlideLength, Low: "0 mm", Over: true},
		{Flag: "counted-area", Kind: worksheet.SlideArea, Low: "0 mm2", Over: true},
	}, slideInputs, thinning, []worksheet.Input{
		{Flag: "hypha-diameter", Kind: worksheet.TinyLength, Low: "0.5 um", High: "20 um", Default: "2.5 um"},
		{Flag: "dry-density", Kind: worksheet.Density, Low: "0.05 g/cm3", High: "2 g/cm3", Default: "0.33 g/cm3"},
	}),
	Example: `--intersections "5,0,3,8,2,0,4,6,1,3" --grid "0.1 mm" --field-diameter "0.5 mm" --coverslip-side "18 mm" --drop-volume "0.05 mL"`,
	Sources: []source.Source{source.Newman1966, source.Tennant1975, source.VanVeenPaul1979, source.FieldOfView, source.StudentT},
	Shape:   hyphaeData{},
	Run:     runHyphae,
}

type hyphaeData struct {
	Fields         int                `json:"fields"`
	TotalLength    float64            `json:"total_length_mm"`
	FieldVolume    float64            `json:"field_volume_ml"`
	VolumeExamined float64            `json:"volume_examined_ml"`
	Length         worksheet.Estimate `json:"length_m_per_ml"`
	Biomass        worksheet.Estimate `json:"biomass_ug_per_ml"`
	HyphaDiameter  float64            `json:"hypha_diameter_um"`
	DryDensity     float64            `json:"dry_density_g_per_cm3"`
	Interval       string             `json:"interval"`
}

func runHyphae(f *worksheet.Form) (*worksheet.Result, error) {
	slide, err := readSlide(f)
	if err != nil {
		return nil, err
	}
	area := slide.FieldArea()
	if f.Has("counted-area") {
		if area = f.Area("counted-area"); area > slide.FieldArea()*(1+1e-9) {
			return nil, f.Refuse("counted-area", "counting.area-over-field", wording.Places{"field": slide.FieldArea()})
		}
	}
	lengths, err := readLengths(f, area)
	if err != nil {
		return nil, err
	}
	return hyphaeResult(f, slide, lengths, slide.VolumeUnder(area)), nil
}

func hyphaeResult(f *worksheet.Form, slide counting.Slide, lengths counting.Lengths, examined quantity.Volume) *worksheet.Result {
	s := counting.SummariseLengths(lengths, slide.FieldDiameter)
	perML := func(l quantity.Length) float64 {
		return counting.MetresPerMillilitre(l, examined, f.Number("dilution"), f.Number("concentration"))
	}
	mass := func(l quantity.Length) float64 {
		return counting.HyphaMass(perML(l), f.Length("hypha-diameter"), f.Density("dry-density"))
	}
	data := hyphaeData{
		Fields: lengths.Fields, TotalLength: lengths.Total.Millimetres(), FieldVolume: slide.FieldVolume().Millilitres(),
		VolumeExamined: examined.Millilitres() * float64(lengths.Fields),
		Length:         worksheet.Alone(perML(s.Mean)), Biomass: worksheet.Alone(mass(s.Mean)),
		HyphaDiameter: f.Length("hypha-diameter").Micrometres(), DryDensity: f.Density("dry-density").GramsPerMillilitre(), Interval: string(s.Interval),
	}
	r := &worksheet.Result{
		Answer: wording.Say("counting.hyphae.answer", wording.Places{"length": *data.Length.Estimate, "mass": *data.Biomass.Estimate, "fields": lengths.Fields}),
		Basis:  worksheet.Contested, Sources: []source.Source{source.Newman1966, source.VanVeenPaul1979, source.FieldOfView},
	}
	if s.Interval != counting.NoInterval {
		data.Length = worksheet.Between(perML(s.Mean), perML(s.Low), perML(s.High))
		data.Biomass = worksheet.Between(mass(s.Mean), mass(s.Low), mass(s.High))
	}
	if s.Interval == counting.ZeroSeen {
		r.Answer = wording.Say("counting.hyphae.none", wording.Places{"high": *data.Length.High95})
	}
	cautionHyphae(f, r, s, slide)
	r.Data = data
	return r
}

func cautionHyphae(f *worksheet.Form, r *worksheet.Result, s counting.LengthSummary, slide counting.Slide) {
	switch s.Interval {
	case counting.NoInterval:
		r.Caution("counting.hyphae.no-range")
	case counting.ZeroSeen:
		r.Caution("counting.none-seen")
		r.Sources = append(r.Sources, source.Garwood1936)
	default:
		r.Sources = append(r.Sources, source.StudentT)
		if s.Low == 0 {
			r.Caution("counting.cut-at-zero")
		}
	}
	if !f.Has("hypha-diameter") {
		r.Caution("counting.hyphae.diameter")
	}
	r.Caution("counting.factors")
	cautionFilm(r, slide)
}

// readLengths takes the length seen in each field, or in all.
func readLengths(f *worksheet.Form, area quantity.Area) (counting.Lengths, error) {
	way, err := f.OneOf("lengths", "total-length", "intersections", "total-intersections")
	if err != nil {
		return counting.Lengths{}, err
	}
	if err := fieldsGoWith(f, way); err != nil {
		return counting.Lengths{}, err
	}
	toLength, err := crossing(f, way, area)
	if err != nil {
		return counting.Lengths{}, err
	}
	switch way {
	case "lengths", "intersections":
		values := f.Numbers(way)
		each := make([]quantity.Length, len(values))
		for i, v := range values {
			each[i] = toLength(v)
		}
		return counting.EachFieldLength(each), nil
	}
	return counting.Lengths{Total: toLength(f.Number(way)), Fields: f.Int("fields")}, nil
}

// fieldsGoWith wants the number of fields with a total and only there.
func fieldsGoWith(f *worksheet.Form, way string) error {
	total := way == "total-length" || way == "total-intersections"
	if total {
		return f.Together(way, "fields")
	}
	return f.OnlyWith("--"+way, nil, "fields")
}

// crossing is how what was read becomes a length: a measured length is one
// already, crossings become one by the lines they were counted on.
func crossing(f *worksheet.Form, way string, area quantity.Area) (func(float64) quantity.Length, error) {
	if way == "lengths" || way == "total-length" {
		return quantity.Metres, f.OnlyWith("--"+way, nil, "grid", "grid-lines", "line-length")
	}
	lines, err := f.OneOf("grid", "line-length")
	if err != nil {
		return nil, err
	}
	if lines == "line-length" {
		return func(n float64) quantity.Length {
			return counting.LineIntersectLength(n, area, f.Length("line-length"))
		}, f.OnlyWith("--line-length", nil, "grid-lines")
	}
	if f.Text("grid-lines") == "one" {
		return func(n float64) quantity.Length { return counting.ParallelLinesLength(n, f.Length("grid")) }, nil
	}
	return func(n float64) quantity.Length { return counting.SquareGridLength(n, f.Length("grid")) }, nil
}
