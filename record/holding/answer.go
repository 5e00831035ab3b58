package holding

import (
	"encoding/json"
	"strings"

	"aerosteep/fault"
	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// Answer makes the entry that writes an answer to a fact into the table that
// carries it: "hygiene" for the whole holding, "batch:NAME" or "bed:NAME".
// "unknown" is an answer too: it is not asked again, and no farther word
// counts in its place.
func (h *Holding) Answer(fact hygiene.Fact, subject, value string, made Made) (journal.Entry, error) {
	body, err := h.answered(fact, subject, value)
	if err != nil {
		return journal.Entry{}, err
	}
	return h.entry(journal.Setup, subject, body, made)
}

// answered is the table with the answer in it, once the whole holding was read
// with it.
func (h *Holding) answered(fact hygiene.Fact, subject, value string) (json.RawMessage, error) {
	table, name, _ := strings.Cut(subject, ":")
	standing, err := h.carrier(table, name, subject)
	if err != nil {
		return nil, err
	}
	changed := map[string]any{}
	_ = json.Unmarshal(standing, &changed) // an object: the journal has checked it
	changed[fact.String()] = strings.TrimSpace(value)
	body, err := json.Marshal(changed)
	if err != nil {
		return nil, err
	}
	return body, h.readsWith(jobfile.Part{Table: table, Name: name, Body: body}, fact)
}

// carrier is the table as it stands that an answer goes into.
func (h *Holding) carrier(table, name, subject string) (json.RawMessage, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	switch {
	case table == string(hygiene.OfHolding) && name == "":
		return h.state.body(subject), nil
	case table == string(hygiene.OfBatch), table == string(hygiene.OfBed):
		body := h.state.body(subject)
		if body == nil {
			return nil, unknownName(table, name, h.state.names(table))
		}
		return body, nil
	}
	return nil, fault.New("for", subject, wording.Say("holding.answer.nowhere", wording.Places{"given": subject}), wording.Say("holding.answer.nowhere.allowed"), wording.Text{})
}

// readsWith refuses a table with which the holding could not be read.
func (h *Holding) readsWith(changed jobfile.Part, fact hygiene.Fact) error {
	parts, placed := h.parts(true), false
	for i := range parts {
		if parts[i].Table == changed.Table && parts[i].Name == changed.Name {
			parts[i].Body = changed.Body
			placed = true
		}
	}
	if !placed {
		parts = append(parts, changed)
	}
	file, err := read(parts, jobfile.FactsOnly)
	if err == nil {
		_, problems := file.Meetings()
		err = problems.OrNil()
	}
	return aboutFact(err, fact)
}

// aboutFact names the fault by the fact alone, which is what was asked.
func aboutFact(err error, fact hygiene.Fact) error {
	faults := fault.Of(err)
	if len(faults) == 0 {
		return err
	}
	mine := fault.List{}
	for _, f := range faults {
		if strings.HasSuffix(f.Field, fact.String()) {
			f.Field, f.Line = fact.String(), 0
			mine = append(mine, f)
		}
	}
	if len(mine) == 0 {
		return err // the holding could not be read before either
	}
	return mine
}
