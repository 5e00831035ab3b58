package hygiene

// Decide says what may be done with a batch on a bed. A fact that is missing
// is tried with every value it can have: where all give the same answer, that
// is the answer, else the answer is Ask. It follows that no completion of the
// facts is better than what was answered, and that Missing holds exactly the
// facts that can change it.
func Decide(facts Facts) Verdict {
	l := theLaw()
	settled := facts.settled()
	days := calendar{facts.Applied, facts.Harvest}
	v := Verdict{Facts: facts}
	v.Facts.value[Pathogens] = settled.value[Pathogens]

	ends := l.look(l.overall, &settled, same).ends
	v.Ruling = days.ruling(ends)
	v.LatestApplication = days.latest(v.IntervalDays)
	if v.Allowed == Ask {
		v.Missing = l.missing(l.overall, &settled, days)
		worst := days.ruling([]outcome{days.worst(ends)})
		worst.Allowed = days.word(days.worst(ends))
		v.AtWorst = &worst
	}
	for _, name := range l.order {
		v.Sets = append(v.Sets, l.decideSet(name, &settled, days))
	}
	v.decidedBy()
	v.Why = l.why(&v, &settled)
	return v
}

func same(a answer) answer { return a }

// missing lists what the meaning of a diagram hangs on, the day of application
// included.
func (l *law) missing(r ref, facts *Facts, days calendar) []Fact {
	seen := l.look(r, facts, days.as)
	missing := seen.missing()
	if days.hangsOnDay(seen.ends) {
		missing = append(missing, Applied)
	}
	return missing
}

// decideSet asks one rule set.
func (l *law) decideSet(name string, facts *Facts, days calendar) SetVerdict {
	set := l.sets[name]
	applies := l.look(set.applies, facts, same)
	s := SetVerdict{Name: name, HasStatus: l.sorts(name), couldApply: applies.has(1)}
	if len(applies.ends) == 1 {
		is := applies.has(1)
		s.Applies = &is
	}
	s.Force = l.setForce(name)
	if !s.couldApply {
		return s
	}
	rows := l.look(set.rows, facts, same).ends
	ends := l.outcomesOf(rows)
	s.Ruling = days.ruling(ends)
	if s.Allowed == Ask {
		s.Missing = l.missing(set.outcome, facts, days)
	}
	s.deciding = l.deciding(rows, facts)
	s.Force, s.contested = l.forceOf(name, rows), l.contested(rows)
	if s.HasStatus {
		s.Status = l.statusOf(rows, facts)
		s.AgriculturalTea = teaOf(facts)
	}
	return s
}

// outcomesOf are the different outcomes of the rows that can decide.
func (l *law) outcomesOf(rows []answer) []outcome {
	var o outlook
	for _, row := range rows {
		o.add(l.outcomeOf(row))
	}
	return o.ends
}

// sorts tells whether a set asks the status of the material.
func (l *law) sorts(name string) bool {
	for i := range l.rows {
		row := &l.rows[i]
		if row.table == name && (row.asks("status") || row.then == "see produce") {
			return true
		}
	}
	return false
}

// deciding is the row to name: of the strictest rows that can decide, the first
// that the known facts alone are enough for, else the first.
func (l *law) deciding(rows []answer, facts *Facts) answer {
	best, found := answer(notApplying), false
	for _, row := range rows {
		if row == notApplying {
			continue
		}
		if !found || l.stricter(row, best, facts) {
			best, found = row, true
		}
	}
	return best
}

func (l *law) stricter(a, b answer, facts *Facts) bool {
	if l.outcome[a] != l.outcome[b] {
		return l.outcome[a] > l.outcome[b]
	}
	if ca, cb := l.certain(a, facts), l.certain(b, facts); ca != cb {
		return ca
	}
	return a < b
}

// certain tells whether the known facts alone meet all conditions of a row.
func (l *law) certain(a answer, facts *Facts) bool {
	ends := l.look(l.meets[a], facts, same).ends
	return len(ends) == 1 && ends[0] == 1
}

// forceOf is the force of the rows that can decide, or the set's own where
// they differ. What a careful grower does is guidance whatever the row.
func (l *law) forceOf(set string, rows []answer) string {
	own := l.setForce(set)
	if own == "guidance" {
		return own
	}
	force := ""
	for _, row := range rows {
		if row == notApplying {
			continue
		}
		if f := l.rows[row].force; force == "" {
			force = f
		} else if force != f {
			return own
		}
	}
	return force
}

// setForce is the force of a set's first row: law where any of it is law.
func (l *law) setForce(set string) string {
	for i := range l.rows {
		if l.rows[i].table == set {
			return l.rows[i].force
		}
	}
	return ""
}

func (l *law) contested(rows []answer) bool {
	for _, row := range rows {
		if row != notApplying && l.rows[row].basis == "contested" {
			return true
		}
	}
	return false
}

// statusOf is the status of the material where every row that can decide has
// looked at it and it comes out the same.
func (l *law) statusOf(rows []answer, facts *Facts) string {
	for _, row := range rows {
		if row != notApplying && !l.rows[row].asks("status") {
			return ""
		}
	}
	status := ""
	for _, row := range l.look(l.tables["status"], facts, same).ends {
		if is := l.rows[row].then; status == "" {
			status = is
		} else if status != is {
			return ""
		}
	}
	return status
}

// teaOf tells whether the liquid is an agricultural tea: held longer than one
// hour before application (21 CFR 112.3).
func teaOf(facts *Facts) *bool {
	switch facts.Value(Held) {
	case "over-1h":
		is := true
		return &is
	case "up-to-1h":
		is := false
		return &is
	}
	return nil
}

// decidedBy names the applying sets that say what the verdict says.
func (v *Verdict) decidedBy() {
	for _, s := range v.Sets {
		if s.Applies == nil || !*s.Applies || s.Allowed != v.Allowed {
			continue
		}
		if v.Allowed == WaitUntil && !sameDay(s.Ruling, v.Ruling) {
			continue
		}
		v.DecidedBy = append(v.DecidedBy, s.Name)
	}
}

func sameDay(a, b Ruling) bool {
	if a.Until == nil || b.Until == nil {
		return a.Until == b.Until
	}
	return a.Until.Equal(*b.Until)
}
