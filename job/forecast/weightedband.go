package forecast

import "slices"

// weightedValue is one member's value with its weight.
type weightedValue struct{ value, weight float64 }

// band is the weighted band of a number over all members.
func (e *ensemble) band(read func(*member) float64) Band {
	pairs := e.pairs
	if pairs == nil {
		pairs = make([]weightedValue, len(e.members))
		e.pairs = pairs
	}
	total := 0.0
	for i := range e.members {
		pairs[i] = weightedValue{read(&e.members[i]), e.weights[i]}
		total += e.weights[i]
	}
	slices.SortFunc(pairs, func(a, b weightedValue) int {
		switch {
		case a.value < b.value:
			return -1
		case a.value > b.value:
			return 1
		}
		return 0
	})
	q := weightedQuantiles(pairs, total, []float64{0.025, 0.10, 0.25, 0.50, 0.75, 0.90, 0.975})
	return Band{Low95: q[0], Low80: q[1], Low50: q[2], Median: q[3], High50: q[4], High80: q[5], High95: q[6]}
}

// weightedQuantiles reads rising quantiles of sorted pairs: linear between the
// middles of their weights.
func weightedQuantiles(pairs []weightedValue, total float64, at []float64) []float64 {
	out := make([]float64, 0, len(at))
	reached, before, i := 0.0, -1.0, 0
	last := pairs[0].value
	for _, p := range at {
		for i < len(pairs) && (reached+0.5*pairs[i].weight)/total < p {
			before = (reached + 0.5*pairs[i].weight) / total
			last = pairs[i].value
			reached += pairs[i].weight
			i++
		}
		switch {
		case i == len(pairs):
			out = append(out, pairs[len(pairs)-1].value)
		case before < 0:
			out = append(out, pairs[0].value)
		default:
			here := (reached + 0.5*pairs[i].weight) / total
			out = append(out, last+(pairs[i].value-last)*(p-before)/(here-before))
		}
	}
	return out
}
