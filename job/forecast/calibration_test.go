package forecast

import (
	"math"
	"testing"

	"aerosteep/numeric"
	"aerosteep/science/growth"
)

// Simulation-based calibration (Talts et al. 2018, arXiv:1804.06788): a brew
// drawn from the priors, its readings taken through its own meter, and the
// forecast made from them. The rank of its true oxygen four hours on among
// the members is spread evenly if the readings are weighed as they should be.
// A chi-squared test of five bins at a fixed seed; 18.5 is the value that an
// even spread passes in 999 of 1000.
func TestCalibratedOnItsOwnModel(t *testing.T) {
	const brews, bins, ahead = 200, 5, 4.0
	counts := make([]float64, bins)
	for brew := range brews {
		s := fed(100 + 10*float64(brew))
		truth := newEnsemble(&s, 1, uint64(1000+brew))
		noise := numeric.NewNormals(uint64(brew), 99)
		log, answer := Log{}, 0.0
		now := 6 + float64(brew%10)
		for _, st := range timeline(&s, changesOf(s.Additions), now+ahead, now) {
			truth.seen = len(log.Readings) > 0 // surges begin in a brew as the forecast has them
			truth.boldness = fading(st.from - now)
			truth.stride(&st)
			m := &truth.members[0]
			if st.row >= 0 && st.row%4 == 1 && st.to() <= now {
				_, shown, _ := m.showing(&st, st.to(), truth.climate)
				log.Readings = append(log.Readings, reading(st.to(), math.Max(0, shown+oxygenSpread*noise.Next()), m.water+waterSpread*noise.Next()))
			}
			answer = m.oxygen
		}
		f, err := Run(Question{Setup: s, Now: now, Hours: ahead, Members: 400, Seed: 5, Log: log})
		if err != nil {
			t.Fatal(err)
		}
		under := 0
		last := f.paths.oxygen[rowAt(f.paths.hours, now+ahead)]
		for _, c := range last {
			if c < answer {
				under++
			}
		}
		counts[min(bins-1, under*bins/len(last))]++
	}
	chi := 0.0
	for _, c := range counts {
		d := c - brews/bins
		chi += d * d / (brews / bins)
	}
	if chi > 18.5 {
		t.Errorf("ranks fall %v, chi-squared %.1f", counts, chi)
	}
}

// rowAt is the row nearest to an hour.
func rowAt(hours []float64, hour float64) int {
	best := 0
	for i, h := range hours {
		if math.Abs(h-hour) < math.Abs(hours[best]-hour) {
			best = i
		}
	}
	return best
}

// The thermometer's update against the exact Kalman answer of a linear case:
// one number with prior mean 20 and spread 2, one reading of 23: the posterior
// mean is 20 + 3·4/(4 + R), its variance 4 R/(4 + R), R the reading's variance
// (Kalman 1960).
func TestThermometerMeetsKalman(t *testing.T) {
	s := drum()
	e := newEnsemble(&s, 20000, 3)
	noise := numeric.NewNormals(11, 12)
	for i := range e.members {
		e.members[i].water, e.members[i].indoors = 20+2*noise.Next(), true
	}
	all := func(*member) bool { return true }
	e.shift(23, all)
	const r = waterSpread * waterSpread
	mean, spread := e.weighted(func(m *member) float64 { return m.water }, nil)
	if want := 20 + 3*4/(4+r); math.Abs(mean-want) > 0.02 {
		t.Errorf("mean %.3f, exact %.3f", mean, want)
	}
	if want := math.Sqrt(4 * r / (4 + r)); math.Abs(spread-want) > 0.01 {
		t.Errorf("spread %.3f, exact %.3f", spread, want)
	}
}

// The fixed grid against the adaptive integrator on the same equations: the
// living model of one member, at held temperature. The largest difference is
// one of time: food that runs out a quarter of an hour sooner or later.
func TestGridAgainstTheIntegrator(t *testing.T) {
	s := fed(700)
	held := s.Start
	s.Held = &held
	e := newEnsemble(&s, 40, 9)
	steps := timeline(&s, changesOf(s.Additions), 24)
	worst, sum, n := 0.0, 0.0, 0.0
	for i := range e.members {
		m := e.members[i]
		m.strayUptake, m.strayTransfer = 0, 0
		m.refresh()
		start := m
		for j := range steps[0].changes {
			start.happen(&steps[0].changes[j], e.noise)
		}
		exact, err := numeric.IntegrateStiff(continuous(start, e, &steps[0]), 0, asVector(&start), 24, numeric.Tolerance{Relative: 1e-7, Absolute: 1e-7})
		if err != nil {
			t.Fatal(err)
		}
		for j := range steps {
			for c := range steps[j].changes {
				m.happen(&steps[j].changes[c], e.noise)
			}
			m.advance(&steps[j], e.climate)
		}
		d := math.Abs(m.oxygen - exact.Y[7])
		worst, sum, n = math.Max(worst, d), sum+d, n+1
	}
	if worst > 0.8 || sum/n > 0.05 {
		t.Errorf("oxygen after a day is up to %.3f off, on average %.3f mg/L", worst, sum/n)
	}
}

func asVector(m *member) []float64 {
	b := &m.life
	return []float64{b.Ready, b.Slow, b.Bacteria, b.Fungi, b.Grazers, b.Nitrogen, b.Bound, m.oxygen}
}

// continuous is the member as a system of equations. The span over which food
// may not run out is short.
func continuous(m member, e *ensemble, s *step) numeric.System {
	row := e.climate.row(m.water)
	k, ceiling := m.kLa(s)*row.transfer, row.saturation*m.ceiling
	return func(_ float64, y, rate []float64) {
		b := m.life
		b.Ready, b.Slow, b.Bacteria, b.Fungi = math.Max(0, y[0]), math.Max(0, y[1]), math.Max(0, y[2]), math.Max(0, y[3])
		b.Grazers, b.Nitrogen, b.Bound = math.Max(0, y[4]), math.Max(0, y[5]), math.Max(0, y[6])
		var p growth.Pace
		m.kinetic.Pace(&p, &b, growthClimate(row, m.shape), 0.01)
		o := math.Max(0, y[7])
		o /= m.kinetic.HalfOxygen + o
		for i, v := range []float64{p.Ready, p.Slow, p.Bacteria, p.Fungi, p.Grazers, p.Nitrogen, p.Bound} {
			rate[i] = o * v
		}
		rate[7] = k*(ceiling-y[7]) - o*p.Demand
	}
}
