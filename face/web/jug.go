package web

import (
	"net/http"
	"net/url"
	"strconv"

	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// jug guides through the upturned-jug test of a pump, works it out and keeps
// it.
func (s *Site) jug(w http.ResponseWriter, r *http.Request) {
	t, ok := s.begin(w, r, "web.jug.title")
	if !ok {
		return
	}
	t.page.View = t.view
	if file := s.held(); file != nil {
		var names []string
		for _, pump := range file.Pumps {
			names = append(names, pump.Name)
		}
		if !t.view.choose(names, r.Form.Get("pump")) {
			s.nothingHere(w, r)
			return
		}
		t.altitude(file, "")
	}
	s.device(w, r) // named at the first look, so that a test sent twice is one
	if r.Method == http.MethodPost && t.workJug(w, r) {
		http.Redirect(w, r, "/rig/jug?kept=1&pump="+url.QueryEscape(t.view.Name), http.StatusSeeOther)
		return
	}
	sheet, _ := catalog.Find("jug-test")
	t.box(sheet, r.PostForm, "jug", "filled", "depth", "temp", "air-temp")
	t.past("pump")
	t.finish(w, r, "jug")
}

// workJug answers the test; true says that it was kept.
func (t *rigTest) workJug(w http.ResponseWriter, r *http.Request) bool {
	t.take("jug-test", r.PostForm, "jug", "filled", "depth", "temp", "air-temp")
	var figures struct {
		Airflow float64 `json:"airflow_l_per_min"`
	}
	if !t.ask("jug-test", &figures) || t.view.Name == "" || !t.wantsKeeping(r) {
		return false
	}
	body := worksheet.Values{
		"pump": {t.view.Name}, "airflow": {strconv.FormatFloat(figures.Airflow, 'f', -1, 64) + " L/min"},
		"depth": t.given["depth"],
	}
	if temp := t.given["temp"]; len(temp) > 0 {
		body["temp"] = temp
	}
	return t.keep(w, r, body)
}
