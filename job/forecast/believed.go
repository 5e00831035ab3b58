package forecast

import (
	"math"

	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/science/oxygen"
)

// AirBasis is what the belief about a vessel's air rests on.
type AirBasis string

// From the best known to the least.
const (
	Measured  AirBasis = "measured" // a test on this vessel
	Caught    AirBasis = "caught"   // the air that an upturned jug caught
	Plate     AirBasis = "plate"    // the pump's curve, depth, tube and bubbles
	Label     AirBasis = "label"    // the flow on the pump's label
	Guess     AirBasis = "guess"    // a pump of which nothing is known
	HandStirs AirBasis = "by-hand"  // no pump
)

// Air is what is believed about a vessel's air.
type Air struct {
	Transfer Transfer
	Basis    AirBasis
	Airflow  quantity.Flow     // free air; 0 where not known
	Pressure quantity.Pressure // gauge, at the pump; 0 where not known
}

// Habits where nothing is known (common practice; the ranges are a
// judgement): the share of a label's flow that arrives, the air of a usual
// pump, the height of water over the floor of a usual vessel.
const (
	labelShare     = 0.6
	usualAirPerL   = 0.35 // L/min for each litre
	usualDepthRise = 0.11
	tubeBore       = quantity.Length(0.012)
	tubeLength     = quantity.Length(2)
)

// BelieveAir works out kLa at 20 °C of a vessel with so much brew: as
// measured, else from the air that a jug caught, else from pump, tube, depth and
// bubbles.
func BelieveAir(v rig.Vessel, p *rig.Pump, volume quantity.Volume, site quantity.Pressure, water quantity.Temperature) (Air, error) {
	if v.KLa20 != nil {
		return measuredAir(v.KLa20), nil
	}
	if p == nil {
		return Air{Transfer: Transfer{Estimate: 2, Low95: 0.4, High95: 10, InBrew: true}, Basis: HandStirs}, nil
	}
	believed := Air{}
	switch {
	case p.Caught != nil:
		believed.Basis, believed.Airflow = Caught, *p.Caught
	case len(p.Curve) > 1:
		meeting, err := meet(p, DepthOf(v, volume), site, water)
		if err != nil {
			return Air{}, err
		}
		believed.Basis, believed.Airflow, believed.Pressure = Plate, meeting.Airflow, meeting.Pressure
	case p.LabelFlow != nil:
		believed.Basis, believed.Airflow = Label, *p.LabelFlow*labelShare
	default:
		believed.Basis, believed.Airflow = Guess, quantity.LitresPerMinute(usualAirPerL*volume.Litres())
	}
	err := believed.transferOf(v, p, volume)
	return believed, err
}

func measuredAir(k *rig.MeasuredKLa) Air {
	t := Transfer{Estimate: k.Estimate, InBrew: k.InBrew}
	if k.Low95 != nil && k.High95 != nil {
		t.Low95, t.High95 = *k.Low95, *k.High95
	}
	return Air{Transfer: t, Basis: Measured}
}

// DepthOf is the depth of water over the diffuser at a volume: the depth at
// the brewing mark in proportion, or a usual vessel's.
func DepthOf(v rig.Vessel, volume quantity.Volume) quantity.Length {
	if v.Depth != nil && v.Brew > 0 {
		return *v.Depth * quantity.Length(min(1.2, float64(volume/v.Brew)))
	}
	return UsualDepth(volume)
}

// UsualDepth is the depth of a usual vessel, as high as it is wide: the cube
// root of its volume, a little more (common practice).
func UsualDepth(volume quantity.Volume) quantity.Length {
	return quantity.Length(usualDepthRise * math.Cbrt(volume.Litres()))
}

func meet(p *rig.Pump, depth quantity.Length, site quantity.Pressure, water quantity.Temperature) (air.Meeting, error) {
	tube := air.Tube{Bore: tubeBore, Length: tubeLength, Fittings: 2}
	if p.TubeBore != nil {
		tube.Bore = *p.TubeBore
	}
	if p.TubeLength != nil {
		tube.Length = *p.TubeLength
	}
	loss := quantity.Kilopascals(2.4)
	if p.DiffuserLoss != nil {
		loss = *p.DiffuserLoss
	}
	return air.OperatingPoint(p.Curve, air.System{
		Depth: depth, Tube: tube, Lines: 1, DiffuserLoss: loss, Water: water, Air: 20, Site: site,
	})
}

// transferOf turns the air into kLa. The range widens with what is not known.
func (a *Air) transferOf(v rig.Vessel, p *rig.Pump, volume quantity.Volume) error {
	if a.Airflow <= 0 {
		a.Transfer = Transfer{Estimate: 0.1, Low95: 0.02, High95: 0.5}
		return nil
	}
	perMetre := oxygen.Medium.SOTEPerMetre()
	switch {
	case p.SOTEPerMetre != nil:
		perMetre = *p.SOTEPerMetre
	case p.Bubbles != "":
		perMetre = oxygen.Bubbles(p.Bubbles).SOTEPerMetre()
	}
	sotr, err := oxygen.SOTR(a.Airflow, perMetre, max(0.05, DepthOf(v, volume)))
	if err != nil {
		return err
	}
	k, err := oxygen.KLa20FromSOTR(sotr, volume)
	if err != nil {
		return err
	}
	a.Transfer.Estimate = k.Value
	spread := 2.0
	switch {
	case a.Basis == Guess:
		spread = 4
	case a.Basis == Label:
		spread = 3
	case p.Bubbles == "" && p.SOTEPerMetre == nil || v.Depth == nil:
		spread = 2.6
	}
	if spread > 2 {
		a.Transfer.Low95, a.Transfer.High95 = k.Value/quantity.PerTime(spread), k.Value*quantity.PerTime(spread)
	}
	return nil
}
