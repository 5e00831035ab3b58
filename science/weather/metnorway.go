package weather

import (
	"encoding/json"
	"time"

	"aerosteep/quantity"
	"aerosteep/wording"
)

type metFile struct {
	Geometry struct {
		Coordinates []float64 `json:"coordinates"`
	} `json:"geometry"`
	Properties struct {
		Meta struct {
			Units map[string]string `json:"units"`
		} `json:"meta"`
		Timeseries []metEntry `json:"timeseries"`
	} `json:"properties"`
}

type metEntry struct {
	Time time.Time `json:"time"`
	Data struct {
		Instant  metBlock  `json:"instant"`
		NextHour *metBlock `json:"next_1_hours"`
		Next6    *metBlock `json:"next_6_hours"`
	} `json:"data"`
}

type metBlock struct {
	Details map[string]*float64 `json:"details"`
}

// metUnits are the units that the house reads.
var metUnits = map[string]string{
	"air_temperature": "celsius", "dew_point_temperature": "celsius", "relative_humidity": "%",
	"wind_speed": "m/s", "wind_speed_of_gust": "m/s", "cloud_area_fraction": "%",
	"precipitation_amount": "mm", "air_pressure_at_sea_level": "hPa", "ultraviolet_index_clear_sky": "1",
}

// readMETNorway reads locationforecast 2.0, compact or complete. Later entries
// that only look six hours ahead become hours by straight lines to the next
// entry, marked coarse.
//
// Source: MET Norway, Locationforecast 2.0 data model.
func readMETNorway(name string, data []byte) (*Forecast, error) {
	var file metFile
	if err := json.Unmarshal(data, &file); err != nil {
		return nil, fileFault(name, "", wording.Say("weather.json.broken"))
	}
	for layer, unit := range file.Properties.Meta.Units {
		if known, used := metUnits[layer]; used && unit != known {
			return nil, fileFault(name, unit, wording.Say("weather.json.unit", wording.Places{"layer": layer, "unit": unit}))
		}
	}
	f := &Forecast{}
	f.Place, f.Altitude = file.place()
	if err := f.takeEntries(name, file.Properties.Timeseries); err != nil {
		return nil, err
	}
	if len(f.Hours) == 0 {
		return nil, fileFault(name, "", wording.Say("weather.no-hours"))
	}
	return f, f.checkRanges(name)
}

func (f *Forecast) takeEntries(name string, entries []metEntry) error {
	for i, e := range entries {
		if i > 0 && e.Time.Sub(entries[i-1].Time) < time.Hour {
			return fileFault(name, e.Time.Format(time.RFC3339), wording.Say("weather.not-an-hour-later"))
		}
		switch {
		case e.Data.NextHour != nil:
			h := e.hour()
			h.setRain(e.Data.NextHour, 1)
			f.Hours = append(f.Hours, h)
		case e.Data.Next6 != nil && i+1 < len(entries):
			f.Hours = append(f.Hours, e.bridge(entries[i+1])...)
		}
	}
	return nil
}

// hour is what an entry says of its instant.
func (e metEntry) hour() Hour {
	h := Hour{At: e.Time.UTC()}
	d := e.Data.Instant.Details
	h.Temperature = converted(d["air_temperature"], quantity.Celsius)
	h.DewPoint = converted(d["dew_point_temperature"], quantity.Celsius)
	h.Humidity = d["relative_humidity"]
	h.Wind = converted(d["wind_speed"], quantity.MetresPerSecond)
	h.Gust = converted(d["wind_speed_of_gust"], quantity.MetresPerSecond)
	h.Cloud = d["cloud_area_fraction"]
	h.UV = d["ultraviolet_index_clear_sky"]
	h.SeaLevelPressure = converted(d["air_pressure_at_sea_level"], func(v float64) quantity.Pressure { return quantity.Kilopascals(v / 10) })
	return h
}

func (h *Hour) setRain(b *metBlock, hours float64) {
	if mm := b.Details["precipitation_amount"]; mm != nil {
		h.Rain = new(quantity.Metres(*mm / hours / 1000))
	}
}

func converted[T any](v *float64, to func(float64) T) *T {
	if v == nil {
		return nil
	}
	return new(to(*v))
}

// bridge draws the hours of a six-hour step as straight lines to the next
// entry; the rain is shared among the six.
func (e metEntry) bridge(next metEntry) []Hour {
	const step = 6
	a, b := e.hour(), next.hour()
	apart := b.At.Sub(a.At).Hours()
	var hours []Hour
	for i := 0; i < step && float64(i+1) <= apart; i++ {
		h := drawn(a, b, float64(i)/apart)
		h.At, h.Coarse = a.At.Add(time.Duration(i)*time.Hour), true
		h.setRain(e.Data.Next6, step)
		hours = append(hours, h)
	}
	return hours
}

func drawn(a, b Hour, share float64) Hour {
	return Hour{
		Temperature:      line(a.Temperature, b.Temperature, share),
		DewPoint:         line(a.DewPoint, b.DewPoint, share),
		Humidity:         line(a.Humidity, b.Humidity, share),
		Wind:             line(a.Wind, b.Wind, share),
		Gust:             line(a.Gust, b.Gust, share),
		Cloud:            line(a.Cloud, b.Cloud, share),
		SeaLevelPressure: line(a.SeaLevelPressure, b.SeaLevelPressure, share),
	}
}

// line is a point on the line from a to b; at its start a alone is enough.
func line[T ~float64](a, b *T, share float64) *T {
	switch {
	case a == nil || b == nil && share > 0:
		return nil
	case share == 0:
		return a
	}
	return new(*a + T(share)*(*b-*a))
}

func (f metFile) place() (*Place, *quantity.Length) {
	c := f.Geometry.Coordinates
	if len(c) < 2 {
		return nil, nil
	}
	p := Place{Latitude: c[1], Longitude: c[0]}.onEarth(true)
	if len(c) < 3 {
		return p, nil
	}
	return p, new(quantity.Metres(c[2]))
}
