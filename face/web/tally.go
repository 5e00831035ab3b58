package web

import (
	"strconv"
	"strings"
)

// tally is what was counted under the microscope as the keys that were
// pressed, in order: a letter for each thing seen, a stroke between fields.
// Undo takes the last key back, whatever it was.
type tally string

// The keys of the bench that stand for no group.
const (
	nextField = "|"
	undoKey   = "undo"
	saveKey   = "save"
)

// longestTally bounds what a page may send: a hundred fields of a hundred.
const longestTally = 20000

// group is one kind of living thing that is counted, with its key.
type group struct {
	key   string
	name  string // in wording: web.bench.group.<name>
	sheet string // the worksheet that makes a number of its counts
	flag  string // that sheet's flag for them
}

// groups are counted together under one objective, each with its own key.
// Strands are counted as crossings with the lines of the eyepiece grid.
var groups = []group{
	{"b", "bacteria", "field-count", "counts"},
	{"s", "hyphae", "hyphae", "intersections"},
	{"f", "flagellates", "field-count", "counts"},
	{"a", "amoebae", "field-count", "counts"},
	{"c", "ciliates", "field-count", "counts"},
	{"n", "nematodes", "field-count", "counts"},
}

// groupLetters are all keys of groups.
const groupLetters = "bsfacn"

// readTally takes a tally from a form; keys that the bench does not have are
// left out, for they cannot have been pressed.
func readTally(text string) tally {
	if len(text) > longestTally {
		text = text[:longestTally]
	}
	return tally(strings.Map(func(r rune) rune {
		if strings.ContainsRune(groupLetters+nextField, r) {
			return r
		}
		return -1
	}, text))
}

// press adds a key, or takes the last one back.
func (t tally) press(key string) tally {
	switch {
	case key == undoKey && t != "":
		return t[:len(t)-1]
	case key == nextField, len(key) == 1 && strings.Contains(groupLetters, key):
		if len(t) < longestTally {
			return t + tally(key)
		}
	}
	return t
}

// finished is the tally with its last field closed, if anything was seen in it.
func (t tally) finished() tally {
	if t == "" || strings.HasSuffix(string(t), nextField) {
		return t
	}
	return t + nextField
}

// fields are the keys of each field; the last one is still being counted.
func (t tally) fields() []string { return strings.Split(string(t), nextField) }

// field is the number of the field that is being counted, from 1.
func (t tally) field() int { return len(t.fields()) }

// here is how many of a group were seen in the field that is being counted.
func (t tally) here(g group) int {
	fields := t.fields()
	return strings.Count(fields[len(fields)-1], g.key)
}

// counts are a group's counts in the fields that are done.
func (t tally) counts(g group) []int {
	fields := t.fields()
	counts := make([]int, len(fields)-1)
	for i := range counts {
		counts[i] = strings.Count(fields[i], g.key)
	}
	return counts
}

// listed writes counts as a person and a worksheet read them: "12,15,9".
func listed(counts []int) string {
	words := make([]string, len(counts))
	for i, n := range counts {
		words[i] = strconv.Itoa(n)
	}
	return strings.Join(words, ",")
}

func sum(counts []int) (total int) {
	for _, n := range counts {
		total += n
	}
	return total
}
