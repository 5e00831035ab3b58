package web

import (
	"strconv"
	"strings"
	"unicode"
)

// pumpOffHead is the head of a pump-off test's file.
const pumpOffHead = "seconds;air;do_mg_per_l"

// pumpOffFile makes a test file of what was typed: lines of seconds and
// oxygen, parted by a comma, a semicolon or a space, with the second at which
// the air went on again ("" where it did not yet). A file that has a head
// already stays as it is.
func pumpOffFile(typed, airOnAt string) string {
	typed = strings.TrimSpace(typed)
	if typed == "" || hasHead(typed) {
		return typed
	}
	on, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(airOnAt), ",", ".", 1), 64)
	back := err == nil
	lines := []string{pumpOffHead}
	for _, line := range strings.Split(typed, "\n") {
		cells := cellsOf(line)
		if len(cells) == 0 {
			continue
		}
		air := "0"
		if at, err := strconv.ParseFloat(cells[0], 64); err == nil && back && at >= on {
			air = "1"
		}
		if len(cells) == 2 {
			cells = []string{cells[0], air, cells[1]}
		}
		lines = append(lines, strings.Join(cells, ";"))
	}
	return strings.Join(lines, "\n")
}

// hasHead tells whether the first line that is no remark names a column.
func hasHead(text string) bool {
	for line := range strings.Lines(text) {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			return strings.ContainsFunc(line, unicode.IsLetter)
		}
	}
	return false
}

// cellsOf parts a line: by semicolons or blanks, so that a decimal comma stays
// whole, else by commas.
func cellsOf(line string) []string {
	cells := strings.FieldsFunc(line, func(r rune) bool { return r == ';' || unicode.IsSpace(r) })
	if len(cells) == 1 {
		cells = strings.FieldsFunc(line, func(r rune) bool { return r == ',' || unicode.IsSpace(r) })
	}
	for i, cell := range cells {
		cells[i] = strings.TrimRight(cell, ",") // "30, 7.9"
	}
	return cells
}
