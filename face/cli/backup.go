package cli

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"aerosteep/record/journal"
	"aerosteep/wording"
)

// backupVerb is `backup FILE`: a copy of the journal, whole even while a
// server writes.
func (p *program) backupVerb() *cobra.Command {
	return &cobra.Command{
		Use:   "backup FILE",
		Short: wording.Say("cli.backup").String(),
		Args:  oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			name := args[0]
			return p.withJournal(func(ctx context.Context, j *journal.Journal) error {
				if err := j.Backup(ctx, name); err != nil {
					return err
				}
				n, err := j.Size(ctx)
				if err != nil {
					return err
				}
				return p.tell(map[string]any{"file": name, "entries": n},
					wording.Say("cli.backup.done", wording.Places{"file": name, "entries": int(n)}))
			})
		},
	}
}

// restoreVerb is `restore FILE`: a backup in the place of the journal.
func (p *program) restoreVerb() *cobra.Command {
	var replace bool
	cmd := &cobra.Command{
		Use:   "restore FILE",
		Short: wording.Say("cli.restore").String(),
		Args:  oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			name := args[0]
			return p.withJournal(func(ctx context.Context, j *journal.Journal) error {
				return p.restore(ctx, j, name, replace)
			})
		},
	}
	cmd.Flags().BoolVar(&replace, "replace", false, "replace a journal that is not empty; it is kept beside")
	return cmd
}

func (p *program) restore(ctx context.Context, j *journal.Journal, name string, replace bool) error {
	kept, err := j.Restore(ctx, name, replace)
	if err != nil {
		return err
	}
	n, err := j.Size(ctx)
	if err != nil {
		return err
	}
	answer := map[string]any{"file": name, "entries": n, "kept": nil}
	said := wording.Say("cli.restore.done", wording.Places{"file": name, "entries": int(n)})
	if kept != "" {
		answer["kept"] = kept
		said = wording.Say("cli.restore.kept", wording.Places{"file": name, "entries": int(n), "kept": kept})
	}
	return p.tell(answer, said)
}

// tell prints what was done: as an object, or as a sentence.
func (p *program) tell(answer any, said wording.Text) error {
	r, err := p.reader(wording.Reader{Language: wording.English, Units: wording.US})
	if err != nil {
		return err
	}
	if p.json {
		return p.printJSON(p.Out, answer)
	}
	_, err = fmt.Fprintln(p.Out, wrap(said.For(r), columns, ""))
	return err
}
