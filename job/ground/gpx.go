package ground

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"

	"aerosteep/fault"
	"aerosteep/wording"
)

// gpxPoints are the points of a GPX file that a walk leaves: track, route or
// way points.
var gpxPoints = map[string]bool{"trkpt": true, "rtept": true, "wpt": true}

// ReadGPX reads the corners of a field from a GPX file in the order in which
// they stand: the points of its track, else of its route, else its way points.
//
// Errors: a *fault.Fault of the field corners. Source: GPX 1.1, Topografix
// schema.
func ReadGPX(name string, data []byte) ([]Corner, error) {
	found := map[string][]Corner{}
	reader := xml.NewDecoder(bytes.NewReader(data))
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, gpxFault(name, wording.Say("ground.gpx.broken"))
		}
		start, isStart := token.(xml.StartElement)
		if !isStart || !gpxPoints[start.Name.Local] {
			continue
		}
		c, what := gpxCorner(start)
		if what != nil {
			return nil, gpxFault(name, *what)
		}
		found[start.Name.Local] = append(found[start.Name.Local], c)
	}
	for _, kind := range []string{"trkpt", "rtept", "wpt"} {
		if len(found[kind]) > 0 {
			return found[kind], nil
		}
	}
	return nil, gpxFault(name, wording.Say("ground.gpx.empty"))
}

func gpxCorner(start xml.StartElement) (Corner, *wording.Text) {
	given := map[string]string{}
	for _, a := range start.Attr {
		given[a.Name.Local] = a.Value
	}
	return parseCorner(given["lat"] + "," + given["lon"])
}

func gpxFault(name string, what wording.Text) error {
	return fault.New("corners", name, what, wording.Say("ground.gpx.allowed"), wording.Say("ground.gpx.advice"))
}
