package ground

import (
	"regexp"
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Corner is a corner of a field in degrees, north and east positive.
type Corner struct{ Latitude, Longitude float64 }

// degrees always have decimal points: a comma parts latitude and longitude.
var degrees = regexp.MustCompile(`^[+-]?(\d+(\.\d*)?|\.\d+)$`)

// ParseCorners reads "44.12,-123.05; 44.12,-123.0496; …": latitude, then
// longitude, in walking order.
//
// Errors: a *fault.Fault of the field corners that names the corner.
func ParseCorners(text string) ([]Corner, error) {
	var corners []Corner
	for i, item := range strings.Split(text, ";") {
		c, err := parseCorner(item)
		if err != nil {
			return nil, cornerFault(i+1, strings.TrimSpace(item), err)
		}
		corners = append(corners, c)
	}
	return corners, nil
}

func parseCorner(item string) (Corner, *wording.Text) {
	parts := strings.Split(item, ",")
	if len(parts) != 2 {
		return Corner{}, new(wording.Say("ground.corner.two-numbers"))
	}
	var at [2]float64
	for i, part := range parts {
		part = strings.Replace(strings.TrimSpace(part), "−", "-", 1)
		v, err := strconv.ParseFloat(part, 64)
		if !degrees.MatchString(part) || err != nil {
			return Corner{}, new(wording.Say("ground.corner.no-degrees", wording.Places{"part": part}))
		}
		at[i] = v
	}
	c := Corner{at[0], at[1]}
	return c, c.outside()
}

// outside says what is wrong with a corner that is not on the earth.
func (c Corner) outside() *wording.Text {
	switch {
	case !(c.Latitude >= -90 && c.Latitude <= 90):
		return new(wording.Say("ground.corner.latitude", wording.Places{"latitude": c.Latitude}))
	case !(c.Longitude >= -180 && c.Longitude <= 180):
		return new(wording.Say("ground.corner.longitude", wording.Places{"longitude": c.Longitude}))
	}
	return nil
}

func cornerFault(number int, given string, what *wording.Text) *fault.Fault {
	return fault.New("corners", given, wording.Say("ground.corner", wording.Places{"number": number, "what": *what}),
		wording.Say("ground.corner.allowed"), wording.Say("ground.corner.advice"))
}
