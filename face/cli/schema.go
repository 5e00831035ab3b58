package cli

import (
	"encoding/json"

	"github.com/spf13/cobra"

	"aerosteep/job/jobfile"
	"aerosteep/wording"
)

// schemaVerb is `schema`: the JSON Schema of the job file.
func (p *program) schemaVerb() *cobra.Command {
	return &cobra.Command{
		Use:   "schema",
		Short: wording.Say("cli.schema").String(),
		Args:  cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			r, err := p.reader(wording.Reader{Language: wording.English, Units: wording.US})
			if err != nil {
				return err
			}
			encoder := json.NewEncoder(p.Out)
			encoder.SetEscapeHTML(false)
			encoder.SetIndent("", "  ")
			return encoder.Encode(jobfile.Schema(r))
		},
	}
}
