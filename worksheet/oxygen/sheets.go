// Package oxygen holds the worksheets of oxygen and air: what water can hold,
// what air puts in, what life takes out and how long there is when it stops.
package oxygen

import (
	"aerosteep/quantity"
	"aerosteep/worksheet"
	"aerosteep/worksheet/place"
)

// Sheets are the worksheets of this room, in the order in which they are met.
func Sheets() []worksheet.Sheet {
	return []worksheet.Sheet{saturation, reaeration, uptake, transfer, depletion, operatingPoint, jugTest, blowerPower}
}

// withPlace appends the inputs that say where the work is.
func withPlace(inputs ...worksheet.Input) []worksheet.Input {
	return append(inputs, place.Inputs()...)
}

// estimate puts an estimate into an answer.
func estimate[A ~float64](e quantity.Estimate[A]) worksheet.Estimate {
	if !e.Bounded {
		return worksheet.Alone(float64(e.Value))
	}
	return worksheet.Between(float64(e.Value), float64(e.Low95), float64(e.High95))
}

// number points to a number that exists in this case.
func number[A ~float64](v A) *float64 { return worksheet.Some(float64(v)) }
