package main

import "math"

// life is what takes oxygen up. All food and all organisms are in mg COD/L, so
// that what is eaten is either built in or burned.
type life interface {
	// step lives for a while and returns the oxygen taken up, mg/(L h).
	step(now moment) float64
	// feed brings food.
	feed(hour float64, m meal)
	// left is the COD still there, organisms and their remains included, mg/L;
	// NaN where the life keeps no books.
	left() float64
}

// moment is where and for how long a step is lived.
type moment struct {
	hour, hours   float64
	water, oxygen float64 // °C, mg/L
}

// meal is what food brings to a litre of brew.
type meal struct{ ready, slow, nitrogen float64 } // mg COD/L, mg COD/L, mg N/L

// brought is what is in the vessel when the air is turned on.
type brought struct {
	meal                  // of the foods
	compost       float64 // g/L
	strength      float64 // available, mg COD/g of compost
	compostReady  float64 // share of that eaten at once
	nitrogenPerG  float64 // soluble, mg N/g of compost
	organismsPerG float64 // awake at the start, mg COD/g of compost
	planned       float64 // h
}

// bring draws what the compost carries. No table of compost's COD that a brew
// can eat is published: 1 to 30 mg/g about 7 is a judgement, and so is the
// scatter of a factor of two.
func bring(c chance, compost float64, food meal, planned float64) brought {
	return brought{
		meal: food, compost: compost, planned: planned,
		strength:      math.Min(30, math.Max(1, 7*c.factor(0.7))),
		compostReady:  c.between(0.1, 0.5),
		nitrogenPerG:  c.wide(0.05, 0.6),
		organismsPerG: c.wide(0.03, 1),
	}
}

// allReady is what can be eaten at the start, mg COD/L.
func (b brought) allReady() float64 { return b.ready + b.compost*b.strength*b.compostReady }

// allSlow is what has to be taken apart first, mg COD/L.
func (b brought) allSlow() float64 { return b.slow + b.compost*b.strength*(1-b.compostReady) }

// organisms are those awake at the start, mg COD/L.
func (b brought) organisms() float64 { return math.Max(0.05, b.compost*b.organismsPerG) }

// part is the Monod share of a full rate.
func part(food, half float64) float64 { return math.Max(0, food) / (half + math.Max(0, food)) }

// lives makes each kind of life ready to begin, as often as it is needed with
// the same draws.
var lives = map[string]func(chance, brought) func() life{"a": newSludge, "b": newSugar, "c": newCurve, "d": newHoard}

var lifeNames = []string{"a", "b", "c", "d"}
