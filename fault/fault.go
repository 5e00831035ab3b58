// Package fault says what is wrong with an input: to a program by field, to a
// person in a sentence with what is allowed and what to do.
//
// A Fault is always about what somebody typed or handed in (exit status 2,
// HTTP 422). Anything else that goes wrong is an ordinary error.
package fault

import (
	"errors"
	"strings"

	"aerosteep/wording"
)

// Fault is one wrong input.
type Fault struct {
	Field   string       // flag without dashes, key with its table, or file
	Line    int          // of a file, from 1; 0 where there is none
	Given   string       // as it was typed
	What    wording.Text // one line: what is wrong
	Allowed wording.Text // what would be taken
	Advice  wording.Text // what to do about it
	Nearest string       // the nearest known word, if one is near
}

// New makes a fault of a field.
func New(field, given string, what, allowed, advice wording.Text) *Fault {
	return &Fault{Field: field, Given: given, What: what, Allowed: allowed, Advice: advice}
}

// Error is the fault in English; faces use the texts.
func (f *Fault) Error() string {
	parts := []string{}
	for _, t := range []wording.Text{f.What, f.Allowed, f.Advice} {
		if s := t.String(); s != "" {
			parts = append(parts, s)
		}
	}
	return f.Field + ": " + strings.Join(parts, "; ")
}

// List is several faults, all reported at once.
type List []*Fault

// Error is the faults one a line.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, f := range l {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// OrNil is the list as an error, or nil where nothing is wrong.
func (l List) OrNil() error {
	if len(l) == 0 {
		return nil
	}
	return l
}

// Of finds the faults in an error, through wrapping and joining.
func Of(err error) List {
	var list List
	if errors.As(err, &list) {
		return list
	}
	var one *Fault
	if errors.As(err, &one) {
		return List{one}
	}
	return nil
}

// Report is a fault as every face's JSON shows it.
type Report struct {
	Field   string  `json:"field"`
	Given   string  `json:"given"`
	Allowed string  `json:"allowed"`
	Advice  string  `json:"advice"`
	What    string  `json:"what"`
	Line    int     `json:"line,omitempty"`
	Nearest *string `json:"nearest"`
}

// For puts a fault into the reader's language.
func (f *Fault) For(r wording.Reader) Report {
	report := Report{
		Field: f.Field, Given: f.Given, Line: f.Line,
		What: f.What.For(r), Allowed: f.Allowed.For(r), Advice: f.Advice.For(r),
	}
	if f.Nearest != "" {
		report.Nearest = &f.Nearest
	}
	return report
}
