//go:build js && wasm

package main

import (
	"encoding/base64"
	"encoding/json"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/wording"
)

// planned is what a page shows of a plan made on the phone: each batch with its
// steps, what cannot be served, and what is wrong with the job file.
type planned struct {
	Batches  []plannedBatch `json:"batches"`
	Unmet    []string       `json:"unmet"`
	Problems []string       `json:"problems"`
}

type plannedBatch struct {
	Name  string        `json:"name"`
	Line  string        `json:"line"`
	Steps []plannedStep `json:"steps"`
}

type plannedStep struct {
	At   string `json:"at"`
	Text string `json:"text"`
}

// planHere plans a job file on the phone, with the server's digits. The zone of
// the holding travels with its data, in base64.
func planHere(text, now, language, units, zone, zoneData string) string {
	if data, err := base64.StdEncoding.DecodeString(zoneData); err == nil && zone != "" {
		if known, err := time.LoadLocationFromTZData(zone, data); err == nil {
			jobfile.KnowZone(known)
		}
	}
	reader := wording.Reader{Language: wording.Language(language), Units: wording.Units(units)}
	out, _ := json.Marshal(planOf(text, now, reader)) // nothing in it can fail
	return string(out)
}

func planOf(text, now string, reader wording.Reader) planned {
	told := planned{Batches: []plannedBatch{}, Unmet: []string{}, Problems: []string{}}
	file, problems := jobfile.Read([]byte(text), "job.toml", jobfile.Whole)
	for _, f := range problems {
		told.Problems = append(told.Problems, wording.Say("web.plan.problem-line", wording.Places{"line": f.Line, "field": f.Field, "what": f.What}).For(reader))
	}
	at, err := time.Parse(time.RFC3339, now)
	if file == nil || len(problems) > 0 || err != nil {
		return told
	}
	made := plan.Make(plan.Input{File: file, Now: at, Reader: reader})
	for _, b := range made.Batches {
		batch := plannedBatch{Name: b.ID, Line: wording.Say("web.plan.batch-line", wording.Places{"recipe": b.Recipe, "vessel": b.Vessel, "chance": wording.Chance(b.Forecast.Chance)}).For(reader)}
		for _, s := range b.Steps {
			batch.Steps = append(batch.Steps, plannedStep{plan.Clock(s.At.In(file.Holding.Zone)).Speak(reader), s.Text})
		}
		told.Batches = append(told.Batches, batch)
	}
	for _, u := range made.Unmet {
		told.Unmet = append(told.Unmet, u.Bed+": "+u.Reason+" "+u.Nearest)
	}
	return told
}
