package bench

import (
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
)

// Paper is a document or a test that settles something about a compost.
type Paper string

// What can be asked for.
const (
	HeatingRecord Paper = "heating-record"
	Bioassay      Paper = "bioassay"
	Salts         Paper = "conductivity"
	Smell         Paper = "smell"
)

// Check is one paper or test that an unknown compost still lacks: what it would
// change and how long it takes.
type Check struct {
	Paper  Paper
	Takes  quantity.Span
	Says   wording.Text
	Source source.Source
}

// checks are in the order in which they are quickest to have. Times are common
// practice; the bioassay's is three weeks from sowing to the third leaf.
var checks = []Check{
	{Smell, quantity.Minutes(5), wording.Say("bench.check.smell"), source.CommonPractice},
	{Salts, quantity.Minutes(30), wording.Say("bench.check.conductivity"), source.CommonPractice},
	{HeatingRecord, quantity.Days(2), wording.Say("bench.check.heating-record"), source.CFR21Part112},
	{Bioassay, quantity.Days(21), wording.Say("bench.check.bioassay"), source.CommonPractice},
}

// Lot is what is known about a compost: the papers and tests that it has
// passed, and those it has failed. "I don't know" is an answer.
type Lot struct {
	Passed, Failed map[Paper]bool
}

// Standing is what a lot may still be used on.
type Standing string

// The standings, the strictest first.
const (
	Rejected Standing = "rejected"  // a test failed
	PutAside Standing = "put-aside" // not in the tank until its checks are done
	NonFood  Standing = "non-food"  // plants nobody eats, unfed
	Ready    Standing = "ready"
)

// Note says the standing to a person.
func (s Standing) Note() wording.Text { return wording.Say("bench.standing." + string(s)) }

// Judge says what a lot may be used on, which checks it lacks and when the last
// of them can be done if all are begun at once.
//
// Without a heating record it stays off food however it smells; without the
// bioassay it stays off broad-leaved plants, which herbicide residue harms, so
// the lot is put aside.
func (l Lot) Judge() (standing Standing, lacking []Check, until quantity.Span) {
	standing = Ready
	for _, c := range checks {
		if l.Failed[c.Paper] {
			return Rejected, nil, 0
		}
		if l.Passed[c.Paper] {
			continue
		}
		lacking = append(lacking, c)
		until = max(until, c.Takes)
		switch {
		case c.Paper != HeatingRecord:
			standing = PutAside
		case standing == Ready:
			standing = NonFood
		}
	}
	return standing, lacking, until
}
