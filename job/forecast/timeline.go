package forecast

import (
	"math"
	"slices"
)

const (
	gridHours   = 0.25 // of the fixed grid
	courseHours = 0.5  // between the rows of a course
	knotHours   = 1.0  // between the changes of what wanders
	sameMoment  = 1e-6 // h, under which two hours are one
)

// change is something that happens to the brew at an hour.
type change struct {
	hour                  float64
	air                   *float64 // from now on: factor on kLa; 0 is off
	found                 bool     // somebody stood there and saw the air running
	lost                  bool     // the air was found off: what stopped unseen is logged from here on
	ready, slow, nitrogen float64  // mg/L put in
	finish                bool
	dilution              float64 // volume before over volume after; 0 where no water came in
	probe                 probeCare
}

// probeCare is what was done to the probe.
type probeCare int

const (
	untouched probeCare = iota
	cleaned
	calibrated
)

// step is one stride of all members.
type step struct {
	from, hours float64
	air         float64 // factor on kLa as logged
	outdoors    float64 // °C, mean of the step
	cosine      float64 // of the hour of the day since the start
	sine        float64
	knot        bool     // what wanders changes at its start
	changes     []change // at its start
	row         int      // of the course at its end; -1 for none

	lostUntil float64 // > 0 in a stretch in which the air stopped unseen
	counted   bool    // hours under the limit are counted
	counts    bool    // from here on
}

// to is the hour at which the step ends.
func (s *step) to() float64 { return s.from + s.hours }

// timeline cuts the hours from 0 to the end into steps: a fixed grid, cut
// again wherever something happens and at each extra hour.
func timeline(s *Setup, changes []change, end float64, extra ...float64) []step {
	hours := []float64{0, end}
	for i := 1; float64(i)*gridHours < end; i++ {
		hours = append(hours, float64(i)*gridHours)
	}
	for _, c := range changes {
		hours = append(hours, c.hour)
	}
	hours = append(hours, extra...)
	slices.Sort(hours)
	steps := []step{}
	air, next := 1.0, 0
	for i := range hours[:len(hours)-1] {
		from, to := hours[i], hours[i+1]
		if from < 0 || to > end+sameMoment || to-from < sameMoment {
			continue
		}
		st := step{from: from, hours: to - from, row: courseRow(to)}
		for next < len(changes) && changes[next].hour <= from+sameMoment {
			if changes[next].air != nil {
				air = *changes[next].air
			}
			st.changes = append(st.changes, changes[next])
			next++
		}
		st.air = air
		st.knot = math.Floor((from+sameMoment)/knotHours) != math.Floor((from-gridHours/2)/knotHours) && onGrid(from)
		middle := from + st.hours/2
		st.outdoors = s.Outdoors.At(middle).Celsius()
		st.sine, st.cosine = math.Sincos(2 * math.Pi * middle / 24)
		steps = append(steps, st)
	}
	return steps
}

// onGrid tells whether an hour is a whole number of knots.
func onGrid(hour float64) bool {
	return math.Abs(hour/knotHours-math.Round(hour/knotHours)) < sameMoment
}

// courseRow is the row of the course that stands for an hour, or -1.
func courseRow(hour float64) int {
	row := math.Round(hour / courseHours)
	if math.Abs(hour-row*courseHours) > sameMoment {
		return -1
	}
	return int(row)
}

// changesOf are the recipe's additions as changes.
func changesOf(additions []Addition) []change {
	out := []change{}
	for _, a := range additions {
		out = append(out, change{
			hour:  a.Hour,
			ready: a.Ready.MilligramsPerLitre(), slow: a.Slow.MilligramsPerLitre(), nitrogen: a.Nitrogen.MilligramsPerLitre(),
			finish: a.Finish,
		})
	}
	slices.SortStableFunc(out, byHour)
	return out
}

func byHour(a, b change) int {
	switch {
	case a.hour < b.hour:
		return -1
	case a.hour > b.hour:
		return 1
	}
	return 0
}
