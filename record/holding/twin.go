package holding

import (
	"cmp"
	"context"
	"encoding/json"
	"slices"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/journal"
)

// Twin is the forecast of a batch from all that is written down about it.
type Twin struct {
	Subject  *forecast.Subject
	Log      forecast.Log
	Forecast *forecast.Forecast
	Answer   *forecast.Answer
	Meter    bool            // false: the holding has no oxygen meter
	Full     quantity.Volume // of the vessel
	Now      time.Time

	arrival int64
}

// freshFor is how long a forecast is shown again before it is made anew where
// nothing was written down meanwhile.
const freshFor = 2 * time.Minute

// lookAhead is how far a twin looks where nobody says.
const lookAhead = 24

// Twin makes the forecast of a batch, or hands out the one made a moment ago.
// It is made once per entry and kept, not once per page.
func (h *Holding) Twin(ctx context.Context, name string, now time.Time) (*Twin, error) {
	h.mu.Lock()
	kept, arrival := h.twins[name], h.arrival
	h.mu.Unlock()
	if kept != nil && kept.arrival == arrival && !now.Before(kept.Now) && now.Sub(kept.Now) < freshFor {
		return kept, nil
	}
	made, err := h.makeTwin(ctx, name, now)
	if err != nil {
		return nil, err
	}
	made.arrival = arrival
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.twins == nil {
		h.twins = map[string]*Twin{}
	}
	h.twins[name] = made
	return made, nil
}

func (h *Holding) makeTwin(ctx context.Context, name string, now time.Time) (*Twin, error) {
	file, err := h.File(jobfile.Whole)
	if err != nil {
		return nil, err
	}
	subject, err := forecast.Of(file, name)
	if err != nil {
		return nil, err
	}
	log, err := h.logOf(ctx, name, subject.Start)
	if err != nil {
		return nil, err
	}
	question := forecast.Question{
		Setup: subject.Setup, Log: log, Larder: subject.Larder, Airflow: subject.Air.Airflow,
		Now: max(0, now.Sub(subject.Start).Hours()), Hours: lookAhead, Seed: 1,
	}
	made, err := forecast.Run(question)
	if err != nil {
		return nil, err
	}
	t := &Twin{Subject: subject, Log: log, Forecast: made, Now: now, Meter: file.Holding.OxygenMeter || file.Holding.MeterUnknown}
	if b, known := file.Batch(name); known {
		if v, known := file.Vessel(b.Vessel); known {
			t.Full = v.Full
		}
	}
	t.Answer = made.Answer(forecast.Telling{
		Batch: name, Start: subject.Start, Zone: subject.Zone, UseByDO: file.Limits.UseByDO,
		SparePump: len(file.Pumps) > len(file.Vessels), NoMeter: !t.Meter,
	})
	return t, nil
}

// logOf is what was written down about a batch, as the forecast reads it:
// entries that another one corrects are left out.
func (h *Holding) logOf(ctx context.Context, name string, start time.Time) (forecast.Log, error) {
	kept, err := h.journal.List(ctx, journal.Wanted{Subject: "batch:" + name, Kinds: []string{journal.Reading, journal.Series, journal.Event}})
	if err != nil {
		return forecast.Log{}, err
	}
	var log forecast.Log
	for _, e := range kept {
		if e.ReplacedBy == nil {
			takeEntry(&log, e.Entry, start)
		}
	}
	slices.SortStableFunc(log.Readings, func(a, b forecast.Reading) int { return cmp.Compare(a.Hour, b.Hour) })
	slices.SortStableFunc(log.Events, func(a, b forecast.Event) int { return cmp.Compare(a.Hour, b.Hour) })
	return log, nil
}

func takeEntry(log *forecast.Log, e journal.Entry, start time.Time) {
	switch e.Kind {
	case journal.Reading:
		takeReading(log, e.At, e.Body, start)
	case journal.Series:
		rows, _ := journal.Rows(e.Body) // checked when it came in
		for _, row := range rows {
			var at struct {
				At string `json:"at"`
			}
			_ = json.Unmarshal(row, &at)
			takeReading(log, at.At, row, start)
		}
	case journal.Event:
		var body struct {
			Event string `json:"event"`
		}
		_ = json.Unmarshal(e.Body, &body)
		if event, wrong := forecast.ParseEvent(body.Event); wrong == nil {
			event.Hour = hourOf(e.At, start)
			log.Events = append(log.Events, event)
		}
	}
}

// measuredBody is a reading as entries write it.
type measuredBody struct {
	DO      *float64       `json:"do_mg_per_l"`
	Percent *float64       `json:"percent_saturation"`
	Water   *float64       `json:"temp_c"`
	EC      *float64       `json:"ec_us_per_cm"`
	PH      *float64       `json:"ph"`
	Count   *float64       `json:"bacteria_per_ml"`
	Smell   forecast.Smell `json:"smell"`
	ToRim   *float64       `json:"to_rim_cm"`
}

func takeReading(log *forecast.Log, at string, body json.RawMessage, start time.Time) {
	var m measuredBody
	if json.Unmarshal(body, &m) != nil {
		return
	}
	hour := hourOf(at, start)
	if hour < 0 {
		log.Before++
		return
	}
	log.Readings = append(log.Readings, forecast.Reading{
		Hour: hour, DO: m.DO, Percent: m.Percent, Water: m.Water, EC: m.EC, PH: m.PH, Count: m.Count, Smell: m.Smell, ToRim: m.ToRim,
	})
}

func hourOf(at string, start time.Time) float64 {
	t, err := time.Parse(time.RFC3339, at)
	if err != nil {
		return -1
	}
	return t.Sub(start).Hours()
}

// Hour is how long the batch has run.
func (t *Twin) Hour() float64 { return t.Forecast.State.Hour }

// At is the moment of an hour of the batch.
func (t *Twin) At(hour float64) time.Time {
	return t.Subject.Start.Add(time.Duration(hour * float64(time.Hour)))
}

// Oxygen is a reading of oxygen, with what is thought of it.
type Oxygen struct {
	At      time.Time
	Hour    float64
	MgPerL  float64
	Water   *float64
	Doubted bool
}

// Oxygen lists the readings of oxygen; percent of saturation is told as mg/L
// at what the water holds now.
func (t *Twin) Oxygen() []Oxygen {
	doubted := map[int]bool{}
	for _, d := range t.Forecast.Doubted {
		doubted[d.Reading] = true
	}
	var all []Oxygen
	for i, r := range t.Log.Readings {
		o := Oxygen{At: t.At(r.Hour), Hour: r.Hour, Water: r.Water, Doubted: doubted[i]}
		switch {
		case r.DO != nil:
			o.MgPerL = *r.DO
		case r.Percent != nil:
			o.MgPerL = *r.Percent / 100 * t.Forecast.State.Saturation
		default:
			continue
		}
		all = append(all, o)
	}
	return all
}

// Holds is what the water can hold at each moment of the course, mg/L.
func (t *Twin) Holds() []float64 {
	held := make([]float64, len(t.Forecast.Course))
	for i, m := range t.Forecast.Course {
		held[i] = t.Subject.Setup.SaturationAt(quantity.Celsius(m.Water.Median)).MilligramsPerLitre()
	}
	return held
}
