// Package published reads tables of published values for tests: CSV files in a
// package's testdata, each row with the value expected, its unit, its
// tolerance and the source that says so.
package published

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// Row is one published value.
type Row struct {
	t      *testing.T
	line   int
	fields map[string]string
}

// Rows reads testdata/name; an empty table fails the test.
func Rows(t *testing.T, name string) []Row {
	t.Helper()
	file, err := os.Open(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(records) < 2 {
		t.Fatalf("%s holds no values", name)
	}
	rows := make([]Row, 0, len(records)-1)
	for i, record := range records[1:] {
		row := Row{t: t, line: i + 2, fields: map[string]string{}}
		for j, column := range records[0] {
			row.fields[column] = record[j]
		}
		rows = append(rows, row)
	}
	return rows
}

// Where keeps the rows whose column holds one of the values.
func Where(rows []Row, column string, values ...string) []Row {
	var kept []Row
	for _, r := range rows {
		for _, v := range values {
			if r.fields[column] == v {
				kept = append(kept, r)
			}
		}
	}
	if len(kept) == 0 && len(rows) > 0 {
		rows[0].t.Fatalf("no row has %s in %q", column, values)
	}
	return kept
}

// Name tells the row from the others.
func (r Row) Name() string { return fmt.Sprintf("line %d", r.line) }

// Text is a cell as it stands; Has tells whether there is anything in it.
func (r Row) Text(column string) string { return r.fields[column] }

// Has tells whether the cell is filled.
func (r Row) Has(column string) bool { return r.fields[column] != "" }

// Float is a cell as a number.
func (r Row) Float(column string) float64 {
	r.t.Helper()
	v, err := strconv.ParseFloat(r.fields[column], 64)
	if err != nil {
		r.t.Fatalf("line %d: %s is %q, not a number", r.line, column, r.fields[column])
	}
	return v
}

// Check compares got with the published value, in the published unit.
func (r Row) Check(got float64, unit string) {
	r.t.Helper()
	if r.fields["unit"] != unit {
		r.t.Fatalf("line %d: published in %s, compared in %s", r.line, r.fields["unit"], unit)
	}
	r.Near(got, r.Float("expected"), r.Float("tolerance"))
}

// Near compares got with a value of the row; it also catches NaN.
func (r Row) Near(got, want, tolerance float64) {
	r.t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		r.t.Errorf("line %d: got %.9g, published %.9g ± %g (off by %+.3g)\n  source: %s",
			r.line, got, want, tolerance, got-want, r.fields["source"])
	}
}
