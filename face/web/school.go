package web

import (
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/forecast"
	"aerosteep/wording"
)

// The school pail: one minute is one hour. First the class sheet, then a brew
// that is played by the engine of the house. All its state stands in its address:
// a class of thirty phones keeps nothing, and no entry is made.

// classRules are on the class sheet, before anything else.
const classRules = 9

// schoolView is the class sheet.
type schoolView struct {
	Rules []string
	Start string
}

// school opens with the class sheet.
func (s *Site) school(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "today")
	p.Back, p.BackTo = "/", p.Say("web.place.today")
	p.Heading, p.Title = p.Say("web.school.title"), p.Say("web.school.title")
	view := &schoolView{Start: fmt.Sprintf("/school/pail?from=%d", s.Now().Unix())}
	for n := range classRules {
		view.Rules = append(view.Rules, p.Say(fmt.Sprintf("web.school.rule.%d", n+1)))
	}
	p.View = view
	s.show(w, http.StatusOK, "school", p)
}

// schoolPail is the brew at the hour of this look.
type schoolPail struct {
	Say, More, Again string
	Over             bool
	Acts             []schoolAct
	Did              []string
	Chart            *chartView
	Rows             []schoolRow
}

type schoolAct struct{ Link, Text, Icon string }

type schoolRow struct{ Hour, DO, Uptake string }

// schoolHours is how long the pail is played, and schoolSecond how many seconds an
// hour of it takes.
const (
	schoolHours  = 24.0
	schoolSecond = 60.0
)

// playSchool shows the pail at the hour that the minutes since its start make.
func (s *Site) playSchool(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "today")
	p.Back, p.BackTo = "/school", p.Say("web.school.title")
	p.Heading, p.Title = p.Say("web.school.pail"), p.Say("web.school.pail")
	if !r.URL.Query().Has("from") {
		http.Redirect(w, r, fmt.Sprintf("/school/pail?from=%d", s.Now().Unix()), http.StatusSeeOther)
		return
	}
	from, err := strconv.ParseInt(r.URL.Query().Get("from"), 10, 64)
	if err != nil {
		s.nothingHere(w, r)
		return
	}
	hour := min(schoolHours, max(0, s.Now().Sub(time.Unix(from, 0)).Seconds()/schoolSecond))
	did := r.URL.Query()["did"]
	events, faults := schoolEvents(did)
	course, err := forecast.Play(forecast.SchoolPail(), events, hour, 1)
	if faults != nil || err != nil {
		s.nothingHere(w, r)
		return
	}
	p.Under = p.Say("web.school.hour", "hour", int(hour), "of", int(schoolHours))
	p.View = s.schoolPail(p, from, hour, did, events, course)
	s.show(w, http.StatusOK, "schoolpail", p)
}

// mostDid is how much a class can do to one pail.
const mostDid = 24

// schoolEvents are what was done, each with its hour: "air-off@3.25".
func schoolEvents(did []string) ([]forecast.Event, fault.List) {
	var events []forecast.Event
	for _, text := range did[:min(len(did), mostDid)] {
		what, hour, _ := strings.Cut(text, "@")
		at, err := strconv.ParseFloat(hour, 64)
		e, wrong := forecast.ParseEvent(what)
		if err != nil || wrong != nil || !(at >= 0 && at <= schoolHours) {
			return nil, fault.List{fault.New("did", text, wording.Text{}, wording.Text{}, wording.Text{})}
		}
		e.Hour = at
		events = append(events, e)
	}
	slices.SortStableFunc(events, func(a, b forecast.Event) int { return int(1000 * (a.Hour - b.Hour)) })
	return events, nil
}

func (s *Site) schoolPail(p *page, from int64, hour float64, did []string, events []forecast.Event, course []forecast.Played) *schoolPail {
	last := course[len(course)-1]
	query := url.Values{"from": {strconv.FormatInt(from, 10)}, "did": did}
	v := &schoolPail{Again: "/school/pail?" + query.Encode(), Over: hour >= schoolHours}
	v.Say = p.Say("web.school.say", "do", p.oneDecimal(last.DO), "uptake", p.oneDecimal(last.Uptake))
	v.More = p.Say("web.school.well")
	switch {
	case last.DO < 2:
		v.More = p.Say("web.school.bad")
	case last.DO < 6:
		v.More = p.Say("web.school.low")
	}
	airOn := true
	for _, e := range events {
		if e.What == forecast.AirOff || e.What == forecast.AirOn {
			airOn = e.What == forecast.AirOn
		}
		v.Did = append(v.Did, p.Say("web.school.did", "hour", wording.Fixed(e.Hour, 1, p.Reader), "what", p.Say("web.school.did."+string(e.What))))
	}
	act := func(event, word, icon string) {
		more := url.Values{"from": query["from"], "did": append(slices.Clone(did), fmt.Sprintf("%s@%.2f", event, hour))}
		v.Acts = append(v.Acts, schoolAct{"/school/pail?" + more.Encode(), p.Say("web.school.act." + word), icon})
	}
	if !v.Over && len(did) < mostDid {
		if airOn {
			act("air-off", "air-off", "air")
		} else {
			act("air-on", "air-on", "air")
		}
		act("food molasses 15 mL", "food", "food")
	}
	v.draw(p, s, course)
	return v
}

// draw shows the course so far, as a chart and as a table by the hour.
func (v *schoolPail) draw(p *page, s *Site, course []forecast.Played) {
	c := oxygenCourse{start: s.now().Truncate(24 * time.Hour).Add(8 * time.Hour), now: -1, end: schoolHours, limit: 6}
	for _, at := range course {
		one := forecast.Band{Median: at.DO, Low50: at.DO, High50: at.DO, Low80: at.DO, High80: at.DO, Low95: at.DO, High95: at.DO}
		c.rows = append(c.rows, forecast.Moment{Hour: at.Hour, DO: one})
		if at.Hour == float64(int(at.Hour)) {
			v.Rows = append(v.Rows, schoolRow{strconv.Itoa(int(at.Hour)), p.oneDecimal(at.DO), p.oneDecimal(at.Uptake)})
		}
	}
	v.Chart = drawOxygen(p, c)
	v.Chart.Spoken = p.Say("web.school.chart", "n", len(v.Rows))
}
