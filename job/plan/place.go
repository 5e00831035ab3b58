package plan

import (
	"math"
	"sort"
	"time"

	"aerosteep/job/recipe"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// batch is one filling of one vessel in the making.
type batch struct {
	id      string
	outing  *outing
	vessel  rig.Vessel
	volume  quantity.Volume
	brew    *brew
	weighed recipe.Batch
	kla     Estimate
	lead    time.Duration // from the first step of preparing to air on
	start   time.Time
	ready   time.Time // end of the brew: air off and strain
	load    time.Time
	useBy   time.Time
	serves  []serving
	primes  map[*want]bool  // wants at whose start it fills the lines
	pours   quantity.Volume // tea that is spoken for
}

type serving struct {
	want *want
	tea  quantity.Volume
}

// option is a vessel that could make an outing's tea in time.
type option struct {
	vessel rig.Vessel
	hours  float64
	peaks  []float64
	lead   time.Duration
	start  time.Time
	ready  time.Time
	load   time.Time
}

// leads are how long preparing may take before the air goes on: with time to
// spare, else at the least (common practice).
var leads = []time.Duration{90 * time.Minute, 60 * time.Minute, 30 * time.Minute}

// place puts an outing into vessels, at its hour or at the best of its window.
func (p *planner) place(o *outing) {
	if o.wants = met(o.wants); len(o.wants) == 0 {
		return
	}
	hours := []time.Time{o.at}
	if o.inWindow() {
		hours = p.candidates(o)
	}
	for _, at := range hours {
		o.at = at
		if options := p.options(o, at); p.holds(options, p.needed(o)) && p.stocked(o, options) {
			p.settle(o, options)
			return
		}
	}
	if len(hours) > 0 && p.spread(o) {
		return
	}
	o.at = o.until
	if len(hours) > 0 {
		o.at = hours[0]
	}
	o.at = o.at.In(p.zone)
	p.settle(o, p.options(o, o.at))
}

// needed is what has to be brewed for all of an outing's wants.
func (p *planner) needed(o *outing) quantity.Volume {
	sum := p.primes(o)
	for _, w := range o.wants {
		sum += w.tea
	}
	return p.brewedFor(sum)
}

func (p *planner) holds(options []option, need quantity.Volume) bool {
	var most quantity.Volume
	for _, o := range options {
		most += o.vessel.Brew
	}
	return most >= need*(1-1e-9)
}

// stocked tells whether the shed holds enough for an outing.
func (p *planner) stocked(o *outing, options []option) bool {
	_, share := p.shortOf(o, fill(options, p.needed(o)))
	return share >= 1
}

// options are the vessels that suit a recipe, are free, and can be started
// early enough for an hour: the one that wastes least where one can hold it
// all, else every one.
func (p *planner) options(o *outing, at time.Time) []option {
	need := p.needed(o)
	alone, together := p.suited(o, need)
	for _, v := range alone {
		if found, possible := p.option(o, v, at); possible {
			return []option{found}
		}
	}
	var options []option
	for _, v := range together {
		if found, possible := p.option(o, v, at); possible {
			options = append(options, found)
		}
	}
	return options
}

// suited parts the vessels that suit a recipe into those that can hold a need
// alone, the thriftiest first, and the others.
func (p *planner) suited(o *outing, need quantity.Volume) (alone, together []rig.Vessel) {
	for _, v := range p.File.Vessels {
		switch {
		case !p.suits(v, o.recipe):
		case v.Brew >= need*(1-1e-9):
			alone = append(alone, v)
		default:
			together = append(together, v)
		}
	}
	sort.SliceStable(alone, func(i, j int) bool { return less(alone[i], alone[j], need) })
	return alone, together
}

// option is a vessel for an hour, where it is free and there is the time to
// prepare it.
func (p *planner) option(o *outing, v rig.Vessel, at time.Time) (option, bool) {
	timed, worth := p.timing(o, v, at)
	if !worth {
		return timed, false
	}
	for _, lead := range leads {
		b := booking{first: timed.start.Add(-lead), start: timed.start, strain: timed.ready}
		if !b.first.Before(p.Now) && p.calendarOf(v.Name).free(b, time.Duration(v.Turnaround.Seconds()*float64(time.Second))) {
			timed.lead = lead
			return timed, true
		}
	}
	return timed, false
}

// timing counts back from the hour: load, strain, end of the brew, air on. It
// is not worth the forecast's time where not even the shortest brew fits.
func (p *planner) timing(o *outing, v rig.Vessel, at time.Time) (option, bool) {
	load := at.Add(-p.drive(o))
	ready := load.Add(-time.Duration(p.File.Limits.StrainMinutes * float64(time.Minute)))
	if ready.Before(p.Now) {
		return option{vessel: v, load: load, ready: ready, start: ready}, false
	}
	hours, peaks := p.hoursOf(v, o.recipe, ready.Add(-span(recipeHours(o.recipe))))
	return option{vessel: v, hours: hours, peaks: peaks, start: ready.Add(-span(hours)), ready: ready, load: load}, true
}

// drive is the longest drive from the vessel to an outing's sites.
func (p *planner) drive(o *outing) time.Duration {
	var most time.Duration
	for _, w := range o.wants {
		if d := w.site.Drive; d != nil {
			most = max(most, time.Duration(d.Minutes()*float64(time.Minute)))
		}
	}
	return most
}

// filling is how much goes into which vessel.
type filling struct {
	option
	volume quantity.Volume
}

// fill shares a need out: into the one vessel that wastes least, else into the
// largest vessels, the rest again into the one that wastes least.
func fill(options []option, need quantity.Volume) []filling {
	rest := append([]option(nil), options...)
	sort.SliceStable(rest, func(i, j int) bool { return rest[i].vessel.Brew > rest[j].vessel.Brew })
	var fillings []filling
	for len(rest) > 0 && need > 0 {
		if i := thriftiest(rest, need); i >= 0 {
			return append(fillings, filling{rest[i], made(rest[i].vessel, need)})
		}
		fillings = append(fillings, filling{rest[0], rest[0].vessel.Brew})
		need -= rest[0].vessel.Brew
		rest = rest[1:]
	}
	return fillings
}

// thriftiest is the vessel that holds a need and makes the least of it, the
// smallest where several do.
func thriftiest(options []option, need quantity.Volume) int {
	best := -1
	for i, o := range options {
		if o.vessel.Brew < need*(1-1e-9) {
			continue
		}
		if best < 0 || less(o.vessel, options[best].vessel, need) {
			best = i
		}
	}
	return best
}

func less(a, b rig.Vessel, need quantity.Volume) bool {
	if x, y := made(a, need), made(b, need); x != y {
		return x < y
	}
	return a.Full < b.Full
}

// made is what is brewed in a vessel for a need: never under its least, never
// over its brew, to the next 10 mL.
func made(v rig.Vessel, need quantity.Volume) quantity.Volume {
	tidy := quantity.Volume(math.Ceil(float64(need)*100-1e-6) / 100)
	return min(max(tidy, v.Least), v.Brew)
}

// settle books vessels for an outing and shares its tea out; wants that do not
// fit are unmet.
func (p *planner) settle(o *outing, options []option) {
	o.settled = true
	if len(o.wants) == 0 {
		return
	}
	if len(options) == 0 {
		p.cannot(o)
		return
	}
	p.dropOver(o, options)
	if len(o.wants) == 0 {
		return
	}
	fillings := fill(options, p.needed(o))
	if name, share := p.shortOf(o, fillings); share < 1 {
		p.outOfStock(o, name, share)
		return
	}
	for _, f := range fillings {
		b, err := p.book(o, f)
		if err != nil {
			p.refuse(o, ByVolume, wording.Verbatim(err.Error()), wording.Say("plan.nearest.recipe"))
			return
		}
		o.batches = append(o.batches, b)
	}
	p.serve(o)
}

// dropOver takes out the wants that the vessels cannot hold, the last of the
// file first.
func (p *planner) dropOver(o *outing, options []option) {
	var most quantity.Volume
	for _, option := range options {
		most += option.vessel.Brew
	}
	for len(o.wants) > 0 && p.needed(o) > most*(1+1e-9) {
		w := o.wants[len(o.wants)-1]
		o.wants = o.wants[:len(o.wants)-1]
		kind, reason := ByVolume, "plan.unmet.volume"
		if p.allBrew(o) >= p.brewedFor(w.tea)*(1-1e-9) {
			kind, reason = ByTime, "plan.unmet.busy"
		}
		p.unmet(w, kind, wording.Say(reason, wording.Places{"tea": w.tea, "hour": Clock(o.at)}), p.nearest(o, w, kind))
	}
}

// allBrew is what all vessels that suit a recipe hold together.
func (p *planner) allBrew(o *outing) quantity.Volume {
	var sum quantity.Volume
	for _, v := range p.File.Vessels {
		if p.suits(v, o.recipe) {
			sum += v.Brew
		}
	}
	return sum
}

// book takes a vessel for a filling.
func (p *planner) book(o *outing, f filling) (*batch, error) {
	weighed, err := recipe.Scale(o.recipe, f.volume)
	if err != nil {
		return nil, err
	}
	brewed, err := p.brewOf(f.vessel, o.recipe, f.volume, f.start, f.hours, f.peaks)
	if err != nil {
		return nil, err
	}
	b := &batch{
		outing: o, vessel: f.vessel, volume: f.volume, brew: brewed, weighed: weighed,
		lead: f.lead, start: f.start, ready: f.ready, load: f.load, primes: map[*want]bool{},
	}
	b.id = p.name(b)
	p.calendarOf(f.vessel.Name).take(booking{first: f.start.Add(-f.lead), start: f.start, strain: f.ready})
	p.stock.take(weighed)
	return b, nil
}

// name makes the id of a batch from the day it is wanted and its vessel, so
// that it is the same when planned again.
func (p *planner) name(b *batch) string {
	name := b.outing.at.Format(time.DateOnly) + " " + b.vessel.Name
	for n := 'b'; p.named[name]; n++ {
		name = b.outing.at.Format(time.DateOnly) + " " + b.vessel.Name + " " + string(n)
	}
	p.named[name] = true
	return name
}

// serve shares the tea of an outing's batches out to its wants, in the order
// of the file; what fills the lines comes from the batch that the run begins
// with.
func (p *planner) serve(o *outing) {
	firsts := map[*want]bool{}
	for _, w := range p.firsts(o) {
		firsts[w] = true
	}
	k := 0
	free := func() quantity.Volume {
		return o.batches[k].volume*quantity.Volume(1-p.File.Limits.Loss.Fraction()) - o.batches[k].pours
	}
	for _, w := range o.wants {
		left := w.tea
		if firsts[w] {
			if k+1 < len(o.batches) && free() < w.primeTea() {
				k++
			}
			o.batches[k].primes[w] = true
			o.batches[k].pours += w.primeTea()
		}
		for left > 0 {
			part := left
			if k+1 < len(o.batches) {
				part = min(left, max(0, free()))
			}
			if part > 1e-9 {
				o.batches[k].serves = append(o.batches[k].serves, serving{w, part})
				o.batches[k].pours += part
			}
			if left -= part; left > 0 {
				k++
			}
		}
	}
}
