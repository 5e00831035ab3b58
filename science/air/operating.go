package air

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/water"
	"aerosteep/wording"
)

// System is what a pump has to work against.
type System struct {
	Depth        quantity.Length   // to the diffuser, vessel full
	Tube         Tube              // of one line
	Lines        int               // equal ones side by side, each with its diffuser
	DiffuserLoss quantity.Pressure // taken as constant
	Water, Air   quantity.Temperature
	Site         quantity.Pressure // absolute, of the place
}

// Check refuses a system that cannot be. Errors: of depth, tube-bore,
// tube-length, fittings, extra-k, lines, diffuser-loss, temp, air-temp and
// pressure, joined.
func (s System) Check() error {
	return fault.Join(
		quantity.Within("depth", s.Depth, 0.01, 10),
		s.Tube.Check(),
		quantity.BareWithin("lines", float64(s.Lines), 1, 100),
		quantity.Within("diffuser-loss", s.DiffuserLoss, 0, 400),
		quantity.Within("temp", s.Water, 0, 40),
		quantity.Within("air-temp", s.Air, -20, 50),
		quantity.Within("pressure", s.Site, Thinnest, Densest),
	)
}

// Static is the pressure of the water over the diffuser: ρ g depth.
func (s System) Static() quantity.Pressure {
	// Check has kept the temperature within the density formula's range.
	head, _ := water.Head(s.Water, s.Depth)
	return head
}

// TubeLoss is what each line takes of its share of the air.
func (s System) TubeLoss(free quantity.Flow) quantity.Pressure {
	return s.Tube.Loss(free/quantity.Flow(s.Lines), s.Air, s.Site)
}

// At is the gauge pressure that so much air needs at the pump.
func (s System) At(free quantity.Flow) quantity.Pressure {
	return s.Static() + s.DiffuserLoss + s.TubeLoss(free)
}

// Meeting is where a pump and what it works against come to terms.
type Meeting struct {
	Flows        bool              // false: the pump cannot push air so deep
	Airflow      quantity.Flow     // all lines together, free air
	Pressure     quantity.Pressure // gauge, at the pump
	Static       quantity.Pressure
	TubeLoss     quantity.Pressure // fittings included
	DiffuserLoss quantity.Pressure
	AirPower     quantity.Power // lossless compression of that air
}

// OperatingPoint finds where the pump's curve meets the system's: the air
// that really comes out.
//
// The pump's pressure falls and the system's rises with the air, so that they
// meet once; halving the interval finds it to the last digit. Errors: as
// System.Check; and of pump where they meet beyond either end of its curve.
// Source: source.DarcyWeisbach for tubes.
func OperatingPoint(pump Curve, s System) (Meeting, error) {
	if err := s.Check(); err != nil {
		return Meeting{}, err
	}
	shut, open := pump.ShutOff(), pump.Open()
	if shut.Pressure <= s.At(shut.Airflow) {
		if shut.Airflow == 0 {
			return s.still(shut.Pressure), nil
		}
		if shut.Pressure < s.At(shut.Airflow) {
			return Meeting{}, curveFault("air.curve-too-low", wording.Places{"needed": s.At(shut.Airflow), "highest": shut.Pressure})
		}
	}
	if open.Pressure > s.At(open.Airflow) {
		return Meeting{}, curveFault("air.curve-too-high", wording.Places{"needed": s.At(open.Airflow), "lowest": open.Pressure})
	}
	return s.meet(pump), nil
}

func (s System) still(shutOff quantity.Pressure) Meeting {
	return Meeting{Pressure: shutOff, Static: s.Static(), DiffuserLoss: s.DiffuserLoss}
}

func (s System) meet(pump Curve) Meeting {
	low, high := pump.ShutOff().Airflow, pump.Open().Airflow
	for range 200 {
		middle := low + (high-low)/2
		if middle <= low || middle >= high {
			break
		}
		if pump.At(middle) > s.At(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return s.meeting(high)
}

func (s System) meeting(free quantity.Flow) Meeting {
	m := Meeting{
		Flows: true, Airflow: free, Pressure: s.At(free),
		Static: s.Static(), TubeLoss: s.TubeLoss(free), DiffuserLoss: s.DiffuserLoss,
	}
	m.AirPower = Compression{Airflow: free, Inlet: s.Site, Outlet: s.Site + m.Pressure}.IdealPower()
	return m
}
