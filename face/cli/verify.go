package cli

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"aerosteep/record/journal"
	"aerosteep/wording"
)

// found is what `verify` answers.
type found struct {
	OK       bool     `json:"ok"`
	Entries  int64    `json:"entries"`
	Papers   int64    `json:"papers"`
	Problems []string `json:"problems"`
	Partly   []string `json:"imported_in_part"`
}

// verifyVerb is `verify`: everything is read again and the chain checked.
func (p *program) verifyVerb() *cobra.Command {
	return &cobra.Command{
		Use:   "verify",
		Short: wording.Say("cli.verify").String(),
		Args:  cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			r, err := p.reader(wording.Reader{Language: wording.English, Units: wording.US})
			if err != nil {
				return err
			}
			answer, err := p.verify(r)
			if err != nil {
				return err
			}
			if err := p.printFound(answer, r); err != nil {
				return err
			}
			if !answer.OK {
				return errSaid
			}
			return nil
		},
	}
}

// verify re-reads the journal. A file so damaged that it does not open is a
// finding, not a failure to look.
func (p *program) verify(r wording.Reader) (found, error) {
	answer := found{Problems: []string{}, Partly: []string{}}
	err := p.withJournal(func(ctx context.Context, j *journal.Journal) error {
		f, err := j.Verify(ctx)
		answer.OK, answer.Entries, answer.Papers = f.OK(), f.Entries, f.Papers
		for _, problem := range f.Problems {
			answer.Problems = append(answer.Problems, problem.For(r))
		}
		answer.Partly = append(answer.Partly, f.Partly...)
		return err
	})
	var trouble *journal.Trouble
	if errors.As(err, &trouble) && trouble.What.Key == "journal.trouble.damaged" {
		answer.OK, answer.Problems = false, append(answer.Problems, trouble.What.For(r))
		return answer, nil
	}
	return answer, err
}

func (p *program) printFound(answer found, r wording.Reader) error {
	if p.json {
		return p.printJSON(p.Out, answer)
	}
	places := wording.Places{"entries": int(answer.Entries), "problems": len(answer.Problems)}
	if answer.OK && answer.Entries == 0 {
		fmt.Fprintln(p.Out, wording.Say("cli.verify.empty").For(r))
	} else if answer.OK {
		fmt.Fprintln(p.Out, wording.Say("cli.verify.ok", places).For(r))
	} else {
		fmt.Fprintln(p.Out, wording.Say("cli.verify.wrong", places).For(r))
	}
	for _, problem := range answer.Problems {
		fmt.Fprintln(p.Out, wrap(problem, columns, "  "))
	}
	for _, name := range answer.Partly {
		fmt.Fprintln(p.Out, wrap(wording.Say("cli.verify.partly", wording.Places{"journal": name}).For(r), columns, "  "))
	}
	if !answer.OK {
		fmt.Fprintln(p.Err, "hint: "+wording.Say("cli.verify.advice").For(r))
	}
	return nil
}
