package main

import (
	"fmt"
	"math"

	"aerosteep/job/forecast"
	"aerosteep/science/oxygen"
)

// brew is one brew with all that only its maker knows.
type brew struct {
	plan     plan
	life     string
	kind     string
	subject  *forecast.Subject
	began    func() life
	air      airing // as it is at the start
	heat     heat
	weather  weatherCourse
	happens  happening
	start    [2]float64 // oxygen, mg/L, and water, °C
	compost  float64    // true, g/L
	believed float64    // kLa at 20 °C, 1/h
	meter    meter
	course   []instant
	margin   float64 // of the least oxygen over the limit, failures left out, mg/L
	crash    float64 // h; NaN for none
	attempts int
}

// instant is the truth at one minute.
type instant struct{ oxygen, water, uptake, below, above float64 }

// attemptsAtMost keeps a kind that never fits from running for ever.
const attemptsAtMost = 3000

// newBrew draws brews until one is of the kind, with what is to befall it.
func newBrew(seed uint64, number int, lifeName, kind, fate string) (*brew, error) {
	for attempt := 1; attempt <= attemptsAtMost; attempt++ {
		c := seeded(seed, uint64(number)<<32|uint64(attempt))
		b, err := draw(c, number, lifeName, kind, fate)
		if err != nil {
			return nil, err
		}
		if b.fits(c) {
			b.attempts = attempt
			b.meter = newMeter(c, b)
			return b, nil
		}
	}
	return nil, fmt.Errorf("brew %d: no %s brew of life %s in %d attempts", number, kind, lifeName, attemptsAtMost)
}

// draw draws a brew without looking at what comes of it.
func draw(c chance, number int, lifeName, kind, fate string) (*brew, error) {
	b := &brew{plan: newPlan(c, number, kind == "calm"), life: lifeName, kind: kind, crash: math.NaN()}
	var err error
	if b.subject, err = b.plan.subject(); err != nil {
		return nil, err
	}
	p, s := &b.plan, &b.subject.Setup
	b.believed = float64(s.Transfer.Estimate)
	scatter := 0.35
	if p.knownBy == "tested" {
		scatter = 0.18
	}
	salt, err := oxygen.SaltFromConductivity(s.Conductivity)
	if err != nil {
		return nil, err
	}
	b.air = newAiring(c, b.believed*c.factor(scatter), s.Pressure.Kilopascals(), p.depth, p.planned, salt)
	clock := float64(p.start.Hour()) + float64(p.start.Minute())/60
	b.weather = newWeather(c, clock, p.water, p.planned)
	b.heat = newHeat(c, p.volume, p.water, b.weather)
	b.start[1] = p.water + c.normal(0, 0.25)
	_, full := b.air.saturations(0, b.start[1])
	b.start[0] = full * c.between(0.75, 1.02)
	food := trulyBrought(c, s)
	b.compost = s.GramsOfCompost() * c.factor(0.1)
	b.began = lives[lifeName](c, bring(c, b.compost, food, p.planned))
	b.happens = befall(c, p, fate)
	return b, nil
}

// trulyBrought is the recipe's food as it really is: what the larder says, give
// or take a fifth.
func trulyBrought(c chance, s *forecast.Setup) meal {
	var m meal
	for _, a := range s.Additions {
		m.ready += float64(a.Ready) * c.between(0.8, 1.2)
		m.slow += float64(a.Slow) * c.between(0.8, 1.2)
		m.nitrogen += float64(a.Nitrogen) * c.between(0.6, 1.6)
	}
	return m
}

// live runs the brew from its start, minute by minute.
func (b *brew) live(h happening) []instant {
	steps := int(math.Round(b.plan.planned * 60))
	course := make([]instant, 0, steps+1)
	alive, air := b.began(), b.air
	dissolved, water, uptake, fed := b.start[0], b.start[1], 0.0, false
	for i := range steps + 1 {
		hour := float64(i) * minute
		if !fed && hour >= h.foodHour {
			alive.feed(hour, h.meal)
			fed = true
		}
		uptake = alive.step(moment{hour, minute, water, dissolved})
		below, above := air.saturations(i, water)
		course = append(course, instant{dissolved, water, uptake, below, above})
		dissolved = air.breathe(i, dissolved, water, uptake, h.left(hour))
		water = b.heat.step(water, b.weather.at(hour), uptake, minute)
	}
	return course
}

// fits runs the brew and tells whether it is of its kind: calm stays 2.3 mg/L or
// more over the limit, safe 1.2 to 2, close 0.3 to 1.2, and a crash goes half a
// milligram under it for at least an hour, five hours after the start or later.
// A failure is left out of this, and comes after a crash.
func (b *brew) fits(c chance) bool {
	b.course = b.live(b.happens.quiet())
	b.margin = least(b.course) - b.plan.limit
	if !b.likely() || !b.margins() {
		return false
	}
	from := 0.0
	if b.kind == "crash" {
		from = b.crash + 3
		if food := b.happens.foodHour; food > b.crash-2 && food <= b.crash {
			return false
		}
	}
	if !b.happens.fail(c, from, b.plan.planned) {
		return false
	}
	if len(b.happens.failures) > 0 {
		b.course = b.live(b.happens)
	}
	return true
}

func (b *brew) margins() bool {
	switch b.kind {
	case "calm":
		return b.margin >= 2.3
	case "safe":
		return b.margin >= 1.2 && b.margin < 2
	case "close":
		return b.margin >= 0.3 && b.margin < 1.2
	}
	b.crash = crashHour(b.course, b.plan.limit)
	return b.margin <= -0.5 && b.crash >= 5 && b.crash <= b.plan.planned-1
}

// likely keeps the peak of uptake within what was ever reckoned for tea: 0.6 to
// 6 mg/(L h) in a calm brew, up to 90 in others.
func (b *brew) likely() bool {
	_, peak := b.peak()
	if b.kind == "calm" {
		return peak >= 0.6 && peak <= 6
	}
	return peak >= 1.5 && peak <= 90
}

// peak is the hour and height of the most uptake.
func (b *brew) peak() (hour, height float64) {
	for i, t := range b.course {
		if t.uptake > height {
			hour, height = float64(i)*minute, t.uptake
		}
	}
	return hour, height
}

func least(course []instant) float64 {
	low := math.Inf(1)
	for _, t := range course {
		low = math.Min(low, t.oxygen)
	}
	return low
}

// crashHour is the first row of the truth from which oxygen stays under the
// limit for an hour; NaN where it never does.
func crashHour(course []instant, limit float64) float64 {
	for i := 0; i+60 < len(course); i += 10 {
		under := true
		for j := i; j <= i+60 && under; j += 10 {
			under = course[j].oxygen < limit
		}
		if under {
			return float64(i) * minute
		}
	}
	return math.NaN()
}

// at is the truth at an hour.
func (b *brew) at(hour float64) instant {
	return b.course[min(len(b.course)-1, int(math.Round(hour*60)))]
}
