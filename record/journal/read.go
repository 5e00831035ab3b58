package journal

import (
	"context"
	"database/sql"
	"errors"
	"slices"
	"strconv"
	"time"
)

// Kept is a stored entry, with what the journal knows about it.
type Kept struct {
	Entry
	Arrival    int64   // number of storing in this file
	ReplacedBy *string // id of the newest entry that replaces it
}

// Wanted says which entries are looked for; the zero value is all of them.
type Wanted struct {
	ID      string
	Subject string
	Kinds   []string
	Since   time.Time // happened at or after
	Until   time.Time // happened before
	Newest  int       // at most so many, the newest; 0 for all
}

// List finds entries by when they happened, oldest first; of those of one
// moment, the one that was stored first.
func (j *Journal) List(ctx context.Context, w Wanted) ([]Kept, error) {
	where, args := w.conditions()
	query := `SELECT arrival, form, (SELECT r.id FROM entries r WHERE r.replaces = e.id ORDER BY r.recorded DESC, r.id DESC LIMIT 1)
		FROM entries e` + where
	if w.Newest > 0 {
		query += ` ORDER BY at DESC, arrival DESC LIMIT ` + place(&args, w.Newest)
	} else {
		query += ` ORDER BY at, arrival`
	}
	found, err := j.kept(ctx, query, args...)
	if w.Newest > 0 {
		slices.Reverse(found)
	}
	return found, err
}

// readAtOnce is how many entries Each has in memory.
const readAtOnce = 1000

// Each goes through the entries that List finds, in its order, some at a time:
// neither a journal of years nor a slow client holds memory or the file. Newest
// is not asked for here.
func (j *Journal) Each(ctx context.Context, w Wanted, do func(Kept) error) error {
	w.Newest = 0
	where, args := w.conditions()
	if where == "" {
		where = " WHERE TRUE"
	}
	query := `SELECT arrival, form, (SELECT r.id FROM entries r WHERE r.replaces = e.id ORDER BY r.recorded DESC, r.id DESC LIMIT 1)
		FROM entries e` + where
	at, arrival := int64(-1<<62), int64(-1)
	for {
		all := slices.Clone(args)
		page := query + ` AND (at, arrival) > (` + place(&all, at) + `, ` + place(&all, arrival) + `) ORDER BY at, arrival LIMIT ` + place(&all, readAtOnce)
		found, err := j.kept(ctx, page, all...)
		if err != nil {
			return err
		}
		for _, k := range found {
			if err := do(k); err != nil {
				return err
			}
			at, arrival = k.Time().UnixMicro(), k.Arrival
		}
		if len(found) < readAtOnce {
			return nil
		}
	}
}

func (w Wanted) conditions() (where string, args []any) {
	and := func(condition string) {
		if where == "" {
			where = " WHERE "
		} else {
			where += " AND "
		}
		where += condition
	}
	if w.ID != "" {
		and("id = " + place(&args, w.ID))
	}
	if w.Subject != "" {
		and("subject = " + place(&args, w.Subject))
	}
	if len(w.Kinds) > 0 {
		places := ""
		for _, kind := range w.Kinds {
			places += ", " + place(&args, kind)
		}
		and("kind IN (" + places[2:] + ")")
	}
	if !w.Since.IsZero() {
		and("at >= " + place(&args, w.Since.UnixMicro()))
	}
	if !w.Until.IsZero() {
		and("at < " + place(&args, w.Until.UnixMicro()))
	}
	return where, args
}

// place adds an argument and answers its place in the query.
func place(args *[]any, value any) string {
	*args = append(*args, value)
	return "$" + strconv.Itoa(len(*args))
}

// StateAfter finds what adds up to the holding's state (everything but
// readings) and was stored after an arrival, in order of storing.
func (j *Journal) StateAfter(ctx context.Context, arrival int64) ([]Kept, error) {
	return j.kept(ctx, `SELECT arrival, form, NULL FROM entries
		WHERE arrival > $1 AND kind NOT IN ('reading', 'series') ORDER BY arrival`, arrival)
}

func (j *Journal) kept(ctx context.Context, query string, args ...any) ([]Kept, error) {
	rows, err := j.reader.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, troubled(err, j.path)
	}
	defer rows.Close()
	var found []Kept
	for rows.Next() {
		k, err := scanKept(rows)
		if err != nil {
			return nil, troubled(err, j.path)
		}
		found = append(found, k)
	}
	return found, troubled(rows.Err(), j.path)
}

func scanKept(rows *sql.Rows) (Kept, error) {
	var form []byte
	var k Kept
	var replacedBy sql.NullString
	if err := rows.Scan(&k.Arrival, &form, &replacedBy); err != nil {
		return k, err
	}
	if replacedBy.Valid {
		k.ReplacedBy = &replacedBy.String
	}
	var err error
	if k.Entry, err = decodeStored(form); err != nil {
		return k, damaged(short(form))
	}
	return k, nil
}

// Find is one entry by its id.
func (j *Journal) Find(ctx context.Context, id string) (Kept, bool, error) {
	found, err := j.List(ctx, Wanted{ID: id})
	if err != nil || len(found) == 0 {
		return Kept{}, false, err
	}
	return found[0], true, nil
}

// Size is the number of entries.
func (j *Journal) Size(ctx context.Context) (n int64, err error) {
	err = j.reader.QueryRowContext(ctx, `SELECT COUNT(*) FROM entries`).Scan(&n)
	return n, troubled(err, j.path)
}

// Head is how far the file has come: the name of its own chain, which changes
// when a backup is restored, and the number of the newest entry. Whoever keeps
// a state asks it whether the state is up to date.
func (j *Journal) Head(ctx context.Context) (name string, arrival int64, err error) {
	err = j.reader.QueryRowContext(ctx, `SELECT (SELECT value FROM facts WHERE name = 'journal'), (SELECT COALESCE(MAX(arrival), 0) FROM entries)`).Scan(&name, &arrival)
	return name, arrival, troubled(err, j.path)
}

// Checkpoint is the last state that was set aside under a name, and how far
// it had come; 0 where there is none.
func (j *Journal) Checkpoint(ctx context.Context, name string) (arrival int64, state []byte, err error) {
	err = j.reader.QueryRowContext(ctx, `SELECT arrival, state FROM checkpoints WHERE name = $1`, name).Scan(&arrival, &state)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, nil, nil
	}
	return arrival, state, troubled(err, j.path)
}

// LastAbout is the arrival of the last entry about a subject, 0 where there is
// none.
func (j *Journal) LastAbout(ctx context.Context, subject string) (int64, error) {
	var arrival int64
	err := j.reader.QueryRowContext(ctx, `SELECT COALESCE(MAX(arrival), 0) FROM entries WHERE subject = $1`, subject).Scan(&arrival)
	return arrival, troubled(err, j.path)
}

// SetCheckpoint sets a state aside. It is a convenience and no record: where
// it is missing or wrong, the entries say it all again.
func (j *Journal) SetCheckpoint(ctx context.Context, name string, arrival int64, state []byte) error {
	if j.cannot != nil {
		return j.cannot
	}
	_, err := j.writer.ExecContext(ctx, `INSERT INTO checkpoints (name, arrival, state) VALUES ($1, $2, $3)
		ON CONFLICT (name) DO UPDATE SET arrival = excluded.arrival, state = excluded.state`, name, arrival, string(state))
	return troubled(err, j.path)
}
