package hygiene

import (
	"fmt"
	"slices"
	"strings"
	"sync"
)

// law is the rules, ready to be asked: a diagram for each table whose ends are
// the rows that decide, and for the sets what they come to together.
type law struct {
	*diagram
	rows    []row
	meets   []ref     // whether a row's conditions all hold: 1 or 0
	outcome []outcome // of a row; only where the row stands in a set
	waits   []outcome // the different lengths of a wait, at most 30
	tables  map[string]ref
	order   []string // of the sets, as in the file
	sets    map[string]*ruleSet
	overall ref // ends are outcomes: the strictest of the sets
}

// ruleSet is one set: whether it applies, which row decides, and its outcome.
type ruleSet struct {
	applies ref // ends: 1 or 0
	rows    ref // ends: rows, or notApplying
	outcome ref // ends: outcomes; yes where the set does not apply
}

// notApplying stands in place of a row where a set does not apply.
const notApplying answer = 1 << 28

// neverReached stands below the last row of a table. A table that can get
// there is refused: its rows must fit every case between them.
const neverReached answer = 1 << 29

// theLaw compiles the rules once.
var theLaw = sync.OnceValue(func() *law {
	rows, err := readRules(rulesCSV)
	if err != nil {
		panic("hygiene: rules.csv: " + err.Error())
	}
	l, err := compile(rows)
	if err != nil {
		panic("hygiene: rules.csv: " + err.Error())
	}
	return l
})

// compile turns rows into diagrams, table by table in their order in the file.
func compile(rows []row) (*law, error) {
	l := &law{diagram: newDiagram(), rows: rows, tables: map[string]ref{}, sets: map[string]*ruleSet{}}
	l.meets, l.outcome = make([]ref, len(rows)), make([]outcome, len(rows))
	for _, table := range tablesOf(rows) {
		r, err := l.table(table)
		if err != nil {
			return nil, err
		}
		if left := l.look(r, &Facts{}, same); left.has(neverReached) {
			return nil, fmt.Errorf("table %s leaves some cases undecided", table)
		}
		l.tables[table] = r
	}
	return l, l.gatherSets()
}

// tablesOf lists the tables in the order in which they are complete, so that a
// table stands after those it asks.
func tablesOf(rows []row) []string {
	var tables []string
	for _, r := range rows {
		if indexOf(tables, r.table) < 0 {
			tables = append(tables, r.table)
		}
	}
	return tables
}

// table makes the diagram of one table: from the last row up, each row decides
// where it fits and else hands down.
func (l *law) table(name string) (ref, error) {
	r := end(neverReached)
	for i := len(l.rows) - 1; i >= 0; i-- {
		row := &l.rows[i]
		if row.table != name {
			continue
		}
		fits, err := l.fits(row.when)
		if err != nil {
			return 0, fmt.Errorf("table %s, row %s: %w", name, row.number, err)
		}
		l.meets[i] = fits
		then := end(answer(i))
		if other, refers := strings.CutPrefix(row.then, "see "); refers {
			seen, known := l.tables[other]
			if !known {
				return 0, fmt.Errorf("table %s, row %s: no table %s above", name, row.number, other)
			}
			then = seen
		}
		r = l.choose(fits, then, r)
	}
	return r, nil
}

// fits is whether all conditions hold.
func (l *law) fits(when []condition) (ref, error) {
	all := end(1)
	for _, c := range when {
		one, err := l.condition(c)
		if err != nil {
			return 0, err
		}
		all = l.join(all, one, func(a, b answer) answer { return a & b })
	}
	return all, nil
}

func (l *law) condition(c condition) (ref, error) {
	if fact, known := FactNamed(c.name); known && fact < factCount {
		var bits uint8
		for _, word := range c.values {
			at := indexOf(fact.Values(), word)
			if at < 0 {
				return 0, fmt.Errorf("%s cannot be %q", c.name, word)
			}
			bits |= 1 << at
		}
		return l.is(fact, bits), nil
	}
	asked, known := l.tables[c.name]
	if !known {
		return 0, fmt.Errorf("%q is neither a fact nor a table above", c.name)
	}
	return l.mapped(asked, func(a answer) answer {
		return toAnswer(indexOf(c.values, l.rows[a].then) >= 0)
	}), nil
}

// gatherSets finds the rule sets and puts their outcomes together.
func (l *law) gatherSets() error {
	l.overall = end(0)
	for _, table := range tablesOf(l.rows) {
		applies, isSet := l.tables[table+".applies"]
		if !isSet {
			continue
		}
		if err := l.readOutcomes(table); err != nil {
			return err
		}
		set := &ruleSet{applies: l.mapped(applies, func(a answer) answer { return toAnswer(l.rows[a].then == "yes") })}
		set.rows = l.choose(set.applies, l.tables[table], end(notApplying))
		set.outcome = l.mapped(set.rows, l.outcomeOf)
		l.sets[table], l.order = set, append(l.order, table)
		l.overall = l.join(l.overall, set.outcome, func(a, b answer) answer { return max(a, b) })
	}
	return nil
}

func (l *law) outcomeOf(a answer) answer {
	if a == notApplying {
		return 0
	}
	return l.outcome[a]
}

// readOutcomes reads what the rows of a set, and of the tables it refers to,
// come to.
func (l *law) readOutcomes(table string) error {
	for i := range l.rows {
		row := &l.rows[i]
		if row.table != table {
			continue
		}
		if other, refers := strings.CutPrefix(row.then, "see "); refers {
			if err := l.readOutcomes(other); err != nil {
				return err
			}
			continue
		}
		o, err := readOutcome(row.then)
		if err != nil {
			return fmt.Errorf("table %s, row %s: %w", table, row.number, err)
		}
		l.outcome[i] = o
		l.noteWait(o)
	}
	if len(l.waits) > mostWaits {
		return fmt.Errorf("more than %d lengths of a wait", mostWaits)
	}
	return nil
}

// mostWaits is how many different waits a question has room for.
const mostWaits = 30

func (l *law) noteWait(o outcome) {
	if o > 0 && o < forbidden && !slices.Contains(l.waits, o) {
		l.waits = append(l.waits, o)
	}
}
