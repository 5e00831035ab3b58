package jobfile

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/job/recipe"
	"aerosteep/wording"
)

// references checks that names are unique within their kind and that every
// name that is used names something.
func (c *checker) references() {
	names := map[string][]string{}
	for _, f := range tables {
		if f.many {
			names[f.name] = c.uniqueNames(f)
		}
	}
	for _, r := range recipe.Starters() {
		names["recipe"] = append(names["recipe"], r.Name)
	}
	for _, f := range tables {
		for _, r := range c.records[f.name] {
			for _, k := range f.keys {
				if k.refers != "" {
					c.refersTo(r, k, names[k.refers])
				}
			}
		}
	}
}

func (c *checker) uniqueNames(f *form) []string {
	seen := map[string]bool{}
	names := []string{}
	for _, r := range c.records[f.name] {
		name, given := get[string](r, "name")
		if !given {
			continue
		}
		if seen[name] {
			c.problem(r, "name", wording.Say("jobfile.name-twice"), wording.Say("jobfile.name-twice.allowed", wording.Places{"table": f.header()}), wording.Say("jobfile.name-twice.advice"), "")
			continue
		}
		seen[name] = true
		names = append(names, name)
	}
	return names
}

func (c *checker) refersTo(r *record, k key, known []string) {
	var used []string
	if one, ok := get[string](r, k.name); ok {
		used = []string{one}
	} else if several, ok := get[[]string](r, k.name); ok {
		used = several
	}
	if c.purpose == FactsOnly && k.refers != "batch" && len(c.records[k.refers]) == 0 {
		return // the other tables need not be there
	}
	for _, name := range used {
		if !contains(known, name) {
			c.namesNothing(r, k, name, known)
		}
	}
}

func contains(list []string, name string) bool {
	for _, n := range list {
		if n == name {
			return true
		}
	}
	return false
}

func (c *checker) namesNothing(r *record, k key, name string, known []string) {
	nearest := fault.Nearest(name, known)
	advice := wording.Say("jobfile.names-nothing.advice", wording.Places{"table": findTable(k.refers).header()})
	if nearest != "" {
		advice = wording.Say("jobfile.did-you-mean", wording.Places{"nearest": nearest})
	}
	allowed := wording.Say("jobfile.one-of", wording.Places{"words": strings.Join(known, ", ")})
	if len(known) == 0 {
		allowed = wording.Say("jobfile.name-of", wording.Places{"table": findTable(k.refers).header()})
	}
	c.note(&fault.Fault{
		Field: r.form.name + "." + k.name, Line: r.lineOf(k.name), Given: shorten(name), Nearest: nearest,
		What: wording.Say("jobfile.names-nothing"), Allowed: allowed, Advice: advice,
	})
}

// onlySite fills in the site where there is one only; with several, every bed
// and vessel has to say its own.
func (c *checker) onlySite() {
	sites := c.records["site"]
	for _, table := range []string{"bed", "vessel"} {
		for _, r := range c.records[table] {
			switch {
			case r.has("site"):
			case len(sites) == 1:
				if name, ok := get[string](sites[0], "name"); ok {
					r.values["site"] = name
				}
			case len(sites) > 1 && c.purpose == Whole:
				c.missing(r, "site", wording.Say("jobfile.which-site"))
			}
		}
	}
}

// missing notes a key that this file needs.
func (c *checker) missing(r *record, key string, what wording.Text) {
	k, _ := r.form.find(key)
	c.problem(r, key, what, wording.Say("jobfile.kind."+k.kind.name), wording.Say("jobfile.missing.advice", wording.Places{"key": key}), "")
}
