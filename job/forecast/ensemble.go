package forecast

import (
	"aerosteep/numeric"
	"aerosteep/science/growth"
)

func growthClimate(row *climateRow, shape int) growth.Climate {
	return growth.Climate{Bacteria: row.bacteria[shape], Fungi: row.fungi, Decay: row.decay}
}

// ensemble is all members with the weights that readings gave them.
type ensemble struct {
	setup    *Setup
	climate  *climate
	limit    float64
	members  []member
	weights  []float64
	noise    *numeric.Normals
	boldness float64 // of surges and failures; 1 but where a reading surprised

	seen  bool // oxygen was measured
	often bool // readings come often
	turn  int  // of the traits to be loosened

	// room that is used again and again
	spare  []member
	drawn  []int
	logs   []float64
	sorter sorter
}

// Streams keep the draws of the parts apart, so that a change in one leaves
// the others' digits alone.
const (
	streamPrior  = 1
	streamWander = 2
	streamFuture = 3
)

func newEnsemble(s *Setup, members int, seed uint64) *ensemble {
	e := &ensemble{
		setup: s, climate: tabulate(s), limit: s.limit(),
		members: make([]member, members), weights: make([]float64, members),
		noise: numeric.NewNormals(seed, streamWander), boldness: 1,
	}
	d := drawer{Normals: numeric.NewNormals(seed, streamPrior), setup: s, climate: e.climate}
	for i := range e.members {
		e.members[i] = d.member()
		e.weights[i] = 1
	}
	return e
}

// stride moves every member over one step.
func (e *ensemble) stride(s *step) {
	if s.lostUntil > 0 {
		e.stopSome(s)
	}
	surges := e.surges()
	for i := range e.members {
		m := &e.members[i]
		if s.knot {
			m.wander(e.noise, surges)
		}
		for j := range s.changes {
			m.happen(&s.changes[j], e.noise)
		}
		m.advance(s, e.climate)
		m.remember(s.to(), e.limit)
	}
	if s.counted {
		e.countUnder(s)
	}
}

func (e *ensemble) noiseOf(seed uint64) *numeric.Normals {
	return numeric.NewNormals(seed, streamFuture)
}
