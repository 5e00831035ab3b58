// Package examples carries the example files that the help of a command reads,
// so that every worked call in it can be run on any machine.
package examples

import (
	"embed"
	"strings"
)

//go:embed all:*
var files embed.FS

// ReadFile reads an example by its name from the root of the repository:
// "examples/reaeration.csv".
func ReadFile(name string) ([]byte, error) {
	return files.ReadFile(strings.TrimPrefix(name, "examples/"))
}
