package weather

import (
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/table"
	"aerosteep/wording"
)

// column is one spelling of a quantity in a CSV file: its name, the range it
// may have, and how a number in it goes into an hour.
type column struct {
	name      string
	low, high float64
	put       func(*Hour, float64)
}

// columns are the quantities of a file, each with its spellings. Two
// spellings of one quantity in a file are refused.
var columns = map[string][]column{
	"temp": {
		{"temp_c", -60, 60, func(h *Hour, v float64) { h.Temperature = new(quantity.Celsius(v)) }},
		{"temp_f", -76, 140, func(h *Hour, v float64) { h.Temperature = new(quantity.Fahrenheit(v)) }},
	},
	"dew": {
		{"dew_point_c", -60, 60, func(h *Hour, v float64) { h.DewPoint = new(quantity.Celsius(v)) }},
		{"dew_point_f", -76, 140, func(h *Hour, v float64) { h.DewPoint = new(quantity.Fahrenheit(v)) }},
	},
	"humidity": {{"rh_percent", 0, 100, func(h *Hour, v float64) { h.Humidity = &v }}},
	"wind":     speeds("wind", 200, func(h *Hour, s quantity.Speed) { h.Wind = &s }),
	"gust":     speeds("gust", 300, func(h *Hour, s quantity.Speed) { h.Gust = &s }),
	"rain": {
		{"rain_mm", 0, 200, func(h *Hour, v float64) { h.Rain = new(quantity.Metres(v / 1000)) }},
		{"rain_in", 0, 200 / 25.4, func(h *Hour, v float64) { h.Rain = new(quantity.Metres(v * 0.0254)) }},
	},
	"cloud":     {{"cloud_percent", 0, 100, func(h *Hour, v float64) { h.Cloud = &v }}},
	"pressure":  {{"pressure_hpa", 500, 1100, func(h *Hour, v float64) { h.Pressure = new(quantity.Kilopascals(v / 10)) }}},
	"sea level": {{"sea_level_pressure_hpa", 500, 1100, func(h *Hour, v float64) { h.SeaLevelPressure = new(quantity.Kilopascals(v / 10)) }}},
	"uv":        {{"uv_index", 0, 25, func(h *Hour, v float64) { h.UV = &v }}},
}

func speeds(name string, limit float64, put func(*Hour, quantity.Speed)) []column {
	return []column{
		{name + "_km_per_h", 0, limit, func(h *Hour, v float64) { put(h, quantity.KilometresPerHour(v)) }},
		{name + "_m_per_s", 0, limit / 3.6, func(h *Hour, v float64) { put(h, quantity.MetresPerSecond(v)) }},
		{name + "_mph", 0, limit / 1.609344, func(h *Hour, v float64) { put(h, quantity.KilometresPerHour(v*1.609344)) }},
	}
}

// quantities is the order in which a row is judged.
var quantities = []string{"temp", "humidity", "dew", "wind", "gust", "rain", "cloud", "pressure", "sea level", "uv"}

// CSVReading is how a CSV file is to be read.
type CSVReading struct {
	Zone          *time.Location // of times without offset; nil: refuse those
	NeedsHumidity bool           // refuse a file without humidity or dew point
	OnlyAir       bool           // only the temperature is needed
	SkipBad       bool
}

// ReadCSV reads one row an hour: `at`, the temperature, wind, rain, and what
// else there is. Skipped holds the rows left out, unknown the columns that
// mean nothing here.
//
// Errors: *fault.Fault with line and column: a column missing or twice, a
// value outside its range, a time not at least an hour after the one above.
func ReadCSV(name string, data []byte, how CSVReading) (f *Forecast, skipped fault.List, unknown []string, err error) {
	t, err := table.Open(name, data, columnNames()...)
	if err != nil {
		return nil, nil, nil, err
	}
	r := csvReader{how: how}
	if err := r.choose(t); err != nil {
		return nil, nil, nil, err
	}
	skipped, err = t.Each(how.SkipBad, r.take)
	if err != nil {
		return nil, skipped, nil, err
	}
	if len(r.hours) == 0 {
		return nil, skipped, nil, fault.New(name, "", wording.Say("weather.no-hours"), wording.Say("table.allowed"), wording.Say("weather.no-hours.advice"))
	}
	return &Forecast{Hours: r.hours}, skipped, t.Unknown, nil
}

func columnNames() []string {
	names := []string{"at"}
	for _, q := range quantities {
		for _, c := range columns[q] {
			names = append(names, c.name)
		}
	}
	return names
}

type csvReader struct {
	how    CSVReading
	chosen []column
	hours  []Hour
}

// choose finds which spellings the file uses and what it lacks.
func (r *csvReader) choose(t *table.Table) error {
	if err := t.Require("at"); err != nil {
		return err
	}
	needed := map[string]bool{"temp": true, "wind": !r.how.OnlyAir, "rain": !r.how.OnlyAir}
	for _, q := range quantities {
		names := make([]string, 0, len(columns[q]))
		present := false
		for _, c := range columns[q] {
			names = append(names, c.name)
			present = present || t.Has(c.name)
		}
		if !present && !needed[q] {
			continue
		}
		name, err := t.OneOf(names...)
		if err != nil {
			return err
		}
		for _, c := range columns[q] {
			if c.name == name {
				r.chosen = append(r.chosen, c)
			}
		}
	}
	if r.how.NeedsHumidity && !t.Has("rh_percent") && !t.Has("dew_point_c") && !t.Has("dew_point_f") {
		_, err := t.OneOf("rh_percent", "dew_point_c")
		return err
	}
	return nil
}

func (r *csvReader) take(row table.Row) error {
	at, err := row.Moment("at", r.how.Zone)
	if err != nil {
		return err
	}
	if n := len(r.hours); n > 0 && at.Sub(r.hours[n-1].At) < time.Hour {
		return row.Wrong("at", wording.Say("weather.not-an-hour-later"), wording.Say("weather.not-an-hour-later.allowed"))
	}
	h := Hour{At: at}
	for _, c := range r.chosen {
		if row.Blank(c.name) {
			continue
		}
		v, err := row.Within(c.name, c.low, c.high)
		if err != nil {
			return err
		}
		c.put(&h, v)
	}
	if h.Temperature != nil && h.DewPoint != nil && *h.DewPoint > *h.Temperature+roundingOfDew {
		return row.Wrong(dewColumn(r.chosen), wording.Say("weather.dew-over-air"), wording.Say("weather.dew-over-air.allowed"))
	}
	r.hours = append(r.hours, h)
	return nil
}

// roundingOfDew is by how much a dew point may stand above its air through
// rounding; the air is then saturated.
const roundingOfDew = 0.5

func dewColumn(chosen []column) string {
	for _, c := range chosen {
		if c.name == "dew_point_f" {
			return c.name
		}
	}
	return "dew_point_c"
}
