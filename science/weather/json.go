package weather

import (
	"bytes"
	"encoding/json"
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Reading is a forecast from a file, with what was left out of it.
type Reading struct {
	*Forecast
	Skipped  fault.List // bad rows of a CSV file
	Unknown  []string   // columns of a CSV file that mean nothing here
	FromJSON bool
}

// Read reads a forecast and tells the kinds of file apart by their content: a
// CSV file, gridpoint JSON of the US National Weather Service, locationforecast
// 2.0 JSON of MET Norway.
//
// Errors: a *fault.Fault that names the file and what is wrong in it.
func Read(name string, data []byte, how CSVReading) (Reading, error) {
	trimmed := bytes.TrimSpace(bytes.TrimPrefix(data, []byte("\ufeff")))
	if len(trimmed) == 0 || trimmed[0] != '{' && trimmed[0] != '[' {
		f, skipped, unknown, err := ReadCSV(name, data, how)
		return Reading{Forecast: f, Skipped: skipped, Unknown: unknown}, err
	}
	var doc struct {
		Properties struct {
			Timeseries  json.RawMessage `json:"timeseries"`
			Temperature json.RawMessage `json:"temperature"`
		} `json:"properties"`
	}
	if err := json.Unmarshal(trimmed, &doc); err != nil {
		return Reading{}, fileFault(name, "", wording.Say("weather.json.broken"))
	}
	var f *Forecast
	var err error
	switch {
	case doc.Properties.Timeseries != nil:
		f, err = readMETNorway(name, trimmed)
	case doc.Properties.Temperature != nil:
		f, err = readNWS(name, trimmed)
	default:
		err = fileFault(name, "", wording.Say("weather.json.neither"))
	}
	return Reading{Forecast: f, FromJSON: true}, err
}

func fileFault(name, given string, what wording.Text) error {
	return fault.New(name, given, what, wording.Say("weather.file.allowed"), wording.Say("weather.file.advice"))
}

// checkRanges refuses a value that no weather has, by the ranges of the CSV
// columns.
func (f *Forecast) checkRanges(name string) error {
	for i := range f.Hours {
		for _, c := range f.Hours[i].metricValues() {
			if !(c.value >= c.low && c.value <= c.high) {
				return fileFault(name, wording.Number(c.value, 4, wording.Reader{}), wording.Say("weather.json.outside", wording.Places{
					"what": c.name, "value": c.value, "at": f.Hours[i].At.Format(time.RFC3339), "low": c.low, "high": c.high}))
			}
		}
	}
	return nil
}

type bounded struct {
	name             string
	value, low, high float64
}

func (h *Hour) metricValues() []bounded {
	var all []bounded
	add := func(name string, low, high float64, value *float64) {
		if value != nil {
			all = append(all, bounded{name, *value, low, high})
		}
	}
	add("temp_c", -60, 60, plain(h.Temperature, quantity.Temperature.Celsius))
	add("dew_point_c", -60, 60, plain(h.DewPoint, quantity.Temperature.Celsius))
	add("rh_percent", 0, 100, h.Humidity)
	add("wind_km_per_h", 0, 200, plain(h.Wind, quantity.Speed.KilometresPerHour))
	add("gust_km_per_h", 0, 300, plain(h.Gust, quantity.Speed.KilometresPerHour))
	add("rain_mm", 0, 200, plain(h.Rain, quantity.Length.Millimetres))
	add("cloud_percent", 0, 100, h.Cloud)
	add("uv_index", 0, 25, h.UV)
	return all
}

func plain[T any](v *T, in func(T) float64) *float64 {
	if v == nil {
		return nil
	}
	return new(in(*v))
}
