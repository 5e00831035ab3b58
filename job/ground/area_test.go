package ground_test

import (
	"math"
	"strings"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/job/ground"
	"aerosteep/quantity"
)

// TestShapesInClosedForm holds every shape to plane geometry.
func TestShapesInClosedForm(t *testing.T) {
	for _, row := range published.Rows(t, "area.csv") {
		in := func(column string) quantity.Length {
			l, err := quantity.ParseLength(row.Text(column) + " " + row.Text("unit_in"))
			if err != nil {
				t.Fatal(err)
			}
			return l
		}
		var got ground.Patch
		switch shape, _, _ := strings.Cut(row.Text("shape"), " ("); shape {
		case "rectangle":
			got = ground.Rectangle(in("a"), in("b"))
		case "circle":
			got = ground.Circle(in("a"))
		case "triangle":
			got, _ = ground.TriangleBySides(in("a"), in("b"), in("c"))
		case "trapezoid":
			got = ground.Trapezoid(in("a"), in("b"), in("c"))
		case "ring":
			got = ground.Ring(2*in("a"), 2*in("b"))
		default:
			t.Fatalf("nobody measures a %s", shape)
		}
		if row.Text("unit") == "sq ft" {
			row.Check(got.Area.SquareFeet(), "sq ft")
		} else {
			row.Check(got.Area.SquareMetres(), "m2")
		}
	}
}

// TestFieldsAreGeodesic: GeographicLib areas on WGS84 (Karney 2013); a sphere
// would be up to 0.45 % off.
func TestFieldsAreGeodesic(t *testing.T) {
	for _, row := range published.Rows(t, "polygon_area.csv") {
		field, unclosed, err := ground.ReadGeoJSON("f.geojson", []byte(row.Text("geojson")))
		if err != nil || unclosed {
			t.Fatal(err, unclosed)
		}
		row.Check(field.Patch().Area.SquareMetres(), "m2")
	}
}

func field(t *testing.T, corners string) *ground.Field {
	t.Helper()
	c, err := ground.ParseCorners(corners)
	if err != nil {
		t.Fatal(err)
	}
	f, err := ground.NewField(c)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

const smallField = "44.12,-123.05; 44.12,-123.0496; 44.1203,-123.0496; 44.1203,-123.05"

// The figures of the worked call: GeographicLib, and 3 m at each corner.
func TestWalkedField(t *testing.T) {
	f := field(t, smallField)
	got, doubt := f.Patch(), f.Doubt(3).SquareMetres()*1.28155
	for name, d := range map[string][2]float64{
		"area":      {got.Area.SquareMetres(), 1067.289},
		"perimeter": {got.Perimeter.Metres(), 130.704},
		"low":       {got.Area.SquareMetres() - doubt, 889.59},
		"high":      {got.Area.SquareMetres() + doubt, 1244.99},
	} {
		if math.Abs(d[0]-d[1]) > 0.01 {
			t.Errorf("%s %.3f, want %.3f", name, d[0], d[1])
		}
	}
}

// Direction, a repeated first corner and the 180th meridian change nothing.
func TestSameFieldHoweverItIsGiven(t *testing.T) {
	want := field(t, smallField).Patch().Area
	for name, corners := range map[string]string{
		"the other way round":    "44.1203,-123.05; 44.1203,-123.0496; 44.12,-123.0496; 44.12,-123.05",
		"first corner again":     smallField + "; 44.12,-123.05",
		"across the date line":   "44.12,179.9998; 44.12,-179.9998; 44.1203,-179.9998; 44.1203,179.9998",
		"touching the date line": "44.12,179.9996; 44.12,180; 44.1203,-180; 44.1203,179.9996",
	} {
		if got := field(t, corners).Patch().Area; math.Abs(float64(got/want)-1) > 1e-8 {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}

func TestFieldsThatAreNone(t *testing.T) {
	for name, corners := range map[string]string{
		"crossing sides":      "44.12,-123.05; 44.1203,-123.0496; 44.12,-123.0496; 44.1203,-123.05",
		"two corners":         "44.12,-123.05; 44.12,-123.0496; 44.12,-123.05",
		"all on a line":       "44,-123; 44.5,-123; 44.2,-123",
		"there and back":      "44,-123; 44,-122.9; 44.1,-122.9; 44,-122.9",
		"another continent":   "44.12,-123.05; 44.12,23.0496; 44.1203,-123.0496",
		"order turned round":  "-123.05,44.12; -123.0496,44.12; -123.0496,44.1203",
		"longitude beyond":    "44,190; 44,191; 45,191",
		"decimal commas":      "44,12,-123,05; 44,12,-123,04; 44,13,-123,04",
		"letters":             "44.12N,123.05W; 44.12N,123.04W; 44.13N,123.04W",
		"nothing":             "",
		"round the pole":      "89,0; 89,90; 89,180; 89,-90",
		"touching at a point": "0,0; 0,2; 1,1; 2,2; 2,0; 1,1",
	} {
		c, err := ground.ParseCorners(corners)
		if err == nil {
			_, err = ground.NewField(c)
		}
		if err == nil {
			t.Errorf("%s was taken", name)
		}
	}
}

func TestOrderIsAskedFor(t *testing.T) {
	_, err := ground.ParseCorners("-123.05,44.12; -123.0496,44.12; -123.0496,44.1203")
	if err == nil || !strings.Contains(err.Error(), "is the order right") {
		t.Errorf("%v", err)
	}
}

func TestGeoJSON(t *testing.T) {
	square := `[[0,0],[0.001,0],[0.001,0.001],[0,0.001],[0,0]]`
	one := `{"type":"Polygon","coordinates":[` + square + `]}`
	single, _, _ := ground.ReadGeoJSON("f", []byte(one))
	for name, c := range map[string]struct {
		text     string
		times    float64
		unclosed bool
	}{
		"feature":    {`{"type":"Feature","properties":{},"geometry":` + one + `}`, 1, false},
		"collection": {`{"type":"FeatureCollection","features":[{"type":"Feature","geometry":` + one + `},{"type":"Feature","geometry":` + one + `}]}`, 2, false},
		"multi":      {`{"type":"MultiPolygon","coordinates":[[` + square + `],[` + square + `]]}`, 2, false},
		"unclosed":   {`{"type":"Polygon","coordinates":[[[0,0],[0.001,0],[0.001,0.001],[0,0.001]]]}`, 1, true},
	} {
		f, unclosed, err := ground.ReadGeoJSON("f", []byte(c.text))
		if err != nil || unclosed != c.unclosed || math.Abs(float64(f.Patch().Area/single.Patch().Area)-c.times) > 1e-9 {
			t.Errorf("%s: %v %v", name, unclosed, err)
		}
	}
	for name, text := range map[string]string{
		"broken":       `{"type":"Polygon"`,
		"a point":      `{"type":"Point","coordinates":[0,0]}`,
		"no features":  `{"type":"FeatureCollection","features":[]}`,
		"null":         `null`,
		"no geometry":  `{"type":"Feature","geometry":null}`,
		"lat first":    `{"type":"Polygon","coordinates":[[[44,-123],[44,-122],[45,-122],[44,-123]]]}`,
		"hole outside": `{"type":"Polygon","coordinates":[` + square + `,[[1,1],[1.001,1],[1.001,1.001],[1,1]]]}`,
		"half a point": `{"type":"Polygon","coordinates":[[[0],[0.001,0],[0.001,0.001],[0]]]}`,
	} {
		if _, _, err := ground.ReadGeoJSON("f", []byte(text)); err == nil {
			t.Errorf("%s was taken", name)
		}
	}
}

func TestNoTriangle(t *testing.T) {
	if _, err := ground.TriangleBySides(1, 2, 3); err == nil {
		t.Error("1, 2 and 3 m made a triangle")
	}
	if p, err := ground.TriangleBySides(3, 5, 4); err != nil || math.Abs(p.Area.SquareMetres()-6) > 1e-12 {
		t.Errorf("3, 5, 4 m: %v %v", p, err)
	}
}

func BenchmarkFieldOf200Corners(b *testing.B) {
	var corners []ground.Corner
	for i := range 200 {
		turn := 2 * math.Pi * float64(i) / 200
		corners = append(corners, ground.Corner{Latitude: 44 + 0.001*math.Sin(turn), Longitude: -123 + 0.001*math.Cos(turn)})
	}
	for b.Loop() {
		f, err := ground.NewField(corners)
		if err != nil {
			b.Fatal(err)
		}
		f.Patch()
	}
}

func FuzzParseCorners(f *testing.F) {
	f.Add(smallField)
	f.Add("44.12,-123.05;")
	f.Fuzz(func(t *testing.T, text string) {
		corners, err := ground.ParseCorners(text)
		if err != nil {
			return
		}
		if field, err := ground.NewField(corners); err == nil && math.IsNaN(field.Patch().Area.SquareMetres()) {
			t.Errorf("%q has no area and was taken", text)
		}
	})
}

func FuzzReadGeoJSON(f *testing.F) {
	f.Add(`{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,0]]]}`)
	f.Add(`{"type":"Feature","geometry":{"type":"Feature","geometry":null}}`)
	f.Fuzz(func(t *testing.T, text string) {
		field, _, err := ground.ReadGeoJSON("f", []byte(text))
		if err == nil && math.IsNaN(field.Patch().Area.SquareMetres()) {
			t.Errorf("%q has no area and was taken", text)
		}
	})
}
