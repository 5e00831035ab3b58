package holding

import (
	"context"
	"encoding/json"
	"time"

	"aerosteep/job/application"
	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/journal"
)

// measured is the body of a reading, or one row of a series.
type measured struct {
	At      string   `json:"at"`   // of a row
	Hour    *float64 `json:"hour"` // of a row, since the start
	DO      *float64 `json:"do_mg_per_l"`
	Percent *float64 `json:"percent_saturation"`
	Water   *float64 `json:"temp_c"`
	EC      *float64 `json:"ec_us_per_cm"`
	PH      *float64 `json:"ph"`
	Count   *float64 `json:"bacteria_per_ml"`
	Smell   string   `json:"smell"`
	ToRim   *float64 `json:"to_rim_cm"`
	Event   string   `json:"event"`
	In      string   `json:"in"` // "tank": of what travels, not of the vessel
}

// inTank marks a reading of the tank on the road.
const inTank = "tank"

// InTank are the readings of oxygen in the tank that a batch travels in.
func (h *Holding) InTank(ctx context.Context, batch string, since time.Time) ([]application.InTank, error) {
	entries, err := h.Entries(ctx, batch, since)
	if err != nil {
		return nil, err
	}
	var readings []application.InTank
	for _, k := range entries {
		var m measured
		if k.ReplacedBy == nil && k.Kind == journal.Reading && json.Unmarshal(k.Body, &m) == nil && m.In == inTank && m.DO != nil {
			readings = append(readings, application.InTank{At: k.Time(), Oxygen: quantity.MilligramsPerLitre(*m.DO)})
		}
	}
	return readings, nil
}

// BrewLog is what was written down about a batch since its start, as a
// forecast reads it. Entries that another replaced are left out; words that
// mean nothing to a forecast as well.
func (h *Holding) BrewLog(ctx context.Context, batch string, start time.Time) (forecast.Log, error) {
	entries, err := h.Entries(ctx, batch, start)
	if err != nil {
		return forecast.Log{}, err
	}
	log := forecast.Log{}
	for _, k := range entries {
		if k.ReplacedBy != nil {
			continue
		}
		switch k.Kind {
		case journal.Reading, journal.Event, journal.Count:
			var m measured
			if json.Unmarshal(k.Body, &m) == nil && m.In != inTank {
				m.add(&log, k.Time().Sub(start).Hours())
			}
		case journal.Series:
			addSeries(&log, k, start)
		}
	}
	log.Order()
	return log, nil
}

func addSeries(log *forecast.Log, k journal.Kept, start time.Time) {
	var body struct {
		Rows []measured `json:"rows"`
	}
	if json.Unmarshal(k.Body, &body) != nil {
		return
	}
	for _, m := range body.Rows {
		switch at, err := time.Parse(time.RFC3339, m.At); {
		case err == nil:
			m.add(log, at.Sub(start).Hours())
		case m.Hour != nil:
			m.add(log, *m.Hour)
		}
	}
}

func (m *measured) add(log *forecast.Log, hour float64) {
	if hour < 0 {
		return
	}
	if m.Event != "" {
		if e, wrong := forecast.ParseEvent(m.Event); wrong == nil {
			e.Hour = hour
			log.Events = append(log.Events, e)
		}
	}
	r := forecast.Reading{
		Hour: hour, DO: m.DO, Percent: m.Percent, Water: m.Water, EC: m.EC, PH: m.PH, Count: m.Count,
		Smell: forecast.Smell(m.Smell), ToRim: m.ToRim,
	}
	if !r.Empty() {
		log.Readings = append(log.Readings, r)
	}
}

// Asked is what is asked of a forecast beside the batch's name.
type Asked struct {
	Now     time.Time
	Hours   float64
	Members int
	Seed    uint64
}

// Forecast makes the forecast of a batch from everything the holding knows of
// it, with what is needed to put it into words.
func (h *Holding) Forecast(ctx context.Context, batch string, asked Asked) (*forecast.Forecast, *forecast.Subject, forecast.Telling, error) {
	none := forecast.Telling{}
	file, err := h.File(jobfile.Whole)
	if err != nil {
		return nil, nil, none, err
	}
	subject, err := forecast.Of(file, batch)
	if err != nil {
		return nil, nil, none, err
	}
	log, err := h.BrewLog(ctx, batch, subject.Start)
	if err != nil {
		return nil, nil, none, err
	}
	if subject.Setup.Learned, err = h.learned(ctx, batch); err != nil {
		return nil, nil, none, err
	}
	made, err := forecast.Run(subject.Question(log, asked.Now, asked.Hours, asked.Members, asked.Seed))
	if err != nil {
		return nil, nil, none, err
	}
	return made, subject, subject.Telling(file), nil
}
