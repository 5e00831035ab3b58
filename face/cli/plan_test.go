package cli_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"aerosteep/face/cli"
)

// plain runs the program as the terminal does, with its own clock.
func plain(args ...string) (status int, out, complaint string) {
	var stdout, stderr bytes.Buffer
	status = cli.Run(args, cli.Terminal{
		In: strings.NewReader(""), Out: &stdout, Err: &stderr,
		Now:      func() time.Time { return time.Date(2026, 5, 11, 15, 0, 0, 0, time.UTC) },
		ReadFile: os.ReadFile, Getenv: func(string) string { return "" },
	})
	return status, stdout.String(), stderr.String()
}

const week = "../../examples/ternhollow/week.toml"

func TestCheckFileTellsAllAtOnce(t *testing.T) {
	name := filepath.Join(t.TempDir(), "bad.toml")
	if err := os.WriteFile(name, []byte("[[bed]]\nname = \"A\"\naera = \"1 m2\"\nstage = \"vegetativ\"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	status, out, complaint := plain("check-file", name)
	if status != 2 || out != "" || !strings.Contains(complaint, name+":3: bed.aera: ") || !strings.Contains(complaint, name+":4: bed.stage: ") {
		t.Errorf("%d %q %q", status, out, complaint)
	}
	status, out, complaint = plain("check-file", name, "--json")
	var answer struct {
		Problems []struct {
			Line    int
			Key     string
			Nearest *string
		}
	}
	if err := json.Unmarshal([]byte(out), &answer); err != nil || status != 2 || complaint != "" {
		t.Fatalf("%d %v %q %q", status, err, out, complaint)
	}
	if p := answer.Problems; len(p) != 2 || p[0].Line != 3 || p[0].Key != "bed.aera" || *p[0].Nearest != "area" || *p[1].Nearest != "vegetative" {
		t.Errorf("%+v", answer.Problems)
	}
	if status, out, _ := plain("plan", name, "--json"); status != 2 || !strings.Contains(out, `"bed.aera"`) {
		t.Errorf("plan of a bad file: %d %q", status, out)
	}
	if status, out, _ := plain("check-file", week, "--json"); status != 0 || strings.TrimSpace(out) != `{"problems":[]}` {
		t.Errorf("a good file: %d %q", status, out)
	}
	if status, _, complaint := plain("check-file", "nowhere.toml"); status != 2 || !strings.Contains(complaint, "nowhere.toml") {
		t.Errorf("no file: %d %q", status, complaint)
	}
}

func TestPlanOnTheTerminal(t *testing.T) {
	calendar := filepath.Join(t.TempDir(), "week.ics")
	status, out, complaint := plain("plan", week, "--now", "2026-05-11 08:00", "--ics", calendar)
	if status != 0 || !strings.HasPrefix(out, "Begin ") || complaint != "" {
		t.Fatalf("%d %.200q %q", status, out, complaint)
	}
	if text, err := os.ReadFile(calendar); err != nil || !bytes.HasPrefix(text, []byte("BEGIN:VCALENDAR\r\n")) {
		t.Errorf("calendar: %v", err)
	}
	status, out, _ = plain("plan", week, "--now", "2026-05-11T08:00:00-07:00", "--json", "--lang", "es")
	var plan map[string]any
	if err := json.Unmarshal([]byte(out), &plan); err != nil || status != 0 {
		t.Fatalf("%d %v", status, err)
	}
	for _, key := range []string{"now", "holding", "needs", "batches", "runs", "hygiene", "unmet", "advice", "cautions", "sources"} {
		if plan[key] == nil {
			t.Errorf("no %s", key)
		}
	}
	if bed := plan["hygiene"].([]any)[0].(map[string]any); bed["bed"] != "Kale, east" || bed["allowed"] != "yes" || bed["rules_as_of"] == nil {
		t.Errorf("%v", bed)
	}
}

func TestPlanRefusals(t *testing.T) {
	for _, args := range [][]string{
		{"plan", week, "--now", "tomorrow"}, {"plan", week, "--now", "2026-03-08 02:30"}, {"plan", week, "--weather", "none.csv"},
		{"plan", week, "other.toml"}, {"plan", week, "--units", "cubits"},
	} {
		if status, out, complaint := plain(args...); status != 2 || out != "" || complaint == "" {
			t.Errorf("%v: %d %q %q", args, status, out, complaint)
		}
	}
	if status, _, _ := plain("plan", week, "--now", "2026-05-14T06:00:00-07:00", "--strict"); status != 3 {
		t.Errorf("--strict with wants that are too late: %d", status)
	}
	if status, _, complaint := plain("plan", week, "--now", "2026-05-11T08:00:00-07:00", "--ics", "/nowhere/x.ics"); status != 1 || complaint == "" {
		t.Errorf("a folder that is not there: %d %q", status, complaint)
	}
	if _, err := os.Stat("/nowhere"); !errors.Is(err, os.ErrNotExist) {
		t.Error("the folder was made")
	}
}

func TestSchemaIsJSON(t *testing.T) {
	status, out, _ := plain("schema")
	if status != 0 || !json.Valid([]byte(out)) || !strings.Contains(out, "json-schema.org/draft/2020-12") {
		t.Errorf("%d %.100q", status, out)
	}
}
