package report

import (
	"fmt"
	"slices"
	"time"

	"aerosteep/job/application"
	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// jobSheet is what goes out with the tank: one run, in words.
type jobSheet struct {
	Kind, Title, When, Number string
	Before                    []string
	With                      string
	Facts                     [][2]string
	KeepOff                   string
	Heads                     []string
	Rows                      [][]string // the last one is the sum
	Stop, After               []string
	Why                       string
}

// runSheets puts every run of a plan into the words of its sheet.
type runSheets struct {
	plan *plan.Plan
	file *jobfile.File
	r    wording.Reader
}

func (s *runSheets) say(key string, pairs ...any) string {
	places := wording.Places{}
	for i := 0; i+1 < len(pairs); i += 2 {
		places[pairs[i].(string)] = pairs[i+1]
	}
	return wording.Say("jobsheet."+key, places).For(s.r)
}

func (s *runSheets) sheet(run *plan.Run) *jobSheet {
	need := s.need(run.Loads[0].Want)
	batches := s.batchesOf(run)
	out := &jobSheet{
		Kind: s.say("kind." + need.Method), Title: wording.List(run.Beds, s.r), Number: s.number(run),
		With: s.with(run), Facts: s.facts(run, need), KeepOff: s.keepOff(need.Method),
		Heads: []string{s.say("load"), s.say("where"), s.say("tea"), s.say("water"), s.say("start"), s.say("done"), s.say("by")},
		Rows:  s.rows(run), Why: s.why(run),
	}
	out.When = s.say("when", "day", s.day(run.At), "from", plan.Clock(run.At), "until", plan.Clock(run.EndsAt), "batches", names(batches), "useby", plan.Clock(earliest(batches)))
	out.Before = s.before(run, need.Method, batches)
	out.Stop = []string{s.say("stop.smell", "limit", limitOf(batches)), s.say("stop.rain"), s.say("stop.clock", "useby", plan.Clock(earliest(batches)))}
	out.After = []string{s.say("after.washed"), s.say("after.left"), s.say("after.sky")}
	return out
}

func (s *runSheets) need(want int) plan.Need {
	i := slices.IndexFunc(s.plan.Needs, func(n plan.Need) bool { return n.Want == want })
	return s.plan.Needs[i]
}

// batchesOf are the batches that a run takes tea from, in the order of its
// loads.
func (s *runSheets) batchesOf(run *plan.Run) []*plan.Batch {
	var found []*plan.Batch
	for _, l := range run.Loads {
		i := slices.IndexFunc(s.plan.Batches, func(b plan.Batch) bool { return b.ID == l.Batch })
		if b := &s.plan.Batches[i]; !slices.Contains(found, b) {
			found = append(found, b)
		}
	}
	return found
}

func names(batches []*plan.Batch) []string {
	list := make([]string, len(batches))
	for i, b := range batches {
		list[i] = b.Vessel
	}
	return list
}

func earliest(batches []*plan.Batch) time.Time {
	first := batches[0].UseBy
	for _, b := range batches {
		if b.UseBy.Before(first) {
			first = b.UseBy
		}
	}
	return first
}

func limitOf(batches []*plan.Batch) quantity.Concentration {
	return quantity.MilligramsPerLitre(batches[0].Forecast.Limit)
}

func (s *runSheets) day(t time.Time) string {
	return s.say("day", "year", fmt.Sprintf("%04d", t.Year()), "month", fmt.Sprintf("%02d", int(t.Month())), "date", fmt.Sprintf("%02d", t.Day()))
}

// number names a run so that sheet and logbook can be laid side by side.
func (s *runSheets) number(run *plan.Run) string {
	i := slices.IndexFunc(s.plan.Runs, func(r plan.Run) bool { return r.At.Equal(run.At) && slices.Equal(r.Beds, run.Beds) })
	return fmt.Sprintf("%s-%d", run.At.Format("20060102"), i+1)
}

func (s *runSheets) with(run *plan.Run) string {
	if run.Applicator == nil {
		return s.say("by-hand")
	}
	a, known := s.file.Applicator(*run.Applicator)
	if !known || a.Tank == nil {
		return *run.Applicator
	}
	return s.say("applicator", "name", a.Name, "tank", inBoth(*a.Tank, s.r))
}

func (s *runSheets) facts(run *plan.Run, first plan.Need) [][2]string {
	facts := [][2]string{{s.say("mix"), application.MixWords(quantity.Share(first.PercentTea / 100)).Speak(s.r)}}
	for _, bed := range run.Beds {
		for _, n := range s.plan.Needs {
			if n.Bed == bed && servedBy(run, n.Want) {
				facts = append(facts, [2]string{bed, s.say("on-bed", "tea", inBoth(quantity.Litres(n.TeaL), s.r), "mix", inBoth(quantity.Litres(n.MixL), s.r))})
			}
		}
	}
	for _, p := range run.Prime {
		facts = append(facts, [2]string{s.say("prime"), s.say("prime.amount", "tea", inBoth(quantity.Litres(p.TeaL), s.r), "water", inBoth(quantity.Litres(p.WaterL), s.r))})
	}
	return facts
}

func servedBy(run *plan.Run, want int) bool {
	return slices.ContainsFunc(run.Loads, func(l plan.Load) bool { return l.Want == want })
}

func (s *runSheets) before(run *plan.Run, method string, batches []*plan.Batch) []string {
	var list []string
	for _, b := range batches {
		key := "no-meter"
		if s.file.Holding.OxygenMeter {
			key = "oxygen"
		}
		list = append(list, s.say(key, "batch", b.Vessel, "limit", quantity.MilligramsPerLitre(b.Forecast.Limit)))
	}
	list = append(list, s.say("smell"), s.strained(run), s.say("rinsed"))
	if method == "foliar" {
		list = append(list, s.say("wind"))
	}
	return append(list, s.say("guard"), s.say("electricity"))
}

func (s *runSheets) strained(run *plan.Run) string {
	if run.Applicator != nil {
		if a, known := s.file.Applicator(*run.Applicator); known && a.SmallestOpening != nil {
			return s.say("strained.to", "opening", *a.SmallestOpening)
		}
	}
	return s.say("strained")
}

// keepOff names what must stay dry: what is always kept off, and the beds that
// are not allowed now.
func (s *runSheets) keepOff(method string) string {
	text := s.say("keep-off.all")
	if method == "drench" {
		text = s.say("soil-only") + " " + text
	}
	var beds []string
	for i := range s.plan.Verdicts {
		v := &s.plan.Verdicts[i]
		if (v.Allowed == hygiene.No || v.Allowed == hygiene.WaitUntil) && !slices.Contains(beds, v.Bed) {
			beds = append(beds, v.Bed)
		}
	}
	if len(beds) > 0 {
		text += " " + s.say("not-on", "beds", wording.List(beds, s.r))
	}
	return text
}

func (s *runSheets) rows(run *plan.Run) [][]string {
	of, part := map[int]int{}, map[int]int{}
	for _, l := range run.Loads {
		of[l.Want]++
	}
	each := run.EndsAt.Sub(run.At) / time.Duration(len(run.Loads))
	var tea, water float64
	var rows [][]string
	for i, l := range run.Loads {
		part[l.Want]++
		where := l.Bed
		if of[l.Want] > 1 {
			where = s.say("part", "bed", l.Bed, "n", part[l.Want], "of", of[l.Want])
		}
		rows = append(rows, []string{fmt.Sprint(i + 1), where, poured(l.TeaL, s.r), poured(l.WaterL, s.r), plan.Clock(run.At.Add(time.Duration(i) * each)).Speak(s.r), "", ""})
		tea, water = tea+l.TeaL, water+l.WaterL
	}
	return append(rows, []string{s.say("all"), s.say("minutes", "n", int(each.Minutes()+0.5)), poured(tea, s.r), poured(water, s.r), "", "", ""})
}

// why is the deciding reason for each bed, with its citation.
func (s *runSheets) why(run *plan.Run) string {
	text := ""
	for i := range s.plan.Verdicts {
		v := &s.plan.Verdicts[i]
		if !slices.Contains(run.Beds, v.Bed) || len(v.Why) == 0 {
			continue
		}
		if cite := v.Why[0].Citation; cite != "" {
			text += s.say("why", "bed", v.Bed, "why", v.Why[0].Text.For(s.r), "cite", cite) + " "
			continue
		}
		text += s.say("why.plain", "bed", v.Bed, "why", v.Why[0].Text.For(s.r)) + " "
	}
	return text + s.say("first")
}

// inBoth says a volume in both systems, the reader's first.
func inBoth(v quantity.Volume, r wording.Reader) string {
	other := r
	other.Units = wording.US
	if r.Units == wording.US {
		other.Units = wording.Metric
	}
	return v.Speak(r) + " (" + v.Speak(other) + ")"
}

// poured is a cell of the loads: litres and US gallons, as far as a jug can
// be read.
func poured(litres float64, r wording.Reader) string {
	return jug(litres, r) + " (" + jug(litres/quantity.USGallons(1).Litres(), r) + ")"
}

func jug(v float64, r wording.Reader) string {
	decimals := 2
	switch {
	case v >= 20:
		decimals = 0
	case v >= 1:
		decimals = 1
	}
	return wording.Fixed(v, decimals, r)
}
