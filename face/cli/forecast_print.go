package cli

import (
	"fmt"
	"io"
	"math"
	"strings"

	"aerosteep/job/forecast"
	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// printForecast prints a forecast for a person: the sentence, why, the
// figures, a picture, what could be done.
func (p *program) printForecast(f *forecast.Forecast, a *forecast.Answer, t forecast.Telling, r wording.Reader) {
	fmt.Fprintln(p.Out, wrap(f.Sentence(t).For(r), columns, ""))
	fmt.Fprintln(p.Out, wrap(a.Why.Text.For(r), columns, ""))
	printHappenings(p.Out, a, r)
	printLines(p.Out, forecastLines(f, a, r))
	plotOxygen(p.Out, f, a, r)
	printActions(p.Out, a, r)
	printDoubted(p.Out, a, r)
	if a.WhatIf != nil {
		printWhatIf(p.Out, a, r)
	}
}

// printHappenings tells of air that was found off, and of foam near the rim.
func printHappenings(w io.Writer, a *forecast.Answer, r wording.Reader) {
	if a.Overflow != nil {
		fmt.Fprintln(w, wrap(a.Overflow.Text.For(r), columns, ""))
	}
	if a.FoundOff == nil {
		return
	}
	fmt.Fprintln(w, wrap(a.FoundOff.Text.For(r), columns, ""))
	for _, way := range a.FoundOff.Ways {
		fmt.Fprintln(w, "- "+strings.TrimLeft(wrap(way.For(r), columns-2, "  "), " "))
	}
}

func forecastLines(f *forecast.Forecast, a *forecast.Answer, r wording.Reader) []worksheet.Line {
	say := func(key string) string { return wording.Say(key).For(r) }
	oxygen := func(b forecast.Band) string { return rangeText(b, 1, "mg/L", r) }
	lines := []worksheet.Line{{Label: say("forecast.row.now"), Value: oxygen(a.State.DO)}}
	if a.MinDO != nil {
		lines = append(lines,
			worksheet.Line{Label: say("forecast.row.lowest"), Value: oxygen(*a.MinDO)},
			worksheet.Line{Label: say("forecast.row.chance"), Value: wording.Say("forecast.in-hundred", wording.Places{"chance": wording.InHundred(*a.Chance)}).For(r)})
	}
	water := quantity.Celsius(a.State.Water.Median)
	lines = append(lines,
		worksheet.Line{Label: say("forecast.row.water"), Value: water.Speak(r)},
		worksheet.Line{Label: say("forecast.row.uptake"), Value: rangeText(a.State.Uptake, 1, "mg/L/h", r)},
		worksheet.Line{Label: say("forecast.row.ready"), Value: wording.Say("forecast.in-hundred", wording.Places{"chance": wording.InHundred(a.Ready.Chance)}).For(r)},
		worksheet.Line{Label: say("forecast.row.use-by"), Value: wording.Say("forecast.minutes", wording.Places{
			"minutes": int(a.UseBy.Minutes.Median), "low": int(a.UseBy.Minutes.Low80)}).For(r)},
		worksheet.Line{Label: say("forecast.row.next"), Value: a.NextReadingWhy.For(r)},
	)
	return lines
}

func rangeText(b forecast.Band, decimals int, unit string, r wording.Reader) string {
	return wording.Say("forecast.range", wording.Places{
		"median": wording.Fixed(b.Median, decimals, r) + "\u00a0" + unit,
		"low":    wording.Fixed(b.Low80, decimals, r), "high": wording.Fixed(b.High80, decimals, r),
	}).For(r)
}

func printActions(w io.Writer, a *forecast.Answer, r wording.Reader) {
	if len(a.Actions) == 0 {
		return
	}
	fmt.Fprintf(w, "\n%s\n", wording.Say("forecast.done.title").For(r))
	for _, x := range a.Actions {
		fmt.Fprintln(w, "- "+strings.TrimLeft(wrap(x.Text.For(r), columns-2, "  "), " "))
	}
}

func printDoubted(w io.Writer, a *forecast.Answer, r wording.Reader) {
	if len(a.Doubted) == 0 {
		return
	}
	fmt.Fprintf(w, "\n%s\n", wording.Say("forecast.doubt.title").For(r))
	for _, d := range a.Doubted {
		fmt.Fprintln(w, "- "+strings.TrimLeft(wrap(d.At+": "+d.Why.For(r), columns-2, "  "), " "))
	}
}

func printWhatIf(w io.Writer, a *forecast.Answer, r wording.Reader) {
	fmt.Fprintf(w, "\n%s: %s\n", wording.Say("forecast.what-if").For(r), a.WhatIf.Text.For(r))
	if a.WhatIf.Chance == nil || a.WhatIf.Difference.Chance == nil {
		return
	}
	change := int(math.Round(*a.WhatIf.Difference.Chance))
	fmt.Fprintln(w, wrap(wording.Say("forecast.same-places", wording.Places{
		"chance": wording.InHundred(*a.WhatIf.Chance), "change": signed(change, r),
		"low": wording.Fixed(a.WhatIf.MinDO.Median, 1, r) + "\u00a0mg/L",
	}).For(r), columns, "  "))
}

func signed(n int, r wording.Reader) string {
	if n > 0 {
		return "+" + wording.Whole(n, r)
	}
	return wording.Whole(n, r)
}

// The picture in the terminal.
const (
	plotWidth  = 60
	plotHeight = 12
)

// plotOxygen draws the course of oxygen: the median, the range that holds 80
// in 100, and the limit.
func plotOxygen(w io.Writer, f *forecast.Forecast, a *forecast.Answer, r wording.Reader) {
	course := f.Course
	if len(course) < 2 {
		return
	}
	top := a.Limit
	for _, m := range course {
		top = math.Max(top, m.DO.High80)
	}
	top = math.Ceil(top)
	grid := make([][]rune, plotHeight)
	for i := range grid {
		grid[i] = []rune(strings.Repeat(" ", plotWidth))
	}
	row := func(v float64) int {
		return min(plotHeight-1, max(0, int(math.Round((1-v/top)*(plotHeight-1)))))
	}
	first, last := course[0].Hour, course[len(course)-1].Hour
	for x := range plotWidth {
		grid[row(a.Limit)][x] = '·'
		hour := first + (last-first)*float64(x)/(plotWidth-1)
		m := nearestMoment(course, hour)
		for y := row(m.DO.High80); y <= row(m.DO.Low80); y++ {
			grid[y][x] = '─'
		}
		grid[row(m.DO.Median)][x] = '•'
	}
	fmt.Fprintf(w, "\n%s\n", wording.Say("forecast.plot.title").For(r))
	for i, line := range grid {
		fmt.Fprintf(w, "%5s │%s\n", wording.Fixed(top*(1-float64(i)/(plotHeight-1)), 1, r), strings.TrimRight(string(line), " "))
	}
	fmt.Fprintf(w, "%5s └%s\n", "", strings.Repeat("─", plotWidth))
	left, right := wording.Fixed(first, 0, r)+" h", wording.Fixed(last, 0, r)+" h"
	fmt.Fprintf(w, "%7s%s%s%s\n", "", left, strings.Repeat(" ", plotWidth-len(left)-len(right)), right)
}

func nearestMoment(course []forecast.Moment, hour float64) forecast.Moment {
	best := course[0]
	for _, m := range course {
		if math.Abs(m.Hour-hour) < math.Abs(best.Hour-hour) {
			best = m
		}
	}
	return best
}
