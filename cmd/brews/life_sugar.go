package main

import "math"

// sugar is a life that eats sugar before protein (diauxie, Monod 1942), after a
// lag (Baranyi & Roberts 1994, Int. J. Food Microbiol. 23:277), pays for staying
// alive (Pirt 1965, Proc. R. Soc. B 163:224) and now and then bursts: viruses
// kill a share of the cells within an hour and their insides become food.
// Rates at 20 °C per hour.
type sugar struct {
	sugar, protein, slow, living, inert float64
	awake                               float64 // Baranyi's physiological state
	tooled                              float64 // 0 to 1: enzymes for protein

	onSugar, onProtein, apart, keeping, tooling    float64 // 1/h
	halfSugar, halfProtein, represses, halfO, warm float64
	yieldSugar, yieldProtein                       float64
	deaths                                         []death
}

// death is one sudden dying: from an hour on, this share within the next hour.
type death struct{ hour, share float64 }

func newSugar(c chance, b brought) func() life {
	s := sugar{
		protein: 0.6 * b.compost * b.strength * b.compostReady, living: b.organisms(),
		onSugar: c.wide(4, 15) / 24, apart: c.wide(0.5, 4) / 24, keeping: c.between(0.2, 1) / 24, tooling: c.wide(0.1, 0.8),
		halfSugar: c.wide(5, 40), halfProtein: c.wide(5, 40), represses: c.wide(3, 60), halfO: c.wide(0.05, 0.4), warm: c.between(1.045, 1.085),
		yieldSugar: c.between(0.5, 0.66), yieldProtein: c.between(0.5, 0.64), awake: c.wide(0.02, 3), tooled: c.between(0, 0.5),
	}
	s.sugar, s.slow = b.allReady()-s.protein, b.allSlow()
	s.onProtein = s.onSugar * c.between(0.3, 0.8)
	for c.happens(0.4) && len(s.deaths) < 2 {
		s.deaths = append(s.deaths, death{c.between(6, b.planned), c.between(0.2, 0.75)})
	}
	return func() life { t := s; return &t }
}

func (s *sugar) feed(_ float64, m meal) { s.sugar, s.slow = s.sugar+m.ready, s.slow+m.slow }

func (s *sugar) left() float64 { return s.sugar + s.protein + s.slow + s.living + s.inert }

func (s *sugar) step(now moment) float64 {
	warm := now.hours * math.Pow(s.warm, now.water-20)
	air, awake := part(now.oxygen, s.halfO), part(s.awake, 1)
	s.awake = math.Min(1e3, s.awake*math.Exp(warm*s.onSugar))
	free := s.represses / (s.represses + s.sugar)
	s.tooled += warm * s.tooling * (free*part(s.protein, s.halfProtein) - s.tooled*0.5) * (1 - s.tooled)
	s.tooled = math.Min(0.999, math.Max(0.01, s.tooled))
	ate := math.Min(s.sugar, warm*s.living*air*awake*s.onSugar/s.yieldSugar*part(s.sugar, s.halfSugar))
	then := math.Min(s.protein, warm*s.living*air*awake*s.onProtein/s.yieldProtein*part(s.protein, s.halfProtein)*free*s.tooled)
	apart := s.slow * (1 - math.Exp(-warm*s.apart))
	kept := warm * s.living * s.keeping * air * (0.3 + 0.7*awake)
	died := s.dying(now) + 0.2*kept
	s.sugar -= ate
	s.slow -= apart
	s.protein += apart - then + died*0.85
	s.inert += died * 0.15
	s.living += ate*s.yieldSugar + then*s.yieldProtein - kept - died
	return (ate*(1-s.yieldSugar) + then*(1-s.yieldProtein) + kept) / now.hours
}

// dying is what bursts in a step, mg COD/L.
func (s *sugar) dying(now moment) float64 {
	sum := 0.0
	for _, d := range s.deaths {
		if now.hour >= d.hour && now.hour < d.hour+1 {
			sum += s.living * (1 - math.Pow(1-d.share, now.hours))
		}
	}
	return sum
}
