package weather

import (
	"math"
	"testing"
	"time"

	"aerosteep/quantity"
)

func dryHours(n int, wind float64) *Forecast {
	start := time.Date(2026, 5, 12, 6, 0, 0, 0, time.UTC)
	f := &Forecast{}
	for i := range n {
		t, v, none := quantity.Celsius(15), quantity.KilometresPerHour(wind), quantity.Length(0)
		f.Hours = append(f.Hours, Hour{At: start.Add(time.Duration(i) * time.Hour), Temperature: &t, Wind: &v, Rain: &none})
	}
	return f
}

// One calm dry hour for a drench on soil that takes no rain is lost only where
// rain was missed: a binomial count, within three standard deviations of the
// share that goes in (closed form).
func TestOneHourIsLostAsOftenAsRainIsMissed(t *testing.T) {
	f := dryHours(40, 0)
	const draws = 5000
	now := f.Hours[0].At
	odds, ok := ChanceOfWindow(f, Question{Method: Drench}, now, now, now.Add(time.Hour), 1, draws, 1)
	if !ok || odds.Covered != 100 {
		t.Fatalf("%+v %v", odds, ok)
	}
	kept := 1 - rainMissed
	if off := math.Abs(odds.Percent/100 - kept); off > 3*math.Sqrt(kept*(1-kept)/draws) {
		t.Errorf("%g in 100 keep the hour, not %g", odds.Percent, 100*kept)
	}
}

// Wind that blows at the limit of a drench is over it in half of the draws, as
// errors lie evenly on both sides (closed form).
func TestWindAtItsLimitIsOverItHalfTheTime(t *testing.T) {
	f := dryHours(40, 25)
	for i := range f.Hours {
		f.Hours[i].Rain = new(quantity.Length(0))
	}
	const draws = 5000
	now := f.Hours[0].At
	odds, _ := ChanceOfWindow(f, Question{Method: Drench, Intake: quantity.DepthRate(1)}, now, now, now.Add(time.Hour), 1, draws, 1)
	if math.Abs(odds.Percent-50) > 300*math.Sqrt(0.25/draws) {
		t.Errorf("%g in 100", odds.Percent)
	}
}

// More hours to choose from never lower the chance, more hours needed and a
// later window never raise it, by more than the draws scatter.
func TestChanceFollowsTheWindow(t *testing.T) {
	f := dryHours(120, 20)
	now := f.Hours[0].At
	chance := func(from, long, needed int) float64 {
		begin := now.Add(time.Duration(from) * time.Hour)
		odds, _ := ChanceOfWindow(f, Question{Method: Drench, Intake: quantity.DepthRate(1)}, now, begin, begin.Add(time.Duration(long)*time.Hour), needed, 2000, 1)
		return odds.Percent
	}
	const scatter = 4
	if chance(0, 12, 2)+scatter < chance(0, 4, 2) {
		t.Error("a longer window is less likely")
	}
	if chance(0, 12, 6) > chance(0, 12, 2)+scatter {
		t.Error("more hours in a row are more likely")
	}
	if chance(72, 4, 2) > chance(0, 4, 2)+scatter {
		t.Error("a window three days ahead is surer than today's")
	}
}

func TestChanceBeyondTheForecastIsNotKnown(t *testing.T) {
	f := dryHours(10, 5)
	after := f.Hours[9].At.Add(2 * time.Hour)
	if _, ok := ChanceOfWindow(f, Question{Method: Drench}, f.Hours[0].At, after, after.Add(time.Hour), 1, 10, 1); ok {
		t.Error("a chance for hours that nobody forecast")
	}
	half, ok := ChanceOfWindow(f, Question{Method: Drench}, f.Hours[0].At, f.Hours[5].At, f.Hours[5].At.Add(10*time.Hour), 1, 10, 1)
	if !ok || half.Covered != 50 {
		t.Errorf("five of ten hours are reached: %+v", half)
	}
}

func BenchmarkChanceOfADay(b *testing.B) {
	f := dryHours(72, 12)
	now := f.Hours[0].At
	for b.Loop() {
		ChanceOfWindow(f, Question{Method: Foliar, Place: &Place{44, -123}}, now, now, now.Add(12*time.Hour), 2, 200, 1)
	}
}
