package forecast

import (
	"math"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// whole is a number in 100 as people say it.
func whole(inHundred float64) int { return int(math.Round(inHundred)) }

// hourOf is the wall clock of an hour, with the day where it is not today's.
func (t Telling) hourOf(hour, now float64) string {
	at := t.clock(hour)
	if at.YearDay() == t.clock(now).YearDay() && at.Year() == t.clock(now).Year() {
		return at.Format("15:04")
	}
	return at.Format("2006-01-02 15:04")
}

func mg(v float64) quantity.Concentration { return tenth(v) }

// tenth keeps what a meter shows.
func tenth(v float64) quantity.Concentration {
	return quantity.MilligramsPerLitre(math.Round(v*10) / 10)
}

// Sentence is the forecast in one sentence.
func (f *Forecast) Sentence(t Telling) wording.Text {
	if f.Chance == nil {
		return wording.Say("forecast.sentence.past-end", wording.Places{"do": mg(f.State.DO.Median)})
	}
	return wording.Say("forecast.sentence", wording.Places{
		"do": mg(f.State.DO.Median), "low": mg(f.MinDO.Median), "at": t.hourOf(f.MinHour.Median, f.State.Hour),
		"chance": wording.InHundred(*f.Chance), "limit": mg(f.Limit),
	})
}

func (f *Forecast) whyText(w Why, t Telling) wording.Text {
	if f.Chance == nil {
		return wording.Say("forecast.why.past-end")
	}
	p := w.Parts
	places := wording.Places{
		"at": t.hourOf(f.MinHour.Median, f.State.Hour), "low": mg(f.MinDO.Median),
		"food": mg(p.Food), "compost": mg(p.Compost), "warmth": mg(p.Warmth), "air": mg(p.Air),
		"chance": wording.InHundred(f.AirFailing()), "bias": mg(math.Abs(f.State.MeterBias.Median)),
	}
	key := "forecast.why." + string(w.Driver)
	switch {
	case w.Driver == ByAir && airAt(f.changes, f.question.Now) == 0:
		key = "forecast.why.air-off"
	case w.Driver == ByAir && f.AirFailing() > likelyAir:
		key = "forecast.why.air-failing"
	case w.Driver == ByAir && f.AirFailing() > lookAtAir:
		key = "forecast.why.air-look"
	case w.Driver != ByAir && w.Driver != ByMeter && p.Food < littleTaken && p.Compost < littleTaken && p.Warmth < littleTaken:
		key = "forecast.why.calm"
	case w.Driver == ByMeter && f.State.MeterBias.Median < 0:
		key = "forecast.why.meter-low"
	}
	return wording.Say(key, places)
}

// littleTaken is oxygen, in mg/L, that is not worth a reason.
const littleTaken = 0.25

func (a Action) text() wording.Text {
	return wording.Say("forecast.action."+string(a.What), wording.Places{
		"chance": wording.InHundred(a.Chance), "low": mg(a.MinDO), "ice": quantity.Litres(a.Litres),
		"step": quantity.CelsiusStep(math.Abs(a.Step)), "hours": whole(a.Hours),
	})
}

func (f *Forecast) nextText(n NextReading, t Telling) wording.Text {
	places := wording.Places{}
	if n.Hour != nil {
		places["at"] = t.hourOf(*n.Hour, f.State.Hour)
	}
	key := "forecast.next." + string(n.Why)
	if t.NoMeter && n.Hour != nil {
		key = "forecast.next.no-meter"
	}
	return wording.Say(key, places)
}

func (f *Forecast) meterText(t Telling) wording.Text {
	places := wording.Places{"bias": mg(math.Abs(f.State.MeterBias.Median))}
	switch {
	case t.NoMeter:
		return wording.Say("forecast.meter.none")
	case f.Used == 0:
		return wording.Say("forecast.meter.unread")
	case f.MeterSuspect() && f.State.MeterBias.Median > 0:
		return wording.Say("forecast.meter.high", places)
	case f.MeterSuspect():
		return wording.Say("forecast.meter.low", places)
	}
	return wording.Say("forecast.meter.fine")
}

func (d Doubted) text() wording.Text { return wording.Say("forecast.doubt." + string(d.Why)) }

// whatIfText says what was changed, and where there was nothing to change.
func (f *Forecast) whatIfText(s Scenario) wording.Text {
	if s.Food != 0 && !f.Pending() {
		return wording.Say("forecast.what-if.no-food")
	}
	return wording.Say("forecast.what-if.same-members")
}

// foundOffRow says what a stretch without air cost, and the three ways on.
func (f *Forecast) foundOffRow(a *Answer, t Telling) {
	l := f.Lost
	if l == nil {
		return
	}
	a.FoundOff = &FoundOffRow{From: t.at(l.From), Until: t.at(l.Until), Under: l.Under, Text: wording.Say("forecast.found-off", wording.Places{
		"from": t.hourOf(l.From, f.State.Hour), "until": t.hourOf(l.Until, f.State.Hour), "limit": mg(f.Limit),
		"hours": hoursTo(l.Under.Median), "low": hoursTo(l.Under.Low80), "high": hoursTo(l.Under.High80),
	})}
	for _, way := range []string{"carry-on", "soil", "heap"} {
		a.FoundOff.Ways = append(a.FoundOff.Ways, wording.Say("forecast.found-off."+way))
	}
}

// overflowRow says when foam reaches the rim; where that may be before the next
// visit, it says so.
func (f *Forecast) overflowRow(a *Answer, t Telling) {
	o := f.Overflow
	if o == nil {
		return
	}
	row := &OverflowRow{At: t.at(o.Hour), Low: t.at(o.Low)}
	places := wording.Places{"at": t.hourOf(o.Hour, f.State.Hour), "low": t.hourOf(o.Low, f.State.Hour)}
	key := "forecast.overflow.may-stop"
	if !math.IsInf(o.High, 1) {
		high := t.at(o.High)
		row.High, key = &high, "forecast.overflow"
		places["high"] = t.hourOf(o.High, f.State.Hour)
	}
	if next := f.NextReading(); next.Hour == nil || o.Low < *next.Hour {
		key += ".before"
	}
	row.Text = wording.Say(key, places)
	a.Overflow = row
}

// hoursTo is hours to a tenth, as a sentence says them.
type hoursTo float64

// Speak writes one decimal.
func (h hoursTo) Speak(r wording.Reader) string { return wording.Fixed(float64(h), 1, r) }
