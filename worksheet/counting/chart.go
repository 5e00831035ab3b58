package counting

import (
	"math"
	"strings"

	"aerosteep/science/counting"
	"aerosteep/source"
	"aerosteep/table"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var controlChart = worksheet.Sheet{
	Name:  "control-chart",
	Group: worksheet.Counting,
	Inputs: []worksheet.Input{
		{Flag: "file", Kind: worksheet.File, Argument: true, Required: true},
		{Flag: "column", Kind: worksheet.Text, Default: "value"},
		{Flag: "log10", Kind: worksheet.Switch},
		{Flag: "baseline", Kind: worksheet.Whole, Low: "5"},
		{Flag: "method", Kind: worksheet.Choice, Choices: []string{"individuals", "ewma"}, Default: "individuals"},
		{Flag: "rules", Kind: worksheet.Choice, Choices: []string{"basic", "all"}, Default: "basic"},
		{Flag: "lambda", Kind: worksheet.Bare, Low: "0", Over: true, High: "1", Default: "0.3"},
		{Flag: "limit-width", Kind: worksheet.Bare, Low: "0", Over: true, High: "10", Default: "3"},
		{Flag: "target", Kind: worksheet.Bare},
		{Flag: "sigma", Kind: worksheet.Bare, Low: "0", Over: true},
		{Flag: "skip-bad", Kind: worksheet.Switch},
	},
	Example: "examples/batches.csv --column log10_bacteria",
	Sources: []source.Source{source.NISTHandbook},
	Shape:   chartData{},
	Run:     runChart,
}

type chartData struct {
	Method           string        `json:"method"`
	Scale            string        `json:"scale"`
	Values           int           `json:"values"`
	Baseline         int           `json:"baseline"`
	Mean             float64       `json:"mean"`
	Centre           float64       `json:"centre"`
	MeanMovingRange  float64       `json:"mean_moving_range"`
	Sigma            float64       `json:"sigma"`
	Lower            float64       `json:"lower"`
	Upper            float64       `json:"upper"`
	MovingRangeUpper float64       `json:"moving_range_upper"`
	Points           []chartPoint  `json:"points"`
	Signals          []chartSignal `json:"signals"`
}

type chartPoint struct {
	Index int     `json:"index"`
	Label *string `json:"label"`
	EWMA  float64 `json:"ewma"`
	Lower float64 `json:"lower"`
	Upper float64 `json:"upper"`
}

type chartSignal struct {
	Rule  string  `json:"rule"`
	Index int     `json:"index"`
	Label *string `json:"label"`
	Value float64 `json:"value"`
}

// series is the values of a file with the labels of their batches.
type series struct {
	values []float64
	labels []*string
}

// The fewest values a chart is drawn from, and the fewest that make its limits
// mean much (common practice: one point a batch, 15 to 20 batches).
const (
	fewestValues  = 5
	enoughForBase = 15
)

func runChart(f *worksheet.Form) (*worksheet.Result, error) {
	if err := methodFlags(f); err != nil {
		return nil, err
	}
	r := &worksheet.Result{Basis: worksheet.Standard, Sources: []source.Source{source.NISTHandbook}}
	s, err := readSeries(f, r)
	if err != nil {
		return nil, err
	}
	if len(s.values) < fewestValues {
		return nil, f.Advise("file", "counting.chart.few", "counting.chart.few.advice", wording.Places{"n": len(s.values)})
	}
	baseline := len(s.values)
	if f.Has("baseline") {
		if baseline = f.Int("baseline"); baseline > len(s.values) {
			return nil, f.Refuse("baseline", "counting.chart.baseline", wording.Places{"n": len(s.values)})
		}
	}
	chart := draw(f, s.values, baseline)
	data := chartResult(f, chart, s, baseline)
	r.Data, r.Plot = data, chartPlot(chart, s)
	r.Answer = chartAnswer(data)
	cautionChart(f, r, baseline)
	return r, nil
}

// methodFlags refuses the flags of the other method.
func methodFlags(f *worksheet.Form) error {
	if f.Text("method") == "ewma" {
		return f.OnlyWith("--method ewma", nil, "rules")
	}
	return f.OnlyWith("--method individuals", nil, "lambda", "limit-width", "target", "sigma")
}

func readSeries(f *worksheet.Form, r *worksheet.Result) (series, error) {
	column := strings.ToLower(strings.TrimSpace(f.Text("column")))
	t, err := table.Open(f.FileName("file"), []byte(f.Text("file")), column, "batch", "at")
	if err != nil {
		return series{}, err
	}
	if err := t.Require(column); err != nil {
		return series{}, err
	}
	var s series
	skipped, err := t.Each(f.On("skip-bad"), func(row table.Row) error {
		if row.Blank(column) {
			return nil
		}
		v, err := row.Number(column)
		if err != nil {
			return err
		}
		if f.On("log10") {
			if v <= 0 {
				return row.Wrong(column, wording.Say("counting.chart.log-zero"), wording.Say("counting.chart.log-zero.allowed"))
			}
			v = math.Log10(v)
		}
		s.values, s.labels = append(s.values, v), append(s.labels, label(row, column))
		return nil
	})
	r.NoteRows(t, skipped)
	return s, err
}

// label names the batch of a row by its batch, else by its time.
func label(row table.Row, column string) *string {
	for _, name := range []string{"batch", "at"} {
		if text := row.Text(name); name != column && text != "" {
			return &text
		}
	}
	return nil
}

func draw(f *worksheet.Form, values []float64, baseline int) counting.Chart {
	if f.Text("method") == "individuals" {
		rules := counting.BasicRules
		if f.Text("rules") == "all" {
			rules = counting.AllRules
		}
		return counting.Individuals(values, baseline, rules)
	}
	b := counting.BaselineOf(values[:baseline])
	centre, sigma := b.Mean, b.Sigma()
	if f.Has("target") {
		centre = f.Number("target")
	}
	if f.Has("sigma") {
		sigma = f.Number("sigma")
	}
	return counting.EWMA(values, b, centre, sigma, f.Number("lambda"), f.Number("limit-width"))
}

func chartResult(f *worksheet.Form, c counting.Chart, s series, baseline int) chartData {
	d := chartData{
		Method: f.Text("method"), Scale: "as-measured", Values: len(s.values), Baseline: baseline, Mean: c.Baseline.Mean, Centre: c.Centre,
		MeanMovingRange: c.Baseline.MeanRange, Sigma: c.Sigma, Lower: c.Lower, Upper: c.Upper, MovingRangeUpper: c.Baseline.RangeUpper(),
		Points: []chartPoint{}, Signals: []chartSignal{},
	}
	if f.On("log10") {
		d.Scale = "log10"
	}
	for i, p := range c.Points {
		d.Points = append(d.Points, chartPoint{i + 1, s.labels[i], p.Average, p.Lower, p.Upper})
	}
	for _, signal := range c.Signals {
		at := signal.Index - 1
		d.Signals = append(d.Signals, chartSignal{string(signal.Rule), signal.Index, s.labels[at], s.values[at]})
	}
	return d
}

func chartAnswer(d chartData) wording.Text {
	if len(d.Signals) == 0 {
		return wording.Say("counting.chart.calm", wording.Places{"n": d.Values, "lower": d.Lower, "upper": d.Upper})
	}
	first := d.Signals[0]
	return wording.Say("counting.chart.signals", wording.Places{
		"signals": len(d.Signals), "index": first.Index, "rule": wording.Say("value." + first.Rule), "lower": d.Lower, "upper": d.Upper,
	})
}

func cautionChart(f *worksheet.Form, r *worksheet.Result, baseline int) {
	if baseline < enoughForBase {
		r.Caution("counting.chart.short", wording.Places{"n": baseline})
	}
	if f.Text("rules") == "all" {
		r.Caution("counting.chart.all-rules")
	}
}

func chartPlot(c counting.Chart, s series) *worksheet.Plot {
	at := make([]float64, len(s.values))
	lower, upper := make([]float64, len(at)), make([]float64, len(at))
	averages := make([]float64, len(c.Points))
	for i := range at {
		at[i], lower[i], upper[i] = float64(i+1), c.Lower, c.Upper
	}
	for i, p := range c.Points {
		averages[i], lower[i], upper[i] = p.Average, p.Lower, p.Upper
	}
	plot := &worksheet.Plot{
		Title: wording.Say("counting.chart.plot"),
		X:     worksheet.Axis{Label: wording.Say("counting.chart.batch")}, Y: worksheet.Axis{Label: wording.Say("key.value")},
		Series: []worksheet.Series{
			{Label: wording.Say("counting.chart.limits"), Kind: "band", X: at, Low: lower, High: upper},
			{Label: wording.Say("counting.chart.values"), Kind: "points", X: at, Y: s.values},
		},
	}
	if len(averages) > 0 {
		plot.Series = append(plot.Series, worksheet.Series{Label: wording.Say("key.ewma"), Kind: "line", X: at, Y: averages})
	}
	for _, signal := range c.Signals {
		plot.Marks = append(plot.Marks, worksheet.Mark{X: float64(signal.Index), Y: s.values[signal.Index-1], Label: wording.Say("value." + string(signal.Rule))})
	}
	return plot
}
