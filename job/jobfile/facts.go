package jobfile

import (
	"strings"
	"time"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// Facts are what the file says for the hygiene decision, by name, each as the
// word a flag would take ("yes", "hot", "2026-05-14", "unknown"). Only what
// the file says stands in it.
type Facts map[string]string

// factNames are the facts in the order in which they are asked.
var factNames = []string{
	"material", "animal_origin", "human_waste", "treatment", "process_record", "nop_compost", "contaminated",
	"additives", "held", "water", "water_ecoli", "sanitized", "pretest", "pathogens", "crop_use", "market",
	"covered", "organic", "edible_part", "method", "contact_during", "contact_after", "applied", "harvest",
}

const unknown = "unknown"

// factKinds reads each fact; all of them also take "unknown".
var factKinds = map[string]kind{
	"material":       factOf("compost", "vermicompost", "raw-manure", "leachate"),
	"animal_origin":  yesNoFact,
	"human_waste":    yesNoFact,
	"treatment":      factOf("validated", "hot", "none"),
	"process_record": yesNoFact,
	"nop_compost":    yesNoFact,
	"contaminated":   yesNoFact,
	"additives":      additivesFact,
	"held":           heldFact,
	"water":          factOf("municipal", "treated", "well", "rain", "surface"),
	"water_ecoli":    factOf("not-detected", "detected"),
	"sanitized":      yesNoFact,
	"pretest":        factOf("passed", "failed", "none"),
	"pathogens":      factOf("not-tested", "not-found", "found"),
	"crop_use":       factOf("food", "grain", "sprouts", "non-food"),
	"market":         factOf("sold", "own-use"),
	"covered":        yesNoFact,
	"organic":        yesNoFact,
	"edible_part":    factOf("in-soil", "touches-soil", "clear-of-soil"),
	"method":         factOf("foliar", "drench", "drip"),
	"contact_during": factOf("none", "minimized", "contact"),
	"contact_after":  factOf("none", "minimized", "contact"),
	"applied":        dateFact,
	"harvest":        dateFact,
}

// factsOn names the facts that a table takes: any fact may stand on any of the
// three, and the nearest wins.
var factsOn = map[string][]string{"bed": factNames, "batch": factNames, "hygiene": factNames}

func factKeys(table string) []key {
	keys := make([]key, 0, len(factNames))
	for _, name := range factsOn[table] {
		keys = append(keys, plain(name, factKinds[name]))
	}
	return keys
}

func factOf(words ...string) kind { return choiceOf(append(words, unknown)...) }

var yesNoFact = kind{name: "choice", choice: []string{"yes", "no", unknown}, schema: map[string]any{"enum": []any{"yes", "no", unknown, true, false}}, read: func(r reading) any {
	if r.shape == boolShape {
		if r.text == "true" {
			return "yes"
		}
		return "no"
	}
	return choiceOf("yes", "no", unknown).read(r)
}}

var dateFact = kind{name: "date-fact", schema: map[string]any{"type": "string"}, read: func(r reading) any {
	if r.text == unknown {
		return unknown
	}
	day, ok := dateKind.read(r).(time.Time)
	if !ok {
		return nil
	}
	return day.Format(time.DateOnly)
}}

var heldFact = kind{name: "held", schema: map[string]any{"type": "string"}, read: func(r reading) any {
	if r.text == unknown {
		return unknown
	}
	held, ok := amountOf("time", quantity.ParseSpan, from[quantity.Span](0, 30*86400)).read(r).(quantity.Span)
	if !ok {
		return nil
	}
	return wording.Number(held.Hours(), 15, wording.Reader{Language: wording.English}) + " h"
}}

// additivesFact is "none", "plant", "animal" or names of ingredients, in one
// text parted by commas or in a list.
var additivesFact = kind{name: "additives", schema: namesKind.schema, read: func(r reading) any {
	names, ok := namesKind.read(r).([]string)
	if !ok {
		return nil
	}
	return strings.Join(names, ", ")
}}
