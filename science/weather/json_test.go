package weather_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"aerosteep/science/weather"
)

// gridpoint is an invented answer in the form of the US National Weather
// Service's API documentation.
const gridpoint = `{"type":"Feature",
"geometry":{"type":"Polygon","coordinates":[[[-123.1,44.1],[-123.0,44.1],[-123.0,44.14],[-123.1,44.14],[-123.1,44.1]]]},
"properties":{"elevation":{"unitCode":"wmoUnit:m","value":640},
"temperature":{"uom":"wmoUnit:degC","values":[{"validTime":"2026-06-10T12:00:00+00:00/PT2H","value":11},{"validTime":"2026-06-10T14:00:00+00:00/PT1H","value":13.5},{"validTime":"2026-06-10T18:00:00+00:00/PT1H","value":null}]},
"relativeHumidity":{"uom":"wmoUnit:percent","values":[{"validTime":"2026-06-10T12:00:00+00:00/P1DT1H","value":72}]},
"windSpeed":{"uom":"wmoUnit:m_s-1","values":[{"validTime":"2026-06-10T12:00:00+00:00/PT3H","value":2}]},
"quantitativePrecipitation":{"uom":"wmoUnit:mm","values":[{"validTime":"2026-06-10T12:00:00+00:00/PT6H","value":3}]}}}`

func TestGridpoint(t *testing.T) {
	f, err := weather.Read("g.json", []byte(gridpoint), weather.CSVReading{})
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Hours) != 3 || f.Hours[0].At.Format(time.RFC3339) != "2026-06-10T12:00:00Z" {
		t.Fatalf("hours %+v", f.Hours)
	}
	last := f.Hours[2]
	if last.Temperature.Celsius() != 13.5 || *last.Humidity != 72 || math.Abs(last.Wind.KilometresPerHour()-7.2) > 1e-12 || math.Abs(last.Rain.Millimetres()-0.5) > 1e-12 || last.Gust != nil {
		t.Errorf("%+v", last)
	}
	if math.Abs(f.Place.Latitude-44.12) > 1e-9 || math.Abs(f.Place.Longitude+123.05) > 1e-9 || f.Altitude.Metres() != 640 {
		t.Errorf("place %+v, %v", f.Place, f.Altitude)
	}
}

// compact is an invented answer in the form of MET Norway's data model.
const compact = `{"type":"Feature","geometry":{"type":"Point","coordinates":[10.5,60.1,250]},
"properties":{"meta":{"units":{"air_temperature":"celsius","wind_speed":"m/s","relative_humidity":"%","precipitation_amount":"mm","air_pressure_at_sea_level":"hPa"}},
"timeseries":[
{"time":"2026-06-10T05:00:00Z","data":{"instant":{"details":{"air_temperature":9,"relative_humidity":80,"wind_speed":2,"air_pressure_at_sea_level":1010}},"next_1_hours":{"details":{"precipitation_amount":0.4}}}},
{"time":"2026-06-10T06:00:00Z","data":{"instant":{"details":{"air_temperature":10,"relative_humidity":80,"wind_speed":2}},"next_6_hours":{"details":{"precipitation_amount":3}}}},
{"time":"2026-06-10T12:00:00Z","data":{"instant":{"details":{"air_temperature":16,"relative_humidity":50,"wind_speed":5}},"next_6_hours":{"details":{"precipitation_amount":0}}}}]}}`

func TestLocationforecast(t *testing.T) {
	f, err := weather.Read("m.json", []byte(compact), weather.CSVReading{})
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Hours) != 7 || f.Hours[0].Coarse || !f.Hours[1].Coarse || !f.Hours[6].Coarse {
		t.Fatalf("%d hours: %+v", len(f.Hours), f.Hours)
	}
	h := f.Hours[3] // two hours of six on the way from 10 to 16 °C
	if h.At.Hour() != 8 || math.Abs(h.Temperature.Celsius()-12) > 1e-9 || math.Abs(*h.Humidity-70) > 1e-9 || math.Abs(h.Wind.MetresPerSecond()-3) > 1e-9 || math.Abs(h.Rain.Millimetres()-0.5) > 1e-12 {
		t.Errorf("%+v", h)
	}
	if *f.Place != (weather.Place{Latitude: 60.1, Longitude: 10.5}) || f.Altitude.Metres() != 250 {
		t.Errorf("place %+v %v", f.Place, f.Altitude)
	}
}

func TestForecastFilesThatAreRefused(t *testing.T) {
	for name, c := range map[string]struct{ text, wants string }{
		"truncated":           {gridpoint[:len(gridpoint)-200], "JSON"},
		"kelvin":              {strings.Replace(gridpoint, "degC", "K", 1), "wmoUnit:K"},
		"inches":              {strings.Replace(gridpoint, "wmoUnit:mm", "wmoUnit:in", 1), "wmoUnit:in"},
		"half an hour":        {strings.Replace(gridpoint, "PT2H", "PT30M", 1), "PT30M"},
		"not a full hour":     {strings.Replace(gridpoint, "T14:00", "T14:20", 1), "T14:20"},
		"too warm":            {strings.Replace(gridpoint, "13.5", "135", 1), "135"},
		"another JSON":        {`{"type":"Feature","properties":{}}`, "neither"},
		"fahrenheit":          {strings.Replace(compact, "celsius", "fahrenheit", 1), "fahrenheit"},
		"knots":               {strings.Replace(compact, "m/s", "knots", 1), "knots"},
		"backwards":           {strings.Replace(compact, "T12:00:00Z", "T04:00:00Z", 1), "hour after"},
		"no hour":             {`{"properties":{"timeseries":[]}}`, "no hour"},
		"temperature is text": {strings.Replace(gridpoint, `"value":13.5`, `"value":"13.5"`, 1), "temperature"},
	} {
		_, err := weather.Read("w.json", []byte(c.text), weather.CSVReading{})
		if err == nil || !strings.Contains(err.Error(), c.wants) {
			t.Errorf("%s: %v, want a word of %q", name, err, c.wants)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(gridpoint))
	f.Add([]byte(compact))
	f.Add([]byte("at,temp_c,wind_mph,rain_mm\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := weather.Read("w", data, weather.CSVReading{SkipBad: true})
		if err != nil {
			return
		}
		for i := 1; i < len(got.Hours); i++ {
			if got.Hours[i].At.Sub(got.Hours[i-1].At) < time.Hour {
				t.Fatal("hours out of order were taken")
			}
		}
	})
}
