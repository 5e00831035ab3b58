package spray

import (
	"math"

	"aerosteep/quantity"
)

// Rate is what a nozzle puts on the ground it treats:
//
//	rate = flow / (speed x width)
//
// width is what one nozzle treats: the nozzle spacing of a boom, the width of
// a band, row spacing / nozzles on a row, the swath of one wide nozzle. All
// must be over 0; otherwise a fault for each that is not.
//
// The handbooks' 5940 (gal/acre, mph, in), 495 (ft) and 60 000 (L/ha, km/h,
// cm) are this formula in their units and nothing else.
//
// Source: University of Missouri Extension G1270A.
func Rate(flow quantity.Flow, speed quantity.Speed, width quantity.Length) (quantity.Dose, error) {
	if err := overZero(amount("nozzle-flow", flow), amount("speed", speed), amount("spacing", width)); err != nil {
		return 0, err
	}
	litresPerSecond := flow.LitresPerMinute() / 60
	return quantity.LitresPerSquareMetre(litresPerSecond / (speed.MetresPerSecond() * width.Metres())), nil
}

// FlowFor is the flow that one nozzle must give: rate x speed x width. Limits
// and source as Rate.
func FlowFor(rate quantity.Dose, speed quantity.Speed, width quantity.Length) (quantity.Flow, error) {
	if err := overZero(amount("mix-rate", rate), amount("speed", speed), amount("spacing", width)); err != nil {
		return 0, err
	}
	return quantity.LitresPerMinute(rate.LitresPerSquareMetre() * speed.MetresPerSecond() * width.Metres() * 60), nil
}

// SpeedFor is the speed to go at: flow / (rate x width). Limits and source as
// Rate.
func SpeedFor(rate quantity.Dose, flow quantity.Flow, width quantity.Length) (quantity.Speed, error) {
	if err := overZero(amount("mix-rate", rate), amount("nozzle-flow", flow), amount("spacing", width)); err != nil {
		return 0, err
	}
	return quantity.MetresPerSecond(flow.LitresPerMinute() / 60 / (rate.LitresPerSquareMetre() * width.Metres())), nil
}

// WidthFor is the width one nozzle may treat: flow / (rate x speed). Limits
// and source as Rate.
func WidthFor(rate quantity.Dose, flow quantity.Flow, speed quantity.Speed) (quantity.Length, error) {
	if err := overZero(amount("mix-rate", rate), amount("nozzle-flow", flow), amount("speed", speed)); err != nil {
		return 0, err
	}
	return quantity.Metres(flow.LitresPerMinute() / 60 / (rate.LitresPerSquareMetre() * speed.MetresPerSecond())), nil
}

// SpeedOver is the speed of a timed course: length / time. Both must be over 0.
//
// Source: 88 ft/min is 1 mph; Cornell University, boom sprayer calibration.
func SpeedOver(course quantity.Length, time quantity.Span) (quantity.Speed, error) {
	if err := overZero(amount("course", course), amount("course-time", time)); err != nil {
		return 0, err
	}
	return quantity.MetresPerSecond(course.Metres() / time.Seconds()), nil
}

// Caught is the rate of a catch: volume / area. Both must be over 0.
//
// Source: Ohio State University Extension AEX-520 and Bulletin 817.
func Caught(volume quantity.Volume, ground quantity.Area) (quantity.Dose, error) {
	if err := overZero(amount("caught", volume), amount("test-area", ground)); err != nil {
		return 0, err
	}
	return quantity.LitresPerSquareMetre(volume.Litres() / ground.SquareMetres()), nil
}

// Rating is the flow of a nozzle at one pressure, as its maker states it.
type Rating struct {
	Flow     quantity.Flow
	Pressure quantity.Pressure // gauge, at the nozzle
}

// At is the flow at another pressure, by the orifice law:
//
//	Q = Qr sqrt(P / Pr)
//
// Gauge pressures at the nozzle, over 0. It is meant for trim: twice the
// rated pressure or half of it is the work of another nozzle.
//
// Source: general orifice law; extension calibration sheets.
func (r Rating) At(pressure quantity.Pressure) (quantity.Flow, error) {
	if err := overZero(amount("rated-flow", r.Flow), amount("rated-pressure", r.Pressure), amount("pressure", pressure)); err != nil {
		return 0, err
	}
	return r.Flow * quantity.Flow(math.Sqrt(float64(pressure/r.Pressure))), nil
}

// PressureFor is the pressure that a flow takes: Pr (Q / Qr)². Limits and
// source as At.
func (r Rating) PressureFor(flow quantity.Flow) (quantity.Pressure, error) {
	if err := overZero(amount("rated-flow", r.Flow), amount("rated-pressure", r.Pressure), amount("nozzle-flow", flow)); err != nil {
		return 0, err
	}
	ratio := quantity.Pressure(flow / r.Flow)
	return r.Pressure * ratio * ratio, nil
}
