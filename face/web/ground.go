package web

import (
	"net/http"

	"aerosteep/job/jobfile"
	"aerosteep/science/weather"
	"aerosteep/wording"
)

// groundView lists the sites with their beds, and what is wanted on them.
type groundView struct {
	Sites    []siteView
	Wants    []wantView
	Hours    string // what the forecast says
	Water    []waterTest
	Due      []dueView
	AnyDue   bool // within the week and not wanted yet
	Problems []mend
}

// dueView is a bed that is treated every so often.
type dueView struct {
	Bed, Line string
	Late      bool
}

type siteView struct {
	Name, Line string
	Beds       []bedView
}

type bedView struct{ Name, Line string }

type wantView struct{ Bed, Line string }

// ground shows the land.
func (s *Site) ground(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "ground")
	p.Heading, p.Title = p.Say("web.place.ground"), p.Say("web.place.ground")
	view := &groundView{}
	p.View = view
	if file := s.held(); file != nil {
		view.fill(p, file)
	}
	if r.Method == http.MethodPost && s.wantWeek(w, r, p, view) {
		http.Redirect(w, r, "/plan", http.StatusSeeOther)
		return
	}
	s.fillDue(r, p, view)
	view.Hours = s.hoursLine(p)
	view.Water = s.waterTests(p, s.now())
	s.show(w, http.StatusOK, "ground", p)
}

func (v *groundView) fill(p *page, file *jobfile.File) {
	for _, site := range file.Sites {
		sv := siteView{Name: site.Name, Line: p.Say("web.ground.site", "lat", wording.Fixed(site.Latitude, 2, p.Reader), "lon", wording.Fixed(site.Longitude, 2, p.Reader), "altitude", site.Altitude)}
		for _, bed := range file.Beds {
			if bed.Site == site.Name || bed.Site == "" && len(file.Sites) == 1 {
				sv.Beds = append(sv.Beds, p.bed(&bed))
			}
		}
		v.Sites = append(v.Sites, sv)
	}
	for i := range file.Wants {
		want := &file.Wants[i]
		line := choiceWord(p, "method", want.Method)
		if want.At != nil {
			at := want.At.In(file.Holding.Zone)
			line += ", " + p.Date(at) + " " + p.Clock(at)
		} else if want.From != nil && want.Until != nil {
			from, until := want.From.In(file.Holding.Zone), want.Until.In(file.Holding.Zone)
			line += ", " + p.Say("web.ground.window", "from", p.Date(from)+" "+p.Clock(from), "until", p.Date(until)+" "+p.Clock(until))
		}
		v.Wants = append(v.Wants, wantView{want.Bed, line})
	}
}

func (p *page) bed(bed *jobfile.Bed) bedView {
	line := bed.Crop
	if bed.Area != nil {
		if line != "" {
			line += ", "
		}
		line += both(p, *bed.Area)
	}
	if bed.Stage != "" {
		line += ", " + choiceWord(p, "stage", string(bed.Stage))
	}
	return bedView{bed.Name, line}
}

// hoursLine is what the forecast says, in a sentence.
func (s *Site) hoursLine(p *page) string {
	sky, now := s.sky(), s.now()
	if sky == nil {
		return p.Say("web.hours.link.none")
	}
	method := weather.Foliar
	return p.hoursSentence(ahead(weather.Score(sky.Forecast, skyQuestion(sky, s.siteOf(p), method)), now), method, now)
}
