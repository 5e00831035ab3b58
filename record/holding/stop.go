package holding

import (
	"aerosteep/job/application"
	"aerosteep/job/jobfile"
	"aerosteep/job/rig"
	"aerosteep/quantity"
)

// layStop shares a want out into loads and takes off what was put on already.
// The lines are filled once, at the first stop of the round.
func layStop(file *jobfile.File, want jobfile.Want, done []Applied, first bool, way application.WayBack) (Stop, bool) {
	bed, known := file.Bed(want.Bed)
	tea, sized := want.TeaOn(bed)
	if !known || !sized || !(tea > 0) {
		return Stop{}, false
	}
	s := Stop{Want: want, Bed: bed, Mix: tea / quantity.Volume(want.Share()), Done: done}
	s.Name, s.Site, s.Crop, s.Tea = bed.Name, bed.Site, bed.Crop, tea
	s.Applicator = applicatorFor(file, &want)
	outing := s.outing(first)
	loads, err := outing.Loads()
	if err != nil {
		return Stop{}, false
	}
	if loads.SmallLast(outing.Tank) {
		outing.Split = application.EqualLoads
		loads, err = outing.Loads()
		if err != nil {
			return Stop{}, false
		}
	}
	s.Loads, s.Of = loads.Each, len(loads.Each)
	s.Loads = s.Loads[min(len(done), len(s.Loads)):]
	s.correct(outing.Tank, way)
	s.Work = quantity.Minutes(float64(len(s.Loads)) * s.minutesPerLoad())
	return s, true
}

// handLoad is what a load takes where no applicator says.
const handLoad = 20.0

func (s *Stop) minutesPerLoad() float64 {
	if s.Applicator != nil {
		return s.Applicator.MinutesPerLoad
	}
	return handLoad
}

func applicatorFor(file *jobfile.File, want *jobfile.Want) *rig.Applicator {
	for i := range file.Applicators {
		a := &file.Applicators[i]
		if a.Name == want.Applicator || want.Applicator == "" && (want.Method != "foliar" || a.Kind.Sprays()) {
			return a
		}
	}
	return nil
}

// outing is the want as ground to be covered; without an area the mix itself
// is what is shared out.
func (s *Stop) outing(first bool) application.Outing {
	o := application.Outing{Covers: s.Mix.Litres(), Per: quantity.Litres(1), Share: s.Want.Share(), Tank: application.Tank{Holds: s.Mix}, Split: application.FullLoads}
	if s.Bed.Area != nil {
		o.Covers = s.Bed.Area.SquareMetres()
		o.Per = s.Mix / quantity.Volume(o.Covers)
	}
	if a := s.Applicator; a != nil && a.Tank != nil {
		o.Tank.Holds = *a.Tank
		if first && a.DeadVolume < *a.Tank {
			o.Tank.Dead = a.DeadVolume
		}
	}
	return o
}

// correct takes the first load at its word: what it covered and what was gone
// from the tank say how the rest is put on.
func (s *Stop) correct(tank application.Tank, way application.WayBack) {
	if len(s.Done) == 0 || s.Bed.Area == nil || s.Done[0].Covered == nil || s.Done[0].Gone == nil {
		return
	}
	first := application.FirstLoad{
		Ground: *s.Bed.Area, Done: *s.Done[0].Covered, Gone: *s.Done[0].Gone, Dead: tank.Dead,
		Planned: s.planned(),
	}
	c, err := first.Reconcile()
	if err != nil {
		return // more covered than there is: the plan's loads stand
	}
	s.First, s.Correction = &first, &c
	if c.Verdict == application.OnDose {
		return
	}
	rest, err := first.Rest(way, tank.Holds, application.EqualLoads)
	if err != nil {
		return // nothing is left, or this way back is none
	}
	s.Of = 1 + len(rest.Each)
	for i := range rest.Each {
		rest.Each[i].Number = i + 2
	}
	s.Loads = rest.Each[min(len(s.Done)-1, len(rest.Each)):]
}

// planned is the dose on the bed; the bed's area must be known.
func (s *Stop) planned() application.Strength[quantity.Dose] {
	perArea := func(v quantity.Volume) quantity.Dose {
		return quantity.LitresPerSquareMetre(v.Litres() / s.Bed.Area.SquareMetres())
	}
	return application.Strength[quantity.Dose]{Tea: perArea(s.Tea), Mix: perArea(s.Mix), Share: s.Want.Share()}
}
