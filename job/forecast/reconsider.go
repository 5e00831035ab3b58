package forecast

import "aerosteep/numeric"

// A reading that hardly any member can explain says that something happened
// since the last one which few of them went through. That stretch is then
// walked again, with other noise and bolder, and the best of all walks go on.
const (
	surprised   = 0.04 // share of the members' number that must still carry weight
	secondWalks = 3
	bolder      = 4.0 // by which surges and failures are more frequent in such a walk
)

// waypoint is the ensemble as a reading left it.
type waypoint struct {
	members []member
	weights []float64
	step    int // to be walked next
}

// keepMark keeps the ensemble as it is before a step.
func (f *follow) keepMark(step int) {
	f.mark.members = append(f.mark.members[:0], f.members...)
	f.mark.weights = append(f.mark.weights[:0], f.weights...)
	f.mark.step = step
}

// reconsider walks again since the last reading where this one surprised the
// members, and draws those that go on from all walks.
func (f *follow) reconsider(at int, r sight, water *float64) {
	n := len(f.members)
	if numeric.EffectiveSize(f.weights) > surprised*float64(n) {
		return
	}
	pool := append([]member(nil), f.members...)
	weights := append([]float64(nil), f.weights...)
	boldness := f.boldness
	f.boldness = bolder
	for range secondWalks {
		copy(f.members, f.mark.members)
		copy(f.weights, f.mark.weights)
		f.again(at)
		if water != nil {
			f.takeTemperature(*water)
		}
		f.weighOxygen(&f.steps[at], r)
		pool, weights = append(pool, f.members...), append(weights, f.weights...)
	}
	f.boldness = boldness
	f.drawFrom(pool, weights)
}

// again walks the members from the mark to the end of a step.
func (f *follow) again(at int) {
	for i := f.mark.step; i <= at; i++ {
		s := &f.steps[i]
		if s.knot {
			f.fail(s)
		}
		f.stride(s)
	}
}

// drawFrom draws the members that go on from a larger pool.
func (f *follow) drawFrom(pool []member, weights []float64) {
	drawn := numeric.Systematic(weights, f.noise.Uniform.Float64(), nil)
	walks := len(pool) / len(f.members)
	offset := f.noise.Uniform.IntN(walks)
	for i := range f.members {
		f.members[i] = pool[drawn[i*walks+offset]]
		f.weights[i] = 1
	}
	f.loosen()
}
