package forecast

import (
	"math"
	"slices"

	"aerosteep/numeric"
)

// Lesson is what a finished batch says of its rig and of its recipe, against what
// was believed before it: logarithms of factors, each with its spread.
type Lesson struct {
	Transfer, TransferSpread float64 // of kLa in the brew
	Uptake, UptakeSpread     float64 // of the highest uptake: compost and food together
	Readings                 int     // of oxygen
}

// fewestForLesson is how many readings of oxygen a batch must have: fewer say more
// of the meter than of the rig (judged).
const fewestForLesson = 3

// LessonOf walks a finished batch from what is usually believed to its end. False
// where it has too few readings.
//
// Errors: those of Run.
func LessonOf(q Question) (Lesson, bool, error) {
	l := Lesson{}
	for _, r := range q.readings() {
		if r.HasOxygen() {
			l.Readings++
		}
	}
	if l.Readings < fewestForLesson {
		return l, false, nil
	}
	q.Setup.Learned, q.Members, q.Hours = nil, lessonMembers, 0
	usual := prior(q.Setup, lessonMembers, q.Seed, false)
	f, err := Run(q)
	if err != nil {
		return l, false, err
	}
	seen := f.started.band(func(m *member) float64 { return m.peakUptake })
	l.Uptake, l.UptakeSpread = against(seen, usual.PeakUptake.Median)
	t := q.Setup.Transfer
	believed := t.Estimate.PerHour()
	if !t.InBrew {
		believed *= usualAlpha
	}
	l.Transfer, l.TransferSpread = against(f.started.band(func(m *member) float64 { return m.transfer }), believed)
	return l, true, nil
}

const lessonMembers = 500

// against is a band against what was believed, as a logarithm with its spread; an
// 80 % band is 2 x 1.2816 spreads wide.
func against(b Band, believed float64) (shift, spread float64) {
	const least = 1e-6
	shift = numeric.Log(math.Max(least, b.Median) / math.Max(least, believed))
	return shift, numeric.Log(math.Max(least, b.High80)/math.Max(least, b.Low80)) / (2 * 1.2816)
}

// Pooled is what several batches say together.
type Pooled struct {
	Shift   float64 // of the logarithm, from what is usually believed
	Spread  float64 // that a new batch of the same kind keeps
	Batches int     // 0: nothing was learned
}

// How far rigs and recipes lie apart, and the batches of one of them (judged: no
// spread of tea from batch to batch is published).
const (
	transferBetween, transferWithin = 0.40, 0.12
	uptakeBetween, uptakeWithin     = 0.60, 0.30
)

// pool is partial pooling: each batch counts by its own spread and that of
// batches about their rig, and all of them are drawn toward what is usual by the
// spread of rigs:
//
//	w_i = 1/(within² + s_i²);  shift = Σ w_i y_i / (1/between² + Σ w_i)
//	spread² = within² + 1/(1/between² + Σ w_i)
//
// One odd batch does not rule: what lies further from the median of three or more
// than two of its spreads counts as no further.
//
// Source: Gelman et al. 2013, Bayesian Data Analysis, section 5.4; the bound is
// Huber's (1964, Ann. Math. Stat. 35: 73).
func pool(values, spreads []float64, between, within float64) Pooled {
	p := Pooled{Batches: len(values)}
	if p.Batches == 0 {
		return p
	}
	middle := medianOf(values)
	precision, sum := 1/(between*between), 0.0
	for i, v := range values {
		own := within*within + spreads[i]*spreads[i]
		if len(values) >= 3 {
			most := 2 * math.Sqrt(own)
			v = math.Min(middle+most, math.Max(middle-most, v))
		}
		precision += 1 / own
		sum += v / own
	}
	p.Shift = sum / precision
	p.Spread = math.Sqrt(within*within + 1/precision)
	return p
}

func medianOf(values []float64) float64 {
	sorted := slices.Sorted(slices.Values(values))
	n := len(sorted)
	return (sorted[(n-1)/2] + sorted[n/2]) / 2
}

// Learned is what the finished batches of a rig and of a recipe say of the next.
type Learned struct {
	Transfer Pooled // of the vessel's air
	Uptake   Pooled // of the recipe with its compost
}

// Learn pools the lessons of one vessel, and those of one recipe.
func Learn(vessel, recipe []Lesson) *Learned {
	column := func(lessons []Lesson, read func(Lesson) float64) []float64 {
		out := make([]float64, len(lessons))
		for i, l := range lessons {
			out[i] = read(l)
		}
		return out
	}
	return &Learned{
		Transfer: pool(column(vessel, func(l Lesson) float64 { return l.Transfer }), column(vessel, func(l Lesson) float64 { return l.TransferSpread }), transferBetween, transferWithin),
		Uptake:   pool(column(recipe, func(l Lesson) float64 { return l.Uptake }), column(recipe, func(l Lesson) float64 { return l.UptakeSpread }), uptakeBetween, uptakeWithin),
	}
}

// usualAlpha is the median of alpha as drawn.
const usualAlpha = 0.92

// ofTransfer draws the air of a vessel whose batches are known about what they
// say, in the place of what is usually believed.
func (l *Learned) ofTransfer(m *member, d *drawer) {
	if l == nil || l.Transfer.Batches == 0 {
		return
	}
	believed := d.setup.Transfer.Estimate.PerHour()
	if !d.setup.Transfer.InBrew {
		believed *= usualAlpha
	}
	m.transfer = believed * numeric.Exp(l.Transfer.Shift+float64(l.Transfer.Spread*d.Next()))
}

// ofUptake moves a factor on what compost or food takes by what the recipe's
// batches say, and brings it closer to that, the more of them there are.
func (l *Learned) ofUptake(factor float64) float64 {
	if l == nil || l.Uptake.Batches == 0 {
		return factor
	}
	keep := l.Uptake.Spread / math.Sqrt(uptakeBetween*uptakeBetween+uptakeWithin*uptakeWithin)
	return numeric.Pow(factor, keep) * numeric.Exp(l.Uptake.Shift)
}

// growthShare is the part of a shift in uptake that lies in the pace of growth:
// the highest uptake rises with the food and, more steeply, with how fast it is
// eaten (judged, so that lessons of the model's own brews lead back to them).
const growthShare = 1.0 / 3

// ofGrowth moves the rate of growth by its part of what the recipe's batches say.
func (l *Learned) ofGrowth(rate float64) float64 {
	if l == nil || l.Uptake.Batches == 0 {
		return rate
	}
	return rate * numeric.Exp(float64(growthShare*l.Uptake.Shift))
}
