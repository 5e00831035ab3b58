package recipe

import (
	"time"

	"aerosteep/job/bench"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/table"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var compostHeat = worksheet.Sheet{
	Name:  "compost-heat",
	Group: worksheet.Recipe,
	Inputs: []worksheet.Input{
		{Flag: "file", Kind: worksheet.File, Argument: true, Required: true},
		{Flag: "method", Kind: worksheet.Choice, Choices: bench.Methods, Required: true},
		{Flag: "cn", Kind: worksheet.Bare, Low: "5", High: "200", Unknown: true},
		{Flag: "cured", Kind: worksheet.Choice, Choices: []string{"yes", "no"}, Unknown: true},
		{Flag: "max-gap", Kind: worksheet.LongSpan, Low: "1 h", High: "14 d", Default: "36 h"},
		{Flag: "skip-bad", Kind: worksheet.Switch},
	},
	Example: "examples/heap.csv --method static-pile --cn 28",
	Sources: []source.Source{source.CFR7Part205, source.CFR21Part112},
	Shape:   heatData{},
	Run:     runHeat,
}

type heatData struct {
	Method         string         `json:"method"`
	Meets          bool           `json:"meets"`
	Hours          float64        `json:"hours_at_temperature"`
	LongestRun     float64        `json:"longest_run_h"`
	HoursNeeded    float64        `json:"hours_needed"`
	Turnings       int            `json:"turnings"`
	TurningsNeeded int            `json:"turnings_needed"`
	AboveLimit     float64        `json:"hours_above_limit"`
	Points         []heatPoint    `json:"points"`
	Gaps           []heatGap      `json:"gaps"`
	Lacking        []wording.Text `json:"lacking"`
	NOP            heatRule       `json:"nop"`
	FDA            heatRule       `json:"fda_b"`
}

type heatPoint struct {
	Point      *string `json:"point"`
	Hours      float64 `json:"hours_at_temperature"`
	LongestRun float64 `json:"longest_run_h"`
	Highest    float64 `json:"highest_c"`
}

type heatGap struct {
	From float64 `json:"from_hour"`
	To   float64 `json:"to_hour"`
}

type heatRule struct {
	Meets        string   `json:"meets"`
	Lacking      []string `json:"lacking"`
	Missing      []string `json:"missing"`
	Rule         string   `json:"rule"`
	HoursCounted float64  `json:"hours_counted"`
}

func runHeat(f *worksheet.Form) (*worksheet.Result, error) {
	r := &worksheet.Result{Basis: worksheet.Standard, Sources: []source.Source{source.CFR7Part205, source.CFR21Part112}}
	log, err := readHeatLog(f, r)
	if err != nil {
		return nil, err
	}
	method := bench.Method(f.Text("method"))
	heat, facts := log.Judge(), heatFacts(f)
	nop, fda := heat.NOP(method, facts), heat.FDA(method, facts)
	data := heatData{
		Method: string(method), Meets: heat.Meets(method), Hours: heat.AtTemperature.Hours(), LongestRun: heat.LongestRun.Hours(),
		HoursNeeded: method.HoursNeeded(), Turnings: heat.Turnings, TurningsNeeded: method.TurningsNeeded(), AboveLimit: heat.AboveLimit.Hours(),
		Gaps: []heatGap{}, NOP: heatJudgement(nop), FDA: heatJudgement(fda),
	}
	for _, p := range heat.Probes {
		data.Points = append(data.Points, heatPoint{named(p.Name), p.AtTemperature.Hours(), p.LongestRun.Hours(), p.Highest.Celsius()})
	}
	for _, g := range heat.Gaps {
		data.Gaps = append(data.Gaps, heatGap{g.From, g.To})
	}
	data.Lacking = lackingSentences(data, nop, fda)
	r.Answer = heatAnswer(data)
	r.Data, r.Plot = data, heatPlot(log)
	r.Caution("recipe.heat.law")
	if heat.AboveLimit > 0 {
		r.Caution("recipe.heat.too-hot", wording.Places{"time": heat.AboveLimit})
	}
	return r, nil
}

func named(name string) *string {
	if name == "" {
		return nil
	}
	return &name
}

func heatFacts(f *worksheet.Form) bench.Facts {
	var facts bench.Facts
	if f.Has("cn") {
		facts.Ratio = worksheet.Some(f.Number("cn"))
	}
	if f.Has("cured") {
		facts.Cured = worksheet.Some(f.Text("cured") == "yes")
	}
	return facts
}

func heatJudgement(j bench.Judgement) heatRule {
	return heatRule{string(j.Meets), j.Lacking, j.Missing, j.Rule, j.HoursCounted.Hours()}
}

// lackingSentences says each thing that is lacking once, in words.
func lackingSentences(d heatData, judgements ...bench.Judgement) []wording.Text {
	sentences := []wording.Text{}
	seen := map[string]bool{}
	for _, j := range judgements {
		for _, word := range j.Lacking {
			if seen[word] {
				continue
			}
			seen[word] = true
			sentences = append(sentences, wording.Say("recipe.heat.lacking."+word, wording.Places{
				"needed": d.HoursNeeded, "has": j.HoursCounted.Hours(), "turnings": d.Turnings, "turnings-needed": d.TurningsNeeded,
			}))
		}
	}
	return sentences
}

func heatAnswer(d heatData) wording.Text {
	places := wording.Places{"hours": d.Hours, "needed": d.HoursNeeded, "turnings": d.Turnings}
	if d.Meets {
		return wording.Say("recipe.heat.meets", places)
	}
	return wording.Say("recipe.heat.meets-not", places)
}

// The temperatures that a thermometer in a heap can show.
const (
	coldest = -40.0
	hottest = 110.0
)

// logReader gathers the rows of a log into its probes.
type logReader struct {
	log        bench.HeatLog
	at         map[string]int // index of a probe by its name
	hour, temp string         // the columns in use
	start      *time.Time
	zoneless   bool
}

func readHeatLog(f *worksheet.Form, r *worksheet.Result) (bench.HeatLog, error) {
	t, err := table.Open(f.FileName("file"), []byte(f.Text("file")), "hour", "at", "temp_c", "temp_f", "turned", "point")
	if err != nil {
		return bench.HeatLog{}, err
	}
	l := logReader{log: bench.HeatLog{MaxGap: f.Span("max-gap")}, at: map[string]int{}}
	if l.hour, err = t.OneOf("hour", "at"); err != nil {
		return bench.HeatLog{}, err
	}
	if l.temp, err = t.OneOf("temp_c", "temp_f"); err != nil {
		return bench.HeatLog{}, err
	}
	skipped, err := t.Each(f.On("skip-bad"), l.take)
	if err != nil {
		return bench.HeatLog{}, err
	}
	r.NoteRows(t, skipped)
	if l.zoneless {
		r.Caution("recipe.heat.no-zone")
	}
	if len(l.log.Probes) == 0 {
		return bench.HeatLog{}, f.Advise("file", "recipe.heat.no-reading", "recipe.heat.no-reading.advice")
	}
	return l.log, nil
}

func (l *logReader) take(row table.Row) error {
	hour, err := l.hourOf(row)
	if err != nil {
		return err
	}
	turned, err := turnedIn(row)
	if err != nil {
		return err
	}
	if !row.Blank(l.temp) {
		if err := l.read(row, hour); err != nil {
			return err
		}
	}
	if turned {
		l.log.Turned = append(l.log.Turned, hour)
	}
	return nil
}

// hourOf is the hour of a row; with times it counts from the first row. A time
// without an offset is taken as it stands, which is said.
func (l *logReader) hourOf(row table.Row) (float64, error) {
	if l.hour == "hour" {
		const aYearOrSo = 20000
		return row.Within("hour", 0, aYearOrSo)
	}
	at, err := row.Moment("at", nil)
	if err != nil {
		if at, err = row.Moment("at", time.UTC); err != nil {
			return 0, err
		}
		l.zoneless = true
	}
	if l.start == nil {
		l.start = &at
	}
	return at.Sub(*l.start).Hours(), nil
}

func turnedIn(row table.Row) (bool, error) {
	switch row.Text("turned") {
	case "", "0":
		return false, nil
	case "1":
		return true, nil
	}
	return false, row.Wrong("turned", wording.Say("recipe.heat.turned"), wording.Say("recipe.heat.turned.allowed"))
}

func (l *logReader) read(row table.Row, hour float64) error {
	v, err := row.Number(l.temp)
	if err != nil {
		return err
	}
	t := quantity.Celsius(v)
	if l.temp == "temp_f" {
		t = quantity.Fahrenheit(v)
	}
	if c := t.Celsius(); c < coldest || c > hottest {
		wrong := row.Wrong(l.temp, wording.Say("recipe.heat.outside"), wording.Say("recipe.heat.outside.allowed"))
		wrong.Advice = wording.Say("recipe.heat.outside.advice")
		return wrong
	}
	probe := l.probe(row.Text("point"))
	if n := len(probe.Readings); n > 0 && hour <= probe.Readings[n-1].Hour {
		return row.Wrong(l.hour, wording.Say("recipe.heat.order"), wording.Say("recipe.heat.order.allowed"))
	}
	probe.Readings = append(probe.Readings, bench.Reading{Hour: hour, Temperature: t})
	return nil
}

func (l *logReader) probe(name string) *bench.Probe {
	at, known := l.at[name]
	if !known {
		at = len(l.log.Probes)
		l.at[name] = at
		l.log.Probes = append(l.log.Probes, bench.Probe{Name: name})
	}
	return &l.log.Probes[at]
}

func heatPlot(log bench.HeatLog) *worksheet.Plot {
	plot := &worksheet.Plot{
		Title: wording.Say("recipe.heat.plot"),
		X:     worksheet.Axis{Label: wording.Say("recipe.heat.hour"), Unit: "h"},
		Y:     worksheet.Axis{Label: wording.Say("recipe.heat.temperature"), Unit: "°C"},
	}
	last := 0.0
	for _, p := range log.Probes {
		s := worksheet.Series{Label: wording.Verbatim(p.Name), Kind: "line"}
		for _, r := range p.Readings {
			s.X, s.Y = append(s.X, r.Hour), append(s.Y, r.Temperature.Celsius())
			last = max(last, r.Hour)
		}
		plot.Series = append(plot.Series, s)
	}
	low, high := float64(bench.Hot), float64(bench.TooHot)
	plot.Series = append(plot.Series, worksheet.Series{Label: wording.Say("recipe.heat.band"), Kind: "band", X: []float64{0, last}, Low: []float64{low, low}, High: []float64{high, high}})
	return plot
}
