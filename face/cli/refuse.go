package cli

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"aerosteep/fault"
	"aerosteep/wording"
)

// How this face refuses: one line of what is wrong, with the input's name,
// what was given and what is allowed; then hint lines with what to do. No
// blame, no inner names. With --json the same as an object.

// errStrict is the error of an answer that --strict turns into exit status 3.
var errStrict = errors.New("strict")

// errSaid is the error of an answer that says itself that something is wrong; it
// only sets the exit status.
var errSaid = errors.New("said")

// trouble is an error that knows how to tell people what could not be done.
type trouble interface {
	Say() (what, advice wording.Text)
}

// report prints an error and chooses the exit status.
func (p *program) report(err error, args []string) int {
	switch {
	case errors.Is(err, errStrict):
		return 3
	case errors.Is(err, errSaid):
		return 1
	}
	var bad *badFile
	if errors.As(err, &bad) {
		p.reportFile(bad)
		return 2
	}
	reader, _ := p.reader(wording.Reader{Language: wording.English, Units: wording.US})
	faults := fault.Of(err)
	asJSON := p.json || slices.Contains(args, "--json")
	switch {
	case len(faults) > 0 && asJSON:
		p.reportJSON(faults, reader)
	case len(faults) > 0:
		for _, f := range faults {
			p.reportFault(f, reader)
		}
	default:
		p.reportTrouble(err, asJSON, reader)
	}
	if len(faults) > 0 {
		return 2
	}
	return 1
}

// reportTrouble prints what could not be done although nothing was wrong with
// what was typed.
func (p *program) reportTrouble(err error, asJSON bool, r wording.Reader) {
	what, advice := err.Error(), ""
	var t trouble
	if errors.As(err, &t) {
		whatText, adviceText := t.Say()
		what, advice = whatText.For(r), adviceText.For(r)
	}
	if asJSON {
		p.printJSON(p.Err, map[string]any{"error": map[string]string{"field": "", "given": "", "allowed": "", "advice": advice, "what": what}})
		return
	}
	fmt.Fprintln(p.Err, "aerosteep:", what)
	if advice != "" {
		fmt.Fprintln(p.Err, "hint: "+advice)
	}
}

func (p *program) reportFault(f *fault.Fault, r wording.Reader) {
	what := f.What.For(r)
	if f.Given != "" && !strings.Contains(what, f.Given) && len(f.Given) < 80 {
		what = wording.Say("cli.given", wording.Places{"given": f.Given, "what": what}).For(r)
	}
	line := p.fieldName(f) + ": " + what
	if allowed := f.Allowed.For(r); allowed != "" {
		line += wording.Say("cli.allowed", wording.Places{"allowed": allowed}).For(r)
	}
	fmt.Fprintln(p.Err, "aerosteep: "+line)
	if advice := f.Advice.For(r); advice != "" {
		fmt.Fprintln(p.Err, "hint: "+advice)
	}
}

// withoutFlag are fields that are typed as words, not as flags.
var withoutFlag = []string{"verb", "worksheet", "file", "argument", "id", "log"}

// fieldName writes a flag as it is typed; other fields stand as they are.
func (p *program) fieldName(f *fault.Fault) string {
	if f.Line > 0 {
		at := fmt.Sprintf("line %d", f.Line)
		if strings.Contains(f.What.String(), at) {
			return f.Field // the sentence says it already
		}
		return f.Field + " " + at
	}
	if strings.ContainsAny(f.Field, "./ ") || slices.Contains(withoutFlag, f.Field) || p.files[f.Field] {
		return f.Field
	}
	return "--" + f.Field
}

func (p *program) reportJSON(faults fault.List, r wording.Reader) {
	type body struct {
		fault.Report
		Also []fault.Report `json:"also,omitempty"`
	}
	b := body{Report: faults[0].For(r)}
	for _, f := range faults[1:] {
		b.Also = append(b.Also, f.For(r))
	}
	p.printJSON(p.Err, map[string]any{"error": b})
}

func (p *program) printJSON(w interface{ Write([]byte) (int, error) }, value any) error {
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	return encoder.Encode(value)
}

// flagFault turns a flag that could not be read into a fault.
func flagFault(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	if errors.As(err, &unknown) {
		name := unknown.GetSpecifiedName()
		f := unknownWord("flag", "--"+name, flagNames(cmd))
		f.Field = name
		if name == "rate" {
			f.Advice = wording.Say("worksheet.rate-of-what")
		}
		return f
	}
	var bare *pflag.ValueRequiredError
	if errors.As(err, &bare) {
		name := bare.GetSpecifiedName()
		return fault.New(name, "", wording.Say("cli.no-value", wording.Places{"flag": "--" + name}), wording.Text{}, wording.Text{})
	}
	var wrong *pflag.InvalidValueError
	if errors.As(err, &wrong) {
		return fault.New(wrong.GetFlag().Name, wrong.GetValue(), wording.Say("worksheet.switch"), wording.Text{}, wording.Text{})
	}
	return fault.New("flag", "", wording.Verbatim(err.Error()), wording.Text{}, wording.Text{})
}

func flagNames(cmd *cobra.Command) []string {
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, "--"+f.Name) })
	return names
}

func joined(words []string) string { return strings.Join(words, ", ") }
