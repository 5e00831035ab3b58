package numeric

// dormandPrince holds the stages of the explicit pair. The last stage of a
// step is the first of the next.
type dormandPrince struct {
	f     System
	k     [7][]float64
	y     []float64
	dense [5][]float64
	h     float64
	calls int
	ready bool // k[0] holds the rate at the start of the coming step
}

// The pair's nodes and coefficients, and those of its dense output.
var (
	dpNodes = [7]float64{0, 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1, 1}
	dpA     = [7][6]float64{
		{},
		{1.0 / 5},
		{3.0 / 40, 9.0 / 40},
		{44.0 / 45, -56.0 / 15, 32.0 / 9},
		{19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
		{9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
		{35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84},
	}
	dpError = [7]float64{71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40}
	dpDense = [7]float64{
		-12715105075.0 / 11282082432, 0, 87487479700.0 / 32700410799, -10690763975.0 / 1880347072,
		701980252875.0 / 199316789632, -1453857185.0 / 822651844, 69997945.0 / 29380423,
	}
)

func newDormandPrince(f System, n int) *dormandPrince {
	d := &dormandPrince{f: f, y: make([]float64, n)}
	for i := range d.k {
		d.k[i] = make([]float64, n)
	}
	for i := range d.dense {
		d.dense[i] = make([]float64, n)
	}
	return d
}

func (d *dormandPrince) order() float64   { return 5 }
func (d *dormandPrince) evaluations() int { return d.calls }

func (d *dormandPrince) attempt(t, h float64, y, next, err []float64) {
	if !d.ready {
		d.f(t, y, d.k[0])
		d.calls++
		d.ready = true
	}
	d.h = h
	for stage := 1; stage < 7; stage++ {
		for i := range y {
			sum := 0.0
			for j := range stage {
				sum += dpA[stage][j] * d.k[j][i]
			}
			d.y[i] = y[i] + h*sum
		}
		d.f(t+dpNodes[stage]*h, d.y, d.k[stage])
		d.calls++
	}
	copy(next, d.y)
	for i := range y {
		sum, dense := 0.0, 0.0
		for j := range 7 {
			sum += dpError[j] * d.k[j][i]
			dense += dpDense[j] * d.k[j][i]
		}
		err[i] = h * sum
		d.prepareDense(i, y[i], next[i], dense)
	}
}

func (d *dormandPrince) prepareDense(i int, y, next, dense float64) {
	change := next - y
	bend := d.h*d.k[0][i] - change
	d.dense[0][i] = y
	d.dense[1][i] = change
	d.dense[2][i] = bend
	d.dense[3][i] = change - d.h*d.k[6][i] - bend
	d.dense[4][i] = d.h * dense
}

func (d *dormandPrince) between(share float64, into []float64) {
	rest := 1 - share
	for i := range into {
		into[i] = d.dense[0][i] + share*(d.dense[1][i]+rest*(d.dense[2][i]+share*(d.dense[3][i]+rest*d.dense[4][i])))
	}
}

func (d *dormandPrince) accept() { d.k[0], d.k[6] = d.k[6], d.k[0] }
