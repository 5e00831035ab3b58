package forecast

import (
	"math"
	"slices"

	"aerosteep/quantity"
)

// Action is one thing that could be done, with what comes of it.
type Action struct {
	What   ActionKind
	Litres float64 // of ice in closed bottles, for Cool
	Step   float64 // °C, for Cool
	Hours  float64 // for FinishEarlier
	Chance float64 // in 100, after it
	MinDO  float64 // mg/L, median, after it
}

// ActionKind is what could be done.
type ActionKind string

// What a grower with a shed can do.
const (
	AirBack       ActionKind = "air-back"       // the air seems to have stopped
	SecondPump    ActionKind = "second-pump"    // where the rig has one
	LessFood      ActionKind = "less-food"      // of what is still to be put in
	Cool          ActionKind = "cool"           // frozen bottles, closed and washed
	FinishEarlier ActionKind = "finish-earlier" // end the brew before it comes
	Nothing       ActionKind = "carry-on"
)

// Latent heat of ice and heat capacity of water, kJ/kg and kJ/(kg K): ice at
// 0 °C that melts and warms to the brew's temperature (handbook values).
const (
	meltingHeat  = 334.0
	heatCapacity = 4.19
	iceShare     = 0.9 // of the cold that reaches the water before it comes from the air
)

// actionMembers: of so many members every one is run for an action.
const actionEvery = 4

// Actions re-runs the members for what could be done now, in the order in
// which they help. spare tells whether the rig has a pump that stands idle.
func (f *Forecast) Actions(spare bool) []Action {
	if f.Chance == nil {
		return nil
	}
	actions := []Action{}
	add := func(a Action, s Scenario) {
		other := f.with(s, actionEvery)
		if other.Chance != nil {
			a.Chance, a.MinDO = *other.Chance, other.MinDO.Median
			actions = append(actions, a)
		}
	}
	if f.AirFailing() > likelyAir {
		actions = append(actions, f.airBack())
	}
	if spare {
		add(Action{What: SecondPump}, Scenario{Air: 100})
	}
	if f.Pending() {
		add(Action{What: LessFood}, Scenario{Food: -50})
	}
	if f.State.Water.Median > 12 {
		const step = -2.0
		add(Action{What: Cool, Step: step, Litres: f.iceFor(step)}, Scenario{Water: step})
	}
	if left := f.question.Setup.Planned.Hours() - f.question.Now; f.MinHour != nil && left > 4 && *f.Chance > 5 {
		earlier := math.Min(left-1, math.Max(2, f.question.Setup.Planned.Hours()-f.MinHour.Median+1))
		earlier = math.Round(earlier)
		add(Action{What: FinishEarlier, Hours: earlier}, Scenario{Finish: -hoursSpan(earlier)})
	}
	actions = slices.DeleteFunc(actions, func(a Action) bool {
		return a.Chance > *f.Chance-worthChance && a.MinDO < f.MinDO.Median+worthOxygen
	})
	sortByChance(actions)
	return actions
}

// An action is worth a word where it takes this much off the chance, in 100,
// or adds this much to the lowest oxygen, mg/L.
const (
	worthChance = 1.0
	worthOxygen = 0.2
)

// airBack is the future with all the air again.
func (f *Forecast) airBack() Action {
	other := f.with(Scenario{}, actionEvery)
	for i := range other.now.members {
		other.now.members[i] = f.started.members[i*actionEvery]
		other.now.members[i].setAir(1)
	}
	full := 1.0
	other.changes = append(other.changes, change{hour: f.question.Now, air: &full})
	other.Course = other.Course[:other.past]
	other.ahead()
	return Action{What: AirBack, Chance: *other.Chance, MinDO: other.MinDO.Median}
}

// iceFor is the ice, in L of water frozen, that cools the vessel by a step:
// m (334 + 4.19 T) = V 4.19 ΔT over what reaches the water.
func (f *Forecast) iceFor(step float64) float64 {
	t := f.State.Water.Median
	return f.question.Setup.Volume.Litres() * heatCapacity * -step / (iceShare * (meltingHeat + heatCapacity*t))
}

// AirFailing is the chance, in 100, that less air arrives than was logged.
func (f *Forecast) AirFailing() float64 {
	if airAt(f.changes, f.question.Now) == 0 {
		return 100
	}
	return 100 * f.started.share(func(m *member) bool { return m.air < 1 })
}

func hoursSpan(h float64) quantity.Span { return quantity.Hours(h) }

func sortByChance(actions []Action) {
	slices.SortStableFunc(actions, func(a, b Action) int {
		if a.Chance != b.Chance {
			return compare(a.Chance, b.Chance)
		}
		return compare(b.MinDO, a.MinDO)
	})
}
