package forecast

import (
	"slices"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/recipe"
	"aerosteep/quantity"
	"aerosteep/table"
	"aerosteep/wording"
)

// Event is something that was done to a batch, by hours since its start.
type Event struct {
	Hour       float64
	What       EventKind
	Airflow    quantity.Flow   // of AirSet
	Ingredient string          // of FoodIn
	Amount     recipe.Amount   // of FoodIn
	Water      quantity.Volume // of WaterIn
	Seen       quantity.Span   // of FoundOff: so long before, the air was seen on; 0 where nobody said
	Line       int             // of the file it came from
}

// EventKind is what was done.
type EventKind string

// The kinds of event.
const (
	AirOff       EventKind = "air-off"
	AirOn        EventKind = "air-on"
	AirSet       EventKind = "air"
	FoundOff     EventKind = "found-off" // when it stopped, nobody knows
	FoodIn       EventKind = "food"
	WaterIn      EventKind = "water"
	Stirred      EventKind = "stirred"
	ProbeCleaned EventKind = "probe-cleaned"
	Calibrated   EventKind = "calibrated"
)

// Log is what was written down about a batch.
type Log struct {
	Readings []Reading
	Events   []Event
	Unknown  []string   // columns that mean nothing here
	Skipped  fault.List // rows left out
	Before   int        // rows from before the start, not looked at
}

// logColumns are the columns of a file of readings.
var logColumns = []string{
	"at", "hour", "do_mg_per_l", "percent_saturation", "temp_c", "ec_us_per_cm", "ph", "bacteria_per_ml",
	"event", "note", "smell", "to_rim_cm",
}

// LogReading says how a file of readings is to be read.
type LogReading struct {
	Start   time.Time      // hour 0
	Zone    *time.Location // of times without offset; nil refuses those
	SkipBad bool
}

// ReadLog reads a CSV file of readings and events. Rows may stand in any
// order; a row that says the same as another is taken once.
//
// Errors: *fault.Fault with line and column.
func ReadLog(name string, data []byte, how LogReading) (Log, error) {
	log := Log{}
	t, err := table.Open(name, data, logColumns...)
	if err != nil {
		return log, err
	}
	if _, err := t.OneOf("at", "hour"); err != nil {
		return log, err
	}
	log.Unknown = t.Unknown
	log.Skipped, err = t.Each(how.SkipBad, func(row table.Row) error { return log.take(row, how) })
	log.Order()
	return log, err
}

func (l *Log) take(row table.Row, how LogReading) error {
	hour, err := hourOf(row, how)
	if err != nil {
		return err
	}
	if hour < -sameMoment {
		l.Before++
		return nil
	}
	r := Reading{Hour: max(0, hour), Line: row.Line}
	if err := r.read(row); err != nil {
		return err
	}
	if !r.Empty() {
		l.Readings = append(l.Readings, r)
	}
	if row.Blank("event") {
		return nil
	}
	e, wrong := ParseEvent(row.Text("event"))
	if wrong != nil {
		return row.Wrong("event", wrong.What, wrong.Allowed)
	}
	e.Hour, e.Line = r.Hour, row.Line
	l.Events = append(l.Events, e)
	return nil
}

func hourOf(row table.Row, how LogReading) (float64, error) {
	if !row.Blank("hour") {
		return row.Within("hour", -1e4, 1e4)
	}
	at, err := row.Moment("at", how.Zone)
	if err != nil {
		return 0, err
	}
	return at.Sub(how.Start).Hours(), nil
}

// read reads what was measured, each within what a meter can show.
func (r *Reading) read(row table.Row) error {
	for _, c := range []struct {
		column    string
		low, high float64
		put       **float64
	}{
		{"do_mg_per_l", 0, 500, &r.DO}, {"percent_saturation", 0, 500, &r.Percent}, {"temp_c", -5, 60, &r.Water},
		{"ec_us_per_cm", 0, 50000, &r.EC}, {"ph", 0, 14, &r.PH}, {"bacteria_per_ml", 0, 1e12, &r.Count}, {"to_rim_cm", 0, 500, &r.ToRim},
	} {
		if row.Blank(c.column) {
			continue
		}
		v, err := row.Within(c.column, c.low, c.high)
		if err != nil {
			return err
		}
		*c.put = &v
	}
	if row.Blank("smell") {
		return nil
	}
	smell := Smell(strings.ToLower(row.Text("smell")))
	if !slices.Contains([]Smell{Earthy, NoSmell, Sweet, Sour, Rotten}, smell) {
		return row.Wrong("smell", wording.Say("forecast.smell"), wording.Say("forecast.smell.allowed"))
	}
	r.Smell = smell
	return nil
}

// Order puts the log in order of time and drops what stands in it twice.
func (l *Log) Order() {
	slices.SortStableFunc(l.Readings, func(a, b Reading) int { return compare(a.Hour, b.Hour) })
	slices.SortStableFunc(l.Events, func(a, b Event) int { return compare(a.Hour, b.Hour) })
	l.Readings = slices.CompactFunc(l.Readings, sameReading)
	l.Events = slices.CompactFunc(l.Events, func(a, b Event) bool {
		a.Line = b.Line
		return a == b
	})
}

func sameReading(a, b Reading) bool {
	return a.Hour == b.Hour && a.Smell == b.Smell && same(a.DO, b.DO) && same(a.Percent, b.Percent) &&
		same(a.Water, b.Water) && same(a.EC, b.EC) && same(a.PH, b.PH) && same(a.Count, b.Count) && same(a.ToRim, b.ToRim)
}

func same(a, b *float64) bool { return a == nil && b == nil || a != nil && b != nil && *a == *b }

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// ParseEvent reads an event as it is written: "air-off", "air 40 L/min",
// "food molasses 20 mL", "water 5 L".
func ParseEvent(text string) (Event, *fault.Fault) {
	words := strings.Fields(text)
	if len(words) == 0 {
		return Event{}, eventFault(text, "forecast.event.empty")
	}
	kind := EventKind(strings.ToLower(words[0]))
	rest := strings.Join(words[1:], " ")
	switch kind {
	case AirOff, AirOn, Stirred, ProbeCleaned, Calibrated:
		if rest != "" {
			return Event{}, eventFault(text, "forecast.event.too-much")
		}
		return Event{What: kind}, nil
	case FoundOff:
		return parseFoundOff(text, rest)
	case AirSet:
		flow, err := quantity.ParseFlow(rest)
		if err != nil || flow > 50000 {
			return Event{}, eventFault(text, "forecast.event.air")
		}
		return Event{What: AirSet, Airflow: flow}, nil
	case WaterIn:
		water, err := quantity.ParseVolume(rest)
		if err != nil || !(water > 0) || water > 50000 {
			return Event{}, eventFault(text, "forecast.event.water")
		}
		return Event{What: WaterIn, Water: water}, nil
	case FoodIn:
		return parseFood(text, words[1:])
	}
	f := eventFault(text, "forecast.event.unknown")
	f.Nearest = fault.Nearest(string(kind), eventWords)
	return Event{}, f
}

// parseFoundOff reads "found-off", or "found-off 4 h": four hours before, the air
// was seen on.
func parseFoundOff(text, rest string) (Event, *fault.Fault) {
	e := Event{What: FoundOff}
	if rest == "" {
		return e, nil
	}
	seen, err := quantity.ParseSpan(rest)
	if err != nil || !(seen > 0) || seen > quantity.Hours(longestRun) {
		return Event{}, eventFault(text, "forecast.event.found-off")
	}
	e.Seen = seen
	return e, nil
}

var eventWords = []string{"air-off", "air-on", "found-off", "air", "food", "water", "stirred", "probe-cleaned", "calibrated"}

// parseFood parts "fish hydrolysate 1/2 cup" where the amount begins.
func parseFood(text string, words []string) (Event, *fault.Fault) {
	for i := 1; i < len(words); i++ {
		amount, err := recipe.ParseAmount(strings.Join(words[i:], " "))
		if err == nil {
			return Event{What: FoodIn, Ingredient: strings.Join(words[:i], " "), Amount: amount}, nil
		}
	}
	return Event{}, eventFault(text, "forecast.event.food")
}

func eventFault(text, key string) *fault.Fault {
	return fault.New("event", text, wording.Say(key), wording.Say("forecast.event.allowed"), wording.Text{})
}
