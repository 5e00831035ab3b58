package hygiene

// A diagram is a question that branches on facts until it ends in an answer.
// It is kept reduced: equal questions are one node, and a fact that changes
// nothing is never asked. Facts are asked in one fixed order, so that two
// diagrams that always give the same answer are the same diagram. From this it
// follows that the facts left in a diagram are exactly those that can change
// its answer, and its ends exactly the answers that can come out.
//
// Source: R. E. Bryant 1986, Graph-based algorithms for Boolean function
// manipulation, IEEE Transactions on Computers C-35(8):677-691; here with more
// than two values to a fact and more than two ends.
type diagram struct {
	nodes  []node
	unique map[node]ref
}

// ref points to a node, or, below zero, to an end.
type ref int32

// answer is what stands at an end: a row, an outcome or a yes or no.
type answer int32

func end(a answer) ref       { return -1 - ref(a) }
func (r ref) isEnd() bool    { return r < 0 }
func (r ref) answer() answer { return answer(-1 - r) }

// toAnswer is 1 for yes and 0 for no.
func toAnswer(is bool) answer {
	if is {
		return 1
	}
	return 0
}

// mostValues is the largest number of values that any fact has.
const mostValues = 5

// node asks one fact and goes on by its value.
type node struct {
	fact  Fact
	child [mostValues]ref
}

// branchOrder is the order in which diagrams ask. Water comes first because a
// missing test of it means one thing for a public supply and another for a
// well; scope comes next because it decides which rules ask at all.
var branchOrder = []Fact{
	Water, CropUse, Market, Covered, Organic, HumanWaste, Pathogens, Method, Material,
	AnimalOrigin, Additives, Treatment, ProcessRecord, NOPCompost, Contaminated, Held,
	WaterEColi, Sanitized, Pretest, ContactDuring, ContactAfter, EdiblePart,
}

// rank is a fact's place in branchOrder.
var rank = func() (rank [factCount]int) {
	for i, f := range branchOrder {
		rank[f] = i
	}
	return rank
}()

func newDiagram() *diagram { return &diagram{unique: map[node]ref{}} }

// ask makes the node that goes on to children by the value of a fact, unless
// all lead to the same place.
func (d *diagram) ask(fact Fact, children [mostValues]ref) ref {
	same := true
	for v := 1; v < len(definitions[fact].values); v++ {
		same = same && children[v] == children[0]
	}
	if same {
		return children[0]
	}
	n := node{fact, children}
	if r, known := d.unique[n]; known {
		return r
	}
	r := ref(len(d.nodes))
	d.nodes = append(d.nodes, n)
	d.unique[n] = r
	return r
}

// is asks whether a fact has one of the values (a bit for each).
func (d *diagram) is(fact Fact, values uint8) ref {
	var children [mostValues]ref
	for v := range definitions[fact].values {
		children[v] = end(toAnswer(values&(1<<v) != 0))
	}
	return d.ask(fact, children)
}

type pair struct{ a, b ref }

// join puts two diagrams together, end by end.
func (d *diagram) join(a, b ref, at func(answer, answer) answer) ref {
	return d.joined(pair{a, b}, at, map[pair]ref{})
}

func (d *diagram) joined(p pair, at func(answer, answer) answer, known map[pair]ref) ref {
	if p.a.isEnd() && p.b.isEnd() {
		return end(at(p.a.answer(), p.b.answer()))
	}
	if r, seen := known[p]; seen {
		return r
	}
	fact := d.first(p)
	var children [mostValues]ref
	for v := range definitions[fact].values {
		children[v] = d.joined(pair{d.down(p.a, fact, v), d.down(p.b, fact, v)}, at, known)
	}
	r := d.ask(fact, children)
	known[p] = r
	return r
}

// first is the fact that either diagram asks first.
func (d *diagram) first(p pair) Fact {
	if p.a.isEnd() {
		return d.nodes[p.b].fact
	}
	if p.b.isEnd() {
		return d.nodes[p.a].fact
	}
	a, b := d.nodes[p.a].fact, d.nodes[p.b].fact
	if rank[a] <= rank[b] {
		return a
	}
	return b
}

// down follows one value of a fact, or stays where the fact is not asked.
func (d *diagram) down(r ref, fact Fact, value int) ref {
	if r.isEnd() || d.nodes[r].fact != fact {
		return r
	}
	return d.nodes[r].child[value]
}

// mapped gives every end another answer.
func (d *diagram) mapped(r ref, to func(answer) answer) ref {
	return d.join(r, end(0), func(a, _ answer) answer { return to(a) })
}

// choose is yes where the condition holds, else otherwise.
func (d *diagram) choose(condition, then, otherwise ref) ref {
	const undecided = answer(1 << 30)
	kept := d.join(condition, then, func(is, a answer) answer {
		if is == 1 {
			return a
		}
		return undecided
	})
	return d.join(kept, otherwise, func(a, b answer) answer {
		if a == undecided {
			return b
		}
		return a
	})
}
