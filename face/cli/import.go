package cli

import (
	"context"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// imported is what became of the lines of an import.
type imported struct {
	Lines         []importedLine `json:"lines"`
	Stored        int            `json:"stored"`
	AlreadyStored int            `json:"already_stored"`
	Refused       int            `json:"refused"`
}

type importedLine struct {
	Line   int             `json:"line"`
	ID     *string         `json:"id"`
	Result journal.Outcome `json:"result"`
	Why    *string         `json:"why"`
}

// importVerb is `import FILE`: entries of an export, each told of.
func (p *program) importVerb() *cobra.Command {
	var logger loggerFlags
	cmd := &cobra.Command{
		Use:   "import FILE",
		Short: wording.Say("cli.import").String(),
		Args:  oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			name := args[0]
			r, err := p.reader(wording.Reader{Language: wording.English, Units: wording.US})
			if err != nil {
				return err
			}
			if logger.batch != "" {
				return p.withHolding(func(ctx context.Context, h *holding.Holding) error {
					return p.importLogger(ctx, h, name, &logger)
				})
			}
			return p.withJournal(func(ctx context.Context, j *journal.Journal) error {
				return p.importFile(ctx, j, name, r)
			})
		},
	}
	logger.flags(cmd)
	return cmd
}

func (p *program) importFile(ctx context.Context, j *journal.Journal, name string, r wording.Reader) error {
	file, err := os.Open(name)
	if err != nil {
		return fault.New("file", name, wording.Say("cli.no-file", wording.Places{"file": name}), wording.Text{}, wording.Text{})
	}
	defer file.Close()
	report := imported{Lines: []importedLine{}}
	err = j.Import(ctx, file, func(l journal.Line) { report.add(l, r) })
	if p.json {
		p.printJSON(p.Out, report)
	} else {
		p.printImported(report, r)
	}
	if err == nil && report.Refused > 0 {
		return importRefused(name, report)
	}
	return err
}

func (report *imported) add(l journal.Line, r wording.Reader) {
	line := importedLine{Line: l.Number, Result: l.Outcome}
	if l.ID != "" {
		line.ID = &l.ID
	}
	switch l.Outcome {
	case journal.Stored:
		report.Stored++
	case journal.AlreadyStored:
		report.AlreadyStored++
	case journal.Refused:
		report.Refused++
		why := reason(l.Why, r)
		line.Why = &why
	}
	report.Lines = append(report.Lines, line)
}

// printImported tells of every line that was refused, and of the others by
// their number.
func (p *program) printImported(report imported, r wording.Reader) {
	for _, l := range report.Lines {
		if l.Result == journal.Refused {
			fmt.Fprintln(p.Out, wording.Say("cli.import.refused", wording.Places{"line": l.Line, "why": *l.Why}).For(r))
			continue
		}
		fmt.Fprintln(p.Out, wording.Say("cli.import."+string(l.Result), wording.Places{"line": l.Line}).For(r))
	}
	places := wording.Places{"stored": report.Stored, "already": report.AlreadyStored, "refused": report.Refused}
	fmt.Fprintln(p.Out, wording.Say("cli.import.sum", places).For(r))
}

func importRefused(name string, report imported) error {
	places := wording.Places{"refused": report.Refused, "of": len(report.Lines)}
	return fault.New("file", name, wording.Say("cli.import.some-refused", places), wording.Text{}, wording.Say("cli.import.some-refused.advice"))
}

// reason is a fault as one line.
func reason(err error, r wording.Reader) string {
	faults := fault.Of(err)
	if len(faults) == 0 {
		return err.Error()
	}
	text := faults[0].What.For(r)
	if allowed := faults[0].Allowed.For(r); allowed != "" {
		text += wording.Say("cli.allowed", wording.Places{"allowed": allowed}).For(r)
	}
	return text
}
