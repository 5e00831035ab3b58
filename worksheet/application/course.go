package application

import (
	"math"

	"aerosteep/quantity"
	"aerosteep/science/spray"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var course = worksheet.Sheet{
	Name: "course", Group: worksheet.Application,
	Inputs: []worksheet.Input{
		{Flag: "spacing", Kind: worksheet.SmallLength, Low: "5 cm", High: "30 m"},
		{Flag: "plot-length", Kind: worksheet.Length, Low: "0 m", Over: true},
		{Flag: "plot-width", Kind: worksheet.Length, Low: "0 m", Over: true},
		{Flag: "plot-area", Kind: worksheet.Area, Low: "0 m2", Over: true},
	},
	Example: `--spacing "30 in"`,
	Sources: []source.Source{source.OhioAEX520},
	Shape:   courseAnswer{},
	Run:     runCourse,
}

type courseAnswer struct {
	DistanceFt *float64 `json:"distance_ft"`
	DistanceM  *float64 `json:"distance_m"`
	Distance   *float64 `json:"distance_100m2_m"`
	AreaSqFt   float64  `json:"area_sq_ft"`
	AreaM2     float64  `json:"area_m2"`
	SideFt     float64  `json:"square_side_ft"`
	SideM      float64  `json:"square_side_m"`
	PlotSqFt   *float64 `json:"plot_area_sq_ft"`
	PlotM2     *float64 `json:"plot_area_m2"`
	Factor     *float64 `json:"gpa_per_fl_oz"`
}

func runCourse(f *worksheet.Form) (*worksheet.Result, error) {
	plot, err := readPlot(f, "plot-area", "plot-length", "plot-width", true)
	if err != nil {
		return nil, err
	}
	if plot == nil && !f.Has("spacing") {
		return nil, f.Refuse("spacing", "application.no-course")
	}
	side := quantity.Metres(math.Sqrt(spray.OuncePlot.SquareMetres()))
	answer := courseAnswer{
		AreaSqFt: spray.OuncePlot.SquareFeet(), AreaM2: spray.OuncePlot.SquareMetres(), SideFt: side.Feet(), SideM: side.Metres(),
		PlotSqFt: in(plot, quantity.Area.SquareFeet), PlotM2: in(plot, quantity.Area.SquareMetres),
	}
	r := &worksheet.Result{Sources: f.Sheet.Sources}
	if plot != nil {
		if err := plotFactor(*plot, &answer, r); err != nil {
			return nil, err
		}
	}
	if f.Has("spacing") {
		if err := walk(f.Length("spacing"), &answer, r); err != nil {
			return nil, err
		}
	}
	r.Data = answer
	return r, nil
}

func plotFactor(plot quantity.Area, answer *courseAnswer, r *worksheet.Result) error {
	factor, err := spray.GallonsPerAcrePerOunce(plot)
	if err != nil {
		return err
	}
	answer.Factor = &factor
	r.Answer = wording.Say("sheet.course.plot", wording.Places{"plot": plot, "factor": factor})
	return nil
}

// walk answers with the distance; a plot's factor then follows as a note.
func walk(spacing quantity.Length, answer *courseAnswer, r *worksheet.Result) error {
	ounces, err := spray.CourseOver(spray.OuncePlot, spacing)
	if err != nil {
		return err
	}
	litres, err := spray.CourseOver(spray.MetricPlot, spacing)
	if err != nil {
		return err
	}
	answer.DistanceFt, answer.DistanceM = worksheet.Some(ounces.Feet()), worksheet.Some(ounces.Metres())
	answer.Distance = worksheet.Some(litres.Metres())
	if !r.Answer.IsZero() {
		r.Notes = append(r.Notes, r.Answer)
	}
	r.Answer = wording.Say("sheet.course.answer", wording.Places{"distance": ounces, "metric": litres, "spacing": spacing})
	return nil
}
