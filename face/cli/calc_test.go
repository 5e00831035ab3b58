package cli_test

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"
	"time"

	"aerosteep/face/cli"
	"aerosteep/worksheet/catalog"
)

// call runs the program as typed and returns what it printed.
func call(t *testing.T, args ...string) (out, errs string, status int) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	status = cli.Run(args, cli.Terminal{
		In: strings.NewReader(""), Out: &stdout, Err: &stderr,
		Now:      func() time.Time { return time.Date(2026, 5, 1, 12, 0, 0, 0, time.UTC) },
		ReadFile: os.ReadFile, Getenv: func(string) string { return "" },
	})
	return stdout.String(), stderr.String(), status
}

func TestConvertNegativeTemperature(t *testing.T) {
	out, errs, status := call(t, "calc", "convert", "-40 F", "--to", "C", "--json")
	var got struct{ Value float64 }
	if err := json.Unmarshal([]byte(out), &got); err != nil || status != 0 || got.Value > -39.999999 || got.Value < -40.000001 {
		t.Fatalf("status %d, out %s, err %s", status, out, errs)
	}
}

// Every worksheet's help has its four heads, and its example answers.
func TestEveryHelpHasAWorkingExample(t *testing.T) {
	for _, sheet := range catalog.All() {
		out, errs, status := call(t, "calc", sheet.Name, "--help")
		for _, head := range []string{"Usage:", "\nExample:\n  $ aerosteep calc " + sheet.Name, "\nRange: ", "\nSource: "} {
			if !strings.Contains(out, head) {
				t.Errorf("%s: help lacks %q (status %d, %s)", sheet.Name, strings.TrimSpace(head), status, errs)
			}
		}
		if strings.Contains(out, "  aerosteep: ") || strings.Contains(out, "«") {
			t.Errorf("%s: the example does not work:\n%s", sheet.Name, out)
		}
	}
}

func TestUnknownWordsNameTheNearest(t *testing.T) {
	for _, c := range []struct {
		args    []string
		nearest string
	}{
		{[]string{"clac"}, "calc"},
		{[]string{"calc", "convrt"}, "convert"},
		{[]string{"calc", "convert", "2 qt", "--too", "mL"}, "--to"},
	} {
		_, errs, status := call(t, c.args...)
		if status != 2 || !strings.Contains(errs, c.nearest) {
			t.Errorf("%v: status %d, %s", c.args, status, errs)
		}
	}
}

// A file is named as it was typed, with or without a dot; a flag with its
// hyphens.
func TestAFileWithoutADotIsNoFlag(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.WriteFile("falling", []byte("seconds,air,do_mg_per_l\n0,1,8\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	_, errs, status := call(t, "calc", "uptake", "falling")
	if status != 2 || !strings.HasPrefix(errs, "aerosteep: falling: ") {
		t.Errorf("status %d: %s", status, errs)
	}
	if _, errs, _ = call(t, "calc", "saturation", "--temp", "192C"); !strings.HasPrefix(errs, "aerosteep: --temp: ") {
		t.Errorf("a flag reads %s", errs)
	}
}
