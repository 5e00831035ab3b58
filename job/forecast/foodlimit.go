package forecast

import (
	"math"

	"aerosteep/job/recipe"
	"aerosteep/quantity"
)

// FoodQuestion asks how much of a food this air can carry.
type FoodQuestion struct {
	Setup  Setup // without additions; the water is held at its temperature
	Food   recipe.Ingredient
	Chance float64 // in 100, that is accepted
}

// Binding is what sets the limit.
type Binding string

// The bindings.
const (
	FoodBinds        Binding = "food"
	LimitAboveWater  Binding = "limit-above-saturation"
	CompostAlone     Binding = "compost-alone"
	NeverBinds       Binding = "never"
	mostFoodPercent          = 20.0  // w/v: no longer a brew
	leastFoodPercent         = 0.004 // w/v: the first step above none
	foodStep                 = 1.4   // ratio of one dose to the next
	foodMembers              = 800
	foodSeed                 = 1
	fewestCurvePoint         = 16
)

// FoodDose is one dose with its chance.
type FoodDose struct {
	Percent float64 // w/v: g in 100 mL of brew water
	Chance  float64 // in 100
}

// FoodAnswer is the largest dose that keeps the chance.
type FoodAnswer struct {
	Percent    float64
	Chance     float64
	Binding    Binding
	PeakUptake Range
	MinDO      Band
	MinHour    Range
	Curve      []FoodDose
	Saturation float64 // mg/L at the surface, of the water as it is held
}

// FoodLimit finds the largest dose of a food at which the chance of going
// under the limit, within the planned hours, stays at what is accepted. The
// doses that are run are the same for every question, with the same members,
// so that more air, less compost, cooler water or a lower limit never lower
// the answer; between two doses the chance is a straight line.
//
// Errors: as a Setup is refused.
func FoodLimit(q FoodQuestion) (*FoodAnswer, error) {
	held := q.Setup.Start
	q.Setup.Held, q.Setup.Additions = &held, nil
	if err := q.Setup.check(); err != nil {
		return nil, err
	}
	a := &FoodAnswer{Saturation: saturation(held, &q.Setup)}
	if q.Setup.limit() >= a.Saturation {
		a.Binding, a.Chance = LimitAboveWater, 100
		a.describe(q, 0)
		a.Curve = flatCurve(100)
		return a, nil
	}
	doses := q.doses()
	a.decide(q, doses)
	a.describe(q, a.Percent)
	a.Curve = curve(doses, a.Percent)
	return a, nil
}

// decide reads the answer off the doses.
func (a *FoodAnswer) decide(q FoodQuestion, doses []FoodDose) {
	last := doses[len(doses)-1]
	switch {
	case doses[0].Chance > q.Chance:
		a.Binding, a.Chance = CompostAlone, doses[0].Chance
	case last.Chance <= q.Chance:
		a.Binding, a.Percent, a.Chance = NeverBinds, last.Percent, last.Chance
	default:
		a.Binding, a.Chance = FoodBinds, q.Chance
		for i := 1; i < len(doses); i++ {
			if p, n := doses[i-1], doses[i]; n.Chance > q.Chance {
				a.Percent = p.Percent + (n.Percent-p.Percent)*(q.Chance-p.Chance)/(n.Chance-p.Chance)
				break
			}
		}
	}
}

// doses runs the same doses for every question: none, then in equal ratios up
// to the most, until the answer and twice the answer are known. The chance
// never falls from one to the next.
func (q *FoodQuestion) doses() []FoodDose {
	doses := []FoodDose{{0, q.chanceAt(0)}}
	crossed := 0.0
	for percent := leastFoodPercent; ; percent *= foodStep {
		percent = math.Min(percent, mostFoodPercent)
		before := doses[len(doses)-1].Chance
		chance := before
		if before < 100 {
			chance = math.Max(before, q.chanceAt(percent))
		}
		doses = append(doses, FoodDose{percent, chance})
		if crossed == 0 && chance > q.Chance {
			crossed = percent
		}
		if percent == mostFoodPercent || crossed > 0 && percent > 2*crossed {
			return doses
		}
	}
}

// chanceAt is the chance of going under the limit with so much food at the
// start.
func (q *FoodQuestion) chanceAt(percent float64) float64 {
	return q.outlook(percent).Chance
}

func (q *FoodQuestion) outlook(percent float64) *Outlook {
	s := q.Setup
	s.Additions = []Addition{FoodAdded(q.Food, percent)}
	return prior(s, foodMembers, foodSeed, false)
}

// FoodAdded is a dose of a food, in % w/v, at the start.
func FoodAdded(food recipe.Ingredient, percent float64) Addition {
	gramsPerLitre := 10 * percent
	demand, ready := food.Composition.Demand(), food.Composition.ReadyDemand()
	mg := func(share float64) quantity.Concentration {
		return quantity.MilligramsPerLitre(1000 * gramsPerLitre * share)
	}
	return Addition{
		Name: food.Name, Ready: mg(ready), Slow: mg(math.Max(0, demand-ready)),
		Nitrogen: mg(food.Composition.Nitrogen.Fraction() * solubleNitrogen),
	}
}

func (a *FoodAnswer) describe(q FoodQuestion, percent float64) {
	out := q.outlook(percent)
	peak := out.PeakUptake
	a.PeakUptake = Range{Median: peak.Median, Low80: peak.Low80, High80: peak.High80}
	a.MinDO, a.MinHour = out.MinDO, out.MinHour
}

// curve reads doses from none to twice the answer off those that were run.
func curve(doses []FoodDose, answer float64) []FoodDose {
	top := math.Min(mostFoodPercent, 2*answer)
	if top == 0 {
		top = doses[len(doses)-1].Percent
	}
	points := make([]FoodDose, fewestCurvePoint)
	for i := range points {
		percent := top * float64(i) / float64(fewestCurvePoint-1)
		points[i] = FoodDose{percent, between(doses, percent)}
	}
	return points
}

func between(doses []FoodDose, percent float64) float64 {
	for i := 1; i < len(doses); i++ {
		p, n := doses[i-1], doses[i]
		if percent <= n.Percent {
			return p.Chance + (n.Chance-p.Chance)*(percent-p.Percent)/(n.Percent-p.Percent)
		}
	}
	return doses[len(doses)-1].Chance
}

func flatCurve(chance float64) []FoodDose {
	points := make([]FoodDose, fewestCurvePoint)
	for i := range points {
		points[i] = FoodDose{mostFoodPercent * float64(i) / float64(fewestCurvePoint-1), chance}
	}
	return points
}
