package spray_test

import (
	"math"
	"testing"

	"aerosteep/quantity"
	"aerosteep/science/spray"
)

// Table 1 of AEX-520: with nozzles 20 in apart the course of 1/128 acre is 204
// ft, so that ounces read as gallons an acre. A nozzle of 0.4 gal/min at 6 mph
// and 20 in puts on 19.8 gal/acre (5940 x 0.4 / (6 x 20), Guide G1270A): both
// ways must then say the same.
func TestWaysOfTheHandbooksAgree(t *testing.T) {
	width := quantity.Inches(20)
	course := must(spray.CourseOver(spray.OuncePlot, width))(t)
	near(t, "course in ft", math.Round(course.Feet()), 204, 1e-12)
	speed := quantity.MilesPerHour(6)
	byNozzle := must(spray.Rate(quantity.USGallonsPerMinute(0.4), speed, width))(t)
	near(t, "gal/acre", byNozzle.USGallonsPerAcre(), 19.8, 1e-9)

	seconds := course.Metres() / speed.MetresPerSecond()
	ounces := 0.4 / 60 * seconds * 128
	near(t, "fluid ounces", ounces, 19.8, 1e-9)
	caught := must(spray.Caught(quantity.USGallons(ounces/128), spray.OuncePlot))(t)
	c := must(spray.Compare([]spray.Found{{spray.ByNozzle, byNozzle}, {spray.ByOunces, caught}}))(t)
	if !c.Agree || c.Odd != "" || c.Spread > 1e-9 {
		t.Errorf("%+v", c)
	}
}

func TestTheOddWayIsNamed(t *testing.T) {
	at := func(gpa float64) quantity.Dose { return quantity.USGallonsPerAcre(gpa) }
	three := func(plot, nozzle, ounces float64) []spray.Found {
		return []spray.Found{{spray.ByPlot, at(plot)}, {spray.ByNozzle, at(nozzle)}, {spray.ByOunces, at(ounces)}}
	}
	for _, c := range []struct {
		ways  []spray.Found
		rate  float64
		agree bool
		odd   spray.Way
	}{
		{three(20, 20.2, 20.4), 20.2, true, ""},
		{three(40, 20, 20.4), 20.4, false, spray.ByPlot}, // a plot of half its printed size
		{three(20, 24, 28), 24, false, ""},
		{three(20, 20.5, 21), 20.5, false, ""}, // either end may be the odd one
		{three(20, 30, 20)[:2], 25, false, ""},
		{three(20, 0, 0)[:1], 20, false, ""},
	} {
		got := must(spray.Compare(c.ways))(t)
		near(t, "gal/acre", got.Rate.USGallonsPerAcre(), c.rate, 1e-12)
		if got.Agree != c.agree || got.Odd != c.odd {
			t.Errorf("%v: %+v", c.ways, got)
		}
	}
	for _, none := range [][]spray.Found{nil, {{spray.ByPlot, 0}}, {{spray.ByPlot, quantity.Dose(math.NaN())}}} {
		if _, err := spray.Compare(none); err == nil {
			t.Errorf("%v is taken", none)
		}
	}
}
