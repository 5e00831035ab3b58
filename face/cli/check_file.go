package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/wording"
)

// checkFileVerb is `check-file FILE`: every problem of a job file at once.
func (p *program) checkFileVerb() *cobra.Command {
	return &cobra.Command{
		Use:   "check-file FILE",
		Short: wording.Say("cli.check-file").String(),
		Args:  oneFile,
		RunE: func(_ *cobra.Command, args []string) error {
			file, err := p.openJob(args[0], jobfile.Whole)
			if err != nil {
				return err
			}
			if p.json {
				return p.printJSON(p.Out, map[string]any{"problems": []any{}})
			}
			r, err := p.reader(file.Holding.Reader)
			if err != nil {
				return err
			}
			_, err = fmt.Fprintln(p.Out, wording.Say("jobfile.good", wording.Places{"file": args[0]}).For(r))
			return err
		},
	}
}

// oneFile asks for exactly one file name.
func oneFile(cmd *cobra.Command, args []string) error {
	if len(args) == 1 {
		return nil
	}
	given := ""
	if len(args) > 1 {
		given = args[1]
	}
	return fault.New("file", given, wording.Say("cli.one-file"), wording.Say("jobfile.readable"),
		wording.Say("cli.one-file.advice", wording.Places{"use": cmd.UseLine()}))
}

// badFile is a job file with problems.
type badFile struct {
	name     string
	reader   wording.Reader
	problems fault.List
}

func (b *badFile) Error() string { return b.name + ": " + b.problems.Error() }

// openJob reads a job file for a verb. A bad one comes back as a badFile,
// which every verb reports alike.
func (p *program) openJob(name string, purpose jobfile.Purpose) (*jobfile.File, error) {
	text, err := p.ReadFile(name)
	if err != nil {
		return nil, fault.New("file", name, wording.Say("jobfile.file-missing"), wording.Say("jobfile.readable"), wording.Say("jobfile.file-missing.advice"))
	}
	file, problems := jobfile.Read(text, name, purpose)
	if len(problems) > 0 {
		return nil, &badFile{name, jobfile.ReaderOf(text, name), problems}
	}
	return file, nil
}

// problem is one problem as programs read it.
type problem struct {
	Line    int     `json:"line"`
	Key     string  `json:"key"`
	What    string  `json:"what"`
	Given   string  `json:"given"`
	Allowed string  `json:"allowed"`
	Nearest *string `json:"nearest"`
	Advice  string  `json:"advice"`
}

// reportFile prints the problems of a file: for people one line each on
// standard error, with --json one object on standard output.
func (p *program) reportFile(bad *badFile) {
	r, _ := p.reader(bad.reader)
	if p.json {
		problems := []problem{}
		for _, f := range bad.problems {
			report := f.For(r)
			problems = append(problems, problem{report.Line, report.Field, report.What, report.Given, report.Allowed, report.Nearest, report.Advice})
		}
		_ = p.printJSON(p.Out, map[string]any{"problems": problems})
		return
	}
	for _, f := range bad.problems {
		fmt.Fprintf(p.Err, "%s:%d: %s: %s\n", bad.name, f.Line, f.Field, sentenceOf(f, r))
	}
	fmt.Fprintln(p.Err, wording.Say("jobfile.problems", wording.Places{"n": len(bad.problems), "file": bad.name}).For(r))
}

// sentenceOf is a problem on one line: what is wrong, what is allowed, what to
// do.
func sentenceOf(f *fault.Fault, r wording.Reader) string {
	line := f.What.For(r)
	if f.Given != "" {
		line = wording.Say("cli.given", wording.Places{"given": f.Given, "what": line}).For(r)
	}
	if allowed := f.Allowed.For(r); allowed != "" {
		line += wording.Say("cli.allowed", wording.Places{"allowed": allowed}).For(r)
	}
	if advice := f.Advice.For(r); advice != "" {
		line += "; " + advice
	}
	return line
}
