package holding

import (
	"math"
	"time"

	"aerosteep/job/application"
	"aerosteep/job/rig"
	"aerosteep/quantity"
)

// CalibrationServes is how long a calibration is taken at its word: a season
// (common practice: before each season, and after every change of nozzle,
// pressure or person).
const CalibrationServes = 180 * 24 * time.Hour

// Calibrated is what an applicator was last found to do.
type Calibrated struct {
	At       time.Time
	Aged     bool
	OnDose   *application.Calibration // where it puts on a rate and the bed's area is known
	Share    quantity.Share           // of tea out of its jar; 0 where it draws from none
	ShareOff bool                     // that share is over 10 % off the mix that the bed is to have
}

// NeedsCalibration tells the kinds of which nobody can say what they put on
// without a test.
func NeedsCalibration(kind rig.ApplicatorKind) bool {
	return kind == rig.Knapsack || kind == rig.Boom || kind == rig.HoseEnd || kind == rig.Injector
}

// calibrated is the last calibration of the stop's applicator; nil where there
// is none. One that was borrowed has none: nobody knows who set it since.
func (h *Holding) calibrated(s *Stop, now time.Time) *Calibrated {
	if s.Applicator == nil || s.Applicator.Borrowed {
		return nil
	}
	for _, test := range h.TestsOf("applicator", s.Applicator.Name) {
		c := Calibrated{At: test.At, Aged: now.Sub(test.At) > CalibrationServes}
		if test.MixRate != nil && s.Bed.Area != nil {
			ahead := application.Calibrated(quantity.LitresPerSquareMetre(*test.MixRate), s.planned())
			c.OnDose = &ahead
		}
		if test.PercentTea != nil && *test.PercentTea > 0 {
			c.Share = quantity.Share(*test.PercentTea / 100)
			c.ShareOff = math.Abs(c.Share.Fraction()/s.Want.Share().Fraction()-1) > 0.1*(1+1e-9)
		}
		if c.OnDose != nil || c.Share > 0 {
			return &c
		}
	}
	return nil
}
