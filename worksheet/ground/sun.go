package ground

import (
	"regexp"
	"strconv"
	"time"

	"aerosteep/science/weather"
	"aerosteep/source"
	"aerosteep/table"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var sun = worksheet.Sheet{
	Name:  "sun",
	Group: worksheet.Weather,
	Inputs: []worksheet.Input{
		{Flag: "lat", Kind: worksheet.Bare, Required: true, Low: "-90", High: "90"},
		{Flag: "lon", Kind: worksheet.Bare, Required: true, Low: "-180", High: "180"},
		{Flag: "date", Kind: worksheet.Date, Required: true},
		{Flag: "zone", Kind: worksheet.Text, Required: true},
		{Flag: "at", Kind: worksheet.Text},
		{Flag: "ozone", Kind: worksheet.Bare, Default: "300", Low: "100", High: "600"},
	},
	Example: `--lat 44.12 --lon -123.05 --date 2026-06-10 --zone America/Los_Angeles --at 08:00`,
	Sources: []source.Source{source.NOAASolar, source.Madronich2007},
	Shape:   sunAnswer{},
	Run:     runSun,
}

type sunAnswer struct {
	Sunrise       *string    `json:"sunrise"`
	Sunset        *string    `json:"sunset"`
	SolarNoon     *string    `json:"solar_noon"`
	CivilDawn     *string    `json:"civil_dawn"`
	CivilDusk     *string    `json:"civil_dusk"`
	Events        []sunEvent `json:"events"`
	DayKind       string     `json:"day_kind"`
	DayLengthH    float64    `json:"day_length_h"`
	NoonElevation *float64   `json:"noon_elevation_deg"`
	At            *string    `json:"at"`
	Elevation     *float64   `json:"elevation_deg"`
	Azimuth       *float64   `json:"azimuth_deg"`
	UVIndex       *float64   `json:"uv_index_clear_sky"`
}

type sunEvent struct {
	What string `json:"what"`
	At   string `json:"at"`
}

func runSun(f *worksheet.Form) (*worksheet.Result, error) {
	zone, err := zoneOf(f)
	if err != nil {
		return nil, err
	}
	date := f.Day("date")
	if date.Year() < 1901 || date.Year() > 2099 {
		return nil, f.Refuse("date", "sheet.sun.years")
	}
	place := weather.Place{Latitude: f.Number("lat"), Longitude: f.Number("lon")}
	day, ok := weather.SunOn(date, zone, place)
	if !ok {
		return nil, f.Refuse("date", "sheet.sun.no-date", wording.Places{"zone": f.Text("zone")})
	}
	a := sunFigures(day, zone)
	r := &worksheet.Result{Sources: f.Sheet.Sources}
	if !f.Has("at") {
		if err := f.OnlyWith(without("at"), nil, "ozone"); err != nil {
			return nil, err
		}
	} else if err := sunAt(f, zone, place, &a); err != nil {
		return nil, err
	}
	saySun(r, day, zone)
	r.Data = a
	return r, nil
}

func sunFigures(day weather.SolarDay, zone *time.Location) sunAnswer {
	a := sunAnswer{
		Sunrise: stamp(day.Sunrise, zone), Sunset: stamp(day.Sunset, zone), SolarNoon: stamp(day.Noon, zone),
		CivilDawn: stamp(day.CivilDawn, zone), CivilDusk: stamp(day.CivilDusk, zone),
		Events: []sunEvent{}, DayKind: string(day.Kind), DayLengthH: day.Up.Hours(), NoonElevation: day.NoonElevation,
	}
	for _, e := range day.Events {
		what := "sunset"
		if e.Rises {
			what = "sunrise"
		}
		a.Events = append(a.Events, sunEvent{what, *stamp(&e.At, zone)})
	}
	return a
}

// stamp writes a moment to the second with the offset in force at it.
func stamp(at *time.Time, zone *time.Location) *string {
	if at == nil {
		return nil
	}
	return new(at.In(zone).Truncate(time.Second).Format(time.RFC3339))
}

func saySun(r *worksheet.Result, day weather.SolarDay, zone *time.Location) {
	clock := func(at *time.Time) string { return at.In(zone).Round(time.Minute).Format("15:04") }
	if day.Sunrise != nil && day.Sunset != nil {
		r.Answer = wording.Say("sheet.sun.answer", wording.Places{"rise": clock(day.Sunrise), "set": clock(day.Sunset), "hours": day.Up.Hours()})
	} else {
		r.Answer = wording.Say("sheet.sun.up", wording.Places{"hours": day.Up.Hours()})
	}
	switch {
	case day.Kind != weather.OrdinaryDay:
		r.Caution("sheet.sun." + string(day.Kind))
	case day.Sunrise == nil || day.Sunset == nil:
		r.Caution("sheet.sun.one-kind")
	case day.Sunset.Before(*day.Sunrise):
		r.Caution("sheet.sun.sets-first")
	}
}

// sunAt adds where the sun stands at one moment.
func sunAt(f *worksheet.Form, zone *time.Location, p weather.Place, a *sunAnswer) error {
	at, err := moment(f, zone)
	if err != nil {
		return err
	}
	elevation, azimuth := weather.SunPosition(at, p)
	a.At = new(at.In(zone).Format(time.RFC3339))
	a.Elevation, a.Azimuth = &elevation, &azimuth
	a.UVIndex = new(weather.ClearSkyUV(elevation, f.Number("ozone")))
	return nil
}

// moment reads --at: a clock time on the date in the zone, or RFC 3339.
func moment(f *worksheet.Form, zone *time.Location) (time.Time, error) {
	text := f.Text("at")
	for _, form := range []string{time.RFC3339, "2006-01-02T15:04Z07:00"} {
		if at, err := time.Parse(form, text); err == nil {
			if at.Year() < 1901 || at.Year() > 2099 {
				return at, f.Refuse("at", "sheet.sun.years")
			}
			return at, nil
		}
	}
	for _, form := range []string{"15:04", "15:04:05"} {
		clock, err := time.Parse(form, text)
		if err != nil || len(text) != len(form) {
			continue
		}
		wall := f.Day("date").Add(time.Duration(clock.Hour())*time.Hour + time.Duration(clock.Minute())*time.Minute + time.Duration(clock.Second())*time.Second)
		return oneMoment(f, wall, zone)
	}
	return time.Time{}, f.Advise("at", "sheet.sun.no-time", "sheet.sun.no-time.advice")
}

// oneMoment refuses a wall clock's time that the zone leaves out or runs
// through twice.
func oneMoment(f *worksheet.Form, wall time.Time, zone *time.Location) (time.Time, error) {
	first, second := table.Readings(wall, zone)
	if first.Equal(second) {
		return first, nil
	}
	key := "table.hour-missing"
	if first.Format(time.DateTime) == wall.Format(time.DateTime) {
		key = "table.hour-twice"
	}
	places := wording.Places{"first": first.Format(time.RFC3339), "second": second.Format(time.RFC3339)}
	wrong := f.Refuse("at", key, places)
	wrong.Allowed = wording.Say("table.hour.allowed", places)
	return time.Time{}, wrong
}

var fixedOffset = regexp.MustCompile(`^([+-])(\d{2}):(\d{2})$`)

// zoneOf reads --zone: an IANA name, UTC, or a fixed offset.
func zoneOf(f *worksheet.Form) (*time.Location, error) {
	name := f.Text("zone")
	if m := fixedOffset.FindStringSubmatch(name); m != nil {
		h, _ := strconv.Atoi(m[2])
		minutes, _ := strconv.Atoi(m[3])
		seconds := h*3600 + minutes*60
		if h > 14 || minutes > 59 {
			return nil, f.Refuse("zone", "sheet.sun.no-zone")
		}
		if m[1] == "-" {
			seconds = -seconds
		}
		return time.FixedZone("", seconds), nil
	}
	zone, err := time.LoadLocation(name)
	if err != nil || name == "" || name == "Local" {
		return nil, f.Advise("zone", "sheet.sun.no-zone", "sheet.sun.no-zone.advice")
	}
	return zone, nil
}
