package hygiene

import (
	"slices"
	"strings"
	"testing"

	"aerosteep/wording"
)

// TestEveryRow gives each row of the rules a case in which it decides, one in
// which a single changed fact keeps it from deciding, and one in which that
// fact is missing, so that it only may decide.
func TestEveryRow(t *testing.T) {
	l := theLaw()
	for i := range l.rows {
		row, table := &l.rows[i], l.tables[l.rows[i].table]
		if strings.HasPrefix(row.then, "see ") {
			continue
		}
		t.Run(row.table+"."+row.number, func(t *testing.T) {
			fires, found := l.caseOf(table, answer(i), Facts{})
			if !found {
				t.Fatal("no case in which it decides")
			}
			not, fact, found := l.besides(table, answer(i), fires)
			if !found {
				t.Fatal("no single fact keeps it from deciding")
			}
			if got, _ := l.follow(table, &not); got == answer(i) {
				t.Errorf("it still decides with %s %s", fact, not.Value(fact))
			}
			open := fires.With(fact, "")
			seen := l.look(table, &open, same)
			if !seen.has(answer(i)) || len(seen.ends) < 2 || !slices.Contains(seen.missing(), fact) {
				t.Errorf("with %s missing: ends %v, missing %v", fact, seen.ends, seen.missing())
			}
		})
	}
}

// caseOf finds complete facts that lead from r to an end.
func (l *law) caseOf(r ref, want answer, facts Facts) (Facts, bool) {
	if r.isEnd() {
		if r.answer() != want {
			return facts, false
		}
		for f := Material; f < factCount; f++ {
			if facts.value[f] == 0 {
				facts.value[f] = 1
			}
		}
		return facts, true
	}
	n := &l.nodes[r]
	for value := range definitions[n.fact].values {
		next := facts
		next.value[n.fact] = uint8(value + 1)
		if found, ok := l.caseOf(n.child[value], want, next); ok {
			return found, true
		}
	}
	return facts, false
}

// besides changes one fact so that another row decides.
func (l *law) besides(r ref, not answer, fires Facts) (Facts, Fact, bool) {
	for f := Material; f < factCount; f++ {
		for value := range definitions[f].values {
			g := fires
			g.value[f] = uint8(value + 1)
			if got, _ := l.follow(r, &g); got != not {
				return g, f, true
			}
		}
	}
	return fires, 0, false
}

// TestEveryRowIsSaid: each row that can be a reason has its sentence, a
// paragraph, a force and the day of reading.
func TestEveryRowIsSaid(t *testing.T) {
	for _, row := range theLaw().rows {
		if strings.HasPrefix(row.then, "see ") || strings.HasSuffix(row.table, ".applies") {
			continue
		}
		if !wording.Known(row.key()) {
			t.Errorf("%s has no sentence", row.key())
		}
		if row.rule == "" || row.read == "" || row.force != "law" && row.force != "guidance" || row.basis != "standard" && row.basis != "contested" {
			t.Errorf("%s: rule %q, force %q, basis %q, read %q", row.key(), row.rule, row.force, row.basis, row.read)
		}
	}
}

// TestRulesAreRefused: a slip in the rules never becomes a verdict.
func TestRulesAreRefused(t *testing.T) {
	head := "table,row,when,then,rule,force,basis,read\n"
	for name, text := range map[string]string{
		"unknown fact":   "x.applies,1,moon=full,yes,,,,\n",
		"unknown value":  "x.applies,1,water=sea,yes,,,,\n",
		"not a pair":     "x.applies,1,water,yes,,,,\n",
		"gap":            "x.applies,1,water=well,yes,,,,\n",
		"unknown effect": "x.applies,1,,yes,,,,\nx,1,,perhaps,,,,\n",
		"endless wait":   "x.applies,1,,yes,,,,\nx,1,,wait 0,,,,\n",
		"unknown table":  "x.applies,1,,yes,,,,\nx,1,,see y,,,,\n",
		"short line":     "x.applies,1\n",
		"nothing":        "",
	} {
		rows, err := readRules(head + text)
		if err == nil && len(rows) > 0 {
			_, err = compile(rows)
		}
		if err == nil && name != "nothing" {
			t.Errorf("%s was taken", name)
		}
	}
}

// TestAnotherRuleSet: a set is added by rows alone and joins the others.
func TestAnotherRuleSet(t *testing.T) {
	rows, err := readRules(rulesCSV + "\nbuyer.applies,1,market=sold,yes,contract,guidance,standard,memory\n" +
		"buyer.applies,2,,no,contract,guidance,standard,memory\nbuyer,1,method=foliar,wait 45,contract,guidance,standard,memory\nbuyer,2,,yes,contract,guidance,standard,memory\n")
	if err != nil {
		t.Fatal(err)
	}
	l, err := compile(rows)
	if err != nil {
		t.Fatal(err)
	}
	facts := Facts{}.With(Market, "sold").With(Method, "foliar").With(CropUse, "non-food").With(HumanWaste, "no").With(Organic, "no").settled()
	if ends := l.look(l.overall, &facts, same).ends; len(ends) != 1 || ends[0] != 45 {
		t.Errorf("the buyer's 45 days come to %v", ends)
	}
	if !slices.Equal(l.order, []string{"fda", "nop", "care", "buyer"}) {
		t.Errorf("sets are %v", l.order)
	}
}

func FuzzReadRules(f *testing.F) {
	f.Add("a,1,water=well,yes,r,law,standard,memory\n")
	f.Add("a,1,=,see a,,,,\n\"")
	f.Fuzz(func(t *testing.T, text string) {
		if rows, err := readRules(text); err == nil && len(rows) < 40 {
			_, _ = compile(rows)
		}
	})
}
