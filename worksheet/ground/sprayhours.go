package ground

import (
	"time"

	"aerosteep/quantity"
	"aerosteep/science/weather"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var sprayHours = worksheet.Sheet{
	Name:  "spray-hours",
	Group: worksheet.Weather,
	Inputs: []worksheet.Input{
		{Flag: "file", Kind: worksheet.File, Required: true, Argument: true},
		{Flag: "method", Kind: worksheet.Choice, Required: true, Choices: []string{"foliar", "drench"}},
		{Flag: "lat", Kind: worksheet.Bare, Low: "-90", High: "90"},
		{Flag: "lon", Kind: worksheet.Bare, Low: "-180", High: "180"},
		{Flag: "zone", Kind: worksheet.Text},
		{Flag: "altitude", Kind: worksheet.Altitude, Low: "-500 m", High: "5000 m"},
		over0("intake", worksheet.DepthRate, "0 mm/h"),
		{Flag: "min-hours", Kind: worksheet.Whole, Default: "2", Low: "1", High: "24"},
		{Flag: "accept-care", Kind: worksheet.Switch},
		{Flag: "skip-bad", Kind: worksheet.Switch},
	},
	Example: `examples/weather/june.csv --method foliar --lat 44.12 --lon -123.05 --altitude "640 m"`,
	Sources: []source.Source{source.ASHRAE2017, source.DeltaT, source.NOAASolar, source.Madronich2007, source.GRDCInversion, source.SprayWind, source.CommonPractice},
	Shape:   stripAnswer{},
	Run:     runSprayHours,
}

type stripAnswer struct {
	Method        string        `json:"method"`
	Latitude      *float64      `json:"latitude"`
	Longitude     *float64      `json:"longitude"`
	Hours         []hourAnswer  `json:"hours"`
	Windows       []windowEntry `json:"windows"`
	BestAt        *string       `json:"best_at"`
	ConflictHours int           `json:"conflict_hours"`
}

type hourAnswer struct {
	At           string         `json:"at"`
	Score        *int           `json:"score"`
	Verdict      string         `json:"verdict"`
	Limiting     *string        `json:"limiting_factor"`
	Reasons      []wording.Text `json:"reasons"`
	Factors      factorMarks    `json:"factors"`
	TempC        *float64       `json:"temp_c"`
	Wind         *float64       `json:"wind_km_per_h"`
	RainMM       *float64       `json:"rain_mm"`
	Depression   *float64       `json:"depression_c"`
	UV           *float64       `json:"uv_index"`
	SunElevation *float64       `json:"sun_elevation_deg"`
	Inversion    *string        `json:"inversion"`
	Conflict     bool           `json:"conflict"`
	Coarse       bool           `json:"coarse"`
	Surface      []surfaceEntry `json:"surface_signs"` // beside the marks, by the hours before
}

// factorMarks are the factors in the order in which they are looked at.
type factorMarks struct {
	Rain        factorMark `json:"rain"`
	Frost       factorMark `json:"frost"`
	Wind        factorMark `json:"wind"`
	Gust        factorMark `json:"gust"`
	Inversion   factorMark `json:"inversion"`
	Depression  factorMark `json:"depression"`
	Temperature factorMark `json:"temperature"`
	UV          factorMark `json:"uv"`
}

type factorMark struct {
	Mark  *int `json:"mark"`
	Value any  `json:"value"` // a number, or the inversion's word
}

// surfaceEntry is a sign of wet leaves or of soil that takes nothing in.
type surfaceEntry struct {
	Sign string       `json:"sign"`
	Text wording.Text `json:"text"`
}

type windowEntry struct {
	StartAt string `json:"start_at"`
	EndAt   string `json:"end_at"`
	Hours   int    `json:"hours"`
	Verdict string `json:"verdict"`
}

func runSprayHours(f *worksheet.Form) (*worksheet.Result, error) {
	method := weather.Method(f.Text("method"))
	if method == weather.Foliar {
		if err := f.OnlyWith("foliar", nil, "intake"); err != nil {
			return nil, err
		}
	}
	if err := f.Together("lat", "lon"); err != nil {
		return nil, err
	}
	read, show, err := forecast(f, method)
	if err != nil {
		return nil, err
	}
	ask, err := question(f, method, read.Forecast)
	if err != nil {
		return nil, err
	}
	hours := weather.Score(read.Forecast, ask)
	r := &worksheet.Result{Basis: worksheet.Habit, Sources: f.Sheet.Sources, Data: strip(f, ask, hours, show)}
	noteFile(f, r, read)
	sayStrip(f, r, hours, show)
	return r, nil
}

// forecast reads the file. show writes a moment in the zone asked for, else in
// the file's own.
func forecast(f *worksheet.Form, method weather.Method) (read weather.Reading, show func(time.Time) string, err error) {
	var zone *time.Location
	if f.Has("zone") {
		if zone, err = zoneOf(f); err != nil {
			return read, nil, err
		}
	}
	read, err = weather.Read(f.FileName("file"), []byte(f.Text("file")), weather.CSVReading{
		Zone: zone, NeedsHumidity: method == weather.Foliar, SkipBad: f.On("skip-bad"),
	})
	show = func(at time.Time) string {
		if zone != nil {
			at = at.In(zone)
		}
		return at.Format(time.RFC3339)
	}
	return read, show, err
}

// question is what the hours are judged for; flags win over the file.
func question(f *worksheet.Form, method weather.Method, file *weather.Forecast) (weather.Question, error) {
	q := weather.Question{Method: method, Place: file.Place, Intake: 5}
	if f.Has("intake") {
		q.Intake = f.DepthRate("intake")
	}
	if f.Has("lat") {
		q.Place = &weather.Place{Latitude: f.Number("lat"), Longitude: f.Number("lon")}
	}
	if file.Altitude != nil {
		q.Altitude = max(-500, min(*file.Altitude, 5000))
	}
	if f.Has("altitude") {
		q.Altitude = f.Length("altitude")
	}
	if method == weather.Foliar && q.Place == nil {
		return q, f.Advise("lat", "sheet.spray-hours.place", "sheet.spray-hours.place.advice")
	}
	return q, nil
}

func strip(f *worksheet.Form, q weather.Question, hours []weather.Scored, show func(time.Time) string) stripAnswer {
	a := stripAnswer{Method: string(q.Method), Hours: []hourAnswer{}, Windows: []windowEntry{}, ConflictHours: weather.Conflicts(hours)}
	if q.Place != nil {
		a.Latitude, a.Longitude = &q.Place.Latitude, &q.Place.Longitude
	}
	for i := range hours {
		a.Hours = append(a.Hours, hourFigures(&hours[i], q.Method, show))
	}
	for _, w := range weather.Windows(hours, f.Int("min-hours"), f.On("accept-care")) {
		a.Windows = append(a.Windows, windowEntry{show(w.Start), show(w.End), w.Hours, string(w.Verdict)})
	}
	if best := weather.Best(hours); best != nil {
		a.BestAt = new(show(best.At))
	}
	return a
}

func hourFigures(h *weather.Scored, m weather.Method, show func(time.Time) string) hourAnswer {
	a := hourAnswer{
		At: show(h.At), Score: h.Score, Verdict: string(h.Verdict), Limiting: word(string(h.Limiting)), Reasons: h.Reasons(m),
		Factors: marks(h), UV: h.UV, SunElevation: h.SunElevation, Inversion: word(string(h.Inversion)), Conflict: h.Conflict, Coarse: h.Coarse,
		Surface: []surfaceEntry{},
	}
	for _, sign := range h.Surface {
		a.Surface = append(a.Surface, surfaceEntry{string(sign), sign.Text()})
	}
	if h.Temperature != nil {
		a.TempC = new(h.Temperature.Celsius())
	}
	if h.Wind != nil {
		a.Wind = new(h.Wind.KilometresPerHour())
	}
	if h.Rain != nil {
		a.RainMM = new(h.Rain.Millimetres())
	}
	if h.Depression != nil {
		a.Depression = new(h.Depression.Celsius())
	}
	return a
}

func marks(h *weather.Scored) factorMarks {
	of := func(factor weather.Factor) factorMark {
		found := h.Findings[factor]
		m := factorMark{Mark: found.Mark}
		switch {
		case found.Value != nil:
			m.Value = *found.Value
		case found.Word != "":
			m.Value = found.Word
		}
		return m
	}
	return factorMarks{
		of(weather.Rain), of(weather.Frost), of(weather.Wind), of(weather.Gust),
		of(weather.Inversion), of(weather.Depression), of(weather.Temperature), of(weather.UV),
	}
}

// word is a text that exists, or nil.
func word(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

// noteFile says what of the file was not used.
func noteFile(f *worksheet.Form, r *worksheet.Result, read weather.Reading) {
	if len(read.Unknown) > 0 {
		r.Notices = append(r.Notices, wording.Say("worksheet.columns-ignored", wording.Places{"file": f.FileName("file"), "columns": read.Unknown}))
	}
	if n := len(read.Skipped); n > 0 {
		places := wording.Places{"n": n, "line": read.Skipped[0].Line}
		r.Notices = append(r.Notices, wording.Say("worksheet.rows-skipped", places))
		r.Caution("worksheet.rows-skipped", places)
	}
}

func sayStrip(f *worksheet.Form, r *worksheet.Result, hours []weather.Scored, show func(time.Time) string) {
	windows := weather.Windows(hours, f.Int("min-hours"), f.On("accept-care"))
	r.Answer = wording.Say("sheet.spray-hours.none", wording.Places{"least": quantity.Hours(f.Number("min-hours"))})
	if len(windows) > 0 {
		w := windows[0]
		r.Answer = wording.Say("sheet.spray-hours.answer", wording.Places{"start": clockOf(show(w.Start)), "end": clockOf(show(w.End)), "n": len(windows)})
	}
	if n := weather.Conflicts(hours); n > 0 {
		r.Caution("sheet.spray-hours.conflict", wording.Places{"n": n})
	}
	r.Caution("sheet.spray-hours.look")
}

// clockOf shows date and time of a stamp without seconds and offset.
func clockOf(stamp string) string {
	if len(stamp) < 16 {
		return stamp
	}
	return stamp[:10] + " " + stamp[11:16]
}
