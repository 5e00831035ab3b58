package application

import (
	"aerosteep/fault"
	"aerosteep/job/application"
	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// readPlot reads a plot stated by its area, by its sides, or by both; nil
// where neither was given. sidesFirst tells which of the two is used.
func readPlot(f *worksheet.Form, area, length, width string, sidesFirst bool) (*quantity.Area, error) {
	if err := f.Together(length, width); err != nil {
		return nil, err
	}
	stated := given[quantity.Area](f, area)
	if !f.Has(length) {
		return stated, nil
	}
	sides := quantity.Area(f.Length(length) * f.Length(width))
	if stated == nil {
		return &sides, nil
	}
	if !application.Agree(stated.SquareMetres(), sides.SquareMetres(), application.MeasuredAgree) {
		return nil, areasDiffer(f, area, length, width, *stated, sides)
	}
	if sidesFirst {
		return &sides, nil
	}
	return stated, nil
}

// areasDiffer names both areas in the unit that the area was stated in, so
// that a misprinted plot shows at a glance.
func areasDiffer(f *worksheet.Form, area, length, width string, stated, sides quantity.Area) *fault.Fault {
	unit, perUnit := "m2", 1.0
	if reading, err := quantity.Read(f.Text(area)); err == nil {
		unit, perUnit = reading.Unit.Name, reading.Unit.Factor
	}
	return f.Advise(area, "application.areas-differ", "application.areas-differ.advice", wording.Places{
		"length": "--" + length, "width": "--" + width, "area": "--" + area, "unit": unit,
		"sides": sides.SquareMetres() / perUnit, "stated": stated.SquareMetres() / perUnit,
	})
}

// stated is one way of saying a quantity, by its flag.
type stated[Q quantity.Amount] struct {
	flag  string
	value Q
}

// once takes the first of several ways of saying one quantity; the others
// must agree with it. nil where none was given.
func once[Q quantity.Amount](f *worksheet.Form, tolerance float64, ways ...*stated[Q]) (*Q, error) {
	var first *stated[Q]
	for _, way := range ways {
		switch {
		case way == nil:
		case first == nil:
			first = way
		case !application.Agree(float64(first.value), float64(way.value), tolerance):
			return nil, f.Advise(way.flag, "application.disagree", "application.disagree.advice", wording.Places{
				"first": "--" + first.flag, "second": "--" + way.flag, "a": first.value, "b": way.value,
			})
		}
	}
	if first == nil {
		return nil, nil
	}
	return &first.value, nil
}

// way reads one flag as a way of saying a quantity; build turns a bare number
// into it.
func way[Q quantity.Amount](f *worksheet.Form, flag string, build func(float64) Q) *stated[Q] {
	if !f.Has(flag) {
		return nil
	}
	return &stated[Q]{flag, build(f.Number(flag))}
}

func kept[Q quantity.Amount](v float64) Q { return Q(v) }
