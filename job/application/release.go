package application

import (
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Release is the one look at a batch before its first load. A batch that is
// refused says why, and where its litres go instead.
type Release struct {
	Smell, Look string                  // as it is said
	Oxygen      *quantity.Concentration // nil with NoMeter
	NoMeter     bool
	At, UseBy   time.Time
	Released    bool
	Initials    string
	Why         string // of a refusal
	Instead     string // where the litres go
}

// Check reports everything that is missing at once, and refuses to release a
// batch past its use-by.
func (r Release) Check() error {
	var faults fault.List
	need := func(field string, there bool) {
		if !there {
			faults = append(faults, missing(field))
		}
	}
	need("smell", filled(r.Smell))
	need("look", filled(r.Look))
	need("oxygen", r.Oxygen != nil || r.NoMeter)
	need("initials", filled(r.Initials))
	need("why", r.Released || filled(r.Why))
	need("instead", r.Released || filled(r.Instead))
	if r.Released && r.At.After(r.UseBy) {
		faults = append(faults, fault.New("use-by", r.UseBy.Format(time.RFC3339), wording.Say("application.past-use-by"), wording.Text{}, wording.Say("application.past-use-by.advice")))
	}
	return faults.OrNil()
}

func filled(s string) bool { return strings.TrimSpace(s) != "" }
