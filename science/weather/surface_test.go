package weather

import (
	"slices"
	"testing"
	"time"

	"aerosteep/quantity"
)

// signsAt is what is said of the last of so many hours, all alike.
func signsAt(n int, celsius, humidity, rain float64, m Method) []SurfaceSign {
	start := time.Date(2026, 1, 10, 0, 0, 0, 0, time.UTC)
	var hours []Hour
	for i := range n {
		t, r, h := quantity.Celsius(celsius), quantity.Length(rain/1000), humidity
		hours = append(hours, Hour{At: start.Add(time.Duration(i) * time.Hour), Temperature: &t, Rain: &r, Humidity: &h})
	}
	return Score(&Forecast{Hours: hours}, Question{Method: m})[n-1].Surface
}

// Leaves count as wet from 90 % relative humidity (Sentelhas et al. 2008, Agric.
// For. Meteorol. 148:392, the simplest of their models; from memory) and after
// rain; a drench does not mind them. Frozen and flooded ground is that of 40 CFR
// 503.14(b); its hours and millimetres are this package's own.
func TestSurfaceSigns(t *testing.T) {
	for name, c := range map[string]struct {
		got  []SurfaceSign
		want []SurfaceSign
	}{
		"a dry day":            {signsAt(24, 15, 60, 0, Foliar), nil},
		"dew":                  {signsAt(24, 15, 90, 0, Foliar), []SurfaceSign{WetLeaves}},
		"dew and a drench":     {signsAt(24, 15, 95, 0, Drench), nil},
		"a shower just before": {signsAt(24, 15, 60, 0.5, Foliar), []SurfaceSign{WetLeaves}},
		"a night of frost":     {signsAt(24, -3, 60, 0, Drench), []SurfaceSign{FrozenSoil}},
		"one cold hour":        {signsAt(1, -3, 60, 0, Drench), nil},
		"30 mm in a day":       {signsAt(26, 15, 60, 1.25, Drench), []SurfaceSign{Waterlogged}},
		"10 mm in a day":       {signsAt(26, 15, 60, 0.42, Drench), nil},
	} {
		if !slices.Equal(c.got, c.want) {
			t.Errorf("%s: %v, not %v", name, c.got, c.want)
		}
	}
}
