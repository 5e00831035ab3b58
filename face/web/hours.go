package web

import (
	"net/http"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/ground"
	"aerosteep/record/holding"
	"aerosteep/science/weather"
	"aerosteep/wording"
)

// hoursView is the page of the hours: which suit, and what spoils the others.
type hoursView struct {
	Keeps     bool // there is a holding to keep a forecast with
	Kept      string
	Say       string
	Conflict  string
	Methods   []choiceLink
	Sites     []choiceLink
	Days      []*strip
	Table     []dayTable
	Problems  []mend
	Pasted    string
	From      string // address that forecasts are fetched from
	FromWrong bool
	Hand      handTable
}

// choiceLink is one of a few ways to look at a page.
type choiceLink struct {
	Address, Name string
	Here          bool
}

// dayTable is a day of the strip as a table.
type dayTable struct {
	Day  string
	Rows []hourRow
}

type hourRow struct {
	Clock, Icon, State, Verdict, Why string
}

// spanOfSpell is how long a spell must be to be worth going out for.
const spanOfSpell = 2

// hours shows the hours of the latest forecast and takes a new one.
func (s *Site) hours(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "ground")
	p.Back, p.BackTo = "/ground", p.Say("web.place.ground")
	p.Heading, p.Title = p.Say("web.hours.title"), p.Say("web.hours.title")
	now := s.now()
	view := &hoursView{Keeps: s.Holding != nil}
	p.View = view
	status := http.StatusOK
	var faults fault.List
	if r.Method == http.MethodPost && view.Keeps {
		given, err := readSkyForm(w, r)
		if err != nil {
			http.Error(w, "too long", http.StatusRequestEntityTooLarge)
			return
		}
		if r.PostForm.Has("from") {
			faults = s.fetchSky(r)
		} else {
			faults = s.keepSky(p, r, given)
		}
		if faults == nil {
			http.Redirect(w, r, "/ground/hours", http.StatusSeeOther)
			return
		}
		status = http.StatusUnprocessableEntity
		view.Pasted, view.From, view.FromWrong = r.PostForm.Get("text"), r.PostForm.Get("from"), r.PostForm.Has("from")
	} else if view.Keeps {
		view.From, _ = s.Holding.SkyAddress() // a slip of the disk shows an empty box
	}
	for _, f := range faults {
		view.Problems = append(view.Problems, mend{f.Field, p.wrong(f)})
	}
	view.Hand = p.handTable(r, now)
	s.fillHours(p, view, now)
	s.show(w, status, "hours", p)
}

// wrong is a fault in words: what, what is allowed, what to do.
func (p *page) wrong(f *fault.Fault) string {
	parts := []string{p.Text(f.What)}
	for _, more := range []wording.Text{f.Allowed, f.Advice} {
		if said := p.Text(more); said != "" {
			parts = append(parts, strings.ToUpper(said[:1])+said[1:])
		}
	}
	return strings.Join(parts, ". ") + "."
}

func (s *Site) fillHours(p *page, view *hoursView, now time.Time) {
	sky, site := s.sky(), s.siteOf(p)
	if sky == nil {
		return
	}
	method := methodOf(p)
	view.choices(p, s, method, site)
	view.Kept = p.Say("web.hours.kept", "when", p.When(sky.KeptAt.In(now.Location()), now))
	hours := ahead(weather.Score(sky.Forecast, skyQuestion(sky, site, method)), now)
	view.Say = p.hoursSentence(hours, method, now)
	if n := weather.Conflicts(hours); n > 0 {
		view.Conflict = p.Say("web.hours.conflict", "n", n)
	}
	for start := midnight(now); len(view.Days) < longestStrip; start = start.AddDate(0, 0, 1) {
		next := start.AddDate(0, 0, 1)
		f := stripFrame{p, start, next.Sub(start).Hours(), method}
		if len(hours) == 0 || !start.Before(hours[len(hours)-1].At.Add(time.Hour)) {
			break
		}
		day := f.draw(hours, false)
		day.Title = p.Date(start)
		day.Spoken = p.Say("web.hours.day.spoken", "day", day.Title)
		view.Days = append(view.Days, day)
		view.Table = append(view.Table, dayTable{day.Title, p.hourRows(f.within(hours), method, now)})
	}
}

// longestStrip is how many days are drawn; a forecast for later is a guess.
const longestStrip = 10

func midnight(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, t.Location())
}

// sky is the latest forecast; one that cannot be read is reported, not shown.
func (s *Site) sky() *holding.Sky {
	if s.Holding == nil {
		return nil
	}
	sky, err := s.Holding.Sky()
	if err != nil {
		s.log("weather", err)
		return nil
	}
	return sky
}

// siteOf is the site that was asked for, else the first; nil without one.
func (s *Site) siteOf(p *page) *ground.Site {
	file := s.held()
	if file == nil || len(file.Sites) == 0 {
		return nil
	}
	for i := range file.Sites {
		if file.Sites[i].Name == p.request.URL.Query().Get("site") {
			return &file.Sites[i]
		}
	}
	return &file.Sites[0]
}

func methodOf(p *page) weather.Method {
	if p.request.URL.Query().Get("method") == string(weather.Drench) {
		return weather.Drench
	}
	return weather.Foliar
}

// usualIntake is what a soil takes in where nobody said, as in the worksheet
// spray-hours.
const usualIntake = 5

// skyQuestion judges the hours for a site; without one, for the forecast's own
// place.
func skyQuestion(sky *holding.Sky, site *ground.Site, method weather.Method) weather.Question {
	q := weather.Question{Method: method, Place: sky.Place, Intake: usualIntake}
	if sky.Altitude != nil {
		q.Altitude = max(-500, min(*sky.Altitude, 5000))
	}
	if site != nil {
		q.Place = &weather.Place{Latitude: site.Latitude, Longitude: site.Longitude}
		if site.AltitudeKnown {
			q.Altitude = site.Altitude
		}
	}
	return q
}

// ahead are the hours that are not over.
func ahead(hours []weather.Scored, now time.Time) []weather.Scored {
	for i := range hours {
		if hours[i].At.Add(time.Hour).After(now) {
			return hours[i:]
		}
	}
	return nil
}

func (v *hoursView) choices(p *page, s *Site, method weather.Method, site *ground.Site) {
	for _, m := range []weather.Method{weather.Foliar, weather.Drench} {
		v.Methods = append(v.Methods, choiceLink{"/ground/hours?method=" + string(m), p.Say("web.hours.method." + string(m)), m == method})
	}
	file := s.held()
	if file == nil || len(file.Sites) < 2 {
		return
	}
	for i := range file.Sites {
		each := &file.Sites[i]
		v.Sites = append(v.Sites, choiceLink{"/ground/hours?method=" + string(method) + "&site=" + escaped(each.Name), each.Name, each == site})
	}
}

// hoursSentence says when to go out, or what is in the way.
func (p *page) hoursSentence(hours []weather.Scored, method weather.Method, now time.Time) string {
	if len(hours) == 0 {
		return p.Say("web.hours.over")
	}
	name := p.Say("web.hours.method." + string(method))
	if good := weather.Windows(hours, spanOfSpell, false); len(good) > 0 {
		return p.spellSentence("web.hours.say", name, good, now)
	}
	if fair := weather.Windows(hours, spanOfSpell, true); len(fair) > 0 {
		return p.spellSentence("web.hours.say.care", name, fair, now)
	}
	return p.Say("web.hours.say.none", "method", name, "factor", wording.Say("weather.factor."+string(mostOften(hours))))
}

func (p *page) spellSentence(key, method string, found []weather.Window, now time.Time) string {
	first := found[0]
	zone := now.Location()
	text := p.Say(key, "method", method, "from", p.spellEdge(first.Start.In(zone), now, now), "until", p.spellEdge(first.End.In(zone), first.Start.In(zone), now))
	if more := len(found) - 1; more > 0 {
		text += " " + p.Say("web.hours.say.more", "n", more)
	}
	return text
}

// spellEdge is a moment with its day unless that was said before; one a week
// off has its date, since the day's name would be taken for the nearer one.
func (p *page) spellEdge(t, said, now time.Time) string {
	switch {
	case !t.After(now):
		return p.Say("web.hours.now")
	case sameDay(t, said):
		return p.Clock(t)
	case t.Sub(now) > 6*24*time.Hour:
		return p.Date(t)
	}
	return p.weekdayShort(t) + "\u00a0" + p.Clock(t)
}

// mostOften is the factor that limits most hours.
func mostOften(hours []weather.Scored) weather.Factor {
	count := map[weather.Factor]int{}
	most := weather.Rain
	for i := range hours {
		if l := hours[i].Limiting; l != "" {
			if count[l]++; count[l] > count[most] {
				most = l
			}
		}
	}
	return most
}

// verdictIcons are the shapes of the verdicts.
var verdictIcons = map[weather.Verdict]string{
	weather.VerdictSuits: "yes", weather.VerdictCare: "doubt", weather.VerdictStop: "no", weather.VerdictUnknown: "blind",
}

// verdictStates are their tones.
var verdictStates = map[weather.Verdict]string{
	weather.VerdictSuits: "well", weather.VerdictCare: "near", weather.VerdictStop: "under", weather.VerdictUnknown: "blind",
}

func (p *page) hourRows(hours []weather.Scored, method weather.Method, now time.Time) []hourRow {
	var rows []hourRow
	for i := range hours {
		h := &hours[i]
		row := hourRow{Clock: p.Clock(h.At.In(now.Location())), Icon: verdictIcons[h.Verdict], State: verdictStates[h.Verdict], Verdict: p.Say("web.hours.verdict." + string(h.Verdict))}
		var why []string
		for _, reason := range h.Reasons(method) {
			why = append(why, p.Text(reason))
		}
		for _, sign := range h.Surface {
			why = append(why, p.Text(sign.Text()))
		}
		if row.Why = strings.Join(why, "; "); row.Why == "" {
			row.Why = p.Say("web.hours.nothing")
		}
		rows = append(rows, row)
	}
	return rows
}
