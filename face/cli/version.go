package cli

import (
	"fmt"
	"os"
	"time"

	"github.com/spf13/cobra"

	"aerosteep/wording"
)

type clock = func() time.Time

// versionVerb is `version`: one line.
func (p *program) versionVerb() *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: wording.Say("cli.version").String(),
		Args:  cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			if p.json {
				return p.printJSON(p.Out, map[string]string{"version": Version})
			}
			_, err := fmt.Fprintln(p.Out, "aerosteep", Version)
			return err
		},
	}
}

// writeFile writes a document; what was there before is replaced.
func writeFile(name string, content []byte) error { return os.WriteFile(name, content, 0o644) }
