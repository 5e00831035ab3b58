package web

import (
	"context"
	"math"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/quantity"
	"aerosteep/record/holding"
)

// life is a living batch as Today and Batches tell it.
type life struct {
	Name, Vessel, Under, Value string
	State, StateWord           string // well | near | under | blind
	Sentence, Alarm, FirstAct  string
	Fill                       float64 // share of the vessel
	Risky                      bool
	Due                        []todo
	Foam                       string   // when it reaches the rim; "" where nobody measured it twice
	Lost                       string   // what a stretch without air cost
	Ways                       []string // on from there
}

// lives tells every living batch.
func (s *Site) lives(p *page, now time.Time) []life {
	if s.Holding == nil {
		return nil
	}
	var all []life
	for _, b := range s.Holding.Batches() {
		if b.Living() {
			all = append(all, s.life(p, b, now))
		}
	}
	for _, l := range all {
		if l.State == "under" || l.State == "near" && l.Risky {
			p.Needs++
		}
	}
	return all
}

func (s *Site) life(p *page, b holding.Batch, now time.Time) life {
	l := life{Name: b.Name, Vessel: b.Vessel, State: "blind", StateWord: p.Say("web.state.blind")}
	twin, err := s.twin(context.Background(), b.Name, now)
	if err != nil {
		l.Sentence = p.Say("web.batch.no-forecast", "why", err.Error())
		return l
	}
	l.Under = p.Say("web.batch.hour", "hour", int(twin.Hour()), "of", int(twin.Subject.Setup.Planned.Hours()))
	if full := twin.Full.Litres(); full > 0 {
		l.Fill = twin.Subject.Setup.Volume.Litres() / full
	}
	l.tell(p, twin, now)
	return l
}

// spanWithoutReading is after how long a forecast is a guess (a setting of the
// house; look and sound of it stand in the design).
const spanWithoutReading = 6 * time.Hour

// tell puts the state into words, in the order of calm.
func (l *life) tell(p *page, twin *holding.Twin, now time.Time) {
	f := twin.Forecast
	last := lastOxygen(twin)
	l.Value = p.oneDecimal(f.State.DO.Median)
	l.State = stateOf(twin, last, now)
	l.StateWord = p.Say("web.state." + l.State)
	if l.State == "blind" && !twin.Meter {
		l.StateWord = p.Say("web.state.no-meter")
	}
	if f.Chance != nil && f.MinDO != nil && f.MinHour != nil {
		low := twin.At(f.MinHour.Median)
		l.Risky = *f.Chance > 50
		l.Sentence = p.Say("web.batch.low", "low", p.oneDecimal(f.MinDO.Median), "clock", p.When(around(low), now),
			"from", p.oneDecimal(f.MinDO.Low80), "to", p.oneDecimal(f.MinDO.High80), "chance", p.Chance(*f.Chance), "limit", p.oneDecimal(f.Limit))
	} else {
		l.Sentence = p.Say("web.batch.past-end")
	}
	l.Alarm = p.Say("web.alarm.under", "name", l.Name, "limit", p.oneDecimal(f.Limit))
	if f.BelowAt != nil {
		l.Alarm = p.Say("web.alarm.goes-under", "name", l.Name, "limit", p.oneDecimal(f.Limit), "clock", p.When(around(twin.At(*f.BelowAt)), now))
	}
	if len(twin.Answer.Actions) > 0 {
		l.FirstAct = twin.Answer.Actions[0].Text.For(p.Reader)
	}
	if o := twin.Answer.Overflow; o != nil {
		l.Foam = o.Text.For(p.Reader)
	}
	if lost := twin.Answer.FoundOff; lost != nil {
		l.Lost = lost.Text.For(p.Reader)
		for _, way := range lost.Ways {
			l.Ways = append(l.Ways, way.For(p.Reader))
		}
	}
	if next := twin.Answer.NextReadingAt; next != nil {
		at, _ := time.Parse(time.RFC3339, *next)
		at = at.In(now.Location())
		l.Due = append(l.Due, todo{p.Clock(at), p.Beside(at, now), at.Format(time.RFC3339), p.Say("web.due.read", "name", l.Name), twin.Answer.NextReadingWhy.For(p.Reader), "/batches/" + l.Name + "/log"})
	}
	if end := twin.At(twin.Subject.Setup.Planned.Hours()).In(now.Location()); end.After(now) {
		l.Due = append(l.Due, todo{p.Clock(end), p.Beside(end, now), end.Format(time.RFC3339), p.Say("web.due.ready", "name", l.Name), p.Say("web.due.ready.more"), "/batches/" + l.Name})
	}
}

// stateOf is one of the four states of a batch.
func stateOf(twin *holding.Twin, last *holding.Oxygen, now time.Time) string {
	f := twin.Forecast
	switch {
	case last == nil || now.Sub(last.At) > spanWithoutReading:
		return "blind"
	case last.MgPerL < f.Limit:
		return "under"
	case last.MgPerL < f.Limit+0.5 || f.MinDO != nil && f.MinDO.Low80 < f.Limit:
		return "near"
	}
	return "well"
}

// lastOxygen is the latest reading of oxygen that is not doubted.
func lastOxygen(twin *holding.Twin) *holding.Oxygen {
	all := twin.Oxygen()
	for i := len(all) - 1; i >= 0; i-- {
		if !all[i].Doubted {
			return &all[i]
		}
	}
	return nil
}

func cubeRoot(v float64) float64 { return math.Cbrt(v) }

// heldNow is what the water can hold now, for the bar and the sentence.
func heldNow(f *forecast.Forecast) float64 { return f.State.Saturation }

func percentOf(f *forecast.Forecast, do float64) quantity.Share {
	return quantity.Percent(math.Round(do / heldNow(f) * 100))
}
