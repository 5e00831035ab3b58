package cli

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/record/report"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// paperFiles are the files that a paper is written to.
type paperFiles struct {
	pdf, csv string
	both     bool
}

func (f *paperFiles) write(made *report.Paper, r wording.Reader) error {
	if f.csv != "" {
		text, err := made.CSV(r)
		if err == nil {
			err = replaceFile(f.csv, text)
		}
		if err != nil || f.pdf == "" {
			return err
		}
	}
	print := made.PDF
	if f.both {
		print = made.BothPDF
	}
	text, err := print(r)
	if err != nil {
		return err
	}
	return replaceFile(f.pdf, text)
}

// paperVerb is `paper KIND NAME`: a record as somebody wants to see it.
func (p *program) paperVerb() *cobra.Command {
	var as paperFiles
	cmd := &cobra.Command{
		Use:   "paper KIND NAME",
		Short: wording.Say("cli.paper").String(),
		Args:  cobra.ArbitraryArgs,
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) != 2 {
				return fault.New("paper", "", wording.Say("worksheet.missing", wording.Places{"flag": "KIND NAME"}), wording.Say("worksheet.allowed.choices", wording.Places{"choices": report.Kinds}), wording.Say("cli.paper.advice"))
			}
			return p.withHolding(func(ctx context.Context, h *holding.Holding) error {
				return p.paper(ctx, h, args[0], args[1], &as)
			})
		},
	}
	cmd.Flags().StringVar(&as.pdf, "pdf", "", "write the paper to a file")
	cmd.Flags().StringVar(&as.csv, "csv", "", "write its tables for a spreadsheet")
	cmd.Flags().BoolVar(&as.both, "both", false, "in English and Spanish side by side (with --pdf)")
	return cmd
}

func (p *program) paper(ctx context.Context, h *holding.Holding, kind, name string, as *paperFiles) error {
	r, err := p.reader(h.Reader())
	if err != nil {
		return err
	}
	made, err := report.NewDesk(h, p.Now()).Make(ctx, kind, name)
	if err != nil {
		return err
	}
	if as.pdf != "" || as.csv != "" {
		return as.write(made, r)
	}
	if p.json {
		text, err := made.JSON(r)
		if err == nil {
			fmt.Fprintln(p.Out, string(text))
		}
		return err
	}
	p.printPaper(made, r)
	return nil
}

// printPaper prints a paper for people: what is missing first.
func (p *program) printPaper(made *report.Paper, r wording.Reader) {
	say := func(text string) { fmt.Fprintln(p.Out, wrap(text, columns, "")) }
	say(made.Title.For(r))
	if !made.Lede.IsZero() {
		say(made.Lede.For(r))
	}
	p.printGaps(made.Missing, r)
	var lines []worksheet.Line
	for _, f := range made.Facts {
		lines = append(lines, worksheet.Line{Key: f.Key, Label: report.Label(f.Key, r), Value: report.Spoken(f.Key, f.Value, r)})
	}
	printLines(p.Out, lines)
	for _, t := range made.Tables {
		heads, rows := t.Words(r)
		if len(rows) == 0 {
			fmt.Fprintf(p.Out, "\n  %s\n  %s\n", report.TableTitle(t, r), wording.Say("paper.none").For(r))
			continue
		}
		printGrid(p.Out, worksheet.Grid{Label: report.TableTitle(t, r), Heads: heads, Rows: rows})
	}
	var cautions []string
	for _, c := range made.Cautions {
		cautions = append(cautions, c.For(r))
	}
	printCautions(p.Out, cautions, r)
	fmt.Fprintln(p.Out)
	say(made.Foot(r))
}

func (p *program) printGaps(gaps []wording.Text, r wording.Reader) {
	if len(gaps) == 0 {
		return
	}
	fmt.Fprintln(p.Out, "\n"+wording.Say("paper.gaps").For(r))
	for _, gap := range gaps {
		fmt.Fprintln(p.Out, wrap("- "+gap.For(r), columns, "  "))
	}
}
