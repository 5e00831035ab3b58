package cli

import (
	"context"
	"time"

	"github.com/spf13/cobra"

	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// exportVerb is `export`: the whole journal as JSON lines.
func (p *program) exportVerb() *cobra.Command {
	var since string
	cmd := &cobra.Command{
		Use:   "export",
		Short: wording.Say("cli.export").String(),
		Args:  cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			from, err := p.moment("since", since, time.Local)
			if err != nil {
				return err
			}
			return p.withJournal(func(ctx context.Context, j *journal.Journal) error {
				return j.Export(ctx, p.Out, from)
			})
		},
	}
	cmd.Flags().StringVar(&since, "since", "", "recorded at or after this time")
	return cmd
}

// moment reads the time of a flag, in a zone where it has no offset; the zero
// time where the flag was not given. A date alone is its first instant.
func (p *program) moment(flag, text string, zone *time.Location) (time.Time, error) {
	if text == "" {
		return time.Time{}, nil
	}
	if day, err := time.ParseInLocation(time.DateOnly, text, zone); err == nil {
		return day, nil
	}
	t, wrong := jobfile.Moment(text, zone)
	if wrong != nil {
		wrong.Field, wrong.Given = flag, text
		return t, wrong
	}
	return t, nil
}
