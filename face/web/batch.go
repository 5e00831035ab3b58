package web

import (
	"encoding/json"
	"math"
	"net/http"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/quantity"
	"aerosteep/record/holding"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// batchView is one batch: the oxygen sentence and bar, the forecast, what may
// be changed, what was done.
type batchView struct {
	Working []worksheet.Line // what the forecast rests on
	Sources []source.Source
	life
	Again                []string // beds that wait again, after a batch that was not used
	Known                bool
	Measured             string // "reading of 21:30"
	Say, SayShare        string
	Bar                  *oxygenBar
	Why                  string
	Figures              []worksheet.Line
	Chart, Water         *chartView
	Key                  bool
	Readings             []readingRow
	Whatif               []whatIf
	Hundred              *hundredView
	Recipe               []itemRow
	Log                  []logLine
	Doubts               []string
	Meter, UseBy, Ending string
	Old                  string
	Aged                 string // what the air rests on is a test of long ago
	Checked, CheckAged   string // the meter whose bias is on record
}

type readingRow struct {
	Clock, Day, DO, Temp, Share string
	Doubted                     bool
}

// whatIf is one change with its own chance; the present comes first.
type whatIf struct {
	Name, More, Chance, Query string
	Now                       bool
}

type hundredView struct {
	Spoken string
	Marks  []bool
}

type logLine struct{ When, What, By string }

// carried is the forecast's question for the phone, which makes it anew where a
// reading waits for signal.
func (s *Site) carried(w http.ResponseWriter, r *http.Request) {
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	twin, err := s.twin(r.Context(), r.PathValue("name"), s.now())
	if err != nil {
		s.nothingHere(w, r)
		return
	}
	text, err := json.Marshal(twin.Carried())
	if err != nil {
		s.log("carried forecast", err)
		http.Error(w, "cannot be carried", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	_, _ = w.Write(text)
}

// working is what the forecast rests on: vessel, air, water, readings.
func (v *batchView) working(p *page, twin *holding.Twin) {
	line := func(key, value string) {
		v.Working = append(v.Working, worksheet.Line{Label: p.Say("web.working." + key), Value: value})
	}
	s := twin.Subject.Setup
	line("volume", both(p, s.Volume))
	air := s.Transfer.Estimate.Speak(p.Reader)
	if s.Transfer.Low95 > 0 {
		air += " (" + s.Transfer.Low95.Speak(p.Reader) + " – " + s.Transfer.High95.Speak(p.Reader) + ")"
	}
	line("air", air)
	line("start", s.Start.Speak(p.Reader))
	line("hours", s.Planned.Speak(p.Reader))
	line("limit", quantity.MilligramsPerLitre(twin.Forecast.Limit).Speak(p.Reader))
	line("readings", p.Say("web.working.readings.of", "n", twin.Forecast.Used, "doubted", len(twin.Forecast.Doubted)))
	line("range", p.Say("web.working.bands"))
	v.Sources = forecast.Sources()
}

// waitAgain are the beds that a batch which was not used leaves waiting, each with
// the next hour that the plan finds for it.
func (s *Site) waitAgain(p *page, r *http.Request, b holding.Batch, now time.Time) []string {
	file := s.held()
	if file == nil || !b.Wasted() {
		return nil
	}
	open, err := s.Holding.WaitAgain(r.Context(), file, b)
	if err != nil {
		s.log("wants of a batch that failed", err)
	}
	if len(open) == 0 {
		return nil
	}
	var lines []string
	made := s.planOf(file, p.Reader, now)
	for _, i := range open {
		lines = append(lines, p.Text(made.Prospect(i).Text(file.Wants[i].Bed)))
	}
	return lines
}

// batch shows one batch.
func (s *Site) batch(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "batches")
	name := r.PathValue("name")
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	b, known := s.Holding.Batch(name)
	if !known {
		s.nothingHere(w, r)
		return
	}
	now := s.now()
	p.Heading, p.Title, p.Back, p.BackTo = b.Name, b.Name, "/batches", p.Say("web.place.batches")
	view := &batchView{life: life{Name: b.Name, Vessel: b.Vessel}}
	p.View = view
	p.Docked = b.Living()
	if b.Ended != nil {
		view.Ending = p.past(b, now).Line
		view.Again = s.waitAgain(p, r, b, now)
	}
	if twin, err := s.twin(r.Context(), name, now); err == nil {
		view.Known = true
		view.fill(p, twin, now)
		view.whatIfs(p, twin, r.URL.Query().Get("what"))
	} else {
		view.Sentence = p.Say("web.batch.no-forecast", "why", s.reason(p, err))
	}
	view.Log = s.history(p, name, now)
	view.Aged = s.agedAir(p, b.Vessel, now)
	view.Checked, view.CheckAged = s.meterOnRecord(p, now)
	p.Under = view.Under
	s.show(w, http.StatusOK, "batch", p)
}

func (v *batchView) fill(p *page, twin *holding.Twin, now time.Time) {
	f := twin.Forecast
	v.Under = p.Say("web.batch.hour", "hour", int(twin.Hour()), "of", int(twin.Subject.Setup.Planned.Hours()))
	v.tell(p, twin, now)
	v.Say = p.Say("web.batch.say", "do", p.oneDecimal(f.State.DO.Median))
	v.SayShare = p.Say("web.batch.say.share", "share", percentOf(f, f.State.DO.Median), "temp", quantity.Celsius(f.State.Water.Median))
	if last := lastOxygen(twin); last != nil {
		v.Measured = p.Say("web.batch.reading-of", "clock", p.When(last.At.In(now.Location()), now))
	}
	var low, high *float64
	if f.MinDO != nil {
		low, high = &f.MinDO.Low80, &f.MinDO.High80
	}
	v.Bar = drawOxygenBar(p, f.State.DO.Median, f.Limit, heldNow(f), low, high)
	v.Why = twin.Answer.Why.Text.For(p.Reader)
	v.working(p, twin)
	use := twin.Answer.UseBy.Minutes.Low80
	v.UseBy = p.Say("web.batch.use-by", "minutes", int(use), "clock", p.When(now.Add(time.Duration(use*float64(time.Minute))), now))
	v.charts(p, twin, now)
	v.tables(p, twin, now)
	v.figures(p, f)
	for _, d := range twin.Answer.Doubted {
		at, _ := time.Parse(time.RFC3339, d.At)
		v.Doubts = append(v.Doubts, p.Say("web.batch.doubted", "clock", p.When(at.In(now.Location()), now), "why", d.Why.For(p.Reader)))
	}
	v.Meter = twin.Answer.Meter.Text.For(p.Reader)
}

// figures are the forecast's numbers, each under the key it has everywhere.
func (v *batchView) figures(p *page, f *forecast.Forecast) {
	add := func(key, value string) {
		v.Figures = append(v.Figures, worksheet.Line{Key: key, Label: worksheet.Label(key, p.Reader), Value: value})
	}
	if f.Chance != nil {
		add("chance_below_limit", p.Chance(*f.Chance))
	}
	if f.MinDO != nil {
		add("min_do_mg_per_l", p.oneDecimal(f.MinDO.Median)+"\u00a0mg/L")
	}
	add("limit_mg_per_l", p.oneDecimal(f.Limit)+"\u00a0mg/L")
	add("our_mg_per_l_h", quantity.MilligramsPerLitreHour(f.State.Uptake.Median).Speak(p.Reader))
	add("kla20_per_h", quantity.PerHour(f.State.KLa20.Median).Speak(p.Reader))
	add("ready", p.Say("web.batch.ready", "chance", p.Chance(f.Ready.Chance)))
}

func (v *batchView) charts(p *page, twin *holding.Twin, now time.Time) {
	f := twin.Forecast
	c := oxygenCourse{start: twin.Subject.Start.In(now.Location()), now: twin.Hour(), limit: f.Limit, rows: f.Course, hold: twin.Holds()}
	if n := len(f.Course); n > 0 {
		c.end = f.Course[n-1].Hour
	}
	for _, reading := range twin.Oxygen() {
		do := reading.MgPerL
		c.readings = append(c.readings, readingMark{hour: reading.Hour, do: &do, temp: reading.Water, doubted: reading.Doubted})
	}
	for _, e := range twin.Log.Events {
		c.events = append(c.events, eventMark{e.Hour, eventIcon(e.What), choiceWord(p, "event", string(e.What))})
	}
	if f.MinDO != nil && f.MinHour != nil {
		c.lowest = &lowestMark{f.MinHour.Median, f.MinDO.Median, p.Say("web.chart.lowest", "do", p.oneDecimal(f.MinDO.Median), "clock", p.Clock(around(twin.At(f.MinHour.Median).In(now.Location()))))}
	}
	v.Chart = drawOxygen(p, c)
	v.Chart.Right = p.Say("web.chart.made", "clock", p.Clock(now))
	v.Chart.Spoken = v.Sentence
	v.Water = drawTemperature(p, c)
}

func eventIcon(kind forecast.EventKind) string {
	switch kind {
	case forecast.FoodIn:
		return "food"
	case forecast.WaterIn:
		return "tap"
	case forecast.AirOff:
		return "no"
	}
	return "air"
}

func (v *batchView) tables(p *page, twin *holding.Twin, now time.Time) {
	all := twin.Oxygen()
	for i := len(all) - 1; i >= 0; i-- {
		o := all[i]
		at := o.At.In(now.Location())
		row := readingRow{Clock: p.Clock(at), Day: p.Date(at), DO: p.oneDecimal(o.MgPerL) + "\u00a0mg/L", Doubted: o.Doubted}
		if o.Water != nil {
			row.Temp = quantity.Celsius(*o.Water).Speak(p.Reader)
		}
		v.Readings = append(v.Readings, row)
		if len(v.Readings) == 60 {
			break
		}
	}
	for _, item := range twin.Subject.Recipe.Items {
		row := itemRow{Name: item.Item.Ingredient.Name, When: choiceWord(p, "when", item.Item.When.String())}
		row.Metric = item.Mass.Speak(wording.Reader{Language: p.Language, Units: wording.Metric})
		row.US = item.Mass.Speak(wording.Reader{Language: p.Language, Units: wording.US})
		v.Recipe = append(v.Recipe, row)
	}
}

// whatIfs are the changes a person could make, each with its own chance.
func (v *batchView) whatIfs(p *page, twin *holding.Twin, chosen string) {
	f := twin.Forecast
	if f.Chance == nil {
		return
	}
	shown := *f.Chance
	v.Whatif = append(v.Whatif, whatIf{Name: p.Say("web.what.as-is"), Chance: wording.InHundred(*f.Chance).Speak(p.Reader), Now: chosen == ""})
	for _, a := range twin.Answer.Actions {
		what := string(a.What)
		v.Whatif = append(v.Whatif, whatIf{Name: choiceWord(p, "action", what), More: a.Text.For(p.Reader), Chance: wording.InHundred(a.Chance).Speak(p.Reader), Query: what, Now: chosen == what})
		if chosen == what {
			shown = a.Chance
		}
	}
	n := int(math.Round(shown))
	hundred := &hundredView{Spoken: p.Say("web.what.of-100", "n", n, "limit", p.oneDecimal(f.Limit)), Marks: make([]bool, 100)}
	for i := range n {
		hundred.Marks[i] = true
	}
	v.Hundred = hundred
}
