package forecast

import (
	"testing"

	"aerosteep/quantity"
)

// benchSetup is an ordinary drum for 72 hours.
func benchSetup() Setup {
	return Setup{
		Volume: 150, Depth: 0.75, Pressure: 94, Conductivity: 300, Transfer: Transfer{Estimate: 14}, Start: 17.5,
		Compost:   []Compost{{Kind: "compost", GramsPerLitre: 15}},
		Additions: []Addition{{Name: "molasses", Ready: 500, Slow: 200, Nitrogen: 3}},
		Planned:   quantity.Hours(72),
	}
}

// benchLog is a hundred readings that an ordinary brew could give.
func benchLog() Log {
	log := Log{}
	for i := range 100 {
		do, water := 8.4-0.01*float64(i%30), 17.5+0.02*float64(i)
		log.Readings = append(log.Readings, Reading{Hour: 0.5 + 0.7*float64(i), DO: &do, Water: &water})
	}
	return log
}

// An update with 2,000 members over 72 h with 100 readings.
func BenchmarkUpdate(b *testing.B) {
	q := Question{Setup: benchSetup(), Log: benchLog(), Now: 71, Hours: 1}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Run(q); err != nil {
			b.Fatal(err)
		}
	}
}

// A what-if from the members as they stand, for the 24 h that a page asks for.
func BenchmarkWhatIf(b *testing.B) {
	f, err := Run(Question{Setup: benchSetup(), Log: benchLog(), Now: 24, Hours: 24})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		f.If(Scenario{Air: 30, Water: -2})
	}
}

// One member of the living model over 72 h.
func BenchmarkMember(b *testing.B) {
	s := benchSetup()
	e := newEnsemble(&s, 100, 1)
	steps := timeline(&s, changesOf(s.Additions), 72)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		m := e.members[i%100]
		for j := range steps {
			m.advance(&steps[j], e.climate)
		}
	}
}

func BenchmarkPrior(b *testing.B) {
	for b.Loop() {
		Prior(benchSetup(), 2000, 1)
	}
}
