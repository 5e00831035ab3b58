package web

import (
	"net/http"
	"net/url"
	"strconv"

	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/holding"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// pumpOffView is the pump-off test as a guided page.
type pumpOffView struct {
	*guided
	Readings string
	OnAt     string
	Error    string // of the readings
	Limit    string // as a box takes it
	LimitMg  string // mg/L, plain, for the page's own check
	Altitude string
	Measured bool // the answer can be kept
}

// pumpOffFigures are the figures of an answer that are kept.
type pumpOffFigures struct {
	Verdict string              `json:"verdict"`
	Uptake  worksheet.Estimate  `json:"our_mg_per_l_h"`
	KLa20   *worksheet.Estimate `json:"kla20_per_h"`
	Temp    *float64            `json:"temp_c"`
}

// usualLimit is the dissolved oxygen that a test stops at where the holding
// has no limit of its own; common practice.
const usualLimit = quantity.Concentration(6)

// pumpOff guides through the pump-off test of a vessel, works it out and keeps
// it.
func (s *Site) pumpOff(w http.ResponseWriter, r *http.Request) {
	t, ok := s.begin(w, r, "web.pumpoff.title")
	if !ok {
		return
	}
	view := &pumpOffView{guided: t.view, Readings: r.PostForm.Get("file"), OnAt: r.PostForm.Get("on_at")}
	t.page.View = view
	file := s.held()
	if !view.of(t, file, r) {
		s.nothingHere(w, r)
		return
	}
	if view.Name != "" {
		t.page.Under = view.Name
	}
	s.device(w, r) // named at the first look, so that a test sent twice is one
	if r.Method == http.MethodPost {
		if kept := view.work(t, w, r); kept {
			http.Redirect(w, r, "/rig/pump-off?kept=1&vessel="+url.QueryEscape(view.Name), http.StatusSeeOther)
			return
		}
	}
	view.fields(t, r)
	t.past("vessel")
	t.finish(w, r, "pumpoff")
}

// of sets the page up for a vessel; false where there is none of that name.
func (v *pumpOffView) of(t *rigTest, file *jobfile.File, r *http.Request) bool {
	limit := usualLimit
	asked := r.Form.Get("vessel")
	if file == nil {
		v.limit(limit)
		return true
	}
	var names []string
	for _, vessel := range file.Vessels {
		if vessel.Pump != "" {
			names = append(names, vessel.Name)
		}
	}
	if !v.choose(names, asked) {
		return false
	}
	if file.Limits.DO != nil {
		limit = *file.Limits.DO
	}
	vessel, _ := file.Vessel(v.Name)
	t.altitude(file, vessel.Site)
	if given := t.given["altitude"]; len(given) > 0 {
		v.Altitude = given[0]
	}
	v.limit(limit)
	return true
}

func (v *pumpOffView) limit(limit quantity.Concentration) {
	v.LimitMg = quantity.Digits(limit.MilligramsPerLitre(), 3)
	v.Limit = v.LimitMg + " mg/L"
}

// work answers the test; true says that it was kept.
func (v *pumpOffView) work(t *rigTest, w http.ResponseWriter, r *http.Request) bool {
	v.Readings = pumpOffFile(v.Readings, v.OnAt)
	t.take("uptake", r.PostForm, "temp", "probe-tau")
	t.given["limit"] = []string{v.Limit}
	if v.Readings != "" {
		t.given["file"] = []string{v.Readings}
	}
	if len(t.given["temp"]) == 0 {
		delete(t.given, "altitude") // it is of no use without a temperature
	}
	var figures pumpOffFigures
	if !t.ask("uptake", &figures) {
		v.Error = v.wrongReadings()
		return false
	}
	v.Measured = v.Name != "" && figures.Verdict == "measurable"
	if !v.Measured || !t.wantsKeeping(r) {
		return false
	}
	return t.keep(w, r, figures.entry(v.Name, withVolumeUnit(t.page, r.PostForm.Get("volume"))))
}

// wrongReadings is what is wrong with the readings, for their box.
func (v *pumpOffView) wrongReadings() string {
	for _, wrong := range v.Faults {
		if wrong.Field == "file" {
			return wrong.Text
		}
	}
	return ""
}

// entry is a test in the words of its form.
func (f pumpOffFigures) entry(vessel, volume string) worksheet.Values {
	body := worksheet.Values{"vessel": {vessel}}
	set := func(flag string, v *float64, unit string) {
		if v != nil && *v > 0 {
			body[flag] = []string{strconv.FormatFloat(*v, 'f', -1, 64) + unit}
		}
	}
	set("our", f.Uptake.Estimate, " mg/L/h")
	set("our-low95", f.Uptake.Low95, " mg/L/h")
	set("our-high95", f.Uptake.High95, " mg/L/h")
	set("temp", f.Temp, " C")
	if k := f.KLa20; k != nil {
		set("kla20", k.Estimate, " /h")
		set("kla20-low95", k.Low95, " /h")
		set("kla20-high95", k.High95, " /h")
		body["kla20-in"] = []string{"brew"} // alpha is in it
	}
	if volume != "" {
		body["volume"] = []string{volume}
	}
	return body
}

func withVolumeUnit(p *page, text string) string {
	form, _ := holding.FormOf("test")
	in, _ := form.Sheet.Input("volume")
	return withBoxUnit(in, text, p)
}

// fields are the boxes beside the readings, filled from the batch that lives
// in the vessel.
func (v *pumpOffView) fields(t *rigTest, r *http.Request) {
	boxes := url.Values{}
	for name, values := range r.PostForm {
		boxes[name] = values
	}
	if r.Method == http.MethodGet {
		t.site.prefill(t.page, boxes, v.Name)
	}
	uptake, _ := catalog.Find("uptake")
	test, _ := holding.FormOf("test")
	t.box(uptake, boxes, "temp")
	t.box(test.Sheet, boxes, "volume")
	t.box(uptake, boxes, "probe-tau")
}

// prefill types the fill and the last temperature of the batch in a vessel.
func (s *Site) prefill(p *page, boxes url.Values, vessel string) {
	if s.Holding == nil {
		return
	}
	for _, b := range s.Holding.Batches() {
		if b.Vessel != vessel || !b.Living() {
			continue
		}
		if b.Volume != nil {
			boxes.Set("volume", b.Volume.Speak(wording.Reader{Language: wording.English, Units: p.Units}))
		}
		if twin, err := s.twin(p.request.Context(), b.Name, s.now()); err == nil {
			boxes.Set("temp", quantity.Celsius(twin.Forecast.State.Water.Median).Speak(wording.Reader{Language: wording.English, Units: p.Units}))
		}
		return
	}
}
