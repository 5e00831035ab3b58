package journal

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// The test binary is also the program that gets killed: with this variable set
// it writes entries into a folder for as long as it lives.
const writerFolder = "AEROSTEEP_TEST_WRITER"

// A longer run sets this variable to the number of kills.
const killsWanted = "AEROSTEEP_TEST_KILLS"

func TestMain(m *testing.M) {
	if folder := os.Getenv(writerFolder); folder != "" {
		writeUntilKilled(folder)
	}
	os.Exit(m.Run())
}

// writeUntilKilled stores entries, one or several at once, and prints the id
// of each after Store has acknowledged it.
func writeUntilKilled(folder string) {
	means := Means{Now: time.Now, Random: rand.NewChaCha8([32]byte{byte(os.Getpid()), byte(os.Getpid() >> 8), byte(time.Now().UnixNano())})}
	j, err := Open(context.Background(), folder, means)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	for n := 0; ; n++ {
		var entries []Entry
		for range 1 + n%3 {
			id, _ := j.NewID()
			entries = append(entries, Entry{ID: id, Kind: Note, At: means.Now().Format(time.RFC3339), Body: []byte(`{"text":"still here"}`)})
		}
		if _, err := j.Store(context.Background(), entries...); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		for _, e := range entries {
			fmt.Println(e.ID)
		}
	}
}

// Two programs write into one folder at once and are killed at random: every
// entry that was acknowledged is there, and the chain is whole.
func TestNothingAcknowledgedIsLostWhenKilled(t *testing.T) {
	kills := 10
	if n, err := strconv.Atoi(os.Getenv(killsWanted)); err == nil {
		kills = n
	}
	folder := t.TempDir()
	acknowledged := map[string]bool{}
	random := rand.New(rand.NewPCG(1, 2))
	// On a busy machine a writer may be killed before its first entry: then go
	// on, and wait longer.
	for round := 0; round < kills || len(acknowledged) < kills && round < 20*kills; round++ {
		first, second := startWriter(t, folder), startWriter(t, folder)
		patience := time.Duration(1 + round/kills)
		time.Sleep(patience * time.Duration(20+random.IntN(120)) * time.Millisecond)
		first.kill(acknowledged)
		second.kill(acknowledged)
	}
	j := open(t, folder, 1)
	if said := problems(t, j); said != "" {
		t.Errorf("verify: %s", said)
	}
	for id := range acknowledged {
		if _, found, err := j.Find(context.Background(), id); !found || err != nil {
			t.Errorf("the acknowledged entry %s is lost: %v", id, err)
		}
	}
	if len(acknowledged) < kills {
		t.Errorf("only %d entries were acknowledged in %d runs", len(acknowledged), kills)
	}
	t.Logf("%d kills of two writers, %d acknowledged entries, all there", kills, len(acknowledged))
}

type writer struct {
	cmd *exec.Cmd
	out io.ReadCloser
}

func startWriter(t *testing.T, folder string) writer {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), writerFolder+"="+folder)
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	return writer{cmd, out}
}

// kill ends the writer without warning and notes what it had acknowledged.
func (w writer) kill(acknowledged map[string]bool) {
	w.cmd.Process.Kill()
	lines := bufio.NewScanner(w.out)
	for lines.Scan() {
		if isUUIDv7(lines.Text()) { // the last line may be cut short
			acknowledged[lines.Text()] = true
		}
	}
	w.cmd.Wait()
}

func TestFullDiskRefusesAndKeepsWhatIsThere(t *testing.T) {
	j := five(t)
	// SQLite answers a file that may not grow as it answers a full disk.
	if _, err := j.writer.Exec(`PRAGMA max_page_count = 1`); err != nil {
		t.Fatal(err)
	}
	big := j.reading(t, "A", noon, 7)
	big.Body = []byte(`{"note":"` + strings.Repeat("long ", 20_000) + `"}`)
	_, err := j.Store(context.Background(), big)
	var trouble *Trouble
	if !errors.As(err, &trouble) || trouble.What.Key != "journal.trouble.full" {
		t.Errorf("a full disk is told as %v", err)
	}
	if n, err := j.Size(context.Background()); n != 5 || err != nil {
		t.Errorf("%d entries are left, %v", n, err)
	}
	if said := problems(t, j); said != "" {
		t.Error(said)
	}
}

func TestFolderThatCannotBe(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := Open(context.Background(), filepath.Join(file, "data"), steady(1))
	var trouble *Trouble
	if !errors.As(err, &trouble) {
		t.Errorf("got %v", err)
	}
}

func TestFileThatIsNoJournal(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, File), []byte("Dear diary, today the drum foamed over. It smelled of yeast and hope."), 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := Open(context.Background(), folder, steady(1))
	var trouble *Trouble
	if !errors.As(err, &trouble) || trouble.What.Key != "journal.trouble.damaged" {
		t.Errorf("got %v", err)
	}
}

// A folder that is left for reading: what was stored can be read, and storing
// says why not.
func TestFileOpenedForReadingOnly(t *testing.T) {
	from := five(t)
	from.Close()
	j := &Journal{path: from.path, now: steady(1).Now}
	if err := j.openToRead(context.Background()); err != nil {
		t.Fatal(err)
	}
	defer j.Close()
	j.cannot = troubled(os.ErrPermission, j.path)
	if found, err := j.List(context.Background(), Wanted{}); len(found) != 5 || err != nil {
		t.Errorf("%d entries, %v", len(found), err)
	}
	if _, err := j.Store(context.Background(), Entry{Kind: Note}); err == nil {
		t.Error("it stored something")
	}
}

func TestBackupAndRestore(t *testing.T) {
	j := five(t)
	ctx := context.Background()
	file := filepath.Join(t.TempDir(), "backup of the shed.db")
	for range 2 { // the second takes the place of the first
		if err := j.Backup(ctx, file); err != nil {
			t.Fatal(err)
		}
	}
	text := export(t, j)
	lost := j.reading(t, "A", noon, 5)
	store(t, j, lost)

	fresh := open(t, t.TempDir(), 7)
	if _, err := fresh.Restore(ctx, file, false); err != nil {
		t.Fatal(err)
	}
	if got := export(t, fresh); got != text {
		t.Error("the restored journal exports something else")
	}
	store(t, fresh, fresh.reading(t, "B", noon, 8))
	// What was stored after the backup can still be brought back.
	if n, why := importAll(t, fresh, export(t, j)); n[Stored] != 1 || n[AlreadyStored] != 5 {
		t.Errorf("%v %v", n, why)
	}
	if said := problems(t, fresh); said != "" {
		t.Error(said)
	}
}

func TestRestoreKeepsTheOldOneBeside(t *testing.T) {
	ctx := context.Background()
	file := filepath.Join(t.TempDir(), "backup.db")
	if err := five(t).Backup(ctx, file); err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	j, other := open(t, folder, 5), open(t, folder, 6)
	store(t, j, j.reading(t, "Z", noon, 3))
	if _, err := j.Restore(ctx, file, false); err == nil {
		t.Fatal("it replaced a journal that is not empty")
	}
	kept, err := j.Restore(ctx, file, true)
	if err != nil || kept == "" {
		t.Fatal(kept, err)
	}
	// Whoever has the folder open sees the restored journal and can go on.
	if n, err := other.Size(ctx); n != 5 || err != nil {
		t.Errorf("the other program sees %d entries, %v", n, err)
	}
	store(t, other, other.reading(t, "B", noon, 8))
	if said := problems(t, other); said != "" {
		t.Error(said)
	}
	old, err := openBackup(kept)
	if err != nil {
		t.Fatal(err)
	}
	defer old.Close()
	var n int
	if err := old.QueryRow(`SELECT COUNT(*) FROM entries WHERE subject = 'batch:Z'`).Scan(&n); n != 1 || err != nil {
		t.Errorf("the old journal beside holds %d of its entries, %v", n, err)
	}
}

func TestBackupReplacesNothingElse(t *testing.T) {
	j := five(t)
	letter := filepath.Join(t.TempDir(), "letter.txt")
	if err := os.WriteFile(letter, []byte("do not lose me"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, to := range []string{letter, j.path, t.TempDir()} {
		if err := j.Backup(context.Background(), to); err == nil {
			t.Errorf("a backup took the place of %s", to)
		}
	}
}
