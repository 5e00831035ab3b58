package report

import (
	"encoding/json"
	"time"

	"aerosteep/wording"
)

// Paper is one record as somebody wants to see it: an inspector, a client, the
// wall of the shed. It is data; page, PDF and JSON are made from it.
type Paper struct {
	Kind     string // one of Kinds
	Name     string // what it is about, as its address has it
	Number   string // id of the entry it stands on, or kind and name
	Holding  string // "" where none is named
	Title    wording.Text
	Lede     wording.Text // one sentence that says it; zero for none
	Missing  []wording.Text
	Facts    []Fact
	Tables   []Table
	Cautions []wording.Text
	Code     string    // what the QR says; "" for none
	Printed  time.Time // handed in: a paper printed twice for one moment is the same
	Rules    string    // day of the rules it goes by; "" where it goes by none
	Signed   bool      // has a line for a dated review
	Large    bool      // is read from afar: at a gate, on a door

	inside []*Paper // of a folder: the papers that follow it
}

// Fact is one thing that is known: a number in the unit that its key ends in, a
// text, a moment, or nil where it was not written down.
type Fact struct {
	Key   string
	Value any
}

// Table is rows of such things.
type Table struct {
	Name    string // "readings", for its title
	Columns []string
	Rows    [][]any
	Note    wording.Text
}

// Kinds are the papers in the order of the work.
var Kinds = []string{"brew", "label", "application", "visit", "cleaning", "incident", "trace", "recall", "season", "stock", "crew", "notice", "heating", "folder"}

// JSON is the paper as data: facts and cells in kept units, sentences in the
// reader's language.
func (p *Paper) JSON(r wording.Reader) ([]byte, error) {
	type table struct {
		Name    string   `json:"name"`
		Columns []string `json:"columns"`
		Rows    [][]any  `json:"rows"`
	}
	tables := []table{}
	for _, t := range p.Tables {
		rows := [][]any{}
		for _, row := range t.Rows {
			cells := make([]any, len(row))
			for i, cell := range row {
				cells[i] = plainly(cell, r)
			}
			rows = append(rows, cells)
		}
		tables = append(tables, table{t.Name, t.Columns, rows})
	}
	facts := map[string]any{}
	for _, f := range p.Facts {
		facts[f.Key] = plainly(f.Value, r)
	}
	return json.MarshalIndent(struct {
		Kind     string         `json:"paper"`
		Number   string         `json:"number"`
		Holding  string         `json:"holding"`
		Title    string         `json:"title"`
		Text     string         `json:"text"`
		Missing  []string       `json:"missing"`
		Facts    map[string]any `json:"facts"`
		Tables   []table        `json:"tables"`
		Cautions []string       `json:"cautions"`
		Printed  time.Time      `json:"printed_at"`
		Rules    string         `json:"rules_as_of"`
	}{p.Kind, p.Number, p.Holding, p.Title.For(r), p.Lede.For(r), inWords(p.Missing, r), facts, tables, inWords(p.Cautions, r), p.Printed, p.Rules}, "", "  ")
}

// plainly is a value as data has it: sentences as text, what was not written
// down as null.
func plainly(value any, r wording.Reader) any {
	if speaker, speaks := value.(wording.Speaker); speaks {
		return speaker.Speak(r)
	}
	if value == "" {
		return nil
	}
	return value
}

func inWords(texts []wording.Text, r wording.Reader) []string {
	list := []string{}
	for _, t := range texts {
		list = append(list, t.For(r))
	}
	return list
}

func (p *Paper) fact(key string, value any) { p.Facts = append(p.Facts, Fact{key, value}) }

// known adds a fact that is left out where nothing was written down.
func (p *Paper) known(key string, value any) {
	if value != nil && value != "" {
		p.fact(key, value)
	}
}

func (p *Paper) missing(what string, places ...wording.Places) {
	p.Missing = append(p.Missing, wording.Say("paper.missing."+what, places...))
}

func (p *Paper) caution(key string, places ...wording.Places) {
	p.Cautions = append(p.Cautions, wording.Say("paper.caution."+key, places...))
}
