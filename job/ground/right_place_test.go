package ground

import (
	"math"
	"testing"
)

// A degree of latitude on the mean sphere is 111.195 km (6,371.009 km x π/180,
// IUGG mean radius), and one of longitude that times the cosine of the latitude.
func TestOffBed(t *testing.T) {
	bed := []Corner{{Latitude: 44.12, Longitude: -123.05}, {Latitude: 44.12, Longitude: -123.0496}, {Latitude: 44.1203, Longitude: -123.0496}, {Latitude: 44.1203, Longitude: -123.05}}
	if d := OffBed(bed, Corner{Latitude: 44.12015, Longitude: -123.0498}); d != 0 {
		t.Errorf("in the middle of the bed, %g m off", d.Metres())
	}
	south := OffBed(bed, Corner{Latitude: 44.119, Longitude: -123.0498}).Metres()
	if want := 111.195; math.Abs(south-want) > 0.05 {
		t.Errorf("0.001° south of it: %g m, not %g", south, want)
	}
	west := OffBed(bed, Corner{Latitude: 44.12015, Longitude: -123.051}).Metres()
	if want := 111.195 * math.Cos(44.12015*math.Pi/180); math.Abs(west-want) > 0.05 {
		t.Errorf("0.001° west of it: %g m, not %g", west, want)
	}
	across := []Corner{{Latitude: 0, Longitude: 179.9999}, {Latitude: 0, Longitude: -179.9999}, {Latitude: 0.0002, Longitude: -179.9999}, {Latitude: 0.0002, Longitude: 179.9999}}
	if d := OffBed(across, Corner{Latitude: 0.0001, Longitude: 180}); d != 0 {
		t.Errorf("on the date line, %g m off", d.Metres())
	}
}
