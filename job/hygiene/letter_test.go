package hygiene_test

import (
	"testing"

	"aerosteep/job/hygiene"
	"aerosteep/wording"
)

func TestLettersAskWhoKnows(t *testing.T) {
	v := decide(t, but(worked, hygiene.Words{"additives": "none", "treatment": "-", "water_ecoli": "-", "nop_compost": "-"}))
	letters := hygiene.Letters(v.Missing)
	if len(letters) != 3 || letters[0].To != hygiene.Supplier || letters[1].To != hygiene.Laboratory || letters[2].To != hygiene.Certifier {
		t.Fatalf("missing %v gives %d letters", v.Missing, len(letters))
	}
	if q := letters[0].Questions[0]; q.Fact != hygiene.Treatment || len(q.Answers) != 3 {
		t.Errorf("the supplier is asked %v", q)
	}
	if len(hygiene.Letters([]hygiene.Fact{hygiene.ContactAfter})) != 0 {
		t.Error("a letter asks what only the grower can say")
	}
}

// Every fact has its question and its name in both languages.
func TestEveryFactIsAsked(t *testing.T) {
	for _, fact := range hygiene.All() {
		for _, key := range []string{"hygiene.question.", "hygiene.fact."} {
			if !wording.Known(key + fact.String()) {
				t.Errorf("%s%s has no sentence", key, fact)
			}
		}
	}
}

func TestStakeSaysBothDays(t *testing.T) {
	stake := hygiene.Stake(decide(t, worked))
	for language, want := range map[wording.Language]string{
		wording.English: "Tea put on 1 May 2026. Do not pick before 29 August 2026.",
		wording.Spanish: "Té aplicado el 1 de mayo de 2026. No coseche antes del 29 de agosto de 2026.",
	} {
		if got := stake.For(wording.Reader{Language: language}); got != want {
			t.Errorf("%s: %q, want %q", language, got, want)
		}
	}
	if !hygiene.Stake(decide(t, but(worked, hygiene.Words{"additives": "none"}))).IsZero() {
		t.Error("a card where nothing waits")
	}
}
