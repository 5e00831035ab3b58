package air

import (
	"sort"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// CurvePoint is one point of a pump's curve: the free air it gives against a
// gauge pressure at its outlet.
type CurvePoint struct {
	Airflow  quantity.Flow
	Pressure quantity.Pressure
}

// Curve is what a pump gives, from its highest pressure (least air) to its
// lowest. Straight lines part the points; nothing is known beyond the ends.
type Curve []CurvePoint

// The number of points that make a curve.
const (
	fewestPoints = 2
	mostPoints   = 50
)

// NewCurve puts points in order and refuses what no pump does: flow must fall
// as pressure rises. Errors: of pump.
func NewCurve(points []CurvePoint) (Curve, error) {
	if len(points) < fewestPoints || len(points) > mostPoints {
		return nil, curveFault("air.curve-points", wording.Places{"n": len(points)})
	}
	c := append(Curve(nil), points...)
	sort.SliceStable(c, func(i, j int) bool { return c[i].Airflow < c[j].Airflow })
	for i, p := range c {
		if !(p.Airflow >= 0 && p.Airflow <= 50000 && p.Pressure >= 0 && p.Pressure <= 1000) {
			return nil, curveFault("air.curve-outside", wording.Places{"flow": quantity.Airflow(p.Airflow), "pressure": p.Pressure})
		}
		if i > 0 && !(p.Airflow > c[i-1].Airflow && p.Pressure < c[i-1].Pressure) {
			return nil, curveFault("air.curve-not-falling", wording.Places{
				"flow1": quantity.Airflow(c[i-1].Airflow), "pressure1": c[i-1].Pressure,
				"flow2": quantity.Airflow(p.Airflow), "pressure2": p.Pressure,
			})
		}
	}
	return c, nil
}

func curveFault(key string, places wording.Places) error {
	return fault.New("pump", "", wording.Say(key, places), wording.Say("air.curve.allowed"), wording.Say(key+".advice", places))
}

// At returns the pressure against which the pump gives so much air, which must
// lie on the curve.
func (c Curve) At(free quantity.Flow) quantity.Pressure {
	i := sort.Search(len(c)-1, func(i int) bool { return c[i].Airflow >= free })
	if i == 0 {
		i = 1
	}
	a, b := c[i-1], c[i]
	share := float64((free - a.Airflow) / (b.Airflow - a.Airflow))
	return a.Pressure + quantity.Pressure(share)*(b.Pressure-a.Pressure)
}

// ShutOff is the point of least air and highest pressure; Open that of most
// air and least pressure.
func (c Curve) ShutOff() CurvePoint { return c[0] }

// Open is the point of most air.
func (c Curve) Open() CurvePoint { return c[len(c)-1] }
