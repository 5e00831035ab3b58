package cli

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/record/report"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// calcVerb is `calc`: one command for each worksheet, its flags made from the
// sheet's inputs.
func (p *program) calcVerb() *cobra.Command {
	calc := &cobra.Command{
		Use:   "calc WORKSHEET",
		Short: wording.Say("cli.calc").String(),
		Args:  cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return unknownWord("worksheet", args[0], catalog.Names())
			}
			return p.listSheets()
		},
	}
	for _, sheet := range catalog.All() {
		calc.AddCommand(p.sheetCommand(sheet))
	}
	return calc
}

// listSheets prints all worksheets in the order of the work.
func (p *program) listSheets() error {
	r, err := p.reader(wording.Reader{Language: wording.English, Units: wording.US})
	if err != nil {
		return err
	}
	if p.json {
		return p.listSheetsJSON(r)
	}
	group := worksheet.Group("")
	for _, s := range catalog.All() {
		if s.Group != group {
			group = s.Group
			fmt.Fprintf(p.Out, "\n%s\n", group.Title().For(r))
		}
		fmt.Fprintf(p.Out, "  %-18s %s\n", s.Name, s.Purpose().For(r))
	}
	return nil
}

func (p *program) listSheetsJSON(r wording.Reader) error {
	type item struct {
		Name    string `json:"name"`
		Group   string `json:"group"`
		Purpose string `json:"purpose"`
	}
	items := []item{}
	for _, s := range catalog.All() {
		items = append(items, item{s.Name, string(s.Group), s.Purpose().For(r)})
	}
	return p.printJSON(p.Out, map[string]any{"worksheets": items})
}

// sheetCommand makes the command of one worksheet.
func (p *program) sheetCommand(sheet *worksheet.Sheet) *cobra.Command {
	given := worksheet.Values{}
	cmd := &cobra.Command{
		Use:   sheet.Name,
		Short: sheet.Purpose().String(),
		Args:  cobra.ArbitraryArgs,
		RunE: func(_ *cobra.Command, args []string) error {
			return p.runSheet(sheet, given, args)
		},
	}
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		if in.Argument {
			continue
		}
		flag := cmd.Flags().VarPF(collector{in, given}, in.Flag, "", "")
		if in.Kind == worksheet.Switch {
			flag.NoOptDefVal = "true"
		}
	}
	cmd.SetHelpFunc(func(*cobra.Command, []string) { p.sheetHelp(sheet) })
	return cmd
}

// collector keeps the texts of a flag as they were typed; the form reads them.
type collector struct {
	in    *worksheet.Input
	given worksheet.Values
}

func (c collector) String() string { return "" }
func (c collector) Type() string {
	if c.in == nil {
		return ""
	}
	return c.in.Kind.Name
}

func (c collector) Set(text string) error {
	c.given[c.in.Flag] = append(c.given[c.in.Flag], asTyped(text))
	return nil
}

// runSheet reads the form, asks the sheet and prints its answer.
func (p *program) runSheet(sheet *worksheet.Sheet, given worksheet.Values, args []string) error {
	r, err := p.reader(wording.Reader{Language: wording.English, Units: wording.US})
	if err != nil {
		return err
	}
	if err := takeArguments(sheet, given, args); err != nil {
		return err
	}
	names, err := p.readFiles(sheet, given)
	if err != nil {
		return err
	}
	if names["recipe"] == "" {
		p.handIn(sheet, given)
	}
	result, err := Answer(sheet, given, names, r)
	if err != nil {
		return err
	}
	for _, notice := range result.Notices {
		fmt.Fprintln(p.Err, notice.For(r))
	}
	if err := p.writeDocuments(sheet, given, result, r); err != nil {
		return err
	}
	return p.printAnswer(p.Out, result, r)
}

func (p *program) printAnswer(w io.Writer, result *worksheet.Result, r wording.Reader) error {
	if !p.json {
		return printResult(w, result, r)
	}
	out, err := result.JSON(r)
	if err == nil {
		_, err = w.Write(append(out, '\n'))
	}
	return err
}

// Answer reads the given values and runs the sheet.
func Answer(sheet *worksheet.Sheet, given worksheet.Values, fileNames map[string]string, r wording.Reader) (*worksheet.Result, error) {
	form, err := worksheet.Read(sheet, given, fileNames)
	if err != nil {
		return nil, err
	}
	form.Units = r.Units
	return sheet.Run(form)
}

// takeArguments gives the words without a flag to the inputs that stand
// without one, in order.
func takeArguments(sheet *worksheet.Sheet, given worksheet.Values, args []string) error {
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		if in.Argument && len(args) > 0 {
			given[in.Flag] = []string{asTyped(args[0])}
			args = args[1:]
		}
	}
	if len(args) > 0 {
		return fault.New("argument", asTyped(args[0]), wording.Say("cli.extra", wording.Places{"given": args[0]}), wording.Text{}, wording.Say("cli.extra.advice"))
	}
	return nil
}

// readFiles replaces the name of each file by its text and remembers the name.
func (p *program) readFiles(sheet *worksheet.Sheet, given worksheet.Values) (map[string]string, error) {
	names := map[string]string{}
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		texts := given[in.Flag]
		if in.Kind != worksheet.File && in.Kind != worksheet.FileOrName || len(texts) == 0 {
			continue
		}
		content, err := p.ReadFile(texts[0])
		if err != nil && in.Kind == worksheet.FileOrName && !strings.HasSuffix(strings.ToLower(texts[0]), ".toml") {
			continue // a name
		}
		if err != nil {
			return nil, fault.New(in.Flag, texts[0], wording.Say("cli.no-file", wording.Places{"file": texts[0]}), wording.Text{}, wording.Text{})
		}
		names[in.Flag] = texts[0]
		given[in.Flag] = append([]string{string(content)}, texts[1:]...)
	}
	return names, nil
}

// documents write what a sheet can put on paper, by the sheet's name.
var documents = map[string]func(*worksheet.Result, wording.Reader) ([]byte, error){
	"dose-chart": report.DoseChart,
}

// handIn lets a worksheet know the recipes of the holding, if there is one: a
// calculation makes no data folder, and one that cannot be opened only means
// that its recipes are not known.
func (p *program) handIn(sheet *worksheet.Sheet, given worksheet.Values) {
	folder, err := p.dataFolder()
	if err != nil || len(given["recipe"]) == 0 {
		return
	}
	if _, err := os.Stat(filepath.Join(folder, journal.File)); err != nil {
		return
	}
	h, err := holding.Open(context.Background(), folder, p.means())
	if err != nil {
		return
	}
	defer h.Close()
	h.HandIn(sheet, given)
}

// writeDocuments writes the files that were asked for.
func (p *program) writeDocuments(sheet *worksheet.Sheet, given worksheet.Values, result *worksheet.Result, r wording.Reader) error {
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		if in.Kind != worksheet.OutFile || len(given[in.Flag]) == 0 {
			continue
		}
		content, err := documents[sheet.Name](result, r)
		if err == nil {
			err = writeFile(given[in.Flag][0], content)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// exampleWords parts the words of an example as a shell would: blanks part,
// quotes hold together.
func exampleWords(text string) []string {
	var words []string
	var word strings.Builder
	quote, open := rune(0), false
	for _, c := range text {
		switch {
		case quote != 0 && c == quote:
			quote = 0
		case quote == 0 && (c == '"' || c == '\''):
			quote, open = c, true
		case quote == 0 && c == ' ':
			if open {
				words = append(words, word.String())
			}
			word.Reset()
			open = false
		default:
			word.WriteRune(c)
			open = true
		}
	}
	if open {
		words = append(words, word.String())
	}
	return words
}
