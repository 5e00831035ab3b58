package hygiene

import (
	"math/rand/v2"
	"testing"
)

// A blend of a proven and an unproven lot is unproven; one of a proven lot and
// raw manure is raw manure, even where the manure's papers are unknown.
func TestABlendTakesTheStrictestLot(t *testing.T) {
	proven := Words{"material": "compost", "animal_origin": "yes", "human_waste": "no", "treatment": "hot", "process_record": "yes", "nop_compost": "yes", "contaminated": "no"}
	blend := Blended(proven, Words{"material": "compost", "treatment": "unknown"})
	if blend["material"] != "compost" || blend["animal_origin"] != "yes" {
		t.Errorf("blend %v lost what both lots share or one lot settles", blend)
	}
	for _, fact := range []string{"treatment", "process_record", "contaminated"} {
		if word, stands := blend[fact]; stands {
			t.Errorf("blend knows %s = %s, which one lot does not", fact, word)
		}
	}
	if blend := Blended(proven, Words{"material": "raw-manure"}); blend["material"] != "raw-manure" {
		t.Errorf("compost and raw manure blend to %v", blend)
	}
	if one := Blended(proven); one["treatment"] != "hot" || one["process_record"] != "yes" {
		t.Errorf("one lot alone is %v", one)
	}
}

// No blend is freer than a lot in it, by the rules themselves: random lots on
// a random crop, every fact known. Leachate is no lot of compost; and a way of
// brewing that failed its pre-test forbids by itself what is sorted as tea.
func TestABlendIsNeverFreerThanItsLots(t *testing.T) {
	random := rand.New(rand.NewPCG(112, 205))
	for range 2000 {
		crop := randomWords(random, func(f Fact) bool { return !isOfCompost(f) })
		a, b := randomWords(random, isOfCompost), randomWords(random, isOfCompost)
		if a["material"] == "leachate" || b["material"] == "leachate" || crop["pretest"] == "failed" {
			continue
		}
		mixed := strictness(decided(t, crop, Blended(a, b)).Ruling)
		for _, lot := range []Words{a, b} {
			if alone := strictness(decided(t, crop, lot).Ruling); alone > mixed {
				t.Fatalf("lot %v alone is stricter (%d) than the blend of %v and %v (%d) on %v", lot, alone, a, b, mixed, crop)
			}
		}
	}
}

func isOfCompost(f Fact) bool {
	for _, c := range OfCompost() {
		if c == f {
			return true
		}
	}
	return false
}

func randomWords(random *rand.Rand, wanted func(Fact) bool) Words {
	words := Words{"applied": "2026-05-01"}
	for f := Material; f < factCount; f++ {
		if values := f.Values(); wanted(f) && f != Held {
			words[f.String()] = values[random.IntN(len(values))]
		}
	}
	if wanted(Held) {
		words["held"] = []string{"1 h", "24 h"}[random.IntN(2)]
	}
	return words
}

func decided(t *testing.T, layers ...Words) Verdict {
	t.Helper()
	all := Words{}
	for _, layer := range layers {
		for name, word := range layer {
			all[name] = word
		}
	}
	facts, err := Read(all, nil)
	if err != nil {
		t.Fatal(err)
	}
	return Decide(facts)
}
