package web

import (
	"math"
	"net/http"
	"slices"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/holding"
	"aerosteep/wording"
)

// todayView is what needs somebody, then what is next by the clock, then what
// stands in the shed.
type todayView struct {
	Empty  bool
	Alarms []alarm
	Next   []todo
	Shed   []vesselView
	Plan   string // a sentence on the week, where something is wanted
	Hours  *todayHours
	NoPick []letterLink // beds that may not be picked yet
	Early  []string     // picks that came too soon
	Handed *handedNote  // what the person before says
	Odd    []oddLine    // foam near a rim, air that was found off
}

// oddLine is something about a batch that the next visit must know.
type oddLine struct{ Batch, Say string }

// alarm is what needs a hand before the next planned visit.
type alarm struct{ Batch, Say, More, Act string }

// todo is one thing to do, by the clock.
type todo struct{ Clock, Beside, Machine, What, More, Link string }

// today answers what the clock asks for.
func (s *Site) today(w http.ResponseWriter, r *http.Request) {
	if r.URL.Path != "/" {
		s.nothingHere(w, r)
		return
	}
	p := s.page(w, r, "today")
	now := s.now()
	p.Heading, p.Under = p.Say("web.today.title"), p.Date(now)+", "+p.Clock(now)
	p.Title = p.Heading
	view := &todayView{Empty: s.Holding == nil || s.Holding.Empty()}
	p.View = view
	if !view.Empty {
		file := s.held()
		if file != nil && file.Holding.Name != "" {
			p.Heading = file.Holding.Name
			p.Title = p.Say("web.today.of", "name", file.Holding.Name)
		}
		s.fillToday(p, view, file, now)
		s.guardBeds(p, view, r)
		view.Handed = s.handed(r.Context(), p, now)
	}
	s.show(w, http.StatusOK, "today", p)
}

func (s *Site) fillToday(p *page, view *todayView, file *jobfile.File, now time.Time) {
	lives := s.lives(p, now)
	for _, l := range lives {
		for _, say := range []string{l.Foam, l.Lost} {
			if say != "" {
				view.Odd = append(view.Odd, oddLine{l.Name, say})
			}
		}
		if l.State == "under" || l.State == "near" && l.Risky {
			view.Alarms = append(view.Alarms, alarm{Batch: l.Name, Say: l.Alarm, More: l.Sentence, Act: l.FirstAct})
		}
		view.Next = append(view.Next, l.Due...)
	}
	if file != nil {
		view.Next = append(view.Next, s.planned(p, view, file, now)...)
		view.Shed = shed(p, file, lives)
		view.Hours = s.sprayingToday(p, file, now)
	}
	slices.SortStableFunc(view.Next, func(a, b todo) int { return compare(a.Machine, b.Machine) })
	if len(view.Next) > 8 {
		view.Next = view.Next[:8]
	}
}

// guardBeds warns of beds on which the tea still asks for days, and of picks
// of the last days that came too soon.
func (s *Site) guardBeds(p *page, view *todayView, r *http.Request) {
	for _, c := range s.cards(r) {
		if !c.planned {
			view.NoPick = append(view.NoPick, letterLink{stakeLink(c.bed), c.bed, p.Text(c.text)})
		}
	}
	recent := s.now().AddDate(0, 0, -earlyShown)
	for _, early := range s.early(r) {
		if early.Picked.After(recent) {
			view.Early = append(view.Early, p.Text(early.Text()))
		}
	}
}

// earlyShown is for how many days a pick that came too soon stands on Today;
// it stays in the records.
const earlyShown = 14

func compare(a, b string) int {
	x, _ := time.Parse(time.RFC3339, a)
	y, _ := time.Parse(time.RFC3339, b)
	return x.Compare(y)
}

// planned are the steps to come of what the holding wants.
func (s *Site) planned(p *page, view *todayView, file *jobfile.File, now time.Time) []todo {
	if len(file.Wants) == 0 {
		return nil
	}
	result := s.planOf(file, p.Reader, now)
	view.Plan = p.planSentence(result)
	var all []todo
	for i := range result.Batches {
		b := &result.Batches[i]
		for j := range b.Steps {
			step := planStep(p, &b.Steps[j], now)
			all = append(all, todo{step.Clock, step.Beside, step.Machine, step.Text, b.ID + ", " + b.Vessel, "/plan#batch-" + b.ID})
		}
	}
	return all
}

// vesselView is one vessel in the shed, drawn to one scale with the others.
type vesselView struct {
	Listed                                     string // why the vessels are listed and not drawn; "" where they are
	Name, Under, Value, State, StateWord, Link string
	Width, Height                              int // px
	Level                                      int // px of tea from the bottom
	Living                                     bool
}

// How tall the tallest vessel is drawn, and the smallest that is still drawn at
// the same scale, px.
const (
	tallestDrawn = 140.0
	leastDrawn   = 24.0
)

// shed draws all vessels on one ground line at one scale: a vessel as tall as
// wide, by its volume. Where the smallest would be too small to see, they are
// listed, and the list says why.
func shed(p *page, file *jobfile.File, lives []life) []vesselView {
	var all []vesselView
	smallest, tallest := math.Inf(1), 0.0
	for _, v := range file.Vessels {
		smallest, tallest = min(smallest, heightOf(v.Full)), max(tallest, heightOf(v.Full))
	}
	listed := ""
	if smallest/tallest*tallestDrawn < leastDrawn {
		listed = p.Say("web.shed.listed", "times", wording.Number(math.Pow(tallest/smallest, 3), 2, p.Reader))
	}
	for _, v := range file.Vessels {
		height := heightOf(v.Full) / tallest * tallestDrawn
		view := vesselView{Name: v.Name, Under: v.Full.Speak(p.Reader), Width: int(height * 0.8), Height: int(height), Link: "/rig", StateWord: p.Say("web.shed.free"), Listed: listed}
		for _, l := range lives {
			if l.Vessel == v.Name {
				view.Living, view.Value, view.State, view.StateWord, view.Link = true, l.Value, l.State, l.StateWord, "/batches/"+l.Name
				view.Level = int(float64(view.Height) * min(0.95, l.Fill))
				view.Under = l.Name
			}
		}
		all = append(all, view)
	}
	return all
}

func heightOf(full quantity.Volume) float64 { return cubeRoot(full.CubicMetres()) }

// batchesView lists the living batches and the past ones.
type batchesView struct {
	Living []life
	Past   []pastBatch
	Next   []pastBatch
}

type pastBatch struct{ Name, Line, Link string }

// batches lists them.
func (s *Site) batches(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "batches")
	p.Heading, p.Title = p.Say("web.place.batches"), p.Say("web.place.batches")
	view := &batchesView{}
	p.View = view
	if s.Holding != nil {
		view.Living = s.lives(p, s.now())
		for _, b := range s.Holding.Batches() {
			if !b.Living() {
				view.Past = append(view.Past, p.past(b, s.now()))
			}
		}
	}
	s.show(w, http.StatusOK, "batches", p)
}

func (p *page) past(b holding.Batch, now time.Time) pastBatch {
	past := pastBatch{Name: b.Name, Link: "/batches/" + b.Name}
	switch {
	case b.Ended != nil:
		past.Line = p.Say("web.batch.ended", "when", p.When(b.Ended.At.In(now.Location()), now))
		if b.Ended.Outcome != "" {
			past.Line += ", " + choiceWord(p, "outcome", b.Ended.Outcome)
		}
	default:
		past.Line = p.Say("web.batch.not-started")
	}
	return past
}

// reader in both systems, for what is weighed or poured.
func both(p *page, v wording.Speaker) string {
	metric := v.Speak(wording.Reader{Language: p.Language, Units: wording.Metric})
	us := v.Speak(wording.Reader{Language: p.Language, Units: wording.US})
	if metric == us {
		return metric
	}
	if p.Units == wording.US {
		return us + " (" + metric + ")"
	}
	return metric + " (" + us + ")"
}
