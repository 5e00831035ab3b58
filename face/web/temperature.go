package web

import (
	"fmt"
	"math"
	"strings"

	"aerosteep/job/forecast"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// drawTemperature lays out the chart of the water's temperature under the one
// of oxygen; both share the hours.
func drawTemperature(p *page, c oxygenCourse) *chartView {
	inUnit := func(celsius float64) float64 {
		if p.Units == wording.US {
			return quantity.Celsius(celsius).Fahrenheit()
		}
		return celsius
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, r := range c.rows {
		low, high = math.Min(low, inUnit(r.Water.Low80)), math.Max(high, inUnit(r.Water.High80))
	}
	for _, r := range c.readings {
		if r.temp != nil {
			low, high = math.Min(low, inUnit(*r.temp)), math.Max(high, inUnit(*r.temp))
		}
	}
	if !(high >= low) {
		return nil
	}
	f := plane{scale{0, math.Max(c.end, 1), 1000}, scale{math.Floor(low - 1), math.Ceil(high + 1), 400}}
	view := &chartView{Title: p.Say("web.chart.temperature", "unit", temperatureUnit(p))}
	for _, t := range ticks(f.y.low, f.y.high) {
		view.Grid = append(view.Grid, fmt.Sprintf("%.1f", 400-f.y.at(t)))
		view.YLabels = append(view.YLabels, label{p.At(f.top(t)), wording.Number(t, 3, p.Reader)})
	}
	view.nights(c, f)
	ahead := c.ahead()
	xs := hoursOf(ahead)
	water := func(read func(forecast.Band) float64) []float64 {
		values := make([]float64, len(ahead))
		for i, r := range ahead {
			values[i] = inUnit(read(r.Water))
		}
		return values
	}
	view.Shapes = append(view.Shapes,
		shape{Class: "temp-fan", Path: bandPath(xs, water(func(b forecast.Band) float64 { return b.Low80 }), water(func(b forecast.Band) float64 { return b.High80 }), f.x, f.y)},
		shape{Class: "temp", Path: linePath(xs, water(func(b forecast.Band) float64 { return b.Median }), f.x, f.y)})
	var squares strings.Builder
	for _, r := range c.readings {
		if r.temp != nil {
			squares.WriteString(dot(f.point(r.hour, inUnit(*r.temp))))
		}
	}
	view.Shapes = append(view.Shapes, shape{Class: "square", Path: squares.String()})
	if c.now >= 0 {
		view.Shapes = append(view.Shapes, shape{Class: "now", Path: fmt.Sprintf("M%.1f 0V400", f.x.at(c.now))})
	}
	view.XLabels = c.hourLabels(p, f)
	view.Spoken = view.Title
	return view
}

func temperatureUnit(p *page) string {
	if p.Units == wording.US {
		return "°F"
	}
	return "°C"
}
