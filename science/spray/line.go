package spray

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Line is a pipe or a drip lateral.
type Line struct {
	Length, Bore quantity.Length
	Emitters     *quantity.Length // spacing, where the line loses its flow evenly
}

func (l Line) check() error {
	if err := overZero(amount("line-length", l.Length), amount("line-bore", l.Bore)); err != nil {
		return err
	}
	if l.Emitters == nil {
		return nil
	}
	if err := overZero(amount("emitter-spacing", *l.Emitters)); err != nil {
		return err
	}
	if *l.Emitters >= l.Length {
		return fault.New("emitter-spacing", "", wording.Say("spray.emitters", wording.Places{"spacing": *l.Emitters, "length": l.Length}),
			wording.Say("spray.emitters.allowed", wording.Places{"length": l.Length}), wording.Text{})
	}
	return nil
}

func (l Line) section() quantity.Area {
	return quantity.Area(math.Pi / 4 * float64(l.Bore*l.Bore))
}

// Holds is the volume of the line: π/4 bore² x length. Lengths over 0.
func (l Line) Holds() (quantity.Volume, error) {
	if err := l.check(); err != nil {
		return 0, err
	}
	return quantity.Litres(float64(l.section()) * float64(l.Length) * 1000), nil
}

// Travel is the time from the injector to the end of the line:
//
//	plain pipe: V / Q
//	lateral:    V / Q x ln(L / s)
//
// with V the line's volume, Q the flow into it, L its length and s the
// spacing of its emitters, the last of which is reached then. Flow over 0,
// s under L.
//
// Source: integration of dx/v(x) over a lateral that loses its flow evenly,
// v(x) = v0 (1 - x/L), from 0 to L - s.
func (l Line) Travel(flow quantity.Flow) (quantity.Span, error) {
	holds, err := l.Holds()
	if err != nil {
		return 0, err
	}
	if err := overZero(amount("flow", flow)); err != nil {
		return 0, err
	}
	minutes := holds.Litres() / flow.LitresPerMinute()
	if l.Emitters != nil {
		minutes *= math.Log(float64(l.Length / *l.Emitters))
	}
	return quantity.Minutes(minutes), nil
}

// flushSpeed carries settled matter out of a lateral's end: 1 ft/s.
var flushSpeed = quantity.MetresPerSecond(quantity.Feet(1).Metres())

// Flush is the flow at which the line must run to be flushed: 1 ft/s in its
// bore. Bore over 0.
//
// Source: University of California, micro-irrigation maintenance (about
// 1 US gal/min for a 5/8 in lateral, 2 for 7/8 in).
func (l Line) Flush() (quantity.Flow, error) {
	if err := l.check(); err != nil {
		return 0, err
	}
	cubicMetresPerSecond := float64(l.section()) * flushSpeed.MetresPerSecond()
	return quantity.LitresPerMinute(cubicMetresPerSecond * 60000), nil
}
