package web

import (
	"fmt"
	"io"
	"net/http"
	"net/url"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/weather"
	"aerosteep/wording"
)

func escaped(name string) string { return url.QueryEscape(name) }

// skyGiven is a forecast as it was handed over: a file, or pasted text.
type skyGiven struct {
	name string
	text []byte
}

// longestSky is the size of a forecast file that is taken, in bytes.
const longestSky = 8 << 20

// readSkyForm takes the form with its file apart.
func readSkyForm(w http.ResponseWriter, r *http.Request) (skyGiven, error) {
	r.Body = http.MaxBytesReader(w, r.Body, longestSky)
	if !strings.HasPrefix(r.Header.Get("Content-Type"), "multipart/form-data") {
		err := r.ParseForm()
		return skyGiven{"text", []byte(r.PostForm.Get("text"))}, err
	}
	if err := r.ParseMultipartForm(longestSky); err != nil {
		return skyGiven{}, err
	}
	r.PostForm = r.MultipartForm.Value
	file, about, err := r.FormFile("file")
	if err != nil {
		return skyGiven{"text", []byte(r.PostForm.Get("text"))}, nil
	}
	defer file.Close()
	text, err := io.ReadAll(file)
	return skyGiven{about.Filename, text}, err
}

// keepSky keeps what was handed over; nil says that it is kept.
func (s *Site) keepSky(p *page, r *http.Request, given skyGiven) fault.List {
	var faults fault.List
	if strings.TrimSpace(string(given.text)) == "" {
		if given, faults = s.typedSky(p, r); faults != nil {
			return faults
		}
	}
	err := s.Holding.KeepSky(given.name, given.text)
	if err == nil {
		return nil
	}
	if faults = fault.Of(err); len(faults) == 0 {
		faults = fault.List{{Field: "file", What: verbatim(err)}}
	}
	return faults
}

// fetchSky fetches from the address that was named, or forgets it.
func (s *Site) fetchSky(r *http.Request) fault.List {
	state, err := s.Holding.FetchSkyFrom(r.Context(), strings.TrimSpace(r.PostForm.Get("from")))
	if err == nil && state.Offline != nil {
		age := quantity.Seconds(s.now().Sub(state.FetchedAt).Truncate(time.Minute).Seconds())
		return fault.List{{Field: "from", What: wording.Say("feed.offline", wording.Places{"why": state.Offline.Error(), "age": age})}}
	}
	if err == nil {
		return nil
	}
	if faults := fault.Of(err); len(faults) > 0 {
		return faults
	}
	return fault.List{{Field: "from", What: wording.Say("feed.nothing", wording.Places{"why": err.Error()})}}
}

// handTable is the weather typed by hand: five moments, six hours apart.
type handTable struct {
	Start               string
	Temp, Wind, RainFor string // units
	Rows                []handRow
}

type handRow struct {
	When  string
	Cells []handCell
}

type handCell struct {
	Name, Label, Value string
	Wrong              bool
}

const (
	handRows = 5
	handStep = 6 * time.Hour
)

// handColumns are what is typed of each moment.
var handColumns = []string{"temp", "humidity", "wind", "rain"}

// handUnits are the units of bare numbers, by column.
func handUnits(p *page) map[string]string {
	if p.Units == wording.US {
		return map[string]string{"temp": "°F", "wind": "mph", "rain": "in"}
	}
	return map[string]string{"temp": "°C", "wind": "km/h", "rain": "mm"}
}

// handStart is the first moment: as the form was shown, else this hour.
func handStart(r *http.Request, now time.Time) time.Time {
	if at, err := time.Parse(time.RFC3339, r.PostForm.Get("start")); err == nil {
		return at.In(now.Location())
	}
	return time.Date(now.Year(), now.Month(), now.Day(), now.Hour(), 0, 0, 0, now.Location())
}

func (p *page) handTable(r *http.Request, now time.Time) handTable {
	start, units := handStart(r, now), handUnits(p)
	table := handTable{Start: start.Format(time.RFC3339), Temp: units["temp"], Wind: units["wind"], RainFor: units["rain"]}
	for i := range handRows {
		row := handRow{When: p.When(start.Add(time.Duration(i)*handStep), now)}
		for _, column := range handColumns {
			if column == "rain" && i == handRows-1 {
				continue // it would fall after the last moment
			}
			name := fmt.Sprintf("%s-%d", column, i)
			row.Cells = append(row.Cells, handCell{Name: name, Label: p.Say("web.hours.hand."+column) + ", " + row.When, Value: r.PostForm.Get(name)})
		}
		table.Rows = append(table.Rows, row)
	}
	return table
}

// typedSky makes a forecast of the hand table.
func (s *Site) typedSky(p *page, r *http.Request) (skyGiven, fault.List) {
	start, units := handStart(r, s.now()), handUnits(p)
	var rows []weather.Hour
	var faults fault.List
	for i := range handRows {
		h := weather.Hour{At: start.Add(time.Duration(i) * handStep)}
		for _, column := range handColumns {
			text := strings.TrimSpace(r.PostForm.Get(fmt.Sprintf("%s-%d", column, i)))
			if text == "" {
				continue
			}
			if err := setTyped(&h, column, text, units[column]); err != nil {
				faults = append(faults, handFault(fmt.Sprintf("%s-%d", column, i), text, err))
			}
		}
		if h.Temperature == nil {
			break // the line ends where no temperature was typed
		}
		rows = append(rows, h)
	}
	if faults == nil && len(rows) < 2 {
		faults = fault.List{{Field: "temp-0", What: wording.Say("web.hours.hand.few"), Advice: wording.Say("web.hours.hand.few.advice")}}
	}
	if faults != nil {
		return skyGiven{}, faults
	}
	var place *weather.Place
	altitude := quantity.Length(0)
	if site := s.siteOf(p); site != nil {
		place, altitude = &weather.Place{Latitude: site.Latitude, Longitude: site.Longitude}, site.Altitude
	}
	text, err := weather.Typed(place, altitude, rows)
	if err != nil {
		return skyGiven{}, fault.List{{What: verbatim(err)}}
	}
	return skyGiven{"typed", text}, nil
}

func handFault(field, text string, err error) *fault.Fault {
	for _, f := range fault.Of(err) {
		f.Field = field
		return f
	}
	return &fault.Fault{Field: field, Given: text, What: verbatim(err)}
}

// setTyped reads one cell; a bare number takes the unit of its column.
func setTyped(h *weather.Hour, column, text, unit string) (err error) {
	if column == "humidity" {
		v, err := quantity.Bare(strings.TrimSuffix(text, "%"))
		h.Humidity = &v
		return err
	}
	if _, bare := quantity.Bare(text); bare == nil {
		text += " " + unit
	}
	switch column {
	case "temp":
		h.Temperature, err = parsed(quantity.ParseTemperature(text))
	case "wind":
		h.Wind, err = parsed(quantity.ParseSpeed(text))
	case "rain":
		h.Rain, err = parsed(quantity.ParseLength(text))
	}
	return err
}

func parsed[T any](v T, err error) (*T, error) { return &v, err }
