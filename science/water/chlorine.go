// Package water is about the water before the brew: the chlorine in it and
// what takes it out, how warm it gets when waters are mixed, how long a hose
// takes. Pure arithmetic: no clock, no files.
package water

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Test is what a kit read on one water, as mg/L of Cl2. A nil reading was not
// taken. Combined chlorine is chloramine: the total less the free.
type Test struct{ Free, Total, Combined *quantity.Concentration }

// Presence says whether chloramine is in the water.
type Presence string

// Chloramine is present from ChloramineSeen on; where neither a total nor a
// combined reading was taken with the free one, nobody knows.
const (
	Present Presence = "present"
	Absent  Presence = "absent"
	Unknown Presence = "unknown"
)

// ChloramineSeen is the combined chlorine from which a kit shows chloramine,
// and by how much the readings of one water may disagree.
const ChloramineSeen quantity.Concentration = 0.1

// slack keeps a limit a limit after a conversion of units.
const slack = 1e-9

// Residual is what a Test tells about the water. Nil is not known.
type Residual struct {
	Free, Combined, Total *quantity.Concentration
	Chloramine            Presence
	DoseOn                quantity.Concentration // what an agent has to take out
}

// Read works out the residual from whichever readings were taken.
//
//	free and total       combined = max(0, total - free), dose on the larger
//	free and combined    total = free + combined
//	total and combined   free = max(0, total - combined)
//	one alone            the others stay unknown
//
// Errors: no reading at all; readings that contradict each other by more than
// 0.1 mg/L. Source: combined = total - free, Standard Methods 4500-Cl.
func (t Test) Read() (Residual, error) {
	if t.Free == nil && t.Total == nil && t.Combined == nil {
		return Residual{}, fault.New("total-chlorine", "", wording.Say("water.no-reading"), wording.Say("water.reading.allowed"), wording.Say("water.no-reading.advice"))
	}
	if err := t.contradiction(); err != nil {
		return Residual{}, err
	}
	r := Residual{Free: t.Free, Total: t.Total, Combined: t.Combined}
	r.complete()
	r.Chloramine = presence(r.Combined)
	r.DoseOn = r.doseOn()
	return r, nil
}

// contradiction refuses readings that cannot be of one water.
func (t Test) contradiction() error {
	if t.Total == nil {
		return nil
	}
	total, limit := *t.Total, *t.Total+ChloramineSeen*(1+slack)
	switch {
	case t.Free != nil && *t.Free > limit:
		return contradicts("free-chlorine", *t.Free, total)
	case t.Combined != nil && *t.Combined > limit:
		return contradicts("chloramine", *t.Combined, total)
	case t.Free != nil && t.Combined != nil:
		apart := *t.Free + *t.Combined - total
		if apart > ChloramineSeen+slack || apart < -ChloramineSeen-slack {
			return contradicts("total-chlorine", total, *t.Free+*t.Combined)
		}
	}
	return nil
}

func contradicts(field string, given, other quantity.Concentration) error {
	return fault.New(field, given.Speak(wording.Reader{}),
		wording.Say("water.contradiction", wording.Places{"given": given, "other": other}),
		wording.Say("water.contradiction.allowed"), wording.Say("water.contradiction.advice"))
}

// complete fills in the third reading where two are known.
func (r *Residual) complete() {
	switch {
	case r.Free != nil && r.Total != nil && r.Combined == nil:
		r.Combined = new(max(0, *r.Total-*r.Free))
	case r.Free != nil && r.Total == nil && r.Combined != nil:
		r.Total = new(*r.Free + *r.Combined)
	case r.Free == nil && r.Total != nil && r.Combined != nil:
		r.Free = new(max(0, *r.Total-*r.Combined))
	}
}

func presence(combined *quantity.Concentration) Presence {
	switch {
	case combined == nil:
		return Unknown
	case *combined >= ChloramineSeen-slack:
		return Present
	}
	return Absent
}

// doseOn is the total where it is known, the larger of free and total, else
// the one reading there is.
func (r *Residual) doseOn() quantity.Concentration {
	switch {
	case r.Total != nil && r.Free != nil:
		return max(*r.Total, *r.Free)
	case r.Total != nil:
		return *r.Total
	case r.Free != nil:
		return *r.Free
	}
	return *r.Combined
}

// ammoniaPerChloramine is grams of nitrogen in 1 g (as Cl2) of monochloramine:
// 14.007/70.906 (IUPAC 2021 conventional atomic weights).
const ammoniaPerChloramine = 0.1975

// Ammonia is the ammonia nitrogen that stays in the water once the combined
// chlorine is taken out; nil where the combined chlorine is not known.
//
//	N = 0.1975 x combined, mg/L
func (r Residual) Ammonia() *quantity.Concentration {
	if r.Combined == nil {
		return nil
	}
	return new(ammoniaPerChloramine * *r.Combined)
}
