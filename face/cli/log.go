package cli

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"sort"
	"time"

	"github.com/spf13/cobra"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// making are the flags that say where, when and by whom an entry is made.
type making struct{ at, by, device string }

func (m *making) flags(cmd *cobra.Command) {
	cmd.Flags().StringVar(&m.at, "at", "", "when it happened; default now")
	cmd.Flags().StringVar(&m.by, "by", "", "initials; default $AEROSTEEP_BY")
	cmd.Flags().StringVar(&m.device, "device", "", "name of the place the entry is made")
}

// made reads those flags; a time without offset is in the holding's zone.
func (p *program) made(h *holding.Holding, m *making) (holding.Made, error) {
	zone := h.Zone(time.Local)
	at, err := p.moment("at", m.at, zone)
	if err != nil {
		return holding.Made{}, err
	}
	if at.IsZero() {
		at = p.Now().In(zone)
	}
	by := m.by
	if by == "" {
		by = p.Getenv("AEROSTEEP_BY")
	}
	return holding.Made{At: at, By: by, Device: m.device}, nil
}

// logVerb is `log`: one command for each thing that can be logged.
func (p *program) logVerb() *cobra.Command {
	log := &cobra.Command{
		Use:   "log",
		Short: wording.Say("cli.log").String(),
		Args:  cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return cmd.Help()
			}
			return unknownWord("log", args[0], verbNames(cmd))
		},
	}
	for _, f := range holding.Forms {
		log.AddCommand(p.logCommand(f))
	}
	log.AddCommand(p.attachCommand(), p.correctCommand(), p.listCommand())
	return log
}

func (p *program) logCommand(f *holding.Form) *cobra.Command {
	given, m := worksheet.Values{}, &making{}
	cmd := &cobra.Command{
		Use:   f.Word,
		Short: wording.Say("cli.log." + f.Word).String(),
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			return p.withHolding(func(ctx context.Context, h *holding.Holding) error {
				made, err := p.made(h, m)
				if err != nil {
					return err
				}
				e, err := h.Compose(f, given, made)
				if err != nil {
					return err
				}
				return p.keep(ctx, h, e)
			})
		},
	}
	addInputs(cmd, f.Sheet, given)
	m.flags(cmd)
	return cmd
}

// addInputs makes the flags of a form.
func addInputs(cmd *cobra.Command, sheet *worksheet.Sheet, given worksheet.Values) {
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		if cmd.Flags().Lookup(in.Flag) == nil {
			cmd.Flags().VarPF(collector{in, given}, in.Flag, "", in.Allowed().String())
		}
	}
}

// noArguments refuses words that belong to no flag.
func noArguments(_ *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return fault.New("argument", args[0], wording.Say("cli.extra", wording.Places{"given": args[0]}), wording.Text{}, wording.Say("cli.extra.advice"))
}

// logged is what a log verb answers.
type logged struct {
	ID     string        `json:"id"`
	Entry  journal.Entry `json:"entry"`
	Effect *effect       `json:"effect"`
}

// effect is what an entry changed in the forecast of its batch.
type effect struct {
	Text          string   `json:"text"`
	ChanceBefore  *float64 `json:"chance_before"`
	ChanceAfter   *float64 `json:"chance_after"`
	NextReadingAt *string  `json:"next_reading_at"`
}

// keep stores an entry and tells what it changed.
func (p *program) keep(ctx context.Context, h *holding.Holding, e journal.Entry) error {
	r, err := p.reader(h.Reader())
	if err != nil {
		return err
	}
	before := h.LookAhead(ctx, e)
	results, err := h.Store(ctx, e)
	if err != nil {
		return err
	}
	if results[0].Outcome == journal.Refused {
		return results[0].Why
	}
	stored, found, err := h.Journal().Find(ctx, e.ID)
	if err != nil || !found {
		return errors.Join(err, fmt.Errorf("the entry %s was stored and is not found", e.ID))
	}
	if err := p.printLogged(stored.Entry, h.EffectSince(ctx, before), r); err != nil {
		return err
	}
	return p.tellAgain(ctx, h, stored.Entry, r)
}

// tellAgain says which beds an end leaves waiting, and their next hour.
func (p *program) tellAgain(ctx context.Context, h *holding.Holding, e journal.Entry, r wording.Reader) error {
	_, name := e.About()
	b, known := h.Batch(name)
	if p.json || e.Kind != journal.End || !known {
		return nil
	}
	file, err := h.File(jobfile.Whole)
	if err != nil {
		return nil // a set-up that does not plan says so where a plan is asked for
	}
	open, err := h.WaitAgain(ctx, file, b)
	if err != nil || len(open) == 0 {
		return err
	}
	fmt.Fprintln(p.Out, wording.Say("holding.again.head").For(r))
	made := plan.Make(plan.Input{File: file, Now: p.Now(), Reader: r})
	for _, i := range open {
		line := made.Prospect(i).Text(file.Wants[i].Bed)
		fmt.Fprintln(p.Out, wrap("- "+line.For(r), columns, "  "))
	}
	return nil
}

func (p *program) printLogged(e journal.Entry, changed *holding.Effect, r wording.Reader) error {
	answer := logged{ID: e.ID, Entry: e}
	if changed != nil {
		answer.Effect = &effect{changed.Text.For(r), changed.ChanceBefore, changed.ChanceAfter, changed.NextReadingAt}
	}
	if p.json {
		return p.printJSON(p.Out, answer)
	}
	said := wording.Say("cli.log.stored", wording.Places{"id": e.ID})
	if e.Replaces != nil {
		said = wording.Say("cli.log.replaces", wording.Places{"id": e.ID, "old": *e.Replaces})
	}
	fmt.Fprintln(p.Out, said.For(r))
	if answer.Effect != nil {
		fmt.Fprintln(p.Out, wrap(answer.Effect.Text, columns, ""))
	}
	return nil
}

// correctCommand is `log correct ID`: it takes the flags of the entry's kind.
func (p *program) correctCommand() *cobra.Command {
	given, m := worksheet.Values{}, &making{}
	cmd := &cobra.Command{
		Use:   "correct ID",
		Short: wording.Say("cli.log.correct").String(),
		Args:  cobra.ArbitraryArgs,
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fault.New("id", "", wording.Say("worksheet.missing", wording.Places{"flag": "ID"}), wording.Text{}, wording.Say("holding.correct.unknown.advice"))
			}
			return p.withHolding(func(ctx context.Context, h *holding.Holding) error {
				return p.correct(ctx, h, args[0], given, m)
			})
		},
	}
	for _, f := range holding.Forms {
		addInputs(cmd, f.Sheet, given)
	}
	m.flags(cmd)
	return cmd
}

func (p *program) correct(ctx context.Context, h *holding.Holding, id string, given worksheet.Values, m *making) error {
	old, found, err := h.Journal().Find(ctx, id)
	if err != nil {
		return err
	}
	if !found {
		return fault.New("id", id, wording.Say("holding.correct.unknown"), wording.Text{}, wording.Say("holding.correct.unknown.advice"))
	}
	made, err := p.made(h, m)
	if err != nil {
		return err
	}
	if m.at == "" {
		made.At = old.Time()
	}
	e, err := h.Correct(old, given, made)
	if err != nil {
		return err
	}
	return p.keep(ctx, h, e)
}

// listed is an entry in a list.
type listed struct {
	journal.Entry
	ReplacedBy *string `json:"replaced_by"`
}

// listCommand is `log list`.
func (p *program) listCommand() *cobra.Command {
	var batch, since string
	cmd := &cobra.Command{
		Use:   "list",
		Short: wording.Say("cli.log.list").String(),
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			return p.withHolding(func(ctx context.Context, h *holding.Holding) error {
				return p.list(ctx, h, batch, since)
			})
		},
	}
	cmd.Flags().StringVar(&batch, "batch", "", "name of a batch")
	cmd.Flags().StringVar(&since, "since", "", "happened at or after this time")
	return cmd
}

func (p *program) list(ctx context.Context, h *holding.Holding, batch, since string) error {
	r, err := p.reader(h.Reader())
	if err != nil {
		return err
	}
	from, err := p.moment("since", since, h.Zone(time.Local))
	if err != nil {
		return err
	}
	found, err := h.Entries(ctx, batch, from)
	if err != nil {
		return err
	}
	// A phone may have sent readings of a batch whose start is still on its way.
	if unknown := h.KnowsBatch(batch); batch != "" && len(found) == 0 && unknown != nil {
		return unknown
	}
	if p.json {
		entries := []listed{}
		for _, k := range found {
			entries = append(entries, listed{k.Entry, k.ReplacedBy})
		}
		return p.printJSON(p.Out, map[string]any{"entries": entries})
	}
	p.printEntries(found, h.Zone(time.Local), r)
	return nil
}

func (p *program) printEntries(found []journal.Kept, zone *time.Location, r wording.Reader) {
	if len(found) == 0 {
		fmt.Fprintln(p.Out, wording.Say("cli.log.none").For(r))
	}
	for _, k := range found {
		line := fmt.Sprintf("%s  %s  %-8s %s", k.ID, k.Time().In(zone).Format("2006-01-02 15:04"), k.Kind, k.Subject)
		if k.By != "" {
			line += "  " + k.By
		}
		fmt.Fprintln(p.Out, line)
		if k.ReplacedBy != nil {
			fmt.Fprintln(p.Out, "    "+wording.Say("cli.log.replaced-by", wording.Places{"id": *k.ReplacedBy}).For(r))
		}
		if text := plainBody(k.Body); text != "" {
			fmt.Fprintln(p.Out, wrap(text, columns, "    "))
		}
	}
}

// plainBody is what an entry says, key by key.
func plainBody(body json.RawMessage) string {
	var values map[string]any
	if json.Unmarshal(body, &values) != nil {
		return ""
	}
	text := ""
	for _, key := range sortedKeys(values) {
		value, err := json.Marshal(values[key])
		if err != nil {
			continue
		}
		if text != "" {
			text += "; "
		}
		text += key + " " + string(value)
	}
	return text
}

func sortedKeys(values map[string]any) []string {
	keys := make([]string, 0, len(values))
	for key := range values {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	return keys
}
