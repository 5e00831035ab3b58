package forecast

import (
	"math"
	"slices"
	"testing"
)

// 20 cm at hour 2 and 15 at hour 4 rise 2.5 cm an hour: the rim is reached six
// hours later, at hour 10 (proportion).
func TestOverflowByTwoDistances(t *testing.T) {
	rim := func(hour, cm float64) Reading { return Reading{Hour: hour, ToRim: &cm} }
	ask := func(now float64, readings ...Reading) *Overflow {
		return (&Question{Now: now, Log: Log{Readings: readings}}).Overflow()
	}
	o := ask(5, rim(2, 20), rim(4, 15))
	if o == nil || math.Abs(o.Hour-10) > 1e-12 || !(o.Low < 10 && o.High > 10) || math.IsInf(o.High, 1) {
		t.Fatalf("%+v", o)
	}
	// (15 - 1)/(5 + 1.414) x 2 h and (15 + 1)/(5 - 1.414) x 2 h after hour 4.
	if math.Abs(o.Low-8.3653) > 1e-3 || math.Abs(o.High-12.9237) > 1e-3 {
		t.Errorf("from %v to %v", o.Low, o.High)
	}
	if slow := ask(5, rim(2, 20), rim(4, 19)); slow == nil || !math.IsInf(slow.High, 1) {
		t.Errorf("a rise that a ruler cannot tell from none: %+v", slow)
	}
	if last := ask(7, rim(0, 25), rim(2, 20), rim(4, 15), rim(6, 14)); last == nil || last.Hour < 20 {
		t.Errorf("of several the last two count: %+v", last)
	}
	for _, none := range []*Overflow{ask(5), ask(5, rim(2, 20)), ask(5, rim(2, 15), rim(4, 20)), ask(5, rim(2, 15), rim(4, 15)), ask(3, rim(2, 20), rim(4, 15)), ask(40, rim(2, 20), rim(4, 15)), ask(30, rim(2, 20), rim(29, 15))} {
		if none != nil {
			t.Errorf("nothing can be said, yet %+v", none)
		}
	}
}

// A smell is a small worth of its own: sour and rotten raise the chance, earthy
// lowers it a little, none says nothing.
func TestSmellWeighsInALittle(t *testing.T) {
	chance := func(smell Smell) float64 {
		q := Question{Setup: fed(700), Now: 8, Hours: 16, Members: 2000, Seed: 1}
		if smell != "" {
			q.Log.Readings = []Reading{{Hour: 8, Smell: smell}}
		}
		f, err := Run(q)
		if err != nil {
			t.Fatal(err)
		}
		return *f.Chance
	}
	usual, rotten, sour, earthy := chance(""), chance(Rotten), chance(Sour), chance(Earthy)
	if !(rotten > sour && sour > usual+2 && usual >= earthy-0.5 && usual-earthy < 5) {
		t.Errorf("without %v, rotten %v, sour %v, earthy %v", usual, rotten, sour, earthy)
	}
	if none := chance(NoSmell); math.Abs(none-usual) > 3 {
		t.Errorf("no smell moves the chance from %v to %v", usual, none)
	}
}

// Air that was found off stopped at any moment since it was seen on: the hours
// under the limit lie between those of a stop at once and of one just before, and
// their spread says that nobody knows.
func TestFoundOffIntegratesOverTheUnknownMoment(t *testing.T) {
	ask := func(events ...Event) *Forecast {
		f, err := Run(Question{Setup: fed(400), Now: 14, Hours: 10, Members: 1000, Seed: 1, Log: Log{Readings: falling().Readings[:2], Events: events}})
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	f := ask(Event{Hour: 13, What: FoundOff, Seen: hoursSpan(8)})
	if f.Lost == nil || f.Lost.From != 5 || f.Lost.Until != 13 {
		t.Fatalf("%+v", f.Lost)
	}
	if u := f.Lost.Under; !(u.Low80 < u.Median && u.Median < u.High80 && u.High80 <= 9 && u.High80-u.Low80 > 3) {
		t.Errorf("%+v h under the limit of 9 h since", f.Lost.Under)
	}
	early := ask(Event{Hour: 5, What: AirOff})
	if f.State.DO.Median < early.State.DO.Median-0.05 || f.AirFailing() != 100 {
		t.Errorf("now %v, after a stop at once %v, failing %v", f.State.DO.Median, early.State.DO.Median, f.AirFailing())
	}
	back := ask(Event{Hour: 13, What: FoundOff, Seen: hoursSpan(8)}, Event{Hour: 13.2, What: AirOn})
	if back.AirFailing() > 50 || back.Lost == nil {
		t.Errorf("the air is on again: failing %v, lost %+v", back.AirFailing(), back.Lost)
	}
	if asked := ask(Event{Hour: 13, What: FoundOff}); asked.Lost.From != falling().Readings[1].Hour {
		t.Errorf("nobody said when it was seen on: from hour %v", asked.Lost.From)
	}
}

// Where no reading tells, every moment of the stretch is as likely as another:
// the share of members whose air has stopped grows in proportion to time.
func TestTheUnknownMomentIsEvenlySpread(t *testing.T) {
	s := fed(400)
	e := newEnsemble(&s, 4000, 1)
	steps := timeline(&s, nil, 10, 2, 10)
	markLost(steps, []Lost{{From: 2, Until: 10}})
	for i := range steps {
		e.stride(&steps[i])
		if to := steps[i].to(); to >= 2 && slices.Contains([]float64{4, 6, 8, 10}, to) {
			off := 0.0
			for j := range e.members {
				if e.members[j].air == 0 {
					off += 1. / float64(len(e.members))
				}
			}
			if want := (to - 2) / 8; math.Abs(off-want) > 0.03 {
				t.Errorf("by hour %v the air of %v has stopped, want %v", to, off, want)
			}
		}
	}
}

func TestFoundOffIsRead(t *testing.T) {
	for text, hours := range map[string]float64{"found-off": 0, "found-off 4 h": 4, "FOUND-OFF 90 min": 1.5} {
		if e, wrong := ParseEvent(text); wrong != nil || e.What != FoundOff || math.Abs(e.Seen.Hours()-hours) > 1e-9 {
			t.Errorf("%s: %+v %v", text, e, wrong)
		}
	}
	for _, text := range []string{"found-off at night", "found-off 0 h", "found-off -2 h", "found-off 4000 h"} {
		if e, wrong := ParseEvent(text); wrong == nil {
			t.Errorf("%s is taken: %+v", text, e)
		}
	}
}
