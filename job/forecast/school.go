package forecast

import (
	"aerosteep/job/recipe"
	"aerosteep/quantity"
)

// SchoolPail is the pail that a class brews in an hour's lesson: 15 L, unfed, in
// a room of 20 °C, with the air of a small pump. Invented, of usual size.
func SchoolPail() Setup {
	room := quantity.Celsius(20)
	indoors := true
	return Setup{
		Volume: quantity.Litres(15), Depth: quantity.Metres(0.28), Pressure: quantity.Kilopascals(101.325),
		Transfer: Transfer{Estimate: quantity.PerHour(14), Low95: quantity.PerHour(13.8), High95: quantity.PerHour(14.2), InBrew: true},
		Start:    room, Held: &room, Indoors: &indoors,
		Compost: []Compost{{Kind: "compost", GramsPerLitre: 30}}, Planned: quantity.Hours(24),
	}
}

// Played is one brew at an hour.
type Played struct{ Hour, DO, Water, Uptake float64 } // mg/L, °C, mg/L/h

// Play walks one brew of a set-up with all that is done to it, from its start to
// an hour: what a class watches. The same seed is the same brew, so that what a
// change does shows against the brew without it.
//
// Errors: those of Run.
func Play(s Setup, events []Event, hour float64, seed uint64) ([]Played, error) {
	q := Question{Setup: s, Log: Log{Events: events}, Larder: recipe.Library(), Now: hour, Members: fewestMembers, Seed: seed}
	if err := q.check(); err != nil {
		return nil, err
	}
	changes, err := q.changes()
	if err != nil {
		return nil, err
	}
	e := newEnsemble(&q.Setup, q.Members, q.Seed)
	m := &e.members[0]
	course := []Played{{0, m.oxygen, m.water, m.uptake}}
	steps := timeline(&q.Setup, changes, hour)
	for i := range steps {
		e.stride(&steps[i])
		m = &e.members[0]
		course = append(course, Played{steps[i].to(), m.oxygen, m.water, m.uptake})
	}
	return course, nil
}
