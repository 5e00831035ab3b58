package forecast

import (
	"aerosteep/quantity"
	"aerosteep/science/growth"
)

// The tables run from the coldest to the warmest water a brew can be, in
// steps so small that a value need not be read between two rows: 0.05 °C is
// 0.01 mg/L of saturation.
const (
	coldestWater   = -2.0
	warmestWater   = 46.0
	rowsPerDegree  = 20
	rowsOfClimate  = int((warmestWater-coldestWater)*rowsPerDegree) + 1
	responseShapes = 4
)

// responses are the cardinal temperatures that members choose from. Bacteria
// of soil and compost grow best at 25 to 37 °C, fungi somewhat lower
// (Pietikäinen, Pettersson & Bååth 2005); the least temperatures are a
// judgement within their range of -12 to 5 °C.
var responses = [responseShapes]growth.Cardinal{
	{Least: -6, Best: 30, Most: 42},
	{Least: 0, Best: 31, Most: 43},
	{Least: 3, Best: 34, Most: 45},
	{Least: -2, Best: 36, Most: 46},
}

var fungalResponse = growth.Cardinal{Least: -8, Best: 27, Most: 38}

// climateRow is everything that depends on the water's temperature alone.
type climateRow struct {
	saturation float64 // mg/L at the surface
	transfer   float64 // kLa against 20 °C
	bacteria   [responseShapes]float64
	fungi      float64
	decay      float64
}

// climate is the table of one site and water.
type climate [rowsOfClimate]climateRow

// tabulate fills the table once for a forecast, so that no step of a member
// needs a power or an exponential of temperature.
func tabulate(s *Setup) *climate {
	const at20 = quantity.Temperature(20)
	table := &climate{}
	for i := range table {
		t := quantity.Temperature(coldestWater + float64(i)/rowsPerDegree)
		row := &table[i]
		row.saturation = saturation(t, s)
		row.transfer = growth.Theta(1.024, t, at20)
		for j, c := range responses {
			row.bacteria[j] = c.Factor(t) / c.Factor(at20)
		}
		row.fungi = fungalResponse.Factor(t) / fungalResponse.Factor(at20)
		row.decay = growth.Theta(1.06, t, at20)
	}
	return table
}

// row is the table's row nearest to a temperature.
func (c *climate) row(t float64) *climateRow {
	i := int((t-coldestWater)*rowsPerDegree + 0.5)
	if i < 0 {
		i = 0
	}
	if i >= rowsOfClimate {
		i = rowsOfClimate - 1
	}
	return &c[i]
}
