package jobfile_test

import (
	"strings"
	"testing"

	"aerosteep/job/jobfile"
	"aerosteep/wording"
)

// A bed whose sides cross has no area: the file is refused at its line.
func TestCornersThatCross(t *testing.T) {
	text := "form = 1\n[[bed]]\nname = \"Bow\"\ncorners = [[44.12, -123.05], [44.1203, -123.0496], [44.12, -123.0496], [44.1203, -123.05]]\n"
	_, problems := jobfile.Read([]byte(text), "bow.toml", jobfile.Whole)
	for _, p := range problems {
		if strings.Contains(p.Field, "corners") && p.Line > 0 && strings.Contains(p.What.For(wording.Reader{}), "cross") {
			return
		}
	}
	t.Errorf("crossing sides are not refused: %v", problems)
}
