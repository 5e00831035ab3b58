// Package rig is the equipment as it was built, and what it can do: vessels,
// pumps with their tube and diffuser, and applicators.
package rig

import (
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/science/oxygen"
)

// Vessel is what tea is brewed in.
type Vessel struct {
	Name       string
	Full       quantity.Volume  // to the rim
	Brew       quantity.Volume  // most tea in it
	Least      quantity.Volume  // least that its air can mix
	Shape      Shape            // nil where only the contents are known
	Depth      *quantity.Length // of water when filled to Brew
	Pump       string           // "" is stirred by hand
	KLa20      *MeasuredKLa
	Indoors    *bool // nil: unknown
	Site       string
	Turnaround quantity.Span // emptying, cleaning, refilling
}

// MeasuredKLa is a measured transfer of oxygen at 20 °C.
type MeasuredKLa struct {
	Estimate      quantity.PerTime
	Low95, High95 *quantity.PerTime
	InBrew        bool // measured in brew, so that alpha is in it already
}

// Pump is what moves the air, with its tube and diffuser.
type Pump struct {
	Name         string
	Curve        air.Curve      // nil where only the label is known
	LabelFlow    *quantity.Flow // free air by the label, at no pressure
	Caught       *quantity.Flow // free air that really came out at brewing depth, by the upturned jug
	Power        *quantity.Power
	TubeBore     *quantity.Length
	TubeLength   *quantity.Length
	Bubbles      oxygen.Bubbles // "" where unknown
	SOTEPerMetre *quantity.Share
	DiffuserLoss *quantity.Pressure
}

// Applicator is what puts tea on.
type Applicator struct {
	Name            string
	Kind            ApplicatorKind
	Tank            *quantity.Volume // nil: no tank limits a load
	DeadVolume      quantity.Volume  // fills pump, filter and hose before the first drop
	SmallestOpening *quantity.Length
	MinutesPerLoad  float64
	HeldBefore      string         // what was in it last, one of HeldBefore; "" where nobody said
	Borrowed        bool           // or hired: what was in it is asked
	EmptyMass       *quantity.Mass // of trailer, tank and pump without mix
	Plate           *quantity.Mass // the most that the plate of trailer or axle allows
	Air             bool           // air runs in it on the road
}

// HeldBefore lists what may have been in an applicator last.
var HeldBefore = []string{"tea", "water", "herbicide", "copper", "oxidiser", "unknown"}

// ApplicatorKind is how an applicator works.
type ApplicatorKind string

// The kinds of applicator.
const (
	Can      ApplicatorKind = "can"
	Knapsack ApplicatorKind = "knapsack"
	HoseEnd  ApplicatorKind = "hose-end"
	Boom     ApplicatorKind = "boom"
	Injector ApplicatorKind = "injector"
	Drip     ApplicatorKind = "drip"
)

// ApplicatorKinds lists them by size.
var ApplicatorKinds = []string{"can", "knapsack", "hose-end", "boom", "injector", "drip"}

// Sprays tells whether the kind can wet leaves with a fine spray.
func (k ApplicatorKind) Sprays() bool { return k == Knapsack || k == HoseEnd || k == Boom }
