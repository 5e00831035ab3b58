package ground_test

import (
	"math"
	"strings"
	"testing"

	"aerosteep/job/ground"
)

const walkedGPX = `<?xml version="1.0"?><gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">
<wpt lat="1" lon="1"/><trk><trkseg>
<trkpt lat="44.12" lon="-123.05"><ele>640</ele></trkpt><trkpt lat="44.12" lon="-123.0496"/>
<trkpt lat="44.1203" lon="-123.0496"/><trkpt lat="44.1203" lon="-123.05"/></trkseg></trk></gpx>`

// The four corners of the worksheet's worked example, as a track: 1067.289 m2
// (Karney 2013, as GeographicLib computes it).
func TestReadGPX(t *testing.T) {
	corners, err := ground.ReadGPX("walk.gpx", []byte(walkedGPX))
	if err != nil {
		t.Fatal(err)
	}
	field, err := ground.NewField(corners)
	if err != nil {
		t.Fatal(err)
	}
	if a := field.Patch().Area.SquareMetres(); math.Abs(a-1067.289) > 0.001 {
		t.Errorf("%g m2, want 1067.289", a)
	}
}

func TestReadGPXRefuses(t *testing.T) {
	for _, text := range []string{"", "<gpx>", "<gpx/>", strings.Replace(walkedGPX, "44.1203", "94", 1), `<gpx><trkpt lat="1"/></gpx>`} {
		if corners, err := ground.ReadGPX("walk.gpx", []byte(text)); err == nil {
			t.Errorf("%.40q gives %v", text, corners)
		}
	}
}

func FuzzReadGPX(f *testing.F) {
	f.Add([]byte(walkedGPX))
	f.Add([]byte(`<gpx><wpt lat="1" lon="NaN"/></gpx>`))
	f.Fuzz(func(t *testing.T, data []byte) {
		corners, err := ground.ReadGPX("walk.gpx", data)
		for _, c := range corners {
			if err == nil && !(math.Abs(c.Latitude) <= 90 && math.Abs(c.Longitude) <= 180) {
				t.Errorf("%v is not on the earth", c)
			}
		}
	})
}

// Thirty paces of somebody who takes 25 over 20 m are 24 m.
func TestPaced(t *testing.T) {
	if l := ground.Paced(30, 25).Metres(); math.Abs(l-24) > 1e-12 {
		t.Errorf("%g m, want 24", l)
	}
}
