package api

import (
	"bufio"
	"bytes"
	"encoding/json"
	"net/http"
	"time"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// listed is an entry with what replaced it.
type listed struct {
	journal.Entry
	ReplacedBy *string `json:"replaced_by"`
}

// entries lists what was written down, by when it happened.
func (a *API) entries(w http.ResponseWriter, r *http.Request) {
	var since time.Time
	if text := r.URL.Query().Get("since"); text != "" {
		at, wrong := jobfile.Moment(text, a.holding.Zone(a.zone))
		if wrong != nil {
			wrong.Field, wrong.Given = "since", text
			a.refuse(w, r, http.StatusUnprocessableEntity, wrong)
			return
		}
		since = at
	}
	a.stream(w, r, journal.Wanted{Since: since})
}

// stream writes entries as they are read. What goes wrong after the first of
// them breaks the connection off: half a list must not look like a whole one.
func (a *API) stream(w http.ResponseWriter, r *http.Request, wanted journal.Wanted) {
	out := bufio.NewWriter(w)
	encoder := json.NewEncoder(out)
	encoder.SetEscapeHTML(false)
	before := `{"entries":[`
	err := a.holding.Journal().Each(r.Context(), wanted, func(k journal.Kept) error {
		if before != "," {
			w.Header().Set("Content-Type", "application/json")
		}
		out.WriteString(before)
		before = ","
		return encoder.Encode(listed{k.Entry, k.ReplacedBy})
	})
	switch {
	case err != nil && before != ",":
		a.refuse(w, r, http.StatusServiceUnavailable, err)
		return
	case err != nil:
		a.report("entries", err)
		panic(http.ErrAbortHandler)
	case before != ",":
		w.Header().Set("Content-Type", "application/json")
		out.WriteString(before)
	}
	out.WriteString("]}\n")
	_ = out.Flush() // a client that went away needs no answer
}

// outcome is what became of one entry that was sent.
type outcome struct {
	ID     *string         `json:"id"`
	Result journal.Outcome `json:"result"`
	Why    *string         `json:"why"`
}

// store takes one entry or an array of them. It answers after they are on
// disk.
func (a *API) store(w http.ResponseWriter, r *http.Request) {
	text, ok := a.body(w, r)
	if !ok {
		return
	}
	items, status, err := itemsOf(text)
	if err != nil {
		a.refuse(w, r, status, err)
		return
	}
	results, err := a.storeItems(r, items)
	if err != nil {
		a.refuse(w, r, http.StatusServiceUnavailable, err)
		return
	}
	status = http.StatusOK
	outcomes := make([]outcome, len(results))
	for i, result := range results {
		outcomes[i] = outcomeOf(result, a.reader(r, a.holding.Reader()))
		if result.Outcome == journal.Refused {
			status = http.StatusUnprocessableEntity
		}
	}
	a.counts.storedEntries(results)
	a.write(w, status, map[string]any{"results": outcomes})
}

// itemsOf parts an array into its entries; one object is one entry.
func itemsOf(text []byte) ([]json.RawMessage, int, error) {
	text = bytes.TrimSpace(text)
	if !json.Valid(text) {
		return nil, http.StatusBadRequest, said("body", "", "api.not-json")
	}
	switch text[0] {
	case '{':
		return []json.RawMessage{text}, 0, nil
	case '[':
		var items []json.RawMessage
		if err := json.Unmarshal(text, &items); err != nil {
			return nil, http.StatusBadRequest, said("body", "", "api.not-json")
		}
		return items, 0, nil
	}
	return nil, http.StatusUnprocessableEntity, said("body", "", "api.not-entries")
}

// storeItems stores the entries that can be read, all at once, and answers for
// every item in the order sent.
func (a *API) storeItems(r *http.Request, items []json.RawMessage) ([]journal.Result, error) {
	results := make([]journal.Result, len(items))
	var entries []journal.Entry
	var of []int
	for i, item := range items {
		e, why := journal.Decode(item)
		if why == nil {
			why = a.newOrKnown(r, e)
		}
		if why != nil {
			results[i] = journal.Result{ID: e.ID, Outcome: journal.Refused, Why: why}
			continue
		}
		entries, of = append(entries, e), append(of, i)
	}
	if len(entries) == 0 {
		return results, nil
	}
	stored, err := a.holding.Store(r.Context(), entries...)
	for i, result := range stored {
		results[of[i]] = result
	}
	return results, err
}

// newOrKnown refuses a place in a chain from whoever makes entries: only the
// journal that first stores an entry gives it one. An entry that is here
// already may come back with the place it has.
func (a *API) newOrKnown(r *http.Request, e journal.Entry) error {
	if e.Journal == "" && e.Seq == 0 && e.Before == "" {
		return nil
	}
	_, known, err := a.holding.Journal().Find(r.Context(), e.ID)
	if err != nil || known {
		return err
	}
	return said("journal", e.Journal, "journal.entry.chain-given")
}

func outcomeOf(result journal.Result, reader wording.Reader) outcome {
	o := outcome{Result: result.Outcome}
	if result.ID != "" {
		o.ID = &result.ID
	}
	if result.Why != nil {
		why := reason(result.Why, reader)
		o.Why = &why
	}
	return o
}

// reason is a fault as one line.
func reason(err error, r wording.Reader) string {
	faults := fault.Of(err)
	if len(faults) == 0 {
		what, _ := told(err, r)
		return what
	}
	text := faults[0].What.For(r)
	if allowed := faults[0].Allowed.For(r); allowed != "" {
		text += wording.Say("cli.allowed", wording.Places{"allowed": allowed}).For(r)
	}
	return text
}
