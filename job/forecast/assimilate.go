package forecast

import (
	"math"
	"slices"
)

// How often air fails without anybody writing it down: a judgement. Members
// that fail are drawn more often than that and weigh less, so that there are
// some of them when a reading says so.
const (
	failureChance = 0.020 // per hour
	failureDrawn  = 0.040
	repairChance  = 0.08 // per hour, that such a failure ends
)

// follow is the past of a batch: the ensemble, walked from the start to now
// with every reading on the way.
type follow struct {
	*ensemble
	readings []Reading
	course   []Moment
	used     int
	doubted  []Doubted
	bits     map[uint64]int // suspected bit -> reading
	next     int            // reading to come
	steps    []step
	mark     waypoint // where the last reading of oxygen left the members
	last     float64  // hour of the last reading of oxygen
}

// walk moves to the end of the steps, taking the readings on the way.
func (f *follow) walk(steps []step) {
	f.course = append(f.course, f.moment(0))
	f.steps = steps
	f.last = math.Inf(-1)
	f.keepMark(0)
	for i := range steps {
		s := &steps[i]
		if s.knot {
			f.fail(s)
		}
		f.stride(s)
		for f.next < len(f.readings) && f.readings[f.next].Hour <= s.to()+sameMoment {
			f.take(i, f.next)
			f.next++
		}
		if s.row >= 0 {
			f.course = append(f.course, f.moment(s.to()))
		}
	}
}

// fail lets some members' air fail unseen, and some such failures end. On a
// second walk failures are as much more frequent as all else that happens.
func (f *follow) fail(s *step) {
	if s.air == 0 || s.lostUntil > 0 {
		return
	}
	chance, drawn := failureChance*f.boldness, failureDrawn*f.boldness
	for i := range f.members {
		m := &f.members[i]
		u := f.noise.Uniform.Float64()
		switch {
		case m.air < 1 && u < repairChance*knotHours:
			m.setAir(1)
		case m.air == 1 && u < drawn*knotHours:
			f.weights[i] *= chance / drawn
			left := 0.0
			if v := f.noise.Uniform.Float64(); v > 0.5 {
				left = 0.15 + 0.9*(v-0.5)
			}
			m.setAir(left)
		case m.air == 1:
			f.weights[i] *= (1 - chance*knotHours) / (1 - drawn*knotHours)
		}
	}
}

// take weighs the members by one reading.
func (f *follow) take(at, index int) {
	s, r := &f.steps[at], &f.readings[index]
	if r.Water != nil {
		if f.takeTemperature(*r.Water) {
			f.used++
		} else {
			f.doubted = append(f.doubted, Doubted{index, BadThermo, 95})
		}
	}
	f.weighSmell(r.Smell)
	if !r.HasOxygen() {
		f.renew()
		return
	}
	value, spread, doubt := f.reads(r)
	if doubt != "" {
		f.doubted = append(f.doubted, Doubted{index, doubt, 99})
	}
	if value == nil {
		return
	}
	if r.Water == nil && r.HasOxygen() || doubt == "" {
		f.used++
	}
	bit := uint64(1) << (index % 64)
	f.settle(bit)
	f.bits[bit] = index
	if r.Hour-f.last < denseHours {
		spread *= denseSpread
	}
	f.often = r.Hour-f.last < oftenHours
	f.last = r.Hour
	sight := sight{r.Hour, value, spread, bit}
	f.weighOxygen(s, sight)
	f.reconsider(at, sight, r.Water)
	f.seen = true
	f.renew()
	f.keepMark(at + 1)
}

// reads gives a reading as a function of the water's climate, in mg/L. A
// number that no water holds, but that would be a share of saturation, was
// typed into the wrong box: it still says something, less exactly.
func (f *follow) reads(r *Reading) (value func(*climateRow) float64, spread float64, doubt Doubt) {
	ceiling, _ := f.weighted(func(m *member) float64 { return f.climate.row(m.water).saturation }, nil)
	if r.DO == nil {
		percent := *r.Percent
		if percent > 180 {
			return nil, 0, Impossible
		}
		return func(row *climateRow) float64 { return float64(percent*row.saturation) / 100 }, oxygenSpread, ""
	}
	do := *r.DO
	switch {
	case do > 1.5*ceiling+3 && do <= 160:
		return func(row *climateRow) float64 { return float64(do*row.saturation) / 100 }, 2 * oxygenSpread, PercentAsMass
	case do > 1.5*ceiling+3:
		return nil, 0, Impossible
	}
	return func(*climateRow) float64 { return do }, oxygenSpread, ""
}

// settle closes the account of a reading whose bit is needed again.
func (f *follow) settle(bit uint64) {
	index, open := f.bits[bit]
	if !open {
		return
	}
	delete(f.bits, bit)
	chance := f.share(func(m *member) bool { return m.suspected&bit != 0 })
	if chance > 0.5 && !slices.ContainsFunc(f.doubted, func(d Doubted) bool { return d.Reading == index }) {
		f.doubted = append(f.doubted, Doubted{index, OutOfLine, 100 * chance})
	}
}

// settleAll closes all accounts.
func (f *follow) settleAll() {
	for i := range 64 {
		f.settle(uint64(1) << i)
	}
	slices.SortFunc(f.doubted, func(a, b Doubted) int { return a.Reading - b.Reading })
}
