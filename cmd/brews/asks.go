package main

import (
	"math"
	"sort"
)

// ask is an hour at which a forecast is asked for.
type ask struct {
	Hour float64 `json:"hour"`
	Why  string  `json:"why"`
}

// soon is how long after a reading a forecast is asked for, h.
const soon = 0.05

// asks are early, two or three later with four hours to come, two hours before
// a crash, and the first two readings of a failure that nobody logged.
func (b *brew) asks(c chance) []ask {
	var all []ask
	until := b.plan.planned - 4
	for _, r := range b.meter.readings {
		if r.hour >= 2.65 && r.hour < until && (b.meter.kind != "logger" || r.hour > c.between(2.7, 8)) {
			all = append(all, ask{r.hour + soon, "early"})
			break
		}
	}
	if b.kind == "crash" {
		all = append(all, ask{b.crash - 2, "before-crash"})
	}
	all = append(all, b.asksInFailure()...)
	for range 2 + c.IntN(2) {
		r := b.meter.readings[c.IntN(len(b.meter.readings))]
		if r.hour > 6 && r.hour < until && apart(all, r.hour) && b.happens.left(r.hour) == 1 {
			all = append(all, ask{r.hour + soon, "later"})
		}
	}
	for i := range all {
		all[i].Hour = math.Round(all[i].Hour*100) / 100
	}
	sort.Slice(all, func(i, j int) bool { return all[i].Hour < all[j].Hour })
	return all
}

// apart tells whether an hour is not asked about already.
func apart(all []ask, hour float64) bool {
	for _, a := range all {
		if math.Abs(a.Hour-hour) < 1.5 {
			return false
		}
	}
	return true
}

func (b *brew) asksInFailure() []ask {
	var all []ask
	for _, f := range b.happens.failures {
		for _, r := range b.meter.readings {
			if !f.logged && r.hour > f.start+0.05 && r.hour+soon < f.end && len(all) < 2 {
				all = append(all, ask{r.hour + soon, [2]string{"failure-1", "failure-2"}[len(all)]})
			}
		}
	}
	return all
}
