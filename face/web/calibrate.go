package web

import (
	"fmt"
	"net/http"
	"net/url"
	"strconv"

	"aerosteep/job/rig"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// guide is how one kind of applicator is calibrated: the worksheet that works it
// out, what is asked of it, and how many steps are told.
type guide struct {
	sheet string
	flags []string
	steps int
	three bool // leads to the third of the three ways
}

// guides by kind. The three classical ways (a catch over a plot; flow, speed and
// width; the course on which fluid ounces read as gallons an acre) check each
// other where a person walks with a nozzle.
var guides = map[rig.ApplicatorKind]guide{
	"can":      {"sprayer", []string{"caught", "test-length", "test-width"}, 3, false},
	"knapsack": {"sprayer", []string{"caught", "test-length", "test-width", "course", "course-time", "spacing", "nozzle-flow"}, 4, true},
	"hose-end": {"hose-end", []string{"delivered", "test-time", "drawn", "test-area"}, 4, false},
	"boom":     {"sprayer", []string{"course", "course-time", "spacing", "nozzle-flow", "rated-flow", "rated-pressure", "pressure"}, 4, false},
	"injector": {"inject", []string{"tea", "injector", "flow"}, 3, false},
	"drip":     {"inject", []string{"tea", "over", "flow", "line-length", "line-bore", "emitter-spacing"}, 3, false},
}

// calibrateView is a guided calibration.
type calibrateView struct {
	*guided
	Kind   string
	Steps  []string
	Course string // the worksheet of the third way
	Even   string // and that which compares nozzles
}

// calibrate guides through the calibration of an applicator and keeps it.
func (s *Site) calibrate(w http.ResponseWriter, r *http.Request) {
	t, ok := s.begin(w, r, "web.calibrate.title")
	if !ok {
		return
	}
	view := &calibrateView{guided: t.view}
	t.page.View = view
	kind := rig.ApplicatorKind(r.Form.Get("kind"))
	if file := s.held(); file != nil && len(file.Applicators) > 0 {
		var names []string
		for _, a := range file.Applicators {
			names = append(names, a.Name)
		}
		if !t.view.choose(names, r.Form.Get("applicator")) {
			s.nothingHere(w, r)
			return
		}
		a, _ := file.Applicator(t.view.Name)
		kind = a.Kind
	}
	how, known := guides[kind]
	if !known {
		kind, how = "knapsack", guides["knapsack"]
	}
	view.tell(t.page, kind, how)
	s.device(w, r) // named at the first look, so that a test sent twice is one
	if r.Method == http.MethodPost && t.workCalibration(w, r, how) {
		http.Redirect(w, r, "/rig/calibrate?kept=1&applicator="+url.QueryEscape(t.view.Name), http.StatusSeeOther)
		return
	}
	sheet, _ := catalog.Find(how.sheet)
	t.box(sheet, r.PostForm, how.flags...)
	t.past("applicator")
	t.finish(w, r, "calibrate")
}

func (v *calibrateView) tell(p *page, kind rig.ApplicatorKind, how guide) {
	v.Kind = choiceWord(p, "applicator", string(kind))
	for n := range how.steps {
		v.Steps = append(v.Steps, p.Say(fmt.Sprintf("web.calibrate.%s.%d", kind, n+1)))
	}
	if how.three {
		v.Course = "/worksheets/course"
	}
	if kind == rig.Boom {
		v.Even = "/worksheets/nozzles"
	}
}

// workCalibration answers the test; true says that it was kept.
func (t *rigTest) workCalibration(w http.ResponseWriter, r *http.Request, how guide) bool {
	t.take(how.sheet, r.PostForm, how.flags...)
	var figures struct {
		PerHectare *float64 `json:"mix_rate_l_per_ha"`
		Flow       *float64 `json:"flow_l_per_min"`
		Nozzle     *float64 `json:"nozzle_l_per_min"`
		Injection  *float64 `json:"injection_l_per_min"`
	}
	if !t.ask(how.sheet, &figures) || t.view.Name == "" || !t.wantsKeeping(r) {
		return false
	}
	body := worksheet.Values{"applicator": {t.view.Name}}
	if v := figures.PerHectare; v != nil {
		body["mix-rate"] = []string{strconv.FormatFloat(*v/1e4, 'f', -1, 64) + " L/m2"}
	}
	for _, flow := range []*float64{figures.Flow, figures.Nozzle, figures.Injection} {
		if flow != nil && body["flow"] == nil {
			body["flow"] = []string{strconv.FormatFloat(*flow, 'f', -1, 64) + " L/min"}
		}
	}
	return t.keep(w, r, body)
}
