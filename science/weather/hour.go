package weather

import (
	"time"

	"aerosteep/quantity"
)

// Hour is one hour of a forecast, or of a record. A nil value is not known.
type Hour struct {
	At               time.Time // its start
	Temperature      *quantity.Temperature
	DewPoint         *quantity.Temperature
	Humidity         *float64        // percent
	Wind             *quantity.Speed // at 10 m
	Gust             *quantity.Speed
	Rain             *quantity.Length   // sum of the hour
	Cloud            *float64           // percent of the sky
	Pressure         *quantity.Pressure // at the place
	SeaLevelPressure *quantity.Pressure
	UV               *float64 // index
	Coarse           bool     // drawn as a line between two distant hours
}

// Forecast is hours in order of time, at most one for each hour. Where two
// neighbours are more than an hour apart, hours are missing.
type Forecast struct {
	Hours    []Hour
	Place    *Place           // nil where the file does not say
	Altitude *quantity.Length // nil where the file does not say
}

// Place is a point on the earth in degrees, north and east positive.
type Place struct{ Latitude, Longitude float64 }

// AirAt is the air temperature at a moment by a straight line between the
// starts of the hours around it; ok is false outside the forecast, across a
// gap of more than three hours and where no temperature is known.
func (f *Forecast) AirAt(at time.Time) (t quantity.Temperature, ok bool) {
	for i, h := range f.Hours {
		if h.At.After(at) {
			if i == 0 {
				return 0, false
			}
			return between(f.Hours[i-1], h, at)
		}
	}
	if n := len(f.Hours); n > 0 && f.Hours[n-1].Temperature != nil && at.Sub(f.Hours[n-1].At) < time.Hour {
		return *f.Hours[n-1].Temperature, true
	}
	return 0, false
}

// longestBridge is how far apart two hours may be for a line between them.
const longestBridge = 3 * time.Hour

func between(a, b Hour, at time.Time) (quantity.Temperature, bool) {
	if a.Temperature == nil || b.Temperature == nil || b.At.Sub(a.At) > longestBridge {
		return 0, false
	}
	share := float64(at.Sub(a.At)) / float64(b.At.Sub(a.At))
	return *a.Temperature + quantity.Temperature(share)*(*b.Temperature-*a.Temperature), true
}

// Air is the moist air of the hour at the pressure of the place; ok is false
// where temperature or humidity is not known.
func (h Hour) Air(altitude quantity.Length) (air MoistAir, ok bool) {
	if h.Temperature == nil {
		return MoistAir{}, false
	}
	p := h.pressureAt(altitude)
	switch {
	case h.Humidity != nil:
		return WithHumidity(*h.Temperature, *h.Humidity, p), true
	case h.DewPoint != nil:
		return WithDewPoint(*h.Temperature, min(*h.DewPoint, *h.Temperature), p), true
	}
	return MoistAir{}, false
}

// pressureAt is the reading at the place, else the one at sea level taken up
// to the altitude, else the standard atmosphere's.
func (h Hour) pressureAt(altitude quantity.Length) quantity.Pressure {
	switch {
	case h.Pressure != nil:
		return *h.Pressure
	case h.SeaLevelPressure != nil:
		return AtAltitude(*h.SeaLevelPressure, altitude)
	}
	return StandardPressure(altitude)
}

// relativeHumidity is the humidity in percent, from the dew point where it
// is not given itself.
func (h Hour) relativeHumidity() (percent float64, ok bool) {
	air, ok := h.Air(0)
	if !ok {
		return 0, false
	}
	if h.Humidity != nil {
		return *h.Humidity, true
	}
	return air.Humidity(), true
}
