// Package cli is the face in the terminal: one verb per file. It reads what
// was typed, asks the floors below, and prints; it computes nothing.
package cli

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"aerosteep/fault"
	"aerosteep/record/feed"
	"aerosteep/wording"
)

// Terminal is what the face stands on: streams, clock, files, environment.
// Tests hand in their own.
type Terminal struct {
	In       io.Reader
	Out, Err io.Writer
	Now      func() time.Time
	ReadFile func(string) ([]byte, error)
	Getenv   func(string) string
	Sky      *feed.Feed                           // fetches a forecast from an address that is named
	Serve    func(context.Context, Serving) error // brings up the server; handed in, for faces do not know each other
}

// System is the real terminal.
func System() Terminal {
	sky := &feed.Feed{Agent: "aerosteep/" + Version}
	if folder, err := os.UserCacheDir(); err == nil {
		sky.Folder = filepath.Join(folder, "aerosteep")
	}
	return Terminal{In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Now: time.Now, ReadFile: os.ReadFile, Getenv: os.Getenv, Sky: sky}
}

// Version is set when a release is built.
var Version = "dev"

// common are the flags that every verb takes.
type common struct {
	json  bool
	units string
	lang  string
	data  string
}

// program is one call of the program: the terminal and the common flags.
type program struct {
	Terminal
	common
	files map[string]bool // that were read, by the name as typed
}

// remembering reads files and keeps their names, since a refusal names a file
// as it is and a flag with its hyphens.
func (p *program) remembering(read func(string) ([]byte, error)) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		p.files[name] = true
		return read(name)
	}
}

// Run carries out one call and returns its exit status: 0 done, 1 could not,
// 2 the input is wrong, 3 what --strict asks for.
func Run(args []string, t Terminal) int {
	p := &program{Terminal: t, files: map[string]bool{}}
	p.ReadFile = p.remembering(t.ReadFile)
	root := p.root(args)
	root.SetArgs(keepNegatives(args))
	root.SetIn(t.In)
	root.SetOut(t.Out)
	root.SetErr(t.Err)
	err := root.Execute()
	if err == nil {
		return 0
	}
	return p.report(err, args)
}

// negative is a word that begins like a number below zero, not like a flag.
var negative = regexp.MustCompile(`^-[.,]?\d`)

// keepNegatives writes the minus of a number as a true minus sign, which the
// flag parser leaves alone and every quantity reads.
func keepNegatives(args []string) []string {
	kept := slices.Clone(args)
	for i, arg := range kept {
		if negative.MatchString(arg) {
			kept[i] = "−" + arg[1:]
		}
	}
	return kept
}

// asTyped undoes keepNegatives.
func asTyped(text string) string {
	if number, negative := strings.CutPrefix(text, "−"); negative {
		return "-" + number
	}
	return text
}

func (p *program) root(args []string) *cobra.Command {
	root := &cobra.Command{
		Use:           "aerosteep",
		Short:         wording.Say("cli.root").String(),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return cmd.Help()
			}
			return unknownWord("verb", args[0], verbNames(cmd))
		},
	}
	root.CompletionOptions.HiddenDefaultCmd = true
	root.SetFlagErrorFunc(flagFault)
	flags := root.PersistentFlags()
	flags.BoolVar(&p.json, "json", false, "print one JSON object")
	flags.StringVar(&p.units, "units", "", "us or metric")
	flags.StringVar(&p.lang, "lang", "", "en or es")
	flags.StringVar(&p.data, "data", "", "data folder")
	cobra.EnableCommandSorting = false
	root.AddCommand(p.verbsFor(args)...)
	return root
}

// verbsFor makes the verbs that a call may need: version alone where that is
// asked, so that a start costs no more than it has to.
func (p *program) verbsFor(args []string) []*cobra.Command {
	if len(args) > 0 && args[0] == "version" {
		return []*cobra.Command{p.versionVerb()}
	}
	return p.verbs()
}

// verbs lists the verbs in the order of the work.
func (p *program) verbs() []*cobra.Command {
	return []*cobra.Command{
		p.planVerb(),
		p.checkFileVerb(),
		p.schemaVerb(),
		p.checkVerb(),
		p.forecastVerb(),
		p.calcVerb(),
		p.logVerb(),
		p.loadVerb(),
		p.unloadVerb(),
		p.exportVerb(),
		p.importVerb(),
		p.backupVerb(),
		p.restoreVerb(),
		p.verifyVerb(),
		p.paperVerb(),
		p.serveVerb(),
		p.passwordVerb(),
		p.demoVerb(),
		p.versionVerb(),
	}
}

func verbNames(root *cobra.Command) []string {
	var names []string
	for _, c := range root.Commands() {
		names = append(names, c.Name())
	}
	return names
}

// reader is whoever reads the answer; fallback is what the job file or the
// holding says.
func (p *program) reader(fallback wording.Reader) (wording.Reader, error) {
	r := fallback
	switch p.units {
	case "":
	case string(wording.US), string(wording.Metric):
		r.Units = wording.Units(p.units)
	default:
		return r, choiceFault("units", p.units, []string{string(wording.US), string(wording.Metric)})
	}
	switch p.lang {
	case "":
	case string(wording.English), string(wording.Spanish):
		r.Language = wording.Language(p.lang)
	default:
		return r, choiceFault("lang", p.lang, []string{string(wording.English), string(wording.Spanish)})
	}
	return r, nil
}

func choiceFault(flag, given string, choices []string) error {
	f := unknownWord(flag, given, choices)
	f.What = wording.Say("worksheet.no-choice", wording.Places{"given": given})
	return f
}

// unknownWord is a fault of a word that is not one of the known ones; it
// names the nearest.
func unknownWord(field, given string, known []string) *fault.Fault {
	f := fault.New(field, given, wording.Say("cli.unknown."+field, wording.Places{"given": given}), wording.Say("worksheet.allowed.choices", wording.Places{"choices": joined(known)}), wording.Text{})
	if f.Nearest = fault.Nearest(given, known); f.Nearest != "" {
		f.Advice = wording.Say("worksheet.nearest", wording.Places{"nearest": f.Nearest})
	}
	return f
}
