package quantity

import (
	"strconv"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Conversion is an amount said in another unit.
type Conversion struct {
	Value float64
	Unit  string // in full
	Kind  string // of what was typed
	Read  Reading
}

// Convert says a typed amount in another unit. Volume and mass meet only
// through a bulk density (0: none given); difference reads temperatures as
// steps, not as points.
func Convert(amount, to string, bulk Density, difference bool) (Conversion, error) {
	reading, err := Read(amount)
	if err != nil {
		err.(*fault.Fault).Field = "value"
		return Conversion{}, err
	}
	target, wrong := ParseUnit(to)
	if wrong != nil {
		wrong.Field, wrong.Given = "to", to
		return Conversion{}, wrong
	}
	c := Conversion{Unit: target.Name, Kind: reading.Unit.Kind(), Read: reading}
	if c.Kind == "temperature" && difference {
		c.Kind = "temperature-difference"
	}
	if wrong := checkConversion(reading, target, amount, to, bulk, difference); wrong != nil {
		return Conversion{}, wrong
	}
	c.Value = convert(reading, target, bulk, difference)
	return c, nil
}

func checkConversion(r Reading, target Unit, amount, to string, bulk Density, difference bool) *fault.Fault {
	from := r.Unit
	switch {
	case difference && from.Dim != temperature:
		return fault.New("difference", amount, wording.Say("quantity.difference-only"), wording.Text{}, wording.Text{})
	case from.Dim == temperature && !difference && r.SI < 0:
		return fault.New("value", amount, wording.Say("quantity.below-absolute-zero"), wording.Text{}, wording.Text{})
	case from.Dim != temperature && r.SI < 0:
		return fault.New("value", amount, wording.Say("quantity.negative"), wording.Text{}, wording.Text{})
	case meetsThroughDensity(from.Dim, target.Dim):
		if bulk <= 0 {
			return fault.New("bulk-density", "", wording.Say("quantity.needs-density"), densityKind.allowed(), wording.Say("quantity.needs-density.advice"))
		}
	case from.Dim != target.Dim:
		return fault.New("to", to, wording.Say("quantity.wrong-kind", wording.Places{
			"unit": target.Name, "is": wording.Say("quantity.kind." + target.Kind()), "wanted": wording.Say("quantity.kind." + from.Kind()),
		}), wording.Text{}, wording.Text{})
	}
	return nil
}

func meetsThroughDensity(a, b Dimension) bool {
	return a == volume && b == mass || a == mass && b == volume
}

func convert(r Reading, target Unit, bulk Density, difference bool) float64 {
	si := r.SI
	switch {
	case difference:
		return r.Number * r.Unit.Factor / target.Factor
	case r.Unit.Dim == temperature:
		return point(r.Number, r.Unit, target)
	case r.Unit.Dim == volume && target.Dim == mass:
		si *= float64(bulk) * 1000
	case r.Unit.Dim == mass && target.Dim == volume:
		si /= float64(bulk) * 1000
	}
	return si / target.Factor
}

// point converts a reading of a thermometer by way of Celsius, where the round
// numbers of all scales meet without the long way from absolute zero.
func point(number float64, from, to Unit) float64 {
	celsius := number
	switch from.Name {
	case "°F":
		celsius = (number - 32) * 5 / 9
	case "K":
		celsius = number - kelvinAtZeroCelsius
	}
	switch to.Name {
	case "°F":
		return celsius*9/5 + 32
	case "K":
		return celsius + kelvinAtZeroCelsius
	}
	return celsius
}

// Digits writes a value with at most so many significant digits.
func Digits(v float64, n int) string { return strconv.FormatFloat(v, 'g', n, 64) }
