package aerosteep_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const module = "aerosteep/"

// floors are the storeys from the cellar up. A package imports only floors
// below its own; rooms of one floor meet only where rooms or siblings say so.
var floors = [][]string{
	{"wording"}, {"fault", "source"}, {"quantity"}, {"numeric", "table"},
	{"science"}, {"job"}, {"worksheet"}, {"examples"}, {"record"}, {"face"}, {"cmd"},
}

// jobRooms are the rooms of job in working order: a room imports only those
// before it.
var jobRooms = []string{"ground", "recipe", "rig", "bench", "hygiene", "application", "cost", "mishap", "jobfile", "forecast", "plan"}

// recordRooms likewise.
var recordRooms = []string{"journal", "feed", "intake", "holding", "report"}

// siblings are the rooms of science that need another one.
var siblings = map[string][]string{
	"air": {"water"}, "oxygen": {"water"}, // water carries the air: its density
	"heat": {"weather"}, // evaporation into the bubbles needs moist air
}

// pureFloors are promised to importers: what they need is handed in.
var pureFloors = []string{"wording", "fault", "source", "quantity", "numeric", "table", "science", "job", "worksheet"}

var forbidden = []string{"os", "os/exec", "net", "net/http", "database/sql", "log", "log/slog", "text/template", "html/template"}

// source is one Go file of the house that is not a test.
type sourceFile struct {
	path string
	file *ast.File
}

// sources reads the files itself: a test that shells out is cached and does
// not see a change.
func sources(t *testing.T) []sourceFile {
	t.Helper()
	var all []sourceFile
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") || strings.HasPrefix(path, "tools/") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		all = append(all, sourceFile{filepath.ToSlash(path), file})
		return err
	})
	if err != nil || len(all) < 10 {
		t.Fatalf("read %d files: %v", len(all), err)
	}
	return all
}

func (s sourceFile) imports() []string {
	var paths []string
	for _, spec := range s.file.Imports {
		paths = append(paths, strings.Trim(spec.Path.Value, `"`))
	}
	return paths
}

func floor(path string) int {
	top, _, _ := strings.Cut(path, "/")
	return slices.IndexFunc(floors, func(rooms []string) bool { return slices.Contains(rooms, top) })
}

// room is the second step of a path: the room on its floor.
func room(path string) string {
	parts := strings.Split(path, "/")
	if len(parts) < 2 || strings.HasSuffix(parts[1], ".go") {
		return ""
	}
	return parts[1]
}

func TestImportsGoDown(t *testing.T) {
	for _, s := range sources(t) {
		for _, path := range s.imports() {
			imported, ours := strings.CutPrefix(path, module)
			if !ours {
				continue
			}
			if above := floor(imported) > floor(s.path); above || floor(imported) < 0 {
				t.Errorf("%s imports %s, which is on a floor above it or on none", s.path, imported)
			}
			if reason := sideways(s.path, imported); reason != "" {
				t.Errorf("%s imports %s: %s", s.path, imported, reason)
			}
		}
	}
}

// sideways judges an import within one floor.
func sideways(path, imported string) string {
	from, to := room(path), room(imported)
	top, _, _ := strings.Cut(path, "/")
	importedTop, _, _ := strings.Cut(imported, "/")
	if top != importedTop || from == to {
		return ""
	}
	switch top {
	case "science":
		if !slices.Contains(siblings[from], to) {
			return "science rooms meet only where floors_test.go lists it"
		}
	case "job":
		if slices.Index(jobRooms, to) >= slices.Index(jobRooms, from) {
			return "a room of job imports only those before it"
		}
	case "record":
		if slices.Index(recordRooms, to) >= slices.Index(recordRooms, from) {
			return "a room of record imports only those before it"
		}
	}
	return ""
}

func TestFacesDoNotReachSQL(t *testing.T) {
	for _, s := range sources(t) {
		if strings.HasPrefix(s.path, "face/") && slices.Contains(s.imports(), "database/sql") {
			t.Errorf("%s imports database/sql: a face asks record", s.path)
		}
	}
}

func TestPureFloorsStayPure(t *testing.T) {
	for _, s := range sources(t) {
		top, _, _ := strings.Cut(s.path, "/")
		if !slices.Contains(pureFloors, top) {
			continue
		}
		for _, path := range s.imports() {
			if slices.Contains(forbidden, path) || strings.HasPrefix(path, "golang.org/x/text") {
				t.Errorf("%s imports %s, which a pure floor may not", s.path, path)
			}
		}
		ast.Inspect(s.file, func(n ast.Node) bool {
			if call := impureCall(n); call != "" {
				t.Errorf("%s calls %s: it must be handed in", s.path, call)
			}
			return true
		})
	}
}

// impureCall finds the clock and unseeded chance.
func impureCall(n ast.Node) string {
	selector, isSelector := n.(*ast.SelectorExpr)
	if !isSelector {
		return ""
	}
	pkg, isName := selector.X.(*ast.Ident)
	if !isName || pkg.Obj != nil {
		return ""
	}
	switch pkg.Name {
	case "time":
		if slices.Contains([]string{"Now", "Since", "Until", "Sleep", "After", "Tick"}, selector.Sel.Name) {
			return "time." + selector.Sel.Name
		}
	case "rand":
		if !slices.Contains([]string{"New", "NewPCG", "NewChaCha8", "Rand", "Source", "PCG", "ChaCha8", "Zipf", "NewZipf"}, selector.Sel.Name) {
			return "rand." + selector.Sel.Name
		}
	}
	return ""
}

// drawers are names that say nothing about what lies inside.
var drawers = []string{"util", "utils", "common", "helper", "helpers", "model", "models", "types", "misc"}

func TestNoDrawersAndNoLongFiles(t *testing.T) {
	for _, s := range sources(t) {
		for _, part := range strings.Split(strings.TrimSuffix(s.path, ".go"), "/") {
			if slices.Contains(drawers, part) {
				t.Errorf("%s: %q says nothing about what lies inside", s.path, part)
			}
		}
	}
	for _, path := range handWritten(t) {
		if n := lines(t, path); n > 600 {
			t.Errorf("%s has %d lines; split it by topic", path, n)
		}
	}
}
