package holding

import (
	"strings"
	"time"

	"aerosteep/record/journal"
	"aerosteep/table"
)

// readingColumns are the columns of a file of readings that go into a reading
// entry's body as they are.
var readingColumns = []string{"do_mg_per_l", "percent_saturation", "temp_c", "ec_us_per_cm", "ph", "bacteria_per_ml", "to_rim_cm"}

// FromCSV makes the entries of a file of readings, as people keep it: a row
// with values is a reading, one with an event an event, one with words alone a
// note. Each was written down when it happened, by the initials of its row.
func (h *Holding) FromCSV(name string, data []byte, batch string, zone *time.Location) ([]journal.Entry, error) {
	file, err := table.Open(name, data, append([]string{"at", "event", "note", "by"}, readingColumns...)...)
	if err != nil {
		return nil, err
	}
	if err := file.Require("at"); err != nil {
		return nil, err
	}
	var entries []journal.Entry
	_, err = file.Each(false, func(row table.Row) error {
		made, err := h.fromRow(row, batch, zone)
		entries = append(entries, made...)
		return err
	})
	return entries, err
}

func (h *Holding) fromRow(row table.Row, batch string, zone *time.Location) ([]journal.Entry, error) {
	at, err := row.Moment("at", zone)
	if err != nil {
		return nil, err
	}
	body := map[string]any{}
	for _, column := range readingColumns {
		if row.Blank(column) {
			continue
		}
		if body[column], err = row.Number(column); err != nil {
			return nil, err
		}
	}
	note, event := strings.TrimSpace(row.Text("note")), strings.TrimSpace(row.Text("event"))
	if note != "" {
		body["note"] = note
	}
	var entries []journal.Entry
	add := func(kind string, body map[string]any) error {
		e, err := h.entry(kind, "batch:"+batch, body, Made{At: at, By: row.Text("by")})
		e.RecordedAt = e.At
		entries = append(entries, e)
		return err
	}
	if event != "" {
		if err := add(journal.Event, map[string]any{"event": event}); err != nil {
			return nil, err
		}
	}
	switch only := len(body) == 1 && note != ""; {
	case only:
		err = add(journal.Note, map[string]any{"text": note})
	case len(body) > 0:
		err = add(journal.Reading, body)
	}
	return entries, err
}
