package journal

import (
	"context"
	"database/sql"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"time"
)

// File is the name of the journal's file in a data folder.
const File = "journal.db"

// Journal is one open data folder. It is safe for use by several goroutines,
// and several programs may have the same folder open.
type Journal struct {
	path   string
	now    func() time.Time
	maker  *Maker
	writer *sql.DB // one connection: writes stand in line here, not at the file's lock
	reader *sql.DB
	cannot error // why nothing can be written; nil where it can

	name   string // of the chain that new entries join
	device string
}

// Means are what the journal takes from its surroundings.
type Means struct {
	Now    func() time.Time
	Random io.Reader
}

// Open opens the journal in a folder and makes both where they are missing.
// A folder that can be read but not written opens for reading: Store then
// says why it refuses.
func Open(ctx context.Context, folder string, means Means) (*Journal, error) {
	j := &Journal{path: filepath.Join(folder, File), now: means.Now, maker: NewMaker(means.Now, means.Random)}
	err := j.openToWrite(ctx, folder, means.Random)
	if err == nil {
		return j, nil
	}
	j.Close()
	if _, there := os.Stat(j.path); there != nil || isBusy(err) || isDamaged(err) {
		return nil, troubled(err, j.path)
	}
	if readErr := j.openToRead(ctx); readErr != nil {
		j.Close()
		return nil, troubled(err, j.path)
	}
	j.cannot = troubled(err, j.path)
	return j, nil
}

func (j *Journal) openToWrite(ctx context.Context, folder string, random io.Reader) error {
	// The records of a holding are nobody else's business on a shared machine.
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return err
	}
	var err error
	if j.writer, err = connect(j.path, "journal_mode(WAL)", "synchronous(FULL)", "foreign_keys(1)"); err != nil {
		return err
	}
	j.writer.SetMaxOpenConns(1)
	if j.reader, err = connect(j.path, "query_only(1)"); err != nil {
		return err
	}
	if err := patiently(ctx, j.reachable(ctx)); err != nil {
		return err
	}
	// A file that is as it should be opens without a lock: whoever only reads
	// does not stand in line behind whoever writes.
	if ready, err := j.recognise(ctx); ready || err != nil {
		return err
	}
	if err := patiently(ctx, func() error { return raise(ctx, j.writer) }); err != nil {
		return err
	}
	return patiently(ctx, func() error { return j.identify(ctx, random) })
}

// reachable switches the file to write-ahead logging, which a first connection
// does, and makes it where it is missing.
func (j *Journal) reachable(ctx context.Context) func() error {
	return func() error { return j.writer.PingContext(ctx) }
}

// recognise reads what the file says about itself, and tells whether it is in
// the newest form.
func (j *Journal) recognise(ctx context.Context) (bool, error) {
	var tables int
	const query = `SELECT COUNT(*) FROM sqlite_master WHERE name = 'facts'`
	if err := j.reader.QueryRowContext(ctx, query).Scan(&tables); err != nil || tables == 0 {
		return false, err
	}
	form, err := formOf(ctx, j.reader)
	if err != nil || form < len(forms) {
		return false, err
	}
	if j.name, err = fact(ctx, j.reader, "journal"); err != nil {
		return false, err
	}
	j.device, err = fact(ctx, j.reader, "device")
	return j.name != "" && j.device != "", err
}

// openToRead opens a file that cannot be written. Nobody else can write it
// either, so SQLite need not look out for them: immutable.
func (j *Journal) openToRead(ctx context.Context) error {
	db, err := sql.Open("sqlite", "file:"+(&url.URL{Path: j.path}).EscapedPath()+"?mode=ro&immutable=1")
	if err != nil {
		return err
	}
	j.reader, j.writer = db, db
	if j.name, err = fact(ctx, db, "journal"); err != nil {
		return err
	}
	j.device, err = fact(ctx, db, "device")
	return err
}

// connect opens the file. Times to wait for another program's lock are long:
// a phone's entry must not be lost because a backup runs.
func connect(path string, pragmas ...string) (*sql.DB, error) {
	query := url.Values{"_txlock": {"immediate"}, "_pragma": append([]string{"busy_timeout(10000)"}, pragmas...)}
	return sql.Open("sqlite", "file:"+(&url.URL{Path: path}).EscapedPath()+"?"+query.Encode())
}

// patiently tries again while another program is in the way. SQLite waits by
// itself in most places, but not where a file is switched to write-ahead
// logging while another program opens it.
func patiently(ctx context.Context, do func() error) error {
	for wait := 5 * time.Millisecond; ; wait *= 2 {
		err := do()
		if !isBusy(err) || wait > 4*time.Second {
			return err
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(wait):
		}
	}
}

// identify reads the name of the folder's own journal and device, or makes
// them the first time.
func (j *Journal) identify(ctx context.Context, random io.Reader) error {
	tx, err := j.writer.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer tx.Rollback()
	if j.name, err = factOrMade(ctx, tx, "journal", j.maker.New); err != nil {
		return err
	}
	make := func() (string, error) { return deviceName("cli", random) }
	if j.device, err = factOrMade(ctx, tx, "device", make); err != nil {
		return err
	}
	return tx.Commit()
}

func factOrMade(ctx context.Context, tx *sql.Tx, name string, make func() (string, error)) (string, error) {
	value, err := fact(ctx, tx, name)
	if err != nil || value != "" {
		return value, err
	}
	if value, err = make(); err != nil {
		return "", err
	}
	return value, setFact(ctx, tx, name, value)
}

// Close lets go of the file.
func (j *Journal) Close() error {
	var first error
	for _, db := range []*sql.DB{j.reader, j.writer} {
		if db == nil {
			continue
		}
		if err := db.Close(); first == nil {
			first = err
		}
	}
	return first
}

// Device is the name of this data folder as a place where entries are made.
func (j *Journal) Device() string { return j.device }

// Folder is the data folder.
func (j *Journal) Folder() string { return filepath.Dir(j.path) }

// Name is the name of the chain that new entries join.
func (j *Journal) Name() string { return j.name }

// Now is the journal's clock.
func (j *Journal) Now() time.Time { return j.now() }

// NewID makes an id for an entry that is made here.
func (j *Journal) NewID() (string, error) { return j.maker.New() }

// Writable is nil where entries can be stored, else why they cannot.
func (j *Journal) Writable() error { return j.cannot }

// Path is where the file lies.
func (j *Journal) Path() string { return j.path }

// Password is the hash of the server's password, "" where none was set. It is
// a fact about this folder, not an entry: it is never exported, and a restored
// backup does not bring back an old one.
func (j *Journal) Password(ctx context.Context) (string, error) {
	hash, err := fact(ctx, j.reader, "password")
	return hash, troubled(err, j.path)
}

// SetPassword keeps the hash of the server's password.
func (j *Journal) SetPassword(ctx context.Context, hash string) error {
	if j.cannot != nil {
		return j.cannot
	}
	return troubled(setFact(ctx, j.writer, "password", hash), j.path)
}
