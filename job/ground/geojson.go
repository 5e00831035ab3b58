package ground

import (
	"encoding/json"

	"aerosteep/fault"
	"aerosteep/wording"
)

// geoObject is any object of RFC 7946 that can hold a field.
type geoObject struct {
	Type        string          `json:"type"`
	Coordinates json.RawMessage `json:"coordinates"`
	Geometry    *geoObject      `json:"geometry"`
	Features    []geoObject     `json:"features"`
}

// ReadGeoJSON reads a Polygon, a MultiPolygon, or a Feature or
// FeatureCollection of them (RFC 7946: longitude before latitude). Holes are
// taken off, ring directions do not matter. unclosed tells that a ring was
// closed for the file.
//
// Errors: a *fault.Fault of the field geojson.
func ReadGeoJSON(name string, data []byte) (f *Field, unclosed bool, err error) {
	var object geoObject
	if err := json.Unmarshal(data, &object); err != nil {
		return nil, false, geoFault(name, wording.Say("ground.geojson.broken"))
	}
	reader := geoReader{field: &Field{}}
	if what := reader.take(object, 0); what != nil {
		return nil, false, geoFault(name, *what)
	}
	if len(reader.field.parts) == 0 {
		return nil, false, geoFault(name, wording.Say("ground.geojson.empty"))
	}
	return reader.field, reader.unclosed, nil
}

func geoFault(name string, what wording.Text) error {
	return fault.New("geojson", name, what, wording.Say("ground.geojson.allowed"), wording.Say("ground.geojson.advice"))
}

type geoReader struct {
	field    *Field
	unclosed bool
}

// deepest is how far Features may stand inside each other.
const deepest = 2

func (g *geoReader) take(o geoObject, depth int) *wording.Text {
	switch {
	case o.Type == "Polygon":
		var polygon [][][]float64
		if json.Unmarshal(o.Coordinates, &polygon) != nil {
			return new(wording.Say("ground.geojson.coordinates"))
		}
		return g.polygon(polygon)
	case o.Type == "MultiPolygon":
		var many [][][][]float64
		if json.Unmarshal(o.Coordinates, &many) != nil {
			return new(wording.Say("ground.geojson.coordinates"))
		}
		for _, polygon := range many {
			if what := g.polygon(polygon); what != nil {
				return what
			}
		}
		return nil
	case o.Type == "Feature" && o.Geometry != nil && depth < deepest:
		return g.take(*o.Geometry, depth+1)
	case o.Type == "FeatureCollection" && depth == 0:
		for _, feature := range o.Features {
			if what := g.take(feature, depth+1); what != nil {
				return what
			}
		}
		return nil
	}
	return new(wording.Say("ground.geojson.other", wording.Places{"type": o.Type}))
}

func (g *geoReader) polygon(rings [][][]float64) *wording.Text {
	if len(rings) == 0 {
		return new(wording.Say("ground.geojson.empty"))
	}
	corners := make([][]Corner, len(rings))
	for i, positions := range rings {
		for j, position := range positions {
			if len(position) < 2 {
				return new(wording.Say("ground.geojson.coordinates"))
			}
			c := Corner{Latitude: position[1], Longitude: position[0]}
			if what := c.outside(); what != nil {
				return new(wording.Say("ground.corner", wording.Places{"number": j + 1, "what": *what}))
			}
			corners[i] = append(corners[i], c)
		}
		if n := len(corners[i]); n > 0 && !corners[i][0].same(corners[i][n-1]) {
			g.unclosed = true
		}
	}
	return g.field.add(corners)
}
