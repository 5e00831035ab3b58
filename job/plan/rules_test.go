package plan_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
)

// obeys holds a plan to what has to be true of every plan.
func obeys(t *testing.T, file *jobfile.File, p *plan.Plan) {
	t.Helper()
	answered(t, file, p)
	for i := range p.Batches {
		filled(t, file, p, &p.Batches[i])
		stepped(t, file, p, &p.Batches[i])
	}
	apart(t, file, p)
	loaded(t, file, p)
	text, err := json.Marshal(p)
	if err != nil || strings.Contains(string(text), "«plan.") || strings.Contains(string(text), "{") && strings.Contains(string(text), "NaN") {
		t.Errorf("JSON: %v %s", err, text)
	}
}

// answered: every want is served or unmet.
func answered(t *testing.T, file *jobfile.File, p *plan.Plan) {
	t.Helper()
	for _, n := range p.Needs {
		served, unmet := 0.0, false
		for _, b := range p.Batches {
			for _, s := range b.Serves {
				if s.Want == n.Want {
					served += s.TeaL
				}
			}
		}
		for _, u := range p.Unmet {
			unmet = unmet || u.Want == n.Want
		}
		if unmet && served > 0 || !unmet && math.Abs(served-n.TeaL) > 1e-9*n.TeaL {
			t.Errorf("want %d: %g of %g L served, unmet %v", n.Want, served, n.TeaL, unmet)
		}
		if w := file.Wants[n.Want].Dilution; math.Abs(n.MixL-n.TeaL*(1+w)) > 1e-9*n.MixL {
			t.Errorf("want %d: mix %g of tea %g at 1:%g", n.Want, n.MixL, n.TeaL, w)
		}
	}
	if len(p.Needs) != len(file.Wants) || len(p.Verdicts) != len(file.Wants) {
		t.Errorf("%d needs and %d verdicts for %d wants", len(p.Needs), len(p.Verdicts), len(file.Wants))
	}
}

// filled: what can be loaded is what is served, the lines and at most 2 % or
// 1 L more, unless the least asks for it; never over brew.
func filled(t *testing.T, file *jobfile.File, p *plan.Plan, b *plan.Batch) {
	t.Helper()
	v, _ := file.Vessel(b.Vessel)
	served := 0.0
	for _, s := range b.Serves {
		served += s.TeaL
	}
	lines := 0.0
	for _, r := range p.Runs {
		for _, prime := range r.Prime {
			if prime.Batch == b.ID {
				lines += prime.TeaL
			}
		}
	}
	loadable := b.VolumeL * (1 - file.Limits.Loss.Fraction())
	if loadable < served*(1-1e-9) || b.VolumeL > v.Brew.Litres()*(1+1e-9) {
		t.Errorf("%s: %g L loadable for %g L, brew %g", b.ID, loadable, served, v.Brew.Litres())
	}
	if over := loadable - served - lines; over > math.Max(1, 0.02*served) && b.VolumeL > v.Least.Litres()*(1+1e-9) {
		t.Errorf("%s: %g L too much", b.ID, over)
	}
}

var order = []string{"clean", "fill", "dechlorinate", "pre-feed", "feed", "air-on", "read", "finish", "air-off", "strain", "load", "apply", "rinse"}

func rank(what string) int {
	for i, w := range order {
		if w == what {
			return i
		}
	}
	return -1
}

// stepped: steps in order of time and kind, none before now, the brew's ends
// where they belong, and flags that are true exactly outside the hours.
func stepped(t *testing.T, file *jobfile.File, p *plan.Plan, b *plan.Batch) {
	t.Helper()
	seen := map[string]time.Time{}
	furthest := -1
	for i, s := range b.Steps {
		if s.At.Before(p.Now) || i > 0 && s.At.Before(b.Steps[i-1].At) {
			t.Errorf("%s: %s at %s is out of order", b.ID, s.What, s.At)
		}
		if r := rank(s.What); s.What != "pre-feed" && s.What != "read" {
			if r < furthest && (s.What != "feed" || s.At.Equal(b.StartAt)) {
				t.Errorf("%s: %s comes after its time", b.ID, s.What)
			}
			furthest = max(furthest, r)
		}
		if _, before := seen[s.What]; !before {
			seen[s.What] = s.At
		}
		if s.What != "apply" {
			v, _ := file.Vessel(b.Vessel)
			if site, known := file.Site(v.Site); known && s.OutsideWork == site.WorksAt(s.At) {
				t.Errorf("%s: %s at %s is flagged wrongly", b.ID, s.What, s.At)
			}
		}
	}
	for _, what := range []string{"fill", "feed", "air-on", "air-off", "strain", "load", "apply"} {
		if seen[what].IsZero() {
			t.Errorf("%s has no step %s", b.ID, what)
		}
	}
	strained := seen["strain"].Add(time.Duration(file.Limits.StrainMinutes * float64(time.Minute)))
	if !seen["air-on"].Equal(b.StartAt) || seen["air-off"].Before(b.ReadyAt) || seen["strain"].Before(b.ReadyAt) ||
		seen["load"].Before(strained) || seen["apply"].Before(seen["load"]) || b.UseBy.Sub(seen["air-off"]) > 4*time.Hour {
		t.Errorf("%s: the end of the brew is out of order: %+v", b.ID, seen)
	}
}

// apart: one vessel, one batch at a time.
func apart(t *testing.T, file *jobfile.File, p *plan.Plan) {
	t.Helper()
	last := map[string]*plan.Batch{}
	for i := range p.Batches {
		b := &p.Batches[i]
		before := last[b.Vessel]
		last[b.Vessel] = b
		if before == nil {
			continue
		}
		v, _ := file.Vessel(b.Vessel)
		strain := before.ReadyAt
		for _, s := range b.Steps {
			if s.What != "pre-feed" {
				if s.At.Before(strain) || b.StartAt.Sub(strain).Seconds() < v.Turnaround.Seconds() {
					t.Errorf("%s begins before %s is out", b.ID, before.ID)
				}
				break
			}
		}
	}
}

// loaded: the loads of a want add up to its tea and cover its bed; none is
// more than its tank.
func loaded(t *testing.T, file *jobfile.File, p *plan.Plan) {
	t.Helper()
	tea, covers := map[int]float64{}, map[int]float64{}
	for _, r := range p.Runs {
		tank := math.Inf(1)
		if r.Applicator != nil {
			if a, _ := file.Applicator(*r.Applicator); a.Tank != nil {
				tank = a.Tank.Litres()
			}
		}
		for _, l := range r.Loads {
			if l.TeaL+l.WaterL > tank*(1+1e-9) {
				t.Errorf("a load of %g L in a tank of %g L", l.TeaL+l.WaterL, tank)
			}
			tea[l.Want] += l.TeaL
			if l.Covers != nil {
				covers[l.Want] += *l.Covers
			}
		}
	}
	for _, n := range p.Needs {
		bed, _ := file.Bed(n.Bed)
		if tea[n.Want] > 0 && math.Abs(tea[n.Want]-n.TeaL) > 1e-6*n.TeaL {
			t.Errorf("want %d: loads of %g L for %g L", n.Want, tea[n.Want], n.TeaL)
		}
		if bed.Area != nil && covers[n.Want] > 0 && math.Abs(covers[n.Want]-bed.Area.SquareMetres()) > 1e-6*bed.Area.SquareMetres() {
			t.Errorf("want %d covers %g m²", n.Want, covers[n.Want])
		}
	}
}
