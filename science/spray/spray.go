// Package spray is the arithmetic of getting a liquid out of a nozzle and onto
// ground: flow, speed and width; sieves and orifices; canopies and lines. It
// holds for any liquid that behaves like water, tea or not.
//
// Rates in this package are always of what leaves the nozzle.
package spray

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// named is an input with the name of its flag.
type named struct {
	field string
	value float64
	shown any
}

// overZero refuses inputs that are not over 0 or not finite; all at once.
func overZero(inputs ...named) error {
	var faults fault.List
	for _, in := range inputs {
		if !(in.value > 0) || math.IsInf(in.value, 0) {
			faults = append(faults, fault.New(in.field, "", wording.Say("spray.over-zero", wording.Places{"value": in.shown}),
				wording.Say("spray.over-zero.allowed"), wording.Text{}))
		}
	}
	return faults.OrNil()
}

// amount names a typed input.
func amount[Q quantity.Amount](field string, q Q) named { return named{field, float64(q), q} }
