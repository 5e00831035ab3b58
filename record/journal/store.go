package journal

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"aerosteep/wording"
)

// Outcome is what became of an entry that was handed in.
type Outcome string

// The outcomes. Both of the first mean that the entry is on disk.
const (
	Stored        Outcome = "stored"
	AlreadyStored Outcome = "already-stored"
	Refused       Outcome = "refused"
)

// Result is what became of one entry.
type Result struct {
	ID      string
	Outcome Outcome
	Why     error // of a refusal: a fault
}

// Store stores entries, all in one transaction, and answers for each what
// became of it, in the order given. A refused entry does not keep the others
// from being stored. It returns after the disk has them: what it acknowledges
// survives a crash. An error means that none was stored.
func (j *Journal) Store(ctx context.Context, entries ...Entry) ([]Result, error) {
	if j.cannot != nil {
		return nil, j.cannot
	}
	var results []Result
	err := patiently(ctx, func() (err error) {
		results, err = j.storeOnce(ctx, entries)
		return err
	})
	if err != nil {
		return nil, troubled(err, j.path)
	}
	return results, nil
}

func (j *Journal) storeOnce(ctx context.Context, entries []Entry) ([]Result, error) {
	tx, err := j.writer.BeginTx(ctx, nil)
	if err != nil {
		return nil, err
	}
	defer tx.Rollback()
	b, err := j.begin(ctx, tx)
	if err != nil {
		return nil, err
	}
	defer b.close()
	results := make([]Result, len(entries))
	for i, e := range entries {
		results[i].ID = e.ID
		if results[i].Outcome, results[i].Why, err = b.store(e); err != nil {
			return nil, err
		}
	}
	if err := b.end(); err != nil {
		return nil, err
	}
	return results, tx.Commit()
}

// batch is one transaction of storing: the end of each chain it met, and the
// last arrival.
type batch struct {
	j       *Journal
	ctx     context.Context
	tx      *sql.Tx
	name    string // of the folder's own chain
	insert  *sql.Stmt
	find    *sql.Stmt
	arrival int64
	chains  map[string]*chain
}

// chain is a journal as far as it is stored here.
type chain struct {
	entries int64  // number of them
	last    int64  // highest seq
	digest  string // of the entry with that seq
}

func (j *Journal) begin(ctx context.Context, tx *sql.Tx) (*batch, error) {
	b := &batch{j: j, ctx: ctx, tx: tx, chains: map[string]*chain{}}
	var err error
	// Another program may have restored a backup since the folder was opened.
	if b.name, err = fact(ctx, tx, "journal"); err != nil {
		return nil, err
	}
	err = tx.QueryRowContext(ctx, `SELECT COALESCE(MAX(arrival), 0) FROM entries`).Scan(&b.arrival)
	if err != nil {
		return nil, err
	}
	if b.find, err = tx.PrepareContext(ctx, `SELECT form FROM entries WHERE id = $1`); err != nil {
		return nil, err
	}
	b.insert, err = tx.PrepareContext(ctx, `INSERT INTO entries
		(arrival, id, journal, seq, kind, subject, at, recorded, replaces, digest, form)
		VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)`)
	return b, err
}

func (b *batch) close() {
	b.find.Close()
	b.insert.Close()
}

// store stores one entry or says why not; an error ends the whole batch.
func (b *batch) store(e Entry) (Outcome, error, error) {
	if why := e.Check(); why != nil {
		return Refused, why, nil
	}
	chained, why := e.chained()
	if why != nil {
		return Refused, why, nil
	}
	if known, found, err := b.known(e.ID); err != nil {
		return "", nil, err
	} else if found && known.Same(e) {
		return AlreadyStored, nil, nil
	} else if found {
		return Refused, refuse("id", e.ID, "journal.entry.other-content", nil), nil
	}
	if !chained {
		return Stored, nil, b.append(e)
	}
	return b.keep(e)
}

func (b *batch) known(id string) (Entry, bool, error) {
	var form []byte
	err := b.find.QueryRowContext(b.ctx, id).Scan(&form)
	if errors.Is(err, sql.ErrNoRows) {
		return Entry{}, false, nil
	}
	if err != nil {
		return Entry{}, false, err
	}
	e, err := Decode(form)
	if err != nil {
		// A stored entry that cannot be read is damage, not a free id.
		return Entry{}, false, damaged(id)
	}
	return e, true, nil
}

func damaged(id string) error {
	places := wording.Places{"id": id}
	return &Trouble{What: wording.Say("journal.trouble.entry", places), Advice: wording.Say("journal.trouble.damaged.advice", places)}
}

// append gives a new entry its place at the end of the folder's own chain.
func (b *batch) append(e Entry) error {
	c, err := b.chain(b.name)
	if err != nil {
		return err
	}
	if e.RecordedAt == "" {
		e.RecordedAt = b.j.now().UTC().Format(time.RFC3339Nano)
	}
	e.Journal, e.Seq, e.Before = b.name, c.last+1, c.digest
	return b.write(c, e)
}

// keep stores an entry that another journal chained, with the place that it
// has there.
func (b *batch) keep(e Entry) (Outcome, error, error) {
	var other string
	err := b.tx.QueryRowContext(b.ctx, `SELECT id FROM entries WHERE journal = $1 AND seq = $2`, e.Journal, e.Seq).Scan(&other)
	if err == nil {
		return Refused, refuse("seq", e.ID, "journal.entry.chain-taken", wording.Places{"journal": e.Journal, "seq": int(e.Seq)}), nil
	}
	if !errors.Is(err, sql.ErrNoRows) {
		return "", nil, err
	}
	c, err := b.chain(e.Journal)
	if err != nil {
		return "", nil, err
	}
	return Stored, nil, b.write(c, e)
}

func (b *batch) write(c *chain, e Entry) error {
	form, err := e.Form()
	if err != nil {
		return err
	}
	sum := digest(form)
	var replaces any
	if e.Replaces != nil {
		replaces = *e.Replaces
	}
	b.arrival++
	_, err = b.insert.ExecContext(b.ctx, b.arrival, e.ID, e.Journal, e.Seq, e.Kind, e.Subject,
		e.Time().UnixMicro(), e.Recorded().UnixMicro(), replaces, sum, string(form))
	if err != nil {
		return err
	}
	c.entries++
	if e.Seq > c.last {
		c.last, c.digest = e.Seq, sum
	}
	return nil
}

// chain finds a journal's end, once for each batch. Where its last entries
// were taken out of the file, new ones still get numbers of their own, and the
// gap stays for Verify to find.
func (b *batch) chain(journal string) (*chain, error) {
	if c, met := b.chains[journal]; met {
		return c, nil
	}
	c := &chain{digest: noneBefore}
	err := b.tx.QueryRowContext(b.ctx, `SELECT seq, digest FROM entries WHERE journal = $1 ORDER BY seq DESC LIMIT 1`, journal).Scan(&c.last, &c.digest)
	if err != nil && !errors.Is(err, sql.ErrNoRows) {
		return nil, err
	}
	var last int64
	err = b.tx.QueryRowContext(b.ctx, `SELECT entries, last FROM journals WHERE journal = $1`, journal).Scan(&c.entries, &last)
	if err != nil && !errors.Is(err, sql.ErrNoRows) {
		return nil, err
	}
	c.last = max(c.last, last)
	b.chains[journal] = c
	return c, nil
}

// end writes down how far each chain has come.
func (b *batch) end() error {
	for journal, c := range b.chains {
		if c.entries == 0 {
			continue
		}
		_, err := b.tx.ExecContext(b.ctx, `INSERT INTO journals (journal, entries, last) VALUES ($1, $2, $3)
			ON CONFLICT (journal) DO UPDATE SET entries = excluded.entries, last = excluded.last`, journal, c.entries, c.last)
		if err != nil {
			return err
		}
	}
	return nil
}
