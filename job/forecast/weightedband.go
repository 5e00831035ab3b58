package forecast

import (
	"math"
	"slices"
)

// weightedValue is one member's value with its weight.
type weightedValue struct{ value, weight float64 }

// bandShares are the shares of the members under the seven numbers of a Band.
var bandShares = [7]float64{0.025, 0.10, 0.25, 0.50, 0.75, 0.90, 0.975}

// bins of the sorter. Values are thrown into bins of equal width first; only
// the few bins that hold a quantile are put in order. It takes a tenth of the
// time of sorting them all.
const bandBins = 1024

// sorter is the room that bands are read in, used again and again.
type sorter struct {
	values []weightedValue
	bin    []uint16
	weight [bandBins]float64
	inside []weightedValue
}

// band is the weighted band of a number over all members: the least value up
// to which lies each share of the weight.
func (e *ensemble) band(read func(*member) float64) Band {
	s := &e.sorter
	if len(s.values) != len(e.members) {
		s.values, s.bin = make([]weightedValue, len(e.members)), make([]uint16, len(e.members))
	}
	for i := range e.members {
		s.values[i] = weightedValue{read(&e.members[i]), e.weights[i]}
	}
	q := s.quantiles()
	return Band{Low95: q[0], Low80: q[1], Low50: q[2], Median: q[3], High50: q[4], High80: q[5], High95: q[6]}
}

// quantiles reads the seven of a Band.
func (s *sorter) quantiles() (out [7]float64) {
	total := s.throw()
	under, at := 0.0, 0
	for bin := range bandBins {
		reached := under + s.weight[bin]
		if at < len(out) && reached >= bandShares[at]*total {
			at = s.within(uint16(bin), under, total, at, &out)
		}
		under = reached
	}
	for ; at < len(out); at++ {
		out[at] = s.largest()
	}
	return out
}

// throw puts every value into its bin and returns the weight of all.
func (s *sorter) throw() (total float64) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, v := range s.values {
		if v.value < low {
			low = v.value
		}
		if v.value > high {
			high = v.value
		}
	}
	s.weight = [bandBins]float64{}
	scale := 0.0
	if high > low {
		scale = (bandBins - 1) / (high - low)
	}
	for i, v := range s.values {
		b := uint16(float64((v.value - low) * scale))
		s.bin[i] = b
		s.weight[b] += v.weight
		total += v.weight
	}
	return total
}

// within reads the quantiles that lie in one bin and returns the next one to
// be read.
func (s *sorter) within(bin uint16, under, total float64, at int, out *[7]float64) int {
	s.inside = s.inside[:0]
	for i, b := range s.bin {
		if b == bin {
			s.inside = append(s.inside, s.values[i])
		}
	}
	slices.SortFunc(s.inside, func(a, b weightedValue) int { return compare(a.value, b.value) })
	for _, v := range s.inside {
		under += v.weight
		for at < len(out) && under >= bandShares[at]*total {
			out[at] = v.value
			at++
		}
	}
	return at
}

func (s *sorter) largest() float64 {
	most := math.Inf(-1)
	for _, v := range s.values {
		most = math.Max(most, v.value)
	}
	return most
}
