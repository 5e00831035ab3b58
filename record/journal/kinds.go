package journal

import (
	"encoding/json"
	"fmt"
	"math"
	"sort"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// The kinds of entries.
const (
	Setup    = "setup"    // a table of the job file
	Start    = "start"    // a batch begins
	Reading  = "reading"  // what a person read off
	Series   = "series"   // readings of a file or logger
	Event    = "event"    // air-off, food added …
	End      = "end"      // a batch is over
	Note     = "note"     //
	Count    = "count"    // microscope
	Test     = "test"     // laboratory, or a test of the rig
	Applied  = "applied"  // tea on a bed
	Cleaned  = "cleaned"  //
	Stock    = "stock"    // bought, used, thrown away, sold
	Harvest  = "harvest"  //
	Incident = "incident" // spill, exposure, wrong bed, complaint
)

// Kinds lists them.
var Kinds = []string{Setup, Start, Reading, Series, Event, End, Note, Count, Test, Applied, Cleaned, Stock, Harvest, Incident}

// subjects is what an entry of a kind must be about, where that is fixed.
var subjects = map[string]string{Start: "batch", Reading: "batch", Series: "batch", Event: "batch", End: "batch", Harvest: "bed"}

// named are the tables of a job file that a setup entry names one of; alone
// are those of which a file has one.
var (
	named = []string{"site", "bed", "pump", "vessel", "applicator", "ingredient", "recipe", "person", "logger", "want", "batch"}
	alone = []string{"holding", "limits", "water", "hygiene", "costs"}
)

// longestSeries is the number of rows that one series entry holds.
const longestSeries = 10_000

func (e Entry) checkKind() error {
	if !contains(Kinds, e.Kind) {
		f := refuse("kind", e.Kind, "journal.entry.kind", wording.Places{"kinds": Kinds}).(*fault.Fault)
		f.Nearest = fault.Nearest(e.Kind, Kinds)
		return f
	}
	if err := e.checkSubject(); err != nil {
		return err
	}
	if isNull(e.Body) {
		return e.checkNoBody()
	}
	switch e.Kind {
	case Series:
		return checkSeries(e.Body)
	case Event:
		return checkEvent(e.Body)
	case Reading:
		return checkReading("body", e.Body)
	}
	if e.Body[0] != '{' {
		return refuse("body", short(e.Body), "journal.entry.body", nil)
	}
	return nil
}

func isNull(body json.RawMessage) bool { return len(body) == 0 || string(body) == "null" }

func (e Entry) checkNoBody() error {
	switch e.Kind {
	case Reading, Series, Event, Start:
		return refuse("body", "null", "journal.entry.body", nil)
	}
	return nil
}

func (e Entry) checkSubject() error {
	what, name := e.About()
	if e.Kind == Setup {
		if contains(alone, e.Subject) || contains(named, what) && name != "" {
			return nil
		}
		return refuse("subject", e.Subject, "journal.entry.setup-subject", wording.Places{"named": named, "alone": alone})
	}
	if needed, fixed := subjects[e.Kind]; fixed && (what != needed || name == "") {
		return refuse("subject", e.Subject, "journal.entry.subject", wording.Places{"needed": needed, "kind": e.Kind})
	}
	return nil
}

// bounds is the range of a number that a reading may hold. It is wide enough
// for a meter that is wrong (per cent typed as mg/L): such a reading is kept
// and doubted, not refused.
type bounds struct{ low, high float64 }

var measured = map[string]bounds{
	"do_mg_per_l":        {0, 200},
	"percent_saturation": {0, 1000},
	"temp_c":             {-5, 100},
	"ph":                 {0, 14},
	"ec_us_per_cm":       {0, 200_000},
	"bacteria_per_ml":    {0, 1e15},
	"to_rim_cm":          {0, 1000},
}

// smells are the words for how a brew smells.
var smells = []string{"earthy", "none", "sweet", "sour", "rotten"}

func checkReading(where string, body json.RawMessage) error {
	var values map[string]any
	if json.Unmarshal(body, &values) != nil || values == nil {
		return refuse(where, short(body), "journal.entry.body", nil)
	}
	for _, key := range sortedKeys(values) {
		if err := checkMeasured(where+"."+key, key, values[key]); err != nil {
			return err
		}
	}
	return nil
}

func checkMeasured(field, key string, value any) error {
	if value == nil {
		return nil
	}
	if b, known := measured[key]; known {
		v, isNumber := value.(float64)
		if !isNumber || math.IsNaN(v) || v < b.low || v > b.high {
			return refuse(field, fmt.Sprint(value), "journal.entry.measured", wording.Places{"low": b.low, "high": b.high})
		}
		return nil
	}
	if word, isText := value.(string); key == "smell" && !(isText && contains(smells, word)) {
		return refuse(field, fmt.Sprint(value), "journal.entry.smell", wording.Places{"smells": smells})
	}
	return nil
}

func checkEvent(body json.RawMessage) error {
	var event struct {
		Event string `json:"event"`
	}
	if json.Unmarshal(body, &event) != nil || strings.TrimSpace(event.Event) == "" {
		return refuse("body.event", short(body), "journal.entry.event", nil)
	}
	return nil
}

// Rows are the rows of a series entry, each a reading with its own time.
func Rows(body json.RawMessage) ([]json.RawMessage, error) {
	var rows []json.RawMessage
	if len(body) > 0 && body[0] == '[' {
		err := json.Unmarshal(body, &rows)
		return rows, err
	}
	var table struct {
		Rows []json.RawMessage `json:"rows"`
	}
	err := json.Unmarshal(body, &table)
	return table.Rows, err
}

func checkSeries(body json.RawMessage) error {
	if plainSeries(body) {
		return nil
	}
	rows, err := Rows(body)
	if err != nil || len(rows) == 0 || len(rows) > longestSeries {
		return refuse("body.rows", fmt.Sprint(len(rows)), "journal.entry.rows", wording.Places{"longest": longestSeries})
	}
	for i, row := range rows {
		where := fmt.Sprintf("body.rows.%d", i)
		var at struct {
			At string `json:"at"`
		}
		if json.Unmarshal(row, &at) != nil {
			return refuse(where, short(row), "journal.entry.body", nil)
		}
		if _, ok := instant(at.At); !ok {
			return refuse(where+".at", at.At, "journal.entry.time", nil)
		}
		if err := checkReading(where, row); err != nil {
			return err
		}
	}
	return nil
}

func sortedKeys(m map[string]any) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}
