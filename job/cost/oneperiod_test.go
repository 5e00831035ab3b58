package cost_test

import (
	"math"
	"testing"

	"aerosteep/job/cost"
	"aerosteep/quantity"
)

// The textbook's newsboy (from memory): sold at 7, bought at 5, nothing for what
// is left: critical share 2/7; demand normal with mean 50 and deviation 20 gives
// 50 + 20 z(2/7) = 38.7, uniform from 50 to 80 gives 50 + 30 x 2/7 = 58.6.
func TestOnePeriodRule(t *testing.T) {
	paper := cost.Tomorrow{Price: 7, Cost: 5}
	b, err := paper.BrewNormal(cost.Normal{Mean: quantity.Litres(50), Spread: quantity.Litres(20)})
	if err != nil || math.Abs(b.Volume.Litres()-38.68) > 0.01 || math.Abs(b.AllServed-2./7) > 1e-9 {
		t.Errorf("%+v %v", b, err)
	}
	var even cost.Days
	for n := range 3001 {
		even = append(even, quantity.Litres(50+float64(n)/100))
	}
	if b, err = paper.Brew(even); err != nil || math.Abs(b.Volume.Litres()-58.571) > 0.02 {
		t.Errorf("%v %v", b.Volume.Litres(), err)
	}
}

// No other size earns more: looked for by trying them all.
func TestNoOtherSizeEarnsMore(t *testing.T) {
	days := cost.Days{12, 8, 15, 0, 20, 11, 9, 30, 14, 14}
	for i := range days {
		days[i] = quantity.Litres(float64(days[i]))
	}
	for _, rule := range []cost.Tomorrow{{Price: 4, Cost: 1}, {Price: 4, Cost: 3.9}, {Price: 4, Cost: 1, Salvage: 0.9}, {Price: 4, Cost: 3, Goodwill: 10}} {
		best, err := rule.Brew(days)
		if err != nil {
			t.Fatal(err)
		}
		for tenth := range 400 {
			other, _ := rule.Of(days, quantity.Litres(float64(tenth)/10))
			if other.Profit > best.Profit+1e-9 {
				t.Errorf("%+v: %v L earn %v, %v L earn %v", rule, best.Volume.Litres(), best.Profit, other.Volume.Litres(), other.Profit)
			}
		}
	}
}

// The average of what is left and turned away agrees with the loss function, by
// adding up the normal density (midpoints, 8 deviations).
func TestNormalLossAgreesWithItsIntegral(t *testing.T) {
	rule, n := cost.Tomorrow{Price: 4, Cost: 1}, cost.Normal{Mean: quantity.Litres(100), Spread: quantity.Litres(10)}
	b, err := rule.BrewNormal(n)
	if err != nil {
		t.Fatal(err)
	}
	off, step := 0.0, 1e-3
	for x := 20.0; x < 180; x += step {
		density := math.Exp(-math.Pow((x+step/2-100)/10, 2)/2) / (10 * math.Sqrt(2*math.Pi))
		off += max(0, x+step/2-b.Volume.Litres()) * density * step
	}
	if math.Abs(off-b.TurnedOff.Litres()) > 1e-6 {
		t.Errorf("%v, by its integral %v", b.TurnedOff.Litres(), off)
	}
}

func TestOnePeriodRefuses(t *testing.T) {
	good := cost.Days{quantity.Litres(5)}
	for _, wrong := range []cost.Tomorrow{{Price: 1, Cost: 2}, {Price: 3, Cost: 1, Salvage: 2}, {Price: 3, Cost: 1, Goodwill: -1}, {Price: math.NaN(), Cost: 1}} {
		if _, err := wrong.Brew(good); err == nil {
			t.Errorf("%+v is taken", wrong)
		}
	}
	if _, err := (cost.Tomorrow{Price: 2, Cost: 1}).Brew(nil); err == nil {
		t.Error("no days are taken")
	}
}
