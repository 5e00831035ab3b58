package journal

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"
)

// attach keeps a paper and stores the note that names it.
func attach(t *testing.T, j *Journal, subject string, content []byte) Entry {
	t.Helper()
	hash, err := j.Keep(context.Background(), content)
	if err != nil {
		t.Fatal(err)
	}
	id, err := j.NewID()
	if err != nil {
		t.Fatal(err)
	}
	body := fmt.Sprintf(`{"bytes":%d,"file":"heap.txt","sha256":%q,"what":"heating"}`, len(content), hash)
	e := Entry{ID: id, Kind: Note, At: noon.Format(time.RFC3339), By: "M.R.", Device: j.Device(), Subject: subject, Body: json.RawMessage(body)}
	store(t, j, e)
	return e
}

// SHA-256 of "abc" is a test vector of FIPS 180-2, appendix B.1.
func TestHashIsSHA256(t *testing.T) {
	if got := Hash([]byte("abc")); got != "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad" {
		t.Error(got)
	}
}

// A paper goes through export and import unchanged, and a second export is
// byte-identical; it is kept once, however often it is named.
func TestPapersTravelWithTheEntries(t *testing.T) {
	ctx := context.Background()
	j := open(t, t.TempDir(), 1)
	paper := bytes.Repeat([]byte{0, 255, '"', '\n'}, 1000)
	attach(t, j, "lot:W-7", paper)
	attach(t, j, "batch:D-114", paper)
	text := export(t, j)
	if n := strings.Count(text, `{"content":`); n != 1 {
		t.Fatalf("%d papers are exported", n)
	}
	other := open(t, t.TempDir(), 2)
	for _, want := range []Outcome{Stored, AlreadyStored} {
		if err := other.Import(ctx, strings.NewReader(text), func(l Line) {
			if l.Outcome != want {
				t.Errorf("line %d is %s, want %s: %v", l.Number, l.Outcome, want, l.Why)
			}
		}); err != nil {
			t.Fatal(err)
		}
	}
	if again := export(t, other); again != text {
		t.Error("a second export differs")
	}
	if got, err := other.Content(ctx, Hash(paper)); err != nil || !bytes.Equal(got, paper) {
		t.Errorf("%d bytes come out, %v", len(got), err)
	}
	if said := problems(t, other); said != "" {
		t.Error(said)
	}
}

// One changed letter in a kept paper is found, and so is one that is gone.
func TestVerifyCountsPapers(t *testing.T) {
	ctx := context.Background()
	j := open(t, t.TempDir(), 1)
	attach(t, j, "lot:W-7", []byte("62 degrees on day 3"))
	if found, err := j.Verify(ctx); err != nil || !found.OK() || found.Papers != 1 {
		t.Fatalf("%+v %v", found, err)
	}
	change := func(statement string, args ...any) {
		t.Helper()
		if _, err := j.writer.ExecContext(ctx, statement, args...); err != nil {
			t.Fatal(err)
		}
	}
	change(`UPDATE contents SET content = $1`, "NjEgZGVncmVlcyBvbiBkYXkgMw==") // 61 degrees
	if said := problems(t, j); !strings.Contains(said, "changed after it was stored") {
		t.Errorf("says %q", said)
	}
	if _, err := j.Content(ctx, Hash([]byte("62 degrees on day 3"))); err == nil {
		t.Error("a changed paper is handed out")
	}
	change(`DELETE FROM contents`)
	if said := problems(t, j); !strings.Contains(said, "names a paper that is not here") {
		t.Errorf("says %q", said)
	}
}

// A backup carries the papers.
func TestBackupCarriesPapers(t *testing.T) {
	ctx := context.Background()
	j := open(t, t.TempDir(), 1)
	attach(t, j, "lot:W-7", []byte("heap"))
	to := t.TempDir() + "/backup"
	if err := j.Backup(ctx, to); err != nil {
		t.Fatal(err)
	}
	other := open(t, t.TempDir(), 2)
	if _, err := other.Restore(ctx, to, false); err != nil {
		t.Fatal(err)
	}
	if n, err := other.Contents(ctx); n != 1 || err != nil {
		t.Errorf("%d papers, %v", n, err)
	}
}

func TestPapersAreRefused(t *testing.T) {
	ctx := context.Background()
	j := open(t, t.TempDir(), 1)
	for _, content := range [][]byte{nil, make([]byte, LongestContent+1)} {
		if _, err := j.Keep(ctx, content); err == nil {
			t.Errorf("%d bytes are taken", len(content))
		}
	}
	line := `{"content":"aGVhcA==","sha256":"` + strings.Repeat("0", 64) + `"}` + "\n"
	if err := j.Import(ctx, strings.NewReader(line), func(l Line) {
		if l.Outcome != Refused || l.Why == nil {
			t.Errorf("a paper of another hash is %s", l.Outcome)
		}
	}); err != nil {
		t.Fatal(err)
	}
	if n, _ := j.Contents(ctx); n != 0 {
		t.Errorf("%d papers are kept", n)
	}
}
