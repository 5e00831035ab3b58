package oxygen

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Fall is what the air-off stretch of a test says: how fast the brew breathes.
type Fall struct {
	Uptake   quantity.Estimate[quantity.Uptake]
	Start    quantity.Concentration // when the air stopped
	Readings []Reading              // that were used; none where two were typed
	Used     int
	CutShort bool // readings under the cliff were left out
}

// Measurable tells whether the uptake is surely over 0.
func (f Fall) Measurable() bool { return f.Uptake.Low95 > 0 }

// Cliff is the dissolved oxygen below which life is short of it and slows.
const Cliff = quantity.Concentration(2)

const fewestForFall = 3

// FitFall fits the straight part of an air-off stretch.
//
// Formula: uptake = minus the slope; interval t(0.975, n - 2) · s/√Σ(t - t̄)²
// with s = max(√(RSS/(n - 2)), resolution/√12). The wait leaves out the
// stretch's beginning, where bubbles linger; readings from the first under
// 2 mg/L on are left out too.
//
// Errors: under 3 readings left, a *fault.Fault of file. Source: Standard
// Methods 2710 B; Taguchi & Humphrey 1966 (source.TaguchiHumphrey1966).
func FitFall(stretch []Reading, wait quantity.Span, probe Probe) (Fall, error) {
	fall := Fall{}
	if len(stretch) > 0 {
		fall.Start = stretch[0].Oxygen
	}
	above := stretch
	for i, r := range stretch {
		if r.Oxygen < Cliff {
			above, fall.CutShort = stretch[:i], true
			break
		}
	}
	fall.Readings = after(above, max(wait, probe.Settling()))
	if fall.Used = len(fall.Readings); fall.Used < fewestForFall {
		return fall, noFall("oxygen.fall.few", wording.Places{"n": fall.Used, "fewest": fewestForFall})
	}
	fall.Uptake = slope(fall.Readings, probe.Resolution)
	return fall, nil
}

// slope is minus the slope of the straight line through readings.
func slope(readings []Reading, resolution quantity.Concentration) quantity.Estimate[quantity.Uptake] {
	n := len(readings)
	t, y := make([]float64, n), make([]float64, n)
	for i, r := range readings {
		t[i], y[i] = (r.At - readings[0].At).Hours(), float64(r.Oxygen)
	}
	meanT, meanY := mean(t), mean(y)
	tt, ty := 0.0, 0.0
	for i := range t {
		tt += (t[i] - meanT) * (t[i] - meanT)
		ty += (t[i] - meanT) * (y[i] - meanY)
	}
	b, rss := ty/tt, 0.0
	for i := range t {
		d := y[i] - meanY - b*(t[i]-meanT)
		rss += d * d
	}
	half := studentT(n-2) * scatter(rss, n, 2, resolution) / math.Sqrt(tt)
	return quantity.PlusMinus(quantity.Uptake(-b), quantity.Uptake(half))
}

// FallBetween is the uptake from two readings on a notepad; its width is what
// two last digits hide.
//
// Formula: (from - to)/after ± √2 resolution/after. Inputs: 0 to 50 mg/L; 5 s
// to 24 h. Errors: of from, to, after and resolution, joined.
func FallBetween(from, to quantity.Concentration, after quantity.Span, resolution quantity.Concentration) (Fall, error) {
	err := fault.Join(
		quantity.Within("from", from, 0, 50),
		quantity.Within("to", to, 0, 50),
		quantity.Within("after", after, 5, quantity.Hours(24)),
		quantity.Within("resolution", resolution, 0.0001, 1),
	)
	if err != nil {
		return Fall{}, err
	}
	uptake := quantity.Uptake(float64(from-to) / after.Hours())
	half := quantity.Uptake(math.Sqrt2 * float64(resolution) / after.Hours())
	return Fall{Uptake: quantity.PlusMinus(uptake, half), Start: from, Used: 2}, nil
}

// Remaining is how long oxygen lasts from the moment the air stops.
type Remaining struct {
	Time, Soonest quantity.Span
	Latest        *quantity.Span // nil where the uptake may be none
}

// TimeTo returns how long the air may be off until a limit; false where no
// uptake was seen.
//
// Formula: (start - limit)/uptake, all 0 where the start is not above the
// limit.
func (f Fall) TimeTo(limit quantity.Concentration) (Remaining, bool) {
	if f.Uptake.Value <= 0 {
		return Remaining{}, false
	}
	if f.Start <= limit {
		var now quantity.Span
		return Remaining{Latest: &now}, true
	}
	until := func(u quantity.Uptake) quantity.Span { return quantity.Hours(float64(f.Start-limit) / float64(u)) }
	r := Remaining{Time: until(f.Uptake.Value), Soonest: until(f.Uptake.High95)}
	if f.Uptake.Low95 > 0 {
		latest := until(f.Uptake.Low95)
		r.Latest = &latest
	}
	return r, true
}

// AiredReading is a reading of a test in which the air was off for a while.
type AiredReading struct {
	Reading
	AirOn bool
	Line  int // in the file, for messages
}

// PumpOff parts the readings of a test: the stretch without air and the one
// after it. What stands before is not used.
//
// Errors, each a *fault.Fault of file: no stretch without air, or a second.
func PumpOff(readings []AiredReading) (off, on []Reading, err error) {
	for _, r := range readings {
		switch {
		case !r.AirOn && len(on) > 0:
			return nil, nil, secondStretch(r.Line)
		case !r.AirOn:
			off = append(off, r.Reading)
		case len(off) > 0:
			on = append(on, r.Reading)
		}
	}
	if len(off) == 0 {
		return nil, nil, noFall("oxygen.fall.no-stretch", nil)
	}
	return off, on, nil
}

func secondStretch(line int) error {
	f := noFall("oxygen.fall.second", wording.Places{"line": line})
	f.Line = line
	return f
}

// noFall is a fall that says nothing; its sheet names the file.
func noFall(key string, places wording.Places) *fault.Fault {
	return fault.New("file", "", wording.Say(key, places), wording.Say("oxygen.fall.allowed"), wording.Say(key+".advice", places))
}

// Recovery is the rise after the air is back, from where the probe has
// settled; it runs to the steady value of the brew, not to saturation.
//
// Errors: as FitRise.
func Recovery(on []Reading, probe Probe) (Rise, error) {
	return FitRise(after(on, probe.Settling()), probe)
}

// Reaeration is the rise of a clean-water test that starts when the air goes
// on. The wait leaves out its beginning; so does a lagging probe's.
//
// Errors: as FitRise.
func Reaeration(readings []Reading, wait quantity.Span, probe Probe) (Rise, error) {
	return FitRise(after(readings, max(wait, probe.Settling())), probe)
}

// agreeWithin is how far the two ways to an uptake may part in a good test.
const agreeWithin = 0.15

// UptakeByBalance is the uptake that holds a steady value against the air:
// kLa (C* - steady). It agrees with the slope's in a good test.
func (r Rise) UptakeByBalance(saturation quantity.Concentration) quantity.Uptake {
	return quantity.Uptake(float64(r.KLa.Value) * float64(saturation-r.Final.Value))
}

// Agrees tells whether an uptake by balance is within 15 % of the slope's.
func (f Fall) Agrees(byBalance quantity.Uptake) bool {
	return math.Abs(float64(byBalance-f.Uptake.Value)) <= agreeWithin*float64(f.Uptake.Value)
}

// SaturationImplied is the saturation that slope and recovery ask for
// together: steady + uptake/kLa.
func (f Fall) SaturationImplied(r Rise) quantity.Concentration {
	return r.Final.Value + quantity.Concentration(float64(f.Uptake.Value)/float64(r.KLa.Value))
}
