package forecast

import (
	"math"
	"slices"
	"time"

	"aerosteep/fault"
	"aerosteep/quantity"
)

// Carried is all that a forecast of a batch is made from, as it travels to a
// phone, so that a reading that waits for signal moves the chance there too. As
// JSON it comes back whole: the same readings give the same answer, byte for
// byte.
type Carried struct {
	Question  Question
	Batch     string
	Start     time.Time
	Zone      string // IANA
	UseByDO   quantity.Concentration
	SparePump bool
	NoMeter   bool
}

// Carry packs a question for the way, with no more of the larder than its events
// name.
func Carry(q Question, t Telling) Carried {
	var names []string
	for _, e := range q.Log.Events {
		if e.Ingredient != "" {
			names = append(names, e.Ingredient)
		}
	}
	q.Larder = q.Larder.Only(names)
	q.Log.Skipped, q.Log.Unknown = nil, nil
	c := Carried{Question: q, Batch: t.Batch, Start: t.Start, UseByDO: t.UseByDO, SparePump: t.SparePump, NoMeter: t.NoMeter}
	if t.Zone != nil {
		c.Zone = t.Zone.String()
	}
	return c
}

// Answer is the forecast at a later hour, with readings that were taken
// meanwhile.
//
// Errors: *fault.Fault of what was read.
func (c Carried) Answer(now time.Time, more ...Reading) (*Answer, error) {
	zone, err := time.LoadLocation(c.Zone)
	if err != nil {
		zone = c.Start.Location() // a browser without zones: the offset at the start
	}
	q := c.Question
	q.Now = math.Max(q.Now, now.Sub(c.Start).Hours())
	q.Log.Readings = append(slices.Clone(q.Log.Readings), more...)
	q.Log.Skipped = fault.List{}
	q.Log.Order()
	f, err := Run(q)
	if err != nil {
		return nil, err
	}
	return f.Answer(Telling{Batch: c.Batch, Start: c.Start, Zone: zone, UseByDO: c.UseByDO, SparePump: c.SparePump, NoMeter: c.NoMeter}), nil
}
