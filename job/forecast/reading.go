package forecast

// Reading is one row of what was measured, by hours since the start. A nil
// value was not measured.
type Reading struct {
	Hour    float64
	DO      *float64 // mg/L
	Percent *float64 // of local saturation
	Water   *float64 // °C
	EC      *float64 // µS/cm
	PH      *float64
	Count   *float64 // bacteria per mL
	Smell   Smell
	ToRim   *float64 // cm
	Line    int      // of the file it came from; 0 where it came from none
}

// HasOxygen tells whether oxygen was measured.
func (r *Reading) HasOxygen() bool { return r.DO != nil || r.Percent != nil }

// Empty tells whether nothing was measured.
func (r *Reading) Empty() bool {
	return !r.HasOxygen() && r.Water == nil && r.EC == nil && r.PH == nil && r.Count == nil && r.Smell == "" && r.ToRim == nil
}

// Smell is what the nose says.
type Smell string

// The smells that are told apart.
const (
	Earthy  Smell = "earthy"
	NoSmell Smell = "none"
	Sweet   Smell = "sweet"
	Sour    Smell = "sour"
	Rotten  Smell = "rotten"
)

// Doubt is why a reading is not believed.
type Doubt string

// The doubts.
const (
	PercentAsMass Doubt = "percent-as-mg"   // a share of saturation in the field for mg/L
	ProbeInAir    Doubt = "probe-in-air"    // what a probe shows that hangs in air
	OutOfLine     Doubt = "out-of-line"     // fits neither what came before nor what came after
	Impossible    Doubt = "impossible"      // no water holds that
	BadThermo     Doubt = "temperature-off" // the water cannot have changed so
)

// Doubted is a reading that is not believed.
type Doubted struct {
	Reading int // index among the readings handed in
	Why     Doubt
	Chance  float64 // in 100, that it is wrong
}
