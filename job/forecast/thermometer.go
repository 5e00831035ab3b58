package forecast

import "math"

// thermals is how many numbers a thermometer can tell about: the water and
// what it stands in.
const thermals = 7

func (m *member) thermal() [thermals]*float64 {
	return [thermals]*float64{&m.water, &m.room, &m.offset, &m.cosine, &m.sine, &m.cooling, &m.lag}
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
	gains, found := e.gains(in)
	if !found {
		return
	}
	for i := range e.members {
		m := &e.members[i]
		if !in(m) {
			continue
		}
		surprise := reading + float64(waterSpread*e.noise.Next()) - m.water
		for k, v := range m.thermal() {
			*v += float64(gains[k] * surprise)
		}
		if m.lag < 0.5 {
			m.lag = 0.5
		}
		if m.cooling < 0 {
			m.cooling = 0
		}
	}
}

// gains are how much each number moves for a degree of surprise: its
// covariance with the water over the variance of water and reading together.
// The sums are taken about one member, so that no digits are lost.
func (e *ensemble) gains(in func(*member) bool) (gains [thermals]float64, found bool) {
	var about, first, product [thermals]float64
	sum := 0.0
	for i := range e.members {
		m := &e.members[i]
		if !in(m) {
			continue
		}
		values := m.thermal()
		if sum == 0 {
			for k, v := range values {
				about[k] = *v
			}
		}
		w := e.weights[i]
		sum += w
		water := float64(w * (m.water - about[0]))
		for k, v := range values {
			d := *v - about[k]
			first[k] += float64(w * d)
			product[k] += float64(water * d)
		}
	}
	if !(sum > 0) {
		return gains, false
	}
	variance := product[0]/sum - float64(first[0]/sum)*(first[0]/sum) + waterSpread*waterSpread
	for k := range gains {
		gains[k] = (product[k]/sum - float64(first[k]/sum)*(first[0]/sum)) / variance
	}
	return gains, true
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
