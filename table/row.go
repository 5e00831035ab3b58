package table

import (
	"regexp"
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Row is one line under the header, with as many cells as the header.
type Row struct {
	Line  int // in the file, from 1
	cells []string
	table *Table
}

// Text is the cell of a column without the spaces around it; "" where it is
// blank or the file has no such column.
func (r Row) Text(column string) string {
	i, has := r.table.columns[column]
	if !has {
		return ""
	}
	return strings.TrimSpace(r.cells[i])
}

// Blank tells whether a column was not measured in this row.
func (r Row) Blank(column string) bool { return r.Text(column) == "" }

// Number reads a plain number that must be there.
func (r Row) Number(column string) (float64, error) {
	text := r.Text(column)
	if text == "" {
		return 0, r.Wrong(column, wording.Say("table.blank"), wording.Text{})
	}
	v, ok := r.table.number(text)
	if !ok {
		return 0, r.Wrong(column, wording.Say("table.not-a-number"), wording.Say("table.not-a-number.allowed"))
	}
	return v, nil
}

// Within reads a plain number that must lie from low to high.
func (r Row) Within(column string, low, high float64) (float64, error) {
	v, err := r.Number(column)
	if err != nil {
		return 0, err
	}
	if v < low || v > high {
		return 0, r.Wrong(column, wording.Say("table.outside"),
			wording.Say("table.outside.allowed", wording.Places{"low": low, "high": high}))
	}
	return v, nil
}

// Decimals counts the digits after the decimal mark that a cell shows.
func (r Row) Decimals(column string) int {
	text := r.Text(column)
	if end := strings.IndexAny(text, "eE"); end >= 0 {
		text = text[:end]
	}
	if at := strings.IndexAny(text, ".,"); at >= 0 {
		return len(text) - at - 1
	}
	return 0
}

// Wrong is the fault of one cell; what says what is wrong with it.
func (r Row) Wrong(column string, what, allowed wording.Text) *fault.Fault {
	given := r.Text(column)
	key := "table.cell"
	if given == "" {
		key = "table.blank-cell"
	}
	f := fault.New(r.table.Name, given,
		wording.Say(key, wording.Places{"line": r.Line, "column": column, "given": given, "what": what}),
		allowed, wording.Say("table.row.advice"))
	if allowed.IsZero() {
		f.Allowed = wording.Say("table.allowed")
	}
	f.Line = r.Line
	return f
}

var plainNumber = regexp.MustCompile(`^[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?$`)

// number reads a cell. A comma is a decimal mark only where semicolons part
// the cells; words such as NaN are no numbers.
func (t *Table) number(text string) (float64, bool) {
	text = strings.Replace(text, "−", "-", 1)
	if !plainNumber.MatchString(text) || !t.semicolon && strings.Contains(text, ",") {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	return v, err == nil
}
