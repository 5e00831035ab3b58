package holding

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
)

// tables are those of a job file, in the order in which it is written.
var tables = []string{"holding", "limits", "site", "bed", "pump", "vessel", "applicator", "water", "hygiene", "costs", "ingredient", "recipe", "person", "logger", "want", "batch"}

// Parts are the tables of the holding as it stands, in the order of a job
// file. Of the batches there are those that live, and those that a bed names.
func (h *Holding) Parts() []jobfile.Part { return h.parts(false) }

// parts are the tables; with past, also those of batches that are over.
func (h *Holding) parts(past bool) []jobfile.Part {
	h.mu.Lock()
	defer h.mu.Unlock()
	named := h.state.batchesOfBeds()
	var parts []jobfile.Part
	for _, table := range tables {
		for _, subject := range h.state.subjects(table) {
			_, name, _ := strings.Cut(subject, ":")
			body := h.state.body(subject)
			over := table == "batch" && h.state.ended(subject) && !named[name]
			if body == nil || over && !past {
				continue
			}
			if table == "want" {
				name = ""
			}
			parts = append(parts, jobfile.Part{Table: table, Name: name, Body: body})
		}
	}
	return parts
}

// body is a table as it stands, or nil where it was removed. A batch's table
// is what the file said, with what was logged at its start.
func (s *state) body(subject string) json.RawMessage {
	var body json.RawMessage
	for _, t := range s.standing(subject, journal.Setup, journal.Start) {
		switch {
		case t.Kind == journal.Start:
			body = withStart(body, subject, t)
		case isNull(t.Body):
			body = nil
		default:
			body = t.Body
		}
	}
	return body
}

func isNull(body json.RawMessage) bool { return len(body) == 0 || string(body) == "null" }

// withStart writes what was logged at a batch's start into its table, in the
// words of a job file.
func withStart(body json.RawMessage, subject string, t told) json.RawMessage {
	table := map[string]any{}
	if !isNull(body) {
		_ = json.Unmarshal(body, &table) // an object: the journal has checked it
	}
	var start struct {
		Vessel string   `json:"vessel"`
		Recipe string   `json:"recipe"`
		Volume *float64 `json:"volume_l"`
		Temp   *float64 `json:"temp_c"`
	}
	_ = json.Unmarshal(t.Body, &start) // what is missing or of another type is not known
	_, table["name"], _ = strings.Cut(subject, ":")
	table["started_at"] = t.At.Format(time.RFC3339Nano)
	setText(table, "vessel", start.Vessel)
	setText(table, "recipe", start.Recipe)
	setAmount(table, "volume", start.Volume, " L")
	setAmount(table, "temperature", start.Temp, " °C")
	written, err := json.Marshal(table)
	if err != nil {
		return body
	}
	return written
}

func setText(table map[string]any, key, text string) {
	if text != "" {
		table[key] = text
	}
}

func setAmount(table map[string]any, key string, value *float64, unit string) {
	if value != nil {
		table[key] = strconv.FormatFloat(*value, 'f', -1, 64) + unit
	}
}

// batchesOfBeds are the batches that a bed's table names.
func (s *state) batchesOfBeds() map[string]bool {
	named := map[string]bool{}
	for _, subject := range s.subjects("bed") {
		var one struct {
			Batch string `json:"batch"`
		}
		var many struct {
			Batch []string `json:"batch"`
		}
		body := s.body(subject)
		if body == nil {
			continue
		}
		if json.Unmarshal(body, &one) == nil {
			named[one.Batch] = true
		} else if json.Unmarshal(body, &many) == nil {
			for _, name := range many.Batch {
				named[name] = true
			}
		}
	}
	return named
}

// TOML is the holding as a job file, in the words in which such a file is read
// back: hours in the holding's zone, keys in the order of the form.
func (h *Holding) TOML() ([]byte, error) {
	file, err := read(h.Parts(), jobfile.Whole)
	if err != nil {
		// Set up by hand or by another program: unloaded as it stands, so that
		// it can be mended.
		text, problems := jobfile.Compose(h.Parts())
		return text, problems.OrNil()
	}
	text, problems := jobfile.Compose(file.Parts())
	return text, problems.OrNil()
}

// File is the holding read as a job file: what plan, check and forecast work
// on. A vessel whose air was tested has what the latest test gave.
func (h *Holding) File(purpose jobfile.Purpose) (*jobfile.File, error) {
	file, err := read(h.Parts(), purpose)
	if err == nil {
		h.withTests(file)
	}
	return file, err
}

func read(parts []jobfile.Part, purpose jobfile.Purpose) (*jobfile.File, error) {
	text, problems := jobfile.Compose(parts)
	if err := problems.OrNil(); err != nil {
		return nil, err
	}
	file, problems := jobfile.Read(text, "holding.toml", purpose)
	return file, problems.OrNil()
}

// Empty tells whether nothing was set up yet.
func (h *Holding) Empty() bool { return len(h.Parts()) == 0 }

// change is a table of a file that the holding does not have like that.
type change struct {
	subject string
	body    json.RawMessage
}

// changes compares a file with the holding, table by table. Tables that the
// file lacks stay as they are: a file may hold a part of the set-up.
func (h *Holding) changes(file *jobfile.File) ([]change, error) {
	standing, err := h.standing()
	if err != nil {
		return nil, err
	}
	var changes []change
	err = eachPart(file, func(subject string, body []byte) {
		if !bytes.Equal(body, standing[subject]) {
			changes = append(changes, change{subject, body})
		}
	})
	return changes, err
}

// standing are the holding's tables as a job file that was unloaded and read
// again has them: the same hour may be written in several ways.
func (h *Holding) standing() (map[string][]byte, error) {
	tables := map[string][]byte{}
	file, err := read(h.parts(true), jobfile.Whole)
	if err != nil {
		// What cannot be read back is replaced by whatever a good file says.
		return tables, nil
	}
	err = eachPart(file, func(subject string, body []byte) { tables[subject] = body })
	return tables, err
}

// eachPart goes through the tables of a file by the subject of their entries.
func eachPart(file *jobfile.File, do func(subject string, body []byte)) error {
	met := map[string]int{}
	for _, part := range file.Parts() {
		body, err := journal.Canonical(part.Body)
		if err != nil {
			return err
		}
		do(subjectOf(part, met), body)
	}
	return nil
}

// subjectOf is the subject of a table's entries. A want has no name: it is
// known by its bed, method and hour, and the second alike by its number.
func subjectOf(part jobfile.Part, met map[string]int) string {
	subject := part.Table
	switch {
	case part.Table == "want":
		subject = "want:" + wantName(part.Body)
	case part.Name != "":
		subject = part.Table + ":" + part.Name
	}
	if met[subject]++; met[subject] > 1 {
		subject = fmt.Sprintf("%s #%d", subject, met[subject])
	}
	return subject
}

func wantName(body json.RawMessage) string {
	var want struct {
		Bed    string `json:"bed"`
		Method string `json:"method"`
		At     string `json:"at"`
		From   string `json:"from"`
	}
	_ = json.Unmarshal(body, &want) // a checked table
	name := strings.TrimSpace(want.Bed + ", " + want.Method + ", " + want.At + want.From)
	if len(name) > 150 {
		name = strings.ToValidUTF8(name[:150], "")
	}
	return name
}

// Names are what a flag of a form may name: of the set-up, and for recipes and
// ingredients also what is built in.
func (h *Holding) Names(flag string) []string {
	if !slices.Contains(nameFlags, flag) {
		return nil
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	names := h.state.names(flag)
	if flag == "recipe" || flag == "ingredient" {
		names = append(names, builtIn(flag)...)
	}
	return names
}

// names are the names that tables of a kind have, for messages.
func (s *state) names(table string) []string {
	var names []string
	for _, subject := range s.subjects(table) {
		if _, name, _ := strings.Cut(subject, ":"); s.body(subject) != nil {
			names = append(names, name)
		}
	}
	return names
}
