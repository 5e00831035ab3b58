package web

import (
	"fmt"
	"math"

	"aerosteep/wording"
)

// oxygenBar runs from 0 at the left to all this water can hold at the right;
// the fill is now, the upright is the limit, the bracket under it is the range
// of the low to come.
type oxygenBar struct {
	Held, Limit, Low, High string // along a bar of 1000
	Full, Width            string
	LimitAt                string // class of the limit's word
	LimitWord, EndWord     string
	Spoken                 string
	Over, HasLow           bool
}

// drawOxygenBar lays out the bar; low and high are nil where no low is
// expected.
func drawOxygenBar(p *page, now, limit, hold float64, low, high *float64) *oxygenBar {
	whole := math.Max(hold, now)
	along := func(v float64) string { return fmt.Sprintf("%.1f", math.Max(0, v)/whole*1000) }
	number := func(v float64) string { return wording.Fixed(v, 1, p.Reader) }
	b := &oxygenBar{
		Held: along(math.Min(now, hold)), Limit: along(limit), Full: along(hold), Width: along(math.Max(0, now-hold)),
		LimitAt:   p.At(fmt.Sprintf("left:%.2f%%", limit/whole*100)),
		LimitWord: p.Say("web.bar.limit", "limit", number(limit)), EndWord: number(hold), Over: now > hold,
		Spoken: p.Say("web.bar.spoken", "now", number(now), "hold", number(hold), "limit", number(limit)),
	}
	if low != nil && high != nil {
		b.HasLow, b.Low, b.High = true, along(*low), along(math.Min(*high, whole))
	}
	return b
}
