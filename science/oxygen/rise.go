package oxygen

import (
	"math"

	"aerosteep/fault"
	"aerosteep/numeric"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Rise is the fit of dissolved oxygen rising to a steady value, with 95 %
// intervals.
type Rise struct {
	KLa       quantity.Estimate[quantity.PerTime]
	Final     quantity.Estimate[quantity.Concentration] // C∞, where it comes to rest
	Start     quantity.Estimate[quantity.Concentration] // C0, at the first reading used
	Reached   float64                                   // percent of the way that the test ran
	RMS       quantity.Concentration                    // of the residuals
	Readings  []Reading                                 // that were used
	Fitted    []quantity.Concentration                  // at those readings
	LagShare  float64                                   // kLa times the probe's lag
	halfWidth float64                                   // of kLa · C∞, mg/L/h
}

// The rules of when a rise says something.
const (
	fewestForRise   = 6
	leastReached    = 30 // percent of the way
	WellReached     = 98 // percent; below it the answer could be better
	widestInterval  = 0.5
	LagToWatch      = 0.1  // kLa times lag: the fit is good below it
	lagTooLarge     = 0.3  // and misleading above, if the lag is only waited for
	lagNotSeparable = 0.75 // or if it is fitted
)

// FitRise fits a rise.
//
// Formula: C(t) = C∞ - (C∞ - C0) e^(-kLa (t - t1)), t1 the first reading used;
// equal weights, nonlinear least squares, all three free. A probe whose lag τ
// is to be fitted answers P = C∞ + A e^(-kLa t) + B e^(-t/τ) with
// A = -(C∞ - C0)/(1 - kLa τ); B is free, since nobody knows what it showed.
// Interval: t(0.975, n - p) times the standard error from s² (JᵀJ)⁻¹, with
// s = max(√(RSS/(n - p)), resolution/√12).
//
// Errors, each a *fault.Fault of file: under 6 readings; no rise; no finite
// best kLa; an interval of kLa wider than half of it; less than 30 % of the
// way. Of probe-tau: kLa · τ over 0.3 (0.75 where the lag is fitted).
//
// Sources: ASCE/EWRI 2-06 (source.ASCE2); for the lag Badino et al. 2000
// (source.Badino2000).
func FitRise(stretch []Reading, probe Probe) (Rise, error) {
	if len(stretch) < fewestForRise {
		return Rise{}, unfit("oxygen.rise.few", wording.Places{"n": len(stretch), "fewest": fewestForRise})
	}
	curve := newCurve(stretch, probe)
	if curve.flat() {
		return Rise{}, unfit("oxygen.rise.none", nil)
	}
	best, found := curve.best()
	switch {
	case found && best.final <= best.start(probe.lagHours()):
		return Rise{}, unfit("oxygen.rise.none", nil)
	case !found && curve.falls():
		return Rise{}, unfit("oxygen.rise.none", nil)
	case !found:
		return Rise{}, unfit("oxygen.rise.no-best", nil)
	}
	rise, ok := curve.estimate(best, probe)
	if !ok {
		return Rise{}, unfit("oxygen.rise.no-best", nil)
	}
	rise.Readings = stretch
	return rise, rise.judge(probe)
}

// unfit is a rise that says nothing; its sheet names the file.
func unfit(key string, places wording.Places) error {
	return fault.New("file", "", wording.Say(key, places), wording.Say("oxygen.rise.allowed"), wording.Say(key+".advice", places))
}

func (p Probe) lagHours() float64 {
	if !p.FitLag {
		return 0
	}
	return p.Lag.Hours()
}

// judge refuses a fit that does not carry an answer.
func (r *Rise) judge(p Probe) error {
	half := float64(r.KLa.High95-r.KLa.Low95) / 2
	r.LagShare = r.KLa.Value.PerHour() * p.Lag.Hours()
	limit := lagTooLarge
	if p.FitLag {
		limit = lagNotSeparable
	}
	switch {
	case half > widestInterval*float64(r.KLa.Value):
		return unfit("oxygen.rise.wide", wording.Places{"kla": r.KLa.Value, "half": quantity.PerTime(half)})
	case r.Reached < leastReached:
		return unfit("oxygen.rise.short", wording.Places{"reached": r.Reached, "least": leastReached})
	case r.LagShare > limit:
		places := wording.Places{"kla": r.KLa.Value, "lag": p.Lag, "share": r.LagShare, "limit": limit}
		given := wording.Say("quantity.given", wording.Places{"given": p.Lag})
		return fault.New("probe-tau", given.String(), wording.Say("oxygen.rise.lag", places),
			wording.Say("oxygen.rise.lag.allowed", places), wording.Say("oxygen.rise.lag.advice", places))
	}
	return nil
}

// KLa20 brings the coefficient from the water's temperature to 20 °C.
func (r Rise) KLa20(water quantity.Temperature) quantity.Estimate[quantity.PerTime] {
	return r.KLa.Scaled(1 / TemperatureFactor(water))
}

// SOTR is the standard transfer that the rise shows for a volume.
//
// Formula: kLa20 · C∞ · [C*(20 °C, 1 atm)/C*(T, P)] · V; the interval from the
// variance of the product kLa · C∞, covariance included. Source: source.ASCE2.
func (r Rise) SOTR(water quantity.Temperature, saturation quantity.Concentration, volume quantity.Volume) quantity.Estimate[quantity.MassRate] {
	scale := float64(standardSaturation/saturation) * volume.Litres() / 1000 / TemperatureFactor(water)
	product := float64(r.KLa.Value) * float64(r.Final.Value)
	return quantity.PlusMinus(quantity.MassRate(product*scale), quantity.MassRate(r.halfWidth*scale))
}

// scatter is s: what the residuals show, and at least what the meter's last
// digit hides (the standard deviation of a rounding, resolution/√12).
func scatter(rss float64, n, p int, resolution quantity.Concentration) float64 {
	return max(math.Sqrt(rss/float64(n-p)), float64(resolution)/math.Sqrt(12))
}

// studentT is t(0.975, degrees of freedom).
func studentT(degrees int) float64 {
	return numeric.StudentQuantile(0.975, float64(degrees))
}
