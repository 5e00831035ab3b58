package weather

import (
	"encoding/json"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"time"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// nwsLayer is one quantity of a gridpoint forecast: values over intervals.
type nwsLayer struct {
	Unit   string `json:"uom"`
	Values []struct {
		ValidTime string   `json:"validTime"`
		Value     *float64 `json:"value"`
	} `json:"values"`
}

type nwsFile struct {
	Geometry struct {
		Coordinates [][][]float64 `json:"coordinates"`
	} `json:"geometry"`
	Properties map[string]json.RawMessage `json:"properties"`
}

// nwsQuantity is how a layer goes into hours: the units it may have, each
// with what a number in it is.
type nwsQuantity struct {
	layer  string
	spread bool // a sum over the interval, to be shared among its hours
	units  map[string]func(*Hour, float64)
}

var nwsQuantities = []nwsQuantity{
	{"temperature", false, nwsTemperature(func(h *Hour, t quantity.Temperature) { h.Temperature = &t })},
	{"dewpoint", false, nwsTemperature(func(h *Hour, t quantity.Temperature) { h.DewPoint = &t })},
	{"relativeHumidity", false, map[string]func(*Hour, float64){"percent": func(h *Hour, v float64) { h.Humidity = &v }}},
	{"windSpeed", false, nwsSpeed(func(h *Hour, s quantity.Speed) { h.Wind = &s })},
	{"windGust", false, nwsSpeed(func(h *Hour, s quantity.Speed) { h.Gust = &s })},
	{"skyCover", false, map[string]func(*Hour, float64){"percent": func(h *Hour, v float64) { h.Cloud = &v }}},
	{"quantitativePrecipitation", true, map[string]func(*Hour, float64){"mm": func(h *Hour, v float64) { h.Rain = new(quantity.Metres(v / 1000)) }}},
}

func nwsTemperature(put func(*Hour, quantity.Temperature)) map[string]func(*Hour, float64) {
	return map[string]func(*Hour, float64){
		"degC": func(h *Hour, v float64) { put(h, quantity.Celsius(v)) },
		"degF": func(h *Hour, v float64) { put(h, quantity.Fahrenheit(v)) },
	}
}

func nwsSpeed(put func(*Hour, quantity.Speed)) map[string]func(*Hour, float64) {
	return map[string]func(*Hour, float64){
		"km_h-1": func(h *Hour, v float64) { put(h, quantity.KilometresPerHour(v)) },
		"m_s-1":  func(h *Hour, v float64) { put(h, quantity.MetresPerSecond(v)) },
	}
}

// readNWS reads gridpoint JSON: each interval is spread over its hours, and
// rain is shared among them. Hours are those with a temperature.
//
// Source: US National Weather Service, API gridpoint forecast; units are of
// the WMO code registry.
func readNWS(name string, data []byte) (*Forecast, error) {
	var file nwsFile
	if err := json.Unmarshal(data, &file); err != nil {
		return nil, fileFault(name, "", wording.Say("weather.json.broken"))
	}
	hours := map[int64]*Hour{}
	for _, q := range nwsQuantities {
		if err := q.spreadOver(name, file.Properties[q.layer], hours); err != nil {
			return nil, err
		}
	}
	f := &Forecast{Place: file.place(), Altitude: file.altitude()}
	for _, h := range hours {
		if h.Temperature != nil {
			f.Hours = append(f.Hours, *h)
		}
	}
	if len(f.Hours) == 0 {
		return nil, fileFault(name, "", wording.Say("weather.no-hours"))
	}
	sort.Slice(f.Hours, func(i, j int) bool { return f.Hours[i].At.Before(f.Hours[j].At) })
	return f, f.checkRanges(name)
}

// mostHours is more than any forecast reaches ahead.
const mostHours = 24 * 60

func (q nwsQuantity) spreadOver(name string, raw json.RawMessage, hours map[int64]*Hour) error {
	if raw == nil || string(raw) == "null" {
		return nil
	}
	var layer nwsLayer
	if err := json.Unmarshal(raw, &layer); err != nil {
		return fileFault(name, q.layer, wording.Say("weather.json.layer", wording.Places{"layer": q.layer}))
	}
	put, known := q.units[strings.TrimPrefix(layer.Unit, "wmoUnit:")]
	if !known && len(layer.Values) > 0 {
		return fileFault(name, layer.Unit, wording.Say("weather.json.unit", wording.Places{"layer": q.layer, "unit": layer.Unit}))
	}
	for _, v := range layer.Values {
		start, n, ok := interval(v.ValidTime)
		if !ok {
			return fileFault(name, v.ValidTime, wording.Say("weather.json.interval", wording.Places{"layer": q.layer, "interval": v.ValidTime}))
		}
		if v.Value == nil {
			continue
		}
		value := *v.Value
		if q.spread {
			value /= float64(n)
		}
		for i := range n {
			put(hourAt(hours, start.Add(time.Duration(i)*time.Hour)), value)
		}
	}
	return nil
}

func hourAt(hours map[int64]*Hour, at time.Time) *Hour {
	if h, there := hours[at.Unix()]; there {
		return h
	}
	h := &Hour{At: at.UTC()}
	hours[at.Unix()] = h
	return h
}

// duration is the ISO 8601 duration of whole days and hours.
var duration = regexp.MustCompile(`^P(?:(\d{1,3})D)?(?:T(\d{1,4})H)?$`)

// interval reads "2026-06-01T18:00:00+00:00/PT3H": whole hours from the full
// hour.
func interval(text string) (start time.Time, hours int, ok bool) {
	from, length, cut := strings.Cut(text, "/")
	m := duration.FindStringSubmatch(length)
	start, err := time.Parse(time.RFC3339, from)
	if !cut || m == nil || err != nil || start.Unix()%3600 != 0 {
		return time.Time{}, 0, false
	}
	days, _ := strconv.Atoi(m[1])
	hours, _ = strconv.Atoi(m[2])
	hours += 24 * days
	return start, hours, hours > 0 && hours <= mostHours
}

// place is the mean of the corners of the grid cell.
func (f nwsFile) place() *Place {
	if len(f.Geometry.Coordinates) == 0 {
		return nil
	}
	ring := f.Geometry.Coordinates[0]
	if n := len(ring); n > 1 && len(ring[0]) >= 2 && len(ring[n-1]) >= 2 && ring[0][0] == ring[n-1][0] && ring[0][1] == ring[n-1][1] {
		ring = ring[:n-1]
	}
	var p Place
	for _, corner := range ring {
		if len(corner) < 2 {
			return nil
		}
		p.Longitude += corner[0] / float64(len(ring))
		p.Latitude += corner[1] / float64(len(ring))
	}
	return p.onEarth(len(ring) > 0)
}

// onEarth is the place, or nil where it is none.
func (p Place) onEarth(known bool) *Place {
	if !known || !(p.Latitude >= -90 && p.Latitude <= 90 && p.Longitude >= -180 && p.Longitude <= 180) {
		return nil
	}
	return &p
}

func (f nwsFile) altitude() *quantity.Length {
	var elevation struct {
		Unit  string   `json:"unitCode"`
		Value *float64 `json:"value"`
	}
	if json.Unmarshal(f.Properties["elevation"], &elevation) != nil || elevation.Value == nil || !strings.HasSuffix(elevation.Unit, ":m") {
		return nil
	}
	return new(quantity.Metres(*elevation.Value))
}
