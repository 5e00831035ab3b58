package web

import (
	"net/url"
	"slices"
	"strings"
	"time"

	"aerosteep/job/application"
	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	"aerosteep/wording"
)

// runView is one outing: what to do next, by the clock.
type runView struct {
	Batch, By, Query  string
	Faults            []mend
	Say, UseBy        string
	Short             string
	Late, LateLink    string
	Release           string
	Tank              string // the two clocks of a tank that travels with air
	Released, Refused bool
	Stops             []stopView
	LeftOut           string
	Choices           []bedChoice
	Places            []string
	Done              bool
	Sky               *skyView
}

// stopView is one bed on the way.
type stopView struct {
	Bed, Line, Clock, Machine string
	Late                      bool
	Rinse                     bool
	Prime                     bool
	Done                      []string
	Loads                     []loadView
	First                     bool // the load that can be measured is next or was the last
	Correction, OnDose        string
	Ways                      []wayView
	Earlier                   string // the address of the order with this bed earlier
	Notes                     []string
	Corners, Landmark         string // by which the place is told
	Unfit                     bool   // the applicator must not be used for what was in it
	Rinsing                   *rinsingView
	Calibrate                 string // address of the applicator's calibration, where one is wanted
}

// rinsingView is how a tank is rinsed where there is no other.
type rinsingView struct {
	Steps []string
	Doubt string
}

// loadView is one filling of the tank, as a card with its form.
type loadView struct {
	N                                   int
	Text, Button                        string
	Bed, Method, Applicator, Tea, Water string
	Measured                            bool // asks what was covered
	Next                                bool
	TooHeavy                            string // for the plate of trailer or axle
}

type wayView struct {
	Text, Link string
	Chosen     bool
}

type bedChoice struct {
	Want      int
	Bed, Line string
	Chosen    bool
}

func (v *runView) fill(p *page, file *jobfile.File, round *holding.Round, now time.Time) {
	v.tellRelease(p, round, now)
	v.UseBy = p.Say("web.run.useby.unknown")
	if !round.UseBy.IsZero() {
		v.UseBy = p.Say("web.run.useby", "clock", p.When(round.UseBy, now))
	}
	loads := 0
	for i := range round.Stops {
		s := &round.Stops[i]
		stop := p.stop(s, i, round, now)
		stop.Earlier = earlier(round, i)
		stop.Notes = p.Site.stopNotes(p, s)
		v.Stops = append(v.Stops, stop)
		loads += len(s.Loads)
	}
	if i := slices.IndexFunc(v.Stops, func(s stopView) bool { return len(s.Loads) > 0 }); i >= 0 {
		v.Stops[i].Loads[0].Next = true
	}
	v.sum(p, round, loads, now)
	v.choices(p, file, round)
	v.Places = leftoverPlaces(p, file, v.Batch)
	if len(round.LeftOut) > 0 {
		v.LeftOut = p.Say("web.run.left-out.list", "beds", strings.Join(round.LeftOut, ", "))
	}
}

// sum is the sentence of the page, and what speaks against the round.
func (v *runView) sum(p *page, round *holding.Round, loads int, now time.Time) {
	switch {
	case len(round.Stops) == 0:
		v.Say = p.Say("web.run.say.nothing")
		return
	case loads == 0:
		v.Say, v.Done = p.Say("web.run.say.done"), true
		return
	}
	last := round.Stops[len(round.Stops)-1]
	v.Say = p.Say("web.run.say", "loads", loads, "stops", len(round.Stops), "clock", p.When(last.Visit.Done, now))
	if left := round.Fit - round.Used; round.Need > left {
		v.Short = p.Say("web.run.short", "need", both(p, round.Need), "left", both(p, max(0, left)))
	}
	late := slices.ContainsFunc(round.Stops, func(s holding.Stop) bool { return !s.InTime })
	if late && len(round.Dropped) > 0 {
		v.Late = p.Say("web.run.late", "beds", strings.Join(round.Dropped, ", "))
	}
	if late && len(round.InOrder) > 0 && (round.Moved || len(round.Dropped) > 0) {
		v.LateLink = "/run/" + round.Batch.Name + orderQuery(round.InOrder)
	}
}

func (v *runView) tellRelease(p *page, round *holding.Round, now time.Time) {
	look := round.Released
	switch {
	case look == nil:
		v.Release = p.Say("web.release.needed")
	case look.Released:
		v.Released, v.Release = true, p.Say("web.release.yes", "clock", p.When(look.At.In(now.Location()), now))
	default:
		v.Refused, v.Release = true, p.Say("web.release.no", "clock", p.When(look.At.In(now.Location()), now), "why", look.Why, "instead", look.Instead)
	}
}

func (p *page) stop(s *holding.Stop, i int, round *holding.Round, now time.Time) stopView {
	view := stopView{Bed: s.Name, Machine: s.Arrive.Format(time.RFC3339), Clock: p.Clock(s.Arrive), Late: !s.InTime, Rinse: s.Rinse, Prime: i == 0 && len(s.Done) == 0 && s.Applicator != nil && s.Applicator.DeadVolume > 0}
	key := "web.run.intime"
	if view.Late {
		key = "web.run.toolate"
	}
	parts := []string{choiceWord(p, "method", s.Want.Method), application.MixWords(s.Want.Share()).Speak(p.Reader)}
	if s.Applicator != nil {
		parts = append(parts, s.Applicator.Name)
	}
	if len(s.Loads) > 0 {
		parts = append(parts, p.Say(key, "clock", p.When(s.Visit.Done, now)))
	}
	view.Line = strings.Join(parts, ", ")
	for n := range s.Done {
		view.Done = append(view.Done, p.Say("web.run.load.done", "n", n+1)+", "+p.When(s.Done[n].At.In(now.Location()), now))
	}
	for n := range s.Loads {
		view.Loads = append(view.Loads, p.load(s, &s.Loads[n], n == 0 && len(s.Done) == 0))
	}
	view.tellCorrection(p, s, round)
	view.Rinsing = p.rinsing(s)
	if a := s.Applicator; a != nil && holding.NeedsCalibration(a.Kind) && (s.Calibrated == nil || s.Calibrated.Aged || s.Calibrated.ShareOff) {
		view.Calibrate = "/rig/calibrate?applicator=" + url.QueryEscape(a.Name)
	}
	view.Unfit, view.Landmark, view.Corners = unfit(s), s.Bed.Landmark, cornersTyped(s.Bed.Corners)
	return view
}

func (p *page) load(s *holding.Stop, l *application.Load, first bool) loadView {
	view := loadView{
		N: l.Number, Bed: s.Name, Method: s.Want.Method, Tea: litres(l.Tea), Water: litres(l.Water), Measured: first && s.Bed.Area != nil,
		Text:   p.Say("web.run.load", "n", l.Number, "of", s.Of, "tea", both(p, l.Tea), "total", both(p, l.Total)),
		Button: p.Say("web.run.tick", "n", l.Number),
	}
	if s.Applicator != nil {
		view.Applicator = s.Applicator.Name
	}
	view.TooHeavy = p.overPlate(s, l)
	return view
}

// tellCorrection says what the first load came to, and the ways back.
func (v *stopView) tellCorrection(p *page, s *holding.Stop, round *holding.Round) {
	c := s.Correction
	if c == nil {
		return
	}
	if c.Verdict == application.OnDose {
		v.OnDose = p.Say("web.run.on-dose", "actual", c.Actual.Mix)
		return
	}
	v.Correction = p.Say("web.run.off", "actual", c.Actual.Mix, "planned", s.First.Planned.Mix, "percent", wording.Fixed(c.Percent, 0, p.Reader))
	link := "/run/" + round.Batch.Name + orderQuery(wantsOf(round)) + "&way="
	chosen := p.request.URL.Query().Get("way")
	v.Ways = []wayView{
		{p.Say("web.run.way.speed", "percent", percent(c.SpeedFactor)), link + "speed", chosen != "pressure" && chosen != "mix"},
		{p.Say("web.run.way.pressure", "percent", percent(c.PressureFactor)), link + "pressure", chosen == "pressure"},
	}
	if c.HoldDose != nil {
		v.Ways = append(v.Ways, wayView{p.Say("web.run.way.mix", "mix", application.MixWords(*c.HoldDose)), link + "mix", chosen == "mix"})
	}
}

func wantsOf(round *holding.Round) []int {
	wants := make([]int, len(round.Stops))
	for i := range round.Stops {
		wants[i] = round.Stops[i].Want.Index
	}
	return wants
}

// earlier is the address of the round with a stop one place sooner.
func earlier(round *holding.Round, i int) string {
	if i == 0 {
		return ""
	}
	wants := wantsOf(round)
	wants[i-1], wants[i] = wants[i], wants[i-1]
	return "/run/" + round.Batch.Name + orderQuery(wants)
}

func (v *runView) choices(p *page, file *jobfile.File, round *holding.Round) {
	on := wantsOf(round)
	for i := range file.Wants {
		want := &file.Wants[i]
		bed, _ := file.Bed(want.Bed)
		c := bedChoice{Want: i, Bed: want.Bed, Line: choiceWord(p, "method", want.Method), Chosen: slices.Contains(on, i)}
		if tea, known := want.TeaOn(bed); known {
			c.Line += ", " + both(p, tea)
		}
		v.Choices = append(v.Choices, c)
	}
}

// leftoverPlaces are the beds where what is left may go, by permission.
func leftoverPlaces(p *page, file *jobfile.File, batch string) []string {
	var places []string
	met, _ := file.Meetings()
	for _, m := range met {
		if m.Batch == nil || *m.Batch != batch || slices.Contains(places, m.Bed) {
			continue
		}
		if hygiene.Decide(m.Facts).Allowed == hygiene.Yes {
			places = append(places, m.Bed)
		}
	}
	return append(places, p.Say("web.run.leftover.none"))
}
