package main

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strconv"

	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/science/weather"
)

// brew is one brew with its truth.
type brew struct {
	Name    string
	Meta    meta
	Subject *forecast.Subject
	Log     forecast.Log
	Truth   []truth
}

// meta is what the brew's maker knows.
type meta struct {
	Batch   string  `json:"batch"`
	Kind    string  `json:"kind"`
	Limit   float64 `json:"limit_mg_per_l"`
	Planned float64 `json:"planned_hours"`
	Ask     []struct {
		Hour float64 `json:"hour"`
		Why  string  `json:"why"`
	} `json:"ask"`
	Meter struct {
		Bias  float64 `json:"bias"`
		Drift float64 `json:"drift_per_h"`
	} `json:"meter"`
	Wrong []struct {
		Hour float64 `json:"hour"`
		What string  `json:"what"`
	} `json:"wrong"`
	Failures []struct {
		Start  float64 `json:"start"`
		End    float64 `json:"end"`
		Left   float64 `json:"air_left"`
		Logged bool    `json:"logged"`
	} `json:"failures"`
	Unforeseen []float64 `json:"unforeseen"`
	Peak       struct {
		Hour float64 `json:"hour"`
	} `json:"peak_our"`
}

type truth struct{ hour, oxygen, water, uptake float64 }

func readBrew(folder string) (*brew, error) {
	b := &brew{Name: filepath.Base(folder)}
	text, err := os.ReadFile(filepath.Join(folder, "meta.json"))
	if err != nil {
		return nil, err
	}
	if err := json.Unmarshal(text, &b.Meta); err != nil {
		return nil, err
	}
	if err := b.readJob(folder); err != nil {
		return nil, err
	}
	return b, b.readTruth(folder)
}

func (b *brew) readJob(folder string) error {
	text, err := os.ReadFile(filepath.Join(folder, "job.toml"))
	if err != nil {
		return err
	}
	file, faults := jobfile.Read(text, "job.toml", jobfile.Whole)
	if len(faults) > 0 {
		return faults
	}
	if b.Subject, err = forecast.Of(file, b.Meta.Batch); err != nil {
		return err
	}
	if text, err = os.ReadFile(filepath.Join(folder, "weather.csv")); err != nil {
		return err
	}
	sky, _, _, err := weather.ReadCSV("weather.csv", text, weather.CSVReading{OnlyAir: true, Zone: b.Subject.Zone})
	if err != nil {
		return err
	}
	b.Subject.UnderSky(sky)
	if text, err = os.ReadFile(filepath.Join(folder, "readings.csv")); err != nil {
		return err
	}
	b.Log, err = forecast.ReadLog("readings.csv", text, forecast.LogReading{Start: b.Subject.Start, Zone: b.Subject.Zone})
	return err
}

func (b *brew) readTruth(folder string) error {
	file, err := os.Open(filepath.Join(folder, "truth.csv"))
	if err != nil {
		return err
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return err
	}
	for _, r := range records[1:] {
		var v [4]float64
		for i := range v {
			if v[i], err = strconv.ParseFloat(r[i], 64); err != nil {
				return err
			}
		}
		b.Truth = append(b.Truth, truth{v[0], v[1], v[2], v[3]})
	}
	return nil
}

// oxygenAt is the true oxygen at an hour, linear between the rows; NaN beyond.
func (b *brew) oxygenAt(hour float64) float64 {
	for i := 1; i < len(b.Truth); i++ {
		p, q := b.Truth[i-1], b.Truth[i]
		if q.hour >= hour-1e-9 {
			return p.oxygen + (q.oxygen-p.oxygen)*(hour-p.hour)/(q.hour-p.hour)
		}
	}
	return math.NaN()
}

// lowest is the true minimum between two hours.
func (b *brew) lowest(from, to float64) float64 {
	low := math.Min(b.oxygenAt(from), b.oxygenAt(to))
	for _, t := range b.Truth {
		if t.hour >= from && t.hour <= to {
			low = math.Min(low, t.oxygen)
		}
	}
	return low
}

// unforeseen tells whether something happens between two hours that nobody
// could know.
func (b *brew) unforeseen(from, to float64) bool {
	for _, u := range b.Meta.Unforeseen {
		if u > from && u <= to {
			return true
		}
	}
	return false
}

// ask makes the forecast that a grower would have had at an hour.
func (b *brew) ask(hour float64, readings bool, o options) (*forecast.Forecast, error) {
	hours := math.Min(24, math.Floor(b.Meta.Planned-hour))
	q := forecast.Question{
		Setup: b.Subject.Setup, Larder: b.Subject.Larder, Airflow: b.Subject.Air.Airflow,
		Now: hour, Hours: math.Max(0, hours), Members: o.members, Seed: o.seed,
	}
	if readings {
		q.Log = b.Log
	} else {
		q.Hours = b.Meta.Planned
	}
	return forecast.Run(q)
}
