package report

import (
	"sort"
	"strings"

	"aerosteep/wording"
)

// sentence is an entry in one line, said when the reader is known.
type sentence struct {
	kind string
	body said
}

// Speak puts the kind first, then each value with its unit. The tallies of
// single fields are left out: their sum stands beside them.
func (l sentence) Speak(r wording.Reader) string {
	keys := make([]string, 0, len(l.body))
	for key := range l.body {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	parts := []string{}
	for _, key := range keys {
		switch v := l.body[key].(type) {
		case string:
			if key != "tally" && v != "" {
				parts = append(parts, wordOf(key, v, r))
			}
		case float64:
			parts = append(parts, Label(key, r)+" "+Spoken(key, v, r))
		}
	}
	kind := wordOf("entry", l.kind, r)
	if len(parts) == 0 {
		return kind
	}
	return kind + ": " + strings.Join(parts, ", ")
}
