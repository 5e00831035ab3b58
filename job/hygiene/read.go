package hygiene

import (
	"sort"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Words are facts as somebody wrote them, by name.
type Words map[string]string

// Origin says where a food for microbes comes from: an animal or not.
type Origin struct{ Animal bool }

// Origins looks up the origin of an ingredient by its name, and whether it is
// food for microbes at all; compost, vermicompost, leaf mould and water are
// not. The second answer is false where the name is not known.
type Origins func(name string) (origin Origin, isFood, known bool)

// Read takes facts from words and reports everything that is wrong with them
// at once. A word "unknown" is the same as no word.
func Read(words Words, origins Origins) (Facts, error) {
	var facts Facts
	var wrong fault.List
	for _, name := range sortedNames(words) {
		fact, known := FactNamed(name)
		if !known {
			wrong = append(wrong, unknownFact(name, words[name]))
			continue
		}
		if f := facts.read(fact, strings.TrimSpace(words[name]), origins); f != nil {
			wrong = append(wrong, f)
		}
	}
	if f := facts.checkDays(words["harvest"]); f != nil {
		wrong = append(wrong, f)
	}
	return facts, wrong.OrNil()
}

// sortedNames puts known facts in the order of asking, others behind them.
func sortedNames(words Words) []string {
	var known, others []string
	for _, f := range All() {
		if _, given := words[f.String()]; given {
			known = append(known, f.String())
		}
	}
	for name := range words {
		if _, is := FactNamed(name); !is {
			others = append(others, name)
		}
	}
	sort.Strings(others)
	return append(known, others...)
}

func unknownFact(name, given string) *fault.Fault {
	f := fault.New(name, given, wording.Say("hygiene.no-fact", wording.Places{"name": name}),
		wording.Say("worksheet.allowed.choices", wording.Places{"choices": strings.Join(Names(), ", ")}), wording.Text{})
	if f.Nearest = fault.Nearest(name, Names()); f.Nearest != "" {
		f.Advice = wording.Say("worksheet.nearest", wording.Places{"nearest": f.Nearest})
	}
	return f
}

// read takes one fact.
func (f *Facts) read(fact Fact, word string, origins Origins) *fault.Fault {
	if word == "unknown" {
		return nil
	}
	switch fact {
	case Applied:
		return readDay(&f.Applied, fact, word)
	case Harvest:
		return readDay(&f.Harvest, fact, word)
	case Held:
		return f.readHeld(word)
	case Additives:
		return f.readAdditives(word, origins)
	}
	return f.readWord(fact, word)
}

// readWord takes a fact that has one of a list of values; the true and false
// of TOML are a yes and a no.
func (f *Facts) readWord(fact Fact, word string) *fault.Fault {
	values := fact.Values()
	meant := word
	if values[0] == "yes" {
		switch word {
		case "true":
			meant = "yes"
		case "false":
			meant = "no"
		}
	}
	if indexOf(values, meant) < 0 {
		return wrongWord(fact, word, values)
	}
	*f = f.With(fact, meant)
	return nil
}

func wrongWord(fact Fact, word string, values []string) *fault.Fault {
	wrong := fault.New(fact.String(), word, wording.Say("worksheet.no-choice", wording.Places{"given": word}),
		wording.Say("worksheet.allowed.choices", wording.Places{"choices": strings.Join(values, ", ") + ", unknown"}), wording.Text{})
	if wrong.Nearest = fault.Nearest(word, values); wrong.Nearest != "" {
		wrong.Advice = wording.Say("worksheet.nearest", wording.Places{"nearest": wrong.Nearest})
	}
	return wrong
}

func readDay(into **time.Time, fact Fact, word string) *fault.Fault {
	day, err := time.Parse(time.DateOnly, word)
	if err != nil {
		return fault.New(fact.String(), word, wording.Say("worksheet.no-date"), wording.Say("worksheet.kind.date"), wording.Text{})
	}
	*into = &day
	return nil
}

// longestHeld is the longest time that a liquid is judged as brewed, not stored.
const longestHeld = quantity.Span(30 * 86400)

func (f *Facts) readHeld(word string) *fault.Fault {
	allowed := wording.Say("hygiene.held.allowed")
	span, err := quantity.ParseSpan(word)
	if err != nil {
		wrong := fault.Of(err)[0]
		wrong.Field, wrong.Given, wrong.Allowed = Held.String(), word, allowed
		return wrong
	}
	if span > longestHeld {
		return fault.New(Held.String(), word, wording.Say("worksheet.outside", wording.Places{"given": word}), allowed, wording.Text{})
	}
	*f = f.HoldingFor(span)
	return nil
}

// HoldingFor is the facts with the time from mixing with water to application.
func (f Facts) HoldingFor(span quantity.Span) Facts {
	f.HeldFor = &span
	if span.Hours() > 1+1e-9 {
		return f.With(Held, "over-1h")
	}
	return f.With(Held, "up-to-1h")
}

// On is the facts with the day of application.
func (f Facts) On(day time.Time) Facts {
	f.Applied = &day
	return f
}

// checkDays refuses a harvest before the application.
func (f *Facts) checkDays(given string) *fault.Fault {
	if f.Applied == nil || f.Harvest == nil || !f.Harvest.Before(*f.Applied) {
		return nil
	}
	applied := f.Applied.Format(time.DateOnly)
	return fault.New(Harvest.String(), given,
		wording.Say("hygiene.harvest-first", wording.Places{"harvest": f.Harvest.Format(time.DateOnly), "applied": applied}),
		wording.Say("hygiene.harvest-first.allowed", wording.Places{"applied": applied}), wording.Say("hygiene.harvest-first.advice"))
}
