package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/record/report"
	"aerosteep/science/weather"
	"aerosteep/wording"
)

// planFlags are the flags of `plan`.
type planFlags struct {
	now, weather, ics, pdf string
	strict                 bool
}

// planVerb is `plan [FILE]`: from every want to steps that can be followed.
func (p *program) planVerb() *cobra.Command {
	f := &planFlags{}
	cmd := &cobra.Command{
		Use:   "plan [FILE]",
		Short: wording.Say("cli.plan").String(),
		Args:  fileOrNone,
		RunE:  func(_ *cobra.Command, args []string) error { return p.plan(f, args) },
	}
	flags := cmd.Flags()
	flags.StringVar(&f.now, "now", "", wording.Say("cli.plan.now").String())
	flags.StringVar(&f.weather, "weather", "", wording.Say("cli.plan.weather").String())
	flags.StringVar(&f.ics, "ics", "", wording.Say("cli.plan.ics").String())
	flags.StringVar(&f.pdf, "pdf", "", wording.Say("cli.plan.pdf").String())
	flags.BoolVar(&f.strict, "strict", false, wording.Say("cli.plan.strict").String())
	return cmd
}

// fileOrNone takes one file name, or none for the holding.
func fileOrNone(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return oneFile(cmd, args)
}

func (p *program) plan(f *planFlags, args []string) error {
	file, err := p.jobOrHolding(strings.Join(args, ""))
	if err != nil {
		return err
	}
	r, err := p.reader(file.Holding.Reader)
	if err != nil {
		return err
	}
	now, err := p.moment("now", f.now, file.Holding.Zone)
	if err != nil {
		return err
	}
	if now.IsZero() {
		now = p.Now().Truncate(time.Second)
	}
	sky, err := p.sky(f.weather, file.Holding.Zone)
	if err != nil {
		return err
	}
	made := plan.Make(plan.Input{File: file, Now: now, Weather: sky, Reader: r})
	if err := f.writeFiles(made, file, r); err != nil {
		return err
	}
	if err := p.tellPlan(made, r); err != nil {
		return err
	}
	if f.strict && len(made.Unmet) > 0 {
		return errStrict
	}
	return nil
}

// writeFiles writes the calendar and the job sheets where they are asked for.
func (f *planFlags) writeFiles(made *plan.Plan, file *jobfile.File, r wording.Reader) error {
	if f.ics != "" {
		if err := replaceFile(f.ics, report.Calendar(made)); err != nil {
			return err
		}
	}
	if f.pdf == "" {
		return nil
	}
	sheets, err := report.JobSheets(made, file, r)
	if err != nil {
		return err
	}
	return replaceFile(f.pdf, sheets)
}

func (p *program) tellPlan(made *plan.Plan, r wording.Reader) error {
	if !p.json {
		return printPlan(p.Out, made, r)
	}
	text, err := report.PlanJSON(made, r)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(p.Out, "%s\n", text)
	return err
}

// sky reads a weather file; bad rows are refused.
func (p *program) sky(name string, zone *time.Location) (*weather.Forecast, error) {
	if name == "" {
		return nil, nil
	}
	text, err := p.readSky(name)
	if err != nil {
		return nil, err
	}
	read, err := weather.Read(name, text, weather.CSVReading{Zone: zone, OnlyAir: true})
	if err != nil {
		return nil, err
	}
	if len(read.Unknown) > 0 {
		fmt.Fprintln(p.Err, "aerosteep: "+wording.Say("cli.ignored-columns", wording.Places{"columns": read.Unknown}).String())
	}
	return read.Forecast, nil
}

// replaceFile writes a file whole or not at all.
func replaceFile(name string, content []byte) error {
	temporary, err := os.CreateTemp(filepath.Dir(name), ".aerosteep-*")
	if err != nil {
		return err
	}
	_, err = temporary.Write(content)
	if closing := temporary.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Chmod(temporary.Name(), 0o644)
	}
	if err == nil {
		err = os.Rename(temporary.Name(), name)
	}
	if err != nil {
		os.Remove(temporary.Name())
	}
	return err
}
