package web

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"aerosteep/job/application"
	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/holding"
)

// runsView is the choice of tea for the run of the day.
type runsView struct {
	Batches []runChoice
	Planned []runPlan
}

type runChoice struct{ Name, Line, State, StateWord string }

// runs shows which batches can go out, and the runs that are planned.
func (s *Site) runs(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "today")
	p.Back, p.BackTo = "/", p.Say("web.place.today")
	p.Heading, p.Title = p.Say("web.run.title"), p.Say("web.run.title")
	view := &runsView{}
	p.View = view
	now := s.now()
	for _, l := range s.lives(p, now) {
		choice := runChoice{Name: l.Name, Line: l.Vessel, State: l.State, StateWord: l.StateWord}
		if b, _ := s.Holding.Batch(l.Name); b.Volume != nil {
			choice.Line = p.Say("web.run.batch", "vessel", l.Vessel, "volume", both(p, *b.Volume))
		}
		view.Batches = append(view.Batches, choice)
	}
	if file := s.held(); file != nil && len(file.Wants) > 0 {
		result := s.planOf(file, p.Reader, s.Now())
		for i := range result.Runs {
			view.Planned = append(view.Planned, planRun(p, &result.Runs[i], now))
		}
	}
	s.show(w, http.StatusOK, "runs", p)
}

// onRound is a request about the outing of one batch.
type onRound struct {
	batch holding.Batch
	file  *jobfile.File
	page  *page
	now   time.Time
	made  holding.Made
}

// openRound finds batch and holding of a request and who makes it; nil where it
// was answered already.
func (s *Site) openRound(w http.ResponseWriter, r *http.Request, title, back, backTo string) *onRound {
	b, file := s.going(r)
	if file == nil {
		s.nothingHere(w, r)
		return nil
	}
	r.Body = http.MaxBytesReader(w, r.Body, 1<<20)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return nil
	}
	p, now := s.page(w, r, "today"), s.now()
	p.Back, p.BackTo = strings.ReplaceAll(back, "{name}", b.Name), p.Say(backTo, "name", b.Name)
	p.Heading = p.Say(title, "name", b.Name)
	p.Title, p.Under = p.Heading, p.Date(now)+" "+p.Clock(now)
	return &onRound{b, file, p, now, holding.Made{At: now, By: s.initials(w, r), Device: s.device(w, r)}}
}

// run shows the outing of one batch, and takes what was done on it.
func (s *Site) run(w http.ResponseWriter, r *http.Request) {
	on := s.openRound(w, r, "web.run.of", "/run", "web.run.title")
	if on == nil {
		return
	}
	b, file, p, now, made := on.batch, on.file, on.page, on.now, on.made
	view := &runView{Batch: b.Name, By: made.By, Query: r.URL.RawQuery}
	p.View = view
	status := http.StatusOK
	if r.Method == http.MethodPost {
		faults, next := s.keepOnRun(r, p, made, b)
		if faults == nil {
			http.Redirect(w, r, next, http.StatusSeeOther)
			return
		}
		status = http.StatusUnprocessableEntity
		for _, f := range faults {
			view.Faults = append(view.Faults, mend{f.Field, p.Text(f.What)})
		}
	}
	round, err := s.roundOf(r, file, b, now)
	if err != nil {
		s.broken(w, err)
		return
	}
	view.fill(p, file, round, now)
	view.Tank = s.tankClock(r, p, file, round, now)
	view.Sky = p.skyOf(r.URL.Query(), file, round)
	s.show(w, status, "run", p)
}

// going finds the batch of the address and the holding's file; nil where one
// of them is not there.
func (s *Site) going(r *http.Request) (holding.Batch, *jobfile.File) {
	if s.Holding == nil {
		return holding.Batch{}, nil
	}
	b, known := s.Holding.Batch(r.PathValue("name"))
	if !known {
		return b, nil
	}
	return b, s.held()
}

// roundOf lays the round out for the beds and the order of the address.
func (s *Site) roundOf(r *http.Request, file *jobfile.File, b holding.Batch, now time.Time) (*holding.Round, error) {
	query := r.URL.Query()
	asked := holding.RoundAsked{At: now, UseBy: s.useBy(r.Context(), b, now), Way: application.BySpeed}
	if way := application.WayBack(query.Get("way")); way == application.ByPressure || way == application.ByMix {
		asked.Way = way
	}
	if query.Has("want") {
		asked.Wants = []int{}
	}
	for _, text := range query["want"] {
		if n, err := strconv.Atoi(text); err == nil && !slices.Contains(asked.Wants, n) {
			asked.Wants = append(asked.Wants, n)
		}
	}
	return s.Holding.Round(r.Context(), file, b, asked)
}

// useBy is the cautious end of how long the tea lasts if the air stops now;
// zero where no forecast can say.
func (s *Site) useBy(ctx context.Context, b holding.Batch, now time.Time) time.Time {
	if !b.Living() {
		return time.Time{}
	}
	twin, err := s.twin(ctx, b.Name, now)
	if err != nil {
		return time.Time{}
	}
	return now.Add(time.Duration(twin.Answer.UseBy.Minutes.Low80 * float64(time.Minute)))
}

// orderQuery is an order of wants as an address.
func orderQuery(wants []int) string {
	query := url.Values{}
	for _, w := range wants {
		query.Add("want", strconv.Itoa(w))
	}
	return "?" + query.Encode()
}

// litres is a volume as a form field carries it: exact, with its unit.
func litres(v quantity.Volume) string {
	return strconv.FormatFloat(v.Litres(), 'f', -1, 64) + " L"
}

func percent(ratio float64) string { return fmt.Sprintf("%.0f", ratio*100) }
