package forecast

import (
	"math"
	"testing"
)

// The formula of partial pooling by hand: two lessons of 0.2 and 0.4 with spreads
// of 0.16, within 0.12 and between 0.4: weights 25, precision 1/0.16 + 50 = 56.25,
// shift 15/56.25, spread² 0.0144 + 1/56.25.
func TestPoolByHand(t *testing.T) {
	p := pool([]float64{0.2, 0.4}, []float64{0.16, 0.16}, 0.4, 0.12)
	if math.Abs(p.Shift-15/56.25) > 1e-12 || math.Abs(p.Spread-math.Sqrt(0.0144+1/56.25)) > 1e-12 || p.Batches != 2 {
		t.Errorf("%+v", p)
	}
	if none := pool(nil, nil, 0.4, 0.12); none != (Pooled{}) {
		t.Errorf("%+v of nothing", none)
	}
}

// One odd batch among five does not rule, one batch alone moves little, and many
// that agree are believed.
func TestOneOddBatchDoesNotRule(t *testing.T) {
	spreads := []float64{0.15, 0.15, 0.15, 0.15, 0.15}
	calm := pool([]float64{0.02, -0.03, 0, 0.05, -0.04}, spreads, transferBetween, transferWithin)
	odd := pool([]float64{0.02, -0.03, 0, 0.05, -1.5}, spreads, transferBetween, transferWithin)
	if math.Abs(odd.Shift-calm.Shift) > 0.1 {
		t.Errorf("an odd batch moves the shift from %v to %v", calm.Shift, odd.Shift)
	}
	if one := pool([]float64{-0.5}, []float64{0.3}, transferBetween, transferWithin); one.Shift < -0.35 || one.Shift > 0 {
		t.Errorf("one batch alone moves it to %v", one.Shift)
	}
	many := make([]float64, 20)
	wide := make([]float64, 20)
	for i := range many {
		many[i], wide[i] = -0.5, 0.3
	}
	if all := pool(many, wide, transferBetween, transferWithin); all.Shift > -0.45 || all.Spread > 0.15 {
		t.Errorf("twenty that agree: %+v", all)
	}
}

// A rig whose air is half of what is believed: brews drawn from the model are read
// hourly by a good meter, and their lessons are pooled. Oxygen alone tells uptake
// over air and hardly either of them; what the two lessons say together brings the
// forecast of the next batch nearer to what that rig does.
func TestWhatFinishedBatchesTeach(t *testing.T) {
	believed := fed(400)
	truth := believed
	truth.Transfer.Estimate /= 2
	truth.Transfer.Low95, truth.Transfer.High95 = truth.Transfer.Estimate*0.98, truth.Transfer.Estimate*1.02
	var lessons []Lesson
	for seed := uint64(1); seed <= 6; seed++ {
		l, taught, err := LessonOf(Question{Setup: believed, Now: 24, Seed: seed, Log: brewOnce(truth, 24, seed)})
		if err != nil || !taught {
			t.Fatalf("%v %v", taught, err)
		}
		lessons = append(lessons, l)
	}
	taught := believed
	taught.Learned = Learn(lessons, lessons)
	was, is, does := Prior(believed, 2000, 9), Prior(taught, 2000, 9), Prior(truth, 2000, 9)
	before, after := math.Abs(was.MinDO.Median-does.MinDO.Median), math.Abs(is.MinDO.Median-does.MinDO.Median)
	if after > 0.75*before {
		t.Errorf("lowest oxygen believed %v, learned %v, of that rig %v", was.MinDO.Median, is.MinDO.Median, does.MinDO.Median)
	}
	if l := taught.Learned; l.Uptake.Spread > 0.75*uptakeBetween || l.Transfer.Spread > transferBetween {
		t.Errorf("six batches leave the spreads at %v and %v", l.Uptake.Spread, l.Transfer.Spread)
	}
	if _, taught, err := LessonOf(Question{Setup: believed, Now: 24, Log: Log{}}); taught || err != nil {
		t.Errorf("a batch without readings teaches: %v", err)
	}
}

// brewOnce is one brew of a set-up, read every hour by a good meter.
func brewOnce(s Setup, hours float64, seed uint64) Log {
	e := newEnsemble(&s, fewestMembers, seed)
	var log Log
	steps := timeline(&s, changesOf(s.Additions), hours)
	for i := range steps {
		e.stride(&steps[i])
		if to := steps[i].to(); onGrid(to) {
			do, water := e.members[0].oxygen, e.members[0].water
			log.Readings = append(log.Readings, Reading{Hour: to, DO: &do, Water: &water})
		}
	}
	return log
}
