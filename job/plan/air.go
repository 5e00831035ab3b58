package plan

import (
	"math"

	"aerosteep/job/forecast"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/science/oxygen"
	"aerosteep/source"
)

// aeration is what is known of a vessel's air at a filling.
type aeration struct {
	airflow  *quantity.Flow
	pressure *quantity.Pressure
	kla20    quantity.PerTime
	factor   float64 // of its 95 % range, up and down
	low95    *quantity.PerTime
	high95   *quantity.PerTime
	inBrew   bool
	basis    string
	doubts   map[string]float64 // what is not known, by ln of how much it widens
}

// How far a kLa20 may be off, as a factor at 95 %. Judged: plates of pumps and
// tables of bubbles scatter by about 35 %, a single pump-off test by 18 %.
const (
	offByPlate    = 2.0
	offByTest     = 1.43
	offByDepth    = 2.0 // depth guessed from the volume
	offByLabel    = 1.8 // label flow in place of a curve
	offByBubbles  = 1.6 // fine, medium or coarse not said
	offByNoPump   = 6.0 // a pump nobody knows anything of
	offByStirring = 3.0
)

// stirred is the transfer of a pail that is stirred by hand now and then
// (judged, common practice).
const stirred quantity.PerTime = 2

func (a aeration) estimate() Estimate {
	e := Estimate{Estimate: a.kla20.PerHour(), Low95: a.kla20.PerHour() / a.factor, High95: a.kla20.PerHour() * a.factor}
	if a.low95 != nil {
		e.Low95 = a.low95.PerHour()
	}
	if a.high95 != nil {
		e.High95 = a.high95.PerHour()
	}
	return e
}

func (a aeration) transfer() forecast.Transfer {
	e := a.estimate()
	return forecast.Transfer{
		Estimate: a.kla20, Low95: quantity.PerHour(e.Low95), High95: quantity.PerHour(e.High95), InBrew: a.inBrew,
	}
}

// aerate finds the air of a vessel at a filling: as measured, else from pump,
// tube, depth and bubbles.
func (p *planner) aerate(v rig.Vessel, volume quantity.Volume) aeration {
	pump, hasPump := p.File.Pump(v.Pump)
	depth, depthKnown := depthAt(v, volume)
	a := aeration{factor: offByStirring, kla20: stirred, basis: "habit", doubts: map[string]float64{}}
	if hasPump {
		a = p.blow(v, pump, depth, depthKnown, volume)
	}
	if m := v.KLa20; m != nil {
		a.kla20, a.low95, a.high95, a.inBrew = m.Estimate, m.Low95, m.High95, m.InBrew
		a.factor, a.basis, a.doubts = offByTest, "measured", nil
	}
	return a
}

// blow works out the air of a pump: where its curve meets depth, tube and
// diffuser, and how much of the oxygen in it goes over.
func (p *planner) blow(v rig.Vessel, pump rig.Pump, depth quantity.Length, depthKnown bool, volume quantity.Volume) aeration {
	a := aeration{factor: offByPlate, basis: "physics", doubts: map[string]float64{"vessel.kla20": math.Log(offByPlate)}}
	flow := p.flow(&a, pump, depth)
	if !depthKnown {
		a.doubt("vessel.depth", offByDepth)
	}
	share := pump.Bubbles.SOTEPerMetre()
	switch {
	case pump.SOTEPerMetre != nil:
		share = *pump.SOTEPerMetre
	case pump.Bubbles == "":
		share = oxygen.Medium.SOTEPerMetre()
		a.doubt("pump.bubbles", offByBubbles)
		a.basis = "habit"
	default:
		a.basis = "habit"
	}
	sotr, err := oxygen.SOTR(flow, share, depth)
	if err != nil {
		return a
	}
	kla, err := oxygen.KLa20FromSOTR(sotr, volume)
	if err == nil {
		a.kla20 = kla.Value
	}
	p.cite(source.CommonPractice)
	return a
}

// doubt widens the range by something nobody has measured.
func (a *aeration) doubt(key string, factor float64) {
	a.doubts[key] = math.Log(factor)
	sum := 0.0
	for _, d := range a.doubts {
		sum += d * d
	}
	a.factor = math.Exp(math.Sqrt(sum))
}

// unknownPump is the flow per litre of brew that is taken for a pump of which
// nothing is known (common practice: from 0.25 to 9 L/min a gallon are said).
const unknownPump = 0.4

// flow is the air that really comes out: as a jug caught it, else by curve or
// label.
func (p *planner) flow(a *aeration, pump rig.Pump, depth quantity.Length) quantity.Flow {
	if pump.Caught != nil {
		a.airflow = pump.Caught
		return *pump.Caught
	}
	free, known := pump.FreeFlow()
	if !known {
		a.doubt("pump.curve", offByNoPump)
		return unknownPump * 20
	}
	if len(pump.Curve) == 0 {
		a.doubt("pump.curve", offByLabel)
		return free * 0.6 // half-way down the line to a small pump's shut-off
	}
	system := air.System{
		Depth: depth, Lines: 1, DiffuserLoss: orZero(pump.DiffuserLoss),
		Tube:  air.Tube{Bore: orElse(pump.TubeBore, 0.2), Length: orZero(pump.TubeLength)},
		Water: 20, Air: 20, Site: p.sitePressure(""),
	}
	meeting, err := air.OperatingPoint(pump.Curve, system)
	if err != nil {
		a.doubt("pump.curve", offByLabel)
		return pump.Curve[0].Airflow
	}
	p.cite(source.DarcyWeisbach)
	a.airflow, a.pressure = &meeting.Airflow, &meeting.Pressure
	return meeting.Airflow
}

func orZero[T any](v *T) T {
	var zero T
	return orElse(v, zero)
}

func orElse[T any](v *T, other T) T {
	if v != nil {
		return *v
	}
	return other
}

// depthAt is the depth of the water at a filling: from the shape, or in
// proportion to that at `brew`; else guessed, a vessel about as deep as wide.
func depthAt(v rig.Vessel, volume quantity.Volume) (quantity.Length, bool) {
	switch {
	case v.Depth != nil && v.Brew > 0:
		return *v.Depth * quantity.Length(volume/v.Brew), true
	case v.Shape != nil:
		return rig.DepthOf(v.Shape, volume), true
	}
	return quantity.Metres(math.Cbrt(volume.CubicMetres())), false
}

// sitePressure is the air pressure at a site, by its altitude.
func (p *planner) sitePressure(site string) quantity.Pressure {
	s, known := p.File.Site(site)
	if !known {
		return quantity.StandardAtmosphere
	}
	pressure, err := air.PressureAt(s.Altitude)
	if err != nil {
		return quantity.StandardAtmosphere
	}
	p.cite(source.ASHRAEAtmosphere)
	return pressure
}
