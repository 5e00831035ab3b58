package plan

import (
	"math"
	"runtime"
	"sync"
	"time"

	"aerosteep/job/application"
	"aerosteep/job/forecast"
	"aerosteep/job/recipe"
	"aerosteep/job/rig"
	"aerosteep/quantity"
)

const (
	members     = 1000 // of the ensemble that forecasts a batch
	peakMembers = 120  // of the one that finds the hour of highest uptake
	seed        = 1
	usualHours  = 24.0
	shortest    = 18.0 // hours that a brew is never shortened under
	longest     = 72.0
	extractMost = 1.0 // hours of a stirred extract
	quarter     = 15 * time.Minute
	finishAhead = 0.5 // hours before the end at which finish items go in
	meantFor    = 20  // °C that a recipe's hours are meant for
)

// brew is one recipe in one vessel at one filling: how long it takes and
// whether its air holds. Batches that are alike share one.
type brew struct {
	hours   float64   // D
	peaks   []float64 // hours of highest uptake, sorted
	setup   forecast.Setup
	once    sync.Once
	outlook *forecast.Outlook // once it was foreseen
}

// brewKey names batches that may share a forecast: alike in vessel, recipe,
// volume (within 5 %) and, where there is weather, the hour they start.
type brewKey struct {
	vessel, recipe string
	volume         quantity.Volume
	start          int64
}

// peakKey names what shares its hours of highest uptake.
type peakKey struct {
	vessel, recipe string
	start          int64
	held           bool // at 20 °C
}

func recipeHours(r recipe.Recipe) float64 { return orElse(r.Hours, usualHours) }

// isExtract tells a recipe that is stirred and not brewed: unfed, an hour at
// most.
func isExtract(r recipe.Recipe) bool { return !r.Fed() && recipeHours(r) <= extractMost }

func span(hours float64) time.Duration { return time.Duration(hours * float64(time.Hour)) }

// hoursOf is how long a recipe brews in a vessel:
//
//	D = hours x median hour of highest uptake as expected / the same at 20 °C
//
// to the quarter hour, never under min(18, hours) or over max(72, hours). An
// extract is washed out and not grown: it keeps its hour.
func (p *planner) hoursOf(v rig.Vessel, r recipe.Recipe, start time.Time) (float64, []float64) {
	hours := recipeHours(r)
	if isExtract(r) || v.Pump == "" && v.KLa20 == nil {
		return math.Min(hours, extractMost), nil
	}
	ripe, ok := p.ripening(v, r, start)
	if !ok {
		return hours, nil
	}
	d := math.Round(hours*ripe.stretch()*4) / 4
	return math.Min(math.Max(d, math.Min(shortest, hours)), math.Max(longest, hours)), ripe.expected
}

// ripening is when a recipe's uptake is highest: as expected, and at the
// temperature that its hours are meant for.
type ripening struct{ expected, at20 []float64 }

// stretch is by how much longer a brew takes than its recipe says.
func (r ripening) stretch() float64 { return median(r.expected) / median(r.at20) }

func (p *planner) ripening(v rig.Vessel, r recipe.Recipe, start time.Time) (ripening, bool) {
	weighed, err := recipe.Scale(r, v.Brew)
	if err != nil {
		return ripening{}, false
	}
	setup := p.setup(v, weighed, v.Brew, start, recipeHours(r))
	held := quantity.Celsius(meantFor)
	at := setup
	at.Start, at.Held, at.Outdoors = held, &held, nil
	expected := peakKey{v.Name, r.Name, p.weatherKey(start), false}
	at20 := peakKey{v.Name, r.Name, 0, true}
	p.findPeaks(map[peakKey]forecast.Setup{expected: setup, at20: at})
	return ripening{expected: p.peaks[expected], at20: p.peaks[at20]}, true
}

// weatherKey parts brews by when they start, where weather makes a difference.
func (p *planner) weatherKey(start time.Time) int64 {
	if p.Weather == nil {
		return 0
	}
	return start.Truncate(24 * time.Hour).Unix()
}

// findPeaks finds the hours of highest uptake that are not known yet, side by
// side.
func (p *planner) findPeaks(setups map[peakKey]forecast.Setup) {
	var keys []peakKey
	for key := range setups {
		if _, done := p.peaks[key]; !done {
			keys = append(keys, key)
		}
	}
	found := make([][]float64, len(keys))
	atOnce(len(keys), func(i int) { found[i] = forecast.PeakHours(setups[keys[i]], peakMembers, seed) })
	for i, key := range keys {
		p.peaks[key] = found[i]
	}
}

func median(sorted []float64) float64 { return quantile(sorted, 0.5) }

// quantile is linear between the sorted values.
func quantile(sorted []float64, q float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	at := q * float64(len(sorted)-1)
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}

// alikeVolume is the volume that stands for all within 5 % of it.
func alikeVolume(v quantity.Volume) quantity.Volume {
	const step = 0.1 // of the logarithm
	return quantity.Volume(math.Exp(math.Round(math.Log(float64(v))/step) * step))
}

// brewOf is the brew of a recipe in a vessel at a filling.
func (p *planner) brewOf(v rig.Vessel, r recipe.Recipe, volume quantity.Volume, start time.Time, hours float64, peaks []float64) (*brew, error) {
	volume = alikeVolume(volume)
	key := brewKey{v.Name, r.Name, volume, 0}
	if p.Weather != nil {
		key.start = start.Unix()
	}
	if known, done := p.brews[key]; done && known.hours == hours {
		return known, nil
	}
	weighed, err := recipe.Scale(r, volume)
	if err != nil {
		return nil, err
	}
	b := &brew{hours: hours, peaks: peaks, setup: p.setup(v, weighed, volume, start, hours)}
	p.brews[key] = b
	return b, nil
}

// foresee runs the forecast of a brew, with all members.
func (b *brew) foresee() {
	b.once.Do(func() { b.outlook = forecast.Prior(b.setup, members, seed) })
}

// forecastAll forecasts the brews of all batches, on all processors at once.
func (p *planner) forecastAll() {
	var brews []*brew
	seen := map[*brew]bool{}
	for _, o := range p.outings {
		for _, b := range o.batches {
			if !seen[b.brew] {
				seen[b.brew] = true
				brews = append(brews, b.brew)
			}
		}
	}
	atOnce(len(brews), func(i int) { brews[i].foresee() })
	for _, o := range p.outings {
		for _, b := range o.batches {
			b.useBy = p.useBy(b.brew, b.ready)
		}
	}
}

// atOnce does n independent things, as many at a time as there are processors.
func atOnce(n int, do func(int)) {
	var wait sync.WaitGroup
	next := make(chan int)
	for range min(n, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	wait.Wait()
}

// setup is what the forecast needs to know.
func (p *planner) setup(v rig.Vessel, b recipe.Batch, volume quantity.Volume, start time.Time, hours float64) forecast.Setup {
	depth, _ := depthAt(v, volume)
	s := forecast.Setup{
		Volume: volume, Depth: depth, Pressure: p.sitePressure(v.Site),
		Conductivity: orZero(p.File.Water.Conductivity),
		Transfer:     p.aerate(v, volume).transfer(),
		Start:        p.File.Water.Temperature,
		Outdoors:     p.airCourse(start, hours),
		Indoors:      v.Indoors,
		Planned:      quantity.Hours(hours),
		Limit:        orZero(p.File.Limits.DO),
	}
	for _, w := range b.Items {
		if w.Item.Ingredient.Compost {
			s.Compost = append(s.Compost, forecast.Compost{Kind: w.Item.Ingredient.Name, GramsPerLitre: w.PerLitre})
			continue
		}
		s.Additions = append(s.Additions, addition(w, volume, hours))
	}
	return s
}

func addition(w recipe.Weighed, volume quantity.Volume, hours float64) forecast.Addition {
	perLitre := func(m quantity.Mass) quantity.Concentration {
		return quantity.MilligramsPerLitre(m.Milligrams() / volume.Litres())
	}
	return forecast.Addition{
		Name: w.Item.Ingredient.Name, Hour: additionHour(w.Item.When, hours),
		Ready: perLitre(w.ReadyDemand), Slow: perLitre(w.SlowDemand()), Nitrogen: perLitre(w.Nitrogen),
		Finish: w.Item.When.Finish,
	}
}

// additionHour is when an item goes in, in hours from the start.
func additionHour(when recipe.When, hours float64) float64 {
	if when.Finish {
		return math.Max(0, hours-math.Min(finishAhead, hours/2))
	}
	return math.Min(when.Hours, hours)
}

// airCourse is the outdoor air over a brew, from the weather.
func (p *planner) airCourse(start time.Time, hours float64) forecast.AirCourse {
	if p.Weather == nil {
		return nil
	}
	var course forecast.AirCourse
	for h := 0.0; h <= hours; h++ {
		if t, known := p.Weather.AirAt(start.Add(span(h))); known {
			course = append(course, forecast.AirAt{Hour: h, Temperature: t})
		}
	}
	return course
}

// useBy is when the tea's clock ends once the air is off: when its oxygen is
// used up to the limit, or 4 h, whichever is first. The surface is not counted.
func (p *planner) useBy(b *brew, airOff time.Time) time.Time {
	most := application.OffAir.Hours()
	last := b.outlook.Course[len(b.outlook.Course)-1]
	left := last.DO.Median - p.File.Limits.UseByDO.MilligramsPerLitre()
	hours := most
	if uptake := last.Uptake.Median; uptake > 0 {
		hours = math.Min(most, math.Max(0, left)/uptake)
	}
	return airOff.Add(span(hours).Truncate(time.Minute))
}
