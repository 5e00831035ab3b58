package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"time"
)

// write puts the five files of a brew into a folder.
func (b *brew) write(folder string, asks []ask, seed uint64) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	meta, err := json.MarshalIndent(b.meta(asks, seed), "", " ")
	if err != nil {
		return err
	}
	for _, f := range []struct{ name, text string }{
		{"job.toml", b.plan.text()}, {"readings.csv", b.book()}, {"weather.csv", b.sky()}, {"truth.csv", b.truth()}, {"meta.json", string(meta) + "\n"},
	} {
		if err := os.WriteFile(filepath.Join(folder, f.name), []byte(f.text), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// clock is an hour of the brew as a time of day, to the full minute.
func (p *plan) clock(hour float64) string {
	return p.start.Add(time.Duration(math.Round(hour*60)) * time.Minute).Format(time.RFC3339)
}

// row is one row of the book, with its hour to sort by.
type row struct {
	hour float64
	text string
}

// book is what was written down.
func (b *brew) book() string {
	entries := b.happens.entries()
	head, tail := "at", ""
	if b.meter.kind == "logger" {
		head = "hour"
	}
	if head += ",do_mg_per_l,temp_c"; b.meter.kind == "percent" {
		head = "at,percent_saturation,temp_c"
	}
	if len(entries) > 0 {
		head, tail = head+",event,note", ",,"
	}
	var rows []row
	for _, r := range b.meter.readings {
		rows = append(rows, row{r.hour, b.when(r.hour) + "," + b.shown(r) + "," + shownWater(r.water) + tail})
	}
	for _, e := range entries {
		rows = append(rows, row{e.hour, b.when(e.hour) + ",,," + e.event + "," + e.note})
	}
	sort.SliceStable(rows, func(i, j int) bool { return rows[i].hour < rows[j].hour })
	text := head + "\n"
	for _, r := range rows {
		text += r.text + "\n"
	}
	return text
}

func (b *brew) when(hour float64) string {
	if b.meter.kind == "logger" {
		return fmt.Sprintf("%.3f", hour)
	}
	return b.plan.clock(hour)
}

func (b *brew) shown(r reading) string {
	switch {
	case b.meter.kind == "logger":
		return fmt.Sprintf("%.2f", r.shown)
	case r.percent || b.meter.wrongAt(r.hour) == "percent-as-mg":
		return fmt.Sprintf("%.0f", r.shown)
	}
	return fmt.Sprintf("%.1f", r.shown)
}

func shownWater(celsius float64) string {
	if math.IsNaN(celsius) {
		return ""
	}
	return fmt.Sprintf("%.1f", celsius)
}

// sky is the outdoor air as it was forecast.
func (b *brew) sky() string {
	var s strings.Builder
	s.WriteString("at,temp_c,rh_percent,wind_m_per_s,rain_mm,cloud_percent\n")
	for i, t := range b.weather.forecast {
		humid := math.Min(98, math.Max(25, 60-2.2*(t-mean(b.weather.forecast))+b.weather.cloud/15))
		fmt.Fprintf(&s, "%s,%.1f,%.0f,%.1f,%.1f,%.0f\n", b.plan.clock(b.weather.first+float64(i)), t, humid, b.weather.wind[i], b.weather.rain[i], b.weather.cloud)
	}
	return s.String()
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}

// truth is the course every ten minutes.
func (b *brew) truth() string {
	var s strings.Builder
	s.WriteString("hour,do_mg_per_l,temp_c,our_mg_per_l_h\n")
	for i := 0; i < len(b.course); i += 10 {
		t := b.course[i]
		fmt.Fprintf(&s, "%.3f,%.3f,%.2f,%.3f\n", float64(i)*minute, t.oxygen, t.water, t.uptake)
	}
	return s.String()
}

// failed, metered and peaked are parts of meta.json.
type failed struct {
	Start  float64 `json:"start"`
	End    float64 `json:"end"`
	Left   float64 `json:"air_left"`
	Logged bool    `json:"logged"`
}

type metered struct {
	Kind  string  `json:"kind"`
	Size  string  `json:"size"`
	Bias  float64 `json:"bias"`
	Drift float64 `json:"drift_per_h"`
	Noise float64 `json:"noise"`
	Tau   float64 `json:"tau_s"`
}

type peaked struct {
	Hour  float64 `json:"hour"`
	Value float64 `json:"value"`
}

// meta is meta.json, in the order of the examples.
type meta struct {
	Batch      string         `json:"batch"`
	StartedAt  string         `json:"started_at"`
	Life       string         `json:"life"`
	Kind       string         `json:"kind"`
	Limit      float64        `json:"limit_mg_per_l"`
	LimitInJob bool           `json:"limit_in_job"`
	Margin     float64        `json:"margin_mg_per_l"`
	Crash      *float64       `json:"crash_hour"`
	Planned    float64        `json:"planned_hours"`
	Ask        []ask          `json:"ask"`
	Meter      metered        `json:"meter"`
	Wrong      []wrongReading `json:"wrong"`
	Failures   []failed       `json:"failures"`
	Unforeseen []float64      `json:"unforeseen"`
	Event      *string        `json:"event"`
	KLaTrue    float64        `json:"kla20_true_per_h"`
	KLaSaid    float64        `json:"kla20_believed_per_h"`
	KnownBy    string         `json:"kla_known_by"`
	Altitude   float64        `json:"altitude_m"`
	Volume     float64        `json:"volume_l"`
	Compost    float64        `json:"compost_g_per_l"`
	Molasses   float64        `json:"molasses_percent_w_v"`
	Peak       peaked         `json:"peak_our"`
	FirstWater float64        `json:"first_temp_c"`
	Seed       uint64         `json:"seed"`
	Attempts   int            `json:"attempts"`
	Indoors    bool           `json:"indoors"`
}

func (b *brew) meta(asks []ask, seed uint64) meta {
	p, t := &b.plan, &b.meter
	peakHour, peak := b.peak()
	m := meta{
		Batch: p.name, StartedAt: p.start.Format(time.RFC3339), Life: b.life, Kind: b.kind,
		Limit: p.limit, LimitInJob: true, Margin: rounded3(b.margin), Planned: p.planned, Ask: asks,
		Meter: metered{t.kind, t.size, rounded4(t.bias), rounded4(t.drift), rounded4(t.noise), rounded4(t.tau)},
		Wrong: append([]wrongReading{}, t.wrong...), Failures: []failed{}, Unforeseen: b.happens.unforeseen(),
		KLaTrue: rounded3(b.air.kla20), KLaSaid: rounded3(b.believed), KnownBy: p.knownBy,
		Altitude: rounded3(p.altitude), Volume: rounded3(p.volume), Compost: rounded3(b.compost), Molasses: rounded4(p.gramsOf("molasses") / 10),
		Peak: peaked{rounded3(peakHour), rounded3(peak)}, FirstWater: rounded3(b.start[1]), Seed: seed, Attempts: b.attempts, Indoors: b.heat.indoors,
	}
	for _, f := range b.happens.failures {
		m.Failures = append(m.Failures, failed{rounded3(f.start), rounded3(f.end), f.left, f.logged})
	}
	if b.kind == "crash" {
		m.Crash = &b.crash
	}
	if b.happens.what != "" {
		m.Event = &b.happens.what
	}
	return m
}

func rounded3(v float64) float64 { return math.Round(v*1e3) / 1e3 }
func rounded4(v float64) float64 { return math.Round(v*1e4) / 1e4 }
