package intake

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Reading is one row as it is kept; NaN is not measured.
type Reading struct {
	At                        time.Time
	DO, Percent, Temp, PH, EC float64 // mg/L, % of saturation, °C, -, uS/cm
}

// Gap is a stretch without rows, over three times as long as between most.
type Gap struct{ From, Until time.Time }

// Skipped is a line that was passed over.
type Skipped struct {
	Line int
	Why  wording.Text
}

// Found is what a file came to: its readings in the order of the clock, and what
// was wrong with it.
type Found struct {
	Readings []Reading
	Rows     int
	Every    time.Duration // between most rows
	Gaps     []Gap
	Doubles  int // rows of a moment that was there already
	Turned   int // rows that stood before an earlier one
	Skipped  []Skipped
	Mapping  Mapping
}

// limits are what a value of each key may be after it was turned into its unit:
// as wide as the journal keeps it.
var limits = map[string][2]float64{"do": {0, 200}, "percent": {0, 1000}, "temp": {-5, 100}, "ph": {0, 14}, "ec": {0, 200_000}}

// file is a CSV file that was taken apart as far as its header.
type file struct {
	header []string
	line   int // of the header
	rows   *csv.Reader
	comma  bool // numbers are written 7,4
}

// mostBefore are the lines that a logger may write before its header.
const mostBefore = 60

// open finds the header: the first line that names a clock and a reading, past
// the lines that loggers write about themselves.
func open(text []byte) (*file, error) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if !utf8.Valid(text) {
		return nil, refuse("not-utf8")
	}
	rest, line := text, 0
	for ; len(rest) > 0 && line < mostBefore; line++ {
		first, after, _ := bytes.Cut(rest, []byte("\n"))
		for _, comma := range []rune{',', ';', '\t'} {
			header, err := newReader(first, comma).Read()
			if err != nil || len(header) < 2 {
				continue
			}
			for i := range header {
				header[i] = strings.TrimSpace(header[i])
			}
			if m := Guess(header); m.has("at") || m.has("date") {
				return &file{header: header, line: line + 1, rows: newReader(after, comma), comma: comma != ','}, nil
			}
		}
		rest = after
	}
	return nil, refuse("no-header")
}

func newReader(text []byte, comma rune) *csv.Reader {
	r := csv.NewReader(bytes.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.ReuseRecord, r.LazyQuotes, r.TrimLeadingSpace = comma, -1, true, true, comma != '\t'
	return r
}

func refuse(key string) error {
	return fault.New("file", "", wording.Say("intake."+key), wording.Say("intake.allowed"), wording.Say("intake."+key+".advice"))
}

// Header is the header of a file, to map its columns by.
func Header(text []byte) ([]string, error) {
	f, err := open(text)
	if err != nil {
		return nil, err
	}
	return f.header, nil
}

// Read reads a file by a mapping of its columns. A local time is in the zone.
//
// Errors: a fault for a file that is no table, for a mapping that lacks
// something, for a day that can be read two ways while nobody said which, and
// for values that are of another unit than was said.
func Read(text []byte, m Mapping, zone *time.Location) (*Found, error) {
	if err := m.Check(); err != nil {
		return nil, err
	}
	f, err := open(text)
	if err != nil {
		return nil, err
	}
	if !m.Fits(f.header) {
		return nil, fault.New("file", strings.Join(f.header, ", "), wording.Say("intake.other-header"), wording.Say("intake.columns", wording.Places{"columns": m.names()}), wording.Say("intake.other-header.advice"))
	}
	if m.Order == Either {
		if m.Order, err = f.order(text, m); err != nil {
			return nil, err
		}
	}
	found := &Found{Mapping: m}
	if err := f.each(m, newClock(zone, m.Order == Day), found); err != nil {
		return nil, err
	}
	found.sort()
	found.look()
	return found, found.doubt()
}

// order finds out from all rows which of day and month comes first.
func (f *file) order(text []byte, m Mapping) (Order, error) {
	whole, err := open(text)
	if err != nil {
		return Either, err
	}
	at := whole.place(m, "at")
	if at < 0 {
		at = whole.place(m, "date")
	}
	order, slashed := Either, false
	var days []string
	flush := func() bool {
		o, s := orderIn(days)
		order, slashed, days = o, slashed || s, days[:0]
		return order != Either
	}
	for row, err := whole.rows.Read(); err != io.EOF; row, err = whole.rows.Read() {
		if err == nil && at < len(row) {
			days = append(days, strings.Clone(row[at]))
		}
		if len(days) == 1024 && (flush() || !slashed) {
			return order, nil
		}
	}
	if !flush() && slashed {
		return Either, fault.New("order", "", wording.Say("intake.day-or-month"), wording.Say("intake.day-or-month.allowed"), wording.Say("intake.day-or-month.advice"))
	}
	return order, nil
}

// place is where a key's column stands; -1 where it does not.
func (f *file) place(m Mapping, key string) int {
	c, has := m.column(key)
	if !has {
		return -1
	}
	return slices.Index(f.header, c.Name)
}

// places are where everything stands, found once.
type places struct {
	at, date, time, do, temp, ph, ec int
	percent, fahrenheit, milli       bool
}

func (f *file) places(m Mapping) places {
	do, _ := m.column("do")
	temp, _ := m.column("temp")
	ec, _ := m.column("ec")
	return places{
		f.place(m, "at"), f.place(m, "date"), f.place(m, "time"), f.place(m, "do"), f.place(m, "temp"), f.place(m, "ph"), f.place(m, "ec"),
		do.Unit == "%", temp.Unit == "°F", ec.Unit == "mS/cm",
	}
}

// each reads all rows into what was found.
func (f *file) each(m Mapping, c *clock, found *Found) error {
	p := f.places(m)
	for {
		row, err := f.rows.Read()
		if err == io.EOF {
			return nil
		}
		var broken *csv.ParseError
		if errors.As(err, &broken) {
			found.skip(f.line+broken.StartLine, "intake.row.broken")
			continue
		}
		if err != nil {
			return err
		}
		if len(row) == 1 && strings.TrimSpace(row[0]) == "" {
			continue
		}
		found.Rows++
		line, _ := f.rows.FieldPos(0)
		f.row(row, p, c, f.line+line, found)
	}
}

func (f *file) row(row []string, p places, c *clock, line int, found *Found) {
	at, ok := c.moment(clockText(row, p))
	if !ok {
		found.skip(line, "intake.row.no-time")
		return
	}
	r := Reading{At: at, DO: math.NaN(), Percent: math.NaN(), Temp: math.NaN(), PH: math.NaN(), EC: math.NaN()}
	do := &r.DO
	key := "do"
	if p.percent {
		do, key = &r.Percent, "percent"
	}
	fine := f.value(row, p.do, key, false, do) && f.value(row, p.temp, "temp", p.fahrenheit, &r.Temp) &&
		f.value(row, p.ph, "ph", false, &r.PH) && f.value(row, p.ec, "ec", p.milli, &r.EC)
	switch {
	case !fine:
		found.skip(line, "intake.row.no-number")
	case math.IsNaN(r.DO) && math.IsNaN(r.Percent) && math.IsNaN(r.Temp) && math.IsNaN(r.PH) && math.IsNaN(r.EC):
		found.skip(line, "intake.row.empty")
	default:
		found.Readings = append(found.Readings, r)
	}
}

func clockText(row []string, p places) string {
	cell := func(i int) string {
		if i < 0 || i >= len(row) {
			return ""
		}
		return strings.TrimSpace(row[i])
	}
	if p.at >= 0 {
		return cell(p.at)
	}
	return cell(p.date) + " " + cell(p.time)
}

// value reads a cell into its place, in the unit that is kept: °C and uS/cm. A
// blank is not measured; false is a cell that is no number, or out of all limits.
func (f *file) value(row []string, i int, key string, other bool, into *float64) bool {
	if i < 0 || i >= len(row) {
		return true
	}
	text := strings.TrimSpace(row[i])
	if text == "" || text == "-" || text == "--" || strings.EqualFold(text, "nan") {
		return true
	}
	if f.comma {
		text = strings.Replace(text, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return false
	}
	if other && key == "temp" {
		v = (v - 32) / 1.8
	} else if other {
		v *= 1000
	}
	*into = v
	return v >= limits[key][0] && v <= limits[key][1]
}

// mostSkipped are the lines that are told one by one.
const mostSkipped = 1000

func (f *Found) skip(line int, key string) {
	if len(f.Skipped) < mostSkipped {
		f.Skipped = append(f.Skipped, Skipped{line, wording.Say(key)})
	}
}
