// Package table reads the CSV files people keep: columns in any order, a byte
// order mark or none, either line ending, commas or semicolons (then with
// decimal commas), # comments and blank cells. What is wrong in one is said
// with its line and column.
package table

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Table is a file whose header has been read.
type Table struct {
	Name    string   // the file, for messages
	Unknown []string // columns of the header that nobody asked about

	columns   map[string]int // known columns by name
	width     int
	semicolon bool
	records   []record
}

// record is one line under the header: its cells, or what is wrong with it.
type record struct {
	line  int
	cells []string
	wrong error
}

// Open reads the header of a file. Known are the columns that mean something
// here; the others are listed in Unknown.
//
// Errors: a *fault.Fault that names the file or the column: no text, not
// UTF-8, no header, no rows, a known column twice.
func Open(name string, data []byte, known ...string) (*Table, error) {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if !utf8.Valid(data) {
		return nil, fileFault(name, "table.not-utf8")
	}
	t := &Table{Name: name, semicolon: partedBySemicolons(data)}
	t.read(data)
	if len(t.records) == 0 {
		return nil, fileFault(name, "table.empty")
	}
	header := t.records[0]
	t.records = t.records[1:]
	if header.wrong != nil {
		return nil, header.wrong
	}
	if err := t.nameColumns(header.cells, known); err != nil {
		return nil, err
	}
	if len(t.records) == 0 {
		return nil, fileFault(name, "table.header-only")
	}
	return t, nil
}

func fileFault(name, key string) *fault.Fault {
	places := wording.Places{"file": name}
	return fault.New(name, "", wording.Say(key, places), wording.Say("table.allowed"), wording.Say(key+".advice", places))
}

// partedBySemicolons looks at the header alone: a decimal comma cannot occur
// there.
func partedBySemicolons(data []byte) bool {
	for line := range bytes.Lines(data) {
		line = bytes.TrimSpace(line)
		if len(line) > 0 && line[0] != '#' {
			return bytes.IndexByte(line, ';') >= 0
		}
	}
	return false
}

// read takes the file apart. A line that cannot be read is kept with what is
// wrong, so that the lines after it can still be used.
func (t *Table) read(data []byte) {
	r := csv.NewReader(bytes.NewReader(data))
	r.Comment, r.FieldsPerRecord, r.TrimLeadingSpace = '#', -1, true
	if t.semicolon {
		r.Comma = ';'
	}
	for {
		cells, err := r.Read()
		if err == io.EOF {
			return
		}
		rec := record{cells: cells}
		if err != nil {
			rec.line = quoteLine(err)
			rec.wrong = t.rowFault(rec.line, "table.quotes", nil)
		} else {
			rec.line, _ = r.FieldPos(0)
		}
		t.records = append(t.records, rec)
	}
}

func quoteLine(err error) int {
	var parse *csv.ParseError
	if errors.As(err, &parse) {
		return parse.StartLine
	}
	return 0
}

func (t *Table) nameColumns(header, known []string) error {
	t.columns, t.width = map[string]int{}, len(header)
	wanted := map[string]bool{}
	for _, name := range known {
		wanted[name] = true
	}
	for i, cell := range header {
		name := strings.ToLower(strings.TrimSpace(cell))
		if !wanted[name] {
			if name != "" {
				t.Unknown = append(t.Unknown, strings.TrimSpace(cell))
			}
			continue
		}
		if _, twice := t.columns[name]; twice {
			return t.columnFault(name, "table.column-twice")
		}
		t.columns[name] = i
	}
	return nil
}

func (t *Table) columnFault(column, key string) *fault.Fault {
	places := wording.Places{"file": t.Name, "column": column}
	return fault.New(t.Name, column, wording.Say(key, places), wording.Say("table.allowed"), wording.Say(key+".advice", places))
}

// Has tells whether the header names a column.
func (t *Table) Has(column string) bool { _, has := t.columns[column]; return has }

// Require refuses a file that lacks one of the columns.
func (t *Table) Require(columns ...string) error {
	for _, c := range columns {
		if !t.Has(c) {
			return t.columnFault(c, "table.column-missing")
		}
	}
	return nil
}

// OneOf finds the one column of several that the file has; none or two are
// refused.
func (t *Table) OneOf(columns ...string) (string, error) {
	found := ""
	for _, c := range columns {
		switch {
		case !t.Has(c):
		case found != "":
			return "", t.columnFault(found+", "+c, "table.column-choice")
		default:
			found = c
		}
	}
	if found == "" {
		return "", t.columnFault(strings.Join(columns, ", "), "table.column-none-of")
	}
	return found, nil
}

// Each hands every row to take, which answers a fault for a bad one (see
// Row.Wrong). The first bad row ends the reading, unless skipBad: then it is
// left out and the bad rows come back in skipped.
func (t *Table) Each(skipBad bool, take func(Row) error) (skipped fault.List, err error) {
	for _, rec := range t.records {
		err := t.judge(rec, take)
		if err == nil {
			continue
		}
		faults := fault.Of(err)
		if !skipBad || len(faults) == 0 {
			return skipped, err
		}
		skipped = append(skipped, faults[0])
	}
	return skipped, nil
}

func (t *Table) judge(rec record, take func(Row) error) error {
	if rec.wrong != nil {
		return rec.wrong
	}
	if len(rec.cells) != t.width {
		return t.rowFault(rec.line, "table.width", wording.Places{"has": len(rec.cells), "want": t.width})
	}
	return take(Row{Line: rec.line, cells: rec.cells, table: t})
}

// rowFault is what is wrong with a whole line.
func (t *Table) rowFault(line int, key string, places wording.Places) *fault.Fault {
	f := fault.New(t.Name, "",
		wording.Say("table.row", wording.Places{"line": line, "what": wording.Say(key, places)}),
		wording.Say("table.allowed"), wording.Say("table.row.advice"))
	f.Line = line
	return f
}
