package forecast

import (
	"math"
	"testing"

	"aerosteep/job/recipe"
	"aerosteep/quantity"
)

// The lesson shows what it is meant to show: the unfed pail keeps its oxygen,
// stopped air takes it within hours, sugar takes more than compost alone, and one
// seed is one brew.
func TestTheSchoolPailTeaches(t *testing.T) {
	play := func(events ...Event) []Played {
		course, err := Play(SchoolPail(), events, 24, 1)
		if err != nil {
			t.Fatal(err)
		}
		return course
	}
	lowest := func(course []Played) float64 {
		low := math.Inf(1)
		for _, p := range course {
			low = math.Min(low, p.DO)
		}
		return low
	}
	calm := play()
	if lowest(calm) < 6 || calm[len(calm)-1].Hour != 24 {
		t.Errorf("the unfed pail falls to %v by hour %v", lowest(calm), calm[len(calm)-1].Hour)
	}
	if stopped := play(Event{Hour: 4, What: AirOff}); lowest(stopped) > 2 {
		t.Errorf("with the air off for 20 h it keeps %v", lowest(stopped))
	}
	spoon := Event{Hour: 4, What: FoodIn, Ingredient: "molasses", Amount: recipe.Amount{Volume: quantity.Millilitres(30)}}
	if fed := play(spoon); lowest(fed) > lowest(calm)-0.3 {
		t.Errorf("two spoons of molasses take it to %v, without them %v", lowest(fed), lowest(calm))
	}
	again := play()
	for i := range calm {
		if calm[i] != again[i] {
			t.Fatalf("the same seed is another brew at hour %v", calm[i].Hour)
		}
	}
	if _, err := Play(SchoolPail(), nil, -1, 1); err == nil {
		t.Error("an hour before the start is played")
	}
}
