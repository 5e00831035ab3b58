package journal

import (
	"context"
	"database/sql"
	"fmt"

	"aerosteep/wording"
)

// Findings is what re-reading everything came to.
type Findings struct {
	Entries  int64
	Papers   int64 // of others, kept whole
	Problems []wording.Text
	// Partly are the journals that were imported from some entry on only:
	// nothing is wrong, but their first entries lie elsewhere.
	Partly []string
}

// OK tells whether nothing is wrong.
func (f Findings) OK() bool { return len(f.Problems) == 0 }

// Verify re-reads every entry, checks it against its digest and against the
// columns that it is found by, walks every journal's chain, and has SQLite
// check the file. An error means that it could not be done at all.
func (j *Journal) Verify(ctx context.Context) (Findings, error) {
	v := verifier{ours: j.name, ends: map[string]end{}}
	if err := j.checkFile(ctx, &v); err != nil {
		return v.found, j.orDamage(&v, err)
	}
	if err := j.checkEntries(ctx, &v); err != nil {
		return v.found, j.orDamage(&v, err)
	}
	if err := j.checkEnds(ctx, &v); err != nil {
		return v.found, j.orDamage(&v, err)
	}
	if err := j.checkContents(ctx, &v); err != nil {
		return v.found, j.orDamage(&v, err)
	}
	return v.found, nil
}

// orDamage turns an error that damage to the file causes into a problem.
func (j *Journal) orDamage(v *verifier, err error) error {
	if !isDamaged(err) && causeOf(err) != "disk" {
		return troubled(err, j.path)
	}
	v.problem("file", wording.Places{"cause": err.Error()})
	return nil
}

func (j *Journal) checkFile(ctx context.Context, v *verifier) error {
	rows, err := j.reader.QueryContext(ctx, `PRAGMA integrity_check`)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var said string
		if err := rows.Scan(&said); err != nil {
			return err
		}
		if said != "ok" {
			v.problem("file", wording.Places{"cause": said})
		}
	}
	return rows.Err()
}

func (j *Journal) checkEntries(ctx context.Context, v *verifier) error {
	rows, err := j.reader.QueryContext(ctx, `SELECT id, journal, seq, kind, subject, at, recorded, COALESCE(replaces, ''), digest, form
		FROM entries ORDER BY journal, seq`)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var r row
		if err := rows.Scan(&r.id, &r.journal, &r.seq, &r.kind, &r.subject, &r.at, &r.recorded, &r.replaces, &r.digest, &r.form); err != nil {
			return err
		}
		v.row(r)
	}
	return rows.Err()
}

// checkEnds compares how far each journal came with what was written down at
// the time: it finds entries that were taken out at the end.
func (j *Journal) checkEnds(ctx context.Context, v *verifier) error {
	rows, err := j.reader.QueryContext(ctx, `SELECT journal, entries, last FROM journals ORDER BY journal`)
	if err != nil {
		return err
	}
	defer rows.Close()
	count := 0
	for ; rows.Next(); count++ {
		var journal string
		var noted end
		if err := rows.Scan(&journal, &noted.entries, &noted.last); err != nil {
			return err
		}
		if is := v.ends[journal]; is.entries != noted.entries || is.last != noted.last {
			v.problem("end", wording.Places{"journal": journal, "noted": int(noted.entries), "is": int(is.entries)})
		}
	}
	if count < len(v.ends) {
		v.problem("journals", wording.Places{"noted": count, "is": len(v.ends)})
	}
	return rows.Err()
}

// row is a stored entry as it lies in the file.
type row struct {
	id, journal       string
	seq, at, recorded int64
	kind, subject     string
	replaces, digest  string
	form              sql.RawBytes
}

// end is how far a journal has come.
type end struct {
	entries, last int64
}

// verifier walks through all rows, journal by journal, by seq.
type verifier struct {
	found  Findings
	ours   string
	ends   map[string]end
	before row // the row before this one
}

func (v *verifier) problem(key string, places wording.Places) {
	v.found.Problems = append(v.found.Problems, wording.Say("journal.verify."+key, places))
}

func (v *verifier) row(r row) {
	v.found.Entries++
	e := v.ends[r.journal]
	v.ends[r.journal] = end{e.entries + 1, r.seq}
	v.content(r)
	v.link(r)
	r.form = nil
	v.before = r
}

// content checks an entry by itself.
func (v *verifier) content(r row) {
	places := wording.Places{"id": r.id, "journal": r.journal, "seq": fmt.Sprint(r.seq)}
	if digest(r.form) != r.digest {
		v.problem("changed", places)
		return
	}
	e, err := Decode(r.form)
	if err != nil {
		v.problem("unreadable", places)
		return
	}
	replaces := ""
	if e.Replaces != nil {
		replaces = *e.Replaces
	}
	says := row{id: e.ID, journal: e.Journal, seq: e.Seq, kind: e.Kind, subject: e.Subject, replaces: replaces,
		at: e.Time().UnixMicro(), recorded: e.Recorded().UnixMicro()}
	if !says.sameColumns(r) {
		v.problem("columns", places)
	}
}

func (r row) sameColumns(o row) bool {
	return r.id == o.id && r.journal == o.journal && r.seq == o.seq && r.kind == o.kind && r.subject == o.subject &&
		r.replaces == o.replaces && r.at == o.at && r.recorded == o.recorded
}

// link checks an entry's place in the chain of its journal.
func (v *verifier) link(r row) {
	places := wording.Places{"id": r.id, "journal": r.journal, "seq": fmt.Sprint(r.seq), "from": fmt.Sprint(v.before.seq + 1), "to": fmt.Sprint(r.seq - 1)}
	first := v.before.journal != r.journal
	switch e, err := decodeStored(r.form); {
	case err != nil: // said already
	case first && r.seq == 1 && e.Before != noneBefore:
		v.problem("chain", places)
	case first && r.seq > 1 && r.journal == v.ours:
		places["from"] = "1"
		v.problem("gap", places)
	case first && r.seq > 1:
		v.found.Partly = append(v.found.Partly, r.journal)
	case !first && r.seq > v.before.seq+1:
		v.problem("gap", places)
	case !first && e.Before != v.before.digest:
		v.problem("chain", places)
	}
}
