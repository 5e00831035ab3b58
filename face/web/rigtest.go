package web

import (
	"encoding/json"
	"net/http"
	"net/url"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/holding"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// guided is what the pages of a test share: fields, the answer of the
// worksheet behind it, and what was kept before.
type guided struct {
	Name   string   // of what is tested; "" where nothing is set up
	Names  []option // to choose from
	Fields []field
	Result *sheetView // nil until something was asked
	Faults []mend
	Kept   bool
	By     string
	Past   []testRow
}

// testRow is a test that was kept.
type testRow struct {
	When, Line, Aged string
}

// rigTest is one request about a test, while it is answered.
type rigTest struct {
	site   *Site
	page   *page
	view   *guided
	given  worksheet.Values // of the worksheet
	faults fault.List
	now    time.Time
}

// begin reads the request of a test's page; false where it cannot be read.
func (s *Site) begin(w http.ResponseWriter, r *http.Request, title string) (*rigTest, bool) {
	p := s.page(w, r, "rig")
	p.Task, p.Back, p.BackTo = true, "/rig", p.Say("web.place.rig")
	p.Heading, p.Title = p.Say(title), p.Say(title)
	r.Body = http.MaxBytesReader(w, r.Body, 1<<20)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return nil, false
	}
	t := &rigTest{site: s, page: p, view: &guided{Kept: r.Form.Has("kept")}, given: worksheet.Values{}, now: s.now()}
	return t, true
}

// take gives the worksheet what was typed into some of its boxes.
func (t *rigTest) take(sheet string, form url.Values, flags ...string) {
	made, _ := catalog.Find(sheet)
	for _, flag := range flags {
		in, _ := made.Input(flag)
		if text := strings.TrimSpace(form.Get(flag)); text != "" {
			t.given[flag] = []string{withBoxUnit(in, text, t.page)}
		}
	}
}

// ask runs the worksheet and reads the figures of its answer into what is
// wanted, by the keys that they have everywhere.
func (t *rigTest) ask(name string, wanted any) bool {
	sheet, _ := catalog.Find(name)
	form, err := worksheet.Read(sheet, t.given, nil)
	var result *worksheet.Result
	if err == nil {
		form.Units = t.page.Units
		result, err = sheet.Run(form)
	}
	if err != nil {
		t.refuse(sheet, err)
		return false
	}
	text, err := result.JSON(t.page.Reader)
	if err == nil {
		err = json.Unmarshal(text, wanted)
	}
	if err != nil {
		t.refuse(sheet, err)
		return false
	}
	t.view.Result = &sheetView{Sheet: sheet}
	t.view.Result.fill(t.page, result)
	return true
}

func (t *rigTest) refuse(sheet *worksheet.Sheet, err error) {
	faults := fault.Of(err)
	if len(faults) == 0 {
		faults = fault.List{{What: verbatim(err)}}
	}
	t.faults = append(t.faults, faults...)
	for _, wrong := range faults {
		t.view.Faults = append(t.view.Faults, mend{wrong.Field, faultText(t.page, sheet, wrong)})
	}
}

// box adds a field for an input of a worksheet.
func (t *rigTest) box(sheet *worksheet.Sheet, form url.Values, flags ...string) {
	for _, flag := range flags {
		in, _ := sheet.Input(flag)
		f := field{
			Name: flag, Label: in.Label(sheet.Name).For(t.page.Reader), Hint: in.Allowed().For(t.page.Reader), Value: form.Get(flag),
			Kind: "text", Unit: boxUnit(in, t.page), Decimal: in.Kind.Numeric(), Required: in.Required,
		}
		if in.Default != "" {
			f.Hint += t.page.Say("web.field.default", "default", in.Default)
		}
		f.shape(in, t.page)
		for _, wrong := range t.faults {
			if wrong.Field == flag {
				f.Error = faultText(t.page, sheet, wrong)
			}
		}
		t.view.Fields = append(t.view.Fields, f)
	}
}

// keep stores the test; it is on disk when it answers true.
func (t *rigTest) keep(w http.ResponseWriter, r *http.Request, body worksheet.Values) bool {
	made := holding.Made{At: t.now, By: t.site.initials(w, r), Device: t.site.device(w, r)}
	if at, err := time.Parse(time.RFC3339, r.PostForm.Get("at")); err == nil {
		made.At = at // it waited on the phone
	}
	form, _ := holding.FormOf("test")
	entry, err := t.site.Holding.Compose(form, body, made)
	if id := r.PostForm.Get("id"); id != "" && err == nil {
		entry.ID, entry.RecordedAt = id, entry.At // made on the phone, so that it is kept once
	}
	if err == nil {
		err = t.site.store(r.Context(), entry)
	}
	if err != nil {
		t.refuse(form.Sheet, err)
	}
	return err == nil
}

// finish shows the page, or leads back to it where the test was kept.
func (t *rigTest) finish(w http.ResponseWriter, r *http.Request, template string) {
	t.view.By = kept(r, "by")
	status := http.StatusOK
	if len(t.view.Faults) > 0 {
		status = http.StatusUnprocessableEntity
		t.page.Title = t.page.Say("web.error.title", "title", t.page.Title)
	}
	t.site.show(w, status, template, t.page)
}

// wantsKeeping tells whether the answer is to be kept.
func (t *rigTest) wantsKeeping(r *http.Request) bool {
	return r.Method == http.MethodPost && r.PostForm.Get("keep") != "" && t.site.Holding != nil
}

// choose takes the one that was asked for, else the first.
func (g *guided) choose(names []string, asked string) bool {
	found := asked == ""
	for i, name := range names {
		chosen := name == asked || asked == "" && i == 0
		if chosen {
			g.Name, found = name, true
		}
		g.Names = append(g.Names, option{Value: name, Label: name, Chosen: chosen})
	}
	return found
}

// altitude gives the worksheet the height of a site, where it is known.
func (t *rigTest) altitude(file *jobfile.File, site string) {
	place, known := file.Site(site)
	if !known && len(file.Sites) > 0 {
		place, known = file.Sites[0], true
	}
	if known && place.AltitudeKnown {
		t.given["altitude"] = []string{quantity.Digits(place.Altitude.Metres(), 6) + " m"}
	}
}

// past lists the tests that were kept, with a word where one has aged.
func (t *rigTest) past(what string) {
	if t.site.Holding == nil || t.view.Name == "" {
		return
	}
	t.view.Past = t.page.tests(t.site.Holding.TestsOf(what, t.view.Name), t.now)
}

// mostTests are the tests that a page lists.
const mostTests = 12

func (p *page) tests(all []holding.RigTest, now time.Time) []testRow {
	var rows []testRow
	for _, test := range all[:min(len(all), mostTests)] {
		row := testRow{When: p.When(test.At.In(now.Location()), now), Line: p.testLine(test)}
		if row.Line == "" {
			continue
		}
		switch _, ofMeter := test.Bias(); {
		case ofMeter && now.Sub(test.At) > holding.MeterServesFor:
			row.Aged = p.Say("web.rigtest.aged-meter", "n", daysSince(test.At, now))
		case !ofMeter && test.Aged(now):
			row.Aged = p.Say("web.rigtest.aged", "n", daysSince(test.At, now))
		}
		rows = append(rows, row)
	}
	return rows
}

func daysSince(at, now time.Time) int { return int(now.Sub(at).Hours() / 24) }

// testLine says what a test came to.
func (p *page) testLine(test holding.RigTest) string {
	var parts []string
	say := func(key string, pairs ...any) { parts = append(parts, p.Say("web.rigtest."+key, pairs...)) }
	if k := test.Transfer(); k != nil {
		switch {
		case k.Low95 != nil:
			say("kla-range", "kla", k.Estimate, "low", *k.Low95, "high", *k.High95)
		default:
			say("kla", "kla", k.Estimate)
		}
	}
	amount := func(key string, v *float64, speak func(float64) wording.Speaker) {
		if v != nil {
			say(key, "x", speak(*v))
		}
	}
	amount("uptake", test.Uptake, func(v float64) wording.Speaker { return quantity.MilligramsPerLitreHour(v) })
	amount("airflow", test.Airflow, func(v float64) wording.Speaker { return quantity.Airflow(v) })
	amount("mix-rate", test.MixRate, func(v float64) wording.Speaker { return quantity.LitresPerSquareMetre(v) })
	amount("flow", test.Flow, func(v float64) wording.Speaker { return quantity.LitresPerMinute(v) })
	if bias, known := test.Bias(); known {
		say(biasWord(bias), "x", quantity.DissolvedOxygen(max(bias, -bias)))
		if test.Doubted() {
			say("bias-doubted")
		}
	}
	amount("drop", test.Drop, func(v float64) wording.Speaker { return quantity.MilligramsPerLitre(v) })
	amount("temp", test.Temp, func(v float64) wording.Speaker { return quantity.Celsius(v) })
	amount("volume", test.Volume, func(v float64) wording.Speaker { return quantity.Litres(v) })
	amount("depth", test.Depth, func(v float64) wording.Speaker { return quantity.Metres(v) })
	return strings.Join(parts, ", ")
}

func biasWord(bias float64) string {
	if bias < 0 {
		return "bias-under"
	}
	return "bias-over"
}

// agedAir is a word where the forecast of a vessel rests on a test of its air,
// or of its pump, that has aged.
func (s *Site) agedAir(p *page, vessel string, now time.Time) string {
	for _, test := range s.Holding.TestsOf("vessel", vessel) {
		if test.Transfer() != nil {
			return p.agedWord("web.rigtest.air-aged", test, now)
		}
	}
	file := s.held()
	if file == nil {
		return ""
	}
	of, known := file.Vessel(vessel)
	if !known || of.KLa20 != nil || of.Pump == "" {
		return ""
	}
	for _, test := range s.Holding.TestsOf("pump", of.Pump) {
		if test.Airflow != nil {
			return p.agedWord("web.rigtest.jug-aged", test, now)
		}
	}
	return ""
}

func (p *page) agedWord(key string, test holding.RigTest, now time.Time) string {
	if !test.Aged(now) {
		return ""
	}
	return p.Say(key, "n", daysSince(test.At, now))
}

// meterOnRecord says which meter was checked last, what it came to and, where
// the check no longer serves, how old it is.
func (s *Site) meterOnRecord(p *page, now time.Time) (line, aged string) {
	test, name, known := s.Holding.LastCheck()
	if !known {
		return p.Say("web.meter.batch-none"), ""
	}
	row := p.tests([]holding.RigTest{test}, now)[0]
	return p.Say("web.meter.batch", "name", name, "when", row.When, "bias", row.Line), row.Aged
}
