package cli

import (
	"context"
	"io"
	"os"

	"github.com/spf13/cobra"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// attachCommand is `log attach FILE`: a paper of somebody else, kept whole.
func (p *program) attachCommand() *cobra.Command {
	given, m := worksheet.Values{}, &making{}
	cmd := &cobra.Command{
		Use:   "attach FILE",
		Short: wording.Say("cli.log.attach").String(),
		Args:  oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			content, err := readPaper(args[0])
			if err != nil {
				return err
			}
			return p.withHolding(func(ctx context.Context, h *holding.Holding) error {
				made, err := p.made(h, m)
				if err != nil {
					return err
				}
				e, err := h.Attach(ctx, args[0], content, given, made)
				if err != nil {
					return err
				}
				return p.tellKept(ctx, h, e.ID)
			})
		},
	}
	addInputs(cmd, holding.AttachForm.Sheet, given)
	m.flags(cmd)
	return cmd
}

// tellKept tells of an entry that was stored a moment ago.
func (p *program) tellKept(ctx context.Context, h *holding.Holding, id string) error {
	r, err := p.reader(h.Reader())
	if err != nil {
		return err
	}
	stored, _, err := h.Journal().Find(ctx, id)
	if err != nil {
		return err
	}
	return p.printLogged(stored.Entry, nil, r)
}

// readPaper reads a file, no more of it than is taken.
func readPaper(name string) ([]byte, error) {
	file, err := os.Open(name)
	if err != nil {
		return nil, fault.New("file", name, wording.Say("cli.no-file", wording.Places{"file": name}), wording.Text{}, wording.Text{})
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, journal.LongestContent+1))
}
