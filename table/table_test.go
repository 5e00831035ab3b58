package table_test

import (
	"math"
	"reflect"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"aerosteep/fault"
	"aerosteep/table"
)

// readings reads minutes and do_mg_per_l; a blank oxygen cell is left out.
func readings(text string, skipBad bool) (rows [][2]float64, skipped fault.List, t *table.Table, err error) {
	t, err = table.Open("t.csv", []byte(text), "minutes", "do_mg_per_l")
	if err != nil {
		return nil, nil, nil, err
	}
	if err := t.Require("minutes", "do_mg_per_l"); err != nil {
		return nil, nil, nil, err
	}
	skipped, err = t.Each(skipBad, func(r table.Row) error {
		at, err := r.Number("minutes")
		if err != nil {
			return err
		}
		if r.Blank("do_mg_per_l") {
			return nil
		}
		c, err := r.Within("do_mg_per_l", 0, 50)
		if err != nil {
			return err
		}
		rows = append(rows, [2]float64{at, c})
		return nil
	})
	return rows, skipped, t, err
}

// The forms of file named by RFC 4180 and those that spreadsheets in other
// languages write must all read as the same two rows.
func TestFormsOfOneFile(t *testing.T) {
	want := [][2]float64{{0, 7.4}, {1.5, 8}}
	for name, text := range map[string]string{
		"plain":               "minutes,do_mg_per_l\n0,7.4\n1.5,8\n",
		"other order":         "do_mg_per_l,minutes\n7.4,0\n8,1.5\n",
		"windows":             "\ufeffminutes,do_mg_per_l\r\n0,7.4\r\n1.5,8\r\n",
		"semicolons, commas":  "minutes;do_mg_per_l\n0;7,4\n1,5;8\n",
		"semicolons, points":  "minutes;do_mg_per_l\n0;7.4\n1.5;8\n",
		"comments and blanks": "# kitchen meter\nminutes,do_mg_per_l\n0,7.4\n\n# lid off\n1,\n1.5,8\n",
		"no last line end":    "minutes,do_mg_per_l\n0,7.4\n1.5,8",
		"quoted and spaced":   "\"minutes\", do_mg_per_l\n\"0\", 7.4\n 1.5 , 8 \n",
		"capitals":            "Minutes,DO_mg_per_L\n0,7.4\n1.5,8\n",
	} {
		got, _, _, err := readings(text, false)
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %v, %v; want %v", name, got, err, want)
		}
	}
}

func TestUnknownColumnsAreListed(t *testing.T) {
	_, _, table, err := readings("weather,minutes,do_mg_per_l,\nrain,0,7.4,\n", false)
	if err != nil || !reflect.DeepEqual(table.Unknown, []string{"weather"}) {
		t.Errorf("unknown columns %v, %v; want weather alone", table.Unknown, err)
	}
}

// Each bad line is the third, and its fault must say so.
func TestBadRowsNameTheirLine(t *testing.T) {
	for name, line := range map[string]string{
		"short": "1", "long": "1,7,9", "text": "1,high", "not a number": "1,NaN", "infinite": "1,inf",
		"blank time": ",7", "too much": "1,50.1", "negative": "1,-0.1", "decimal comma": `1,"7,4"`,
		"stray quote": `1,7"`, "thousands": "1,1 200",
	} {
		text := "minutes,do_mg_per_l\n0,7.4\n" + line + "\n2,8\n"
		_, _, _, err := readings(text, false)
		faults := fault.Of(err)
		if len(faults) != 1 || faults[0].Line != 3 || !strings.Contains(faults[0].What.String(), "line 3") {
			t.Errorf("%s: %v; want a fault of line 3", name, err)
		}
		rows, skipped, _, err := readings(text, true)
		if err != nil || len(skipped) != 1 || len(rows) != 2 {
			t.Errorf("%s with bad rows left out: %d rows, %d left out, %v; want 2, 1", name, len(rows), len(skipped), err)
		}
	}
}

// What no leaving out can cure is refused in both ways of reading.
func TestBadFiles(t *testing.T) {
	for name, text := range map[string]string{
		"empty": "", "comments only": "# nothing\n", "header only": "minutes,do_mg_per_l\n",
		"column missing": "minutes,do\n0,7\n", "column twice": "minutes,minutes,do_mg_per_l\n0,0,7\n",
		"not UTF-8": "minutes,do_mg_per_l\n0,\xff\n", "broken header": "min\"utes,do_mg_per_l\n0,7\n",
	} {
		for _, skipBad := range []bool{false, true} {
			if _, _, _, err := readings(text, skipBad); len(fault.Of(err)) != 1 {
				t.Errorf("%s (skip %v): %v; want one fault", name, skipBad, err)
			}
		}
	}
}

func TestOneOf(t *testing.T) {
	open := func(header string) (string, error) {
		table, err := table.Open("u.csv", []byte(header+"\n1,2\n"), "seconds", "minutes", "at")
		if err != nil {
			return "", err
		}
		return table.OneOf("seconds", "minutes", "at")
	}
	if got, err := open("minutes,x"); got != "minutes" || err != nil {
		t.Errorf("got %q, %v; want minutes", got, err)
	}
	for _, header := range []string{"seconds,minutes", "x,y"} {
		if _, err := open(header); err == nil {
			t.Errorf("%s: no fault", header)
		}
	}
}

func TestDecimals(t *testing.T) {
	table, _ := table.Open("d.csv", []byte("a;b;c\n7,40;8;1e-3\n"), "a", "b", "c")
	table.Each(false, func(r tableRow) error {
		for column, want := range map[string]int{"a": 2, "b": 0, "c": 0} {
			if got := r.Decimals(column); got != want {
				t.Errorf("column %s shows %d decimals, want %d", column, got, want)
			}
		}
		return nil
	})
}

type tableRow = table.Row

// The hours of the clock change in New York, 8 March and 1 November 2026 (US
// Energy Policy Act of 2005, section 110).
func TestMoments(t *testing.T) {
	newYork, err := time.LoadLocation("America/New_York")
	if err != nil {
		t.Fatal(err)
	}
	for text, want := range map[string]string{
		"2026-07-01 06:30":          "2026-07-01T06:30:00-04:00",
		"2026-01-01 06:30:15":       "2026-01-01T06:30:15-05:00",
		"2026-03-08 01:59":          "2026-03-08T01:59:00-05:00",
		"2026-03-08 03:00":          "2026-03-08T03:00:00-04:00",
		"2026-11-01 00:59":          "2026-11-01T00:59:00-04:00",
		"2026-11-01 02:00":          "2026-11-01T02:00:00-05:00",
		"2026-07-01T06:30:00+02:00": "2026-07-01T06:30:00+02:00",
	} {
		got, err := moment(text, newYork)
		if err != nil || got.Format(time.RFC3339) != want {
			t.Errorf("%s: %v, %v; want %s", text, got, err, want)
		}
	}
	for text, both := range map[string][2]string{
		"2026-03-08 02:30": {"2026-03-08T01:30:00-05:00", "2026-03-08T03:30:00-04:00"},
		"2026-11-01 01:30": {"2026-11-01T01:30:00-04:00", "2026-11-01T01:30:00-05:00"},
	} {
		_, err := moment(text, newYork)
		if err == nil || !strings.Contains(err.Error(), both[0]) || !strings.Contains(err.Error(), both[1]) {
			t.Errorf("%s: %v; want both %s", text, err, both)
		}
	}
	for _, text := range []string{"", "yesterday", "2026-13-01 10:00"} {
		if _, err := moment(text, newYork); err == nil {
			t.Errorf("%q was taken as a time", text)
		}
	}
	if _, err := moment("2026-07-01 06:30", nil); err == nil {
		t.Error("a local time was taken without a zone")
	}
}

func moment(text string, zone *time.Location) (at time.Time, err error) {
	table, err := table.Open("m.csv", []byte("at,x\n"+text+",1\n"), "at")
	if err != nil {
		return at, err
	}
	_, err = table.Each(false, func(r tableRow) error {
		at, err = r.Moment("at", zone)
		return err
	})
	return at, err
}

// Whatever the file holds, reading ends with rows in range or with a fault.
func FuzzOpen(f *testing.F) {
	f.Add("minutes,do_mg_per_l\n0,7.4\n", false)
	f.Add("\ufeffminutes;do_mg_per_l\r\n0;7,4\r\n\"", true)
	f.Add("minutes,do_mg_per_l\n\"0\n1,2\n", true)
	f.Fuzz(func(t *testing.T, text string, skipBad bool) {
		rows, _, _, err := readings(text, skipBad)
		if err != nil && len(fault.Of(err)) == 0 {
			t.Errorf("%q: %v is no fault", text, err)
		}
		for _, row := range rows {
			if math.IsNaN(row[0]) || !(row[1] >= 0 && row[1] <= 50) {
				t.Errorf("%q gave the row %v", text, row)
			}
		}
	})
}
