package cli

import (
	"context"
	"fmt"
	"os"
	"time"

	"github.com/spf13/cobra"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/record/intake"
	"aerosteep/wording"
)

// loggerFlags are those of an import of a logger's file.
type loggerFlags struct {
	batch, logger, order string
	columns              []string
	making               making
}

func (l *loggerFlags) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringVar(&l.batch, "batch", "", "the file is a logger's, of readings of this batch")
	f.StringVar(&l.logger, "logger", "", "name of the logger: its columns are remembered under it")
	f.StringArrayVar(&l.columns, "column", nil, `what a column is: "DO (mg/L) = do mg/L"; may be repeated`)
	f.StringVar(&l.order, "order", "", "what comes first in a date like 05/04/2026: day or month")
	l.making.flags(cmd)
}

// taken is what `import --batch` answers.
type taken struct {
	Rows    int           `json:"rows"`
	Stored  int           `json:"stored"`
	Already int           `json:"already_stored"`
	Doubles int           `json:"doubles"`
	Turned  int           `json:"out_of_order"`
	Every   float64       `json:"every_seconds"`
	Gaps    []takenGap    `json:"gaps"`
	Skipped []takenLine   `json:"skipped"`
	Columns []takenColumn `json:"columns"`
	Entries []string      `json:"entries"`
}

type takenGap struct {
	From    string  `json:"from"`
	Until   string  `json:"until"`
	Minutes float64 `json:"minutes"`
}

type takenLine struct {
	Line int    `json:"line"`
	Why  string `json:"why"`
}

type takenColumn struct {
	Name string `json:"name"`
	Key  string `json:"key"`
	Unit string `json:"unit"`
}

func (p *program) importLogger(ctx context.Context, h *holding.Holding, name string, l *loggerFlags) error {
	r, err := p.reader(h.Reader())
	if err != nil {
		return err
	}
	text, err := os.ReadFile(name)
	if err != nil {
		return fault.New("file", name, wording.Say("cli.no-file", wording.Places{"file": name}), wording.Text{}, wording.Text{})
	}
	made, err := p.made(h, &l.making)
	if err != nil {
		return err
	}
	m, known, err := h.MappingOf(l.logger, text)
	if err != nil {
		return err
	}
	if m, err = l.over(m); err != nil {
		return err
	}
	done, err := h.TakeIn(ctx, l.batch, text, m, made)
	if err != nil {
		return err
	}
	if l.logger != "" && (!known || len(l.columns) > 0 || l.order != "") {
		if err := h.Remember(ctx, l.logger, done.Mapping, made); err != nil {
			return err
		}
	}
	return p.tellTaken(done, h.Zone(time.Local), r)
}

// over puts what was said over what is known or guessed.
func (l *loggerFlags) over(m intake.Mapping) (intake.Mapping, error) {
	if l.order != "" && l.order != string(intake.Day) && l.order != string(intake.Month) {
		return m, choiceFault("order", l.order, []string{string(intake.Day), string(intake.Month)})
	}
	if l.order != "" {
		m.Order = intake.Order(l.order)
	}
	if len(l.columns) == 0 {
		return m, nil
	}
	said, err := intake.ParseLines(l.columns, m.Order)
	if err != nil {
		return m, err
	}
	return m.With(said.Columns), nil
}

func (p *program) tellTaken(done *holding.TakenIn, zone *time.Location, r wording.Reader) error {
	answer := taken{
		Rows: done.Rows, Stored: done.New, Already: done.Already, Doubles: done.Doubles, Turned: done.Turned, Every: done.Every.Seconds(),
		Gaps: []takenGap{}, Skipped: []takenLine{}, Columns: []takenColumn{}, Entries: append([]string{}, done.Entries...),
	}
	for _, g := range done.Gaps {
		answer.Gaps = append(answer.Gaps, takenGap{g.From.In(zone).Format(time.RFC3339), g.Until.In(zone).Format(time.RFC3339), g.Until.Sub(g.From).Minutes()})
	}
	for _, s := range done.Skipped {
		answer.Skipped = append(answer.Skipped, takenLine{s.Line, s.Why.For(r)})
	}
	for _, c := range done.Mapping.Columns {
		if c.Key != "" {
			answer.Columns = append(answer.Columns, takenColumn{c.Name, c.Key, c.Unit})
		}
	}
	if p.json {
		return p.printJSON(p.Out, answer)
	}
	p.printTaken(answer, r)
	return nil
}

// mostTold are the gaps and lines that are told to people one by one.
const mostTold = 10

func (p *program) printTaken(t taken, r wording.Reader) {
	say := func(key string, places wording.Places) {
		fmt.Fprintln(p.Out, wrap(wording.Say("intake.told."+key, places).For(r), columns, ""))
	}
	say("sum", wording.Places{"rows": t.Rows, "stored": t.Stored, "already": t.Already})
	for _, c := range t.Columns {
		say("column", wording.Places{"name": c.Name, "key": c.Key, "unit": c.Unit})
	}
	if t.Doubles+t.Turned > 0 {
		say("doubles", wording.Places{"doubles": t.Doubles, "turned": t.Turned})
	}
	for i, g := range t.Gaps {
		if i < mostTold {
			say("gap", wording.Places{"from": g.From, "until": g.Until, "minutes": int(g.Minutes)})
		}
	}
	for i, s := range t.Skipped {
		if i < mostTold {
			say("skipped", wording.Places{"line": s.Line, "why": s.Why})
		}
	}
	if n := max(0, len(t.Gaps)-mostTold) + max(0, len(t.Skipped)-mostTold); n > 0 {
		say("more", wording.Places{"n": n})
	}
}
