package journal

import (
	"context"
	"fmt"
	"testing"
)

// Durable entries one by one, beside what SQLite itself does on the same disk
// with one row of the same length.
func BenchmarkStoreOne(b *testing.B) {
	j := open(b, b.TempDir(), 1)
	for b.Loop() {
		store(b, j, j.reading(b, "A", noon, 7))
	}
}

func BenchmarkSQLiteInsertsOne(b *testing.B) {
	j := open(b, b.TempDir(), 1)
	if _, err := j.writer.Exec(`CREATE TABLE plain (id BIGINT PRIMARY KEY, form TEXT)`); err != nil {
		b.Fatal(err)
	}
	form := fmt.Sprintf("%0500d", 7)
	n := 0
	for b.Loop() {
		n++
		if _, err := j.writer.Exec(`INSERT INTO plain VALUES ($1, $2)`, n, form); err != nil {
			b.Fatal(err)
		}
	}
}

// A hundred at once, as a phone or a logger sends them.
func BenchmarkStoreHundred(b *testing.B) {
	j := open(b, b.TempDir(), 1)
	for b.Loop() {
		entries := make([]Entry, 100)
		for i := range entries {
			entries[i] = j.reading(b, "A", noon, 7)
		}
		if _, err := j.Store(context.Background(), entries...); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkVerifyThousand(b *testing.B) {
	j := open(b, b.TempDir(), 1)
	for range 10 {
		entries := make([]Entry, 100)
		for i := range entries {
			entries[i] = j.reading(b, "A", noon, 7)
		}
		store(b, j, entries...)
	}
	for b.Loop() {
		if f, err := j.Verify(context.Background()); err != nil || !f.OK() {
			b.Fatal(f, err)
		}
	}
}
