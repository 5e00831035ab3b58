package holding

import (
	"encoding/json"
	"slices"
	"sort"
	"strings"
	"time"

	"aerosteep/record/journal"
)

// told is one entry of the state: what it says and when it was written down.
type told struct {
	ID       string          `json:"id"`
	Kind     string          `json:"kind"`
	At       time.Time       `json:"at"`
	Recorded time.Time       `json:"recorded"`
	Body     json.RawMessage `json:"body"`
}

// before orders what was written down: later words count over earlier ones,
// in whatever order they arrived.
func (t told) before(o told) bool {
	if !t.Recorded.Equal(o.Recorded) {
		return t.Recorded.Before(o.Recorded)
	}
	return t.ID < o.ID
}

// state is what the entries add up to. It does not depend on the order in
// which they were applied.
type state struct {
	Told     map[string][]told `json:"told"`     // by subject, as written down
	Replaced map[string]bool   `json:"replaced"` // ids of entries that another one corrects
}

func newState() state { return state{Told: map[string][]told{}, Replaced: map[string]bool{}} }

// kept are the kinds that the state is made of.
var kept = []string{journal.Setup, journal.Start, journal.End, journal.Test, journal.Stock}

// apply adds an entry to the state. An entry that it already has changes
// nothing.
func (s *state) apply(e journal.Entry) {
	if e.Replaces != nil {
		s.Replaced[*e.Replaces] = true
	}
	if !slices.Contains(kept, e.Kind) {
		return
	}
	t := told{e.ID, e.Kind, e.Time(), e.Recorded(), e.Body}
	list := s.Told[e.Subject]
	i := sort.Search(len(list), func(i int) bool { return !list[i].before(t) })
	if i < len(list) && list[i].ID == t.ID {
		return
	}
	s.Told[e.Subject] = slices.Insert(list, i, t)
}

// standing are the entries about a subject that nothing corrects, of the kinds
// asked for, in order.
func (s *state) standing(subject string, kinds ...string) []told {
	var list []told
	for _, t := range s.Told[subject] {
		if !s.Replaced[t.ID] && slices.Contains(kinds, t.Kind) {
			list = append(list, t)
		}
	}
	return list
}

// last is the last entry of a kind about a subject.
func (s *state) last(subject, kind string) (told, bool) {
	list := s.standing(subject, kind)
	if len(list) == 0 {
		return told{}, false
	}
	return list[len(list)-1], true
}

// subjects are all subjects of a table, in the order in which they were first
// written down: the order of the file they came from.
func (s *state) subjects(table string) []string {
	var found []string
	for subject := range s.Told {
		if what, _, _ := strings.Cut(subject, ":"); what == table {
			found = append(found, subject)
		}
	}
	sort.Slice(found, func(i, j int) bool { return s.Told[found[i]][0].before(s.Told[found[j]][0]) })
	return found
}
