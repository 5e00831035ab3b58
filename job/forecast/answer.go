package forecast

import (
	"math"
	"time"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// Answer is a forecast as programs read it: the keys of the published form, in
// their order.
type Answer struct {
	Batch          string       `json:"batch"`
	Now            string       `json:"now"`
	HoursRun       float64      `json:"hours_run"`
	ReadingsUsed   int          `json:"readings_used"`
	Doubted        []DoubtedRow `json:"readings_doubted"`
	State          StateRow     `json:"state"`
	Course         []CourseRow  `json:"course"`
	MinDO          *Band        `json:"min_do_mg_per_l"`
	MinAt          *TimeRange   `json:"min_at"`
	Chance         *float64     `json:"chance_below_limit"`
	Limit          float64      `json:"limit_mg_per_l"`
	BelowAt        *string      `json:"below_at"`
	Ready          ReadyRow     `json:"ready"`
	UseBy          UseByRow     `json:"use_by"`
	Why            WhyRow       `json:"why"`
	Actions        []ActionRow  `json:"actions"`
	NextReadingAt  *string      `json:"next_reading_at"`
	NextReadingWhy wording.Text `json:"next_reading_why"`
	Meter          MeterRow     `json:"meter"`
	WhatIf         *WhatIfRow   `json:"what_if"`
	FoundOff       *FoundOffRow `json:"found_off,omitempty"` // only where it was
	Overflow       *OverflowRow `json:"overflow,omitempty"`  // only where foam was measured twice
}

// FoundOffRow is a stretch in which the air stopped unseen, and the ways on.
type FoundOffRow struct {
	From  string         `json:"from"`
	Until string         `json:"until"`
	Under Range          `json:"hours_below_limit"`
	Text  wording.Text   `json:"text"`
	Ways  []wording.Text `json:"ways"`
}

// OverflowRow is when foam reaches the rim.
type OverflowRow struct {
	At   string       `json:"at"`
	Low  string       `json:"low"`
	High *string      `json:"high"` // null: it may also stop
	Text wording.Text `json:"text"`
}

// WhatIfRow is the changed future with what it changes.
type WhatIfRow struct {
	Answer
	Text       wording.Text  `json:"text"`
	Difference DifferenceRow `json:"difference"`
}

// DifferenceRow is what the change is worth: of the medians of the lowest
// oxygen and of the chances.
type DifferenceRow struct {
	MinDO  *float64 `json:"min_do"`
	Chance *float64 `json:"chance"`
}

// DoubtedRow is a reading that is not believed.
type DoubtedRow struct {
	At   string       `json:"at"`
	What string       `json:"what"`
	Why  wording.Text `json:"why"`
}

// StateRow is the batch now.
type StateRow struct {
	DO         Band    `json:"do_mg_per_l"`
	Saturation float64 `json:"saturation_mg_per_l"`
	Water      Band    `json:"temp_c"`
	Uptake     Band    `json:"our_mg_per_l_h"`
	KLa20      Band    `json:"kla20_per_h"`
	FoodLeft   Band    `json:"food_left_percent"`
	Bacteria   Band    `json:"bacteria_mg_cod_per_l"`
	Fungi      Band    `json:"fungi_mg_cod_per_l"`
}

// CourseRow is one hour of the course.
type CourseRow struct {
	At     string `json:"at"`
	DO     Band   `json:"do_mg_per_l"`
	Water  Band   `json:"temp_c"`
	Uptake Band   `json:"our_mg_per_l_h"`
}

// TimeRange is a Range of hours as times.
type TimeRange struct {
	Median string `json:"median"`
	Low80  string `json:"low80"`
	High80 string `json:"high80"`
}

// ReadyRow is whether the brew is past its highest uptake.
type ReadyRow struct {
	Chance float64    `json:"chance_now"`
	At     *TimeRange `json:"at"`
}

// UseByRow is how long the tea lasts if the air stops now.
type UseByRow struct {
	At struct {
		Median string `json:"median"`
		Low80  string `json:"low80"`
	} `json:"at"`
	Minutes struct {
		Median float64 `json:"median"`
		Low80  float64 `json:"low80"`
	} `json:"minutes"`
}

// WhyRow says what takes the oxygen down.
type WhyRow struct {
	Text   wording.Text `json:"text"`
	Driver Driver       `json:"driver"`
}

// ActionRow is one thing that could be done.
type ActionRow struct {
	What   ActionKind   `json:"what"`
	Text   wording.Text `json:"text"`
	Chance float64      `json:"chance_after"`
	MinDO  float64      `json:"min_do_after_mg_per_l"`
}

// MeterRow is what the readings say about the meter.
type MeterRow struct {
	Bias    Band         `json:"bias_mg_per_l"`
	Suspect bool         `json:"suspect"`
	Text    wording.Text `json:"text"`
}

// Telling is what an Answer needs beside the forecast: the batch's name, its
// clock, the level at which tea is no longer used, what the rig has.
type Telling struct {
	Batch     string
	Start     time.Time
	Zone      *time.Location
	UseByDO   quantity.Concentration // 0 takes 2 mg/L
	SparePump bool
	NoMeter   bool
	WhatIf    *Scenario
}

// Answer puts a forecast into the published form.
func (f *Forecast) Answer(t Telling) *Answer {
	if t.UseByDO == 0 {
		t.UseByDO = quantity.MilligramsPerLitre(2)
	}
	if t.Zone == nil {
		t.Zone = time.UTC
	}
	a := f.answer(t)
	if t.WhatIf == nil {
		return a
	}
	other := f.If(*t.WhatIf)
	w := &WhatIfRow{Answer: *other.answer(t), Text: f.whatIfText(*t.WhatIf)}
	if f.Chance != nil && other.Chance != nil {
		low, chance := other.MinDO.Median-f.MinDO.Median, *other.Chance-*f.Chance
		w.Difference = DifferenceRow{MinDO: &low, Chance: &chance}
	}
	a.WhatIf = w
	return a
}

// clock gives the moment of an hour, to the second.
func (t Telling) clock(hour float64) time.Time {
	return t.Start.Add(time.Duration(math.Round(hour*3600)) * time.Second).In(t.Zone)
}

func (t Telling) at(hour float64) string { return t.clock(hour).Format(time.RFC3339) }

func (t Telling) rangeAt(r Range) *TimeRange {
	return &TimeRange{Median: t.at(r.Median), Low80: t.at(r.Low80), High80: t.at(r.High80)}
}

func (f *Forecast) answer(t Telling) *Answer {
	s := f.State
	a := &Answer{
		Batch: t.Batch, Now: t.at(s.Hour), HoursRun: s.Hour, ReadingsUsed: f.Used, Doubted: f.doubtedRows(t),
		State: StateRow{s.DO, s.Saturation, s.Water, s.Uptake, s.KLa20, s.FoodLeft, s.Bacteria, s.Fungi},
		MinDO: f.MinDO, Chance: f.Chance, Limit: f.Limit,
		Ready: ReadyRow{Chance: f.Ready.Chance},
		Meter: MeterRow{Bias: s.MeterBias, Suspect: f.MeterSuspect(), Text: f.meterText(t)},
	}
	a.Course = make([]CourseRow, len(f.Course))
	for i, m := range f.Course {
		a.Course[i] = CourseRow{At: t.at(m.Hour), DO: m.DO, Water: m.Water, Uptake: m.Uptake}
	}
	if f.MinHour != nil {
		a.MinAt = t.rangeAt(*f.MinHour)
	}
	if f.BelowAt != nil {
		below := t.at(*f.BelowAt)
		a.BelowAt = &below
	}
	if f.Ready.Hour != nil {
		a.Ready.At = &TimeRange{Median: t.at(*f.Ready.Hour), Low80: t.at(f.Ready.Range.Low80), High80: t.at(f.Ready.Range.High80)}
	}
	f.useByRow(a, t)
	f.reasons(a, t)
	f.foundOffRow(a, t)
	f.overflowRow(a, t)
	return a
}

func (f *Forecast) useByRow(a *Answer, t Telling) {
	use := f.UseBy(t.UseByDO).Hours
	a.UseBy.At.Median, a.UseBy.At.Low80 = t.at(f.State.Hour+use.Median), t.at(f.State.Hour+use.Low80)
	a.UseBy.Minutes.Median, a.UseBy.Minutes.Low80 = 60*use.Median, 60*use.Low80
}

func (f *Forecast) reasons(a *Answer, t Telling) {
	why := f.Why()
	a.Why = WhyRow{Text: f.whyText(why, t), Driver: why.Driver}
	a.Actions = []ActionRow{}
	for _, x := range f.Actions(t.SparePump) {
		a.Actions = append(a.Actions, ActionRow{What: x.What, Text: x.text(), Chance: x.Chance, MinDO: x.MinDO})
	}
	next := f.NextReading()
	if next.Hour != nil {
		at := t.at(*next.Hour)
		a.NextReadingAt = &at
	}
	a.NextReadingWhy = f.nextText(next, t)
}

func (f *Forecast) doubtedRows(t Telling) []DoubtedRow {
	rows := []DoubtedRow{}
	readings := f.question.readings()
	for _, d := range f.Doubted {
		if d.Reading < len(readings) {
			r := readings[d.Reading]
			rows = append(rows, DoubtedRow{At: t.at(r.Hour), What: r.column(d.Why), Why: d.text()})
		}
	}
	return rows
}

// column is the column of a reading that a doubt is about.
func (r *Reading) column(why Doubt) string {
	switch {
	case why == BadThermo:
		return "temp_c"
	case r.DO != nil:
		return "do_mg_per_l"
	}
	return "percent_saturation"
}
