package web

import (
	"net/url"
	"strings"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/holding"
	"aerosteep/science/weather"
	"aerosteep/wording"
)

// skyView is the weather at the bed, as somebody reads it there, and what it
// comes to.
type skyView struct {
	Wind, Temp, Humidity string
	WindUnit, TempUnit   string
	Rain                 bool
	Wants                []int
	Say, Class, Icon     string
	Wrong                string
}

// skyOf judges what was read at the bed; with nothing read it only asks.
func (p *page) skyOf(query url.Values, file *jobfile.File, round *holding.Round) *skyView {
	v := &skyView{Wind: query.Get("wind"), Temp: query.Get("temp"), Humidity: query.Get("humidity"), Rain: query.Get("rain") != "", Wants: wantsOf(round), TempUnit: temperatureUnit(p), WindUnit: "km/h"}
	if p.Units == wording.US {
		v.WindUnit = "mph"
	}
	if v.Wind == "" && v.Temp == "" && !v.Rain || len(round.Stops) == 0 {
		return v
	}
	hour, wrong := v.hour(round.At)
	if wrong != "" {
		v.Wrong = p.Say("web.run.sky.wrong", "given", wrong)
		return v
	}
	ask := weather.Question{Method: weather.Method(round.Stops[0].Want.Method)}
	if site, known := file.Site(round.Stops[0].Site); known {
		ask.Place, ask.Altitude = &weather.Place{Latitude: site.Latitude, Longitude: site.Longitude}, site.Altitude
	}
	v.tell(p, weather.Score(&weather.Forecast{Hours: []weather.Hour{hour}}, ask)[0])
	return v
}

// hour is what was read, as an hour of weather; wrong is what cannot be read.
func (v *skyView) hour(at time.Time) (hour weather.Hour, wrong string) {
	hour.At = at
	if v.Wind != "" {
		wind, err := quantity.ParseSpeed(withUnit(v.Wind, v.WindUnit))
		if err != nil || wind < 0 {
			return hour, v.Wind
		}
		hour.Wind = &wind
	}
	if v.Temp != "" {
		temp, err := quantity.ParseTemperature(withUnit(v.Temp, v.TempUnit))
		if err != nil {
			return hour, v.Temp
		}
		hour.Temperature = &temp
	}
	if v.Humidity != "" {
		share, err := quantity.Bare(v.Humidity)
		if err != nil || share < 0 || share > 100 {
			return hour, v.Humidity
		}
		hour.Humidity = &share
	}
	hour.Rain = new(quantity.Metres(0))
	if v.Rain {
		hour.Rain = new(quantity.Metres(rainNow))
	}
	return hour, ""
}

// rainNow stands for "it rains": 1 mm in the hour, a light rain (World
// Meteorological Organization: up to 2.5 mm/h is slight).
const rainNow = 0.001

func withUnit(text, unit string) string {
	if _, err := quantity.Bare(text); err == nil {
		return strings.TrimSpace(text) + " " + unit
	}
	return text
}

func (v *skyView) tell(p *page, s weather.Scored) {
	factor := ""
	if s.Limiting != "" {
		factor = p.Say("value.limiting_factor." + string(s.Limiting))
	}
	v.Say = p.Say("web.run.sky."+string(s.Verdict), "factor", factor)
	v.Class, v.Icon = map[weather.Verdict]string{weather.VerdictSuits: "good", weather.VerdictCare: "care", weather.VerdictStop: "now", weather.VerdictUnknown: "care"}[s.Verdict], "doubt"
	switch s.Verdict {
	case weather.VerdictSuits:
		v.Icon = "yes"
	case weather.VerdictStop:
		v.Icon = "no"
	}
}
