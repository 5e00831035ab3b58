package cli

import (
	"context"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"aerosteep/fault"
	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/wording"
	"aerosteep/worksheet"
	sheets "aerosteep/worksheet/hygiene"
)

// checkVerb is `check FILE`: what may go where, and when may it be picked?
func (p *program) checkVerb() *cobra.Command {
	var bed, batch string
	var isStrict bool
	cmd := &cobra.Command{
		Use:   "check [FILE] [--bed NAME] [--batch NAME]",
		Short: wording.Say("cli.check").String(),
		Args:  cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			file, err := p.factsFile(args)
			if err != nil {
				return err
			}
			return p.check(file, bed, batch, isStrict)
		},
	}
	cmd.Flags().StringVar(&bed, "bed", "", "only this bed")
	cmd.Flags().StringVar(&batch, "batch", "", "only this batch")
	cmd.Flags().BoolVar(&isStrict, "strict", false, "exit status 3 on any no or ask")
	return cmd
}

// factsFile is the job file, or the holding as one.
func (p *program) factsFile(args []string) (*jobfile.File, error) {
	if len(args) > 0 {
		return p.openFacts(args[0])
	}
	var file *jobfile.File
	err := p.withHolding(func(_ context.Context, h *holding.Holding) error {
		if h.Empty() {
			return fault.New("file", "", wording.Say("forecast.no-job"), wording.Say("forecast.no-job.allowed"), wording.Say("forecast.no-job.advice"))
		}
		var err error
		file, err = h.File(jobfile.FactsOnly)
		return err
	})
	return file, err
}

// openFacts reads a job file and everything that its facts say.
func (p *program) openFacts(name string) (*jobfile.File, error) {
	file, err := p.openJob(name, jobfile.FactsOnly)
	if err != nil {
		return nil, err
	}
	_, problems := file.Meetings()
	if len(file.Beds) == 0 {
		none := noBed()
		none.Line = 1
		problems = append(problems, none)
	}
	if len(problems) > 0 {
		return nil, &badFile{name, file.Holding.Reader, problems}
	}
	return file, nil
}

func noBed() *fault.Fault {
	return fault.New("bed", "", wording.Say("cli.check.no-bed"), wording.Say("cli.check.no-bed.allowed"), wording.Text{})
}

// checked is the answer of check.
type checked struct {
	Beds      []sheets.BedRuling `json:"beds"`
	RulesAsOf string             `json:"rules_as_of"`
}

func (p *program) check(file *jobfile.File, bed, batch string, isStrict bool) error {
	r, err := p.reader(file.Holding.Reader)
	if err != nil {
		return err
	}
	meetings, err := chosen(file, bed, batch)
	if err != nil {
		return err
	}
	verdicts := sheets.Judged(meetings)
	if p.json {
		err = p.printChecked(verdicts, r)
	} else {
		p.tellChecked(verdicts, r)
	}
	if err == nil && isStrict && slices.ContainsFunc(verdicts, open) {
		return errStrict
	}
	return err
}

// open tells whether a verdict is one that --strict does not let pass.
func open(v sheets.BedVerdict) bool { return v.Allowed == hygiene.No || v.Allowed == hygiene.Ask }

// chosen are the meetings of the file, or of one bed or batch.
func chosen(file *jobfile.File, bed, batch string) ([]jobfile.Meeting, error) {
	if len(file.Beds) == 0 {
		return nil, noBed()
	}
	if _, known := file.Bed(bed); bed != "" && !known {
		return nil, unknownWord("bed", bed, bedNames(file))
	}
	if _, known := file.Batch(batch); batch != "" && !known {
		return nil, unknownWord("batch", batch, batchNames(file))
	}
	meetings, problems := file.Meetings()
	if len(problems) > 0 {
		return nil, problems
	}
	return slices.DeleteFunc(meetings, func(m jobfile.Meeting) bool {
		return bed != "" && m.Bed != bed || batch != "" && (m.Batch == nil || *m.Batch != batch)
	}), nil
}

func bedNames(file *jobfile.File) []string {
	names := make([]string, len(file.Beds))
	for i, b := range file.Beds {
		names[i] = b.Name
	}
	return names
}

func (p *program) printChecked(verdicts []sheets.BedVerdict, r wording.Reader) error {
	answer := checked{Beds: []sheets.BedRuling{}, RulesAsOf: hygiene.RulesAsOf}
	for _, v := range verdicts {
		answer.Beds = append(answer.Beds, v.Ruling())
	}
	text, err := worksheet.Envelope(answer, sheets.Sources(), sheets.Cautions(), r)
	if err == nil {
		_, err = p.Out.Write(append(text, '\n'))
	}
	return err
}

// tellChecked prints each bed with its verdict first, then why and the nearest
// way; what to ask first closes it.
func (p *program) tellChecked(verdicts []sheets.BedVerdict, r wording.Reader) {
	for i, v := range verdicts {
		if i > 0 {
			fmt.Fprintln(p.Out)
		}
		fmt.Fprintln(p.Out, wrap(v.Title().For(r), columns, ""))
		fmt.Fprintln(p.Out, wrap(sheets.Sentence(v.Verdict).For(r), columns, "  "))
		for _, note := range sheets.Notes(v.Verdict) {
			fmt.Fprintln(p.Out, wrap(note.For(r), columns, "  "))
		}
	}
	if first, any := sheets.FirstQuestion(verdicts); any {
		fmt.Fprintf(p.Out, "\n%s\n", wrap(first.For(r), columns, ""))
	}
	printCautions(p.Out, worksheet.Sentences(sheets.Cautions(), r), r)
}
