package wording_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"aerosteep/wording"
)

var placeName = regexp.MustCompile(`\{([^}|]+)`)

func places(s string) []string {
	var names []string
	for _, m := range placeName.FindAllStringSubmatch(s, -1) {
		if !slices.Contains(names, m[1]) {
			names = append(names, m[1])
		}
	}
	slices.Sort(names)
	return names
}

// Both languages say the same thing: neither is empty, both have the same
// places.
func TestLanguagesAgree(t *testing.T) {
	for _, key := range wording.Keys() {
		pair, _ := wording.Of(key)
		if strings.TrimSpace(pair.English) == "" || strings.TrimSpace(pair.Spanish) == "" {
			t.Errorf("%s: a language is empty", key)
		}
		if en, es := places(pair.English), places(pair.Spanish); !slices.Equal(en, es) {
			t.Errorf("%s: English has the places %v, Spanish %v", key, en, es)
		}
	}
}

// Every key that the code names has a sentence.
func TestEveryNamedSentenceExists(t *testing.T) {
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			call, isCall := n.(*ast.CallExpr)
			if !isCall || len(call.Args) == 0 {
				return true
			}
			if selector, ok := call.Fun.(*ast.SelectorExpr); !ok || selector.Sel.Name != "Say" && selector.Sel.Name != "Caution" {
				return true
			}
			literal, isLiteral := call.Args[0].(*ast.BasicLit)
			if !isLiteral || literal.Kind != token.STRING {
				return true
			}
			if key, _ := strconv.Unquote(literal.Value); !wording.Known(key) {
				t.Errorf("%s names the sentence %q, which no table has", path, key)
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestPlaces(t *testing.T) {
	spanish := wording.Reader{Language: wording.Spanish, Units: wording.Metric}
	for _, c := range []struct{ got, want string }{
		{wording.Number(7.4, 3, spanish), "7,4"},
		{wording.Whole(12345, spanish), "12\u00a0345"},
		{wording.Fixed(-0.04, 1, spanish), "0,0"},
		{wording.Fixed(-3, 1, spanish), "−3,0"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}
