package holding

import (
	"context"
	"slices"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/quantity"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// Effect is what an entry changed in the forecast of its batch, or what has to
// be done because of it.
type Effect struct {
	Text          wording.Text
	ChanceBefore  *float64 // in 100, of going below the limit; nil where past the end
	ChanceAfter   *float64
	NextReadingAt *string
}

// felt are the kinds that a forecast learns from.
var felt = []string{journal.Reading, journal.Series, journal.Event, journal.Count}

// Sight is the forecast of a batch at one hour, before something is logged.
type Sight struct {
	batch string
	at    time.Time
	seen  *forecast.Answer
	entry journal.Entry
}

// LookAhead looks at the batch of an entry before the entry is stored. It sees
// nothing where the entry is not about a batch, or too little is known of it
// for a forecast: what is logged is stored all the same.
func (h *Holding) LookAhead(ctx context.Context, e journal.Entry) Sight {
	what, name := e.About()
	if what != "batch" || !slices.Contains(felt, e.Kind) {
		return Sight{entry: e}
	}
	s := Sight{batch: name, at: e.Time(), entry: e}
	s.seen = h.look(ctx, s)
	return s
}

// seedOfEffects is the seed of `forecast` where none is given, so that a log
// and the forecast after it say the same.
const seedOfEffects = 1

func (h *Holding) look(ctx context.Context, s Sight) *forecast.Answer {
	made, _, telling, err := h.Forecast(ctx, s.batch, Asked{Now: s.at, Hours: 24, Members: 2000, Seed: seedOfEffects})
	if err != nil {
		return nil
	}
	return made.Answer(telling)
}

// EffectSince compares with what was seen before: nil where nothing changed or
// nothing could be seen.
func (h *Holding) EffectSince(ctx context.Context, before Sight) *Effect {
	switch {
	case before.entry.Kind == journal.Harvest:
		return h.deviation(ctx, before.entry)
	case before.entry.Kind == journal.Start:
		return h.uncleaned(ctx, before.entry)
	case before.seen == nil:
		return nil
	}
	after := h.look(ctx, before)
	if after == nil || after.ReadingsUsed == before.seen.ReadingsUsed && same(after.Chance, before.seen.Chance) {
		return nil
	}
	effect := &Effect{ChanceBefore: before.seen.Chance, ChanceAfter: after.Chance, NextReadingAt: after.NextReadingAt}
	effect.Text = effect.say(after.Limit, before.at.Location())
	return effect
}

func same(a, b *float64) bool { return a == nil && b == nil || a != nil && b != nil && *a == *b }

func (e *Effect) say(limit float64, zone *time.Location) wording.Text {
	if e.ChanceBefore == nil || e.ChanceAfter == nil {
		return wording.Say("holding.effect.past")
	}
	places := wording.Places{"before": in100(*e.ChanceBefore), "after": in100(*e.ChanceAfter), "limit": quantity.DissolvedOxygen(limit)}
	if e.NextReadingAt == nil {
		return wording.Say("holding.effect.chance", places)
	}
	if at, err := time.Parse(time.RFC3339, *e.NextReadingAt); err == nil {
		places["next"] = at.In(zone).Format("15:04")
	}
	return wording.Say("holding.effect.chance-next", places)
}

// in100 is a chance to the whole number; what is not nought is not said to be.
func in100(chance float64) string {
	switch {
	case chance > 0 && chance < 1:
		return "<1"
	case chance > 99 && chance < 100:
		return ">99"
	}
	return wording.Fixed(chance, 0, wording.Reader{})
}
