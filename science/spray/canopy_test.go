package spray_test

import (
	"math"
	"testing"

	"aerosteep/fault"
	"aerosteep/internal/published"
	"aerosteep/quantity"
	"aerosteep/science/spray"
)

func row(method string, t *testing.T) published.Row {
	return published.Where(published.Rows(t, "tree-row-volume.csv"), "method", method)[0]
}

func TestTreeRowVolumeMatchesPublished(t *testing.T) {
	trees := spray.Row{Width: quantity.Feet(10), Height: quantity.Feet(8), Spacing: quantity.Feet(18), Shape: 1}
	space := must(trees.TreeRowVolume())(t)
	low, high := spray.UsualCarrier()
	row("tree row volume", t).Check(space.CubicFeetPerAcre(), "cu ft/acre")
	row("gallons, low volume factor", t).Check(space.Wetting(low).USGallonsPerAcre(), "US gal/acre")
	row("gallons, high volume factor", t).Check(space.Wetting(high).USGallonsPerAcre(), "US gal/acre")

	metric := row("tree row volume metric", t)
	vines := spray.Row{Width: quantity.Metres(metric.Float("tree_width_ft")), Height: quantity.Metres(metric.Float("tree_height_ft")), Spacing: quantity.Metres(metric.Float("row_spacing_ft")), Shape: 1}
	metric.Check(must(vines.TreeRowVolume())(t).CubicMetresPerHectare(), "m3/ha")
}

// The worksheet's constants 35 and 10 are gallons per area of row section; the
// same trees by volume must come out within what those constants round away.
func TestBlockWorksheetIsACarrier(t *testing.T) {
	block := row("dilute GPA = shape W H 35/S", t)
	trees := spray.Row{Width: quantity.Feet(10), Height: quantity.Feet(8), Spacing: quantity.Feet(18), Shape: 0.8}
	gallonsPer1000CubicFeet := 35 / quantity.Acres(1).SquareFeet() * 1000
	low, high := spray.UsualCarrier()
	carrier := low + (high-low)*quantity.Fill((gallonsPer1000CubicFeet-0.7)/0.3)
	block.Check(must(trees.TreeRowVolume())(t).Wetting(carrier).USGallonsPerAcre(), "US gal/acre")

	air := row("air-blast GPM = GPA mph S/495", t)
	flow := must(spray.FlowFor(quantity.USGallonsPerAcre(136), quantity.MilesPerHour(2.5), quantity.Feet(18)))(t)
	air.Check(flow.USGallonsPerMinute(), "US gal/min")
}

func TestCourseMatchesPublished(t *testing.T) {
	for _, row := range published.Rows(t, "course-128.csv") {
		if row.Has("spacing_in") {
			course := must(spray.CourseOver(spray.OuncePlot, quantity.Inches(row.Float("spacing_in"))))(t)
			row.Check(course.Feet(), "ft")
			continue
		}
		course := must(spray.CourseOver(spray.OuncePlot, quantity.Metres(row.Float("spacing_cm")/100)))(t)
		row.Check(course.Metres(), "m")
	}
}

// 43560 / 128 = 340.3125 sq ft; a plot of 8.5 x 18.5 ft, printed as 340 sq ft,
// is 157.25 and would give half the rate.
func TestOuncePlot(t *testing.T) {
	near(t, "sq ft", spray.OuncePlot.SquareFeet(), 43560./128, 1e-9)
	near(t, "factor on the plot", must(spray.GallonsPerAcrePerOunce(spray.OuncePlot))(t), 1, 1e-12)
	near(t, "factor on 157.25 sq ft", must(spray.GallonsPerAcrePerOunce(quantity.SquareFeet(8.5*18.5)))(t), 2.16414944, 1e-8)
	rate := must(spray.Caught(quantity.USGallons(1./128), spray.OuncePlot))(t)
	near(t, "gal/acre of one fluid ounce", rate.USGallonsPerAcre(), 1, 1e-12)
	litre := must(spray.Caught(quantity.Litres(1), spray.MetricPlot))(t)
	near(t, "L/ha of one litre", litre.LitresPerHectare(), 100, 1e-12)
}

// A lateral of 5/8 in needs about 1 US gal/min to be flushed, one of 7/8 in
// about 2 (University of California, rounded up from 0.96 and 1.87).
func TestFlush(t *testing.T) {
	for bore, gallons := range map[float64]float64{0.625: 0.956, 0.875: 1.874} {
		flush := must(spray.Line{Length: 1, Bore: quantity.Inches(bore)}.Flush())(t)
		near(t, "gal/min", flush.USGallonsPerMinute(), gallons, 0.001)
	}
}

// Stepping through a lateral emitter by emitter comes close to the integral.
func TestTravelBySteps(t *testing.T) {
	const emitters = 1000
	spacing := quantity.Metres(0.1)
	lateral := spray.Line{Length: quantity.Metres(0.1 * emitters), Bore: quantity.Metres(0.016), Emitters: &spacing}
	flow := quantity.LitresPerMinute(30)
	var stepped float64
	section := math.Pi / 4 * 0.016 * 0.016 * 0.1 * 1000
	for i := 1; i < emitters; i++ {
		stepped += section / (30 * (1 - (float64(i)-0.5)/emitters))
	}
	near(t, "min", must(lateral.Travel(flow))(t).Minutes(), stepped, 0.01*stepped)

	lateral.Emitters = nil
	near(t, "plain pipe", must(lateral.Travel(flow))(t).Minutes(), must(lateral.Holds())(t).Litres()/30, 1e-12)
}

func TestCanopyAndLineRefuse(t *testing.T) {
	long := quantity.Metres(200)
	if _, err := (spray.Row{Width: 1, Height: 1, Spacing: 1, Shape: 2}).TreeRowVolume(); fault.Of(err) == nil {
		t.Error("a shape of 2 was taken")
	}
	if _, err := (spray.Row{Width: 1, Height: 1, Shape: 1}).TreeRowVolume(); fault.Of(err) == nil {
		t.Error("rows 0 apart were taken")
	}
	if _, err := (spray.Line{Length: 100, Bore: 0.016, Emitters: &long}).Travel(1); fault.Of(err) == nil {
		t.Error("one emitter beyond the end was taken")
	}
	if _, err := (spray.Line{Length: 100, Bore: 0.016}).Travel(0); fault.Of(err) == nil {
		t.Error("no flow was taken")
	}
	if _, err := spray.CourseOver(1, 0); fault.Of(err) == nil {
		t.Error("no width was taken")
	}
	if _, err := spray.GallonsPerAcrePerOunce(0); fault.Of(err) == nil {
		t.Error("no plot was taken")
	}
}
