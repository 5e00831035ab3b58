package forecast

import "math"

// thermal reads what a thermometer can tell about: the water and what it
// stands in.
var thermal = []func(*member) *float64{
	func(m *member) *float64 { return &m.water },
	func(m *member) *float64 { return &m.room },
	func(m *member) *float64 { return &m.offset },
	func(m *member) *float64 { return &m.cosine },
	func(m *member) *float64 { return &m.sine },
	func(m *member) *float64 { return &m.cooling },
	func(m *member) *float64 { return &m.lag },
}

// takeTemperature brings the members toward a reading of the water's
// temperature: the linear update of an ensemble Kalman filter (Evensen 1994,
// J. Geophys. Res. 99:10143) with the reading perturbed for each member. Heat
// is close to linear, and oxygen's weights stay free for oxygen. Members
// indoors and outdoors are two ensembles; how well each fits weighs them.
func (e *ensemble) takeTemperature(reading float64) (believed bool) {
	mean, spread := e.weighted(func(m *member) float64 { return m.water }, nil)
	if math.Abs(reading-mean) > 4*math.Hypot(spread, 2*waterSpread)+2 {
		return false
	}
	for i := range e.members {
		m := &e.members[i]
		d := (reading - m.water) / math.Hypot(waterSpread, 0.8)
		e.weights[i] *= normalDensity(d) + 1e-3
	}
	e.normalise()
	for _, inside := range []bool{true, false} {
		e.shift(reading, func(m *member) bool { return m.indoors == inside })
	}
	return true
}

// shift updates one of the two ensembles.
func (e *ensemble) shift(reading float64, in func(*member) bool) {
	mean, spread := e.weighted(func(m *member) float64 { return m.water }, in)
	if math.IsNaN(mean) {
		return
	}
	variance := float64(spread*spread) + waterSpread*waterSpread
	gains := make([]float64, len(thermal))
	for k, get := range thermal {
		middle, _ := e.weighted(func(m *member) float64 { return *get(m) }, in)
		product, _ := e.weighted(func(m *member) float64 { return float64((*get(m) - middle) * (m.water - mean)) }, in)
		gains[k] = product / variance
	}
	for i := range e.members {
		m := &e.members[i]
		if !in(m) {
			continue
		}
		surprise := reading + float64(waterSpread*e.noise.Next()) - m.water
		for k, get := range thermal {
			*get(m) += float64(gains[k] * surprise)
		}
		m.lag = math.Max(0.5, m.lag)
		m.cooling = math.Max(0, m.cooling)
	}
}

// weighted is the mean and spread of a number over the members that are in;
// NaN where none is.
func (e *ensemble) weighted(read func(*member) float64, in func(*member) bool) (mean, spread float64) {
	sum, first, second := 0.0, 0.0, 0.0
	for i := range e.members {
		m := &e.members[i]
		if in != nil && !in(m) {
			continue
		}
		w, v := e.weights[i], read(m)
		sum += w
		first += float64(w * v)
		second += float64(float64(w*v) * v)
	}
	if !(sum > 0) {
		return math.NaN(), 0
	}
	mean = first / sum
	return mean, math.Sqrt(math.Max(0, second/sum-float64(mean*mean)))
}

// share is how much of the weight lies on members of which something holds.
func (e *ensemble) share(holds func(*member) bool) float64 {
	mean, _ := e.weighted(func(m *member) float64 {
		if holds(m) {
			return 1
		}
		return 0
	}, nil)
	return mean
}
