package forecast

import (
	"math"
	"slices"

	"aerosteep/quantity"
)

// Driver is what drives the lowest oxygen.
type Driver string

// The drivers.
const (
	ByFood        Driver = "food"
	ByAir         Driver = "air"
	ByTemperature Driver = "temperature"
	ByCompost     Driver = "compost"
	ByMeter       Driver = "meter"
)

// Why is what takes the oxygen down, read from the members.
type Why struct {
	Driver Driver
	Parts  Parts
}

// Parts are what takes oxygen from saturation, in mg/L by the members' median:
// by warmth, by life on food and on compost, and by air that is missing.
type Parts struct{ Warmth, Food, Compost, Air float64 }

// suspectMargin: a meter that is off by more than what parts the forecast from
// its limit is the first thing to look at.
const suspectMargin = 0.8

// lookAtAir is the chance, in 100, of air gone unseen from which the pump is the
// first thing to look at: a look costs a moment, air that stays away the brew.
// likelyAir is that from which the readings look like it (both a judgement).
const (
	lookAtAir = 20.0
	likelyAir = 50.0
)

// Why asks the members: at the hour of the lowest oxygen, how much of what is
// missing comes from uptake (on food put in, or on the compost), how much
// from water warmer than now, and how much from air that should be there.
func (f *Forecast) Why() Why {
	parts := f.parts()
	w := Why{Parts: parts}
	gap := f.State.DO.Median - f.Limit
	if f.MinDO != nil {
		gap = f.MinDO.Median - f.Limit
	}
	largest := math.Max(parts.Warmth, math.Max(parts.Food, parts.Compost))
	bias := math.Abs(f.State.MeterBias.Median)
	switch {
	case f.AirFailing() > lookAtAir || parts.Air > largest && parts.Air > 0.2:
		w.Driver = ByAir
	case f.MeterSuspect() && bias > suspectMargin && bias > math.Abs(gap) && bias > largest:
		w.Driver = ByMeter
	case parts.Warmth >= parts.Food && parts.Warmth >= parts.Compost:
		w.Driver = ByTemperature
	case parts.Food >= parts.Compost:
		w.Driver = ByFood
	default:
		w.Driver = ByCompost
	}
	return w
}

func (f *Forecast) parts() Parts {
	now, went := f.started, f.now.members
	take := func(read func(i int) float64) float64 {
		values := make([]float64, len(went))
		for i := range values {
			values[i] = read(i)
		}
		slices.Sort(values)
		return values[len(values)/2]
	}
	water, uptake := func(i int) float64 { return went[i].lowWater }, func(i int) float64 { return went[i].lowUptake }
	climate := now.climate
	missing := func(i int) float64 { // by uptake with the air as believed
		m := &went[i]
		return uptake(i) / (m.transfer * climate.row(water(i)).transfer)
	}
	start := now.setup.Start.Celsius()
	p := Parts{
		Warmth: take(func(i int) float64 { return climate.row(start).saturation - climate.row(water(i)).saturation }),
	}
	life := take(missing)
	fed := f.fedShare()
	p.Food, p.Compost = life*fed, life*(1-fed)
	p.Air = take(func(i int) float64 {
		m := &went[i]
		arrives := math.Min(1, math.Max(m.surface/m.transfer, m.airFactor*airAt(f.changes, f.question.Now)))
		return missing(i) * (1/arrives - 1)
	})
	return p
}

// fedShare is the share of what came in, or comes in before the end, that was
// put in as food.
func (f *Forecast) fedShare() float64 {
	food, all := 0.0, 0.0
	for _, c := range f.changes {
		if !c.finish {
			food += c.ready + c.slow
		}
	}
	all, _ = f.started.weighted(func(m *member) float64 { return m.brought }, nil)
	if food+all <= 0 {
		return 0
	}
	return food / (food + all)
}

// NextReading is when a reading would tell most, and what for.
type NextReading struct {
	Hour *float64
	Why  ReadingReason
}

// ReadingReason is what a reading is for.
type ReadingReason string

// The reasons.
const (
	ToDecide   ReadingReason = "decide"   // it parts the members that go under from those that do not
	ToWatch    ReadingReason = "watch"    // the range grows wide
	ToConfirm  ReadingReason = "confirm"  // something odd was seen
	ToFollow   ReadingReason = "follow"   // it is under the limit, or as good as: did what was done help?
	NoMoreRead ReadingReason = "past-end" // nothing is left to decide
)

const (
	soonestReading = 0.25 // h
	followReading  = 0.5  // h, after something was done about oxygen that is lost
	asGoodAsLost   = 98.0 // in 100
	latestReading  = 12.0
	readingNoise   = 0.25 // mg/L, of a reading and of the place it is taken at
)

// NextReading finds the hour at which a reading would change the chance most:
// where oxygen then, as a meter would show it, tells best which members go
// under, and early enough to do something.
func (f *Forecast) NextReading() NextReading {
	if f.Chance == nil {
		return NextReading{Why: NoMoreRead}
	}
	if odd := len(f.Doubted); odd > 0 && f.lastDoubted() || f.AirFailing() > lookAtAir && f.AirFailing() < 99 {
		return f.readAfter(soonestReading, ToConfirm)
	}
	if *f.Chance > asGoodAsLost {
		return f.readAfter(followReading, ToFollow)
	}
	if *f.Chance >= 100-asGoodAsLost {
		hour := f.mostTelling()
		return NextReading{Hour: &hour, Why: ToDecide}
	}
	hour := f.widening()
	return NextReading{Hour: &hour, Why: ToWatch}
}

// readAfter is a reading some hours from now, at the end of the brew at the latest.
func (f *Forecast) readAfter(hours float64, why ReadingReason) NextReading {
	h := f.question.horizon()
	hour := math.Min(h.now+hours, h.planned)
	return NextReading{Hour: &hour, Why: why}
}

// lastDoubted tells whether the newest reading is in doubt.
func (f *Forecast) lastDoubted() bool {
	readings := f.question.readings()
	return len(readings) > 0 && f.Doubted[len(f.Doubted)-1].Reading == len(readings)-1
}

// mostTelling weighs how well a reading at each row parts the members by how
// many of them it would still be in time for.
func (f *Forecast) mostTelling() float64 {
	now := f.question.Now
	best, at := -1.0, now+1
	members := f.now.members
	for row, hour := range f.paths.hours {
		if hour < now+soonestReading || hour > now+latestReading || hour > f.question.Setup.Planned.Hours() {
			continue
		}
		early := 0
		for i := range members {
			if members[i].belowHour > hour {
				early++
			}
		}
		value := separation(f.paths.oxygen[row], members) * float64(early) / float64(len(members))
		if value > best+1e-12 {
			best, at = value, hour
		}
	}
	return at
}

// separation is the squared correlation between a reading and going under.
func separation(oxygen []float64, members []member) float64 {
	n := float64(len(members))
	var sum, square, under, product float64
	for i, c := range oxygen {
		sum += c
		square += c * c
		if !math.IsInf(members[i].belowHour, 1) {
			under++
			product += c
		}
	}
	variance := square/n - (sum/n)*(sum/n) + readingNoise*readingNoise
	share := under / n
	spread := share * (1 - share)
	if spread <= 0 || variance <= 0 {
		return 0
	}
	covariance := product/n - share*sum/n
	return covariance * covariance / (variance * spread)
}

// widening is the first hour at which the 80 % range of oxygen is wider than
// 1 mg/L, between two hours and the latest.
func (f *Forecast) widening() float64 {
	now, planned := f.question.Now, f.question.Setup.Planned.Hours()
	last := now + soonestReading
	for _, m := range f.Course[f.past:] {
		if m.Hour > planned || m.Hour > now+latestReading {
			break
		}
		if m.Hour < now+2 {
			continue
		}
		last = m.Hour
		if m.DO.High80-m.DO.Low80 > 1 {
			break
		}
	}
	return math.Max(now+soonestReading, last)
}

// longestUse is the hours after which tea without air is no longer used
// (common practice).
const longestUse = 4.0

// Use is how long the tea can be used if its air stops now.
type Use struct {
	Hours Range // after now; High80 is not asked for
}

// UseBy runs every member with its air off, to a level of oxygen or four
// hours, whichever is first.
func (f *Forecast) UseBy(level quantity.Concentration) Use {
	hours := f.started.gather(func(m *member) float64 { return m.lasts(f.started.climate, level.MilligramsPerLitre()) })
	return Use{Hours: rangeOf(hours)}
}

// lasts is how many hours a member stays over a level with its air off.
func (m *member) lasts(table *climate, level float64) float64 {
	const minute = 1.0 / 60
	row := table.row(m.water)
	c, half := m.oxygen, m.kinetic.HalfOxygen
	demand := m.uptake * (half + c) / math.Max(c, 1e-6)
	for step := range int(longestUse / minute) {
		if c <= level {
			return float64(step) * minute
		}
		c += float64((float64(m.surface*row.transfer)*(row.saturation-c) - demand*c/(half+c)) * minute)
	}
	return longestUse
}
