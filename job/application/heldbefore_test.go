package application

import (
	"strings"
	"testing"

	"aerosteep/wording"
)

// What nobody knows is treated as herbicide: another tank (common practice).
func TestWhatWasInIt(t *testing.T) {
	for held, usable := range map[HeldBefore]bool{"tea": true, "water": true, "copper": true, "oxidiser": true, "herbicide": false, "unknown": false, "": false} {
		text, use := held.Advice()
		if use != usable {
			t.Errorf("%q: usable %v", held, use)
		}
		said := text.For(wording.Reader{Language: wording.English})
		if !usable && !strings.Contains(said, "another tank") {
			t.Errorf("%q: %s", held, said)
		}
	}
}
