package application

import (
	"time"

	"aerosteep/quantity"
)

// OffAir is the most that tea is kept without air of its own (common practice).
const OffAir = 4 * time.Hour

// InTank is a reading of oxygen in a tank on the road.
type InTank struct {
	At     time.Time
	Oxygen quantity.Concentration
}

// TankClock is when the oxygen in a tank that travels with air comes to a limit,
// by a straight line through the last two readings; ok is false with fewer than
// two, or where it does not fall. The shorter of this and the plan's clock rules.
//
//	t = t2 + (c2 - limit) (t2 - t1) / (c1 - c2)
//
// Source: arithmetic; that uptake stays as it is between stops is judged.
func TankClock(readings []InTank, limit quantity.Concentration) (at time.Time, ok bool) {
	if len(readings) < 2 {
		return time.Time{}, false
	}
	a, b := readings[len(readings)-2], readings[len(readings)-1]
	fall := float64(a.Oxygen - b.Oxygen)
	if fall <= 0 || !b.At.After(a.At) {
		return time.Time{}, false
	}
	left := float64(max(0, b.Oxygen-limit)) / fall * b.At.Sub(a.At).Seconds()
	return b.At.Add(time.Duration(left * float64(time.Second))), true
}
