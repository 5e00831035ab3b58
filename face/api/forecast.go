package api

import (
	"context"
	"errors"
	"net/http"
	"strconv"

	"aerosteep/fault"
	"aerosteep/job/forecast"
	"aerosteep/job/jobfile"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// forecast answers what a batch of the holding will do, as the verb does.
func (a *API) forecast(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	if err := a.holding.Refresh(r.Context()); err != nil {
		a.refuse(w, r, http.StatusServiceUnavailable, err)
		return
	}
	if a.holding.KnowsBatch(name) != nil {
		var known []string
		for _, b := range a.holding.Batches() {
			known = append(known, b.Name)
		}
		a.refuse(w, r, http.StatusNotFound, noSuch("batch", name, known))
		return
	}
	answer, err := a.forecastOf(r, name)
	if err != nil {
		a.refuse(w, r, http.StatusUnprocessableEntity, err)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	_, _ = w.Write(append(answer, '\n'))
}

func (a *API) forecastOf(r *http.Request, name string) ([]byte, error) {
	file, err := a.holding.File(jobfile.Whole)
	if err != nil {
		return nil, err
	}
	subject, err := forecast.Of(file, name)
	if err != nil {
		return nil, err
	}
	question, telling, err := a.question(r, file, subject)
	if err != nil {
		return nil, err
	}
	made, err := forecast.Run(question)
	if err != nil {
		return nil, err
	}
	return worksheet.Envelope(made.Answer(telling), forecast.Sources(), subject.Cautions(&question), a.reader(r, file.Holding.Reader))
}

// question reads the flags of the verb from the address.
func (a *API) question(r *http.Request, file *jobfile.File, subject *forecast.Subject) (forecast.Question, forecast.Telling, error) {
	telling := subject.Telling(file)
	now, errNow := a.moment(r, "now", file.Holding.Zone)
	hours, errHours := bare(r, "hours", 24, 1, 96)
	members, errMembers := bare(r, "members", 2000, 100, 20000)
	seed, errSeed := bare(r, "seed", 1, 0, 1<<53)
	if err := errors.Join(errNow, errHours, errMembers, errSeed); err != nil {
		return forecast.Question{}, telling, err
	}
	if text := r.URL.Query().Get("what-if"); text != "" {
		scenario, err := forecast.ParseScenario(text)
		if err != nil {
			return forecast.Question{}, telling, err
		}
		telling.WhatIf = &scenario
	}
	log, err := a.log(r.Context(), subject)
	if err != nil {
		return forecast.Question{}, telling, err
	}
	return subject.Question(log, now, hours, int(members), uint64(seed)), telling, nil
}

func (a *API) log(ctx context.Context, subject *forecast.Subject) (forecast.Log, error) {
	return a.holding.BrewLog(ctx, subject.Name, subject.Start)
}

// bare reads a number of the address.
func bare(r *http.Request, name string, standard, low, high float64) (float64, error) {
	text := r.URL.Query().Get(name)
	if text == "" {
		return standard, nil
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v >= low && v <= high) {
		return 0, fault.New(name, text, wording.Say("forecast.ask.outside"), wording.Say("forecast.ask.allowed", wording.Places{"low": low, "high": high}), wording.Text{})
	}
	return v, nil
}
