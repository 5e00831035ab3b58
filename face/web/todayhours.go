package web

import (
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/science/weather"
)

// todayHours is when spraying suits in the next hours.
type todayHours struct {
	Say   string
	Strip *strip
}

// hoursOnToday is how far Today looks ahead.
const hoursOnToday = 36

// sprayingToday draws the next hours where the weather is known and somebody
// wants tea on something.
func (s *Site) sprayingToday(p *page, file *jobfile.File, now time.Time) *todayHours {
	sky := s.sky()
	if sky == nil || file == nil {
		return nil
	}
	method := wantedMethod(file)
	hours := ahead(weather.Score(sky.Forecast, skyQuestion(sky, s.siteOf(p), method)), now)
	if len(hours) == 0 {
		return nil
	}
	f := stripFrame{p, now.Truncate(time.Hour), hoursOnToday, method}
	drawn := f.draw(hours, true)
	drawn.Spoken = p.Say("web.hours.strip.spoken.today")
	if tea := f.tea(s.planOf(file, p.Reader, now)); len(tea.Bars) > 0 {
		drawn.Rows = append(drawn.Rows, tea)
	}
	return &todayHours{Say: p.hoursSentence(hours, method, now), Strip: drawn}
}

// wantedMethod is drench where nothing else is wanted; leaves mind more.
func wantedMethod(file *jobfile.File) weather.Method {
	for i := range file.Wants {
		if file.Wants[i].Method != string(weather.Drench) {
			return weather.Foliar
		}
	}
	if len(file.Wants) == 0 {
		return weather.Foliar
	}
	return weather.Drench
}

// tea is the row of when planned batches are ready and fit to use.
func (f stripFrame) tea(made *plan.Plan) stripRow {
	row := stripRow{Name: f.p.Say("web.hours.tea"), Class: "tea"}
	for _, b := range made.Batches {
		if !b.UseBy.After(f.start) || !b.ReadyAt.Before(f.end()) {
			continue
		}
		bar := stripBar{Class: f.at(b.ReadyAt, b.UseBy)}
		if fits(b.ID, b.UseBy.Sub(b.ReadyAt).Hours()/f.hours) {
			bar.Word = b.ID
		}
		row.Bars = append(row.Bars, bar)
	}
	return row
}
