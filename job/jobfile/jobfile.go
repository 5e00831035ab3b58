// Package jobfile reads the file that describes a holding and what is wanted:
// ground, rig, larder, water, recipes, wants and batches, in TOML or in JSON.
//
// The form is declared once, as data (tables.go): its tables, their keys, what
// each key takes and its default. Checking, the JSON Schema, the meaning of
// each key and writing a file back are all derived from that.
//
//	file, problems := jobfile.Read(text, "jobs.toml", jobfile.Whole)
//
// All problems of a file are told at once, each with its line, its key with
// the table it stands in, and the nearest known word.
package jobfile

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Purpose is what a file is read for; it decides what has to be there.
type Purpose int

const (
	// Whole asks for everything that a plan needs.
	Whole Purpose = iota
	// FactsOnly asks for the names of beds and batches only, and takes the
	// other tables whole or in part: for the hygiene decision.
	FactsOnly
)

// Read reads a job file. Its name decides the form: .json is JSON, anything
// else TOML. Where there are problems, the file is nil.
func Read(text []byte, name string, purpose Purpose) (*File, fault.List) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if !utf8.Valid(text) {
		return nil, fault.List{notReadable("jobfile.not-utf8", badLine(text), "")}
	}
	root, problems := parse(text, name)
	if root == nil {
		return nil, problems
	}
	c := &checker{purpose: purpose, problems: problems}
	c.run(root)
	c.references()
	c.onlySite()
	c.agree()
	c.measure()
	c.shelf, c.recipes = c.larder()
	if len(c.problems) > 0 {
		return nil, c.sorted()
	}
	return build(c), nil
}

func parse(text []byte, name string) (*table, fault.List) {
	if strings.HasSuffix(strings.ToLower(name), ".json") {
		return readJSON(text)
	}
	return readTOML(bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n")))
}

// badLine is the line of the first byte that is not UTF-8.
func badLine(text []byte) int {
	line := 1
	for len(text) > 0 {
		c, size := utf8.DecodeRune(text)
		if c == utf8.RuneError && size == 1 {
			return line
		}
		if c == '\n' {
			line++
		}
		text = text[size:]
	}
	return line
}

// ReaderOf is who a file says it is for, even where other things in it are
// wrong; the problems are told to the same reader.
func ReaderOf(text []byte, name string) wording.Reader {
	r := wording.Reader{Language: wording.English, Units: wording.US}
	root, _ := parse(bytes.TrimPrefix(text, []byte("\ufeff")), name)
	if root == nil {
		return r
	}
	holding := root.get("holding")
	if holding == nil || holding.shape != tableShape {
		return r
	}
	if v := holding.table.get("language"); v != nil && v.text == string(wording.Spanish) {
		r.Language = wording.Spanish
	}
	if v := holding.table.get("units"); v != nil && v.text == string(wording.Metric) {
		r.Units = wording.Metric
	}
	return r
}
