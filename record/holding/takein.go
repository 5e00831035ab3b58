package holding

import (
	"context"
	"encoding/json"
	"strings"
	"time"

	"aerosteep/record/intake"
	"aerosteep/record/journal"
)

// TakenIn is what became of a file of a logger.
type TakenIn struct {
	*intake.Found
	New     int      // readings that were not there
	Already int      // of a moment of which the batch had a reading
	Entries []string // ids
}

// MappingOf is how the files of a logger are read, by its name; by its header
// where no name was given. What nobody mapped before is guessed by the names of
// its columns, which Check then judges.
func (h *Holding) MappingOf(logger string, text []byte) (m intake.Mapping, known bool, err error) {
	header, err := intake.Header(text)
	if err != nil {
		return m, false, err
	}
	for _, t := range h.Tables("logger") {
		kept, err := loggerOf(t.Body)
		if err != nil {
			return m, false, err
		}
		if t.Name == logger || logger == "" && kept.Fits(header) {
			return kept, true, nil
		}
	}
	return intake.Guess(header), false, nil
}

// loggerOf reads a mapping as the set-up has it; one column may stand alone.
func loggerOf(body json.RawMessage) (intake.Mapping, error) {
	var table struct {
		Columns json.RawMessage `json:"columns"`
		Order   intake.Order    `json:"order"`
	}
	if err := json.Unmarshal(body, &table); err != nil {
		return intake.Mapping{}, err
	}
	var lines []string
	if json.Unmarshal(table.Columns, &lines) != nil {
		lines = []string{""}
		if err := json.Unmarshal(table.Columns, &lines[0]); err != nil {
			return intake.Mapping{}, err
		}
	}
	return intake.ParseLines(lines, table.Order)
}

// Remember keeps how the files of a logger are read.
func (h *Holding) Remember(ctx context.Context, logger string, m intake.Mapping, made Made) error {
	table := map[string]any{"name": logger, "columns": m.Lines()}
	if m.Order != intake.Either {
		table["order"] = string(m.Order)
	}
	body, err := json.Marshal(table)
	if err != nil {
		return err
	}
	subject := "logger:" + logger
	if !h.stands(subject) {
		subject = ""
	}
	e, err := h.Edit("logger", subject, body, made)
	if err == nil {
		_, err = h.Store(ctx, e)
	}
	return err
}

// storedAtOnce is how many series share a sync of the disk.
const storedAtOnce = 20

// TakeIn reads a file of a logger and stores what is new in it as readings of a
// batch: a logger writes its whole memory each time, so that what is there
// already is passed over.
func (h *Holding) TakeIn(ctx context.Context, batch string, text []byte, m intake.Mapping, made Made) (*TakenIn, error) {
	if err := h.KnowsBatch(batch); err != nil {
		return nil, err
	}
	found, err := intake.Read(text, m, h.Zone(time.UTC))
	if err != nil {
		return nil, err
	}
	there, err := h.moments(ctx, batch)
	if err != nil {
		return nil, err
	}
	t := &TakenIn{Found: found}
	fresh := make([]intake.Reading, 0, len(found.Readings))
	for _, r := range found.Readings {
		if there[r.At.UnixMilli()] {
			t.Already++
			continue
		}
		fresh = append(fresh, r)
	}
	t.New = len(fresh)
	return t, h.storeSeries(ctx, t, batch, fresh, made)
}

func (h *Holding) storeSeries(ctx context.Context, t *TakenIn, batch string, fresh []intake.Reading, made Made) error {
	var group []journal.Entry
	flush := func() error {
		results, err := h.Store(ctx, group...)
		for _, r := range results {
			if r.Outcome == journal.Refused && err == nil {
				err = r.Why
			}
			t.Entries = append(t.Entries, r.ID)
		}
		group = group[:0]
		return err
	}
	for _, body := range intake.Bodies(fresh) {
		e, err := h.entry(journal.Series, "batch:"+batch, json.RawMessage(body), made)
		if err != nil {
			return err
		}
		if group = append(group, e); len(group) == storedAtOnce {
			if err := flush(); err != nil {
				return err
			}
		}
	}
	if len(group) == 0 {
		return nil
	}
	return flush()
}

// moments are when a batch was read, in ms since 1970.
func (h *Holding) moments(ctx context.Context, batch string) (map[int64]bool, error) {
	there := map[int64]bool{}
	note := func(text string) {
		if at, err := time.Parse(time.RFC3339Nano, strings.TrimSpace(text)); err == nil {
			there[at.UnixMilli()] = true
		}
	}
	wanted := journal.Wanted{Subject: "batch:" + batch, Kinds: []string{journal.Reading, journal.Series}}
	err := h.journal.Each(ctx, wanted, func(k journal.Kept) error {
		if k.ReplacedBy != nil {
			return nil
		}
		if k.Kind == journal.Reading {
			note(k.At)
			return nil
		}
		rows, err := journal.Rows(k.Body)
		for _, row := range rows {
			var at struct {
				At string `json:"at"`
			}
			if json.Unmarshal(row, &at) == nil {
				note(at.At)
			}
		}
		return err
	})
	return there, err
}
