package plan

import (
	"math"
	"sort"
	"time"

	"aerosteep/quantity"
	"aerosteep/wording"
)

func volumeTimes(f float64) quantity.Volume { return quantity.Volume(f) }

// layRuns puts loads on the clock: wants of one site, hour and applicator
// follow each other in the order of the file. It then finishes the batches,
// whose last steps these are.
func (p *planner) layRuns() {
	applied := map[*batch][]applying{}
	for _, wants := range p.runs() {
		p.layRun(wants, applied)
	}
	for _, o := range p.outings {
		p.fixedSky(o)
		for _, b := range o.batches {
			p.plan.Batches = append(p.plan.Batches, p.finished(b, applied[b]))
		}
	}
	sort.SliceStable(p.plan.Batches, func(i, j int) bool { return p.plan.Batches[i].StartAt.Before(p.plan.Batches[j].StartAt) })
}

// runs are the wants that are served, by run, in order of time and file.
func (p *planner) runs() [][]*want {
	var keys []runKey
	byKey := map[runKey][]*want{}
	for _, w := range p.pieces {
		if w.unmet || w.split || w.outing == nil || len(w.outing.batches) == 0 {
			continue
		}
		k := w.runKey(w.outing.at)
		if byKey[k] == nil {
			keys = append(keys, k)
		}
		byKey[k] = append(byKey[k], w)
	}
	sort.SliceStable(keys, func(i, j int) bool { return keys[i].at < keys[j].at })
	runs := make([][]*want, len(keys))
	for i, k := range keys {
		runs[i] = byKey[k]
	}
	return runs
}

// layRun lays one run out and notes when each batch is put on.
func (p *planner) layRun(wants []*want, applied map[*batch][]applying) {
	first := wants[0]
	run := Run{At: first.outing.at, Beds: []string{}, Prime: []Prime{}, Loads: []Load{}, BeforeUseBy: true}
	if first.hasSite {
		run.Site = &first.site.Name
	}
	minutes := 20.0
	if a := first.applicator; a != nil {
		run.Applicator, minutes = &a.Name, a.MinutesPerLoad
	}
	at := run.At
	var used []*batch
	for _, w := range wants {
		run.Beds = append(run.Beds, w.Bed)
		for _, b := range w.outing.batches {
			for _, s := range b.serves {
				if s.want != w {
					continue
				}
				loads := loadsOf(s, b.id)
				ends := at.Add(time.Duration(float64(len(loads)) * minutes * float64(time.Minute)))
				run.Loads = append(run.Loads, loads...)
				applied[b] = append(applied[b], applying{w, at, ends, s})
				at, used = ends, append(used, b)
			}
		}
	}
	run.Prime = prime(first)
	run.EndsAt = at
	for _, b := range used {
		run.BeforeUseBy = run.BeforeUseBy && !run.EndsAt.After(b.useBy)
	}
	if !run.BeforeUseBy {
		p.caution("plan.caution.past-use-by", wording.Places{"hour": Clock(run.At), "beds": run.Beds})
	}
	run.Sky = p.skyOf(first, run.At, run.EndsAt)
	p.surfaceCautions(wants, run.At)
	p.plan.Runs = append(p.plan.Runs, run)
}

// prime is the mix that fills pump, filter and hose before the first load.
func prime(w *want) []Prime {
	primes := []Prime{}
	if w.applicator == nil || w.applicator.DeadVolume <= 0 {
		return primes
	}
	for _, b := range w.outing.batches {
		if b.primes[w] {
			dead := w.applicator.DeadVolume
			tea := w.primeTea()
			primes = append(primes, Prime{Batch: b.id, TeaL: tea.Litres(), WaterL: (dead - tea).Litres()})
		}
	}
	return primes
}

// loadsOf shares one bed's tea of one batch into loads: full ones and a rest,
// or equal ones where the rest would be under a tenth of a tank, too little to
// mix and spray well.
func loadsOf(s serving, batch string) []Load {
	w := s.want
	mix := s.tea * volumeTimes(1+w.Dilution)
	loads := []Load{}
	for _, size := range loadSizes(mix, w) {
		tea := size / volumeTimes(1+w.Dilution)
		l := Load{Want: w.Index, Bed: w.Bed, Batch: batch, TeaL: tea.Litres(), WaterL: (size - tea).Litres()}
		if area := w.bed.Area; area != nil {
			covers := area.SquareMetres() * float64(tea/w.whole)
			l.Covers = &covers
		}
		loads = append(loads, l)
	}
	return loads
}

func loadSizes(mix quantity.Volume, w *want) []quantity.Volume {
	if w.applicator == nil || w.applicator.Tank == nil {
		return []quantity.Volume{mix}
	}
	tank := *w.applicator.Tank
	n := int(math.Max(1, math.Ceil(float64(mix/tank)-1e-9)))
	sizes := make([]quantity.Volume, n)
	rest := mix - volumeTimes(float64(n-1))*tank
	for i := range sizes {
		sizes[i] = tank
		if i == n-1 {
			sizes[i] = min(rest, tank)
		}
		if rest < tank/10 {
			sizes[i] = mix / volumeTimes(float64(n))
		}
	}
	return sizes
}
