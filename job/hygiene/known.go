package hygiene

// view is a diagram seen by somebody who knows some of the facts: known facts
// are followed, unknown ones branch. It is built anew for each case.
type view struct {
	*diagram
	whole *diagram
	facts *Facts
	seen  map[ref]ref
}

// outlook is what a view comes to: every end that can still come out, and
// every fact on which that hangs.
type outlook struct {
	ends  []answer
	hangs [factCount]bool
}

// look follows the known facts from r. A missing test of the brew water counts
// as clean where the water is a public supply, whose own results are on file.
func (d *diagram) look(r ref, facts *Facts, as func(answer) answer) outlook {
	if only, settled := d.follow(r, facts); settled {
		return outlook{ends: []answer{as(only)}}
	}
	v := &view{diagram: newDiagram(), whole: d}
	return v.outlook(v.restricted(r, facts, as))
}

// follow walks down as long as every fact asked is known.
func (d *diagram) follow(r ref, facts *Facts) (answer, bool) {
	for !r.isEnd() {
		n := &d.nodes[r]
		value := facts.value[n.fact]
		if value == 0 {
			return 0, false
		}
		r = n.child[value-1]
	}
	return r.answer(), true
}

// restricted is the diagram that is left when the known facts are filled in.
func (v *view) restricted(r ref, facts *Facts, as func(answer) answer) ref {
	if facts.value[Water] != 0 || facts.value[WaterEColi] != 0 {
		v.facts, v.seen = facts, map[ref]ref{}
		return v.fill(r, as)
	}
	var children [mostValues]ref
	for value := range definitions[Water].values {
		supposed := facts.supposing(Water, value)
		v.facts, v.seen = &supposed, map[ref]ref{}
		children[value] = v.fill(r, as)
	}
	return v.ask(Water, children)
}

// supposing is the facts with one of them supposed to have a value.
func (f *Facts) supposing(fact Fact, value int) Facts {
	g := *f
	g.value[fact] = uint8(value + 1)
	return g.settled()
}

// settled fills in what follows from the facts without asking: no rule orders
// a pathogen test, and a public supply is tested by the supplier.
func (f Facts) settled() Facts {
	if f.value[Pathogens] == 0 {
		f = f.With(Pathogens, "not-tested")
	}
	if f.Value(Water) == "municipal" && f.value[WaterEColi] == 0 {
		f = f.With(WaterEColi, "not-detected")
	}
	return f
}

func (v *view) fill(r ref, as func(answer) answer) ref {
	if r.isEnd() {
		return end(as(r.answer()))
	}
	if filled, seen := v.seen[r]; seen {
		return filled
	}
	n := &v.whole.nodes[r]
	if value := v.facts.value[n.fact]; value != 0 {
		filled := v.fill(n.child[value-1], as)
		v.seen[r] = filled
		return filled
	}
	var children [mostValues]ref
	for value := range definitions[n.fact].values {
		children[value] = v.fill(n.child[value], as)
	}
	filled := v.ask(n.fact, children)
	v.seen[r] = filled
	return filled
}

// outlook collects ends and facts below r.
func (v *view) outlook(r ref) outlook {
	var o outlook
	visited := make([]bool, len(v.nodes))
	v.collect(r, visited, &o)
	return o
}

func (v *view) collect(r ref, visited []bool, o *outlook) {
	if r.isEnd() {
		o.add(r.answer())
		return
	}
	if visited[r] {
		return
	}
	visited[r] = true
	n := &v.nodes[r]
	o.hangs[n.fact] = true
	for value := range definitions[n.fact].values {
		v.collect(n.child[value], visited, o)
	}
}

func (o *outlook) add(a answer) {
	for _, known := range o.ends {
		if known == a {
			return
		}
	}
	o.ends = append(o.ends, a)
}

func (o *outlook) has(a answer) bool {
	for _, known := range o.ends {
		if known == a {
			return true
		}
	}
	return false
}

// missing lists the facts that the outlook hangs on, in the order of asking.
func (o *outlook) missing() []Fact {
	var missing []Fact
	for f := Material; f < factCount; f++ {
		if o.hangs[f] {
			missing = append(missing, f)
		}
	}
	return missing
}
