package intake

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"aerosteep/fault"
)

var pacific = func() *time.Location {
	zone, err := time.LoadLocation("America/Los_Angeles")
	if err != nil {
		panic(err)
	}
	return zone
}()

func read(t *testing.T, text string, m Mapping) *Found {
	t.Helper()
	found, err := Read([]byte(text), m, pacific)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func guess(t *testing.T, text string) Mapping {
	t.Helper()
	header, err := Header([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return Guess(header)
}

// Headers as loggers write them, in both languages; a unit is taken from the
// name or left open.
func TestGuess(t *testing.T) {
	for header, want := range map[string]string{
		"at,do_mg_per_l,temp_c":                         "at:|do:mg/L|temp:°C",
		"Date,Time,DO (mg/L),Temp (°F),pH":              "date:|time:|do:mg/L|temp:°F|ph:",
		"Time,DO (%),Temperature [°C],Cond (µS/cm)":     "at:|do:%|temp:°C|ec:uS/cm",
		"Fecha;Hora;Oxígeno mg/L;Temperatura;Batería V": "date:|time:|do:mg/L|temp:|:",
		"Timestamp\tDO ppm\tDO % sat\tEC mS/cm":         "at:|do:mg/L|:|ec:mS/cm",
		"#,Date Time,Oxygen,Battery":                    ":|at:|do:|:",
		"Date,DO mg/L":                                  "at:|do:mg/L",
	} {
		var parts []string
		for _, c := range guess(t, header+"\n1,2\n").Columns {
			parts = append(parts, c.Key+":"+c.Unit)
		}
		if got := strings.Join(parts, "|"); got != want {
			t.Errorf("%s: %s, want %s", header, got, want)
		}
	}
}

// Lines that a logger writes about itself stand before the header; semicolons
// bring decimal commas; 67 °F is 19.44 °C (NIST SP 811, B.8: (67 - 32)/1.8) and
// 1.2 mS/cm are 1200 uS/cm.
func TestRowsAreTurnedIntoTheirUnits(t *testing.T) {
	text := "Logger 7\nSerial: 12;3\n\nFecha;Hora;Oxígeno mg/L;Temp °F;EC mS/cm\n14.05.2026;05:00;7,41;67;1,2\n14.05.2026;05:10;7,38;67;\n"
	found := read(t, text, guess(t, text))
	if len(found.Readings) != 2 || len(found.Skipped) != 0 {
		t.Fatalf("%+v", found)
	}
	r := found.Readings[0]
	if r.DO != 7.41 || math.Abs(r.Temp-19.4444) > 1e-3 || r.EC != 1200 || !math.IsNaN(r.PH) || !math.IsNaN(found.Readings[1].EC) {
		t.Errorf("%+v", r)
	}
	if want := time.Date(2026, 5, 14, 12, 0, 0, 0, time.UTC); !r.At.Equal(want) {
		t.Errorf("at %v, want %v", r.At, want)
	}
	if got, want := string(Bodies(found.Readings)[0]), `{"rows":[{"at":"2026-05-14T12:00:00Z","do_mg_per_l":7.41,"ec_us_per_cm":1200,"temp_c":19.4444},{"at":"2026-05-14T12:10:00Z","do_mg_per_l":7.38,"temp_c":19.4444}]}`; got != want {
		t.Errorf("body %s", got)
	}
}

// Gaps, doubles, rows out of order and lines that cannot be read are told, and
// nothing is lost for them.
func TestWhatIsWrongIsTold(t *testing.T) {
	var b strings.Builder
	b.WriteString("Date Time,DO mg/L\n")
	for minute := range 60 {
		if minute < 20 || minute >= 40 {
			fmt.Fprintf(&b, "2026-05-14 05:%02d:00,7.%02d\n", minute, minute)
		}
	}
	b.WriteString("2026-05-14 05:00:00,9.99\nyesterday,7.4\n2026-05-14 06:00:00,high\n2026-05-14 06:01:00,\n2026-05-14 06:02:00,500\n")
	found := read(t, b.String(), guess(t, b.String()))
	if len(found.Readings) != 40 || found.Doubles != 1 || found.Turned != 1 || found.Every != time.Minute || found.Rows != 45 {
		t.Errorf("%d readings, %d doubles, %d turned, every %v, %d rows", len(found.Readings), found.Doubles, found.Turned, found.Every, found.Rows)
	}
	if found.Readings[0].DO != 7 {
		t.Errorf("of two rows of one moment %v was kept", found.Readings[0].DO)
	}
	if len(found.Gaps) != 1 || found.Gaps[0].Until.Sub(found.Gaps[0].From) != 21*time.Minute {
		t.Errorf("gaps %v", found.Gaps)
	}
	var lines []int
	for _, s := range found.Skipped {
		lines = append(lines, s.Line)
	}
	if fmt.Sprint(lines) != "[43 44 45 46]" {
		t.Errorf("skipped %v", lines)
	}
}

// A number over 12 is no month; where no row tells, it is asked.
func TestDayAndMonth(t *testing.T) {
	rows := func(days ...string) string {
		text := "Date,Time,DO mg/L\n"
		for _, day := range days {
			text += day + ",05:00,7.4\n"
		}
		return text
	}
	for text, want := range map[string]string{
		rows("05/04/2026", "05/14/2026"): "2026-05-04",
		rows("04/05/2026", "14/05/2026"): "2026-05-04",
		rows("4.5.2026"):                 "2026-05-04",
		rows("2026-05-04"):               "2026-05-04",
	} {
		if found := read(t, text, guess(t, text)); found.Readings[0].At.In(pacific).Format(time.DateOnly) != want {
			t.Errorf("%q: %v", text, found.Readings[0].At)
		}
	}
	open := rows("05/04/2026", "05/05/2026")
	m := guess(t, open)
	_, err := Read([]byte(open), m, pacific)
	if faults := fault.Of(err); len(faults) != 1 || faults[0].Field != "order" {
		t.Errorf("a day that can be read two ways: %v", err)
	}
	m.Order = Day
	if found := read(t, open, m); found.Readings[0].At.In(pacific).Month() != time.April {
		t.Errorf("day first: %v", found.Readings[0].At)
	}
}

// The hour that the clock change leaves out is no time; of the one that occurs
// twice the first is taken (2026-03-08 and 2026-11-01 in the zone, IANA).
func TestClockChange(t *testing.T) {
	text := "Date Time,DO mg/L\n2026-03-08 02:30:00,7\n2026-11-01 01:30:00,7\n2026-07-01 12:00:00,7\n"
	found := read(t, text, guess(t, text))
	if len(found.Readings) != 2 || len(found.Skipped) != 1 || found.Skipped[0].Line != 2 {
		t.Fatalf("%+v", found)
	}
	if want := time.Date(2026, 11, 1, 8, 30, 0, 0, time.UTC); !found.Readings[1].At.Equal(want) {
		t.Errorf("%v, want %v", found.Readings[1].At.UTC(), want)
	}
}

// Units are said and never guessed from values; values that cannot be of the
// unit that was said are refused.
func TestUnitsAreChecked(t *testing.T) {
	for _, c := range []struct{ text, field string }{
		{"Date Time,Oxygen\n2026-05-14 05:00,7\n", "column"},
		{"Date Time,Temp\n2026-05-14 05:00,17\n", "column"},
		{"Date Time,DO mg/L\n2026-05-14 05:00,88\n", "column"},
		{"Date Time,DO %\n2026-05-14 05:00,7.8\n", "column"},
		{"Date Time,Temp C\n2026-05-14 05:00,67\n", "column"},
		{"Date Time,Battery\n2026-05-14 05:00,3\n", "column"},
		{"Date Time,DO mg/L\nnever,7\n", "file"},
	} {
		m := guess(t, c.text)
		if len(m.Columns) == 2 && m.Columns[1].Name == "Temp C" {
			m.Columns[1].Unit = "°C"
		}
		_, err := Read([]byte(c.text), m, pacific)
		if faults := fault.Of(err); len(faults) == 0 || faults[0].Field != c.field {
			t.Errorf("%q: %v", c.text, err)
		}
	}
	for _, text := range []string{"", "\xff\xfe", "no table at all\nand no header\n", strings.Repeat("x\n", 100)} {
		if _, err := Header([]byte(text)); fault.Of(err) == nil {
			t.Errorf("%q is taken", text)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add("Date Time,DO mg/L\n2026-05-14 05:00,7\n")
	f.Add("Fecha;Hora;Oxígeno mg/L\n1/2/26;5:00;7,4\n")
	f.Fuzz(func(t *testing.T, text string) {
		header, err := Header([]byte(text))
		if err != nil {
			return
		}
		found, err := Read([]byte(text), Guess(header), pacific)
		if err != nil {
			return
		}
		for i, r := range found.Readings {
			if i > 0 && !r.At.After(found.Readings[i-1].At) {
				t.Fatalf("out of order: %q", text)
			}
		}
	})
}

func BenchmarkReadMillion(b *testing.B) {
	var text strings.Builder
	text.WriteString("Date Time,DO mg/L,Temp °C\n")
	at := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range 1_000_000 {
		fmt.Fprintf(&text, "%s,%.2f,%.1f\n", at.Add(time.Duration(i)*30*time.Second).Format(time.DateTime), 7+float64(i%100)/100, 18+float64(i%50)/10)
	}
	file := []byte(text.String())
	header, _ := Header(file)
	b.ResetTimer()
	for range b.N {
		found, err := Read(file, Guess(header), time.UTC)
		if err != nil || len(found.Readings) != 1_000_000 {
			b.Fatal(err)
		}
		if len(Bodies(found.Readings)) != 100 {
			b.Fatal("bodies")
		}
	}
}
