package spray

import "aerosteep/quantity"

// The 1/128 acre plot: a US gallon is 128 fl oz, so fluid ounces caught on
// 1/128 acre read as gallons per acre. Its metric twin is 100 m²: litres x 100
// read as litres per hectare.
//
// Source: Ohio State University Extension AEX-520.
var (
	OuncePlot  = quantity.Acres(1) / quantity.Area(quantity.USGallons(1)/fluidOunce)
	MetricPlot = quantity.SquareMetres(100)
	fluidOunce = quantity.USGallons(1) / 128
)

// CourseOver is the distance to walk so that a strip of one nozzle's width
// covers a plot: plot / width. Both must be over 0.
func CourseOver(plot quantity.Area, width quantity.Length) (quantity.Length, error) {
	if err := overZero(amount("plot-area", plot), amount("spacing", width)); err != nil {
		return 0, err
	}
	return quantity.Metres(plot.SquareMetres() / width.Metres()), nil
}

// GallonsPerAcrePerOunce is what one fluid ounce caught on a plot means in US
// gallons per acre: 1 on the 1/128 acre plot, more on a smaller one. The plot
// must be over 0.
func GallonsPerAcrePerOunce(plot quantity.Area) (float64, error) {
	if err := overZero(amount("plot-area", plot)); err != nil {
		return 0, err
	}
	return float64(OuncePlot / plot), nil
}
