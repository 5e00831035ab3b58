package ground_test

import (
	"strings"
	"testing"

	"aerosteep/wording"
	"aerosteep/worksheet/ground"
)

// missing is a sentence that no table has, as it would be printed.
func missing(s string) bool {
	for _, key := range []string{"«sheet.", "«ground.", "«input.", "«weather.", "«value.", "«worksheet.", "{"} {
		if strings.Contains(s, key) {
			return true
		}
	}
	return s == ""
}

// Answers, notes, cautions and reasons are sentences in both languages.
func TestWorkedCallsAreSaid(t *testing.T) {
	for _, c := range worked {
		_, result, err := run(t, c.call)
		if err != nil {
			t.Fatal(err)
		}
		for _, language := range wording.Languages {
			r := wording.Reader{Language: language, Units: wording.US}
			for _, text := range append(append([]wording.Text{result.Answer}, result.Notes...), result.Cautions...) {
				if s := text.For(r); missing(s) {
					t.Errorf("%s: %q", c.call, s)
				}
			}
			if _, _, err := result.Figures(r); err != nil {
				t.Errorf("%s: %v", c.call, err)
			}
		}
	}
}

// Every number of an answer has a name of its own, not its key's.
func TestFiguresAreNamed(t *testing.T) {
	for _, c := range worked {
		got, _, err := run(t, c.call)
		if err != nil {
			t.Fatal(err)
		}
		for key := range got {
			if key != "sources" && key != "cautions" && !wording.Known("key."+key) {
				t.Errorf("%s: no name for %s", c.call, key)
			}
		}
	}
}

// Every input, purpose and range is said.
func TestFormsAreSaid(t *testing.T) {
	for _, s := range ground.Sheets() {
		for _, language := range wording.Languages {
			r := wording.Reader{Language: language, Units: wording.Metric}
			if missing(s.Purpose().For(r)) || missing(s.Range().For(r)) {
				t.Errorf("%s lacks its purpose or range", s.Name)
			}
			for i := range s.Inputs {
				if label := s.Inputs[i].Label(s.Name).For(r); missing(label) {
					t.Errorf("%s: --%s is called %q", s.Name, s.Inputs[i].Flag, label)
				}
				if allowed := s.Inputs[i].Allowed().For(r); missing(allowed) {
					t.Errorf("%s: --%s takes %q", s.Name, s.Inputs[i].Flag, allowed)
				}
			}
		}
	}
}

// The hours in which low sun meets still air are said in words.
func TestConflictIsSaid(t *testing.T) {
	_, result, err := run(t, `spray-hours june.csv --method foliar --lat 44.12 --lon -123.05`)
	if err != nil {
		t.Fatal(err)
	}
	for _, caution := range result.Cautions {
		if strings.Contains(caution.String(), "pull against each other") {
			return
		}
	}
	t.Error("nothing is said about the conflict of low sun and still air")
}
