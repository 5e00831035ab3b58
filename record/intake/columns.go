package intake

import (
	"regexp"
	"slices"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Keys are what a logger's column can be; at is its clock, date and time where
// these stand apart.
var Keys = []string{"at", "date", "time", "do", "temp", "ph", "ec"}

// units are those that a column of a key can be in; the first column of a key
// that needs a unit and says none is asked about.
var units = map[string][]string{
	"do": {"mg/L", "%"}, "temp": {"°C", "°F"}, "ec": {"uS/cm", "mS/cm"},
}

// UnitsOf are the units of a key; none where it takes none.
func UnitsOf(key string) []string { return units[key] }

// Column is a column of a file with what it is.
type Column struct {
	Name string // as the header has it
	Key  string // one of Keys; "" is passed over
	Unit string // "" where nobody said
}

// Mapping is what the columns of one logger are, and how it writes the clock.
type Mapping struct {
	Columns []Column
	Order   Order // of the day where it is written 05/12/2026; Either until somebody said
}

// column finds the column of a key.
func (m Mapping) column(key string) (Column, bool) {
	i := slices.IndexFunc(m.Columns, func(c Column) bool { return c.Key == key })
	if i < 0 {
		return Column{}, false
	}
	return m.Columns[i], true
}

// words are how headers name things, in English and Spanish, and how loggers
// shorten them; the first that fits counts.
var words = []struct {
	key  string
	form *regexp.Regexp
}{
	{"at", regexp.MustCompile(`(?i)^(at|date[ /_-]*time|time ?stamp|fecha[ /_-]*(y )?hora)\b`)},
	{"date", regexp.MustCompile(`(?i)^(date|fecha|día|dia)\b`)},
	{"time", regexp.MustCompile(`(?i)^(time|hora|clock)\b`)},
	{"do", regexp.MustCompile(`(?i)\b(do|odo|rdo|o2|oxygen|oxígeno|oxigeno|do_mg_per_l|percent_saturation)\b`)},
	{"temp", regexp.MustCompile(`(?i)(\btemp|temperatur|temp_c\b)`)},
	{"ph", regexp.MustCompile(`(?i)^\s*ph\b`)},
	{"ec", regexp.MustCompile(`(?i)\b(ec|cond\w*|sp\.? ?cond\w*|ec_us_per_cm)\b`)},
}

// unitWords are how headers write units.
var unitWords = []struct {
	key, unit string
	form      *regexp.Regexp
}{
	{"do", "mg/L", regexp.MustCompile(`(?i)(mg ?/ ?l|mg_per_l|\bppm\b)`)},
	{"do", "%", regexp.MustCompile(`(?i)(%|percent|\bsat\b)`)},
	{"temp", "°F", regexp.MustCompile(`(?i)(°\s*f\b|\bdeg\.? ?f\b|\(f\)|_f$|fahrenheit)`)},
	{"temp", "°C", regexp.MustCompile(`(?i)(°\s*c\b|\bdeg\.? ?c\b|\(c\)|_c$|celsius)`)},
	{"ec", "mS/cm", regexp.MustCompile(`mS ?/ ?cm`)},
	{"ec", "uS/cm", regexp.MustCompile(`(?i)([uµμ]s ?/ ?cm|us_per_cm)`)},
}

// Guess maps columns by their names: a proposal for a person to look at. A unit
// is taken from the name alone; where the name has none it stays open. Of two
// columns of one key (mg/L and % of saturation) the first counts.
func Guess(header []string) Mapping {
	var m Mapping
	taken := map[string]bool{}
	for _, name := range header {
		c := Column{Name: name}
		for _, w := range words {
			if !taken[w.key] && w.form.MatchString(strings.ReplaceAll(name, "_", " ")+" "+name) {
				c.Key = w.key
				taken[w.key] = true
				break
			}
		}
		for _, u := range unitWords {
			if c.Key == u.key && c.Unit == "" && u.form.MatchString(name) {
				c.Unit = u.unit
			}
		}
		m.Columns = append(m.Columns, c)
	}
	return m.withClock()
}

// withClock makes a lone "time" column the whole clock: most loggers write both
// under that word.
func (m Mapping) withClock() Mapping {
	_, date := m.column("date")
	_, whole := m.column("at")
	for i := range m.Columns {
		c := &m.Columns[i]
		if !whole && (c.Key == "time" && !date || c.Key == "date" && !m.has("time")) {
			c.Key, whole = "at", true
		}
		if whole && (c.Key == "date" || c.Key == "time") {
			c.Key = ""
		}
	}
	return m
}

func (m Mapping) has(key string) bool { _, has := m.column(key); return has }

// Check tells what a mapping lacks before a file can be read by it: a clock, at
// least one reading, and the unit of each that needs one.
func (m Mapping) Check() error {
	var faults fault.List
	if !m.has("at") && !(m.has("date") && m.has("time")) {
		faults = append(faults, fault.New("column", "", wording.Say("intake.no-clock"), wording.Say("intake.columns", wording.Places{"columns": m.names()}), wording.Say("intake.no-clock.advice")))
	}
	readings := 0
	for _, c := range m.Columns {
		if c.Key == "" || c.Key == "at" || c.Key == "date" || c.Key == "time" {
			continue
		}
		if !slices.Contains(Keys, c.Key) {
			faults = append(faults, fault.New("column", c.Key, wording.Say("intake.no-key"), wording.Say("worksheet.allowed.choices", wording.Places{"choices": strings.Join(Keys, ", ")}), wording.Text{}))
			continue
		}
		readings++
		if known := units[c.Key]; len(known) > 0 && !slices.Contains(known, c.Unit) {
			faults = append(faults, fault.New("column", c.Unit, wording.Say("intake.no-unit", wording.Places{"column": c.Name}), wording.Say("worksheet.allowed.choices", wording.Places{"choices": strings.Join(known, ", ")}), wording.Say("intake.no-unit.advice")))
		}
	}
	if readings == 0 {
		faults = append(faults, fault.New("column", "", wording.Say("intake.no-reading"), wording.Say("intake.columns", wording.Places{"columns": m.names()}), wording.Say("intake.no-reading.advice")))
	}
	return faults.OrNil()
}

func (m Mapping) names() string {
	var names []string
	for _, c := range m.Columns {
		names = append(names, c.Name)
	}
	return strings.Join(names, ", ")
}

// Fits tells whether a file with this header is of the logger that the mapping
// was made for: every column that it uses is there.
func (m Mapping) Fits(header []string) bool {
	for _, c := range m.Columns {
		if c.Key != "" && !slices.Contains(header, c.Name) {
			return false
		}
	}
	return len(m.Columns) > 0
}
