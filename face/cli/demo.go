package cli

import (
	"context"
	"fmt"
	"os"
	"time"

	"github.com/spf13/cobra"

	"aerosteep/examples"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// The demo: Tern Hollow on an afternoon of its week, with one batch that is
// calm and one that heads for trouble.
const (
	demoFolder = "examples/ternhollow/"
	demoJob    = demoFolder + "week.toml"
)

var (
	demoHour    = time.Date(2026, 5, 12, 22, 45, 0, 0, time.UTC) // a quarter to four in its zone
	demoBatches = []string{"D-114", "C-031"}
)

// demoVerb is `demo`: a fresh holding that is gone afterwards, its clock
// running at real speed from its own hour.
func (p *program) demoVerb() *cobra.Command {
	a := &address{}
	cmd := &cobra.Command{
		Use:   "demo",
		Short: wording.Say("cli.demo").String(),
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			folder, err := os.MkdirTemp("", "aerosteep-demo-")
			if err != nil {
				return err
			}
			defer os.RemoveAll(folder)
			p.data = folder
			began := p.Now()
			system := p.Now
			p.Now = func() time.Time { return demoHour.Add(system().Sub(began)) }
			return p.withHolding(func(ctx context.Context, h *holding.Holding) error {
				if err := furnish(ctx, h); err != nil {
					return err
				}
				return p.serve(ctx, h, a, p.Now)
			})
		},
	}
	a.flags(cmd)
	return cmd
}

// furnish loads the demo's job file and what was read until its hour.
func furnish(ctx context.Context, h *holding.Holding) error {
	text, err := examples.ReadFile(demoJob)
	if err != nil {
		return err
	}
	file, problems := jobfile.Read(text, demoJob, jobfile.Whole)
	if err := problems.OrNil(); err != nil {
		return err
	}
	if _, err := h.Load(ctx, file, holding.Made{At: demoHour.Add(-48 * time.Hour), By: "M.R."}); err != nil {
		return err
	}
	sky, err := examples.ReadFile(demoFolder + "weather.csv")
	if err != nil {
		return err
	}
	if err := h.KeepSky("weather.csv", sky); err != nil {
		return err
	}
	for _, batch := range demoBatches {
		if err := readSoFar(ctx, h, batch, file.Holding.Zone); err != nil {
			return err
		}
	}
	return nil
}

func readSoFar(ctx context.Context, h *holding.Holding, batch string, zone *time.Location) error {
	name := demoFolder + "readings-" + batch + ".csv"
	text, err := examples.ReadFile(name)
	if err != nil {
		return err
	}
	entries, err := h.FromCSV(name, text, batch, zone)
	if err != nil {
		return err
	}
	var past []journal.Entry
	for _, e := range entries {
		if !e.Time().After(demoHour) {
			past = append(past, e)
		}
	}
	results, err := h.Store(ctx, past...)
	for _, r := range results {
		if r.Outcome == journal.Refused {
			return fmt.Errorf("%s: %w", name, r.Why)
		}
	}
	return err
}
