package jobfile

import (
	"sort"
	"strconv"
	"strings"
)

// shape is what a value of the file looks like before anything is known of
// what it should be.
type shape int

const (
	textShape shape = iota
	wholeShape
	decimalShape
	boolShape
	momentShape // a time with or without offset, or a date
	listShape
	tableShape
)

// value is one value of the file with the line it stands on.
type value struct {
	line  int
	shape shape
	text  string // as it was typed, without quotation marks
	list  []*value
	table *table
}

// table is a table of the file: its keys in the order they were written.
type table struct {
	line  int
	keys  []pair
	index map[string]int // where in keys a name stands
}

// pair is one key of a table with its value.
type pair struct {
	name  string
	line  int
	value *value
}

func (t *table) get(name string) *value {
	if i, known := t.index[name]; known {
		return t.keys[i].value
	}
	return nil
}

func (t *table) add(name string, line int, v *value) {
	if t.index == nil {
		t.index = map[string]int{}
	}
	t.index[name] = len(t.keys)
	t.keys = append(t.keys, pair{name, line, v})
}

// given is a value as a message shows it: short, on one line.
func (v *value) given() string {
	switch v.shape {
	case listShape:
		parts := make([]string, len(v.list))
		for i, item := range v.list {
			parts[i] = item.given()
		}
		return shorten("[" + strings.Join(parts, ", ") + "]")
	case tableShape:
		parts := make([]string, len(v.table.keys))
		for i, p := range v.table.keys {
			parts[i] = p.name + " = " + p.value.given()
		}
		return shorten("{" + strings.Join(parts, ", ") + "}")
	}
	return shorten(v.text)
}

// shorten keeps a message on one readable line, whatever was typed.
func shorten(s string) string {
	s = strings.Join(strings.Fields(strings.ToValidUTF8(s, "?")), " ")
	const most = 60
	if runes := []rune(s); len(runes) > most {
		return string(runes[:most-1]) + "…"
	}
	return s
}

// number reads a whole or decimal value.
func (v *value) number() (float64, bool) {
	if v.shape != wholeShape && v.shape != decimalShape {
		return 0, false
	}
	f, err := strconv.ParseFloat(strings.ReplaceAll(v.text, "_", ""), 64)
	return f, err == nil
}

// lines finds the line of a byte offset.
type lines []int

func linesOf(text []byte) lines {
	starts := lines{0}
	for i, c := range text {
		if c == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

func (l lines) at(offset int) int {
	return sort.Search(len(l), func(i int) bool { return l[i] > offset })
}
