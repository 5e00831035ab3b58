// Package worksheet describes every single calculation once: what it takes,
// what it gives, how its answer is said, on whose word it rests. The command
// line, the HTTP interface and the pages are all made from that description.
//
// A sheet only reads its inputs, calls the calculation in science or job, and
// words the result; it computes nothing itself.
package worksheet

import (
	"aerosteep/source"
	"aerosteep/wording"
)

// Sheet is one calculation with its form.
type Sheet struct {
	Name    string  // "saturation"
	Group   Group   // where in the work it belongs
	Inputs  []Input // in the order in which a person is asked
	Example string  // the flags of a worked call, as typed after the name
	Sources []source.Source
	Run     func(*Form) (*Result, error)
	Shape   any // the zero value of the result's data, for the published schema
}

// Purpose is the question the sheet answers, in the user's words.
func (s *Sheet) Purpose() wording.Text { return wording.Say("sheet." + s.Name + ".purpose") }

// Range says for which inputs the answer holds.
func (s *Sheet) Range() wording.Text { return wording.Say("sheet." + s.Name + ".range") }

// Formula says how the answer is worked out, in one line.
func (s *Sheet) Formula() wording.Text { return wording.Say("formula." + s.Name) }

// Input finds an input by its flag.
func (s *Sheet) Input(flag string) (*Input, bool) {
	for i := range s.Inputs {
		if s.Inputs[i].Flag == flag {
			return &s.Inputs[i], true
		}
	}
	return nil, false
}

// Flags lists the flags of the sheet.
func (s *Sheet) Flags() []string {
	flags := make([]string, len(s.Inputs))
	for i, in := range s.Inputs {
		flags[i] = in.Flag
	}
	return flags
}

// Group is a step of the work that sheets are listed under.
type Group string

// The groups, in the order of the work.
const (
	Units       Group = "units"
	Ground      Group = "ground"
	Water       Group = "water"
	Air         Group = "air"
	Recipe      Group = "recipe"
	Brew        Group = "brew"
	Counting    Group = "counting"
	Hygiene     Group = "hygiene"
	Weather     Group = "weather"
	Application Group = "application"
)

// Title is the group's heading.
func (g Group) Title() wording.Text { return wording.Say("group." + string(g)) }

// Basis says what a result rests on where that is more than physics.
type Basis string

// The words for it.
const (
	Measured  Basis = "measured"
	Standard  Basis = "standard"
	Physics   Basis = "physics"
	Habit     Basis = "habit"
	Contested Basis = "contested"
)

// Estimate is a value with its 95 % range; the ends are nil where the data
// give none.
type Estimate struct {
	Estimate *float64 `json:"estimate"`
	Low95    *float64 `json:"low95"`
	High95   *float64 `json:"high95"`
}

// Between makes an estimate with a range.
func Between(estimate, low, high float64) Estimate { return Estimate{&estimate, &low, &high} }

// Alone makes an estimate without a range.
func Alone(estimate float64) Estimate { return Estimate{Estimate: &estimate} }

// Some points to a value: a key that exists in this case.
func Some[T any](v T) *T { return &v }

// Result is what a sheet answers.
type Result struct {
	Answer   wording.Text            // one sentence, the answer first
	Notes    []wording.Text          // further sentences, in order
	Told     []string                // keys of Data that the sentences say better than a figure
	Data     any                     // a struct with JSON tags in the order of the contract
	Labels   map[string]wording.Text // of keys that mean something of their own here
	Basis    Basis                   // "" where physics alone
	Sources  []source.Source
	Cautions []wording.Text
	Plot     *Plot
	Notices  []wording.Text // for standard error: ignored columns, skipped rows
}

// Caution adds a caution.
func (r *Result) Caution(key string, places ...wording.Places) {
	r.Cautions = append(r.Cautions, wording.Say(key, places...))
}

// Plot is a picture that says the answer faster than the numbers.
type Plot struct {
	Title  wording.Text // the finding, as a sentence
	X, Y   Axis
	Series []Series
	Marks  []Mark
}

// Axis names what is drawn along it and in which unit.
type Axis struct {
	Label wording.Text
	Unit  string
}

// Series is one set of points: a "line", "points" or a "band" between Low and
// High.
type Series struct {
	Label     wording.Text
	Kind      string
	X, Y      []float64
	Low, High []float64
}

// Mark is one named place in the plot.
type Mark struct {
	X, Y  float64
	Label wording.Text
}
