package report

import (
	"bytes"
	"context"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
	"time"

	"aerosteep/record/journal"
	"aerosteep/wording"
)

// CSV is a paper's tables for a spreadsheet, one after the other: the title of
// each, its columns, its rows; numbers in kept units, as their keys say.
func (p *Paper) CSV(r wording.Reader) ([]byte, error) {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	for i, t := range p.Tables {
		if i > 0 {
			_ = w.Write(nil) // an empty line between
		}
		_ = w.Write([]string{harmless(TableTitle(t, r))})
		_ = w.Write(t.Columns)
		for _, row := range t.Rows {
			cells := make([]string, len(row))
			for n, v := range row {
				cells[n] = inCell(v, r)
			}
			_ = w.Write(cells)
		}
	}
	w.Flush()
	return out.Bytes(), w.Error()
}

// inCell is a value as a spreadsheet reads it.
func inCell(v any, r wording.Reader) string {
	switch v := v.(type) {
	case nil:
		return ""
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case int:
		return strconv.Itoa(v)
	case time.Time:
		return v.Format(time.RFC3339)
	case wording.Speaker:
		return harmless(v.Speak(r))
	case string:
		return harmless(v)
	}
	return ""
}

// harmless is a text that no spreadsheet takes for a formula: what begins like
// one gets an apostrophe before it, which spreadsheets hide.
func harmless(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r|", rune(text[0])) {
		return "'" + text
	}
	return text
}

// readingColumns are those of a file of readings, as the program reads one.
var readingColumns = []string{"at", "do_mg_per_l", "percent_saturation", "temp_c", "ph", "ec_us_per_cm", "bacteria_per_ml", "smell", "to_rim_cm", "event", "note", "by"}

// ReadingsCSV is all that was read and done in a batch, in the form in which the
// program reads such a file again.
func (d *Desk) ReadingsCSV(ctx context.Context, name string) ([]byte, error) {
	if _, err := d.batch(name); err != nil {
		return nil, err
	}
	entries, err := d.holding.Entries(ctx, name, time.Time{})
	if err != nil {
		return nil, err
	}
	var rows []measuredRow
	for _, k := range entries {
		switch {
		case k.ReplacedBy != nil:
		case k.Kind == journal.Reading || k.Kind == journal.Series:
			rows = append(rows, d.measured(k)...)
		case k.Kind == journal.Event:
			rows = append(rows, measuredRow{at: d.when(k), body: bodyOf(k), by: k.By})
		}
	}
	slices.SortStableFunc(rows, func(a, b measuredRow) int { return a.at.Compare(b.at) })
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	_ = w.Write(readingColumns)
	for _, row := range rows {
		cells := []string{row.at.Format(time.RFC3339)}
		for _, column := range readingColumns[1 : len(readingColumns)-1] {
			cells = append(cells, inCell(row.body.value(column), wording.Reader{}))
		}
		_ = w.Write(append(cells, harmless(row.by)))
	}
	w.Flush()
	return out.Bytes(), w.Error()
}
