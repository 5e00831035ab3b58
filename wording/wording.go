// Package wording holds every sentence a person reads, in each language.
//
// Code never writes a sentence: it names a key and fills its places. The text
// is put into a language, and its numbers into a system of units, only when a
// Reader is known:
//
//	t := wording.Say("oxygen.saturation.answer", wording.Places{"held": held})
//	t.For(wording.Reader{Language: wording.Spanish})
//
// A table entry is a Pair written without field names, so an entry that lacks
// a language does not compile.
package wording

import (
	"sort"
	"strings"
)

// Language is a language that every sentence exists in.
type Language string

// The languages of the house.
const (
	English Language = "en"
	Spanish Language = "es"
)

// Languages lists them in the order in which a choice is offered.
var Languages = []Language{English, Spanish}

// Units is the system of units a person reads. What they type is always
// understood in either.
type Units string

// The two systems.
const (
	US     Units = "us"
	Metric Units = "metric"
)

// Reader is whoever a sentence is for.
type Reader struct {
	Language Language
	Units    Units
}

// Pair is one sentence in English and in Spanish, in that order.
type Pair struct{ English, Spanish string }

// Table is the sentences of one room by key. Keys start with the room's name.
type Table map[string]Pair

// Speaker is a value that knows how to say itself to a reader: a quantity
// with its unit, a time in a zone, another sentence.
type Speaker interface{ Speak(Reader) string }

// Places are the values for the places {name} of a sentence.
type Places map[string]any

// Text is a sentence that has not been put into a language yet.
type Text struct {
	Key    string
	Places Places
}

// Say names a sentence and fills its places.
func Say(key string, places ...Places) Text {
	t := Text{Key: key}
	for _, p := range places {
		if t.Places == nil {
			t.Places = Places{}
		}
		for name, value := range p {
			t.Places[name] = value
		}
	}
	return t
}

// Verbatim is a text that needs no language: what the user typed, a name.
func Verbatim(s string) Text { return Text{Key: verbatim, Places: Places{"text": s}} }

const verbatim = "verbatim"

// IsZero tells whether there is nothing to say.
func (t Text) IsZero() bool { return t.Key == "" }

// String is the sentence in English and metric units, for logs and tests.
func (t Text) String() string { return t.For(Reader{English, Metric}) }

// Speak makes a Text a Speaker, so that a sentence can stand in a place.
func (t Text) Speak(r Reader) string { return t.For(r) }

// For puts the sentence into the reader's language and units. A key that no
// table knows comes back as itself between guillemets; a test keeps that from
// happening.
func (t Text) For(r Reader) string {
	if t.Key == "" {
		return ""
	}
	pair, known := catalogue()[t.Key]
	if !known {
		return "«" + t.Key + "»"
	}
	template := pair.English
	if r.Language == Spanish {
		template = pair.Spanish
	}
	return fill(template, t.Places, r)
}

// Known tells whether a key has a sentence.
func Known(key string) bool { _, ok := catalogue()[key]; return ok }

// Keys lists all keys, sorted.
func Keys() []string {
	keys := make([]string, 0, len(catalogue()))
	for k := range catalogue() {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}

// Of returns the pair behind a key.
func Of(key string) (Pair, bool) { p, ok := catalogue()[key]; return p, ok }

// List joins sentences or names: "a, b and c".
func List(items []string, r Reader) string {
	and := " and "
	if r.Language == Spanish {
		and = " y "
	}
	switch n := len(items); n {
	case 0:
		return ""
	case 1:
		return items[0]
	default:
		return strings.Join(items[:n-1], ", ") + and + items[n-1]
	}
}
