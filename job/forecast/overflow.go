package forecast

import "math"

// Overflow is when foam reaches the rim, if it rises on as it did.
type Overflow struct {
	Hour, Low float64 // since the start; Low is the early end
	High      float64 // +Inf where the foam may have stopped
}

// rulerSpread is how far off a distance to foam is read, cm: it is no flat
// surface (judged).
const rulerSpread = 1.0

// foamSpan is within which two distances say something of the foam's rise.
const foamSpan = 12.0 // h

// Overflow reckons with the last two distances from foam to rim:
//
//	hour = t2 + d2 / ((d1 - d2) / (t2 - t1))
//
// and gives the early and late end by an error of either distance of 1 cm. Nil
// where there are no two within 12 h, or the foam does not rise.
//
// Source: proportion; that foam rises steadily for some hours is common practice,
// and it proves nothing about readiness.
func (q *Question) Overflow() *Overflow {
	var seen []Reading
	for _, r := range q.readings() {
		if r.ToRim != nil {
			seen = append(seen, r)
		}
	}
	if len(seen) < 2 {
		return nil
	}
	a, b := seen[len(seen)-2], seen[len(seen)-1]
	between := b.Hour - a.Hour
	rise := *a.ToRim - *b.ToRim
	if !(between > sameMoment) || between > foamSpan || !(rise > 0) || q.Now-b.Hour > foamSpan {
		return nil
	}
	error := rulerSpread * math.Sqrt2
	o := Overflow{Hour: b.Hour + *b.ToRim/rise*between, High: math.Inf(1)}
	o.Low = b.Hour + math.Max(0, *b.ToRim-rulerSpread)/(rise+error)*between
	if rise > error {
		o.High = b.Hour + (*b.ToRim+rulerSpread)/(rise-error)*between
	}
	return &o
}
