package recipe

import (
	"strings"

	"aerosteep/source"
	"aerosteep/wording"
)

// Myth is something that is repeated about brewing and does not hold. A user
// whose words show it gets one short note, with who says otherwise.
type Myth struct {
	Key    string
	Source source.Source
	shown  [][]string // any of these sets of word stems shows it
}

// Note is the short note.
func (m Myth) Note() wording.Text { return wording.Say("recipe.myth." + m.Key) }

// Myths are those that a user's words can show.
var Myths = []Myth{
	{"foam", source.CommonPractice, [][]string{{"foam", "ready"}, {"espuma", "list"}}},
	{"chloramine-stands", source.AWWAFieldGuide, [][]string{{"chloramine", "stand"}, {"chloramine", "bubbl"}, {"chloramine", "overnight"}, {"cloramina", "repos"}, {"cloramina", "burbuj"}}},
	{"more-molasses", source.Duffy2004, [][]string{{"more molasses"}, {"más melaza"}}},
	{"bad-smell", source.CommonPractice, [][]string{{"smell", "air it"}, {"stink", "air it"}, {"huele mal", "airear"}}},
	{"no-overdose", source.CommonPractice, [][]string{{"cannot", "overdose"}, {"can't", "overdose"}, {"no", "sobredosis"}}},
	{"keeps-months", source.CommonPractice, [][]string{{"keep", "month"}, {"store", "month"}, {"guarda", "meses"}}},
	{"aerobic-safe", source.Ingram2007, [][]string{{"aerobic", "no pathogen"}, {"aerobic", "pathogen-free"}, {"aeróbico", "sin patógenos"}}},
	{"fixed-ratio", source.Wang2019, [][]string{{"ratio", "1:100"}, {"ratio", "1:1000"}, {"relación", "1:100"}}},
	{"sulphured", source.CommonPractice, [][]string{{"unsulphured"}, {"unsulfured"}, {"sin azufre"}}},
}

// MythsIn finds the myths that a text shows: a note, a log entry, a question.
func MythsIn(text string) []Myth {
	text = strings.ToLower(text)
	var found []Myth
	for _, m := range Myths {
		if m.in(text) {
			found = append(found, m)
		}
	}
	return found
}

func (m Myth) in(text string) bool {
	for _, stems := range m.shown {
		all := true
		for _, stem := range stems {
			all = all && strings.Contains(text, stem)
		}
		if all {
			return true
		}
	}
	return false
}
