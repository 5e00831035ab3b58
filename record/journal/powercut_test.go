package journal

import (
	"bytes"
	"context"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"testing"
	"time"
)

// sector is what a disk writes whole or not at all; older disks promise no more
// (SQLite, "Atomic Commit In SQLite", section 2, takes the same).
const sector = 512

// A longer run sets this variable to the number of cuts.
const cutsWanted = "AEROSTEEP_TEST_POWER_CUTS"

// disk is what lies on it: the files of a journal at one moment.
type disk map[string][]byte

// imageOf copies the files of a journal, without the shared memory, which does
// not outlive the machine.
func imageOf(t *testing.T, folder string) disk {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder, "*"))
	if err != nil {
		t.Fatal(err)
	}
	image := disk{}
	for _, name := range files {
		if filepath.Ext(name) == ".db-shm" || len(name) > 4 && name[len(name)-4:] == "-shm" {
			continue
		}
		content, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		image[filepath.Base(name)] = content
	}
	return image
}

// cut is what a power cut leaves of writes that were under way and not synced:
// each sector is as it was, as it was to be, or, at the file's new end, zero; and
// the file may not have grown yet.
func cut(before, after disk, random *rand.Rand) disk {
	left := disk{}
	for name, new := range after {
		old := before[name]
		grown := len(new)
		if len(new) > len(old) {
			grown = len(old) + random.IntN(len(new)-len(old)+1)
		}
		content := bytes.Clone(new[:grown])
		for at := 0; at < len(content); at += sector {
			end := min(at+sector, len(content))
			switch fate := random.IntN(3); {
			case at+sector <= len(old) && fate > 0:
				copy(content[at:end], old[at:end])
			case at >= len(old) && fate == 1:
				clear(content[at:end])
			}
		}
		left[name] = content
	}
	return left
}

// changed tells which files differ.
func changed(before, after disk) []string {
	var names []string
	for name, content := range after {
		if !bytes.Equal(before[name], content) {
			names = append(names, name)
		}
	}
	return names
}

// The power goes while an entry is being written: of the writes that no sync has
// confirmed, some reached the disk, some did not, some in part. Whatever was
// acknowledged before is there, what was not is there whole or not at all, and
// the chain holds.
func TestNothingAcknowledgedIsLostInAPowerCut(t *testing.T) {
	cuts := 25
	if n, err := strconv.Atoi(os.Getenv(cutsWanted)); err == nil {
		cuts = n
	}
	folder, random := t.TempDir(), rand.New(rand.NewPCG(3, 4))
	j := open(t, folder, 1)
	acknowledged := []string{}
	write := func() string {
		id, _ := j.NewID()
		text := bytes.Repeat([]byte("tea "), 1+random.IntN(900))
		e := Entry{ID: id, Kind: Note, At: time.Date(2026, 5, 12, 6, 0, 0, 0, time.UTC).Format(time.RFC3339), Body: []byte(`{"text":"` + string(text) + `"}`)}
		if _, err := j.Store(context.Background(), e); err != nil {
			t.Fatal(err)
		}
		return id
	}
	torn := 0
	for range cuts {
		for range 1 + random.IntN(4) {
			acknowledged = append(acknowledged, write())
		}
		before := imageOf(t, folder)
		underWay := write()
		after := imageOf(t, folder)
		if len(changed(before, after)) == 1 { // a checkpoint syncs between its files: not one step
			torn++
			survives(t, cut(before, after, random), acknowledged, underWay)
		}
		acknowledged = append(acknowledged, underWay)
	}
	if torn < cuts/2 {
		t.Errorf("only %d of %d cuts could be made", torn, cuts)
	}
}

// survives opens what the cut left, as after a start of the machine.
func survives(t *testing.T, left disk, acknowledged []string, underWay string) {
	t.Helper()
	folder := t.TempDir()
	for name, content := range left {
		if err := os.WriteFile(filepath.Join(folder, name), content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	j, err := Open(context.Background(), folder, Means{Now: time.Now, Random: rand.NewChaCha8([32]byte{9})})
	if err != nil {
		t.Fatalf("does not open: %v", err)
	}
	defer j.Close()
	if said := problems(t, j); said != "" {
		t.Errorf("verify: %s", said)
	}
	for _, id := range acknowledged {
		if _, found, err := j.Find(context.Background(), id); err != nil || !found {
			t.Fatalf("%s was acknowledged and is lost (%v)", id, err)
		}
	}
	if _, found, err := j.Find(context.Background(), underWay); err != nil {
		t.Errorf("what was under way shows half (found %v): %v", found, err)
	}
}
