package holding

import (
	"context"
	"time"

	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/quantity"
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
	Telling  forecast.Telling

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
	made, subject, telling, err := h.Forecast(ctx, name, Asked{Now: now, Hours: lookAhead, Seed: 1})
	if err != nil {
		return nil, err
	}
	log, err := h.BrewLog(ctx, name, subject.Start)
	if err != nil {
		return nil, err
	}
	t := &Twin{Subject: subject, Log: log, Forecast: made, Now: now, Meter: !telling.NoMeter, Answer: made.Answer(telling), Telling: telling}
	if file, err := h.File(jobfile.Whole); err == nil {
		if b, known := file.Batch(name); known {
			v, _ := file.Vessel(b.Vessel)
			t.Full = v.Full
		}
	}
	return t, nil
}

// Carried is what a phone needs to make the forecast anew without signal.
func (t *Twin) Carried() forecast.Carried {
	return forecast.Carry(t.Subject.Question(t.Log, t.Now, lookAhead, 0, 1), t.Telling)
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
