package jobfile

import "aerosteep/wording"

// form is one table of the job file: its name, whether it may stand several
// times, and its keys in the order in which they are written.
type form struct {
	name string
	many bool
	keys []key
}

// key is one key of a table. Its meaning for people is the sentence
// "jobfile.key.<table>.<key>".
type key struct {
	name     string
	kind     kind
	must     bool   // has to be there
	standard string // default, as the file would say it
	refers   string // table whose names it takes
}

func must(k key) key                   { k.must = true; return k }
func (k key) of(table string) key      { k.refers = table; return k }
func (k key) or(standard string) key   { k.standard = standard; return k }
func plain(name string, kind kind) key { return key{name: name, kind: kind} }

// find is a key of the form by name.
func (f *form) find(name string) (key, bool) {
	for _, k := range f.keys {
		if k.name == name {
			return k, true
		}
	}
	return key{}, false
}

// names are the keys of the form, in order.
func (f *form) names() []string {
	names := make([]string, len(f.keys))
	for i, k := range f.keys {
		names[i] = k.name
	}
	return names
}

// meaning is what a key is for, as a sentence.
func (f *form) meaning(k key) wording.Text {
	if _, isFact := factKinds[k.name]; isFact && f.carriesFact(k.name) {
		return wording.Say("jobfile.fact." + k.name)
	}
	return wording.Say("jobfile.key." + f.name + "." + k.name)
}

func (f *form) carriesFact(name string) bool {
	for _, fact := range factsOn[f.name] {
		if fact == name {
			return true
		}
	}
	return false
}

// tables is the whole form, in the order in which a file is written.
var tables = []*form{
	holdingForm, limitsForm, siteForm, bedForm, pumpForm, vesselForm, applicatorForm,
	waterForm, hygieneForm, costsForm, ingredientForm, recipeForm, personForm, loggerForm, wantForm, batchForm,
}

func findTable(name string) *form {
	for _, f := range tables {
		if f.name == name {
			return f
		}
	}
	return nil
}
