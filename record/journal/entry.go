package journal

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"strings"
	"time"
	"unicode/utf8"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Entry is one thing that happened, as it is sent, stored and exported.
type Entry struct {
	ID         string          `json:"id"`          // UUIDv7 made where the entry was made
	Kind       string          `json:"kind"`        // one of Kinds
	At         string          `json:"at"`          // when it happened, RFC 3339 with offset
	RecordedAt string          `json:"recorded_at"` // when it was written down where it was made
	By         string          `json:"by"`          // initials
	Device     string          `json:"device"`      // the place it was made: "cli-abcd", "phone-abcd"
	Subject    string          `json:"subject"`     // what it is about: "batch:D-114"
	Body       json.RawMessage `json:"body"`        // an object; null in a setup entry removes the table
	Replaces   *string         `json:"replaces"`    // id of the entry that this one corrects

	// Given by the journal that first stores the entry, never by its maker.
	Journal string `json:"journal"`
	Seq     int64  `json:"seq"`    // 1, 2, 3 … in order of storing
	Before  string `json:"before"` // digest of the entry numbered Seq - 1
}

// noneBefore is the Before of the first entry of a journal.
var noneBefore = strings.Repeat("0", 2*sha256.Size)

// keys are the keys of an entry as JSON.
var keys = []string{"id", "kind", "at", "recorded_at", "by", "device", "subject", "body", "replaces", "journal", "seq", "before"}

// Decode reads one entry from JSON. A key that no entry has is refused, so
// that a misspelt one is not lost in silence.
func Decode(text []byte) (Entry, error) {
	canonical, err := Canonical(text)
	if err != nil {
		return Entry{}, err
	}
	if canonical[0] != '{' {
		return Entry{}, refuse("", short(canonical), "journal.entry.not-an-object", nil)
	}
	var e Entry
	strict := json.NewDecoder(bytes.NewReader(canonical))
	strict.DisallowUnknownFields()
	if err := strict.Decode(&e); err != nil {
		if unknown := knownKeys(canonical); unknown != nil {
			return Entry{}, unknown
		}
		return Entry{}, wrongType(err)
	}
	return e, nil
}

// decodeStored reads an entry from its stored form, which was checked when it
// came in.
func decodeStored(form []byte) (e Entry, err error) {
	err = json.Unmarshal(form, &e)
	return e, err
}

func knownKeys(canonical []byte) error {
	var given map[string]json.RawMessage
	if err := json.Unmarshal(canonical, &given); err != nil {
		return wrongType(err)
	}
	for key, value := range given {
		if !contains(keys, key) {
			f := refuse(key, short(value), "journal.entry.unknown-key", wording.Places{"keys": keys}).(*fault.Fault)
			f.Nearest = fault.Nearest(key, keys)
			return f
		}
	}
	return nil
}

func wrongType(err error) error {
	f := refuse("", "", "journal.entry.wrong-type", nil).(*fault.Fault)
	if mismatch, ok := err.(*json.UnmarshalTypeError); ok {
		f.Field, f.Given = mismatch.Field, mismatch.Value
	}
	return f
}

// refuse says why an entry cannot be stored: key, key.allowed, key.advice.
func refuse(field, given, key string, places wording.Places) error {
	say := func(part string) wording.Text {
		if !wording.Known(key + part) {
			return wording.Text{}
		}
		return wording.Say(key+part, places, wording.Places{"field": field, "given": given})
	}
	return fault.New(field, given, say(""), say(".allowed"), say(".advice"))
}

// short is the beginning of a text, for a message.
func short(text []byte) string {
	if len(text) <= 60 {
		return string(text)
	}
	return string(bytes.ToValidUTF8(text[:60], nil)) + "…"
}

// Form is the entry in RFC 8785 form: what is stored, exported and digested.
// Its keys stand here in the order in which that form sorts them.
func (e Entry) Form() ([]byte, error) {
	body := []byte("null")
	if len(e.Body) > 0 {
		var err error
		if body, err = Canonical(e.Body); err != nil {
			return nil, err
		}
	}
	out := make([]byte, 0, len(body)+512)
	text := func(key, value string) {
		out = appendString(append(append(out, key...), ':'), strings.ToValidUTF8(value, "\ufffd"))
	}
	text(`{"at"`, e.At)
	text(`,"before"`, e.Before)
	out = append(append(out, `,"body":`...), body...)
	text(`,"by"`, e.By)
	text(`,"device"`, e.Device)
	text(`,"id"`, e.ID)
	text(`,"journal"`, e.Journal)
	text(`,"kind"`, e.Kind)
	text(`,"recorded_at"`, e.RecordedAt)
	if e.Replaces == nil {
		out = append(out, `,"replaces":null`...)
	} else {
		text(`,"replaces"`, *e.Replaces)
	}
	out = appendNumber(append(out, `,"seq":`...), float64(e.Seq))
	text(`,"subject"`, e.Subject)
	return append(out, '}'), nil
}

// content is the entry without what may differ between two copies of it.
func (e Entry) content() ([]byte, error) {
	e.RecordedAt, e.Journal, e.Seq, e.Before = "", "", 0, ""
	return e.Form()
}

// Same tells whether two entries say the same: all keys but recorded_at,
// journal, seq and before agree.
func (e Entry) Same(other Entry) bool {
	a, errA := e.content()
	b, errB := other.content()
	return errA == nil && errB == nil && bytes.Equal(a, b)
}

// Time is when it happened.
func (e Entry) Time() time.Time { t, _ := instant(e.At); return t }

// Recorded is when it was written down.
func (e Entry) Recorded() time.Time { t, _ := instant(e.RecordedAt); return t }

// About parts the subject "batch:D-114" into "batch" and "D-114".
func (e Entry) About() (what, name string) {
	what, name, _ = strings.Cut(e.Subject, ":")
	return what, name
}

// digest is the SHA-256 of a form, in hex.
func digest(form []byte) string {
	sum := sha256.Sum256(form)
	return hex.EncodeToString(sum[:])
}

// instant reads RFC 3339 strictly; Go's own parser lets some slips pass that
// its JSON reader refuses.
func instant(text string) (time.Time, bool) {
	var t time.Time
	if t.UnmarshalText([]byte(text)) != nil {
		return time.Time{}, false
	}
	return t, t.Year() >= earliest && t.Year() <= latest
}

// Times are kept as microseconds in an index; these years are what a journal
// of a holding can be about.
const (
	earliest = 1900
	latest   = 2200
)

// Check tells why an entry cannot be stored, or nil.
func (e Entry) Check() error {
	if !isUUIDv7(e.ID) {
		return refuse("id", e.ID, "journal.entry.id", nil)
	}
	if err := e.checkTimes(); err != nil {
		return err
	}
	for field, text := range map[string]string{"by": e.By, "device": e.Device, "subject": e.Subject} {
		if !utf8.ValidString(text) || len(text) > longest || strings.ContainsFunc(text, isControl) {
			return refuse(field, short([]byte(text)), "journal.entry.name", wording.Places{"longest": longest})
		}
	}
	if e.Replaces != nil && (!isUUIDv7(*e.Replaces) || *e.Replaces == e.ID) {
		return refuse("replaces", *e.Replaces, "journal.entry.replaces", nil)
	}
	return e.checkKind()
}

// longest is the length of a name in bytes.
const longest = 200

func isControl(c rune) bool { return c < ' ' || c == 0x7f }

func (e Entry) checkTimes() error {
	if _, ok := instant(e.At); !ok {
		return refuse("at", e.At, "journal.entry.time", nil)
	}
	if _, ok := instant(e.RecordedAt); e.RecordedAt != "" && !ok {
		return refuse("recorded_at", e.RecordedAt, "journal.entry.time", nil)
	}
	return nil
}

// chained tells whether the entry already has its place in a chain: all three
// keys or none.
func (e Entry) chained() (bool, error) {
	if e.Journal == "" && e.Seq == 0 && e.Before == "" {
		return false, nil
	}
	if !isUUID(e.Journal) || e.Seq < 1 || !isDigest(e.Before) || (e.Seq == 1) != (e.Before == noneBefore) {
		return false, refuse("seq", "", "journal.entry.chain", nil)
	}
	if e.RecordedAt == "" {
		return false, refuse("recorded_at", "", "journal.entry.time", nil)
	}
	return true, nil
}

func isDigest(text string) bool {
	raw, err := hex.DecodeString(text)
	return err == nil && len(raw) == sha256.Size && strings.ToLower(text) == text
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}
