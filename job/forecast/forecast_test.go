package forecast

import (
	"math"
	"testing"

	"aerosteep/job/recipe"
	"aerosteep/quantity"
)

func drum() Setup {
	return Setup{
		Volume: 150, Depth: 0.75, Pressure: 94, Conductivity: 300, Transfer: Transfer{Estimate: 14}, Start: 18,
		Compost: []Compost{{Kind: "compost", GramsPerLitre: 15}}, Planned: quantity.Hours(24),
	}
}

func fed(ready float64) Setup {
	s := drum()
	s.Additions = []Addition{{Name: "molasses", Ready: quantity.MilligramsPerLitre(ready), Slow: quantity.MilligramsPerLitre(0.35 * ready), Nitrogen: quantity.MilligramsPerLitre(0.004 * ready)}}
	return s
}

// Physics shows: more food, less air, warmth and altitude lower the oxygen.
func TestPhysicsShows(t *testing.T) {
	base := Prior(fed(500), 600, 1)
	for name, s := range map[string]Setup{
		"more food":    fed(1500),
		"less air":     with(fed(500), func(s *Setup) { s.Transfer.Estimate = 7 }),
		"warmth":       with(fed(500), func(s *Setup) { s.Start = 27 }),
		"altitude":     with(fed(500), func(s *Setup) { s.Pressure = 78 }),
		"more compost": with(fed(500), func(s *Setup) { s.Compost[0].GramsPerLitre = 45 }),
	} {
		if got := Prior(s, 600, 1); got.MinDO.Median >= base.MinDO.Median {
			t.Errorf("%s: lowest %.2f is not under %.2f", name, got.MinDO.Median, base.MinDO.Median)
		}
	}
}

func with(s Setup, change func(*Setup)) Setup {
	s.Compost = append([]Compost(nil), s.Compost...)
	change(&s)
	return s
}

// A seed gives the same digits; another gives others.
func TestSameSeedSameDigits(t *testing.T) {
	q := Question{Setup: fed(500), Now: 10, Hours: 14, Members: 300, Seed: 7, Log: falling()}
	a, _ := Run(q)
	b, _ := Run(q)
	if *a.MinDO != *b.MinDO || *a.Chance != *b.Chance || a.State != b.State {
		t.Error("the same question gave two answers")
	}
	q.Seed = 8
	if c, _ := Run(q); *c.MinDO == *a.MinDO {
		t.Error("another seed gave the same digits")
	}
}

func reading(hour, do, water float64) Reading { return Reading{Hour: hour, DO: &do, Water: &water} }

// falling is oxygen that falls while food is eaten.
func falling() Log {
	return Log{Readings: []Reading{reading(1, 8.3, 18), reading(4, 8.0, 18.1), reading(7, 7.2, 18.2), reading(9.5, 6.4, 18.2)}}
}

// Readings narrow the forecast and move it.
func TestReadingsCount(t *testing.T) {
	blind, err := Run(Question{Setup: fed(500), Now: 10, Hours: 12, Members: 800})
	if err != nil {
		t.Fatal(err)
	}
	seen, err := Run(Question{Setup: fed(500), Now: 10, Hours: 12, Members: 800, Log: falling()})
	if err != nil {
		t.Fatal(err)
	}
	if wide, narrow := blind.State.DO.High80-blind.State.DO.Low80, seen.State.DO.High80-seen.State.DO.Low80; narrow >= 0.7*wide {
		t.Errorf("with readings the range is %.2f, without %.2f", narrow, wide)
	}
	if math.Abs(seen.State.DO.Median-6.4) > 0.5 {
		t.Errorf("the oxygen is %.2f beside a reading of 6.4", seen.State.DO.Median)
	}
	if *seen.Chance <= *blind.Chance {
		t.Errorf("oxygen that falls fast must raise the chance: %.0f against %.0f", *seen.Chance, *blind.Chance)
	}
}

// A percentage in the field for mg/L is found, and is not believed as mg/L.
func TestPercentInTheWrongField(t *testing.T) {
	log := falling()
	log.Readings = append(log.Readings, reading(9.8, 68, 18.2))
	f, err := Run(Question{Setup: fed(500), Now: 10, Hours: 12, Members: 500, Log: log})
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Doubted) != 1 || f.Doubted[0].Why != PercentAsMass || f.Doubted[0].Reading != 4 {
		t.Errorf("doubted %+v", f.Doubted)
	}
	if f.State.DO.Median > 8 {
		t.Errorf("the oxygen is %.2f", f.State.DO.Median)
	}
}

// A pump that stopped unseen: oxygen near nothing, and the air is under
// suspicion; two readings settle it.
func TestUnloggedStop(t *testing.T) {
	log := Log{Readings: []Reading{
		reading(1, 8.5, 18), reading(3, 8.4, 18), reading(5, 8.4, 18), reading(8, 8.3, 18), reading(10, 1.2, 18), reading(10.5, 0.4, 18),
	}}
	f, err := Run(Question{Setup: drum(), Now: 10.6, Hours: 12, Members: 2000, Log: log})
	if err != nil {
		t.Fatal(err)
	}
	if f.State.DO.Median > 1.5 {
		t.Errorf("the oxygen is %.2f", f.State.DO.Median)
	}
	if f.AirFailing() < 50 && f.State.KLa20.Median > 10 {
		t.Errorf("air fails in %.0f of 100, kLa %.1f", f.AirFailing(), f.State.KLa20.Median)
	}
	if why := f.Why(); why.Driver != ByAir {
		t.Errorf("driven by %s", why.Driver)
	}
}

// The power is out from hour 7 to hour 10, and it was written down.
func TestLoggedStop(t *testing.T) {
	log := falling()
	log.Events = []Event{{Hour: 7, What: AirOff}, {Hour: 10, What: AirOn}}
	log.Readings = log.Readings[:2]
	f, err := Run(Question{Setup: fed(500), Now: 9, Hours: 12, Members: 500, Log: log})
	if err != nil {
		t.Fatal(err)
	}
	if why := f.Why(); why.Driver != ByAir || f.State.DO.Median > 6 {
		t.Errorf("driven by %s at %.1f mg/L", why.Driver, f.State.DO.Median)
	}
	if f.State.KLa20.Median > 1 {
		t.Errorf("kLa %.2f with the air off", f.State.KLa20.Median)
	}
}

// A what-if that changes nothing changes no digit; more air helps, warmth
// hurts, food that is not to come changes nothing.
func TestWhatIf(t *testing.T) {
	s := fed(600)
	s.Additions = append(s.Additions, Addition{Name: "molasses", Hour: 12, Ready: 500, Slow: 100, Nitrogen: 2})
	f, err := Run(Question{Setup: s, Now: 8, Hours: 16, Members: 500, Log: falling()})
	if err != nil {
		t.Fatal(err)
	}
	if same := f.If(Scenario{}); *same.Chance != *f.Chance || *same.MinDO != *f.MinDO {
		t.Errorf("nothing changed, and the chance went from %v to %v", *f.Chance, *same.Chance)
	}
	for name, c := range map[string]struct {
		scenario Scenario
		helps    bool
	}{
		"air": {Scenario{Air: 50}, true}, "cool": {Scenario{Water: -4}, true}, "warm": {Scenario{Water: 4}, false}, "less food": {Scenario{Food: -100}, true},
	} {
		got := f.If(c.scenario).MinDO.Median
		if c.helps != (got > f.MinDO.Median) {
			t.Errorf("%s: lowest %.2f, before %.2f", name, got, f.MinDO.Median)
		}
	}
	if f.question.Setup.Planned = quantity.Hours(24); !f.Pending() {
		t.Error("food is still to come")
	}
}

func TestParseScenario(t *testing.T) {
	got, err := ParseScenario("air +30 %, food -25 %, finish -4 h, temp -2 C")
	want := Scenario{Air: 30, Food: -25, Finish: quantity.Hours(-4), Water: -2}
	if err != nil || got != want {
		t.Errorf("got %+v, %v", got, err)
	}
	for _, bad := range []string{"", "air", "air 30 h", "food +5000 %", "air +1 %, air +2 %", "temp NaN C", "finish -4"} {
		if _, err := ParseScenario(bad); err == nil {
			t.Errorf("%q was taken", bad)
		}
	}
}

// Readings out of order, twice, from before the start and after now.
func TestDisorderedLog(t *testing.T) {
	text := "hour,do_mg_per_l,temp_c\n7,7.2,18\n1,8.3,18\n1,8.3,18\n-2,9,17\n40,1,18\n4,8.0,18\n"
	log, err := ReadLog("readings.csv", []byte(text), LogReading{})
	if err != nil || len(log.Readings) != 4 || log.Before != 1 || log.Readings[0].Hour != 1 {
		t.Fatalf("got %+v, %v", log, err)
	}
	f, err := Run(Question{Setup: fed(500), Now: 10, Hours: 4, Members: 200, Log: log})
	if err != nil || f.Used != 6 {
		t.Errorf("used %d (%v)", f.Used, err)
	}
}

func FuzzReadLog(f *testing.F) {
	f.Add("hour,do_mg_per_l\n1,8\n")
	f.Add("at;event\n2026-01-01T00:00:00Z;food molasses 20 mL\n")
	f.Fuzz(func(t *testing.T, text string) {
		log, err := ReadLog("f", []byte(text), LogReading{})
		if err != nil || len(log.Readings) > 50 {
			return
		}
		made, err := Run(Question{Setup: fed(300), Now: 12, Hours: 6, Members: fewestMembers, Log: Log{Readings: log.Readings}})
		if err != nil || made.Chance == nil || math.IsNaN(made.MinDO.Median) || math.IsNaN(made.State.DO.High95) {
			t.Fatalf("%+v: %v", log, err)
		}
	})
}

func FuzzParseScenario(f *testing.F) {
	f.Add("air +30 %, temp -2 C")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseScenario(text)
		if err == nil && (math.IsNaN(s.Air) || math.IsInf(s.Finish.Hours(), 0)) {
			t.Fatalf("%q gave %+v", text, s)
		}
	})
}

func FuzzParseEvent(f *testing.F) {
	f.Add("food fish hydrolysate 1/2 cup")
	f.Add("air 40 L/min")
	f.Fuzz(func(t *testing.T, text string) {
		e, wrong := ParseEvent(text)
		if wrong == nil && e.What == "" {
			t.Fatalf("%q is no event", text)
		}
	})
}

// All food, no compost, a tank of sugar: an answer, never NaN.
func TestAbsurdRecipes(t *testing.T) {
	for name, s := range map[string]Setup{
		"all sugar":  with(drum(), func(s *Setup) { s.Compost = nil; s.Additions = []Addition{{Ready: 200000, Slow: 100000}} }),
		"nothing":    with(drum(), func(s *Setup) { s.Compost = nil }),
		"ice cold":   with(fed(500), func(s *Setup) { s.Start = 0 }),
		"hot":        with(fed(500), func(s *Setup) { s.Start = 45 }),
		"hardly air": with(fed(5000), func(s *Setup) { s.Transfer.Estimate = 0.01 }),
		"gale":       with(fed(5000), func(s *Setup) { s.Transfer.Estimate = 500 }),
	} {
		f, err := Run(Question{Setup: s, Now: 3, Hours: 20, Members: 200, Log: Log{Readings: []Reading{reading(1, 5, 18), reading(2, 0, 19)}}})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, m := range f.Course {
			if !(m.DO.Median >= 0 && m.DO.Median < 20 && m.Uptake.High95 >= 0) || math.IsInf(m.Uptake.High95, 0) {
				t.Fatalf("%s: %+v", name, m)
			}
		}
	}
}

// A batch past its recipe's end has no chance and no minimum, and says so.
func TestPastItsEnd(t *testing.T) {
	f, err := Run(Question{Setup: fed(500), Now: 30, Hours: 10, Members: 200})
	if err != nil {
		t.Fatal(err)
	}
	a := f.Answer(Telling{Batch: "A"})
	if a.Chance != nil || a.MinDO != nil || a.MinAt != nil || a.BelowAt != nil || a.NextReadingAt != nil || len(a.Actions) != 0 {
		t.Errorf("got %+v", a)
	}
	if a.Why.Text.Key != "forecast.why.past-end" {
		t.Errorf("it says %q", a.Why.Text)
	}
}

// More air, less compost, cooler water or a lower limit never lower the food
// that the air carries, and the curve never falls.
func TestFoodLimitKeepsItsOrder(t *testing.T) {
	molasses, err := recipe.Library().Find("molasses")
	if err != nil {
		t.Fatal(err)
	}
	ask := func(change func(*Setup)) *FoodAnswer {
		s := drum()
		s.Start, s.Limit = 20, 5
		s.Transfer = Transfer{Estimate: 20, Low95: 14, High95: 26}
		s = with(s, change)
		a, err := FoodLimit(FoodQuestion{Setup: s, Food: molasses, Chance: 5})
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	base := ask(func(*Setup) {})
	if base.Binding != FoodBinds || base.Percent <= 0 {
		t.Fatalf("got %+v", base)
	}
	for name, change := range map[string]func(*Setup){
		"more air":     func(s *Setup) { s.Transfer = Transfer{Estimate: 24, Low95: 16.8, High95: 31.2} },
		"less compost": func(s *Setup) { s.Compost[0].GramsPerLitre = 10 },
		"cooler":       func(s *Setup) { s.Start = 16 },
		"lower limit":  func(s *Setup) { s.Limit = 4.5 },
	} {
		if got := ask(change); got.Percent < base.Percent {
			t.Errorf("%s: %.4f %% instead of %.4f %%", name, got.Percent, base.Percent)
		}
	}
	for i := 1; i < len(base.Curve); i++ {
		if base.Curve[i].Chance < base.Curve[i-1].Chance {
			t.Errorf("the curve falls at %v", base.Curve[i])
		}
	}
	if a := ask(func(s *Setup) { s.Limit = 9.5 }); a.Binding != LimitAboveWater || a.Percent != 0 {
		t.Errorf("a limit over saturation gave %+v", a)
	}
}
