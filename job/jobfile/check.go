package jobfile

import (
	"slices"
	"sort"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/recipe"
	"aerosteep/wording"
)

// checker goes through the tree once and notes every problem.
type checker struct {
	purpose  Purpose
	zone     *time.Location // nil: not given
	noZone   bool           // a time without offset was met and there is no zone
	problems fault.List
	records  map[string][]*record // by table, in order of the file
	lines    map[string]int       // of the first table of each name

	areaAsked map[string]bool // beds whose missing area has been told
	shelf     recipe.Shelf
	recipes   []recipe.Recipe
}

// record is one table whose values have been read.
type record struct {
	form   *form
	table  *table
	values map[string]any
	meant  map[string]bool // keys that a misspelt one is near to: told already
	line   int
}

// get is a value that was read, and whether it was there and right.
func get[T any](r *record, key string) (T, bool) {
	v, ok := r.values[key].(T)
	return v, ok
}

// optional is a value, or nil where it was not given.
func optional[T any](r *record, key string) *T {
	if v, ok := get[T](r, key); ok {
		return &v
	}
	return nil
}

// or is a value, or the default.
func or[T any](r *record, key string, standard T) T {
	if v, ok := get[T](r, key); ok {
		return v
	}
	return standard
}

// has tells whether the key stands in the file, be it right, wrong or misspelt.
func (r *record) has(key string) bool { return r.table.get(key) != nil || r.meant[key] }

// hasAny tells whether any of the keys stands in the file.
func (r *record) hasAny(keys ...string) bool { return slices.ContainsFunc(keys, r.has) }

// lineOf is where a key stands, or its table.
func (r *record) lineOf(key string) int {
	if i, known := r.table.index[key]; known {
		return r.table.keys[i].line
	}
	return r.line
}

func (r *record) name() string { return or(r, "name", "") }

func (c *checker) note(f *fault.Fault) { c.problems = append(c.problems, f) }

// problem notes what is wrong with a key of a record.
func (c *checker) problem(r *record, key string, what, allowed, advice wording.Text, nearest string) {
	given := ""
	if v := r.table.get(key); v != nil {
		given = v.given()
	}
	c.note(&fault.Fault{
		Field: r.form.name + "." + key, Line: r.lineOf(key), Given: given,
		What: what, Allowed: allowed, Advice: advice, Nearest: nearest,
	})
}

// run reads all tables. The holding comes first: times need its zone.
func (c *checker) run(root *table) {
	c.records = map[string][]*record{}
	c.lines = map[string]int{}
	c.areaAsked = map[string]bool{}
	if v := root.get("holding"); v != nil && v.shape == tableShape {
		if z := v.table.get("zone"); z != nil {
			silent := &checker{}
			c.zone, _ = zoneKind.read(reading{value: z, kind: &zoneKind, checker: silent}).(*time.Location)
		}
	}
	for _, p := range root.keys {
		c.topLevel(p)
	}
	if c.noZone {
		c.missingZone()
	}
}

func (c *checker) topLevel(p pair) {
	if p.name == "form" {
		c.formNumber(p.value)
		return
	}
	f := findTable(p.name)
	if f == nil {
		c.unknownTable(p)
		return
	}
	c.lines[f.name] = p.line
	if f.many != (p.value.shape == listShape) || !f.many && p.value.shape != tableShape {
		c.note(&fault.Fault{
			Field: f.name, Line: p.line, Given: p.value.given(),
			What: wording.Say("jobfile.brackets"), Allowed: wording.Verbatim(f.header()),
			Advice: wording.Say("jobfile.brackets.advice", wording.Places{"header": f.header()}),
		})
		return
	}
	if !f.many {
		c.records[f.name] = append(c.records[f.name], c.readTable(f, p.value.table, ""))
		return
	}
	for _, item := range p.value.list {
		if item.shape == tableShape {
			c.records[f.name] = append(c.records[f.name], c.readTable(f, item.table, ""))
		}
	}
}

func (f *form) header() string {
	if f.many {
		return "[[" + f.name + "]]"
	}
	return "[" + f.name + "]"
}

func (c *checker) formNumber(v *value) {
	if v.shape == wholeShape && v.text == "1" {
		return
	}
	c.note(&fault.Fault{
		Field: "form", Line: v.line, Given: v.given(),
		What: wording.Say("jobfile.form"), Allowed: wording.Verbatim("1"),
	})
}

func (c *checker) unknownTable(p pair) {
	known := []string{"form"}
	for _, f := range tables {
		known = append(known, f.name)
	}
	c.unknown(p.name, p, known)
}

// unknown notes a key that the form does not have, and answers the nearest
// that it has.
func (c *checker) unknown(path string, p pair, known []string) string {
	nearest := fault.Nearest(p.name, known)
	advice := wording.Say("jobfile.unknown.advice")
	if nearest != "" {
		advice = wording.Say("jobfile.did-you-mean", wording.Places{"nearest": nearest})
	}
	c.note(&fault.Fault{
		Field: path, Line: p.line, Given: shorten(p.name), Nearest: nearest,
		What:    wording.Say("jobfile.unknown"),
		Allowed: wording.Say("jobfile.one-of", wording.Places{"words": strings.Join(known, ", ")}),
		Advice:  advice,
	})
	return nearest
}

// readTable reads the keys of one table; within is the path of the table that
// it stands in.
func (c *checker) readTable(f *form, t *table, within string) *record {
	r := &record{form: f, table: t, values: map[string]any{}, meant: map[string]bool{}, line: t.line}
	path := within
	if path == "" {
		path = f.name
	}
	for _, p := range t.keys {
		k, known := f.find(p.name)
		if !known {
			if nearest := c.unknown(path+"."+p.name, p, f.names()); nearest != "" {
				r.meant[nearest] = true
			}
			continue
		}
		kind := k.kind
		if v := kind.read(reading{value: p.value, kind: &kind, checker: c, path: path + "." + p.name}); v != nil {
			r.values[p.name] = v
		}
	}
	c.mustHave(r, path)
	return r
}

// mustHave notes the keys that have to be there and are not.
func (c *checker) mustHave(r *record, path string) {
	for _, k := range r.form.keys {
		if !k.must || r.has(k.name) || c.purpose == FactsOnly && k.name != "name" {
			continue
		}
		c.note(&fault.Fault{
			Field: path + "." + k.name, Line: r.line,
			What:    wording.Say("jobfile.missing"),
			Allowed: wording.Say("jobfile.kind." + k.kind.name),
			Advice:  wording.Say("jobfile.missing.advice", wording.Places{"key": k.name}),
		})
	}
}

func (c *checker) zoneNeeded() { c.noZone = true }

func (c *checker) missingZone() {
	line := 1
	if at, known := c.lines["holding"]; known {
		line = at
	}
	for _, p := range c.problems {
		if p.Field == "holding.zone" {
			return // it is there, and wrong: one problem is enough
		}
	}
	c.note(&fault.Fault{
		Field: "holding.zone", Line: line,
		What: wording.Say("jobfile.zone-missing"), Allowed: wording.Say("jobfile.kind.zone"),
		Advice: wording.Say("jobfile.zone-missing.advice"),
	})
}

// sorted is the problems by line, in the order in which they were found.
func (c *checker) sorted() fault.List {
	sort.SliceStable(c.problems, func(i, j int) bool { return c.problems[i].Line < c.problems[j].Line })
	return c.problems
}
