package forecast

import (
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
)

// Sources are those that every forecast rests on.
func Sources() []source.Source {
	return []source.Source{
		source.BensonKrause1984, source.ASCE2, source.HenzeASM1, source.RossoCTMI, source.LasaridiStentiford2001,
		source.LiuWest2001, source.Evensen1994, source.CommonPractice,
	}
}

// Cautions are what a reader of this forecast has to know.
func (s *Subject) Cautions(q *Question) []wording.Text {
	said := []wording.Text{wording.Say("forecast.caution.measured")}
	if len(q.Setup.Outdoors) == 0 {
		said = append(said, wording.Say("forecast.caution.no-weather"))
	}
	if s.Air.Basis != Measured {
		said = append(said, wording.Say("forecast.caution.air-guessed"))
	}
	if q.Setup.Limit == 0 {
		said = append(said, wording.Say("forecast.caution.limit", wording.Places{"limit": quantity.MilligramsPerLitre(q.Setup.limit())}))
	}
	for _, r := range q.readings() {
		if r.Smell == Sour || r.Smell == Rotten {
			return append(said, wording.Say("forecast.caution.smell"))
		}
	}
	return said
}
