package api

import (
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// How this face refuses: the same object as the command line prints, with a
// status that says whose turn it is. 400 the text cannot be read at all, 422 a
// value in it is wrong, 503 the server could not.

// refusal is the body of every answer that is not a success.
type refusal struct {
	Error    refusedFirst `json:"error"`
	Problems []problem    `json:"problems,omitempty"`
}

// refusedFirst is the first fault, with the others beside it.
type refusedFirst struct {
	fault.Report
	Also []fault.Report `json:"also,omitempty"`
}

// problem is one problem of a job file.
type problem struct {
	Line    int     `json:"line"`
	Key     string  `json:"key"`
	What    string  `json:"what"`
	Given   string  `json:"given"`
	Allowed string  `json:"allowed"`
	Nearest *string `json:"nearest"`
	Advice  string  `json:"advice"`
}

// refuse answers with an error: the faults in it, or that the server could not
// do it.
func (a *API) refuse(w http.ResponseWriter, r *http.Request, status int, err error) {
	reader := a.reader(r, a.spoken())
	faults := fault.Of(err)
	var body refusal
	switch {
	case len(faults) > 0:
		body.Error.Report = faults[0].For(reader)
		for _, f := range faults[1:] {
			body.Error.Also = append(body.Error.Also, f.For(reader))
		}
	default:
		status = http.StatusServiceUnavailable
		body.Error.What, body.Error.Advice = told(err, reader)
		a.report(r.Method+" "+r.URL.Path, err)
	}
	a.write(w, status, body)
}

// spoken is the reader of refusals: the holding's language.
func (a *API) spoken() wording.Reader {
	if a.holding == nil {
		return typed
	}
	return a.holding.Reader()
}

// told is a trouble in words; what a person can do nothing about is not shown.
func told(err error, r wording.Reader) (what, advice string) {
	var trouble interface {
		Say() (what, advice wording.Text)
	}
	if errors.As(err, &trouble) {
		what, advice := trouble.Say()
		return what.For(r), advice.For(r)
	}
	return wording.Say("api.trouble").For(r), wording.Say("api.trouble.advice").For(r)
}

// write answers with an object.
func (a *API) write(w http.ResponseWriter, status int, value any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	_ = encoder.Encode(value) // a client that went away needs no answer
}

// body reads what was sent, or refuses it as too long.
func (a *API) body(w http.ResponseWriter, r *http.Request) ([]byte, bool) {
	text, err := io.ReadAll(r.Body)
	var tooLong *http.MaxBytesError
	switch {
	case errors.As(err, &tooLong):
		a.refuse(w, r, http.StatusRequestEntityTooLarge, said("body", "", "api.too-long"))
	case err != nil:
		a.refuse(w, r, http.StatusBadRequest, said("body", "", "api.cut-short"))
	default:
		return text, true
	}
	return nil, false
}

// said is a fault whose sentences are key, key.allowed and key.advice.
func said(field, given, key string, places ...wording.Places) *fault.Fault {
	say := func(part string) wording.Text {
		if !wording.Known(key + part) {
			return wording.Text{}
		}
		return wording.Say(key+part, append(places, wording.Places{"given": given})...)
	}
	return fault.New(field, given, say(""), say(".allowed"), say(".advice"))
}

// noSuch is a name that nothing here has, with the nearest that something has.
func noSuch(field, given string, known []string) *fault.Fault {
	f := said(field, given, "api.no-such."+field, wording.Places{"known": strings.Join(known, ", ")})
	if f.Nearest = fault.Nearest(given, known); f.Nearest != "" {
		f.Advice = wording.Say("worksheet.nearest", wording.Places{"nearest": f.Nearest})
	}
	return f
}

func wrongMethod(given, allowed string) *fault.Fault {
	return said("method", given, "api.method", wording.Places{"allowed": allowed})
}
