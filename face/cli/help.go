package cli

import (
	"bytes"
	"fmt"
	"strings"

	"aerosteep/examples"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// sheetHelp prints the help of one worksheet: usage, purpose, flags, a worked
// example with its real output, range, source.
func (p *program) sheetHelp(sheet *worksheet.Sheet) {
	r, err := p.reader(wording.Reader{Language: wording.English, Units: wording.US})
	if err != nil {
		p.report(err, nil)
		return
	}
	w := p.Out
	fmt.Fprintf(w, "Usage: aerosteep calc %s%s [--json] [--units us|metric] [--lang en|es]\n\n", sheet.Name, usage(sheet))
	fmt.Fprintln(w, wrap(sheet.Purpose().For(r), columns, ""))
	fmt.Fprintln(w)
	for i := range sheet.Inputs {
		printInput(w, sheet, &sheet.Inputs[i], r)
	}
	fmt.Fprintf(w, "\nExample:\n  $ aerosteep calc %s %s\n", sheet.Name, sheet.Example)
	for _, line := range strings.Split(strings.TrimRight(exampleOutput(sheet, p.Now), "\n"), "\n") {
		fmt.Fprintln(w, strings.TrimRight("  "+line, " "))
	}
	fmt.Fprintf(w, "\nFormula: %s\n", sheet.Formula().For(r))
	fmt.Fprintf(w, "\nRange: %s\n", sheet.Range().For(r))
	for _, s := range sheet.Sources {
		fmt.Fprintf(w, "Source: %s; %s\n", s.Title, s.Where)
	}
}

func usage(sheet *worksheet.Sheet) string {
	var b strings.Builder
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		part := "--" + in.Flag + " " + strings.ToUpper(in.Kind.Name)
		switch {
		case in.Argument:
			part = strings.ToUpper(in.Flag)
		case in.Kind == worksheet.Switch:
			part = "--" + in.Flag
		}
		if !in.Required {
			part = "[" + part + "]"
		}
		b.WriteString(" " + part)
	}
	return b.String()
}

func printInput(w interface{ Write([]byte) (int, error) }, sheet *worksheet.Sheet, in *worksheet.Input, r wording.Reader) {
	name := "--" + in.Flag
	if in.Argument {
		name = strings.ToUpper(in.Flag)
	}
	text := in.Label(sheet.Name).For(r) + "; " + in.Allowed().For(r)
	if in.Default != "" {
		text += wording.Say("cli.default", wording.Places{"default": in.Default}).For(r)
	}
	if in.Required {
		text += wording.Say("cli.required").For(r)
	}
	fmt.Fprintf(w, "  %s\n%s\n", name, wrap(text, columns, "      "))
}

// exampleOutput runs the example as it stands, on the example files that the
// program carries.
func exampleOutput(sheet *worksheet.Sheet, now clock) string {
	var out, errs bytes.Buffer
	Run(append([]string{"calc", sheet.Name}, exampleWords(sheet.Example)...), Terminal{
		Out: &out, Err: &errs, Now: now, ReadFile: examples.ReadFile,
		Getenv: func(string) string { return "" },
	})
	return out.String() + errs.String()
}
