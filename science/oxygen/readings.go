package oxygen

import "aerosteep/quantity"

// Reading is one reading of a test, timed from any fixed moment.
type Reading struct {
	At     quantity.Span
	Oxygen quantity.Concentration
}

// Probe is what a meter does to a test.
type Probe struct {
	Resolution quantity.Concentration // its last digit
	Lag        quantity.Span          // its 63 % time; 0: as good as none
	FitLag     bool                   // fit the lagged response, instead of waiting for it to pass
}

// lagsToWait is how many lags pass before the reading is within 5 % of the
// water (1 - e^-3).
const lagsToWait = 3

// Settling is how much of a stretch's beginning the probe spoils: nothing
// where its lag is fitted.
func (p Probe) Settling() quantity.Span {
	if p.FitLag {
		return 0
	}
	return lagsToWait * p.Lag
}

// after leaves out the beginning of a stretch. A reading exactly at the end of
// the wait is used, however its time was written.
func after(stretch []Reading, wait quantity.Span) []Reading {
	const slip = quantity.Span(1e-6)
	for i, r := range stretch {
		if r.At-stretch[0].At >= wait-slip {
			return stretch[i:]
		}
	}
	return nil
}
