// Package source names the published sources of the house: who says so, for
// every number. A formula names its Source; every result carries those it
// rests on to the screen.
package source

import "sort"

// Source is one published text, or a habit of the trade said to be one.
type Source struct {
	Key   string `json:"key"`   // short and lasting: "benson-krause-1984"
	Title string `json:"title"` // author, year, work
	Where string `json:"where"` // pages, address, or how it was obtained
}

var byKey = map[string]Source{}

// cite registers a source once; a key used twice is a mistake that no build
// should survive.
func cite(key, title, where string) Source {
	if _, twice := byKey[key]; twice {
		panic("source: key " + key + " is cited twice")
	}
	s := Source{Key: key, Title: title, Where: where}
	byKey[key] = s
	return s
}

// Find looks a source up by its key.
func Find(key string) (Source, bool) { s, ok := byKey[key]; return s, ok }

// All lists every source by key.
func All() []Source {
	all := make([]Source, 0, len(byKey))
	for _, s := range byKey {
		all = append(all, s)
	}
	sort.Slice(all, func(i, j int) bool { return all[i].Key < all[j].Key })
	return all
}

// CommonPractice marks a habit of the trade that nobody has published a
// measurement for.
var CommonPractice = cite("common-practice", "Common practice of the trade", "habit, no published measurement")
