// Package plan goes from ground to clock: from every want of a job file to
// batches with their hours, their air, their forecast, and the loads that put
// them on.
//
//	p := plan.Make(plan.Input{File: file, Now: now})
//
// How a plan comes about, one file each: what a want needs (need.go), which
// recipe (choose.go), wants into outings (outing.go), outings into vessels
// (place.go, calendar.go), how long the brew takes and whether its air holds
// (brew.go, air.go), the steps of a batch (steps.go), the loads of an outing
// (run.go), hygiene (hygiene.go), and what would cure a batch that is likely
// to run out of oxygen (advice.go).
//
// The same file and the same now give the same plan, byte for byte.
package plan

import (
	"sort"
	"time"

	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/science/weather"
	"aerosteep/source"
	"aerosteep/wording"
)

// Input is what a plan is made from.
type Input struct {
	File    *jobfile.File
	Now     time.Time
	Weather *weather.Forecast // nil: none
	Reader  wording.Reader    // for whom its sentences are
}

// Make plans all wants of a file.
func Make(in Input) *Plan {
	p := newPlanner(in)
	p.make()
	return &p.plan
}

func newPlanner(in Input) *planner {
	p := &planner{
		Input:     in,
		zone:      in.File.Holding.Zone,
		brews:     map[brewKey]*brew{},
		peaks:     map[peakKey][]float64{},
		calendars: map[string]*calendar{},
		stock:     newStock(in.File),
		said:      map[string]bool{},
		named:     map[string]bool{},
		cited:     map[string]bool{},
		skies:     map[string][]weather.Scored{},
		doubts:    map[string]float64{},
		trials:    &trials{known: map[string]*trial{}},
		verdicts:  &verdicts{known: map[verdictKey]hygiene.Verdict{}},
	}
	p.Now = in.Now.In(p.zone)
	p.plan.Now = p.Now
	return p
}

// planner is a plan in the making.
type planner struct {
	Input
	zone      *time.Location
	plan      Plan
	wants     []*want
	pieces    []*want // wants, and the parts of those that are split over days
	outings   []*outing
	brews     map[brewKey]*brew
	peaks     map[peakKey][]float64
	calendars map[string]*calendar
	stock     *stock
	said      map[string]bool // cautions
	cited     map[string]bool // sources
	skies     map[string][]weather.Scored
	doubts    map[string]float64 // missing numbers, by how much each widens
	named     map[string]bool    // ids of batches
	trials    *trials            // changed files that advice was proved on
	trial     bool               // this is one of them
	verdicts  *verdicts          // of hygiene, shared with the trials
}

func (p *planner) make() {
	p.schedule()
	p.forecastAll()
	p.rejudge()
	p.layRuns()
	p.advise()
	p.missingNumbers()
	p.order()
}

// schedule puts every want into vessels and hours, or says why it cannot.
func (p *planner) schedule() {
	p.empty()
	p.readWants()
	p.fileCautions()
	p.judge()
	p.takeRunningBatches()
	p.gatherOutings()
	for _, o := range p.outings {
		p.place(o)
	}
}

// empty makes every list of the plan a list, so that none is null.
func (p *planner) empty() {
	if name := p.File.Holding.Name; name != "" {
		p.plan.Holding = &name
	}
	p.plan.Needs, p.plan.Batches, p.plan.Runs = []Need{}, []Batch{}, []Run{}
	p.plan.Hygiene, p.plan.Unmet, p.plan.Advice = []any{}, []Unmet{}, []Advice{}
	p.plan.Missing, p.plan.Cautions, p.plan.Sources = []MissingNumber{}, []string{}, []source.Source{}
}

// order puts batches and runs in order of time, unmet wants in that of the file.
func (p *planner) order() {
	sort.SliceStable(p.plan.Runs, func(i, j int) bool { return p.plan.Runs[i].At.Before(p.plan.Runs[j].At) })
	sort.SliceStable(p.plan.Unmet, func(i, j int) bool { return p.plan.Unmet[i].Want < p.plan.Unmet[j].Want })
	sort.SliceStable(p.plan.Sources, func(i, j int) bool { return p.plan.Sources[i].Key < p.plan.Sources[j].Key })
}

// say puts a sentence into the reader's language.
func (p *planner) say(key string, places ...wording.Places) string {
	return wording.Say(key, places...).For(p.Reader)
}

// caution adds a caution once.
func (p *planner) caution(key string, places ...wording.Places) {
	text := p.say(key, places...)
	if !p.said[text] {
		p.said[text] = true
		p.plan.Cautions = append(p.plan.Cautions, text)
	}
}

// cite adds sources once.
func (p *planner) cite(sources ...source.Source) {
	for _, s := range sources {
		if !p.cited[s.Key] {
			p.cited[s.Key] = true
			p.plan.Sources = append(p.plan.Sources, s)
		}
	}
}

// unmet notes that a want cannot be served.
func (p *planner) unmet(w *want, kind Kind, reason, nearest wording.Text) {
	if w.unmet {
		return
	}
	w.unmet = true
	p.plan.Unmet = append(p.plan.Unmet, Unmet{
		Want: w.Index, Bed: w.Bed, Kind: kind, Reason: reason.For(p.Reader), Nearest: nearest.For(p.Reader),
	})
}

// Clock is a time as a sentence says it: day of the week, date and hour.
type Clock time.Time

// Speak says the hour in the reader's language.
func (c Clock) Speak(r wording.Reader) string {
	t := time.Time(c)
	day := wording.Say("plan.day." + t.Weekday().String()[:3]).For(r)
	if r.Language == wording.Spanish {
		return day + " " + t.Format("02/01 15:04")
	}
	return day + " " + t.Format("2 Jan 15:04")
}
