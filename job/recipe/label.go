package recipe

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// ParseLabel reads what a label says is in a food: "sugars 47 %,
// other-carbohydrate 9 %, protein 4 %, fat 0.2 %", any of the four.
func ParseLabel(text string) (Composition, error) {
	var c Composition
	parts := map[string]*quantity.Share{"sugars": &c.Sugars, "othercarbohydrate": &c.OtherCarbohydrate, "protein": &c.Protein, "fat": &c.Fat}
	given := map[string]bool{}
	for _, item := range splitItems(text) {
		word, amount := nameAndAmount(item)
		share, known := parts[Key(word)]
		switch {
		case !known:
			return Composition{}, unknownPart(text, word)
		case given[Key(word)]:
			return Composition{}, labelFault(text, "recipe.label.twice", wording.Places{"part": word})
		}
		given[Key(word)] = true
		value, err := quantity.ParseShare(amount)
		if err != nil || value < 0 || value > 1 {
			return Composition{}, labelFault(text, "recipe.label.percent", wording.Places{"part": word, "given": amount})
		}
		*share = value
	}
	if sum := c.parts(); sum > 100*(1+1e-9) {
		return Composition{}, labelFault(text, "recipe.parts", wording.Places{"sum": sum})
	}
	return c, nil
}

// splitItems parts a list by semicolons where there is one, else by commas.
func splitItems(text string) []string {
	mark := ","
	if strings.Contains(text, ";") {
		mark = ";"
	}
	items := strings.Split(text, mark)
	for i := range items {
		items[i] = strings.TrimSpace(items[i])
	}
	return items
}

// nameAndAmount parts "other carbohydrate 9 %" before its number.
func nameAndAmount(item string) (name, amount string) {
	if at := strings.IndexAny(item, "0123456789.+-−<"); at > 0 {
		for at > 0 && item[at] == '-' && at+1 < len(item) && !startsDigit(item[at+1:]) {
			next := strings.IndexAny(item[at+1:], "0123456789.+-−<")
			if next < 0 {
				return item, ""
			}
			at += 1 + next
		}
		return strings.TrimSpace(item[:at]), strings.TrimSpace(item[at:])
	}
	return item, ""
}

func startsDigit(s string) bool { return s != "" && (s[0] >= '0' && s[0] <= '9' || s[0] == '.') }

func unknownPart(text, word string) *fault.Fault {
	f := labelFault(text, "recipe.label.part", wording.Places{"part": word})
	f.Nearest = fault.Nearest(word, []string{"sugars", "other-carbohydrate", "protein", "fat"})
	return f
}

func labelFault(given, key string, places wording.Places) *fault.Fault {
	return fault.New("label", given, wording.Say(key, places), wording.Say("recipe.label.allowed"), wording.Text{})
}
