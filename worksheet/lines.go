package worksheet

import (
	"fmt"
	"slices"
	"strings"

	"aerosteep/wording"
)

// Line is one figure for a person: its name and its value with the unit.
type Line struct {
	Key   string // the JSON key it shows
	Label string
	Value string
}

// Grid is a list of like things for a person: heads and rows.
type Grid struct {
	Key   string
	Label string
	Heads []string
	Rows  [][]string
}

// Figures puts a result's data into lines and tables for a person. Keys
// without a value are left out: there is nothing to say about them.
func (r *Result) Figures(reader wording.Reader) ([]Line, []Grid, error) {
	node, err := Tree(r.Data, reader)
	if err != nil {
		return nil, nil, err
	}
	object, _ := node.(Object)
	object = slices.DeleteFunc(object, func(m Member) bool { return slices.Contains(r.Told, m.Key) })
	lines, grids := figures(object, "", reader)
	for i := range lines {
		if own, has := r.Labels[lines[i].Key]; has {
			lines[i].Label = own.For(reader)
		}
	}
	return lines, grids, nil
}

func figures(object Object, under string, r wording.Reader) (lines []Line, grids []Grid) {
	for _, m := range object {
		label := under + Label(m.Key, r)
		if rows, isGrid := objectRows(m.Value); isGrid {
			grids = append(grids, grid(m.Key, label, rows, r))
			continue
		}
		if inner, isObject := m.Value.(Object); isObject && !isRange(inner) {
			l, g := figures(inner, label+": ", r)
			lines, grids = append(lines, l...), append(grids, g...)
			continue
		}
		if value := Value(m.Key, m.Value, r); value != "" && !said(lines, label, value) {
			lines = append(lines, Line{m.Key, label, value})
		}
	}
	return lines, grids
}

// said tells whether a line stands already: keys that give one quantity in
// two units come out in one unit for whoever uses that one.
func said(lines []Line, label, value string) bool {
	for _, l := range lines {
		if l.Label == label && (l.Value == value || unitOf(value) != "" && unitOf(l.Value) == unitOf(value)) {
			return true
		}
	}
	return false
}

// unitOf is what follows the number of a spoken value.
func unitOf(value string) string {
	return strings.TrimLeft(value, "0123456789.,−\u00a0")
}

func objectRows(value any) ([]Object, bool) {
	items, isSlice := value.([]any)
	if !isSlice || len(items) == 0 {
		return nil, false
	}
	rows := make([]Object, len(items))
	for i, item := range items {
		object, isObject := item.(Object)
		if !isObject {
			return nil, false
		}
		rows[i] = object
	}
	return rows, true
}

// tooLongForGrid are sentences that would push a table apart; programs and
// pages have them.
var tooLongForGrid = map[string]bool{"reasons": true}

// grid keeps only the columns in which some row has a value.
func grid(key, label string, rows []Object, r wording.Reader) Grid {
	g := Grid{Key: key, Label: label}
	cells := make([][]string, len(rows))
	for column, m := range rows[0] {
		if tooLongForGrid[m.Key] {
			continue
		}
		values, any := make([]string, len(rows)), false
		for i, row := range rows {
			if column < len(row) {
				values[i] = Value(row[column].Key, row[column].Value, r)
			}
			any = any || values[i] != ""
		}
		if !any {
			continue
		}
		g.Heads = append(g.Heads, Label(m.Key, r))
		for i := range rows {
			cells[i] = append(cells[i], values[i])
		}
	}
	g.Rows = cells
	return g
}

// Label names a JSON key for a person; a key without a name of its own is
// read as it stands, without its unit.
func Label(key string, r wording.Reader) string {
	if wording.Known("key." + key) {
		return wording.Say("key." + key).For(r)
	}
	name := key
	for _, s := range suffixes {
		if strings.HasSuffix(name, s.end) && len(name) > len(s.end) {
			name = strings.TrimSuffix(name, s.end)
			break
		}
	}
	return strings.ReplaceAll(name, "_", " ")
}

// Value says the value behind a key.
func Value(key string, value any, r wording.Reader) string {
	switch v := value.(type) {
	case nil:
		return ""
	case float64:
		return Speak(key, v).Speak(r)
	case int, int64, int32, uint8:
		return fmt.Sprint(v)
	case bool:
		return yesNo(v).For(r)
	case string:
		return word(key, v, r)
	case Object:
		return rangeValue(key, v, r)
	case []any:
		parts := make([]string, 0, len(v))
		for _, item := range v {
			if said := Value(key, item, r); said != "" {
				parts = append(parts, said)
			}
		}
		return strings.Join(parts, ", ")
	}
	return fmt.Sprint(value)
}

func yesNo(v bool) wording.Text {
	if v {
		return wording.Say("worksheet.yes")
	}
	return wording.Say("worksheet.no")
}

// word says a value of a fixed list in the reader's language where the list
// has words: value.<key>.<value>, or value.<value>.
func word(key, v string, r wording.Reader) string {
	for _, k := range []string{"value." + key + "." + v, "value." + v} {
		if wording.Known(k) {
			return wording.Say(k).For(r)
		}
	}
	return v
}

// isRange tells an estimate or a forecast quantity from other objects.
func isRange(o Object) bool {
	_, estimate := o.Get("estimate")
	_, median := o.Get("median")
	_, low := o.Get("low")
	_, low80 := o.Get("low80")
	return estimate || median || low || low80
}

func rangeValue(key string, o Object, r wording.Reader) string {
	say := func(names ...string) string {
		for _, name := range names {
			if v, there := o.Get(name); there && v != nil {
				return Value(key, v, r)
			}
		}
		return ""
	}
	middle := say("estimate", "median")
	low, high := say("low95", "low80", "low"), say("high95", "high80", "high")
	switch {
	case low == "" && high == "":
		return middle
	case high == "":
		return strings.TrimSpace(middle + wording.Say("worksheet.range.from", wording.Places{"low": low}).For(r))
	case low == "":
		return strings.TrimSpace(middle + wording.Say("worksheet.range.to", wording.Places{"high": high}).For(r))
	case middle == "":
		return wording.Say("worksheet.range.only", wording.Places{"low": low, "high": high}).For(r)
	}
	return middle + wording.Say("worksheet.range", wording.Places{"low": low, "high": high}).For(r)
}
