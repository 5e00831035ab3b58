package api

import (
	"bytes"
	"net/http"
	"time"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/record/report"
	"aerosteep/wording"
)

// plan takes a job file, as TOML or JSON, and answers as the verb does.
func (a *API) plan(w http.ResponseWriter, r *http.Request) {
	text, ok := a.body(w, r)
	if !ok {
		return
	}
	name := "job.toml"
	if bytes.HasPrefix(bytes.TrimLeft(text, "\ufeff \t\r\n"), []byte("{")) {
		name = "job.json"
	}
	file, problems := jobfile.Read(text, name, jobfile.Whole)
	if len(problems) > 0 {
		a.refuseFile(w, r, problems, jobfile.ReaderOf(text, name))
		return
	}
	now, wrong := a.moment(r, "now", file.Holding.Zone)
	if wrong != nil {
		a.refuse(w, r, http.StatusUnprocessableEntity, wrong)
		return
	}
	reader := a.reader(r, file.Holding.Reader)
	answer, err := report.PlanJSON(plan.Make(plan.Input{File: file, Now: now, Reader: reader}), reader)
	if err != nil {
		a.refuse(w, r, http.StatusServiceUnavailable, err)
		return
	}
	w.Header().Set("Content-Type", "application/json")
	_, _ = w.Write(append(answer, '\n'))
}

// moment is the time that the address asks for, or the clock's.
func (a *API) moment(r *http.Request, name string, zone *time.Location) (time.Time, error) {
	text := r.URL.Query().Get(name)
	if text == "" {
		return a.now().Truncate(time.Second).In(zone), nil
	}
	at, wrong := jobfile.Moment(text, zone)
	if wrong != nil {
		wrong.Field, wrong.Given = name, text
		return at, wrong
	}
	return at, nil
}

// refuseFile answers with all problems of a job file. One that is not TOML or
// JSON at all cannot be read (400), any other has wrong values (422).
func (a *API) refuseFile(w http.ResponseWriter, r *http.Request, problems fault.List, reader wording.Reader) {
	reader = a.reader(r, reader)
	body := refusal{Error: refusedFirst{Report: problems[0].For(reader)}, Problems: []problem{}}
	for _, f := range problems {
		said := f.For(reader)
		body.Problems = append(body.Problems, problem{said.Line, said.Field, said.What, said.Given, said.Allowed, said.Nearest, said.Advice})
	}
	status := http.StatusUnprocessableEntity
	if len(problems) == 1 && problems[0].Field == "file" {
		status = http.StatusBadRequest
	}
	a.write(w, status, body)
}
