package web

import (
	"fmt"
	"math"
	"strings"

	"aerosteep/wording"
	"aerosteep/worksheet"
)

// plotView is a worksheet's plot as a template draws it: shapes in a field of
// 1000 by 400 that stretches, words placed over it that do not.
type plotView struct {
	Title, Spoken string
	Grid          []string
	Shapes, Key   []shape
	YLabels       []label
	XLabels       []label
	Marks         []label
}

type shape struct{ Class, Path, Text string }

type label struct{ Class, Text string }

// scale maps a span of values onto the field.
type scale struct{ low, high, size float64 }

func (s scale) at(v float64) float64 { return (v - s.low) / (s.high - s.low) * s.size }

// drawPlot lays out a plot.
func drawPlot(p *page, plot *worksheet.Plot) *plotView {
	x, y := span(plot.Series, seriesX), span(plot.Series, seriesY)
	x.size, y.size = 1000, 400
	yTicks, xTicks := ticks(y.low, y.high), ticks(x.low, x.high)
	if len(yTicks) > 1 {
		y.low, y.high = math.Min(y.low, yTicks[0]), math.Max(y.high, yTicks[len(yTicks)-1])
	}
	view := &plotView{Title: plot.Title.For(p.Reader)}
	view.axes(p, plot, x, y, xTicks, yTicks)
	for i, s := range plot.Series {
		view.series(p, s, i, x, y)
	}
	for _, m := range plot.Marks {
		view.Marks = append(view.Marks, label{p.At(fmt.Sprintf("left:%.2f%%;top:%.2f%%", x.at(m.X)/10, 100-y.at(m.Y)/4)), m.Label.For(p.Reader)})
		view.Shapes = append(view.Shapes, shape{Class: "ring last", Path: dot(x.at(m.X), 400-y.at(m.Y))})
	}
	view.Spoken = view.Title
	return view
}

func (v *plotView) axes(p *page, plot *worksheet.Plot, x, y scale, xTicks, yTicks []float64) {
	for _, t := range yTicks {
		v.Grid = append(v.Grid, fmt.Sprintf("%.1f", 400-y.at(t)))
		v.YLabels = append(v.YLabels, label{p.At(fmt.Sprintf("top:%.2f%%", 100-y.at(t)/4)), wording.Number(t, 4, p.Reader)})
	}
	for _, t := range xTicks {
		v.XLabels = append(v.XLabels, label{p.At(fmt.Sprintf("left:%.2f%%", x.at(t)/10)), wording.Number(t, 4, p.Reader)})
	}
	v.Title += " (" + axisName(p, plot.Y) + " / " + axisName(p, plot.X) + ")"
}

func axisName(p *page, a worksheet.Axis) string {
	if a.Unit == "" {
		return a.Label.For(p.Reader)
	}
	return a.Label.For(p.Reader) + ", " + a.Unit
}

func (v *plotView) series(p *page, s worksheet.Series, i int, x, y scale) {
	class := "line"
	if i%2 == 1 {
		class = "line second"
	}
	switch s.Kind {
	case "points":
		var path strings.Builder
		for j := range s.X {
			path.WriteString(dot(x.at(s.X[j]), 400-y.at(s.Y[j])))
		}
		v.Shapes = append(v.Shapes, shape{Class: "ring", Path: path.String()}, shape{Class: "ring-in", Path: path.String()})
		class = "ring"
	case "band":
		v.Shapes = append(v.Shapes, shape{Class: "fan f80", Path: bandPath(s.X, s.Low, s.High, x, y)})
		class = "fan-edge"
	default:
		v.Shapes = append(v.Shapes, shape{Class: class, Path: linePath(s.X, s.Y, x, y)})
	}
	if text := s.Label.For(p.Reader); text != "" {
		v.Key = append(v.Key, shape{Class: class, Text: text})
	}
}

func dot(x, y float64) string { return fmt.Sprintf("M%.1f %.1fh.01", x, y) }

func linePath(xs, ys []float64, x, y scale) string {
	var b strings.Builder
	for i := range xs {
		mark := "L"
		if i == 0 {
			mark = "M"
		}
		fmt.Fprintf(&b, "%s%.1f %.1f", mark, x.at(xs[i]), y.size-y.at(ys[i]))
	}
	return b.String()
}

// bandPath goes along the upper edge and back along the lower one.
func bandPath(xs, low, high []float64, x, y scale) string {
	back := make([]float64, 0, len(xs))
	lows := make([]float64, 0, len(xs))
	for i := len(xs) - 1; i >= 0; i-- {
		back, lows = append(back, xs[i]), append(lows, low[i])
	}
	return linePath(xs, high, x, y) + "L" + strings.TrimPrefix(linePath(back, lows, x, y), "M") + "Z"
}

func seriesX(s worksheet.Series) [][]float64 { return [][]float64{s.X} }
func seriesY(s worksheet.Series) [][]float64 { return [][]float64{s.Y, s.Low, s.High} }

func span(all []worksheet.Series, values func(worksheet.Series) [][]float64) scale {
	s := scale{low: math.Inf(1), high: math.Inf(-1)}
	for _, series := range all {
		for _, vs := range values(series) {
			for _, v := range vs {
				s.low, s.high = math.Min(s.low, v), math.Max(s.high, v)
			}
		}
	}
	if !(s.high > s.low) {
		s.low, s.high = s.low-1, s.low+1
	}
	return s
}

// ticks are at most six round values within a span.
func ticks(low, high float64) []float64 {
	step := math.Pow(10, math.Floor(math.Log10((high-low)/4)))
	for _, factor := range []float64{1, 2, 5, 10} {
		if (high-low)/(step*factor) <= 5 {
			step *= factor
			break
		}
	}
	var all []float64
	for t := math.Ceil(low/step) * step; t <= high+step*1e-9; t += step {
		all = append(all, math.Round(t/step)*step)
	}
	return all
}
