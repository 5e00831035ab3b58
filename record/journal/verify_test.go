package journal

import (
	"bytes"
	"context"
	"os"
	"strings"
	"testing"
	"time"
)

func problems(t *testing.T, j *Journal) string {
	t.Helper()
	f, err := j.Verify(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	var text []string
	for _, p := range f.Problems {
		text = append(text, p.String())
	}
	return strings.Join(text, "\n")
}

func TestVerifyFindsWhatWasDoneToStoredEntries(t *testing.T) {
	for name, statement := range map[string]string{
		"a letter in the first":   `UPDATE entries SET form = replace(form, '"R.K."', '"R.J."') WHERE seq = 1`,
		"a letter in the last":    `UPDATE entries SET form = replace(form, '"R.K."', '"R.J."') WHERE seq = 5`,
		"a digest":                `UPDATE entries SET digest = replace(digest, 'a', 'b') WHERE seq = 3`,
		"the name it is filed by": `UPDATE entries SET subject = 'batch:B' WHERE seq = 2`,
		"the time it is filed by": `UPDATE entries SET at = at + 1 WHERE seq = 2`,
		"the first taken out":     `DELETE FROM entries WHERE seq = 1`,
		"one taken out":           `DELETE FROM entries WHERE seq = 3`,
		"the last taken out":      `DELETE FROM entries WHERE seq = 5`,
		"all taken out":           `DELETE FROM entries`,
		"the count":               `UPDATE journals SET entries = 4`,
		"the count taken out":     `DELETE FROM journals`,
	} {
		t.Run(name, func(t *testing.T) {
			j := five(t)
			if said := problems(t, j); said != "" {
				t.Fatalf("before anything was done: %s", said)
			}
			if _, err := j.writer.Exec(statement); err != nil {
				t.Fatal(err)
			}
			if problems(t, j) == "" {
				t.Error("not found")
			}
		})
	}
}

// Whoever changes an entry and its digest still breaks the next one's link.
func TestVerifyFindsAForgedDigest(t *testing.T) {
	j := five(t)
	found, err := j.List(context.Background(), Wanted{})
	if err != nil {
		t.Fatal(err)
	}
	e := found[2].Entry
	e.By = "X.Y."
	form, _ := e.Form()
	if _, err := j.writer.Exec(`UPDATE entries SET form = $1, digest = $2 WHERE seq = 3`, string(form), digest(form)); err != nil {
		t.Fatal(err)
	}
	if said := problems(t, j); !strings.Contains(said, "does not follow") {
		t.Errorf("said %q", said)
	}
}

// One bit of what an entry says is turned in the file itself.
func TestVerifyFindsAFlippedBitInTheFile(t *testing.T) {
	j := five(t)
	store(t, j, j.reading(t, "Marker-batch", noon, 7))
	j.Close()
	clean, err := os.ReadFile(j.path)
	if err != nil {
		t.Fatal(err)
	}
	places := 0
	for at := 0; ; {
		i := bytes.Index(clean[at:], []byte("Marker-batch"))
		if i < 0 {
			break
		}
		at += i + 3
		places++
		broken := bytes.Clone(clean)
		broken[at] ^= 1
		folder := t.TempDir()
		if err := os.WriteFile(folder+"/"+File, broken, 0o600); err != nil {
			t.Fatal(err)
		}
		if problems(t, open(t, folder, 3)) == "" {
			t.Errorf("the bit at %d was not found", at)
		}
	}
	if places < 2 {
		t.Fatalf("the entry's text was found %d times", places)
	}
}

func TestAnExportSinceImportsAndVerifies(t *testing.T) {
	j := five(t)
	found, err := j.List(context.Background(), Wanted{})
	if err != nil {
		t.Fatal(err)
	}
	var late bytes.Buffer
	if err := j.Export(context.Background(), &late, found[2].Recorded()); err != nil {
		t.Fatal(err)
	}
	to := open(t, t.TempDir(), 4)
	if n, why := importAll(t, to, late.String()); n[Stored] != 3 {
		t.Fatalf("%v %v", n, why)
	}
	f, err := to.Verify(context.Background())
	if err != nil || !f.OK() || len(f.Partly) != 1 {
		t.Errorf("%+v %v", f, err)
	}
}

func five(t *testing.T) *Journal {
	j := open(t, t.TempDir(), 1)
	for i := range 5 {
		store(t, j, j.reading(t, "A", noon.Add(time.Duration(i)*time.Hour), 7))
	}
	return j
}
