package jobfile

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
)

// Tables are the names of the tables, in the order in which a file is written;
// many tells those of which a file has several, each with a name.
func Tables() (names []string, many map[string]bool) {
	many = map[string]bool{}
	for _, f := range tables {
		names = append(names, f.name)
		many[f.name] = f.many
	}
	return names, many
}

// Typed is a table as a person types it into boxes: one text for each key. Lists
// are parted by semicolons, corners are "latitude, longitude", an item of a
// recipe is "ingredient: amount @ when".
func Typed(body json.RawMessage) map[string]string {
	var object map[string]any
	typed := map[string]string{}
	if json.Unmarshal(body, &object) != nil {
		return typed
	}
	for name, v := range object {
		typed[name] = typedValue(v)
	}
	return typed
}

func typedValue(v any) string {
	switch v := v.(type) {
	case string:
		return v
	case bool:
		return strconv.FormatBool(v)
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64)
	case []any:
		items := make([]string, len(v))
		for i := range v {
			items[i] = typedItem(v[i])
		}
		return strings.Join(items, "; ")
	}
	return fmt.Sprint(v)
}

func typedItem(v any) string {
	switch v := v.(type) {
	case map[string]any:
		text := fmt.Sprintf("%v: %v", v["ingredient"], v["amount"])
		if when, later := v["when"]; later {
			text += fmt.Sprintf(" @ %v", when)
		}
		return text
	case []any:
		parts := make([]string, len(v))
		for i := range v {
			parts[i] = typedValue(v[i])
		}
		return strings.Join(parts, ", ")
	}
	return typedValue(v)
}

// FromTyped is the table that was typed over the one before, nil for a new one. A
// box that is empty leaves its key out; one that nobody touched keeps its value as
// it was, with what a box cannot show (the bulk density of one item). Whether the
// values will do is for Read to say.
func FromTyped(name string, typed map[string]string, before json.RawMessage) json.RawMessage {
	object := map[string]any{}
	f := findTable(name)
	if f == nil {
		return nil
	}
	values, shown := map[string]json.RawMessage{}, Typed(before)
	_ = json.Unmarshal(before, &values) // no object: nothing stood before
	for _, k := range f.keys {
		switch text := strings.TrimSpace(typed[k.name]); {
		case text == "":
		case text == strings.TrimSpace(shown[k.name]) && values[k.name] != nil:
			object[k.name] = values[k.name]
		default:
			object[k.name] = k.value(text)
		}
	}
	body, _ := json.Marshal(object) // texts, numbers and lists of them
	return body
}

// value is a text in the shape that its key takes; one that has not that shape
// stays a text, and is refused as such.
func (k key) value(text string) any {
	switch {
	case k.kind.name == "yes-no" && (text == "true" || text == "false"):
		return text == "true"
	case k.kind.inner != nil:
		return items(text)
	case k.kind.name == "corners":
		return corners(text)
	case k.kind.name == "names" || k.kind.name == "days":
		return split(text, ";")
	}
	if n, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64); err == nil && (k.kind.name == "number" || k.kind.name == "whole") {
		return n
	}
	return text
}

func split(text, by string) []any {
	var parts []any
	for _, part := range strings.Split(text, by) {
		if part = strings.TrimSpace(part); part != "" {
			parts = append(parts, part)
		}
	}
	return parts
}

func corners(text string) []any {
	var all []any
	for _, corner := range split(text, ";") {
		var pair []any
		for _, degrees := range split(corner.(string), ",") {
			if n, err := strconv.ParseFloat(degrees.(string), 64); err == nil {
				pair = append(pair, n)
			}
		}
		all = append(all, pair)
	}
	return all
}

func items(text string) []any {
	var all []any
	for _, line := range split(strings.ReplaceAll(text, "\n", ";"), ";") {
		ingredient, rest, _ := strings.Cut(line.(string), ":")
		amount, when, later := strings.Cut(rest, "@")
		item := map[string]any{"ingredient": strings.TrimSpace(ingredient), "amount": strings.TrimSpace(amount)}
		if later {
			item["when"] = strings.TrimSpace(when)
		}
		all = append(all, item)
	}
	return all
}
