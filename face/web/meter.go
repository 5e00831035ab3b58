package web

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/record/holding"
	"aerosteep/science/oxygen"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// meterView is the check of a meter in water full of air.
type meterView struct {
	*guided
	NameError string
	Known     []string // meters that were checked before
	Bias      string   // what the meter shows over or under
	Doubt     bool
	Serves    string
	Percents  []percentRow
	Afternoon []afternoonTest
	shows     *quantity.Concentration
	drop      *quantity.Concentration
	holds     quantity.Concentration
}

// percentRow is a percent of saturation and the oxygen it means.
type percentRow struct{ Percent, Oxygen string }

// afternoonTest is one of the two tests worth a borrowed meter.
type afternoonTest struct{ What, Serves, Link string }

// The boxes of the page, of three sheets.
var (
	meterWater = []string{"temp", "reading"}
	meterOf    = []string{"percent-saturation"}
)

// meter checks a meter in air-saturated water and keeps its bias.
func (s *Site) meter(w http.ResponseWriter, r *http.Request) {
	t, ok := s.begin(w, r, "web.meter.title")
	if !ok {
		return
	}
	view := &meterView{guided: t.view, Serves: t.page.Say("web.meter.serves", "n", int(holding.MeterServesFor.Hours()/24))}
	t.page.View = view
	view.Name = strings.TrimSpace(r.Form.Get("meter"))
	if s.Holding != nil {
		view.Known = s.Holding.Tested("meter")
	}
	if view.Name == "" && len(view.Known) > 0 && r.Method == http.MethodGet {
		view.Name = view.Known[0]
	}
	if file := s.held(); file != nil {
		t.altitude(file, "")
	}
	s.device(w, r) // named at the first look, so that a check sent twice is one
	if r.Method == http.MethodPost && view.work(t, w, r) {
		http.Redirect(w, r, "/rig/meter?kept=1&meter="+url.QueryEscape(view.Name), http.StatusSeeOther)
		return
	}
	view.fields(t, r)
	view.afternoon(t)
	t.past("meter")
	t.finish(w, r, "meter")
}

// work answers the check; true says that it was kept.
func (v *meterView) work(t *rigTest, w http.ResponseWriter, r *http.Request) bool {
	t.take("saturation", r.PostForm, "temp", "conductivity")
	percent, both := v.typed(t, r)
	if both || !v.water(t) {
		return false
	}
	switch {
	case percent != nil:
		shown := oxygen.AtPercent(percent.Percent(), v.holds)
		t.given["reading"] = []string{strconv.FormatFloat(shown.MilligramsPerLitre(), 'f', -1, 64) + " mg/L"}
	default:
		t.take("saturation", r.PostForm, "reading")
	}
	if len(t.given["reading"]) > 0 && !v.judge(t) {
		return false
	}
	return len(t.faults) == 0 && t.wantsKeeping(r) && v.keep(t, w, r)
}

// typed reads the boxes that no worksheet has: percent, and one drop.
func (v *meterView) typed(t *rigTest, r *http.Request) (percent *quantity.Share, both bool) {
	if text := boxText(t.page, "reading", "percent-saturation", r); text != "" {
		share, err := quantity.ParseShare(text)
		if err != nil {
			t.wrong("percent-saturation", err)
			return nil, true
		}
		percent = &share
	}
	if percent != nil && strings.TrimSpace(r.PostForm.Get("reading")) != "" {
		t.wrong("percent-saturation", fault.New("percent-saturation", "", wording.Say("web.meter.both"), wording.Text{}, wording.Text{}))
		return percent, true
	}
	if text := boxText(t.page, "test", "drop", r); text != "" {
		drop, err := quantity.ParseConcentration(text)
		if err != nil {
			t.wrong("drop", err)
			return percent, true
		}
		v.drop = &drop
	}
	return percent, false
}

// boxText is what was typed into the box of a form's input, with its unit.
func boxText(p *page, word, flag string, r *http.Request) string {
	text := strings.TrimSpace(r.PostForm.Get(flag))
	if text == "" {
		return ""
	}
	form, _ := holding.FormOf(word)
	in, _ := form.Sheet.Input(flag)
	return withBoxUnit(in, text, p)
}

// wrong lists a box that cannot be read.
func (t *rigTest) wrong(flag string, err error) {
	form, _ := holding.FormOf("test")
	if faults := fault.Of(err); len(faults) > 0 {
		named := *faults[0]
		named.Field = flag
		err = &named
	}
	t.refuse(form.Sheet, err)
}

// water finds what the water holds, and what each percent of it is.
func (v *meterView) water(t *rigTest) bool {
	var figures struct {
		Holds float64 `json:"saturation_mg_per_l"`
	}
	if !t.ask("saturation", &figures) {
		return false
	}
	v.holds = quantity.MilligramsPerLitre(figures.Holds)
	for percent := 100; percent >= 40; percent -= 10 {
		held := oxygen.AtPercent(float64(percent), v.holds)
		v.Percents = append(v.Percents, percentRow{strconv.Itoa(percent) + "\u00a0%", quantity.DissolvedOxygen(held).Speak(t.page.Reader)})
	}
	return true
}

// judge says how far the meter is off, and whether that can be.
func (v *meterView) judge(t *rigTest) bool {
	t.given["steady"] = []string{"true"} // bubbled for long
	var figures struct {
		Reading float64 `json:"percent_saturation"`
	}
	if !t.ask("saturation", &figures) {
		return false
	}
	shows := oxygen.AtPercent(figures.Reading, v.holds)
	v.shows = &shows
	check := v.check()
	v.Doubt = check.Doubted()
	v.Bias = t.page.biasSaid(check)
	return true
}

// check is the test as it would be kept.
func (v *meterView) check() holding.RigTest {
	shows, holds := v.shows.MilligramsPerLitre(), v.holds.MilligramsPerLitre()
	check := holding.RigTest{Shows: &shows, Holds: &holds}
	if v.drop != nil {
		drop := v.drop.MilligramsPerLitre()
		check.Drop = &drop
	}
	return check
}

// unseenBias is less than a meter's last digit.
const unseenBias = 0.05 // mg/L

// biasSaid says what to do about the bias that a check found.
func (p *page) biasSaid(check holding.RigTest) string {
	bias, _ := check.Bias()
	off := max(bias, -bias)
	x := quantity.DissolvedOxygen(off)
	switch {
	case check.Doubted():
		return p.Say("web.meter.doubted")
	case check.Drop != nil && off <= *check.Drop:
		return p.Say("web.meter.within", "x", x, "drop", quantity.MilligramsPerLitre(*check.Drop))
	case off < unseenBias:
		return p.Say("web.meter.exact")
	case bias > 0:
		return p.Say("web.meter.over", "x", x)
	}
	return p.Say("web.meter.under", "x", x)
}

// keep stores the check under its meter.
func (v *meterView) keep(t *rigTest, w http.ResponseWriter, r *http.Request) bool {
	if v.shows == nil {
		t.wrong("reading", fault.New("reading", "", wording.Say("web.meter.nothing"), wording.Text{}, wording.Text{}))
		return false
	}
	if v.Name == "" {
		v.NameError = t.page.Say("web.meter.name.missing")
		v.Faults = append(v.Faults, mend{"meter", v.NameError})
		return false
	}
	body := worksheet.Values{"meter": {v.Name}, "temp": t.given["temp"]}
	check := v.check()
	for flag, figure := range map[string]*float64{"shows": check.Shows, "holds": check.Holds, "drop": check.Drop} {
		if figure != nil {
			body[flag] = []string{strconv.FormatFloat(*figure, 'f', -1, 64) + " mg/L"}
		}
	}
	return t.keep(w, r, body)
}

// fields are the boxes, filled with what was typed.
func (v *meterView) fields(t *rigTest, r *http.Request) {
	saturation, _ := catalog.Find("saturation")
	reading, _ := holding.FormOf("reading")
	test, _ := holding.FormOf("test")
	t.box(saturation, r.PostForm, meterWater...)
	t.box(reading.Sheet, r.PostForm, meterOf...)
	v.Fields[len(v.Fields)-1].Hint = t.page.Say("web.meter.percent.hint")
	t.box(test.Sheet, r.PostForm, "drop")
	v.Fields[len(v.Fields)-1].Hint = t.page.Say("web.meter.drop.hint")
	t.box(saturation, r.PostForm, "conductivity")
}

// afternoon names the two tests that are worth a borrowed meter: in the brew
// where one lives, else in plain water; then the grower's own meter, where
// there is one.
func (v *meterView) afternoon(t *rigTest) {
	air, meter := int(holding.ServesFor.Hours()/24), int(holding.MeterServesFor.Hours()/24)
	say := func(what string, n int, link string, key string, pairs ...any) {
		v.Afternoon = append(v.Afternoon, afternoonTest{What: t.page.Say("web.meter.afternoon."+key, pairs...), Serves: t.page.Say("web.meter.afternoon."+what, "n", n), Link: link})
	}
	vessel, batch := t.site.breathing()
	if batch != "" {
		say("off-serves", air, "/rig/pump-off?vessel="+url.QueryEscape(vessel), "pump-off", "vessel", vessel, "batch", batch)
	}
	if batch == "" || len(v.Known) == 0 {
		say("serves", air, "/worksheets/reaeration", "water")
	}
	if len(v.Afternoon) < 2 {
		say("own-serves", meter, "/rig/meter", "own")
	}
}

// breathing is a vessel with air in which a batch lives, and that batch.
func (s *Site) breathing() (vessel, batch string) {
	file := s.held()
	if file == nil {
		return "", ""
	}
	for _, b := range s.Holding.Batches() {
		if v, known := file.Vessel(b.Vessel); known && v.Pump != "" && b.Living() {
			return b.Vessel, b.Name
		}
	}
	return "", ""
}
