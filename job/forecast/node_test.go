//go:build node && !js

package forecast

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestSameBitsInWebAssembly runs the golden forecasts as WebAssembly under
// node: the page and the program must say the same to the last bit, and the
// goldens that both are compared with are the same files.
func TestSameBitsInWebAssembly(t *testing.T) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	engine := filepath.Join(t.TempDir(), "forecast.wasm")
	build := exec.Command("go", "test", "-c", "-o", engine, ".")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	start := filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec_node.js")
	run := exec.Command("node", "--stack-size=8192", start, engine, "-test.v", "-test.run=^(TestDigitsEverywhere|TestNamedCases)$")
	// node's start file hands over no more than 8 KB of environment.
	run.Env = []string{"PATH=" + os.Getenv("PATH")}
	out, err := run.CombinedOutput()
	if err != nil {
		t.Fatalf("node is needed for this test: %v\n%s", err, out)
	}
	for _, name := range []string{"TestDigitsEverywhere", "TestNamedCases"} {
		if !strings.Contains(string(out), "--- PASS: "+name) {
			t.Errorf("%s did not run under node:\n%s", name, out)
		}
	}
}
