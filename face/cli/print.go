package cli

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"aerosteep/wording"
	"aerosteep/worksheet"
)

// columns is how wide a paragraph may be.
const columns = 72

// wrap breaks a paragraph at spaces; no-break spaces hold.
func wrap(text string, width int, indent string) string {
	var b strings.Builder
	used := 0
	for _, word := range strings.Split(text, " ") {
		n := utf8.RuneCountInString(word)
		switch {
		case used == 0:
			b.WriteString(indent + word)
			used = utf8.RuneCountInString(indent) + n
		case used+1+n > width:
			b.WriteString("\n" + indent + word)
			used = utf8.RuneCountInString(indent) + n
		default:
			b.WriteString(" " + word)
			used += 1 + n
		}
	}
	return b.String()
}

// printResult prints a worksheet's answer for a person: the sentence, the
// figures, the cautions.
func printResult(w io.Writer, result *worksheet.Result, r wording.Reader) error {
	lines, grids, err := result.Figures(r)
	if err != nil {
		return err
	}
	fmt.Fprintln(w, wrap(result.Answer.For(r), columns, ""))
	for _, note := range result.Notes {
		fmt.Fprintln(w, wrap(note.For(r), columns, ""))
	}
	printLines(w, lines)
	for _, g := range grids {
		printGrid(w, g)
	}
	printCautions(w, worksheet.Sentences(result.Cautions, r), r)
	return nil
}

func printLines(w io.Writer, lines []worksheet.Line) {
	widest := 0
	for _, l := range lines {
		if n := utf8.RuneCountInString(l.Label); n > widest && n <= 34 {
			widest = n
		}
	}
	if len(lines) > 0 {
		fmt.Fprintln(w)
	}
	for _, l := range lines {
		gap := max(0, widest-utf8.RuneCountInString(l.Label))
		line := "  " + l.Label + strings.Repeat(" ", gap) + "  " + l.Value
		if utf8.RuneCountInString(line) > columns {
			fmt.Fprintln(w, "  "+l.Label)
			fmt.Fprintln(w, wrap(l.Value, columns, "      "))
			continue
		}
		fmt.Fprintln(w, line)
	}
}

// printGrid prints a table; a table may be wider than a paragraph.
func printGrid(w io.Writer, g worksheet.Grid) {
	widths := make([]int, len(g.Heads))
	for _, row := range append([][]string{g.Heads}, g.Rows...) {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	fmt.Fprintf(w, "\n  %s\n", g.Label)
	for _, row := range append([][]string{g.Heads}, g.Rows...) {
		var b strings.Builder
		for i, cell := range row {
			b.WriteString("  " + cell + strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)))
		}
		fmt.Fprintln(w, strings.TrimRight(b.String(), " "))
	}
}

func printCautions(w io.Writer, cautions []string, r wording.Reader) {
	if len(cautions) == 0 {
		return
	}
	fmt.Fprintln(w)
	for _, c := range cautions {
		fmt.Fprintln(w, wrap(wording.Say("cli.caution", wording.Places{"text": c}).For(r), columns, ""))
	}
}
