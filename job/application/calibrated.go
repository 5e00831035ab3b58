package application

import "aerosteep/quantity"

// WaysBack are the three ways to the planned dose from what an applicator puts
// on; one of them is chosen.
type WaysBack struct {
	SpeedFactor    float64         // go this many times as fast
	PressureFactor float64         // at this many times the pressure
	HoldDose       *quantity.Share // mix at this share; nil where that is over all tea
}

// waysBack are the ways from an actual mix rate to the planned dose: speed x
// (actual / planned), pressure x (planned / actual)², or share = planned tea
// rate / actual mix rate.
//
// Source: arithmetic; orifice law for the pressure.
func waysBack(actual quantity.Dose, planned Strength[quantity.Dose]) WaysBack {
	ratio := float64(actual / planned.Mix)
	ways := WaysBack{SpeedFactor: ratio, PressureFactor: 1 / (ratio * ratio)}
	if hold := quantity.Share(planned.Tea / actual); !over(hold.Fraction(), 1) {
		hold = min(1, hold)
		ways.HoldDose = &hold
	}
	return ways
}

// Calibration is what an applicator was found to put on, against what a bed is
// to have.
type Calibration struct {
	Actual  quantity.Dose // mix
	Planned quantity.Dose
	Percent float64 // actual / planned - 1
	Verdict DoseVerdict
	WaysBack
}

// Calibrated says before the first load whether an applicator, used as it was
// when it was calibrated, will be on dose. Both rates over 0; the verdict is that
// of the first load (10 %, common practice).
func Calibrated(actual quantity.Dose, planned Strength[quantity.Dose]) Calibration {
	percent := PercentOff(float64(actual/planned.Mix), 1)
	return Calibration{Actual: actual, Planned: planned.Mix, Percent: percent, Verdict: doseVerdict(percent), WaysBack: waysBack(actual, planned)}
}
