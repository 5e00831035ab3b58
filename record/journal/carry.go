package journal

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"io"
	"time"
)

// Export writes entries as JSON lines, one a line in RFC 8785 form, in order
// of recorded_at and then id. With since, only what was recorded at or after
// it. The papers of others that these entries name follow, one a line, by hash.
func (j *Journal) Export(ctx context.Context, to io.Writer, since time.Time) error {
	from := int64(-1 << 62)
	if !since.IsZero() {
		from = since.UnixMicro()
	}
	rows, err := j.reader.QueryContext(ctx, `SELECT form FROM entries WHERE recorded >= $1 ORDER BY recorded, id`, from)
	if err != nil {
		return troubled(err, j.path)
	}
	defer rows.Close()
	out := bufio.NewWriterSize(to, 1<<16)
	for rows.Next() {
		var form []byte
		if err := rows.Scan(&form); err != nil {
			return troubled(err, j.path)
		}
		out.Write(form)
		out.WriteByte('\n')
	}
	if err := rows.Err(); err != nil {
		return troubled(err, j.path)
	}
	if err := j.exportContents(ctx, out, since); err != nil {
		return err
	}
	return out.Flush()
}

// Line is what became of one line of an import.
type Line struct {
	Number int // from 1
	Result
}

// longestLine is the length of a line of an import in bytes: a series entry of
// 10,000 rows with room to spare.
const longestLine = 8 << 20

// storedAtOnce is how many lines of an import share a transaction, and so a
// sync of the disk.
const storedAtOnce = 500

// Import stores the entries of an export and tells of every line what became
// of it. Empty lines are passed over. Good lines are stored beside refused
// ones; an error means that it could not go on, and what it told of before
// stays stored.
func (j *Journal) Import(ctx context.Context, from io.Reader, tell func(Line)) error {
	lines := bufio.NewScanner(from)
	lines.Buffer(make([]byte, 1<<16), longestLine)
	group := importing{j: j, tell: tell}
	for number := 1; lines.Scan(); number++ {
		text := bytes.TrimPrefix(lines.Bytes(), []byte("\ufeff"))
		if len(bytes.TrimSpace(text)) == 0 {
			continue
		}
		if content, is := asContent(text); is {
			if err := group.content(ctx, number, content); err != nil {
				return err
			}
			continue
		}
		group.add(number, text)
		if len(group.lines) == storedAtOnce {
			if err := group.flush(ctx); err != nil {
				return err
			}
		}
	}
	if err := group.flush(ctx); err != nil {
		return err
	}
	if errors.Is(lines.Err(), bufio.ErrTooLong) {
		return refuse("file", "", "journal.import.line-too-long", nil)
	}
	return lines.Err()
}

// importing gathers lines that are stored together.
type importing struct {
	j       *Journal
	tell    func(Line)
	lines   []Line
	entries []Entry
	of      []int // the line of each entry
}

func (g *importing) add(number int, text []byte) {
	e, why := Decode(text)
	line := Line{Number: number, Result: Result{ID: e.ID}}
	if why != nil {
		line.Outcome, line.Why = Refused, why
	} else {
		g.entries = append(g.entries, e)
		g.of = append(g.of, len(g.lines))
	}
	g.lines = append(g.lines, line)
}

// content keeps a paper, after the entries before it.
func (g *importing) content(ctx context.Context, number int, content contentLine) error {
	if err := g.flush(ctx); err != nil {
		return err
	}
	result, err := g.j.importContent(ctx, content)
	if err == nil {
		g.tell(Line{Number: number, Result: result})
	}
	return err
}

func (g *importing) flush(ctx context.Context) error {
	if len(g.entries) > 0 {
		results, err := g.j.Store(ctx, g.entries...)
		if err != nil {
			return err
		}
		for i, r := range results {
			g.lines[g.of[i]].Result = r
		}
	}
	for _, line := range g.lines {
		g.tell(line)
	}
	g.lines, g.entries, g.of = g.lines[:0], g.entries[:0], g.of[:0]
	return nil
}
