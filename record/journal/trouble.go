package journal

import (
	"errors"
	"io/fs"
	"syscall"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"aerosteep/wording"
)

// Trouble is what kept the journal from doing what was asked although nothing
// was wrong with the asking (exit status 1, HTTP 503): a full disk, a folder
// that cannot be written, a file that another program holds.
type Trouble struct {
	What   wording.Text // one line: what could not be done, and why
	Advice wording.Text // what to do about it
	Cause  error
}

// Error is the trouble in English, with its cause for whoever looks after the
// machine.
func (t *Trouble) Error() string {
	text := t.What.String()
	if t.Cause != nil {
		text += " (" + t.Cause.Error() + ")"
	}
	return text
}

// Unwrap gives the cause.
func (t *Trouble) Unwrap() error { return t.Cause }

// Say puts the trouble into words for people.
func (t *Trouble) Say() (what, advice wording.Text) { return t.What, t.Advice }

// troubled names the cause of an error of the database or the file system in
// the words of whoever has to mend it.
func troubled(err error, path string) error {
	var already *Trouble
	if err == nil || errors.As(err, &already) {
		return err
	}
	key := "journal.trouble." + causeOf(err)
	places := wording.Places{"path": path, "cause": err.Error()}
	return &Trouble{What: wording.Say(key, places), Advice: wording.Say(key+".advice", places), Cause: err}
}

func causeOf(err error) string {
	var db *sqlite.Error
	if errors.As(err, &db) {
		if db.Code() == sqlite3.SQLITE_IOERR_SHMSIZE {
			return "full" // no room for the index of the write-ahead log
		}
		switch db.Code() & 0xff {
		case sqlite3.SQLITE_FULL:
			return "full"
		case sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM:
			return "no-writing"
		case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
			return "busy"
		case sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB:
			return "damaged"
		case sqlite3.SQLITE_IOERR:
			return "disk"
		}
	}
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return "full"
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		return "no-writing"
	case errors.Is(err, fs.ErrNotExist):
		return "missing"
	}
	return "other"
}

func isBusy(err error) bool    { return err != nil && causeOf(err) == "busy" }
func isDamaged(err error) bool { return err != nil && causeOf(err) == "damaged" }
