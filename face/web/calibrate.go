package web

import (
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"

	"aerosteep/fault"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/science/spray"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// guide is how one kind of applicator is calibrated: the worksheet that works it
// out, and what each step asks. The last step is the answer.
type guide struct {
	sheet string
	steps [][]string // flags of the worksheet; a step may only tell
}

// guides by kind. Where a person walks or drives with a nozzle, the three
// classical ways check each other.
var guides = map[rig.ApplicatorKind]guide{
	"can": {"calibrate", [][]string{{"test-length", "test-width"}, {}, {"caught"}}},
	"knapsack": {"calibrate", [][]string{
		{"caught", "test-length", "test-width"}, {"nozzle-flow", "course", "course-time", "spacing"}, {"course-caught"},
	}},
	"boom": {"calibrate", [][]string{
		{"course", "course-time", "spacing"}, {"nozzle-flow"}, {"course-caught"}, {"caught", "test-length", "test-width"},
	}},
	"hose-end": {"hose-end", [][]string{{}, {"delivered", "test-time"}, {"drawn"}, {"test-area"}}},
	"injector": {"inject", [][]string{{"tea"}, {"flow"}, {"injector"}}},
	"drip":     {"inject", [][]string{{"tea", "over"}, {"flow"}, {"line-length", "line-bore", "emitter-spacing"}}},
}

// all are the flags of every step.
func (g guide) all() []string { return slices.Concat(g.steps...) }

// stepOf is the step, from 1, that asks for a flag; the first where none does.
func (g guide) stepOf(flag string) int {
	for n, flags := range g.steps {
		if slices.Contains(flags, flag) {
			return n + 1
		}
	}
	return 1
}

// calibrateView is a guided calibration, one step at a time.
type calibrateView struct {
	*guided
	Kind   string
	Step   int // from 1; Steps + 1 is the answer
	Next   int
	Before int    // 0 on the first
	Steps  int    // that ask or tell
	Place  string // "Step 2 of 4"
	Tell   string
	Told   []string // of all steps, on the answer's page
	Hidden []option // what the other steps were answered
	Course string   // how far to walk for the third way, where the width is known
	Even   string   // the worksheet that compares nozzles
}

// calibrate guides through the calibration of an applicator and keeps it.
func (s *Site) calibrate(w http.ResponseWriter, r *http.Request) {
	t, ok := s.begin(w, r, "web.calibrate.title")
	if !ok {
		return
	}
	view := &calibrateView{guided: t.view}
	t.page.View = view
	kind, known := view.applicator(s, r)
	if !known {
		s.nothingHere(w, r)
		return
	}
	how := guides[kind]
	s.device(w, r) // named at the first look, so that a test sent twice is one
	view.Kind, view.Steps = choiceWord(t.page, "applicator", string(kind)), len(how.steps)
	view.Step = view.asked(r)
	if r.Method == http.MethodPost && view.forward(t, w, r, how) {
		http.Redirect(w, r, "/rig/calibrate?kept=1&applicator="+url.QueryEscape(t.view.Name), http.StatusSeeOther)
		return
	}
	view.tell(t, kind, how, r.Form)
	t.past("applicator")
	t.finish(w, r, "calibrate")
}

// applicator takes the one that was asked for; without a set-up the kind alone.
// What nobody sells as one of the kinds is done as a knapsack.
func (v *calibrateView) applicator(s *Site, r *http.Request) (rig.ApplicatorKind, bool) {
	kind := rig.ApplicatorKind(r.Form.Get("kind"))
	if file := s.held(); file != nil && len(file.Applicators) > 0 {
		var names []string
		for _, a := range file.Applicators {
			names = append(names, a.Name)
		}
		if !v.choose(names, r.Form.Get("applicator")) {
			return "", false
		}
		a, _ := file.Applicator(v.Name)
		kind = a.Kind
	}
	if _, known := guides[kind]; !known {
		kind = "knapsack"
	}
	return kind, true
}

// asked is the step that was sent. A form that carries everything and no step is
// at its end.
func (v *calibrateView) asked(r *http.Request) int {
	step, err := strconv.Atoi(r.Form.Get("step"))
	switch {
	case err == nil:
		return min(max(step, 1), v.Steps+1)
	case r.Method == http.MethodPost:
		return v.Steps + 1
	}
	return 1
}

// forward checks what the steps before this one were told and works out the
// answer at the end; true says that it was kept. A fault leads back to its step.
func (v *calibrateView) forward(t *rigTest, w http.ResponseWriter, r *http.Request, how guide) bool {
	if v.Step <= v.Steps {
		v.check(t, r.PostForm, how)
		return false
	}
	if t.workCalibration(w, r, how) {
		return true
	}
	if len(t.faults) > 0 {
		v.Step = how.stepOf(t.faults[0].Field)
	}
	return false
}

// check reads what the steps before were told, each value for itself.
func (v *calibrateView) check(t *rigTest, form url.Values, how guide) {
	before := slices.Concat(how.steps[:v.Step-1]...)
	t.take(how.sheet, form, before...)
	sheet, _ := catalog.Find(how.sheet)
	_, err := worksheet.Read(sheet, t.given, nil)
	for _, wrong := range fault.Of(err) {
		if slices.Contains(before, wrong.Field) && t.given[wrong.Field] != nil {
			t.refuse(sheet, wrong)
		}
	}
	if len(t.faults) > 0 {
		v.Step = how.stepOf(t.faults[0].Field)
	}
}

// tell fills in what this step says and asks.
func (v *calibrateView) tell(t *rigTest, kind rig.ApplicatorKind, how guide, form url.Values) {
	p := t.page
	says := func(n int) string { return p.Say(fmt.Sprintf("web.calibrate.%s.%d", kind, n)) }
	sheet, _ := catalog.Find(how.sheet)
	here := []string{}
	v.Before, v.Next = v.Step-1, v.Step+1
	if v.Step <= v.Steps {
		v.Place, v.Tell, here = p.Say("web.calibrate.step", "n", v.Step, "all", v.Steps), says(v.Step), how.steps[v.Step-1]
	} else {
		v.Place = p.Say("web.calibrate.answer")
		for n := range v.Steps {
			v.Told = append(v.Told, says(n+1))
		}
	}
	t.box(sheet, form, here...)
	for _, flag := range how.all() {
		if value := form.Get(flag); value != "" && !slices.Contains(here, flag) {
			v.Hidden = append(v.Hidden, option{Value: value, Label: flag})
		}
	}
	if slices.Contains(here, "course-caught") {
		v.Course = courseOf(t, how.sheet, form)
	}
	if kind == rig.Boom && slices.Contains(here, "nozzle-flow") {
		v.Even = "/worksheets/nozzles"
	}
}

// courseOf says how far to walk, so that fluid ounces read as gallons an acre.
func courseOf(t *rigTest, sheet string, form url.Values) string {
	made, _ := catalog.Find(sheet)
	in, _ := made.Input("spacing")
	width, err := quantity.ParseLength(withBoxUnit(in, form.Get("spacing"), t.page))
	if err != nil {
		return t.page.Say("web.calibrate.course.width")
	}
	course, err := spray.CourseOver(spray.OuncePlot, width)
	if err != nil {
		return t.page.Say("web.calibrate.course.width")
	}
	return t.page.Say("web.calibrate.course", "distance", course, "width", width)
}

// workCalibration answers the test; true says that it was kept.
func (t *rigTest) workCalibration(w http.ResponseWriter, r *http.Request, how guide) bool {
	t.take(how.sheet, r.PostForm, how.all()...)
	var figures struct {
		PerHectare *float64 `json:"mix_rate_l_per_ha"`
		Flow       *float64 `json:"flow_l_per_min"`
		Injection  *float64 `json:"injection_l_per_min"`
		Percent    *float64 `json:"percent_tea"`
	}
	if !t.ask(how.sheet, &figures) || t.view.Name == "" || !t.wantsKeeping(r) {
		return false
	}
	body := worksheet.Values{"applicator": {t.view.Name}}
	plain := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	if v := figures.PerHectare; v != nil {
		body["mix-rate"] = []string{plain(*v/1e4) + " L/m2"}
	}
	for _, flow := range []*float64{figures.Flow, figures.Injection} {
		if flow != nil && body["flow"] == nil {
			body["flow"] = []string{plain(*flow) + " L/min"}
		}
	}
	if flow := t.given["nozzle-flow"]; flow != nil && body["flow"] == nil {
		body["flow"] = flow
	}
	if v := figures.Percent; v != nil {
		body["percent-tea"] = []string{plain(*v)}
	}
	return t.keep(w, r, body)
}
