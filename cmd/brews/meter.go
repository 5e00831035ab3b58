package main

import (
	"math"
	"sort"
)

// meter is what stands between the brew and the book.
type meter struct {
	kind, size string // hand, percent or logger; small, low or high
	bias       float64
	drift      float64 // mg/(L h)
	noise, tau float64 // mg/L, s
	readings   []reading
	wrong      []wrongReading
}

// reading is one row of the book. Values are as they are written.
type reading struct {
	hour, shown float64
	percent     bool
	water       float64 // NaN: not written down
}

// wrongReading is a reading that shows something else than the brew.
type wrongReading struct {
	Hour float64 `json:"hour"`
	What string  `json:"what"`
}

// newMeter draws the meter and reads the whole brew with it. Shares and sizes
// are a judgement; lags of galvanic and optical probes are 20 to 120 s.
func newMeter(c chance, b *brew) meter {
	m := meter{
		kind: pick(c, "hand", "hand", "hand", "hand", "hand", "percent", "logger"), size: "small",
		bias: c.normal(0, 0.15), drift: c.normal(0, 0.004), noise: c.between(0.04, 0.16), tau: c.between(20, 120),
	}
	if m.kind == "logger" {
		m.noise = c.between(0.03, 0.07)
	}
	if !c.happens(0.7) {
		m.bias, m.size = c.between(0.9, 1.5), "high"
		if c.happens(0.5) {
			m.bias, m.size = -m.bias, "low"
		}
	}
	slow := b.seen(m.tau)
	step := pick(c, 0.1, 0.1, 0.1, 0.5)
	for _, hour := range m.hours(c, b) {
		m.readings = append(m.readings, m.read(c, b, slow, hour, step))
	}
	if m.kind != "logger" && c.happens(0.3) {
		m.err(c, b)
	}
	return m
}

// seen is the oxygen as a probe that lags shows it, by the minute, mg/L.
func (b *brew) seen(tau float64) []float64 {
	slow := make([]float64, len(b.course))
	v, keep := b.course[0].oxygen, math.Exp(-60/tau)
	for i, t := range b.course {
		v = t.oxygen + keep*(v-t.oxygen)
		slow[i] = v
	}
	return slow
}

// hours are when somebody looked: a logger every ten minutes with gaps, a hand
// every two to six hours, some not at night.
func (m *meter) hours(c chance, b *brew) []float64 {
	var hours []float64
	if m.kind == "logger" {
		for i := 3 + c.IntN(2); i <= int(b.plan.planned*6); i++ {
			if !c.happens(0.06) {
				hours = append(hours, float64(i)/6)
			}
		}
		return hours
	}
	sleeps := c.happens(0.65)
	clock := float64(b.plan.start.Hour()) + float64(b.plan.start.Minute())/60
	for hour := c.between(0.35, 0.7); hour < b.plan.planned; hour += c.between(2, 6) {
		if now := math.Mod(clock+hour, 24); sleeps && (now > 23 || now < 6) {
			hour += math.Mod(30+c.between(0.05, 0.8)-now, 24)
		}
		if hour = math.Round(hour*60) / 60; hour < b.plan.planned {
			hours = append(hours, hour)
		}
	}
	return hours
}

// read is what the meter shows at an hour, rounded as it is written.
func (m *meter) read(c chance, b *brew, slow []float64, hour, step float64) reading {
	t := b.at(hour)
	v := slow[int(math.Round(hour*60))] + m.bias + m.drift*hour + c.normal(0, m.noise)
	r := reading{hour: hour, shown: math.Max(0, rounded(v, 0.1)), water: rounded(t.water+c.normal(0, 0.1), step)}
	switch m.kind {
	case "percent":
		r.shown, r.percent = math.Max(0, rounded(100*v/t.above, 1)), true
	case "logger":
		r.shown = math.Max(0, rounded(v, 0.01))
	}
	if c.happens(0.06) {
		r.water = math.NaN()
	}
	return r
}

func rounded(v, step float64) float64 { return math.Round(v/step) * step }

// err makes one or two readings wrong that are not the first and not in a
// failure.
func (m *meter) err(c chance, b *brew) {
	for range 1 + c.IntN(2) {
		if len(m.readings) < 4 {
			return
		}
		i := 1 + c.IntN(len(m.readings)-1)
		r := &m.readings[i]
		if m.wrongAt(r.hour) != "" || b.happens.left(r.hour) < 1 {
			continue
		}
		what := pick(c, "percent-as-mg", "percent-as-mg", "in-air", "typo")
		v, told := m.mistaken(c, b, *r, what)
		if !told {
			continue
		}
		r.shown = v
		m.wrong = append(m.wrong, wrongReading{math.Round(r.hour*1e4) / 1e4, what})
	}
	sort.Slice(m.wrong, func(i, j int) bool { return m.wrong[i].Hour < m.wrong[j].Hour })
}

// wrongAt is what is wrong with the reading of an hour; "" for nothing.
func (m *meter) wrongAt(hour float64) string {
	for _, w := range m.wrong {
		if math.Abs(w.Hour-hour) < 0.01 {
			return w.What
		}
	}
	return ""
}

// mistaken is what a mistake writes instead, where it makes a difference.
func (m *meter) mistaken(c chance, b *brew, r reading, what string) (float64, bool) {
	t := b.at(r.hour)
	switch {
	case what == "typo":
		v := r.shown * pick(c, 10, 0.1)
		return rounded(v, 0.1), r.shown > 1.5 && v < 400
	case what == "in-air" && r.percent:
		v := rounded(100+100*m.bias/t.above+c.normal(0, 1), 1)
		return v, math.Abs(v-r.shown) > 12
	case what == "in-air":
		v := rounded(t.above+m.bias+c.normal(0, 0.1), 0.1)
		return v, math.Abs(v-r.shown) > 1
	}
	return rounded(100*r.shown/t.above, 1), !r.percent && r.shown > 1.5
}
