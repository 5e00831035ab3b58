package oxygen

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"aerosteep/quantity"
)

// curve is a rise to be fitted. For any one kLa the model is a straight sum
// (of 1, e^(-kLa t) and, for a lagging probe, e^(-t/τ)), so that only kLa has
// to be searched for and the rest follows by linear least squares: variable
// projection (Golub & Pereyra 1973, source.GolubPereyra1973). It cannot stray
// as a search in all parameters can, and a best kLa at the end of the range
// shows that there is none.
type curve struct {
	t, y           []float64 // h from the first reading; mg/L
	decay          []float64 // e^(-kLa t) of the kLa last tried
	lag            []float64 // e^(-t/τ), or nil
	meanY, meanLag float64
}

// shape is the fitted sum for one kLa.
type shape struct {
	kla               float64 // 1/h
	final, rise, echo float64 // factors of 1, e^(-kLa t) and e^(-t/τ)
	rss               float64
}

// start is C0: what the water held at the first reading, behind the lag.
func (s shape) start(lagHours float64) float64 { return s.final + s.rise*(1-s.kla*lagHours) }

func newCurve(stretch []Reading, probe Probe) *curve {
	n := len(stretch)
	c := &curve{t: make([]float64, n), y: make([]float64, n), decay: make([]float64, n)}
	for i, r := range stretch {
		c.t[i] = (r.At - stretch[0].At).Hours()
		c.y[i] = float64(r.Oxygen)
	}
	c.meanY = mean(c.y)
	if lag := probe.lagHours(); lag > 0 {
		c.lag = make([]float64, n)
		for i, t := range c.t {
			c.lag[i] = math.Exp(-t / lag)
		}
		c.meanLag = mean(c.lag)
	}
	return c
}

// flat tells whether nothing moves at all.
func (c *curve) flat() bool {
	for _, y := range c.y {
		if y != c.y[0] {
			return false
		}
	}
	return true
}

// falls tells whether a straight line through the readings does not rise.
func (c *curve) falls() bool {
	meanT, slope := mean(c.t), 0.0
	for i := range c.t {
		slope += (c.t[i] - meanT) * (c.y[i] - c.meanY)
	}
	return slope <= 0
}

// The search runs from a rise that has done a thousandth of its way at the
// last reading to one that is over before the second; both ends are no answer.
const (
	slowest  = 1e-3
	fastest  = 40
	gridStep = 0.5 // in ln kLa
	closest  = 1e-7
	enough   = 500 // readings that show where to look
)

// best finds the kLa of the least sum of squares, and false where it lies at
// an end of the range. A long log is looked over thinned out first; a rise
// too quick for that is looked for in all of it.
func (c *curve) best() (shape, bool) {
	low, high := math.Log(slowest/c.t[len(c.t)-1]), math.Log(fastest/c.t[1])
	looks := []*curve{c}
	if len(c.t) > 2*enough {
		looks = []*curve{c.thinned(), c}
	}
	for _, look := range looks {
		middle, found := look.lookOver(low, high)
		if !found {
			continue
		}
		s, at := c.narrow(middle-gridStep, middle+gridStep)
		if math.Abs(at-middle) < gridStep-2*closest {
			return s, true
		}
	}
	return shape{}, false
}

// lookOver tries kLa in steps from end to end; false where an end is best.
func (c *curve) lookOver(low, high float64) (logKLa float64, found bool) {
	steps := int(math.Ceil((high - low) / gridStep))
	bestStep, bestRSS := 0, math.Inf(1)
	for i := 0; i <= steps; i++ {
		if rss := c.at(low + float64(i)*gridStep).rss; rss < bestRSS {
			bestStep, bestRSS = i, rss
		}
	}
	return low + float64(bestStep)*gridStep, bestStep > 0 && bestStep < steps
}

// thinned keeps about as many readings as are enough.
func (c *curve) thinned() *curve {
	every := len(c.t) / enough
	thin := &curve{}
	for i := 0; i < len(c.t); i += every {
		thin.t, thin.y = append(thin.t, c.t[i]), append(thin.y, c.y[i])
		if c.lag != nil {
			thin.lag = append(thin.lag, c.lag[i])
		}
	}
	thin.decay = make([]float64, len(thin.t))
	thin.meanY = mean(thin.y)
	if thin.lag != nil {
		thin.meanLag = mean(thin.lag)
	}
	return thin
}

// narrow finds the minimum between two ends by golden section, and the
// logarithm of its kLa.
func (c *curve) narrow(low, high float64) (shape, float64) {
	const golden = 0.6180339887498949
	a, b := high-golden*(high-low), low+golden*(high-low)
	atA, atB := c.at(a), c.at(b)
	for high-low > closest {
		if atA.rss < atB.rss {
			high, b, atB = b, a, atA
			a = high - golden*(high-low)
			atA = c.at(a)
		} else {
			low, a, atA = a, b, atB
			b = low + golden*(high-low)
			atB = c.at(b)
		}
	}
	middle := (low + high) / 2
	return c.at(middle), middle
}

// at fits the linear part for one kLa, given as its logarithm.
func (c *curve) at(logKLa float64) shape {
	s := shape{kla: math.Exp(logKLa)}
	meanDecay := 0.0
	for i, t := range c.t {
		c.decay[i] = math.Exp(-s.kla * t)
		meanDecay += c.decay[i] / float64(len(c.t))
	}
	s.rise, s.echo = c.solve(meanDecay)
	s.final = c.meanY - s.rise*meanDecay - s.echo*c.meanLag
	for i, y := range c.y {
		d := y - c.value(s, i)
		s.rss += d * d
	}
	return s
}

// value is the fitted curve at a reading; decay is that of the shape's kLa.
func (c *curve) value(s shape, i int) float64 {
	v := s.final + s.rise*c.decay[i]
	if c.lag != nil {
		v += s.echo * c.lag[i]
	}
	return v
}

// solve finds the factors of the centred columns by their normal equations.
func (c *curve) solve(meanDecay float64) (rise, echo float64) {
	dd, dy := 0.0, 0.0
	for i, y := range c.y {
		d := c.decay[i] - meanDecay
		dd += d * d
		dy += d * (y - c.meanY)
	}
	if c.lag == nil {
		return dy / dd, 0
	}
	ll, ly, dl := 0.0, 0.0, 0.0
	for i, y := range c.y {
		l := c.lag[i] - c.meanLag
		ll += l * l
		ly += l * (y - c.meanY)
		dl += l * (c.decay[i] - meanDecay)
	}
	det := dd*ll - dl*dl
	if det <= 1e-12*dd*ll { // kLa so close to 1/τ that the two cannot be told apart
		return dy / dd, 0
	}
	return (dy*ll - ly*dl) / det, (ly*dd - dy*dl) / det
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}

// estimate puts intervals on a fit; false where the data do not fix it.
func (c *curve) estimate(s shape, probe Probe) (Rise, bool) {
	n := len(c.t)
	columns := c.jacobian(s)
	inverse, ok := normalInverse(columns)
	if !ok {
		return Rise{}, false
	}
	p := len(columns)
	wide := studentT(n-p) * scatter(s.rss, n, p, probe.Resolution)
	half := func(gradient []float64) float64 { return wide * math.Sqrt(spread(inverse, gradient)) }
	lag := probe.lagHours()
	last := p - 1 // kLa is the last parameter
	toKLa, toFinal, toStart, toProduct := make([]float64, p), make([]float64, p), make([]float64, p), make([]float64, p)
	toKLa[last], toFinal[0] = 1, 1
	toStart[0], toStart[1], toStart[last] = 1, 1-s.kla*lag, -s.rise*lag
	toProduct[0], toProduct[last] = s.kla, s.final
	rise := Rise{
		KLa:       quantity.PlusMinus(quantity.PerTime(s.kla), quantity.PerTime(half(toKLa))),
		Final:     quantity.PlusMinus(quantity.Concentration(s.final), quantity.Concentration(half(toFinal))),
		Start:     quantity.PlusMinus(quantity.Concentration(s.start(lag)), quantity.Concentration(half(toStart))),
		Reached:   -100 * math.Expm1(-s.kla*c.t[n-1]),
		RMS:       quantity.Concentration(math.Sqrt(s.rss / float64(n))),
		halfWidth: half(toProduct),
	}
	for i := range c.t {
		rise.Fitted = append(rise.Fitted, quantity.Concentration(c.value(s, i)))
	}
	return rise, true
}

// jacobian is the columns of derivatives by C∞, the rise, the echo and kLa.
func (c *curve) jacobian(s shape) [][]float64 {
	ones, byKLa := make([]float64, len(c.t)), make([]float64, len(c.t))
	for i, t := range c.t {
		ones[i] = 1
		byKLa[i] = -s.rise * t * c.decay[i]
	}
	if c.lag == nil {
		return [][]float64{ones, c.decay, byKLa}
	}
	return [][]float64{ones, c.decay, c.lag, byKLa}
}

// normalInverse is (JᵀJ)⁻¹, worked out on columns of length 1 so that units
// do not spoil it; false where the columns depend on each other.
func normalInverse(columns [][]float64) (*mat.SymDense, bool) {
	p := len(columns)
	scale := make([]float64, p)
	for i, column := range columns {
		scale[i] = math.Sqrt(dot(column, column))
	}
	normal := mat.NewSymDense(p, nil)
	for i := range p {
		for j := i; j < p; j++ {
			normal.SetSym(i, j, dot(columns[i], columns[j])/(scale[i]*scale[j]))
		}
	}
	var factored mat.Cholesky
	inverse := mat.NewSymDense(p, nil)
	if !factored.Factorize(normal) || factored.InverseTo(inverse) != nil {
		return nil, false
	}
	for i := range p {
		for j := i; j < p; j++ {
			inverse.SetSym(i, j, inverse.At(i, j)/(scale[i]*scale[j]))
		}
	}
	return inverse, true
}

// spread is gᵀ M g, the variance factor of a function with gradient g.
func spread(m *mat.SymDense, gradient []float64) float64 {
	g := mat.NewVecDense(len(gradient), gradient)
	return mat.Inner(g, m, g)
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}
