package weather_test

import (
	"math"
	"testing"
	"time"

	"aerosteep/quantity"
	"aerosteep/science/weather"
)

// What is typed comes back through the reader of locationforecast files: the
// hours between two rows lie on a straight line, the rain is shared among six.
func TestTypedRowsBecomeHours(t *testing.T) {
	start := time.Date(2026, 6, 10, 6, 0, 0, 0, time.FixedZone("", -7*3600))
	rows := []weather.Hour{
		{At: start, Temperature: new(quantity.Celsius(9)), Humidity: new(88.), Wind: new(quantity.KilometresPerHour(3.6)), Rain: new(quantity.Metres(0.003))},
		{At: start.Add(6 * time.Hour), Temperature: new(quantity.Celsius(21)), Humidity: new(40.), Wind: new(quantity.KilometresPerHour(10.8)), Rain: new(quantity.Metres(0))},
		{At: start.Add(12 * time.Hour), Temperature: new(quantity.Celsius(15)), Humidity: new(60.), Wind: new(quantity.KilometresPerHour(7.2))},
	}
	text, err := weather.Typed(&weather.Place{Latitude: 44.12, Longitude: -123.05}, quantity.Metres(640), rows)
	if err != nil {
		t.Fatal(err)
	}
	read, err := weather.Read("typed", text, weather.CSVReading{})
	if err != nil {
		t.Fatal(err)
	}
	if n := len(read.Hours); n != 12 {
		t.Fatalf("%d hours, want 12", n)
	}
	third := read.Hours[3]
	if !third.At.Equal(start.Add(3*time.Hour)) || !third.Coarse {
		t.Errorf("hour 3 at %v, coarse %v", third.At, third.Coarse)
	}
	for what, pair := range map[string][2]float64{
		"temperature": {third.Temperature.Celsius(), 15},
		"humidity":    {*third.Humidity, 64},
		"wind":        {third.Wind.KilometresPerHour(), 7.2},
		"rain":        {third.Rain.Millimetres(), 0.5},
		"altitude":    {read.Altitude.Metres(), 640},
		"latitude":    {read.Place.Latitude, 44.12},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-9 {
			t.Errorf("%s: got %g, want %g", what, pair[0], pair[1])
		}
	}
}

// Rain that nobody typed stays unknown; it is not taken for none.
func TestTypedWithoutRainStaysUnknown(t *testing.T) {
	start := time.Date(2026, 6, 10, 6, 0, 0, 0, time.UTC)
	rows := []weather.Hour{{At: start, Temperature: new(quantity.Celsius(9))}, {At: start.Add(6 * time.Hour), Temperature: new(quantity.Celsius(12))}}
	text, err := weather.Typed(nil, 0, rows)
	if err != nil {
		t.Fatal(err)
	}
	read, err := weather.Read("typed", text, weather.CSVReading{})
	if err != nil {
		t.Fatal(err)
	}
	if read.Hours[0].Rain != nil || read.Place != nil {
		t.Errorf("rain %v, place %v: want both unknown", read.Hours[0].Rain, read.Place)
	}
}
