package forecast

import (
	"encoding/json"
	"testing"
	"time"

	"aerosteep/job/recipe"
	"aerosteep/quantity"
)

// A forecast that travelled as JSON answers as it would have at home, byte for
// byte, and a reading taken on the way moves it as it does there.
func TestACarriedForecastAnswersTheSame(t *testing.T) {
	start := time.Date(2026, 5, 12, 6, 0, 0, 0, time.UTC)
	log := Log{}
	for i, do := range []float64{9, 8.7, 8.2} {
		log.Readings = append(log.Readings, Reading{Hour: float64(2 * i), DO: new(do), Water: new(18.5)})
	}
	event, wrong := ParseEvent("food molasses 12 mL")
	if wrong != nil {
		t.Fatal(wrong)
	}
	event.Hour = 3
	log.Events = append(log.Events, event)
	now := start.Add(5 * time.Hour)
	question := Question{Setup: fed(300), Log: log, Larder: recipe.Library(), Now: 5, Hours: 24, Members: 300, Seed: 1}
	telling := Telling{Batch: "D-1", Start: start, Zone: time.UTC, UseByDO: quantity.MilligramsPerLitre(2)}
	text, err := json.Marshal(Carry(question, telling))
	if err != nil {
		t.Fatal(err)
	}
	var carried Carried
	if err := json.Unmarshal(text, &carried); err != nil {
		t.Fatal(err)
	}
	asAtHome(t, question, telling, carried, now)
	late := Reading{Hour: 6, DO: new(7.1), Water: new(19.)}
	question.Log.Readings = append(question.Log.Readings, late)
	question.Now = 6.5
	asAtHome(t, question, telling, carried, start.Add(390*time.Minute), late)
}

func asAtHome(t *testing.T, q Question, telling Telling, c Carried, now time.Time, more ...Reading) {
	t.Helper()
	home, err := Run(q)
	if err != nil {
		t.Fatal(err)
	}
	want, _ := json.Marshal(home.Answer(telling))
	answer, err := c.Answer(now, more...)
	if err != nil {
		t.Fatal(err)
	}
	if got, _ := json.Marshal(answer); string(got) != string(want) {
		t.Errorf("on the way %.200s, at home %.200s", got, want)
	}
}
