package oxygen_test

import (
	"fmt"
	"strings"
	"testing"

	"aerosteep/fault"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// goodRise is the clean-water test of the examples, as lines.
var goodRise = []string{"minutes,do_mg_per_l", "0,1.19", "3,4.38", "6,6.23", "9,7.34", "12,7.98", "15,8.38", "18,8.64", "21,8.76", "24,8.85", "27,8.89", "30,8.92"}

func file(lines ...string) string { return "file=" + strings.Join(lines, "\n") + "\n" }

// insert puts a line after the first n lines.
func insert(lines []string, n int, line string) []string {
	return append(append(append([]string{}, lines[:n]...), line), lines[n:]...)
}

// The same readings in the forms that people keep must give the same kLa.
func TestTestFileForms(t *testing.T) {
	at := []string{"at,do_mg_per_l,temp_c"}
	seconds, semicolons := []string{"do_mg_per_l,seconds,note"}, []string{"\ufeffminutes;do_mg_per_l"}
	for _, line := range goodRise[1:] {
		var minutes, c float64
		fmt.Sscanf(line, "%f,%f", &minutes, &c)
		at = append(at, fmt.Sprintf("2026-05-03T06:%02.0f:00-07:00,%.2f,18", minutes, c))
		seconds = append(seconds, fmt.Sprintf("%.2f,%.0f,", c, minutes*60))
		semicolons = append(semicolons, strings.ReplaceAll(strings.Replace(line, ",", ";", 1), ".", ",")+"\r")
	}
	for name, words := range map[string][]string{
		"plain":      {file(goodRise...), "temp=18C"},
		"blank":      {file(insert(goodRise, 4, "7,")...), "temp=18C"},
		"seconds":    {file(seconds...), "temp=18C"},
		"semicolons": {file(semicolons...), "temp=18C"},
		"RFC 3339":   {file(at...)},
		"typed wins": {file(at...), "temp=18C"},
	} {
		o, _, err := ask(t, "reaeration", words...)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		check(t, o, "kla_per_h.estimate = 10.455 · kla_per_h.low95 = 10.353 · temp_c = 18 · used_points = 11 · skipped_rows = 0")
	}
}

// Each bad row is the fifth line; it is named, and can be left out.
func TestTestFileBadRows(t *testing.T) {
	for name, bad := range map[string]string{
		"short": "7", "long": "7,6.8,1", "time blank": ",6.8", "text": "7,high", "NaN": "7,NaN", "inf": "7,inf",
		"too much": "7,51", "negative": "7,-1", "time again": "6,6.8", "time back": "5,6.8", "decimal comma": `7,"6,8"`,
	} {
		words := []string{file(insert(goodRise, 4, bad)...), "temp=18C"}
		_, _, err := ask(t, "reaeration", words...)
		if faults := fault.Of(err); len(faults) != 1 || !strings.Contains(faults[0].Error(), "line 5") {
			t.Errorf("%s: %v; want a fault of line 5", name, err)
		}
		o, result, err := ask(t, "reaeration", append(words, "skip-bad")...)
		if err != nil {
			t.Errorf("%s left out: %v", name, err)
			continue
		}
		check(t, o, "kla_per_h.estimate = 10.455 · skipped_rows = 1 · used_points = 11")
		if all := fmt.Sprint(worksheet.Sentences(result.Cautions, wording.Reader{Language: wording.English})); !strings.Contains(all, "1 bad row was left out") {
			t.Errorf("%s: no caution counts the row: %s", name, all)
		}
	}
}

func TestTestFileBadFiles(t *testing.T) {
	for name, lines := range map[string][]string{
		"empty": {}, "header only": goodRise[:1], "no time": {"do_mg_per_l", "8"}, "no oxygen": {"minutes", "8"},
		"two times": {"minutes,seconds,do_mg_per_l", "0,0,8"}, "column twice": {"minutes,do_mg_per_l,do_mg_per_l", "0,8,8"},
		"too hot": {"minutes,do_mg_per_l,temp_c", "0,1,68", "1,2,68"},
	} {
		for _, more := range [][]string{{}, {"skip-bad"}} {
			words := append([]string{file(lines...)}, more...)
			if name != "too hot" {
				words = append(words, "temp=18C")
			}
			_, _, err := ask(t, "reaeration", words...)
			if faults := fault.Of(err); len(faults) != 1 || !strings.Contains(faults[0].Error(), "test.csv") {
				t.Errorf("%s: %v; want a fault of test.csv", name, err)
			}
		}
	}
}

// Columns that mean nothing here are listed once, on standard error.
func TestTestFileUnknownColumns(t *testing.T) {
	_, result, err := ask(t, "reaeration", file(append([]string{"weather,minutes,do_mg_per_l"}, prefixed(goodRise[1:])...)...), "temp=18C")
	if err != nil || len(result.Notices) != 1 || !strings.Contains(result.Notices[0].String(), "weather") {
		t.Errorf("%v, %v; want one notice of weather", result, err)
	}
}

func prefixed(lines []string) []string {
	var all []string
	for _, line := range lines {
		all = append(all, "rain,"+line)
	}
	return all
}

// A test whose rise is missing, short or hopeless still gives its uptake, and
// says why there is no kLa.
func TestUptakeWithoutARise(t *testing.T) {
	fall := []string{"seconds,air,do_mg_per_l", "0,on,8", "30,off,7.9", "60,off,7.7", "90,off,7.5", "120,off,7.3", "150,off,7.1"}
	for name, rise := range map[string][]string{
		"none":     {},
		"short":    {"180,on,7.2", "210,on,7.4"},
		"hopeless": {"180,on,7.2", "210,on,7.1", "240,on,7.0", "270,on,6.9", "300,on,6.8", "330,on,6.7", "360,on,6.6"},
	} {
		o, _, err := ask(t, "uptake", file(append(append([]string{}, fall...), rise...)...), "temp=20C")
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		check(t, o, "our_mg_per_l_h.estimate = 24 · start_do_mg_per_l = 7.9 · kla_per_h = null · agrees = null · used_points_rise = null · saturation_mg_per_l = 9.0924")
		if o["rise_note"] == nil {
			t.Errorf("%s: no note says why there is no kLa", name)
		}
	}
	second := append(append([]string{}, fall...), "180,on,7.4", "210,off,7.3")
	_, _, err := ask(t, "uptake", file(second...))
	if faults := fault.Of(err); len(faults) != 1 || !strings.Contains(faults[0].Error(), "line 9") {
		t.Errorf("a second stretch: %v; want line 9 named", err)
	}
}

// Whatever the file holds, an answer comes or a fault: no panic, and nothing
// that is not a number.
func FuzzTestFile(f *testing.F) {
	f.Add(strings.Join(goodRise, "\n"), false)
	f.Add("seconds;air;do_mg_per_l\n0;0;7,9\n30;0;7,7\n60;0;7,5\n90;1;7,6\n", true)
	f.Add("minutes,do_mg_per_l\n0,1\n1e-300,2\n1,3\n2,4\n3,4.5\n4,4.7\n", false)
	f.Fuzz(func(t *testing.T, text string, skipBad bool) {
		words := []string{"file=" + text, "temp=18C"}
		if skipBad {
			words = append(words, "skip-bad")
		}
		for _, sheet := range []string{"reaeration", "uptake"} {
			if _, _, err := ask(t, sheet, words...); err != nil && len(fault.Of(err)) == 0 {
				t.Errorf("%s of %q: %v is no fault", sheet, text, err)
			}
		}
	})
}
