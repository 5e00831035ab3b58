// Package place is the part of a form that says how high up the work is: the
// pressure of the air that every answer about oxygen and air rests on.
package place

import (
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// Inputs are the three ways to say it. A sheet appends them to its own.
func Inputs() []worksheet.Input {
	return []worksheet.Input{
		{Flag: "altitude", Kind: worksheet.Altitude, Low: "-500 m", High: "5000 m"},
		{Flag: "pressure", Kind: worksheet.AirPressure, Low: "50 kPa", High: "112 kPa"},
		{Flag: "sea-level-pressure", Kind: worksheet.AirPressure, Low: "87 kPa", High: "109 kPa"},
	}
}

// From is which input the pressure came from.
type From string

// The ways.
const (
	Altitude         From = "altitude"
	Pressure         From = "pressure"
	SeaLevelPressure From = "sea-level-pressure"
	Default          From = "default"
)

// Place is the air of a site.
type Place struct {
	Pressure quantity.Pressure // station pressure, absolute
	From     From
}

// Keys are the place in an answer.
type Keys struct {
	PressureKPa  *float64 `json:"pressure_kpa"`
	PressureFrom *string  `json:"pressure_from"`
}

// Keys puts the place into an answer.
func (p Place) Keys() Keys {
	return Keys{worksheet.Some(p.Pressure.Kilopascals()), worksheet.Some(string(p.From))}
}

// Source is where the altitude's pressure is from.
var Source = source.ASHRAEAtmosphere

// Read finds the pressure of the place on a form; sea level where nothing was
// said. The pressure of a barometer at the site goes alone, the figure of a
// weather report needs the altitude.
func Read(f *worksheet.Form) (Place, error) {
	switch {
	case f.Has("pressure"):
		if others := f.Given("altitude", "sea-level-pressure"); len(others) > 0 {
			return Place{}, f.Advise("pressure", "place.twice", "place.twice.advice", wording.Places{"other": "--" + others[0]})
		}
		return Place{f.Pressure("pressure"), Pressure}, nil
	case f.Has("sea-level-pressure"):
		if !f.Has("altitude") {
			return Place{}, f.Advise("sea-level-pressure", "place.needs-altitude", "place.needs-altitude.advice")
		}
		station, err := air.StationPressure(f.Pressure("sea-level-pressure"), f.Length("altitude"))
		return Place{station, SeaLevelPressure}, err
	case f.Has("altitude"):
		station, err := air.PressureAt(f.Length("altitude"))
		return Place{station, Altitude}, err
	}
	return Place{quantity.StandardAtmosphere, Default}, nil
}

// Tell names the place's pressure and says what a person may have got wrong
// about it.
func (p Place) Tell(r *worksheet.Result) {
	if r.Labels == nil {
		r.Labels = map[string]wording.Text{}
	}
	if _, own := r.Labels["pressure_kpa"]; !own {
		r.Labels["pressure_kpa"] = wording.Say("place.pressure")
	}
	switch p.From {
	case Default:
		r.Caution("place.default")
	case Pressure:
		r.Caution("place.station")
	}
}
