package api

import (
	"net/http"
	"time"

	"aerosteep/record/holding"
)

// batch is a batch as the list shows it.
type batch struct {
	Name         string   `json:"name"`
	Vessel       *string  `json:"vessel"`
	Recipe       *string  `json:"recipe"`
	VolumeL      *float64 `json:"volume_l"`
	TemperatureC *float64 `json:"temperature_c"`
	StartedAt    *string  `json:"started_at"`
	EndedAt      *string  `json:"ended_at"`
	Outcome      *string  `json:"outcome"`
	Living       bool     `json:"living"`
}

// batches lists all batches, the newest first.
func (a *API) batches(w http.ResponseWriter, r *http.Request) {
	if err := a.holding.Refresh(r.Context()); err != nil {
		a.refuse(w, r, http.StatusServiceUnavailable, err)
		return
	}
	list := []batch{}
	for _, b := range a.holding.Batches() {
		list = append(list, shown(b))
	}
	a.write(w, http.StatusOK, map[string]any{"batches": list})
}

func shown(b holding.Batch) batch {
	s := batch{Name: b.Name, Vessel: orNull(b.Vessel), Recipe: orNull(b.Recipe), Living: b.Living()}
	if b.Volume != nil {
		litres := b.Volume.Litres()
		s.VolumeL = &litres
	}
	if b.Temperature != nil {
		celsius := b.Temperature.Celsius()
		s.TemperatureC = &celsius
	}
	if b.StartedAt != nil {
		s.StartedAt = orNull(b.StartedAt.Format(time.RFC3339))
	}
	if b.Ended != nil {
		s.EndedAt, s.Outcome = orNull(b.Ended.At.Format(time.RFC3339)), orNull(b.Ended.Outcome)
	}
	return s
}

func orNull(text string) *string {
	if text == "" {
		return nil
	}
	return &text
}
