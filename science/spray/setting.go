package spray

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// measuredAgree is how far two statements of one rate may be apart, since at
// least one of them was measured.
const measuredAgree = 0.02

// Setting is what is known of a sprayer; nil is not known.
type Setting struct {
	Rate     *quantity.Dose // of what leaves the nozzle
	Speed    *quantity.Speed
	Width    *quantity.Length // what one nozzle treats
	Flow     *quantity.Flow   // of one nozzle
	Rating   *Rating
	Pressure *quantity.Pressure
	Caught   *quantity.Dose // rate of a catch
}

// Solved is a setting worked out as far as what is known reaches.
type Solved struct {
	Rate     *quantity.Dose
	Speed    *quantity.Speed
	Width    *quantity.Length
	Flow     *quantity.Flow
	Pressure *quantity.Pressure
	// The two ways to the rate, where both are known.
	ByCatch, ByFlow *quantity.Dose
	// Found is the quantity that was worked out last: "mix-rate", "speed" …;
	// "" where everything was given.
	Found string
}

// Solve works out what follows: any three of rate, flow, speed and width give
// the fourth; a rated flow and pressure tie flow and pressure. A catch gives
// the rate and is the answer where flow, speed and width give another one.
// What is stated twice must agree within 2 %.
//
// Source: University of Missouri Extension G1270A; orifice law.
func (s Setting) Solve() (Solved, error) {
	out := Solved{Rate: s.Rate, Speed: s.Speed, Width: s.Width, Flow: s.Flow, Pressure: s.Pressure}
	if err := s.pressureToFlow(&out); err != nil {
		return Solved{}, err
	}
	if err := s.rates(&out); err != nil {
		return Solved{}, err
	}
	if err := out.fourth(); err != nil {
		return Solved{}, err
	}
	if err := s.flowToPressure(&out); err != nil {
		return Solved{}, err
	}
	return out, nil
}

// pressureToFlow finds the flow at the working pressure.
func (s Setting) pressureToFlow(out *Solved) error {
	if s.Pressure == nil {
		return nil
	}
	if s.Rating == nil {
		return fault.New("pressure", "", wording.Say("spray.pressure-alone"), wording.Text{}, wording.Say("spray.pressure-alone.advice"))
	}
	flow, err := s.Rating.At(*s.Pressure)
	if err != nil {
		return err
	}
	if s.Flow != nil && !agree(float64(*s.Flow), float64(flow)) {
		return differ("nozzle-flow", "--nozzle-flow", "--rated-flow, --rated-pressure, --pressure", *s.Flow, flow)
	}
	if s.Flow == nil {
		out.Flow, out.Found = &flow, "nozzle-flow"
	}
	return nil
}

// flowToPressure finds the pressure that the flow takes.
func (s Setting) flowToPressure(out *Solved) error {
	if s.Rating == nil || s.Pressure != nil || out.Flow == nil {
		return nil
	}
	needed, err := s.Rating.PressureFor(*out.Flow)
	if err != nil {
		return err
	}
	out.Pressure = &needed
	if out.Found == "" {
		out.Found = "pressure"
	}
	return nil
}

// rates settles the rate where it is stated, caught or both, and compares it
// with what flow, speed and width give.
func (s Setting) rates(out *Solved) error {
	if s.Rate != nil && s.Caught != nil && !agree(float64(*s.Rate), float64(*s.Caught)) {
		return differ("mix-rate", "--mix-rate", "--caught", *s.Rate, *s.Caught)
	}
	if s.Rate == nil && s.Caught != nil {
		out.Rate, out.Found = s.Caught, "mix-rate"
	}
	if out.Flow == nil || s.Speed == nil || s.Width == nil {
		return nil
	}
	byFlow, err := Rate(*out.Flow, *s.Speed, *s.Width)
	if err != nil {
		return err
	}
	if s.Rate != nil && !agree(float64(*s.Rate), float64(byFlow)) {
		return differ("mix-rate", "--mix-rate", "--nozzle-flow / (--speed x --spacing)", *s.Rate, byFlow)
	}
	if s.Caught != nil {
		out.ByCatch, out.ByFlow = s.Caught, &byFlow
	}
	return nil
}

// fourth finds the one of four that is missing.
func (out *Solved) fourth() error {
	switch {
	case out.Rate == nil && out.Flow != nil && out.Speed != nil && out.Width != nil:
		rate, err := Rate(*out.Flow, *out.Speed, *out.Width)
		out.Rate, out.Found = &rate, "mix-rate"
		return err
	case out.Flow == nil && out.Rate != nil && out.Speed != nil && out.Width != nil:
		flow, err := FlowFor(*out.Rate, *out.Speed, *out.Width)
		out.Flow, out.Found = &flow, "nozzle-flow"
		return err
	case out.Speed == nil && out.Rate != nil && out.Flow != nil && out.Width != nil:
		speed, err := SpeedFor(*out.Rate, *out.Flow, *out.Width)
		out.Speed, out.Found = &speed, "speed"
		return err
	case out.Width == nil && out.Rate != nil && out.Flow != nil && out.Speed != nil:
		width, err := WidthFor(*out.Rate, *out.Flow, *out.Speed)
		out.Width, out.Found = &width, "spacing"
		return err
	}
	return nil
}

// Missing names the first flags of the quantities that nothing is known of.
func (out Solved) Missing() []string {
	var flags []string
	for _, q := range []struct {
		flag    string
		unknown bool
	}{
		{"mix-rate", out.Rate == nil}, {"speed", out.Speed == nil},
		{"spacing", out.Width == nil}, {"nozzle-flow", out.Flow == nil},
	} {
		if q.unknown {
			flags = append(flags, q.flag)
		}
	}
	return flags
}

// Differ is how far the two ways to the rate are apart, in percent of their
// mean; false where only one is known.
func (out Solved) Differ() (percent float64, both bool) {
	if out.ByCatch == nil || out.ByFlow == nil {
		return 0, false
	}
	a, b := float64(*out.ByCatch), float64(*out.ByFlow)
	return math.Abs(a-b) / ((a + b) / 2) * 100, true
}

func agree(first, second float64) bool {
	return math.Abs(first-second) <= measuredAgree*math.Abs(first)*(1+1e-9)
}

func differ(field, first, second string, a, b wording.Speaker) *fault.Fault {
	return fault.New(field, "", wording.Say("application.disagree", wording.Places{"first": first, "second": second, "a": a, "b": b}),
		wording.Say("application.disagree.allowed", wording.Places{"percent": measuredAgree * 100}), wording.Say("application.disagree.advice"))
}
