package holding

import (
	"context"
	"encoding/json"
	"path"
	"strings"

	"aerosteep/fault"
	"aerosteep/job/bench"
	"aerosteep/record/journal"
	"aerosteep/wording"
	ws "aerosteep/worksheet"
)

// AttachForm says what a paper of somebody else is and what it is about. It is no
// form of the log: a paper comes with its content.
var AttachForm = form("attach", journal.Note, "", []string{"lot", "batch", "bed", "site", "vessel", "ingredient"},
	needed(choice("what", "what", "supplier", "laboratory", "water", "heating", "label", "other")),
	choice("method", "method", bench.Methods...), // of a compost heating record
	text("lot", "lot"),
	text("batch", "batch"),
	text("bed", "bed"),
	text("site", "site"),
	text("vessel", "vessel"),
	text("ingredient", "ingredient"),
	text("text", "text"))

// Attached is a paper of somebody else, as an entry names it.
type Attached struct {
	journal.Kept
	Hash  string
	File  string // its name where it came from
	What  string
	Bytes int64
	Text  string

	Method string // of a compost heating record
}

// Attach keeps a paper of somebody else and writes down what it is: the content
// is on disk before the entry that names it.
func (h *Holding) Attach(ctx context.Context, file string, content []byte, given ws.Values, made Made) (journal.Entry, error) {
	e, err := h.Compose(AttachForm, given, made)
	if err != nil {
		return e, err
	}
	if e.Subject == "" {
		return e, fault.New("lot", "", wording.Say("holding.attach.about"), wording.Say("worksheet.allowed.choices", wording.Places{"choices": strings.Join(AttachForm.About, ", ")}), wording.Text{})
	}
	hash, err := h.journal.Keep(ctx, content)
	if err != nil {
		return e, err
	}
	body := map[string]any{}
	if err := json.Unmarshal(e.Body, &body); err != nil {
		return e, err
	}
	body["sha256"], body["file"], body["bytes"] = hash, path.Base(strings.ReplaceAll(file, `\`, "/")), len(content)
	if e.Body, err = json.Marshal(body); err != nil {
		return e, err
	}
	results, err := h.Store(ctx, e)
	if err == nil && results[0].Outcome == journal.Refused {
		err = results[0].Why
	}
	return e, err
}

// Attachments are the papers of others that nothing replaced, the oldest first.
func (h *Holding) Attachments(ctx context.Context) ([]Attached, error) {
	notes, err := h.journal.List(ctx, journal.Wanted{Kinds: []string{journal.Note}})
	if err != nil {
		return nil, err
	}
	var found []Attached
	for _, k := range notes {
		hash := journal.ContentOf(k.Body)
		if hash == "" || k.ReplacedBy != nil {
			continue
		}
		var b struct {
			File  string `json:"file"`
			What  string `json:"what"`
			Bytes int64  `json:"bytes"`
			Text  string `json:"text"`

			Method string `json:"method"`
		}
		_ = json.Unmarshal(k.Body, &b) // what is of another type is not known
		found = append(found, Attached{k, hash, b.File, b.What, b.Bytes, b.Text, b.Method})
	}
	return found, nil
}
