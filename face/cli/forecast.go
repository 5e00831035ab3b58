package cli

import (
	"context"
	"fmt"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"aerosteep/fault"
	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/holding"
	"aerosteep/science/weather"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// forecastCall is what was typed after `forecast`.
type forecastCall struct {
	job, batch, readings, now, hours, weather, whatIf, members, seed string
	skipBad                                                          bool
}

// forecastVerb is `forecast`: what the oxygen of a batch will do, from the job
// file and every reading since.
func (p *program) forecastVerb() *cobra.Command {
	c := &forecastCall{}
	cmd := &cobra.Command{
		Use:   "forecast [--job FILE] --batch NAME",
		Short: wording.Say("cli.forecast").String(),
		Args:  noArguments,
		RunE:  func(*cobra.Command, []string) error { return p.forecast(c) },
	}
	f := cmd.Flags()
	f.StringVar(&c.job, "job", "", "job file; without it the holding")
	f.StringVar(&c.batch, "batch", "", "name of the batch")
	f.StringVar(&c.readings, "readings", "", "CSV file of readings and events")
	f.StringVar(&c.now, "now", "", "time of the forecast; default the clock's")
	f.StringVar(&c.hours, "hours", "24", "hours to look ahead, 1 to 96")
	f.StringVar(&c.weather, "weather", "", wording.Say("cli.plan.weather").String())
	f.StringVar(&c.whatIf, "what-if", "", `a changed future, as "air +30 %, food -25 %, finish -4 h, temp -2 C"`)
	f.StringVar(&c.members, "members", "2000", "members of the ensemble, 100 to 20000")
	f.StringVar(&c.seed, "seed", "1", "seed of the ensemble")
	f.BoolVar(&c.skipBad, "skip-bad", false, "leave bad rows out")
	return cmd
}

func (p *program) forecast(c *forecastCall) error {
	file, err := p.jobOrHolding(c.job)
	if err != nil {
		return err
	}
	r, err := p.reader(file.Holding.Reader)
	if err != nil {
		return err
	}
	if c.batch == "" {
		return fault.New("batch", "", wording.Say("forecast.no-batch"), wording.Say("forecast.batch.allowed", wording.Places{"names": batchNames(file)}), wording.Text{})
	}
	subject, err := forecast.Of(file, c.batch)
	if err != nil {
		return err
	}
	question, telling, err := p.forecastQuestion(c, file, subject, r)
	if err != nil {
		return err
	}
	made, err := forecast.Run(question)
	if err != nil {
		return err
	}
	cautions := subject.Cautions(&question)
	answer := made.Answer(telling)
	if p.json {
		text, err := worksheet.Envelope(answer, forecast.Sources(), cautions, r)
		if err != nil {
			return err
		}
		_, err = fmt.Fprintln(p.Out, string(text))
		return err
	}
	p.printForecast(made, answer, telling, r)
	printCautions(p.Out, worksheet.Sentences(cautions, r), r)
	return nil
}

func batchNames(file *jobfile.File) []string {
	names := make([]string, len(file.Batches))
	for i, b := range file.Batches {
		names[i] = b.Name
	}
	return names
}

// jobOrHolding reads the job file of a flag, or the holding where none is
// named.
func (p *program) jobOrHolding(name string) (*jobfile.File, error) {
	if name != "" {
		return p.openJob(name, jobfile.Whole)
	}
	var file *jobfile.File
	err := p.withHolding(func(_ context.Context, h *holding.Holding) error {
		if h.Empty() {
			return fault.New("job", "", wording.Say("forecast.no-job"), wording.Say("forecast.no-job.allowed"), wording.Say("forecast.no-job.advice"))
		}
		var err error
		file, err = h.File(jobfile.Whole)
		return err
	})
	return file, err
}

// forecastQuestion reads the files and flags into what is asked.
func (p *program) forecastQuestion(c *forecastCall, file *jobfile.File, s *forecast.Subject, r wording.Reader) (forecast.Question, forecast.Telling, error) {
	q := forecast.Question{}
	t := s.Telling(file)
	if err := p.underSky(c, s); err != nil {
		return q, t, err
	}
	now, err := p.moment("now", c.now, file.Holding.Zone)
	if err != nil {
		return q, t, err
	}
	if now.IsZero() {
		now = p.Now()
	}
	hours, errHours := bareFlag("hours", c.hours, 1, 96, false)
	members, errMembers := bareFlag("members", c.members, 100, 20000, true)
	seed, errSeed := bareFlag("seed", c.seed, 0, 1<<53, true)
	if err := fault.Join(errHours, errMembers, errSeed); err != nil {
		return q, t, err
	}
	log, err := p.readLog(c, s, r)
	if err != nil {
		return q, t, err
	}
	if c.whatIf != "" {
		scenario, err := forecast.ParseScenario(c.whatIf)
		if err != nil {
			return q, t, err
		}
		t.WhatIf = &scenario
	}
	return s.Question(log, now, hours, int(members), uint64(seed)), t, nil
}

// underSky reads the weather, where there is any.
func (p *program) underSky(c *forecastCall, s *forecast.Subject) error {
	if c.weather == "" {
		return nil
	}
	text, err := p.readSky(c.weather)
	if err != nil {
		return err
	}
	sky, err := weather.Read(c.weather, text, weather.CSVReading{OnlyAir: true, Zone: s.Zone, SkipBad: c.skipBad})
	if err != nil {
		return err
	}
	s.UnderSky(sky.Forecast)
	return nil
}

func (p *program) readLog(c *forecastCall, s *forecast.Subject, r wording.Reader) (forecast.Log, error) {
	if c.readings == "" && c.job != "" {
		return forecast.Log{}, nil
	}
	if c.readings == "" {
		return p.holdingLog(s)
	}
	text, err := p.readText("readings", c.readings)
	if err != nil {
		return forecast.Log{}, err
	}
	log, err := forecast.ReadLog(c.readings, text, forecast.LogReading{Start: s.Start, Zone: s.Zone, SkipBad: c.skipBad})
	if err != nil {
		return log, err
	}
	if len(log.Unknown) > 0 {
		fmt.Fprintln(p.Err, wording.Say("forecast.columns-ignored", wording.Places{"columns": strings.Join(log.Unknown, ", ")}).For(r))
	}
	if log.Before > 0 {
		fmt.Fprintln(p.Err, wording.Say("forecast.rows-before", wording.Places{"n": log.Before}).For(r))
	}
	if n := len(log.Skipped); n > 0 {
		fmt.Fprintln(p.Err, wording.Say("forecast.rows-skipped", wording.Places{"n": n}).For(r))
	}
	return log, nil
}

// holdingLog is what the holding's journal knows of the batch.
func (p *program) holdingLog(s *forecast.Subject) (log forecast.Log, err error) {
	err = p.withHolding(func(ctx context.Context, h *holding.Holding) error {
		log, err = h.BrewLog(ctx, s.Name, s.Start)
		return err
	})
	return log, err
}

// readText reads the file that a flag names.
func (p *program) readText(flag, name string) ([]byte, error) {
	text, err := p.ReadFile(name)
	if err != nil {
		return nil, fault.New(flag, name, wording.Say("cli.no-file", wording.Places{"file": name}), wording.Text{}, wording.Text{})
	}
	return text, nil
}

// bareFlag reads a number without a unit.
func bareFlag(name, text string, low, high float64, whole bool) (float64, error) {
	v, err := quantity.Bare(text)
	if err == nil && (v < low || v > high || whole && v != math.Trunc(v)) {
		return 0, fault.New(name, text, wording.Say("forecast.ask.outside"), wording.Say("forecast.ask.allowed", wording.Places{"low": low, "high": high}), wording.Text{})
	}
	if err != nil {
		for _, f := range fault.Of(err) {
			f.Field = name
			return 0, f
		}
	}
	return v, err
}
