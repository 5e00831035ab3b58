package oxygen

import (
	"math"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/oxygen"
	"aerosteep/table"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// testFile is a log of dissolved oxygen, as both tests read it.
type testFile struct {
	name     string
	readings []oxygen.AiredReading
	skipped  int
	decimals int       // the last place that the oxygen column shows
	temps    []float64 // °C, of rows that have one
	unknown  []string
}

// The columns of a test file.
const (
	columnSeconds = "seconds"
	columnMinutes = "minutes"
	columnAt      = "at"
	columnAir     = "air"
	columnOxygen  = "do_mg_per_l"
	columnTemp    = "temp_c"
)

// The numbers that a cell may hold.
const (
	highestOxygen = 50
	longestSpan   = 1e9 // s; 30 years, far beyond any test
)

// testInputs are the flags that both tests have about their file and meter.
func testInputs() []worksheet.Input {
	return []worksheet.Input{
		{Flag: "temp", Kind: worksheet.Temperature, Low: "0 °C", High: "40 °C"},
		{Flag: "probe-tau", Kind: worksheet.Span, Default: "0 s", Low: "0 s", High: "300 s"},
		{Flag: "fit-lag", Kind: worksheet.Switch},
		{Flag: "resolution", Kind: worksheet.Oxygen, Low: "0.0001 mg/L", High: "1 mg/L"},
		{Flag: "skip-bad", Kind: worksheet.Switch},
	}
}

// readTest reads the file of a form.
func readTest(f *worksheet.Form, aired bool) (*testFile, error) {
	name := f.FileName("file")
	t, err := table.Open(name, []byte(f.Text("file")), columnSeconds, columnMinutes, columnAt, columnAir, columnOxygen, columnTemp)
	if err != nil {
		return nil, err
	}
	clock, err := t.OneOf(columnSeconds, columnMinutes, columnAt)
	if err != nil {
		return nil, err
	}
	needed := []string{columnOxygen}
	if aired {
		needed = append(needed, columnAir)
	}
	if err := t.Require(needed...); err != nil {
		return nil, err
	}
	log := &testFile{name: name, unknown: t.Unknown}
	reader := rowReader{file: log, clock: clock, aired: aired}
	skipped, err := t.Each(f.On("skip-bad"), reader.take)
	log.skipped = len(skipped)
	return log, err
}

// rowReader takes one row after another; time must go forward.
type rowReader struct {
	file  *testFile
	clock string
	aired bool
	begun bool
	first time.Time
	last  float64 // s
}

func (r *rowReader) take(row table.Row) error {
	at, err := r.time(row)
	if err != nil {
		return err
	}
	if r.begun && at <= r.last {
		return row.Wrong(r.clock, wording.Say("oxygen.file.time-back"), wording.Say("oxygen.file.time-back.allowed"))
	}
	on, err := r.air(row)
	if err != nil {
		return err
	}
	temp, hasTemp, err := temperature(row)
	if err != nil {
		return err
	}
	if !row.Blank(columnOxygen) {
		c, err := row.Within(columnOxygen, 0, highestOxygen)
		if err != nil {
			return err
		}
		r.file.readings = append(r.file.readings, oxygen.AiredReading{
			Reading: oxygen.Reading{At: quantity.Seconds(at), Oxygen: quantity.Concentration(c)}, AirOn: on, Line: row.Line,
		})
		r.file.decimals = max(r.file.decimals, row.Decimals(columnOxygen))
	}
	if hasTemp {
		r.file.temps = append(r.file.temps, temp)
	}
	r.begun, r.last = true, at
	return nil
}

// time is the row's time in seconds.
func (r *rowReader) time(row table.Row) (float64, error) {
	switch r.clock {
	case columnSeconds:
		return row.Within(columnSeconds, -longestSpan, longestSpan)
	case columnMinutes:
		minutes, err := row.Within(columnMinutes, -longestSpan/60, longestSpan/60)
		return minutes * 60, err
	}
	at, err := row.Moment(columnAt, nil)
	if err != nil {
		return 0, err
	}
	if r.first.IsZero() {
		r.first = at
	}
	return at.Sub(r.first).Seconds(), nil
}

func (r *rowReader) air(row table.Row) (bool, error) {
	if !r.aired {
		return true, nil
	}
	switch strings.ToLower(row.Text(columnAir)) {
	case "1", "on":
		return true, nil
	case "0", "off":
		return false, nil
	case "":
		return false, row.Wrong(columnAir, wording.Say("table.blank"), wording.Say("oxygen.file.air.allowed"))
	}
	return false, row.Wrong(columnAir, wording.Say("oxygen.file.air"), wording.Say("oxygen.file.air.allowed"))
}

func temperature(row table.Row) (celsius float64, has bool, err error) {
	if row.Blank(columnTemp) {
		return 0, false, nil
	}
	celsius, err = row.Number(columnTemp)
	return celsius, true, err
}

// water is the temperature of a test: what was typed, else the mean of the
// file's column; false where there is neither.
func (t *testFile) water(f *worksheet.Form) (quantity.Temperature, bool, error) {
	if f.Has("temp") || len(t.temps) == 0 {
		return f.Temperature("temp"), f.Has("temp"), nil
	}
	mean := 0.0
	for _, c := range t.temps {
		mean += c / float64(len(t.temps))
	}
	if !(mean >= float64(oxygen.Coldest) && mean <= float64(oxygen.Warmest)) {
		return 0, false, fault.New(t.name, columnTemp, wording.Say("oxygen.file.temp", wording.Places{"file": t.name, "mean": quantity.Celsius(clamp(mean))}),
			wording.Say("oxygen.file.temp.allowed"), wording.Say("oxygen.file.temp.advice"))
	}
	return quantity.Celsius(mean), true, nil
}

// clamp keeps a number that is only shown in a refusal printable.
func clamp(v float64) float64 { return max(-1e6, min(v, 1e6)) }

// probe is the meter of a test. Its last digit is what was typed, else the
// last place that the file shows.
func (t *testFile) probe(f *worksheet.Form) (oxygen.Probe, error) {
	p := oxygen.Probe{Lag: f.Span("probe-tau"), FitLag: f.On("fit-lag"), Resolution: f.Concentration("resolution")}
	if !f.Has("resolution") {
		p.Resolution = quantity.Concentration(math.Pow(10, -float64(t.decimals)))
	}
	if p.FitLag && p.Lag == 0 {
		return p, f.Advise("fit-lag", "oxygen.fit-lag-alone", "oxygen.fit-lag-alone.advice")
	}
	return p, nil
}

// naming puts the file's name on a fault that a fit found in its readings.
func (t *testFile) naming(err error) error {
	for _, wrong := range fault.Of(err) {
		if wrong.Field == "file" {
			wrong.Field = t.name
		}
	}
	return err
}

// tell says what was left out of a file.
func (t *testFile) tell(r *worksheet.Result) {
	if t.skipped > 0 {
		r.Caution("oxygen.file.skipped", wording.Places{"n": t.skipped})
	}
	if len(t.unknown) > 0 {
		r.Notices = append(r.Notices, wording.Say("table.unknown", wording.Places{"file": t.name, "columns": t.unknown}))
	}
}
