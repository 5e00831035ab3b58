package weather_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"aerosteep/quantity"
	"aerosteep/science/weather"
	"aerosteep/wording"
)

// day is a CSV file of hours; each line has temp, humidity, wind, rain, cloud.
func day(t *testing.T, start string, lines ...string) *weather.Forecast {
	t.Helper()
	at, err := time.Parse(time.RFC3339, start)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.WriteString("at,temp_c,rh_percent,wind_km_per_h,rain_mm,cloud_percent\n")
	for i, line := range lines {
		fmt.Fprintf(&b, "%s,%s\n", at.Add(time.Duration(i)*time.Hour).Format(time.RFC3339), line)
	}
	f, _, _, err := weather.ReadCSV("day.csv", []byte(b.String()), weather.CSVReading{})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

var valley = &weather.Place{Latitude: 44.12, Longitude: -123.05}

func morning(t *testing.T) *weather.Forecast {
	return day(t, "2026-06-10T05:00:00-07:00", "9,88,2,0,10", "11,80,5,0,10", "13,72,6,0,10", "16,62,8,0,10", "19,52,9,0,10",
		"22,45,10,0,10", "24,40,12,0,10", "26,35,14,0,10", "27,33,16,0,10")
}

// TestMorning is a June morning worked out by hand and with independent
// libraries for wet bulb, sun and ultraviolet. The last hours have a short
// view of the rain, which their own stops outweigh.
func TestMorning(t *testing.T) {
	hours := weather.Score(morning(t), weather.Question{Method: weather.Foliar, Place: valley, Altitude: 640})
	for i, want := range []struct {
		verdict        weather.Verdict
		limit          weather.Factor
		depression, uv float64
		inversion      weather.InversionSign
		conflict       bool
	}{
		{weather.VerdictStop, weather.Inversion, 1.01, 0, weather.Likely, true},
		{weather.VerdictCare, weather.Depression, 1.83, 0.13, weather.Unlikely, false},
		{weather.VerdictSuits, "", 2.78, 0.82, weather.Unlikely, false},
		{weather.VerdictSuits, "", 4.22, 2.27, weather.Unlikely, false},
		{weather.VerdictCare, weather.UV, 5.95, 4.36, weather.Unlikely, false},
		{weather.VerdictStop, weather.UV, 7.54, 6.75, weather.Unlikely, false},
		{weather.VerdictStop, weather.UV, 8.80, 8.90, weather.Unlikely, false},
		{weather.VerdictStop, weather.Depression, 10.20, 10.28, weather.Unlikely, false},
		{weather.VerdictStop, weather.Wind, 10.86, 10.52, weather.Unlikely, false},
	} {
		h := hours[i]
		if h.Verdict != want.verdict || h.Limiting != want.limit || h.Inversion != want.inversion || h.Conflict != want.conflict ||
			math.Abs(h.Depression.Celsius()-want.depression) > 0.01 || math.Abs(*h.UV-want.uv) > 0.01 {
			t.Errorf("hour %d: %s %s %.2f %.2f %s %v", i, h.Verdict, h.Limiting, h.Depression.Celsius(), *h.UV, h.Inversion, h.Conflict)
		}
	}
	windows := weather.Windows(hours, 2, false)
	if len(windows) != 1 || windows[0].Hours != 2 || !windows[0].Start.Equal(hours[2].At) || !windows[0].End.Equal(hours[4].At) {
		t.Errorf("windows %+v", windows)
	}
	if best := weather.Best(hours); best == nil || !best.At.Equal(hours[2].At) || weather.Conflicts(hours) != 1 {
		t.Errorf("best %v", best)
	}
	if careful := weather.Windows(hours, 2, true); len(careful) != 1 || careful[0].Hours != 4 || careful[0].Verdict != weather.VerdictCare {
		t.Errorf("with care %+v", careful)
	}
}

// at one hour, each limit in turn; the mark is the factor's.
func TestLimitsOfFactors(t *testing.T) {
	noon := "2026-06-10T08:00:00-07:00"
	fine := "16,62,8,0,10"
	rest := []string{fine, fine, fine, fine}
	for name, c := range map[string]struct {
		method weather.Method
		first  string
		rest   []string
		factor weather.Factor
		want   int // -1: unknown
	}{
		"dry":                     {weather.Foliar, fine, rest, weather.Rain, 2},
		"rain now":                {weather.Foliar, "16,62,8,0.1,10", rest, weather.Rain, 0},
		"rain in four hours":      {weather.Foliar, fine, []string{fine, fine, fine, "16,62,8,0.1,10"}, weather.Rain, 0},
		"rain in five hours":      {weather.Foliar, fine, []string{fine, fine, fine, fine, "16,62,8,0.1,10"}, weather.Rain, 2},
		"the file ends":           {weather.Foliar, fine, rest[:3], weather.Rain, 1},
		"rain not measured":       {weather.Foliar, "16,62,8,,10", rest, weather.Rain, -1},
		"rain later not known":    {weather.Foliar, fine, []string{fine, "16,62,8,,10", fine, fine}, weather.Rain, 1},
		"drench in light rain":    {weather.Drench, "16,62,8,5,10", rest, weather.Rain, 2},
		"drench in heavy rain":    {weather.Drench, "16,62,8,5.1,10", rest, weather.Rain, 0},
		"frost tonight":           {weather.Drench, fine, []string{"0,90,8,0,10"}, weather.Frost, 0},
		"no frost":                {weather.Drench, fine, []string{"0.1,90,8,0,10"}, weather.Frost, 2},
		"15 km/h":                 {weather.Foliar, "16,62,15,0,10", rest, weather.Wind, 2},
		"over 15 km/h":            {weather.Foliar, "16,62,15.1,0,10", rest, weather.Wind, 0},
		"3 km/h":                  {weather.Foliar, "16,62,3,0,10", rest, weather.Wind, 2},
		"still":                   {weather.Foliar, "16,62,2.9,0,10", rest, weather.Wind, 1},
		"drench in wind":          {weather.Drench, "16,62,25,0,10", rest, weather.Wind, 2},
		"drench in stronger wind": {weather.Drench, "16,62,25.1,0,10", rest, weather.Wind, 0},
		"5 °C":                    {weather.Foliar, "5,62,8,0,10", rest, weather.Temperature, 1},
		"under 5 °C":              {weather.Foliar, "4.9,62,8,0,10", rest, weather.Temperature, 0},
		"28 °C":                   {weather.Foliar, "28,62,8,0,10", rest, weather.Temperature, 2},
		"30 °C":                   {weather.Foliar, "30,62,8,0,10", rest, weather.Temperature, 1},
		"26 °C in dry air":        {weather.Foliar, "26,39,8,0,10", rest, weather.Temperature, 1},
		"26 °C in moist air":      {weather.Foliar, "26,40,8,0,10", rest, weather.Temperature, 2},
		"drench at 32 °C":         {weather.Drench, "32,62,8,0,10", rest, weather.Temperature, 2},
		"drench at 33 °C":         {weather.Drench, "33,62,8,0,10", rest, weather.Temperature, 0},
		"no humidity":             {weather.Foliar, "16,,8,0,10", rest, weather.Depression, -1},
	} {
		f := day(t, noon, append([]string{c.first}, c.rest...)...)
		got := weather.Score(f, weather.Question{Method: c.method, Place: valley, Intake: 5})[0].Findings[c.factor].Mark
		if got == nil && c.want != -1 || got != nil && *got != c.want {
			t.Errorf("%s: mark %v, want %d", name, got, c.want)
		}
	}
}

// From sunset to an hour after sunrise, unless the air is mixed.
func TestInversionFollowsTheSun(t *testing.T) {
	for name, c := range map[string]struct {
		start, line string
		want        weather.InversionSign
	}{
		"night":              {"2026-06-10T23:00:00-07:00", "12,80,4,0,10", weather.Likely},
		"just after sunrise": {"2026-06-10T05:30:00-07:00", "12,80,4,0,10", weather.Likely},
		"later":              {"2026-06-10T06:30:00-07:00", "12,80,4,0,10", weather.Unlikely},
		"before sunset":      {"2026-06-10T19:00:00-07:00", "20,50,4,0,10", weather.Possible},
		"windy night":        {"2026-06-10T23:00:00-07:00", "12,80,11.5,0,10", weather.Unlikely},
		"overcast night":     {"2026-06-10T23:00:00-07:00", "12,80,4,0,75", weather.Unlikely},
		"rainy night":        {"2026-06-10T23:00:00-07:00", "12,80,4,0.2,10", weather.Unlikely},
	} {
		got := weather.Score(day(t, c.start, c.line), weather.Question{Method: weather.Foliar, Place: valley})[0].Inversion
		if got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

func TestStopBeatsUnknownBeatsCare(t *testing.T) {
	ask := weather.Question{Method: weather.Foliar, Place: valley}
	start := "2026-06-10T08:00:00-07:00"
	if h := weather.Score(day(t, start, "16,,16,0,10"), ask)[0]; h.Verdict != weather.VerdictStop || h.Limiting != weather.Wind {
		t.Errorf("wind and no humidity: %s %s", h.Verdict, h.Limiting)
	}
	if h := weather.Score(day(t, start, "16,,8,0,10"), ask)[0]; h.Verdict != weather.VerdictUnknown || h.Limiting != weather.Depression || h.Score != nil {
		t.Errorf("no humidity: %s %s", h.Verdict, h.Limiting)
	}
}

func TestCoarseHoursAskForCare(t *testing.T) {
	f := day(t, "2026-06-10T08:00:00-07:00", "16,62,8,0,10", "16,62,8,0,10", "16,62,8,0,10", "16,62,8,0,10", "16,62,8,0,10")
	f.Hours[0].Coarse = true
	h := weather.Score(f, weather.Question{Method: weather.Foliar, Place: valley})[0]
	if h.Verdict != weather.VerdictCare || h.Limiting != weather.CoarseForecast || len(h.Reasons(weather.Foliar)) != 1 {
		t.Errorf("%s %s", h.Verdict, h.Limiting)
	}
}

// Every reason is a sentence in both languages.
func TestReasonsAreSentences(t *testing.T) {
	for _, line := range []string{"9,88,2,0,10", "-3,100,40,3,10", "36,10,8,0,10", ",,,,"} {
		for _, m := range []weather.Method{weather.Foliar, weather.Drench} {
			h := weather.Score(day(t, "2026-06-10T19:00:00-07:00", line), weather.Question{Method: m, Place: valley})[0]
			for _, reason := range append(h.Reasons(m), h.LimitText()) {
				for _, language := range wording.Languages {
					if s := reason.For(wording.Reader{Language: language}); strings.ContainsAny(s, "«{") {
						t.Errorf("%s: %s", line, s)
					}
				}
			}
		}
	}
}

// The strip of 14 days is judged well under 5 ms.
func BenchmarkScoreOf14Days(b *testing.B) {
	f := &weather.Forecast{}
	start := time.Date(2026, 6, 10, 0, 0, 0, 0, time.UTC)
	for i := range 14 * 24 {
		f.Hours = append(f.Hours, weather.Hour{
			At: start.Add(time.Duration(i) * time.Hour), Temperature: new(quantity.Celsius(15)), Humidity: new(60.0),
			Wind: new(quantity.KilometresPerHour(8)), Rain: new(quantity.Length(0)),
		})
	}
	for b.Loop() {
		weather.Score(f, weather.Question{Method: weather.Foliar, Place: valley})
	}
}
