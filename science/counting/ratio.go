package counting

import "math"

// Mass is a biomass in µg/mL with its standard error, which may be unknown.
type Mass struct {
	Value         float64
	StandardError *float64
}

// relative is the coefficient of variation.
func (m Mass) relative() (float64, bool) {
	if m.StandardError == nil {
		return 0, false
	}
	return *m.StandardError / m.Value, true
}

// Ratio is fungal over bacterial biomass. Pointers are nil where the masses
// give no such number.
type Ratio struct {
	Estimate, Low95, High95 *float64
	RelativeError           *float64
}

// FungalBacterial is F/B with its log-normal 95 % range:
//
//	F/B x exp(± z √(ln(1 + CVf²) + ln(1 + CVb²)))
//
// The ratio depends on the method by more than tenfold, so it compares only
// with itself. Source: ratio of two log-normal quantities (Crow and Shimizu
// 1988, Lognormal Distributions, from memory).
func FungalBacterial(fungal, bacterial Mass) Ratio {
	ratio := fungal.Value / bacterial.Value
	r := Ratio{Estimate: &ratio}
	cvf, knownF := fungal.relative()
	cvb, knownB := bacterial.relative()
	if !knownF || !knownB {
		return r
	}
	spread := math.Exp(Z95 * math.Sqrt(math.Log1p(cvf*cvf)+math.Log1p(cvb*cvb)))
	low, high, relative := ratio/spread, ratio*spread, math.Hypot(cvf, cvb)
	r.Low95, r.High95, r.RelativeError = &low, &high, &relative
	return r
}

// FungalBelow is the ratio where nothing fungal was seen and only the limit
// below which it lies is known.
func FungalBelow(limit float64, bacterial Mass) Ratio {
	low, least := 0.0, bacterial.Value
	if cv, known := bacterial.relative(); known {
		least *= math.Exp(-Z95 * math.Sqrt(math.Log1p(cv*cv)))
	}
	high := limit / least
	return Ratio{Low95: &low, High95: &high}
}
