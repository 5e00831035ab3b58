package cli

import (
	"context"

	"github.com/spf13/cobra"

	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/wording"
)

// withHolding opens the holding for one verb and lets go of it afterwards.
func (p *program) withHolding(do func(context.Context, *holding.Holding) error) error {
	folder, err := p.dataFolder()
	if err != nil {
		return err
	}
	ctx := context.Background()
	h, err := holding.Open(ctx, folder, p.means())
	if err != nil {
		return err
	}
	err = do(ctx, h)
	if closing := h.Close(); err == nil {
		err = closing
	}
	return err
}

// loadVerb is `load FILE`: a job file becomes entries.
func (p *program) loadVerb() *cobra.Command {
	m := &making{}
	cmd := &cobra.Command{
		Use:   "load FILE",
		Short: wording.Say("cli.load").String(),
		Args:  oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			file, err := p.openJob(args[0], jobfile.Whole)
			if err != nil {
				return err
			}
			return p.withHolding(func(ctx context.Context, h *holding.Holding) error {
				return p.load(ctx, h, args[0], file, m)
			})
		},
	}
	m.flags(cmd)
	return cmd
}

func (p *program) load(ctx context.Context, h *holding.Holding, name string, file *jobfile.File, m *making) error {
	made, err := p.made(h, m)
	if err != nil {
		return err
	}
	changes, err := h.Load(ctx, file, made)
	if err != nil {
		return err
	}
	said := wording.Say("cli.load.same", wording.Places{"file": name})
	if changes > 0 {
		said = wording.Say("cli.load.done", wording.Places{"file": name, "changes": changes})
	}
	return p.tell(map[string]any{"file": name, "changes": changes}, said)
}

// unloadVerb is `unload`: the holding as a job file.
func (p *program) unloadVerb() *cobra.Command {
	return &cobra.Command{
		Use:   "unload",
		Short: wording.Say("cli.unload").String(),
		Args:  cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			return p.withHolding(func(_ context.Context, h *holding.Holding) error {
				text, err := h.TOML()
				if err == nil {
					_, err = p.Out.Write(text)
				}
				return err
			})
		},
	}
}
