package weather

import (
	"math"
	"time"

	"aerosteep/numeric"
	"aerosteep/quantity"
)

// How far forecasts of an hour are off, by how many days ahead the hour lies.
// Judged, from memory of what weather services print of their own forecasts:
// day one within 1.3 °C and 4 to 5 km/h, day five about twice that; rain in one
// of 20 hours that were to be dry, none in a third of those that were to be wet.
const (
	warmthOff       = 1.2 // °C, standard deviation at once
	warmthOffDaily  = 0.35
	windOff         = 4 // km/h
	windOffDaily    = 1.2
	rainMissed      = 0.04 // of the hours that were to be dry
	rainMissedDaily = 0.02
	rainFalse       = 0.3 // of those that were to be wet
	rainFalseDaily  = 0.06
	mostFalse       = 0.6
	alike           = 0.85                   // correlation of an hour's errors with those of the hour before
	missedRain      = quantity.Length(0.001) // 1 mm
)

// Odds is how likely hours can be used, by draws of how the weather may turn
// out beside its forecast.
type Odds struct {
	Percent float64 // of the draws with a window
	Covered float64 // percent of the hours asked for that the forecast reaches
}

// ChanceOfWindow is the chance that at least so many hours in a row can be used
// (suit, or ask for care) between two times. Forecast hours are drawn again and
// again with errors that grow with how far ahead they lie and that hang
// together from hour to hour:
//
//	e(t) = 0.85 e(t-1) + sqrt(1 - 0.85²) z
//
// The same seed gives the same answer. ok is false where the forecast reaches
// none of the hours.
func ChanceOfWindow(f *Forecast, q Question, now, from, until time.Time, least int, draws int, seed uint64) (odds Odds, ok bool) {
	span := asked(f.Hours, from, until)
	if len(span) == 0 {
		return Odds{}, false
	}
	reached := 0
	for _, h := range span {
		if h.At.Add(time.Hour).After(from) && h.At.Before(until) {
			reached++
		}
	}
	if reached == 0 {
		return Odds{}, false
	}
	noise := numeric.NewNormals(seed, 0)
	drawn := make([]Hour, len(span))
	opened := 0
	for range draws {
		redraw(drawn, span, now, noise)
		if len(Windows(scoreFirst(drawn, reached, q), least, true)) > 0 {
			opened++
		}
	}
	wanted := math.Max(1, math.Ceil(until.Sub(from).Hours()))
	return Odds{Percent: 100 * float64(opened) / float64(draws), Covered: math.Min(100, 100*float64(reached)/wanted)}, true
}

// asked are the hours between two times, and those after them that rain and
// frost are looked for in.
func asked(hours []Hour, from, until time.Time) []Hour {
	first, last := len(hours), len(hours)
	for i, h := range hours {
		if first == len(hours) && h.At.Add(time.Hour).After(from) {
			first = i
		}
		if h.At.After(until.Add(frostAfter)) {
			last = i
			break
		}
	}
	return hours[min(first, last):last]
}

// scoreFirst judges the first hours; the others are only looked ahead to.
func scoreFirst(hours []Hour, n int, q Question) []Scored {
	scored := make([]Scored, n)
	for i := range scored {
		scored[i] = scoreHour(hours, i, q)
	}
	return scored
}

// errors of one hour, in standard deviations.
type skyError struct{ warmth, wind, rain float64 }

func (e *skyError) follow(noise *numeric.Normals) {
	fresh := math.Sqrt(1 - alike*alike)
	for _, v := range []*float64{&e.warmth, &e.wind, &e.rain} {
		*v = alike**v + fresh*noise.Next()
	}
}

// redraw fills drawn with the hours as they may turn out.
func redraw(drawn, hours []Hour, now time.Time, noise *numeric.Normals) {
	e := skyError{noise.Next(), noise.Next(), noise.Next()}
	for i := range hours {
		if i > 0 {
			e.follow(noise)
		}
		days := math.Max(0, hours[i].At.Sub(now).Hours()/24)
		drawn[i] = e.on(hours[i], days)
	}
}

// on is an hour with errors of so many days ahead.
func (e skyError) on(h Hour, days float64) Hour {
	if h.Temperature != nil {
		t := *h.Temperature + quantity.Celsius((warmthOff+warmthOffDaily*days)*e.warmth)
		h.Temperature = &t
	}
	if h.Wind != nil {
		off := (windOff + windOffDaily*days) * e.wind
		stronger := func(v quantity.Speed) *quantity.Speed {
			return new(quantity.KilometresPerHour(math.Max(0, v.KilometresPerHour()+off)))
		}
		h.Wind = stronger(*h.Wind)
		if h.Gust != nil {
			h.Gust = stronger(*h.Gust)
		}
	}
	if h.Rain != nil {
		h.Rain = e.rainOn(*h.Rain, days)
	}
	return h
}

// rainOn turns a dry hour wet, or a wet one dry, where the error is far enough
// out.
func (e skyError) rainOn(rain quantity.Length, days float64) *quantity.Length {
	missed, unfounded := rainMissed+rainMissedDaily*days, math.Min(mostFalse, rainFalse+rainFalseDaily*days)
	wetter := 0.5 * math.Erfc(-e.rain/math.Sqrt2) // the error's place among all, 0 to 1
	switch {
	case rain == 0 && wetter > 1-missed:
		rain = missedRain
	case rain > 0 && wetter < unfounded:
		rain = 0
	}
	return &rain
}
