package journal

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strconv"

	"aerosteep/wording"
)

// The SQL of this package keeps to what SQLite and PostgreSQL both read: $1
// places, ON CONFLICT, and the types TEXT, BIGINT and DOUBLE PRECISION.

// forms are the steps from an empty file to the newest form of the tables, one
// for each released form. A step is never changed after its release.
var forms = [][]string{
	{
		// The entries. form is the entry itself in RFC 8785 form; all other
		// columns are taken from it, to find it by. arrival numbers the
		// storing in this file, whichever journal an entry came from first.
		`CREATE TABLE entries (
			arrival  BIGINT NOT NULL PRIMARY KEY,
			id       TEXT   NOT NULL UNIQUE,
			journal  TEXT   NOT NULL,
			seq      BIGINT NOT NULL,
			kind     TEXT   NOT NULL,
			subject  TEXT   NOT NULL,
			at       BIGINT NOT NULL,
			recorded BIGINT NOT NULL,
			replaces TEXT,
			digest   TEXT   NOT NULL,
			form     TEXT   NOT NULL,
			UNIQUE (journal, seq))`,
		`CREATE INDEX entries_subject ON entries (subject, at)`,
		`CREATE INDEX entries_recorded ON entries (recorded, id)`,
		`CREATE INDEX entries_at ON entries (at)`,
		`CREATE INDEX entries_replaces ON entries (replaces) WHERE replaces IS NOT NULL`,
		// What adds up to the holding's state: everything but the readings,
		// which are looked up and not replayed.
		`CREATE INDEX entries_state ON entries (arrival) WHERE kind NOT IN ('reading', 'series')`,
		// How many entries of each journal there are, and its last one: what
		// tells that entries were taken out.
		`CREATE TABLE journals (journal TEXT PRIMARY KEY, entries BIGINT NOT NULL, last BIGINT NOT NULL)`,
		// The state of the holding up to an arrival, so that a start need not
		// go through everything.
		`CREATE TABLE checkpoints (name TEXT PRIMARY KEY, arrival BIGINT NOT NULL, state TEXT NOT NULL)`,
	},
	{
		// Papers of others, whole, in base64, by the SHA-256 of their content.
		`CREATE TABLE contents (hash TEXT PRIMARY KEY, content TEXT NOT NULL)`,
	},
}

// factsTable holds facts about the file: its form, its journal, its device.
const factsTable = `CREATE TABLE IF NOT EXISTS facts (name TEXT PRIMARY KEY, value TEXT NOT NULL)`

// raise brings the tables to the newest form, all in one transaction. Two
// programs that open a new file at once do it one after the other.
func raise(ctx context.Context, db *sql.DB) error {
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback()
	if _, err := tx.ExecContext(ctx, factsTable); err != nil {
		return err
	}
	form, err := formOf(ctx, tx)
	if err != nil {
		return err
	}
	for ; form < len(forms); form++ {
		for _, statement := range forms[form] {
			if _, err := tx.ExecContext(ctx, statement); err != nil {
				return fmt.Errorf("raising the tables to form %d: %w", form+1, err)
			}
		}
	}
	if err := setFact(ctx, tx, "form", strconv.Itoa(form)); err != nil {
		return err
	}
	return tx.Commit()
}

// formOf is the form of the tables in a file, 0 where there are none yet. A
// file of a newer program is left alone.
func formOf(ctx context.Context, q querier) (int, error) {
	text, err := fact(ctx, q, "form")
	if err != nil || text == "" {
		return 0, err
	}
	form, err := strconv.Atoi(text)
	if err == nil && form > len(forms) {
		err = &Trouble{
			What:   wording.Say("journal.trouble.newer", wording.Places{"form": form, "known": len(forms)}),
			Advice: wording.Say("journal.trouble.newer.advice"),
		}
	}
	return form, err
}

// querier is a database or a transaction of it.
type querier interface {
	ExecContext(ctx context.Context, query string, args ...any) (sql.Result, error)
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}

// fact is a fact about the file, "" where it is not known.
func fact(ctx context.Context, q querier, name string) (string, error) {
	var value string
	err := q.QueryRowContext(ctx, `SELECT value FROM facts WHERE name = $1`, name).Scan(&value)
	if errors.Is(err, sql.ErrNoRows) {
		return "", nil
	}
	return value, err
}

func setFact(ctx context.Context, q querier, name, value string) error {
	const upsert = `INSERT INTO facts (name, value) VALUES ($1, $2) ON CONFLICT (name) DO UPDATE SET value = excluded.value`
	_, err := q.ExecContext(ctx, upsert, name, value)
	return err
}
