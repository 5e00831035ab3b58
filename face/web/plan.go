package web

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// planView is a plan as the page tells it.
type planView struct {
	Say      string
	Job      string // the job file as it was pasted
	Problems []mend
	Lanes    []lane
	Batches  []batchPlan
	Runs     []runPlan
	Rulings  []ruling
	Unmet    []unmetWant
	Advice   []adviceLine
	Missing  []string
	Cautions []string
	Planned  bool
	Held     bool // the holding wants something
}

// batchPlan is one batch of the plan.
type batchPlan struct {
	Name, Vessel, Recipe, Why, Line string
	Items                           []itemRow
	Steps                           []stepRow
	Chance                          string
	Over                            bool
	Limit                           string
	Chart                           *chartView
	Tempering                       []string // of water that is too cold or too warm
	Waiting                         string
}

type itemRow struct{ Name, When, Metric, US, Household string }

type stepRow struct {
	Clock, Beside, Machine, Icon, Text string
	Outside                            bool
}

type runPlan struct {
	When, Where, With, Ends string
	Sky                     string // chance that it leaves the hours
	Late                    bool
	Loads                   []loadRow
}

type loadRow struct{ N, Bed, Tea, Water, Covers string }

type ruling struct{ Class, Icon, Bed, Say, Why string }

type unmetWant struct{ Bed, Reason, Nearest string }

type adviceLine struct{ Batch, Text, Effect string }

// plan shows the plan of what the holding wants, or of a job file that was
// pasted.
func (s *Site) plan(w http.ResponseWriter, r *http.Request) {
	r.Body = http.MaxBytesReader(w, r.Body, 8<<20)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return
	}
	p := s.page(w, r, "today")
	p.Back, p.BackTo = "/", p.Say("web.place.today")
	p.Heading, p.Title = p.Say("web.plan.title"), p.Say("web.plan.title")
	view := &planView{Job: r.PostForm.Get("job"), Held: s.held() != nil}
	p.View = view
	status := http.StatusOK
	file, faults := s.wanted(view.Job)
	switch {
	case len(faults) > 0:
		status = http.StatusUnprocessableEntity
		for _, f := range faults {
			view.Problems = append(view.Problems, mend{f.Field, p.problem(f)})
		}
	case file != nil && len(file.Wants) > 0:
		view.make(p, file, s.planFor(view.Job, file, p, s.Now()), s.Now())
	}
	s.show(w, status, "plan", p)
}

// wantedFile is what the holding holds, as a job file that travels to a phone,
// with its time zone, of which a phone's engine has no table.
func (s *Site) wantedFile(w http.ResponseWriter, r *http.Request) {
	if s.Holding == nil || s.Holding.Empty() {
		s.nothingHere(w, r)
		return
	}
	text, problems := jobfile.Compose(s.Holding.Parts())
	if err := problems.OrNil(); err != nil {
		s.broken(w, err)
		return
	}
	zone := s.Holding.Zone(time.UTC)
	carried, err := json.Marshal(map[string]any{"job": string(text), "zone": zone.String(), "zone_data": jobfile.ZoneData(zone, s.Now())})
	if err != nil {
		s.broken(w, err)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	_, _ = w.Write(carried)
}

// wanted is the job file that was pasted, else what the holding holds.
func (s *Site) wanted(pasted string) (*jobfile.File, fault.List) {
	if strings.TrimSpace(pasted) == "" {
		return s.held(), nil
	}
	return jobfile.Read([]byte(pasted), "job.toml", jobfile.Whole)
}

// problem is one slip of a job file as a line.
func (p *page) problem(f *fault.Fault) string {
	text := fmt.Sprintf("%d: %s: %s", f.Line, f.Field, f.What.For(p.Reader))
	for _, more := range []wording.Text{f.Allowed, f.Advice} {
		if said := more.For(p.Reader); said != "" {
			text += "; " + said
		}
	}
	return text
}

// planFor makes the plan of a pasted file, or hands out that of the holding.
func (s *Site) planFor(pasted string, file *jobfile.File, p *page, now time.Time) *plan.Plan {
	if pasted == "" {
		return s.planOf(file, p.Reader, now)
	}
	return plan.Make(plan.Input{File: file, Now: now, Reader: p.Reader})
}

func (v *planView) make(p *page, file *jobfile.File, result *plan.Plan, now time.Time) {
	v.Planned = true
	zone := file.Holding.Zone
	now = now.In(zone)
	for i := range result.Batches {
		v.Batches = append(v.Batches, planBatch(p, &result.Batches[i], now))
	}
	for i := range result.Runs {
		v.Runs = append(v.Runs, planRun(p, &result.Runs[i], now))
	}
	for _, u := range result.Unmet {
		v.Unmet = append(v.Unmet, unmetWant{u.Bed, u.Reason, u.Nearest})
	}
	for _, a := range result.Advice {
		v.Advice = append(v.Advice, adviceLine{a.Batch, a.Text, p.Say("web.plan.effect", "before", p.Chance(a.Effect.Before), "after", p.Chance(a.Effect.After))})
	}
	for _, m := range result.Missing {
		v.Missing = append(v.Missing, m.Text)
	}
	for i := range result.Verdicts {
		v.Rulings = append(v.Rulings, p.ruling(result.Verdicts[i].Bed, &result.Verdicts[i].Verdict))
	}
	v.Cautions = result.Cautions
	v.Lanes = weekLanes(p, result, now)
	v.Say = p.planSentence(result)
}

// planSentence says whether everything wanted is met, and what is not.
func (p *page) planSentence(result *plan.Plan) string {
	met := len(result.Needs) - len(result.Unmet)
	risky := 0
	for _, b := range result.Batches {
		if b.OverChance {
			risky++
		}
	}
	text := p.Say("web.plan.say", "met", met, "wants", len(result.Needs), "batches", len(result.Batches))
	if risky > 0 {
		text += " " + p.Say("web.plan.say.risky", "n", risky)
	}
	return text
}

func planBatch(p *page, b *plan.Batch, now time.Time) batchPlan {
	volume := quantity.Litres(b.VolumeL)
	view := batchPlan{
		Name: b.ID, Vessel: b.Vessel, Recipe: b.Recipe, Why: b.WhyRecipe,
		Line:   p.Say("web.plan.batch", "volume", volume, "vessel", b.Vessel, "start", p.When(b.StartAt.In(now.Location()), now), "ready", p.When(b.ReadyAt.In(now.Location()), now), "useby", p.When(b.UseBy.In(now.Location()), now)),
		Chance: p.Chance(b.Forecast.Chance), Over: b.OverChance, Limit: p.oneDecimal(b.Forecast.Limit),
	}
	for _, item := range b.Items {
		view.Items = append(view.Items, planItem(p, item))
	}
	for i := range b.Steps {
		view.Steps = append(view.Steps, planStep(p, &b.Steps[i], now))
	}
	for _, t := range b.Water.Tempering {
		view.Tempering = append(view.Tempering, t.Text)
	}
	if b.Waiting != nil {
		view.Waiting = b.Waiting.Text
	}
	view.Chart = planChart(p, b, now)
	return view
}

func planItem(p *page, item plan.Item) itemRow {
	row := itemRow{Name: item.Ingredient, When: choiceWord(p, "when", item.When)}
	mass := quantity.Grams(item.MassG)
	row.Metric = mass.Speak(wording.Reader{Language: p.Language, Units: wording.Metric})
	row.US = mass.Speak(wording.Reader{Language: p.Language, Units: wording.US})
	if item.VolumeML != nil {
		row.Metric += " (" + quantity.Millilitres(*item.VolumeML).Speak(wording.Reader{Language: p.Language, Units: wording.Metric}) + ")"
	}
	if item.Household != nil {
		row.Household = *item.Household
	}
	return row
}

// stepIcons is what each kind of step is drawn as.
var stepIcons = map[string]string{
	"clean": "brush", "fill": "tap", "dechlorinate": "drop", "pre-feed": "bag", "feed": "food", "air-on": "air",
	"read": "lens", "finish": "food", "air-off": "air", "strain": "strain", "load": "tap", "apply": "flag", "rinse": "brush",
}

func planStep(p *page, s *plan.Step, now time.Time) stepRow {
	local := s.At.In(now.Location())
	row := stepRow{Clock: p.Clock(local), Beside: p.Beside(local, now), Machine: local.Format(time.RFC3339), Icon: stepIcons[s.What], Text: s.Text, Outside: s.OutsideWork}
	return row
}

func planRun(p *page, run *plan.Run, now time.Time) runPlan {
	at, ends := run.At.In(now.Location()), run.EndsAt.In(now.Location())
	view := runPlan{When: p.When(at, now), Ends: p.Clock(ends), Where: strings.Join(run.Beds, ", "), Late: !run.BeforeUseBy}
	if run.Applicator != nil {
		view.With = *run.Applicator
	}
	if run.Sky != nil {
		view.Sky = run.Sky.Text
	}
	for i, l := range run.Loads {
		row := loadRow{N: fmt.Sprint(i + 1), Bed: l.Bed, Tea: quantity.Litres(l.TeaL).Speak(p.Reader), Water: quantity.Litres(l.WaterL).Speak(p.Reader)}
		if l.Covers != nil {
			row.Covers = quantity.SquareMetres(*l.Covers).Speak(p.Reader)
		}
		view.Loads = append(view.Loads, row)
	}
	return view
}

// planChart draws the forecast that a batch is planned with.
func planChart(p *page, b *plan.Batch, now time.Time) *chartView {
	course := oxygenCourse{start: b.StartAt.In(now.Location()), now: -1, limit: b.Forecast.Limit}
	for _, c := range b.Forecast.Course {
		course.rows = append(course.rows, forecast.Moment{Hour: c.Hour, DO: c.DO})
		course.end = c.Hour
	}
	if len(course.rows) < 2 {
		return nil
	}
	low := b.Forecast.MinDO
	course.lowest = &lowestMark{b.Forecast.HourOfMinimum.Median, low.Median, p.oneDecimal(low.Median)}
	view := drawOxygen(p, course)
	view.Spoken = p.Say("web.plan.chart.spoken", "low", p.oneDecimal(low.Median), "from", p.oneDecimal(low.Low80), "to", p.oneDecimal(low.High80), "limit", p.oneDecimal(b.Forecast.Limit), "chance", p.Chance(b.Forecast.Chance))
	return view
}
