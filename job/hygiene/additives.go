package hygiene

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// readAdditives takes none, plant, animal, or a list of names. One name of
// animal origin makes the whole list animal: 21 CFR 112.3 counts fish like
// manure.
func (f *Facts) readAdditives(word string, origins Origins) *fault.Fault {
	items := splitNames(word)
	if len(items) == 0 {
		return wrongWord(Additives, word, Additives.Values())
	}
	kind := "none"
	for _, item := range items {
		one, wrong := additive(item, len(items), origins)
		if wrong != nil {
			wrong.Given = word
			return wrong
		}
		if one == "animal" || one == "plant" && kind == "none" {
			kind = one
		}
	}
	*f = f.With(Additives, kind)
	if indexOf(Additives.Values(), items[0]) < 0 || len(items) > 1 {
		f.AdditiveNames = items
	}
	return nil
}

func splitNames(word string) []string {
	mark := ","
	if strings.Contains(word, ";") {
		mark = ";"
	}
	var items []string
	for _, item := range strings.Split(word, mark) {
		if item = strings.TrimSpace(item); item != "" {
			items = append(items, item)
		}
	}
	return items
}

// additive is the kind of one item of the list.
func additive(item string, items int, origins Origins) (string, *fault.Fault) {
	if item == "none" && items > 1 {
		return "", fault.New(Additives.String(), item, wording.Say("hygiene.additives.none-and-more"), wording.Say("hygiene.additives.allowed"), wording.Say("hygiene.additives.none-and-more.advice"))
	}
	if indexOf(Additives.Values(), item) >= 0 {
		return item, nil
	}
	if origins != nil {
		if origin, isFood, known := origins(item); known {
			switch {
			case !isFood:
				return "none", nil
			case origin.Animal:
				return "animal", nil
			}
			return "plant", nil
		}
	}
	return "", fault.New(Additives.String(), item, wording.Say("hygiene.additives.unknown", wording.Places{"name": item}),
		wording.Say("hygiene.additives.allowed"), wording.Say("hygiene.additives.unknown.advice"))
}

// argued are additives whose standing as a nutrient source is argued about:
// the rule names molasses, yeast extract and algal powder, and says nothing of
// these. They are read here as additives, the cautious way.
var argued = []string{"humic", "rock dust"}

// arguedAdditive tells whether the additives rest on that reading.
func (f Facts) arguedAdditive() bool {
	for _, name := range f.AdditiveNames {
		for _, word := range argued {
			if strings.Contains(strings.ToLower(name), word) {
				return true
			}
		}
	}
	return false
}
