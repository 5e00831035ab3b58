package hygiene_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"aerosteep/job/hygiene"
)

// The oracle reads the rules once more, as plain sentences of code on complete
// facts, and tries a missing fact by brute force: every completion there is.
// It shares nothing with the diagrams it checks.

const never = 1 << 20

// stated reads one fact of complete facts.
type stated func(hygiene.Fact) string

func (s stated) status() string {
	m, tea := s(hygiene.Material), s(hygiene.Held) == "over-1h"
	switch plants := s(hygiene.AnimalOrigin) == "no" && (m == "compost" || m == "leachate"); {
	case s(hygiene.HumanWaste) == "yes":
		return "prohibited"
	case m == "raw-manure":
		return "untreated"
	case plants && s(hygiene.Additives) == "animal":
		return "untreated"
	case plants:
		return "not-animal"
	case m == "leachate", s(hygiene.Additives) == "animal", s(hygiene.Treatment) == "none",
		s(hygiene.ProcessRecord) == "no", s(hygiene.Contaminated) == "yes":
		return "untreated"
	case tea && (s(hygiene.Additives) != "none" || s(hygiene.Water) == "rain" || s(hygiene.Water) == "surface" || s(hygiene.WaterEColi) == "detected"):
		return "untreated"
	case s(hygiene.Treatment) == "validated":
		return "treated-a"
	}
	return "treated-b"
}

func (s stated) interval() int {
	if s(hygiene.EdiblePart) == "clear-of-soil" {
		return 90
	}
	return 120
}

// produce is the produce rule: 0 yes, days to wait, or never.
func (s stated) produce() int {
	during, after := s(hygiene.ContactDuring), s(hygiene.ContactAfter)
	status := s.status()
	switch {
	case status == "prohibited", s(hygiene.Pathogens) == "found", s(hygiene.CropUse) == "sprouts":
		return never
	case status == "not-animal", status == "treated-a":
		return 0
	case status == "treated-b":
		if during == "contact" || after == "contact" {
			return never
		}
		return 0
	case during != "none", after == "contact":
		return never
	case after == "none":
		return 0
	}
	return s.interval()
}

func (s stated) nop() int {
	use := s(hygiene.CropUse)
	switch {
	case s(hygiene.HumanWaste) == "yes":
		return never
	case use == "non-food":
		return 0
	case s(hygiene.Pathogens) == "found", use == "sprouts":
		return never
	case s(hygiene.Material) == "raw-manure", s(hygiene.Material) == "leachate", s(hygiene.NOPCompost) == "no",
		s(hygiene.ProcessRecord) == "no", s(hygiene.Contaminated) == "yes":
		if s(hygiene.Method) == "foliar" {
			return never
		}
		return s.interval()
	case s(hygiene.Water) == "rain", s(hygiene.Water) == "surface", s(hygiene.WaterEColi) == "detected", s(hygiene.Sanitized) == "no":
		return never
	case s(hygiene.Held) == "up-to-1h", s(hygiene.Additives) == "none", use == "grain", s(hygiene.Pretest) == "passed":
		return 0
	}
	return s.interval()
}

// strictest is the strictest of the sets that apply.
func (s stated) strictest() int {
	use := s(hygiene.CropUse)
	produce := use == "food" || use == "sprouts"
	worst, applies := 0, false
	if produce && s(hygiene.Market) == "sold" && s(hygiene.Covered) == "yes" {
		worst, applies = s.produce(), true
	}
	if s(hygiene.Organic) == "yes" {
		worst, applies = max(worst, s.nop()), true
	}
	switch {
	case applies:
		return worst
	case produce:
		return s.produce()
	case s(hygiene.HumanWaste) == "yes", use == "grain" && s(hygiene.Pathogens) == "found":
		return never
	}
	return 0
}

// means is what an outcome comes to on the given days.
func means(o int, applied, harvest *time.Time) int {
	if o > 0 && o < never && applied != nil && harvest != nil && !harvest.Before(applied.AddDate(0, 0, o)) {
		return 0
	}
	return o
}

// TestEveryCompletion takes random cases with some facts missing and compares
// the verdict with all completions: the same answer where all agree, ask where
// they do not, no completion better than the answer, and missing exactly the
// facts of which a change alone can change the answer.
func TestEveryCompletion(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 112))
	for n := range 4000 {
		facts, missing := randomCase(random)
		if t.Failed() {
			return
		}
		checkCompletions(t, n, facts, missing)
	}
}

func randomCase(random *rand.Rand) (hygiene.Facts, []hygiene.Fact) {
	var facts hygiene.Facts
	for _, f := range hygiene.All() {
		if values := f.Values(); values != nil {
			facts = facts.With(f, values[random.IntN(len(values))])
		}
	}
	likely(random, &facts)
	var missing []hygiene.Fact
	for range random.IntN(6) {
		f := hygiene.Fact(random.IntN(int(hygiene.ContactAfter) + 1))
		if f != hygiene.Pathogens && !slices.Contains(missing, f) {
			missing = append(missing, f)
			facts = facts.With(f, "")
		}
	}
	applied := time.Date(2026, 5, 1, 0, 0, 0, 0, time.UTC)
	if random.IntN(4) > 0 {
		facts.Applied = &applied
	}
	if random.IntN(2) > 0 {
		harvest := applied.AddDate(0, 0, 60+random.IntN(90))
		facts.Harvest = &harvest
	}
	return facts, missing
}

// likely keeps most cases from ending at the first row.
func likely(random *rand.Rand, facts *hygiene.Facts) {
	for fact, word := range map[hygiene.Fact]string{hygiene.HumanWaste: "no", hygiene.Pathogens: "not-tested", hygiene.CropUse: "food", hygiene.Contaminated: "no", hygiene.ProcessRecord: "yes"} {
		if random.IntN(4) > 0 {
			*facts = facts.With(fact, word)
		}
	}
}

func checkCompletions(t *testing.T, n int, facts hygiene.Facts, missing []hygiene.Fact) {
	t.Helper()
	ends, matters := enumerate(facts, missing)
	v := hygiene.Decide(facts)
	worst, waits := 0, false
	meanings := map[int]bool{}
	for _, o := range ends {
		worst = max(worst, o)
		m := means(o, facts.Applied, facts.Harvest)
		meanings[m] = true
		waits = waits || m > 0 && m < never
	}
	want := hygiene.Ask
	hangs := waits && facts.Applied == nil
	if len(meanings) == 1 && !hangs {
		want = word(means(worst, facts.Applied, facts.Harvest))
	}
	if hangs {
		matters = append(matters, hygiene.Applied)
	}
	slices.Sort(matters)
	if v.Allowed != want || want == hygiene.Ask && fmt.Sprint(v.Missing) != fmt.Sprint(matters) || want != hygiene.Ask && len(v.Missing) > 0 {
		t.Errorf("case %d: got %s missing %v, every completion says %s missing %v\nmissing were %v in %+v", n, v.Allowed, v.Missing, want, matters, missing, facts)
	}
	alike := len(slices.Compact(slices.Sorted(slices.Values(ends)))) == 1 && worst != never
	if (v.IntervalDays != nil) != alike || alike && *v.IntervalDays != worst {
		t.Errorf("case %d: interval %v, every completion says %v", n, v.IntervalDays, ends)
	}
	if want == hygiene.Ask && v.AtWorst.Allowed != word(means(worst, facts.Applied, facts.Harvest)) {
		t.Errorf("case %d: at worst %s, every completion says %d", n, v.AtWorst.Allowed, worst)
	}
}

func word(o int) hygiene.Allowed {
	switch {
	case o == never:
		return hygiene.No
	case o > 0:
		return hygiene.WaitUntil
	}
	return hygiene.Yes
}

// enumerate tries every completion and notes the facts of which a change alone
// changes what it comes to.
func enumerate(facts hygiene.Facts, missing []hygiene.Fact) (ends []int, matters []hygiene.Fact) {
	byCase := map[string]int{}
	complete(facts, missing, func(f hygiene.Facts) {
		o := stated(clean(f, missing).Value).strictest()
		ends = append(ends, o)
		byCase[key(f, missing)] = means(o, facts.Applied, facts.Harvest)
	})
	for _, m := range missing {
		changes := false
		complete(facts, missing, func(f hygiene.Facts) {
			for _, value := range m.Values() {
				changes = changes || byCase[key(f.With(m, value), missing)] != byCase[key(f, missing)]
			}
		})
		if changes {
			matters = append(matters, m)
		}
	}
	return ends, matters
}

// complete calls back with every completion.
func complete(facts hygiene.Facts, missing []hygiene.Fact, back func(hygiene.Facts)) {
	if len(missing) == 0 {
		back(facts)
		return
	}
	for _, value := range missing[0].Values() {
		complete(facts.With(missing[0], value), missing[1:], back)
	}
}

// clean is a completion where a missing water test of a public supply counts
// as clean, so that it is no choice there.
func clean(f hygiene.Facts, missing []hygiene.Fact) hygiene.Facts {
	if f.Value(hygiene.Water) == "municipal" && slices.Contains(missing, hygiene.WaterEColi) {
		return f.With(hygiene.WaterEColi, "not-detected")
	}
	return f
}

func key(f hygiene.Facts, missing []hygiene.Fact) string {
	s := ""
	for _, m := range missing {
		s += f.Value(m) + "/"
	}
	return s
}
