package forecast

// How likely a nose finds each smell over water with little, middling and much
// oxygen. Sour and rotten come from life without air, but also from the compost
// itself; earthy is there nearly always. Judged, from the trade's sayings: no
// counts of noses against meters in tea are published.
var smellChance = map[Smell][3]float64{
	Earthy: {0.40, 0.55, 0.60},
	Sweet:  {0.15, 0.15, 0.15},
	Sour:   {0.25, 0.10, 0.04},
	Rotten: {0.15, 0.03, 0.01},
}

// What counts as little and as much oxygen for the nose, mg/L.
const littleOxygen, muchOxygen = 2.0, 4.0

// weighSmell weighs the members by a smell; "none" says nothing.
func (e *ensemble) weighSmell(smell Smell) {
	chances, known := smellChance[smell]
	if !known {
		return
	}
	for i := range e.members {
		switch m := &e.members[i]; {
		case m.oxygen < littleOxygen:
			e.weights[i] *= chances[0]
		case m.oxygen < muchOxygen:
			e.weights[i] *= chances[1]
		default:
			e.weights[i] *= chances[2]
		}
	}
}
