// Package mishap is what goes wrong and what to do in the next ten minutes: one
// card for each, with the signs it is known by, the steps in their order and
// what to do once it is over. Its ids are the causes that a batch may end by.
//
// What stands on the cards is common practice, but where a card names a source;
// local codes, labels, poison centres and doctors come first.
package mishap

import (
	"fmt"
	"strings"

	"aerosteep/wording"
)

// Card is one thing that goes wrong.
type Card struct {
	ID     string
	Danger bool // somebody may be hurt: told before everything else
	Batch  bool // a batch may end by it
}

// Cards are in the order in which a shed meets them: what cannot wait first.
var Cards = []Card{
	{"power-cut", true, true}, {"pump-failed", false, true}, {"oxygen-crash", false, true}, {"foam-over", false, true},
	{"back-siphon", true, true}, {"mixed-cleaners", true, false}, {"splash-or-breath", true, false}, {"drunk", true, false},
	{"spill-near-water", true, true}, {"wrong-bed", true, true}, {"rain-on-spray", false, false}, {"overload", true, false},
	{"too-much-food", false, true}, {"doubtful-smell", false, true}, {"droppings", true, true}, {"chlorine", false, true},
	{"unfinished", false, true}, {"stale", true, true}, {"clogged", false, false}, {"wrong-dose", false, false},
	{"weather-missed", false, true}, {"wrong-site", false, false}, {"meter-wrong", false, false}, {"film", false, true},
	{"herbicide-tank", true, true}, {"herbicide-compost", false, true}, {"hygiene-failed", true, true}, {"lab-failed", false, true},
	{"paper-lost", false, false},
}

// Find is the card of an id.
func Find(id string) (Card, bool) {
	for _, c := range Cards {
		if c.ID == id {
			return c, true
		}
	}
	return Card{}, false
}

// Causes are the ids that a batch may end by.
func Causes() []string {
	var ids []string
	for _, c := range Cards {
		if c.Batch {
			ids = append(ids, c.ID)
		}
	}
	return ids
}

// Title names the card.
func (c Card) Title() wording.Text { return c.say("") }

// Signs are what it is known by.
func (c Card) Signs() wording.Text { return c.say(".signs") }

// Steps are what to do now, in order.
func (c Card) Steps() []wording.Text {
	var steps []wording.Text
	for i := 1; wording.Known(fmt.Sprintf("mishap.%s.%d", c.ID, i)); i++ {
		steps = append(steps, c.say(fmt.Sprintf(".%d", i)))
	}
	return steps
}

// After is what to do once it is over, so that it does not come again.
func (c Card) After() wording.Text { return c.say(".after") }

func (c Card) say(part string) wording.Text { return wording.Say("mishap." + c.ID + part) }

// Matches tells whether a card speaks of what somebody looks for.
func (c Card) Matches(looked string, r wording.Reader) bool {
	all := []string{c.Title().For(r), c.Signs().For(r)}
	for _, step := range c.Steps() {
		all = append(all, step.For(r))
	}
	text := strings.ToLower(strings.Join(all, " "))
	for _, word := range strings.Fields(strings.ToLower(looked)) {
		if !strings.Contains(text, word) {
			return false
		}
	}
	return true
}
