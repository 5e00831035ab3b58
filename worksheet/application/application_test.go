package application_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"aerosteep/fault"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/application"
)

// sheet finds a worksheet of the room.
func sheet(t *testing.T, name string) *worksheet.Sheet {
	t.Helper()
	sheets := application.Sheets()
	for i := range sheets {
		if sheets[i].Name == name {
			return &sheets[i]
		}
	}
	t.Fatalf("no worksheet %s", name)
	return nil
}

// form parts "--flag value --flag value"; a value ends where the next flag
// begins.
func form(flags string) worksheet.Values {
	given := worksheet.Values{}
	for _, part := range strings.Split(" "+flags, " --")[1:] {
		flag, value, _ := strings.Cut(part, " ")
		given[flag] = append(given[flag], strings.Trim(value, "\""))
	}
	return given
}

func run(s *worksheet.Sheet, given worksheet.Values) (*worksheet.Result, error) {
	f, err := worksheet.Read(s, given, nil)
	if err != nil {
		return nil, err
	}
	f.Units = wording.US
	return s.Run(f)
}

// ask runs a worksheet and gives its JSON back.
func ask(t *testing.T, name, flags string) map[string]any {
	t.Helper()
	result, err := run(sheet(t, name), form(flags))
	if err != nil {
		t.Fatalf("%s %s: %v", name, flags, err)
	}
	for _, r := range []wording.Reader{{Language: wording.English, Units: wording.US}, {Language: wording.Spanish, Units: wording.Metric}} {
		if said := result.Answer.For(r); strings.ContainsAny(said, "{}«") {
			t.Errorf("%s %s: says %q", name, flags, said)
		}
		for _, caution := range result.Cautions {
			if said := caution.For(r); strings.ContainsAny(said, "{}«") {
				t.Errorf("%s %s: cautions %q", name, flags, said)
			}
		}
	}
	out, err := result.JSON(wording.Reader{Language: wording.English, Units: wording.US})
	if err != nil {
		t.Fatalf("%s %s: %v", name, flags, err)
	}
	var object map[string]any
	if err := json.Unmarshal(out, &object); err != nil {
		t.Fatal(err)
	}
	return object
}

// at finds "rows.0.use" in an answer.
func at(object any, path string) any {
	for _, step := range strings.Split(path, ".") {
		switch node := object.(type) {
		case map[string]any:
			value, there := node[step]
			if !there {
				return "no key " + step
			}
			object = value
		case []any:
			i := int(step[0] - '0')
			if i >= len(node) {
				return "no item " + step
			}
			object = node[i]
		}
	}
	return object
}

// holds compares an answer with what is expected: numbers to 1 in a million.
func holds(t *testing.T, call string, object map[string]any, want map[string]any) {
	t.Helper()
	for path, expected := range want {
		got := at(object, path)
		number, isNumber := expected.(float64)
		if !isNumber {
			if got != expected {
				t.Errorf("%s: %s is %v, want %v", call, path, got, expected)
			}
			continue
		}
		v, ok := got.(float64)
		if !ok || math.Abs(v-number) > 1e-6*math.Abs(number)+1e-12 {
			t.Errorf("%s: %s is %v, want %.9g", call, path, got, number)
		}
	}
}

// refuses expects a fault of a field whose texts hold some words.
func refuses(t *testing.T, name, flags, field string, words ...string) {
	t.Helper()
	_, err := run(sheet(t, name), form(flags))
	faults := fault.Of(err)
	if len(faults) == 0 {
		t.Errorf("%s %s: not refused (%v)", name, flags, err)
		return
	}
	var fields []string
	var said strings.Builder
	for _, f := range faults {
		fields = append(fields, f.Field)
		report := f.For(wording.Reader{Language: wording.English, Units: wording.US})
		said.WriteString("--" + f.Field + " " + report.What + " " + report.Allowed + " " + report.Advice + "\n")
	}
	if strings.Join(fields, " ") != field {
		t.Errorf("%s %s: refuses %v, want %s (%s)", name, flags, fields, field, said.String())
	}
	for _, w := range words {
		if !strings.Contains(strings.ReplaceAll(said.String(), "\u00a0", " "), w) {
			t.Errorf("%s %s: the message lacks %q: %s", name, flags, w, said.String())
		}
	}
}

// cautions tells whether some caution holds a word.
func cautions(object map[string]any, word string) bool {
	for _, c := range object["cautions"].([]any) {
		if strings.Contains(c.(string), word) {
			return true
		}
	}
	return false
}
