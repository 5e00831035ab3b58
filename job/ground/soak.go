package ground

import "aerosteep/quantity"

// Reservoir is what the soil can take up now.
type Reservoir struct {
	Available quantity.WaterHolding // between field capacity and wilting point
	Depleted  quantity.Share        // of it gone before
	Intake    quantity.DepthRate    // once wet
}

// WettedDepth is how deep a drench wets.
//
//	depth = applied / (depleted share x available water)
func (r Reservoir) WettedDepth(applied quantity.Dose) quantity.Length {
	return quantity.Metres(applied.LitresPerSquareMetre() / (r.Depleted.Fraction() * r.Available.MillimetresPerMetre()))
}

// ToWet is the drench that wets to a depth: WettedDepth turned round.
func (r Reservoir) ToWet(depth quantity.Length) quantity.Dose {
	return quantity.LitresPerSquareMetre(depth.Metres() * r.Depleted.Fraction() * r.Available.MillimetresPerMetre())
}

// NoPonding is how long applying has to take for none to stand on the soil.
//
//	t = applied / intake
func (r Reservoir) NoPonding(applied quantity.Dose) quantity.Span {
	return quantity.Hours(applied.LitresPerSquareMetre() / r.Intake.MillimetresPerHour())
}

// Surface is what the ground keeps from running off.
type Surface struct {
	Storage quantity.Length
	Slope   quantity.Share
}

// Verdict says what becomes of a drench.
type Verdict string

// The verdicts.
const (
	SoaksIn Verdict = "soaks-in"
	Ponds   Verdict = "ponds"
	RunsOff Verdict = "runs-off"
)

// steepest is the slope on which puddles still stay (common practice).
const steepest = quantity.Share(0.05)

// slack keeps a limit a limit after a conversion of units.
const slack = 1e-9

// Applying is a drench put on within a time.
type Applying struct {
	Rate    quantity.DepthRate
	Ponding quantity.Length
	Verdict Verdict
}

// Apply works out what a drench does when it is put on within a time.
//
//	rate    = applied / time
//	ponding = max(0, applied - intake x time)
//
// What stands up to the surface's storage on a slope up to 5 % stays.
func (r Reservoir) Apply(applied quantity.Dose, over quantity.Span, s Surface) Applying {
	mm := applied.LitresPerSquareMetre()
	a := Applying{Rate: quantity.MillimetresPerHour(mm / over.Hours())}
	standing := max(0, mm-r.Intake.MillimetresPerHour()*over.Hours())
	if standing <= slack*mm {
		standing = 0
	}
	a.Ponding = quantity.Metres(standing / 1000)
	switch {
	case standing == 0:
		a.Verdict = SoaksIn
	case standing <= s.Storage.Millimetres()*(1+slack) && s.Slope <= steepest*(1+slack):
		a.Verdict = Ponds
	default:
		a.Verdict = RunsOff
	}
	return a
}
