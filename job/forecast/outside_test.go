package forecast

import (
	"strings"
	"testing"

	"aerosteep/wording"
)

// An hour long after the start is refused in hours, with what to do.
func TestLongAfterItsStart(t *testing.T) {
	_, err := Run(Question{Setup: drum(), Now: 5000, Hours: 10, Members: 200})
	if err == nil || !strings.Contains(err.Error(), "0 to 336 h after the batch was started") {
		t.Errorf("it says %v", err)
	}
	if text := wording.Say("forecast.now.advice").For(wording.Reader{}); !strings.Contains(text, "--now") {
		t.Errorf("it advises %q", text)
	}
}
