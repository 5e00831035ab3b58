package weather_test

import (
	"math"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"aerosteep/internal/published"
	"aerosteep/science/weather"
)

func placeOf(row published.Row) weather.Place {
	return weather.Place{Latitude: row.Float("lat_deg"), Longitude: row.Float("lon_deg")}
}

// TestSunPosition: NREL Solar Position Algorithm's worked example and an
// independent ephemeris.
func TestSunPosition(t *testing.T) {
	checked := 0
	for _, row := range published.Rows(t, "sun_position.csv") {
		at, err := time.Parse(time.RFC3339, row.Text("time_utc"))
		if err != nil {
			t.Fatal(err)
		}
		elevation, azimuth := weather.SunPosition(at, placeOf(row))
		switch q := row.Text("quantity"); {
		case q == "elevation without refraction":
			row.Check(elevation, "deg")
		case strings.HasPrefix(q, "azimuth"):
			row.Check(azimuth, "deg")
		default:
			continue
		}
		checked++
	}
	if checked < 6 {
		t.Fatalf("only %d rows were checked", checked)
	}
}

// TestSunTimes: US Naval Observatory tables and the NREL algorithm; 64° and
// 78° north by an independent ephemeris.
func TestSunTimes(t *testing.T) {
	for _, row := range published.Rows(t, "sun_times.csv") {
		zone := time.FixedZone("", int(row.Float("utc_offset_h")*3600))
		date, err := time.Parse(time.DateOnly, row.Text("date"))
		if err != nil {
			t.Fatal(err)
		}
		day, ok := weather.SunOn(date, zone, placeOf(row))
		if !ok {
			t.Fatalf("%s has no date %s", row.Text("place"), row.Text("date"))
		}
		got := map[string]*time.Time{"sunrise": day.Sunrise, "sunset": day.Sunset, "solar_noon": day.Noon}[row.Text("event")]
		want := row.Text("expected")
		if want == "none" {
			if got != nil || day.Kind == weather.OrdinaryDay {
				t.Errorf("%s %s: %v", row.Text("place"), row.Text("event"), got)
			}
			continue
		}
		clock, err := time.Parse("15:04:05", (want + ":00")[:8])
		if err != nil {
			t.Fatal(err)
		}
		if got == nil {
			t.Errorf("%s: no %s on %s", row.Text("place"), row.Text("event"), row.Text("date"))
			continue
		}
		wanted := time.Date(date.Year(), date.Month(), date.Day(), clock.Hour(), clock.Minute(), clock.Second(), 0, zone)
		row.Near(got.Sub(wanted).Seconds(), 0, row.Float("tolerance_s"))
	}
}

// TestUVIndex: Madronich 2007.
func TestUVIndex(t *testing.T) {
	for _, row := range published.Rows(t, "uv_index.csv") {
		row.Check(weather.ClearSkyUV(row.Float("solar_elevation_deg"), row.Float("ozone_du")), "UV index")
	}
	if got := weather.ClearSkyUV(-0.5, 300); got != 0 {
		t.Errorf("index %g with the sun below the horizon", got)
	}
}

func dayAt(t *testing.T, date, zone string, p weather.Place) weather.SolarDay {
	t.Helper()
	loc, err := time.LoadLocation(zone)
	if err != nil {
		t.Fatal(err)
	}
	d, _ := time.Parse(time.DateOnly, date)
	day, ok := weather.SunOn(d, loc, p)
	if !ok {
		t.Fatalf("%s has no %s", zone, date)
	}
	return day
}

// Each date's times lie within that date, whatever the clocks do.
func TestTimesLieWithinTheDate(t *testing.T) {
	for _, c := range []struct {
		date, zone string
		p          weather.Place
		hours      float64
	}{
		{"2026-03-08", "America/Los_Angeles", weather.Place{Latitude: 44.12, Longitude: -123.05}, 23},
		{"2026-11-01", "America/Los_Angeles", weather.Place{Latitude: 44.12, Longitude: -123.05}, 25},
		{"2026-03-29", "Europe/Lisbon", weather.Place{Latitude: 38.7, Longitude: -9.1}, 23},
		{"2026-06-21", "Pacific/Apia", weather.Place{Latitude: -13.8, Longitude: -171.8}, 24},
		{"2026-06-21", "Pacific/Chatham", weather.Place{Latitude: -43.9, Longitude: -176.5}, 24},
		{"2018-11-04", "America/Sao_Paulo", weather.Place{Latitude: -23.5, Longitude: -46.6}, 23},
		{"2026-03-08", "America/Havana", weather.Place{Latitude: 23.1, Longitude: -82.4}, 23},
		{"2026-11-01", "America/Havana", weather.Place{Latitude: 23.1, Longitude: -82.4}, 25},
	} {
		loc, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		d, _ := time.Parse(time.DateOnly, c.date)
		start, end, ok := weather.DateBounds(d, loc)
		if !ok || end.Sub(start).Hours() != c.hours || start.Format(time.DateOnly) != c.date || start.Add(-time.Second).Format(time.DateOnly) == c.date {
			t.Errorf("%s %s: %v to %v", c.zone, c.date, start, end)
		}
		day := dayAt(t, c.date, c.zone, c.p)
		for _, at := range []*time.Time{day.Sunrise, day.Noon, day.Sunset, day.CivilDawn, day.CivilDusk} {
			if at == nil || at.Before(start) || !at.Before(end) {
				t.Errorf("%s %s: %v is not on the date", c.zone, c.date, at)
			}
		}
	}
}

func TestDateThatAZoneSkipped(t *testing.T) {
	apia, err := time.LoadLocation("Pacific/Apia")
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := weather.SunOn(time.Date(2011, 12, 30, 0, 0, 0, 0, time.UTC), apia, weather.Place{Latitude: -13.8, Longitude: -171.8}); ok {
		t.Error("30 December 2011 was found in Samoa, which went from the 29th to the 31st")
	}
}

// A date may have its sunset before its sunrise, or none of one kind while the
// sun does rise or set.
func TestHighLatitude(t *testing.T) {
	reykjavik := weather.Place{Latitude: 64.15, Longitude: -21.95}
	june := dayAt(t, "2024-06-21", "Atlantic/Reykjavik", reykjavik)
	if len(june.Events) != 2 || june.Events[0].Rises || !june.Events[1].Rises || june.Kind != weather.OrdinaryDay {
		t.Errorf("21 June at 64° N: %+v", june.Events)
	}
	svalbard := weather.Place{Latitude: 78.2, Longitude: 15.6}
	if d := dayAt(t, "2024-06-21", "Arctic/Longyearbyen", svalbard); d.Kind != weather.MidnightSun || d.Up != 24*time.Hour || d.Noon == nil {
		t.Errorf("June at 78° N: %+v", d)
	}
	if d := dayAt(t, "2024-12-21", "Arctic/Longyearbyen", svalbard); d.Kind != weather.PolarNight || d.Up != 0 {
		t.Errorf("December at 78° N: %+v", d)
	}
	lone := false
	for d := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC); d.Year() == 2026; d = d.AddDate(0, 0, 1) {
		day := dayAt(t, d.Format(time.DateOnly), "Arctic/Longyearbyen", svalbard)
		lone = lone || len(day.Events) == 1
		if len(day.Events) == 0 && day.Up != 0 && day.Up.Hours() != 24 && day.Up.Hours() != 23 && day.Up.Hours() != 25 {
			t.Errorf("%s: no event, and the sun is up %v", d.Format(time.DateOnly), day.Up)
		}
	}
	if !lone {
		t.Error("no date of the year at 78° N has a single event")
	}
}

// The worked day of June at 44° N.
func TestDayInJune(t *testing.T) {
	day := dayAt(t, "2026-06-10", "America/Los_Angeles", weather.Place{Latitude: 44.12, Longitude: -123.05})
	for name, c := range map[string][2]string{
		"sunrise": {day.Sunrise.Format("15:04"), "05:28"},
		"sunset":  {day.Sunset.Format("15:04"), "20:55"},
		"noon":    {day.Noon.Format("15:04"), "13:11"},
	} {
		if c[0] != c[1] {
			t.Errorf("%s %s, want %s", name, c[0], c[1])
		}
	}
	if math.Abs(day.Up.Hours()-15.439) > 0.01 || math.Abs(*day.NoonElevation-68.94) > 0.03 {
		t.Errorf("%v, %g°", day.Up, *day.NoonElevation)
	}
}
