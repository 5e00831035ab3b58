package journal

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"errors"
	"io"
	"maps"
	"slices"
	"strings"
	"time"

	"aerosteep/wording"
)

// Papers of others (a supplier's record, a laboratory's report, a photo of a
// label) are kept whole, by the SHA-256 of their content. An entry names one by
// that hash in its body, so that the chain of the entries vouches for it too.

// contentsSince is the form of the tables that papers came with.
const contentsSince = 2

// LongestContent is the size of a paper that is taken, in bytes: with base64 it
// still fits into a line of an export.
const LongestContent = 5 << 20

// Hash is the name of a content.
func Hash(content []byte) string {
	sum := sha256.Sum256(content)
	return hex.EncodeToString(sum[:])
}

// Keep stores a content and answers its hash; it is on disk when it returns.
// One that is kept already is not kept twice.
func (j *Journal) Keep(ctx context.Context, content []byte) (string, error) {
	if len(content) == 0 || len(content) > LongestContent {
		return "", refuse("file", "", "journal.content.size", wording.Places{"most": LongestContent >> 20})
	}
	if j.cannot != nil {
		return "", j.cannot
	}
	hash := Hash(content)
	err := patiently(ctx, func() error {
		_, err := j.writer.ExecContext(ctx, `INSERT INTO contents (hash, content) VALUES ($1, $2) ON CONFLICT (hash) DO NOTHING`, hash, base64.StdEncoding.EncodeToString(content))
		return err
	})
	return hash, troubled(err, j.path)
}

// Content is what a hash names; nil where it is not here. What no longer has
// its hash is damage, and is not handed out.
func (j *Journal) Content(ctx context.Context, hash string) ([]byte, error) {
	var text string
	err := j.reader.QueryRowContext(ctx, `SELECT content FROM contents WHERE hash = $1`, hash).Scan(&text)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	if err != nil {
		return nil, troubled(err, j.path)
	}
	content, intact := whole(text, hash)
	if !intact {
		return nil, damaged(hash)
	}
	return content, nil
}

// whole decodes a stored content and tells whether it still has its hash.
func whole(text, hash string) ([]byte, bool) {
	content, err := base64.StdEncoding.DecodeString(text)
	return content, err == nil && Hash(content) == hash
}

// Contents is how many papers are kept.
func (j *Journal) Contents(ctx context.Context) (int64, error) {
	var n int64
	err := j.reader.QueryRowContext(ctx, `SELECT COUNT(*) FROM contents`).Scan(&n)
	return n, troubled(err, j.path)
}

// namedContent are the entries that name a paper, as far as a look at their text tells.
const namedContent = `SELECT id, form FROM entries
	WHERE kind NOT IN ('reading', 'series') AND kind = 'note' AND form LIKE '%"sha256":"%' AND recorded >= $1 ORDER BY arrival`

// ContentOf is the hash of the paper that an entry names; "" where it names none.
func ContentOf(body json.RawMessage) string {
	var b struct {
		Hash string `json:"sha256"`
	}
	_ = json.Unmarshal(body, &b) // a body of another shape names none
	if len(b.Hash) != 2*sha256.Size || strings.Trim(b.Hash, "0123456789abcdef") != "" {
		return ""
	}
	return b.Hash
}

// eachNamed goes through the papers that entries recorded since a moment name.
func (j *Journal) eachNamed(ctx context.Context, since time.Time, do func(id, hash string) error) error {
	from := int64(-1 << 62)
	if !since.IsZero() {
		from = since.UnixMicro()
	}
	rows, err := j.reader.QueryContext(ctx, namedContent, from)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var id string
		var form []byte
		if err := rows.Scan(&id, &form); err != nil {
			return err
		}
		e, err := decodeStored(form)
		if err != nil {
			continue // Verify tells of it as an entry
		}
		if hash := ContentOf(e.Body); hash != "" {
			if err := do(id, hash); err != nil {
				return err
			}
		}
	}
	return rows.Err()
}

// contentLine is a paper as a line of an export.
type contentLine struct {
	Content []byte `json:"content"` // base64
	Hash    string `json:"sha256"`
}

// exportContents writes the papers that the exported entries name after them, by
// hash: each once.
func (j *Journal) exportContents(ctx context.Context, to io.Writer, since time.Time) error {
	hashes := map[string]bool{}
	if err := j.eachNamed(ctx, since, func(_, hash string) error { hashes[hash] = true; return nil }); err != nil {
		return troubled(err, j.path)
	}
	for _, hash := range slices.Sorted(maps.Keys(hashes)) {
		content, err := j.Content(ctx, hash)
		if err != nil {
			return err
		}
		if content == nil {
			continue // it was never here: its entry came without it
		}
		line := `{"content":"` + base64.StdEncoding.EncodeToString(content) + `","sha256":"` + hash + "\"}\n"
		if _, err := io.WriteString(to, line); err != nil {
			return err
		}
	}
	return nil
}

// asContent reads a line of an import as a paper; false where it is an entry.
func asContent(text []byte) (contentLine, bool) {
	var line contentLine
	var kind struct {
		Kind *string `json:"kind"`
	}
	if json.Unmarshal(text, &line) != nil || line.Hash == "" || json.Unmarshal(text, &kind) != nil || kind.Kind != nil {
		return contentLine{}, false
	}
	return line, true
}

// importContent keeps a paper of an import.
func (j *Journal) importContent(ctx context.Context, line contentLine) (Result, error) {
	r := Result{ID: line.Hash, Outcome: Stored}
	if Hash(line.Content) != line.Hash {
		r.Outcome, r.Why = Refused, refuse("sha256", line.Hash, "journal.content.other", nil)
		return r, nil
	}
	known, err := j.Content(ctx, line.Hash)
	if err != nil {
		return r, err
	}
	if known != nil {
		r.Outcome = AlreadyStored
		return r, nil
	}
	if _, err := j.Keep(ctx, line.Content); err != nil {
		var trouble *Trouble
		if errors.As(err, &trouble) {
			return r, err
		}
		r.Outcome, r.Why = Refused, err
	}
	return r, nil
}

// checkContents re-reads every paper against its hash, and looks for papers that
// an entry names and that are not here.
func (j *Journal) checkContents(ctx context.Context, v *verifier) error {
	if form, err := formOf(ctx, j.reader); err != nil || form < contentsSince {
		return err // a file of an older form that cannot be raised has none
	}
	rows, err := j.reader.QueryContext(ctx, `SELECT hash, content FROM contents ORDER BY hash`)
	if err != nil {
		return err
	}
	defer rows.Close()
	here := map[string]bool{}
	for rows.Next() {
		var hash, text string
		if err := rows.Scan(&hash, &text); err != nil {
			return err
		}
		v.found.Papers++
		here[hash] = true
		if _, intact := whole(text, hash); !intact {
			v.problem("content-changed", wording.Places{"hash": hash})
		}
	}
	if err := rows.Err(); err != nil {
		return err
	}
	return j.eachNamed(ctx, time.Time{}, func(id, hash string) error {
		if !here[hash] {
			v.problem("content-missing", wording.Places{"id": id, "hash": hash})
		}
		return nil
	})
}
