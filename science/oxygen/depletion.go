package oxygen

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
)

// Standing is a vessel whose air has stopped.
type Standing struct {
	Start      quantity.Concentration // 0 to 50 mg/L
	Uptake     quantity.Uptake        // 0 to 2000 mg/L/h
	SurfaceKLa quantity.PerTime       // 0 to 10 /h; 0 leaves the surface out
	Saturation quantity.Concentration // only where there is a surface
}

// check refuses what no vessel can be.
func (s Standing) check(limit quantity.Concentration) error {
	return fault.Join(
		quantity.Within("do", s.Start, 0, 50),
		quantity.Within("our", s.Uptake, 0, 2000),
		quantity.Within("surface-kla", s.SurfaceKLa, 0, 10),
		quantity.Within("limit", limit, 0, 50),
	)
}

// Equilibrium is where the surface and the uptake balance: C* - OUR/ks, which
// may be negative. It needs a surface.
func (s Standing) Equilibrium() quantity.Concentration {
	return s.Saturation - quantity.Concentration(float64(s.Uptake)/float64(s.SurfaceKLa))
}

// TimeTo returns how long until dissolved oxygen has fallen to the limit, and
// false if it never does.
//
// Formula: t = (C0 - C)/OUR; with a surface t = ln[(C0 - Ceq)/(C - Ceq)]/ks.
// Well mixed; the uptake constant (below about 1 mg/L life slows, so the true
// tail is longer). Errors: of do, our, surface-kla and limit, joined.
// Source: the oxygen balance (source.MassBalance).
func (s Standing) TimeTo(limit quantity.Concentration) (quantity.Span, bool, error) {
	if err := s.check(limit); err != nil {
		return 0, false, err
	}
	if s.Start <= limit {
		return 0, true, nil
	}
	if s.SurfaceKLa == 0 {
		if s.Uptake == 0 {
			return 0, false, nil
		}
		return quantity.Hours(float64(s.Start-limit) / float64(s.Uptake)), true, nil
	}
	rest := s.Equilibrium()
	if rest >= limit {
		return 0, false, nil
	}
	// log1p keeps the digits where the rest lies far below (a weak surface).
	hours := math.Log1p(float64((s.Start-limit)/(limit-rest))) / float64(s.SurfaceKLa)
	return quantity.Hours(hours), true, nil
}
