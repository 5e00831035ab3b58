package holding

import (
	"context"
	"slices"
	"time"

	"aerosteep/job/hygiene"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// Early is a pick that the rules do not let stand: a deviation, with what to
// do about it.
type Early struct {
	Wait
	Picked time.Time
	Now    hygiene.Verdict // what the rules say of that day
}

// Text says what was wrong with the pick, and what to do now.
func (e Early) Text() wording.Text {
	places := wording.Places{"bed": e.Bed, "applied": wording.Day(e.Applied), "picked": wording.Day(e.Picked), "rule": e.rule()}
	switch {
	case e.Now.Allowed == hygiene.WaitUntil && e.Now.Until != nil:
		places["until"] = wording.Day(*e.Now.Until)
		return wording.Say("holding.early.wait", places)
	case e.Now.Allowed == hygiene.No:
		return wording.Say("holding.early.no", places)
	}
	places["facts"] = hygiene.FactNames(e.Now.Missing[:min(len(e.Now.Missing), hygiene.ReadableFacts)])
	return wording.Say("holding.early.ask", places)
}

// rule is the paragraph that decided: of the sets that say what the verdict
// says, the first.
func (e Early) rule() string {
	for _, why := range e.Now.Why {
		if !slices.Contains(e.Now.DecidedBy, why.Set) {
			continue
		}
		if why.Effect == hygiene.Delays || why.Effect == hygiene.Forbids || why.Effect == hygiene.Asks {
			return why.Citation
		}
	}
	return ""
}

// EarlyPicks are the harvests after an application that came too soon for it,
// oldest first.
func (h *Holding) EarlyPicks(ctx context.Context) ([]Early, error) {
	picked, err := h.journal.List(ctx, journal.Wanted{Kinds: []string{journal.Harvest}})
	if err != nil || len(picked) == 0 {
		return nil, err
	}
	waits, err := h.Waits(ctx)
	if err != nil {
		return nil, err
	}
	zone := h.Zone(time.UTC)
	var early []Early
	for _, k := range picked {
		if _, bed := k.About(); k.ReplacedBy == nil {
			early = append(early, tooEarly(waits, bed, dayOf(k.Time(), zone))...)
		}
	}
	return early, nil
}

// tooEarly are the applications to a bed for which a day of picking is too
// soon.
func tooEarly(waits []Wait, bed string, day time.Time) []Early {
	var early []Early
	for _, w := range waits {
		if w.Bed != bed || w.Applied.After(day) {
			continue
		}
		if then := w.On(day); then.Allowed != hygiene.Yes {
			early = append(early, Early{w, day, then})
		}
	}
	return early
}

// deviation is what a harvest entry has to be told at once: the latest
// application for which it came too early; nil where it fits.
func (h *Holding) deviation(ctx context.Context, e journal.Entry) *Effect {
	_, bed := e.About()
	waits, err := h.Waits(ctx)
	if err != nil {
		return nil // the pick is kept all the same; the set-up is to be mended
	}
	early := tooEarly(waits, bed, dayOf(e.Time(), h.Zone(time.UTC)))
	if len(early) == 0 {
		return nil
	}
	return &Effect{Text: strictestOf(early).Text()}
}

// strictestOf is the deviation with the longest way to go.
func strictestOf(early []Early) Early {
	worst := early[0]
	for _, e := range early[1:] {
		if e.Now.Allowed == hygiene.No || worst.Now.Allowed != hygiene.No && e.Now.Until != nil && (worst.Now.Until == nil || e.Now.Until.After(*worst.Now.Until)) {
			worst = e
		}
	}
	return worst
}
