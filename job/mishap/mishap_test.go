package mishap

import (
	"strings"
	"testing"

	"aerosteep/wording"
)

var readers = []wording.Reader{{Language: wording.English}, {Language: wording.Spanish}}

// Every card says how it is known, at least two things to do now, and what comes
// after, in both languages and not twice the same.
func TestEveryCardIsWhole(t *testing.T) {
	if len(Cards) != 29 {
		t.Errorf("%d cards, not the 22 stories of the trade and the 7 beside them", len(Cards))
	}
	for _, r := range readers {
		titles := map[string]string{}
		for _, c := range Cards {
			title := c.Title().For(r)
			if titles[title] != "" {
				t.Errorf("%s and %s are called alike", c.ID, titles[title])
			}
			titles[title] = c.ID
			if len(c.Steps()) < 2 || c.Signs().For(r) == "" || c.After().For(r) == "" {
				t.Errorf("%s is not whole", c.ID)
			}
		}
	}
}

// What can kill is said where it can: carbon monoxide of a generator (US Consumer
// Product Safety Commission: outdoors only, 20 ft from openings), chloramine and
// chlorine gas of mixed cleaners (US EPA), never a hand into live water.
func TestDangersAreNamed(t *testing.T) {
	for id, words := range map[string][]string{
		"power-cut":        {"carbon monoxide", "outdoors"},
		"mixed-cleaners":   {"poison"},
		"back-siphon":      {"unplug"},
		"splash-or-breath": {"doctor"},
		"drunk":            {"poison", "doctor"},
		"spill-near-water": {"downhill"},
		"hygiene-failed":   {"apart"},
	} {
		c, known := Find(id)
		if !known || !c.Danger {
			t.Fatalf("%s is no danger", id)
		}
		all := ""
		for _, step := range c.Steps() {
			all += strings.ToLower(step.For(readers[0])) + " "
		}
		for _, word := range words {
			if !strings.Contains(all, word) {
				t.Errorf("%s does not speak of %s: %s", id, word, all)
			}
		}
	}
}

func TestLookedFor(t *testing.T) {
	c, _ := Find("foam-over")
	if !c.Matches("Foam", readers[0]) || !c.Matches("espuma", readers[1]) || c.Matches("herbicide", readers[0]) {
		t.Error("the card of foam is not found by its word, or by another's")
	}
}
