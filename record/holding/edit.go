package holding

import (
	"context"
	"encoding/json"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/record/journal"
	"aerosteep/wording"
)

// Table is one table of the set-up as it stands.
type Table struct {
	Table, Name string // Name is "" where there is one of a kind
	Subject     string
	Body        json.RawMessage
}

// Tables are the standing tables of a kind, wants under the name of their entry.
func (h *Holding) Tables(kind string) []Table {
	h.mu.Lock()
	defer h.mu.Unlock()
	var all []Table
	for _, subject := range h.state.subjects(kind) {
		if body := h.state.body(subject); body != nil {
			name := ""
			if len(subject) > len(kind) {
				name = subject[len(kind)+1:]
			}
			all = append(all, Table{kind, name, subject, body})
		}
	}
	return all
}

// Edit makes the entry that puts a table into the place of the one of that
// subject, "" for a new one, once the whole holding was read with it; a nil body
// takes it away.
//
// Errors: a fault.List of the keys, as for a job file.
func (h *Holding) Edit(kind, subject string, body json.RawMessage, made Made) (journal.Entry, error) {
	part := jobfile.Part{Table: kind, Body: body}
	if body != nil {
		var named struct {
			Name string `json:"name"`
		}
		_ = json.Unmarshal(body, &named) // a name of another type is refused with the table
		part.Name = named.Name
		if subject == "" {
			subject = subjectOf(part, map[string]int{})
			if h.stands(subject) {
				return journal.Entry{}, fault.New(kind+".name", named.Name, wording.Say("holding.edit.twice", wording.Places{"name": named.Name}), wording.Text{}, wording.Text{})
			}
		}
	}
	if err := h.readsEdited(kind, subject, body); err != nil {
		return journal.Entry{}, err
	}
	return h.entry(journal.Setup, subject, body, made)
}

func (h *Holding) stands(subject string) bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.state.body(subject) != nil
}

// readsEdited refuses a set-up that could not be read with the edited table.
func (h *Holding) readsEdited(kind, subject string, body json.RawMessage) error {
	names, _ := jobfile.Tables()
	var parts []jobfile.Part
	placed := false
	for _, each := range names {
		for _, t := range h.Tables(each) {
			if t.Subject == subject {
				placed = true
				t.Body = body
			}
			if t.Body != nil {
				parts = append(parts, partOf(t))
			}
		}
		if each == kind && !placed && body != nil {
			parts = append(parts, partOf(Table{Table: kind, Subject: subject, Body: body}))
		}
	}
	_, err := read(parts, jobfile.Whole)
	return err
}

func partOf(t Table) jobfile.Part {
	if t.Table == "want" {
		t.Name = ""
	}
	return jobfile.Part{Table: t.Table, Name: t.Name, Body: t.Body}
}

// Begin loads a first set-up of a few tables, as typed into the first page.
//
// Errors: a fault.List of the keys, as for a job file.
func (h *Holding) Begin(ctx context.Context, parts []jobfile.Part, made Made) error {
	text, problems := jobfile.Compose(parts)
	if err := problems.OrNil(); err != nil {
		return err
	}
	file, problems := jobfile.Read(text, "begin.toml", jobfile.Whole)
	if err := problems.OrNil(); err != nil {
		return err
	}
	_, err := h.Load(ctx, file, made)
	return err
}
