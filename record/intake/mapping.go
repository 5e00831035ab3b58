package intake

import (
	"slices"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Lines are a mapping as it is kept with the set-up: "DO (mg/L) = do mg/L". What
// is passed over is left out.
func (m Mapping) Lines() []string {
	var lines []string
	for _, c := range m.Columns {
		if c.Key != "" {
			lines = append(lines, strings.TrimSpace(c.Name+" = "+c.Key+" "+c.Unit))
		}
	}
	return lines
}

// ParseLines reads a mapping as it is kept. The last "=" parts a column from what
// it is: names of columns may have one.
//
// Errors: a fault that names the line.
func ParseLines(lines []string, order Order) (Mapping, error) {
	m := Mapping{Order: order}
	for _, line := range lines {
		c, ok := parseLine(line)
		if !ok {
			return m, fault.New("column", line, wording.Say("intake.line"), wording.Say("intake.line.allowed"), wording.Text{})
		}
		m.Columns = append(m.Columns, c)
	}
	return m, nil
}

func parseLine(line string) (Column, bool) {
	at := strings.LastIndex(line, "=")
	if at < 0 {
		return Column{}, false
	}
	key, unit, _ := strings.Cut(strings.TrimSpace(line[at+1:]), " ")
	c := Column{Name: strings.TrimSpace(line[:at]), Key: strings.ToLower(key), Unit: unitNamed(key, strings.TrimSpace(unit))}
	return c, c.Name != "" && slices.Contains(Keys, c.Key)
}

// unitNamed takes a unit as people type it: "C" for "°C".
func unitNamed(key, typed string) string {
	bare := func(text string) string { return strings.ToLower(strings.Trim(text, "°µu")) }
	for _, unit := range units[strings.ToLower(key)] {
		if bare(unit) == bare(typed) {
			return unit
		}
	}
	return typed
}

// With puts what somebody said of some columns over the rest: a key that was
// said moves to its column.
func (m Mapping) With(said []Column) Mapping {
	columns := slices.Clone(m.Columns)
	for _, s := range said {
		at := -1
		for i := range columns {
			if columns[i].Name == s.Name {
				at = i
			} else if columns[i].Key == s.Key {
				columns[i].Key = ""
			}
		}
		if at < 0 {
			columns = append(columns, s)
		} else {
			columns[at] = s
		}
	}
	m.Columns = columns
	return m
}
