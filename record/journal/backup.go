package journal

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"time"

	"modernc.org/sqlite"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Backup writes a copy of the journal to a file, consistent while others
// write. It is made beside the file and put in its place when it is whole and
// on disk, so that a backup that fails leaves the last one as it was.
func (j *Journal) Backup(ctx context.Context, to string) error {
	if err := j.mayReplace(to); err != nil {
		return err
	}
	beside := to + ".part"
	if err := os.Remove(beside); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return troubled(err, to)
	}
	err := j.copyTo(ctx, beside)
	if err == nil {
		err = os.Chmod(beside, 0o600)
	}
	if err == nil {
		err = os.Rename(beside, to)
	}
	if err != nil {
		os.Remove(beside)
		return troubled(err, to)
	}
	if err := syncFile(filepath.Dir(to)); err != nil {
		return troubled(err, to)
	}
	return j.noteBackup(ctx)
}

// noteBackup remembers when the last backup was made; a journal that cannot be
// written is backed up all the same.
func (j *Journal) noteBackup(ctx context.Context) error {
	if j.cannot != nil {
		return nil
	}
	return troubled(setFact(ctx, j.writer, "backup", j.now().UTC().Format(time.RFC3339)), j.path)
}

// LastBackup is when the last backup was made; zero where none was.
func (j *Journal) LastBackup(ctx context.Context) (time.Time, error) {
	text, err := fact(ctx, j.reader, "backup")
	if err != nil || text == "" {
		return time.Time{}, troubled(err, j.path)
	}
	return time.Parse(time.RFC3339, text)
}

// mayReplace lets a backup take the place of an older backup, and of nothing
// else: least of all of the journal itself.
func (j *Journal) mayReplace(to string) error {
	is, err := os.Stat(to)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return troubled(err, to)
	}
	if own, err := os.Stat(j.path); err == nil && os.SameFile(is, own) {
		return refuse("file", to, "journal.backup.itself", nil)
	}
	if is.IsDir() || !isBackup(to) {
		return refuse("file", to, "journal.backup.other-file", nil)
	}
	return nil
}

func isBackup(path string) bool {
	db, err := openBackup(path)
	if err != nil {
		return false
	}
	defer db.Close()
	form, err := fact(context.Background(), db, "form")
	return err == nil && form != ""
}

// openBackup opens a file that nobody writes.
func openBackup(path string) (*sql.DB, error) {
	if _, err := os.Stat(path); err != nil {
		return nil, err
	}
	return sql.Open("sqlite", "file:"+(&url.URL{Path: path}).EscapedPath()+"?mode=ro&immutable=1")
}

// copyTo writes all of the journal into a new file, over a connection of its
// own: the journal's readers are bound to write nothing, not even elsewhere.
func (j *Journal) copyTo(ctx context.Context, to string) error {
	if j.cannot != nil {
		return copyWhole(ctx, j.reader, to)
	}
	db, err := connect(j.path)
	if err != nil {
		return err
	}
	defer db.Close()
	return copyWhole(ctx, db, to)
}

// copyWhole writes all of a database into a new file and syncs it.
func copyWhole(ctx context.Context, db *sql.DB, to string) error {
	if _, err := db.ExecContext(ctx, `VACUUM INTO $1`, to); err != nil {
		return err
	}
	return syncFile(to)
}

func syncFile(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	return f.Sync()
}

// Restore puts a backup in the place of what the journal holds, in one
// transaction, so that others may have the folder open meanwhile. What was
// there is kept beside it, and the name of that file answered; "" where there
// was nothing. A journal that is not empty is replaced only if told so.
//
// Entries made from then on join a new chain: the one in the backup may have
// gone on after the backup was made, and two entries with one number would
// hide each other.
func (j *Journal) Restore(ctx context.Context, from string, replace bool) (kept string, err error) {
	if j.cannot != nil {
		return "", j.cannot
	}
	size, err := j.Size(ctx)
	if err != nil {
		return "", err
	}
	if size > 0 && !replace {
		return "", refuse("file", from, "journal.restore.not-empty", wording.Places{"entries": int(size)})
	}
	part := j.path + ".restoring"
	os.Remove(part)
	defer os.Remove(part)
	if err := j.prepare(ctx, from, part); err != nil {
		return "", err
	}
	if size > 0 {
		if kept, err = j.keepBeside(ctx); err != nil {
			return "", troubled(err, j.path)
		}
	}
	if err := patiently(ctx, func() error { return j.overwrite(ctx, part) }); err != nil {
		return kept, troubled(err, j.path)
	}
	_, err = j.recognise(ctx)
	return kept, troubled(err, j.path)
}

// prepare copies a backup, brings it to the newest form and gives it the name
// of a chain of its own.
func (j *Journal) prepare(ctx context.Context, from, part string) error {
	if !isBackup(from) {
		return notABackup(from)
	}
	source, err := openBackup(from)
	if err != nil {
		return troubled(err, from)
	}
	defer source.Close()
	if err := copyWhole(ctx, source, part); err != nil {
		return troubled(err, from)
	}
	db, err := connect(part)
	if err != nil {
		return troubled(err, part)
	}
	defer db.Close()
	if err := raise(ctx, db); err != nil {
		return troubled(err, from)
	}
	return troubled(j.makeOwn(ctx, db), part)
}

// makeOwn gives a copied journal a chain of its own, and the device and the
// password of this folder.
func (j *Journal) makeOwn(ctx context.Context, db *sql.DB) error {
	name, err := j.NewID()
	if err != nil {
		return err
	}
	password, err := j.Password(ctx)
	if err != nil {
		return err
	}
	for fact, value := range map[string]string{"journal": name, "device": j.device, "password": password} {
		if err := setFact(ctx, db, fact, value); err != nil {
			return err
		}
	}
	return nil
}

func notABackup(path string) error {
	key := "journal.restore.not-a-backup"
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		key = "journal.restore.no-file"
	}
	return fault.New("file", path, wording.Say(key, wording.Places{"given": path}), wording.Say("journal.restore.allowed"), wording.Say("journal.restore.advice"))
}

func (j *Journal) keepBeside(ctx context.Context) (string, error) {
	name := fmt.Sprintf("%s.before-%s", j.path, j.now().UTC().Format("20060102T150405Z"))
	for n := 2; ; n++ {
		if _, err := os.Stat(name); errors.Is(err, fs.ErrNotExist) {
			return name, j.copyTo(ctx, name)
		}
		name = fmt.Sprintf("%s.before-%s-%d", j.path, j.now().UTC().Format("20060102T150405Z"), n)
	}
}

// overwrite copies every page of a database over the journal's own, through
// SQLite's backup interface, which takes the locks that it needs.
func (j *Journal) overwrite(ctx context.Context, part string) error {
	conn, err := j.writer.Conn(ctx)
	if err != nil {
		return err
	}
	defer conn.Close()
	return conn.Raw(func(driver any) error {
		restorer, able := driver.(interface {
			NewRestore(string) (*sqlite.Backup, error)
		})
		if !able {
			return errors.New("the database cannot be overwritten in place")
		}
		restore, err := restorer.NewRestore(part)
		if err != nil {
			return err
		}
		if _, err := restore.Step(-1); err != nil {
			restore.Finish()
			return err
		}
		return restore.Finish()
	})
}
