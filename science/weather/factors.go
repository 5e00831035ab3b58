package weather

import (
	"math"
	"time"

	"aerosteep/quantity"
)

// slack keeps a limit a limit after a conversion of units.
const slack = 1e-9

// upTo and under compare with that slack.
func upTo(v, limit float64) bool  { return v <= limit+slack*math.Abs(limit) }
func under(v, limit float64) bool { return v < limit-slack*math.Abs(limit) }

func marked(m Mark, value float64) Finding { return Finding{Mark: &m, Value: &value} }

// dryAfter is how long leaves have to stay dry after spraying (common
// practice).
const dryAfter = 4 * time.Hour

// rain looks, for foliar, at this hour and the four after it; for a drench at
// whether the soil takes this hour's rain in.
func rain(hours []Hour, i int, q Question) Finding {
	if q.Method == Drench {
		return drenchRain(hours[i], q.Intake)
	}
	sum, seen, next := 0.0, 0, hours[i].At
	for _, h := range hours[i:] {
		if h.At.Sub(hours[i].At) > dryAfter {
			break
		}
		if h.Rain == nil {
			continue
		}
		sum += h.Rain.Millimetres()
		if h.At.Equal(next) {
			seen, next = seen+1, next.Add(time.Hour)
		}
	}
	switch {
	case sum > 0:
		return marked(Stop, sum)
	case hours[i].Rain == nil:
		return Finding{}
	case seen < 5:
		return marked(Care, sum)
	}
	return marked(Suits, sum)
}

func drenchRain(h Hour, intake quantity.DepthRate) Finding {
	if h.Rain == nil {
		return Finding{}
	}
	if mm := h.Rain.Millimetres(); !upTo(mm, intake.MillimetresPerHour()) {
		return marked(Stop, mm)
	}
	return marked(Suits, h.Rain.Millimetres())
}

// frostAfter is how long after tea the ground must not freeze (common
// practice).
const frostAfter = 24 * time.Hour

// frost is the lowest temperature in this hour and the 24 after it, as far as
// the file goes.
func frost(hours []Hour, i int) Finding {
	lowest := math.Inf(1)
	for _, h := range hours[i:] {
		if h.At.Sub(hours[i].At) > frostAfter {
			break
		}
		if h.Temperature != nil {
			lowest = min(lowest, h.Temperature.Celsius())
		}
	}
	switch {
	case lowest <= slack:
		return marked(Stop, lowest)
	case hours[i].Temperature == nil:
		return Finding{}
	}
	return marked(Suits, lowest)
}

// wind: 3 to 15 km/h carries spray down and not away (Department of Primary
// Industries, Western Australia); a drench bears 25.
func wind(h Hour, m Method) Finding {
	if h.Wind == nil {
		return Finding{}
	}
	v := h.Wind.KilometresPerHour()
	limit := 15.0
	if m == Drench {
		limit = 25
	}
	switch {
	case !upTo(v, limit):
		return marked(Stop, v)
	case m == Foliar && under(v, 3):
		return marked(Care, v)
	}
	return marked(Suits, v)
}

// gust: half as much again as the wind's limit (common practice).
func gust(h Hour) Finding {
	if h.Gust == nil {
		return Finding{}
	}
	v := h.Gust.KilometresPerHour()
	if !upTo(v, 22.5) {
		return marked(Stop, v)
	}
	return marked(Suits, v)
}

// inversionSign follows the sun and is lifted by what mixes the air.
//
// Source: GRDC Spray Application Manual, module 10 (from one to two hours
// before sunset to an hour after sunrise); wind over 11 km/h, low cloud or
// rain by a Western Australian guide.
func inversionSign(h Hour, middle time.Time, p Place) InversionSign {
	windy := h.Wind != nil && !upTo(h.Wind.KilometresPerHour(), 11)
	cloudy := h.Cloud != nil && !under(*h.Cloud, 75)
	rainy := h.Rain != nil && *h.Rain > 0
	switch {
	case windy || cloudy || rainy:
		return Unlikely
	case downWithin(middle.Add(-time.Hour), middle, p):
		return Likely
	case downWithin(middle, middle.Add(2*time.Hour), p):
		return Possible
	}
	return Unlikely
}

var inversionMarks = map[InversionSign]Mark{Unlikely: Suits, Possible: Care, Likely: Stop}

func (s *Scored) inversionFinding() Finding {
	if s.Inversion == "" {
		return Finding{}
	}
	return Finding{Mark: new(inversionMarks[s.Inversion]), Word: string(s.Inversion)}
}

var dryingMarks = map[Drying]Mark{DryPreferred: Suits, DryTooLittle: Care, DryCaution: Care, DryTooMuch: Stop}

func (s *Scored) depressionFinding() Finding {
	if s.Depression == nil {
		return Finding{}
	}
	return marked(dryingMarks[Rate(*s.Depression)], s.Depression.Celsius())
}

// temperature: for foliar 10 to 28 °C suits and 5 to 30 bears care, and so
// does over 25 °C in air under 40 % (Ontario, weather and spraying); a drench
// bears 5 to 32 (common practice).
func temperature(h Hour, m Method) Finding {
	if h.Temperature == nil {
		return Finding{}
	}
	t := h.Temperature.Celsius()
	if m == Drench {
		if under(t, 5) || !upTo(t, 32) {
			return marked(Stop, t)
		}
		return marked(Suits, t)
	}
	switch {
	case under(t, 5) || !upTo(t, 30):
		return marked(Stop, t)
	case under(t, 10) || !upTo(t, 28):
		return marked(Care, t)
	case upTo(t, 25):
		return marked(Suits, t)
	}
	return warmFoliar(h, t)
}

// warmFoliar is over 25 °C, where dry air matters too.
func warmFoliar(h Hour, t float64) Finding {
	percent, known := h.relativeHumidity()
	switch {
	case !known:
		return Finding{Value: &t}
	case under(percent, 40):
		return marked(Care, t)
	}
	return marked(Suits, t)
}

// uvFinding: an index under 3 suits, to 5 bears care (WHO classes; the use
// for living sprays is common practice). Cloud of 90 % lifts the mark by one:
// it lowers the dose and does not end it.
func (s *Scored) uvFinding() Finding {
	if s.UV == nil {
		return Finding{}
	}
	m := Suits
	switch v := *s.UV; {
	case !upTo(v, 5):
		m = Stop
	case !under(v, 3):
		m = Care
	}
	if s.Cloud != nil && !under(*s.Cloud, 90) {
		m = min(m+1, Suits)
	}
	return marked(m, *s.UV)
}
