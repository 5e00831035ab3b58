package jobfile

import (
	"aerosteep/wording"
)

// Schema is the JSON Schema (2020-12) of the job file's JSON form, with the
// meaning of every key in the reader's language. Key order is JSON's.
func Schema(r wording.Reader) map[string]any {
	properties := map[string]any{"form": map[string]any{"const": 1, "default": 1}}
	for _, f := range tables {
		if f.many {
			properties[f.name] = map[string]any{"type": "array", "items": f.schema(r)}
		} else {
			properties[f.name] = f.schema(r)
		}
	}
	return map[string]any{
		"$schema":              "https://json-schema.org/draft/2020-12/schema",
		"title":                wording.Say("jobfile.schema.title").For(r),
		"description":          wording.Say("jobfile.schema.description").For(r),
		"type":                 "object",
		"additionalProperties": false,
		"properties":           properties,
	}
}

func (f *form) schema(r wording.Reader) map[string]any {
	properties := map[string]any{}
	required := []string{}
	for _, k := range f.keys {
		properties[k.name] = f.keySchema(k, r)
		if k.must {
			required = append(required, k.name)
		}
	}
	s := map[string]any{"type": "object", "additionalProperties": false, "properties": properties}
	if len(required) > 0 {
		s["required"] = required
	}
	return s
}

func (f *form) keySchema(k key, r wording.Reader) map[string]any {
	s := map[string]any{}
	for name, v := range k.kind.schema {
		s[name] = v
	}
	if k.kind.inner != nil {
		s["type"], s["minItems"], s["items"] = "array", 1, k.kind.inner.schema(r)
	}
	meaning := f.meaning(k).For(r)
	if k.kind.name != "choice" {
		meaning += ": " + wording.Say("jobfile.kind."+k.kind.name).For(r)
	}
	if k.standard != "" {
		meaning += ". " + wording.Say("jobfile.default", wording.Places{"default": k.standard}).For(r)
	}
	s["description"] = meaning
	return s
}

// Key is one key of the form for a page or a guide that explains it.
type Key struct {
	Table    string
	Name     string
	Must     bool
	Meaning  wording.Text
	Takes    wording.Text
	Choices  []string
	Standard string
	Kind     string // how it is typed: "yes-no", "number", "names" …
	Refers   string // table whose names it takes
}

// Keys lists every key of the form in the order in which a file is written.
func Keys() []Key {
	keys := []Key{}
	for _, f := range tables {
		for _, k := range f.keys {
			keys = append(keys, Key{
				Table: f.name, Name: k.name, Must: k.must,
				Meaning: f.meaning(k), Takes: wording.Say("jobfile.kind." + k.kind.name),
				Choices: k.kind.choice, Standard: k.standard, Kind: k.kind.name, Refers: k.refers,
			})
		}
	}
	return keys
}
