package weather_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"aerosteep/science/weather"
)

const twoHours = "at,temp_f,rh_percent,wind_mph,rain_in,station\n" +
	"2026-06-10T05:00-07:00,50,80,5,0,A\n" +
	"2026-06-10T06:00:00-07:00,59,,5,0.1,A\n"

func TestCSVUnitsAndBlanks(t *testing.T) {
	f, skipped, unknown, err := weather.ReadCSV("w.csv", []byte(twoHours), weather.CSVReading{})
	if err != nil || len(skipped) != 0 || len(unknown) != 1 || unknown[0] != "station" {
		t.Fatalf("%v %v %v", err, skipped, unknown)
	}
	h := f.Hours[1]
	if math.Abs(h.Temperature.Celsius()-15) > 1e-12 || h.Humidity != nil || math.Abs(h.Wind.KilometresPerHour()-8.04672) > 1e-9 || math.Abs(h.Rain.Millimetres()-2.54) > 1e-12 {
		t.Errorf("%+v", h)
	}
	if air, ok := f.AirAt(f.Hours[0].At.Add(30 * time.Minute)); !ok || math.Abs(air.Celsius()-12.5) > 1e-12 {
		t.Errorf("half past five: %v %v, want 12.5 °C", air, ok)
	}
}

func TestCSVRefusals(t *testing.T) {
	row := "2026-06-10T05:00:00Z,10,50,5,0\n"
	for name, c := range map[string]struct{ text, wants string }{
		"two temperatures":   {"at,temp_c,temp_f,wind_mph,rain_mm\n2026-06-10T05:00:00Z,1,1,1,1\n", "temp_c, temp_f"},
		"no temperature":     {"at,wind_mph,rain_mm\n2026-06-10T05:00:00Z,1,1\n", "temp_c"},
		"no wind":            {"at,temp_c,rain_mm\n2026-06-10T05:00:00Z,1,1\n", "wind_km_per_h"},
		"no rain":            {"at,temp_c,wind_mph\n2026-06-10T05:00:00Z,1,1\n", "rain_mm"},
		"same hour twice":    {"at,temp_c,rh_percent,wind_mph,rain_mm\n" + row + row, "line 3"},
		"half an hour later": {"at,temp_c,rh_percent,wind_mph,rain_mm\n" + row + "2026-06-10T05:30:00Z,10,50,5,0\n", "line 3, column at"},
		"too warm":           {"at,temp_c,rh_percent,wind_mph,rain_mm\n2026-06-10T05:00:00Z,68.5,50,5,0\n", "line 2, column temp_c"},
		"a short row":        {"at,temp_c,rh_percent,wind_mph,rain_mm\n2026-06-10T05:00:00Z,10,50\n", "line 2"},
		"no rows":            {"at,temp_c,rh_percent,wind_mph,rain_mm\n", "no rows"},
		"dew over air":       {"at,temp_c,dew_point_c,wind_mph,rain_mm\n2026-06-10T05:00:00Z,10,12,5,0\n", "column dew_point_c"},
		"local, no zone":     {"at,temp_c,rh_percent,wind_mph,rain_mm\n2026-06-10 05:00,10,50,5,0\n", "column at"},
	} {
		_, _, _, err := weather.ReadCSV("w.csv", []byte(c.text), weather.CSVReading{})
		if err == nil || !strings.Contains(err.Error(), c.wants) {
			t.Errorf("%s: %v, want a word of %q", name, err, c.wants)
		}
	}
	dry := "at,temp_c,wind_mph,rain_mm\n2026-06-10T05:00:00Z,10,5,0\n"
	if _, _, _, err := weather.ReadCSV("w.csv", []byte(dry), weather.CSVReading{NeedsHumidity: true}); err == nil {
		t.Error("foliar hours without humidity were taken")
	}
}

func FuzzReadCSV(f *testing.F) {
	f.Add(twoHours)
	f.Add("at;temp_c;wind_mph;rain_mm\n2026-06-10T05:00:00Z;1,5;2;0\n")
	f.Fuzz(func(t *testing.T, text string) {
		forecast, _, _, err := weather.ReadCSV("w.csv", []byte(text), weather.CSVReading{SkipBad: true})
		if err == nil && len(forecast.Hours) == 0 {
			t.Error("a forecast without hours was taken")
		}
	})
}
