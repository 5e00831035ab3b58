package cli_test

import (
	"os"
	"strings"
	"testing"
)

// The README's batch is what the program really prints.
func TestReadmeShowsRealOutput(t *testing.T) {
	content, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	const command = "$ aerosteep plan examples/pail.toml --now 2026-05-12T12:00:00-07:00\n"
	_, after, found := strings.Cut(string(content), command)
	if !found {
		t.Fatal("the README has lost its batch")
	}
	shown, _, _ := strings.Cut(after, "\n```")
	out, errs, status := call(t, "plan", "../../examples/pail.toml", "--now", "2026-05-12T12:00:00-07:00")
	if status != 0 {
		t.Fatalf("status %d: %s", status, errs)
	}
	if strings.TrimSpace(out) != strings.TrimSpace(shown) {
		t.Errorf("the README shows\n%s\n\nthe program prints\n%s", shown, out)
	}
}
