package cli_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// in runs the program on a data folder.
func in(t *testing.T, folder string, args ...string) (out, errs string, status int) {
	t.Helper()
	return call(t, append(args, "--data", folder)...)
}

// good runs the program and expects it to be done.
func good(t *testing.T, folder string, args ...string) string {
	t.Helper()
	out, errs, status := in(t, folder, args...)
	if status != 0 {
		t.Fatalf("%v: status %d, %s%s", args, status, out, errs)
	}
	return out
}

// object runs the program with --json and reads what it prints.
func object(t *testing.T, folder string, args ...string) map[string]any {
	t.Helper()
	var got map[string]any
	out := good(t, folder, append(args, "--json")...)
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatalf("%v: %v in %s", args, err, out)
	}
	return got
}

const ternHollow = "../../examples/ternhollow/week.toml"

func TestLogShapes(t *testing.T) {
	folder := t.TempDir()
	good(t, folder, "load", ternHollow)
	got := object(t, folder, "log", "reading", "--batch", "D-114", "--do", "7.4 mg/L", "--temp", "19.2C", "--ph", "6.8", "--ec", "900 uS/cm",
		"--smell", "earthy", "--to-rim", "8 cm", "--note", "by the door", "--at", "2026-05-12T09:00:00-07:00", "--by", "R.K.", "--device", "shed-pc")
	entry := got["entry"].(map[string]any)
	body := entry["body"].(map[string]any)
	if got["id"] != entry["id"] || entry["kind"] != "reading" || entry["subject"] != "batch:D-114" || entry["by"] != "R.K." || entry["device"] != "shed-pc" ||
		entry["at"] != "2026-05-12T09:00:00-07:00" || entry["replaces"] != nil {
		t.Errorf("entry %v", entry)
	}
	for key, want := range map[string]any{"do_mg_per_l": 7.4, "temp_c": 19.2, "ph": 6.8, "ec_us_per_cm": 900.0, "smell": "earthy", "to_rim_cm": 8.0, "note": "by the door"} {
		if body[key] != want {
			t.Errorf("%s is %v, want %v", key, body[key], want)
		}
	}
	effect, told := got["effect"].(map[string]any)
	if !told || effect["text"] == "" {
		t.Fatalf("a reading of a living batch has the effect %v", got["effect"])
	}
	for _, key := range []string{"chance_before", "chance_after"} {
		if chance, is := effect[key].(float64); !is || chance < 0 || chance > 100 {
			t.Errorf("%s is %v", key, effect[key])
		}
	}
	if note := object(t, folder, "log", "note", "--text", "hello"); note["effect"] != nil {
		t.Errorf("a note has the effect %v", note["effect"])
	}
}

func TestCorrectAndList(t *testing.T) {
	folder := t.TempDir()
	good(t, folder, "load", ternHollow)
	wrong := object(t, folder, "log", "reading", "--batch", "D-114", "--do", "74 mg/L", "--at", "2026-05-12 09:00")["id"].(string)
	right := object(t, folder, "log", "correct", wrong, "--do", "7.4 mg/L")
	entry := right["entry"].(map[string]any)
	if entry["replaces"] != wrong || entry["kind"] != "reading" || entry["at"] != "2026-05-12T09:00:00-07:00" {
		t.Errorf("the correction is %v", entry)
	}
	list := object(t, folder, "log", "list", "--batch", "D-114", "--since", "2026-05-12")["entries"].([]any)
	if len(list) != 2 || list[0].(map[string]any)["replaced_by"] != right["id"] || list[1].(map[string]any)["replaced_by"] != nil {
		t.Errorf("the list is %v", list)
	}
	if _, errs, status := in(t, folder, "log", "correct", wrong, "--do", "7 mg/L"); status != 2 || !strings.Contains(errs, right["id"].(string)) {
		t.Errorf("a second correction: %d %s", status, errs)
	}
}

func TestEveryVerbOfLog(t *testing.T) {
	folder := t.TempDir()
	good(t, folder, "load", ternHollow)
	for _, args := range [][]string{
		{"start", "--batch", "D-115", "--vessel", "Pail", "--recipe", "Leafy", "--volume", "4 gal", "--temp", "60F"},
		{"event", "--batch", "D-115", "--event", "air-off"},
		{"event", "--batch", "D-115", "--event", "food molasses 20 mL"},
		{"count", "--batch", "D-115", "--bacteria", "120000000"},
		{"test", "--vessel", "Drum", "--kla20", "14 /h"},
		{"applied", "--bed", "Kale, east", "--batch", "D-115", "--tea", "2 gal", "--water", "8 gal", "--wind", "4 mph"},
		{"cleaned", "--vessel", "Drum", "--agent", "peroxide", "--dwell", "10 min"},
		{"stock", "--ingredient", "molasses", "--received", "5 kg", "--lot", "M-7"},
		{"harvest", "--bed", "Kale, east"},
		{"incident", "--text", "hose burst", "--volume", "5 gal", "--to-water", "40 m"},
		{"end", "--batch", "D-115", "--outcome", "part-used", "--cause", "rain"},
	} {
		got := object(t, folder, append([]string{"log"}, args...)...)
		if got["entry"].(map[string]any)["kind"] != args[0] {
			t.Errorf("%v made %v", args, got["entry"])
		}
	}
	if out := good(t, folder, "log", "list"); !strings.Contains(out, "hose burst") {
		t.Error("the list lacks the incident")
	}
}

func TestLogRefuses(t *testing.T) {
	folder := t.TempDir()
	good(t, folder, "load", ternHollow)
	for _, c := range []struct{ args, says string }{
		{"log reading --batch D-14 --do 7mg/L", "D-114"},
		{"log reading --batch D-114 --do 7", "--do"},
		{"log reading --batch D-114 --do=-7mg/L", "--do"},
		{"log reading --batch D-114 --temp NaN", "--temp"},
		{"log reading --batch D-114", "nothing was read"},
		{"log reading --do 7mg/L", "--batch"},
		{"log reading --batch D-114 --smell nice --do 7mg/L", "earthy"},
		{"log reading --batch D-114 --do 7mg/L --at 2026-03-08T02:30:00", "2026-03-08"},
		{"log event --batch D-114 --event air-of", "air-off"},
		{"log end --batch D-114 --outcome good", "discarded"},
		{"log moon", "moon"},
		{"log correct nothing --do 7mg/L", "no entry"},
		{"log reading --batch D-114 --oxygen 7mg/L", "--oxygen"},
		{"restore none.db", "none.db"},
		{"import", "file"},
	} {
		out, errs, status := in(t, folder, strings.Fields(c.args)...)
		if status != 2 || out != "" || !strings.Contains(errs, c.says) {
			t.Errorf("%s: status %d, %s%s", c.args, status, out, errs)
		}
	}
}

func TestLoadUnloadLoadOfTernHollow(t *testing.T) {
	folder := t.TempDir()
	if empty := good(t, folder, "unload"); empty != "form = 1\n" {
		t.Errorf("an empty holding unloads as %q", empty)
	}
	good(t, folder, "load", ternHollow)
	text := good(t, folder, "unload")
	file := filepath.Join(t.TempDir(), "unloaded.toml")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if got := object(t, folder, "load", file); got["changes"] != 0.0 {
		t.Errorf("loading it again makes %v changes", got["changes"])
	}
	if again := good(t, folder, "unload"); again != text {
		t.Error("unloaded again it is different")
	}
}

func TestExportImportBackupRestoreVerify(t *testing.T) {
	folder, other, third := t.TempDir(), t.TempDir(), t.TempDir()
	good(t, folder, "load", ternHollow)
	good(t, folder, "log", "reading", "--batch", "D-114", "--do", "7.4 mg/L")
	text := good(t, folder, "export")
	file := filepath.Join(t.TempDir(), "out.jsonl")
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	lines := strings.Count(text, "\n")
	if got := object(t, other, "import", file); got["stored"] != float64(lines) || got["refused"] != 0.0 || len(got["lines"].([]any)) != lines {
		t.Errorf("import: %v", got)
	}
	if again := good(t, other, "export"); again != text {
		t.Error("exported again it is different")
	}
	if got := object(t, other, "import", file); got["already_stored"] != float64(lines) {
		t.Errorf("import again: %v", got)
	}
	backup := filepath.Join(t.TempDir(), "b.db")
	good(t, folder, "backup", backup)
	good(t, third, "restore", backup)
	if again := good(t, third, "export"); again != text {
		t.Error("restored it is different")
	}
	if _, errs, status := in(t, third, "restore", backup); status != 2 || !strings.Contains(errs, "--replace") {
		t.Errorf("restore over a journal: %d %s", status, errs)
	}
	good(t, third, "restore", backup, "--replace")
	if got := object(t, third, "verify"); got["ok"] != true || got["entries"] != float64(lines) {
		t.Errorf("verify: %v", got)
	}
}

// One letter in what a stored entry says is changed in the file.
func TestVerifyFindsAChangedLetter(t *testing.T) {
	folder := t.TempDir()
	good(t, folder, "log", "note", "--text", "the drum smelled of earth")
	file := filepath.Join(folder, "journal.db")
	content, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	changed := bytes.Replace(content, []byte("smelled of earth"), []byte("smelled of death"), 1)
	if bytes.Equal(content, changed) {
		t.Fatal("the text is not in the file")
	}
	if err := os.WriteFile(file, changed, 0o600); err != nil {
		t.Fatal(err)
	}
	out, _, status := in(t, folder, "verify", "--json")
	var got map[string]any
	if err := json.Unmarshal([]byte(out), &got); err != nil || status != 1 || got["ok"] != false || len(got["problems"].([]any)) == 0 {
		t.Errorf("status %d, %s, %v", status, out, err)
	}
}

func TestDeviceIsMadeOncePerFolderAndIsNotTheHost(t *testing.T) {
	folder := t.TempDir()
	first := object(t, folder, "log", "note", "--text", "one")["entry"].(map[string]any)["device"].(string)
	second := object(t, folder, "log", "note", "--text", "two")["entry"].(map[string]any)["device"].(string)
	if first != second || !regexp.MustCompile(`^cli-[a-z]{4}$`).MatchString(first) {
		t.Errorf("devices %q and %q", first, second)
	}
}
