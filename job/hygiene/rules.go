package hygiene

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// RulesAsOf is the day on which the collection of rules was last compared with
// what was known of the law; each row says when its own text was read.
const RulesAsOf = "2026-06-20"

//go:embed rules.csv
var rulesCSV string

// row is one line of rules.csv.
type row struct {
	table, number string
	when          []condition
	then          string
	rule          string
	force         string
	basis         string
	read          string
}

// key names the row's sentence: what it says, in words.
func (r *row) key() string { return "hygiene.rule." + r.table + "." + r.number }

// citation is the paragraph with the title it stands in.
func (r *row) citation() string {
	switch {
	case strings.HasPrefix(r.rule, "112."):
		return "21 CFR " + r.rule
	case strings.HasPrefix(r.rule, "205."):
		return "7 CFR " + r.rule
	}
	return r.rule
}

// asks tells whether the row looks at a table or a fact of that name.
func (r *row) asks(name string) bool {
	for _, c := range r.when {
		if c.name == name {
			return true
		}
	}
	return false
}

// condition is one fact=value or table=answer, with the values that will do.
type condition struct {
	name   string
	values []string
}

// readRules reads the table of rules. A line that does not fit is an error
// with its line number.
func readRules(text string) ([]row, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	r.FieldsPerRecord = 8
	var rows []row
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			return rows, nil
		}
		if err != nil {
			return nil, err
		}
		if cells[0] == "table" {
			continue
		}
		line, _ := r.FieldPos(0)
		when, err := readConditions(cells[2])
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", line, err)
		}
		rows = append(rows, row{cells[0], cells[1], when, cells[3], cells[4], cells[5], cells[6], cells[7]})
	}
}

func readConditions(text string) ([]condition, error) {
	var all []condition
	for _, word := range strings.Fields(text) {
		name, values, ok := strings.Cut(word, "=")
		if !ok || name == "" || values == "" {
			return nil, fmt.Errorf("%q is not name=value", word)
		}
		all = append(all, condition{name, strings.Split(values, "|")})
	}
	return all, nil
}

// outcome is what a rule set says of one case: 0 is yes, a number of days is a
// wait, forbidden is no. The larger one is the stricter.
type outcome = answer

const forbidden outcome = 1 << 20

// readOutcome reads the words of a set's effect.
func readOutcome(then string) (outcome, error) {
	switch {
	case then == "yes":
		return 0, nil
	case then == "no":
		return forbidden, nil
	case strings.HasPrefix(then, "wait "):
		days, err := strconv.Atoi(strings.TrimPrefix(then, "wait "))
		if err != nil || days < 1 || days > 3650 {
			return 0, fmt.Errorf("%q does not wait for 1 to 3650 days", then)
		}
		return outcome(days), nil
	}
	return 0, fmt.Errorf("%q is none of yes, no, wait N and see TABLE", then)
}
