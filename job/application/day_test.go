package application_test

import (
	"aerosteep/wording"
	"strings"
	"testing"
	"time"

	"aerosteep/fault"
	"aerosteep/job/application"
	"aerosteep/quantity"
)

var six = time.Date(2026, 5, 14, 6, 0, 0, 0, time.UTC)

// day has three stops half an hour apart, each an hour of work; the tea of
// the last one is the first to go stale.
func day(useByLast time.Duration) application.Day {
	stop := func(name, batch string) application.Stop {
		return application.Stop{Name: name, Site: name, Batch: batch, Work: quantity.Hours(1)}
	}
	return application.Day{
		Start: six, From: "vessel",
		Stops: []application.Stop{stop("school", "A"), stop("orchard", "A"), stop("garden", "B")},
		UseBy: map[string]time.Time{"A": six.Add(10 * time.Hour), "B": six.Add(useByLast)},
		Way:   func(_, _ string) quantity.Span { return quantity.Minutes(30) },
	}
}

func TestClockOfEachStop(t *testing.T) {
	visits := day(4 * time.Hour).Visits()
	if got := visits[2].Done.Sub(six); got != 4*time.Hour+30*time.Minute || visits[2].InTime || !visits[1].InTime {
		t.Errorf("the third stop is done after %v, in time %v", got, visits[2].InTime)
	}
	if visits[0].Rinse || !visits[1].Rinse {
		t.Error("between sites everything is rinsed, before the first nothing is")
	}
}

func TestRescueMovesBeforeItDrops(t *testing.T) {
	enough := day(5 * time.Hour).Rescue()
	if enough.Moved || len(enough.Dropped) != 0 {
		t.Errorf("a day that fits stays as it is: %+v", enough)
	}
	moved := day(3 * time.Hour).Rescue()
	if !moved.Moved || len(moved.Dropped) != 0 || moved.Day.Stops[1].Name != "garden" || moved.Day.Stops[0].Name != "school" {
		t.Errorf("the garden comes second: %+v", moved.Day.Stops)
	}
	dropped := day(time.Hour).Rescue()
	if len(dropped.Dropped) != 1 || dropped.Dropped[0].Name != "garden" || dropped.Moved {
		t.Errorf("the garden is dropped: %+v", dropped)
	}
	for _, v := range moved.Day.Visits() {
		if !v.InTime {
			t.Errorf("%s is late after the rescue", v.Name)
		}
	}
}

func TestLongDaysKeepTheirOrder(t *testing.T) {
	d := day(time.Hour)
	for range 4 {
		d.Stops = append(d.Stops, d.Stops[:2]...)
	}
	r := d.Rescue()
	if r.Moved || len(r.Day.Stops)+len(r.Dropped) != len(d.Stops) || len(r.Dropped) == 0 {
		t.Errorf("kept %d, dropped %d of %d, moved %v", len(r.Day.Stops), len(r.Dropped), len(d.Stops), r.Moved)
	}
}

// Three rinses of ten times what stays leave (1/11)³.
func TestRemaining(t *testing.T) {
	share := must(application.Remaining(1, 10, 3))(t)
	near(t, "share", share.Fraction(), 1./1331, 1e-15)
	if _, err := application.Remaining(0, 10, 3); fault.Of(err) == nil {
		t.Error("a tank that keeps nothing was taken")
	}
	r := application.HeldHerbicide.Rinse(quantity.Litres(10), quantity.Litres(0.1)) // a tenth is ten times what stays
	if said := r.Doubt.For(wording.Reader{Language: wording.English}); len(r.Steps) != 5 || !strings.Contains(said, "1331") {
		t.Errorf("%d steps, %s", len(r.Steps), said)
	}
	if clean := application.HeldWater.Rinse(10, 1); len(clean.Steps) != 0 {
		t.Errorf("water asks for %d steps", len(clean.Steps))
	}
	if !application.HeldUnknown.Harmful() || application.HeldTea.Harmful() {
		t.Error("what is not known counts as harmful, tea does not")
	}
}

func TestRelease(t *testing.T) {
	good := application.Release{Smell: "earth", Look: "brown, foam", NoMeter: true, At: six, UseBy: six.Add(time.Hour), Released: true, Initials: "MK"}
	if err := good.Check(); err != nil {
		t.Error(err)
	}
	late := good
	late.At = six.Add(2 * time.Hour)
	if faults := fault.Of(late.Check()); len(faults) != 1 || faults[0].Field != "use-by" {
		t.Errorf("past its use-by: %v", faults)
	}
	if faults := fault.Of(application.Release{At: six}.Check()); len(faults) != 6 {
		t.Errorf("an empty refusal lacks six things: %v", faults)
	}
}
