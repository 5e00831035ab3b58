package jobfile

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"aerosteep/fault"
)

// Part is one table of a job file as JSON. A journal keeps set-up as parts:
// subject "bed:Kale, east" is the table bed with that name.
type Part struct {
	Table string
	Name  string // "" for a table that stands once, and for wants
	Body  json.RawMessage
}

// Parts are the tables of a file in the order in which they are written.
func (f *File) Parts() []Part {
	parts := []Part{}
	for _, form := range tables {
		for _, r := range f.records[form.name] {
			parts = append(parts, Part{Table: form.name, Name: partName(form, r), Body: r.json()})
		}
	}
	return parts
}

func partName(f *form, r *record) string {
	if f.many {
		return r.name()
	}
	return ""
}

// JSON is the file in its JSON form: the same keys, times as RFC 3339 texts.
func (f *File) JSON() []byte {
	var b strings.Builder
	b.WriteString(`{"form":1`)
	for _, form := range tables {
		records := f.records[form.name]
		if len(records) == 0 {
			continue
		}
		fmt.Fprintf(&b, ",%q:", form.name)
		if form.many {
			b.Write(jsonList(records))
		} else {
			b.Write(records[0].json())
		}
	}
	return []byte(b.String() + "}")
}

func jsonList(records []*record) []byte {
	items := make([]string, len(records))
	for i, r := range records {
		items[i] = string(r.json())
	}
	return []byte("[" + strings.Join(items, ",") + "]")
}

// json is a table with its keys in the order of the form.
func (r *record) json() json.RawMessage {
	items := []string{}
	for _, k := range r.form.keys {
		if v := r.table.get(k.name); v != nil {
			items = append(items, strconv.Quote(k.name)+":"+r.jsonOf(k, v))
		}
	}
	return json.RawMessage("{" + strings.Join(items, ",") + "}")
}

func (r *record) jsonOf(k key, v *value) string {
	if at, isMoment := r.values[k.name].(time.Time); isMoment && k.kind.name == momentKind.name {
		return strconv.Quote(at.Format(time.RFC3339Nano))
	}
	if items, isTables := r.values[k.name].([]*record); isTables {
		return string(jsonList(items))
	}
	return v.json()
}

// json is a value as it was typed.
func (v *value) json() string {
	switch v.shape {
	case wholeShape, decimalShape:
		return jsonNumber(v.text)
	case boolShape:
		return v.text
	case listShape:
		items := make([]string, len(v.list))
		for i, item := range v.list {
			items[i] = item.json()
		}
		return "[" + strings.Join(items, ",") + "]"
	}
	var b strings.Builder
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	_ = encoder.Encode(v.text) // a string and a builder cannot fail
	return strings.TrimSuffix(b.String(), "\n")
}

// jsonNumber writes a TOML number (1_000, +3, 5.) as JSON does.
func jsonNumber(text string) string {
	n, err := strconv.ParseFloat(strings.ReplaceAll(text, "_", ""), 64)
	if err != nil {
		return "null"
	}
	return strconv.FormatFloat(n, 'f', -1, 64)
}

// Compose writes parts as a job file in TOML, in the order of the form. What
// cannot be read back is told as problems.
func Compose(parts []Part) ([]byte, fault.List) {
	root, problems := gather(parts)
	if len(problems) > 0 {
		return nil, problems
	}
	var b strings.Builder
	b.WriteString("form = 1\n")
	for _, form := range tables {
		v := root[form.name]
		for _, t := range v {
			b.WriteString("\n" + form.header() + "\n")
			writeTable(&b, form, t)
		}
	}
	return []byte(b.String()), nil
}

// gather reads the bodies of parts, by table.
func gather(parts []Part) (map[string][]*table, fault.List) {
	byTable := map[string][]*table{}
	for _, p := range parts {
		t, problems := readJSON(p.Body)
		if len(problems) > 0 {
			return nil, problems
		}
		byTable[p.Table] = append(byTable[p.Table], t)
	}
	return byTable, nil
}

func writeTable(b *strings.Builder, form *form, t *table) {
	for _, k := range form.keys {
		v := t.get(k.name)
		switch {
		case v == nil:
		case k.kind.inner != nil && v.shape == listShape:
			fmt.Fprintf(b, "%s = [\n", k.name)
			for _, item := range v.list {
				fmt.Fprintf(b, "  %s,\n", inline(k.kind.inner, item))
			}
			b.WriteString("]\n")
		default:
			fmt.Fprintf(b, "%s = %s\n", k.name, tomlValue(k.kind, v))
		}
	}
}

func inline(form *form, v *value) string {
	if v.shape != tableShape {
		return tomlValue(textKind, v)
	}
	items := []string{}
	for _, k := range form.keys {
		if item := v.table.get(k.name); item != nil {
			items = append(items, k.name+" = "+tomlValue(k.kind, item))
		}
	}
	return "{ " + strings.Join(items, ", ") + " }"
}

var offsetMoment = regexp.MustCompile(`^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$`)

func tomlValue(k kind, v *value) string {
	switch v.shape {
	case wholeShape, decimalShape, boolShape:
		return v.text
	case listShape:
		items := make([]string, len(v.list))
		for i, item := range v.list {
			items[i] = tomlValue(k, item)
		}
		return "[" + strings.Join(items, ", ") + "]"
	}
	if k.name == momentKind.name && offsetMoment.MatchString(v.text) {
		return v.text
	}
	return tomlText(v.text)
}

// tomlText writes a basic string: TOML escapes as JSON does, but for DEL.
func tomlText(s string) string {
	quoted := (&value{text: s}).json()
	return strings.NewReplacer("\x7f", `\u007F`).Replace(quoted)
}
