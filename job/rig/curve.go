package rig

import (
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/air"
	"aerosteep/wording"
)

// ParseCurve reads "60 L/min@0 kPa, 45 L/min@10 kPa, …": 2 to 50 points of
// free air and gauge pressure, in any order; flow must fall as pressure rises.
// Where a semicolon occurs, semicolons part the points and commas are decimal.
func ParseCurve(text string) (air.Curve, error) {
	separator := ","
	if strings.Contains(text, ";") {
		separator = ";"
	}
	parts := strings.Split(text, separator)
	points := make([]air.CurvePoint, 0, len(parts))
	for _, part := range parts {
		point, err := parsePoint(strings.TrimSpace(part))
		if err != nil {
			return nil, err
		}
		points = append(points, point)
	}
	return air.NewCurve(points)
}

func parsePoint(part string) (air.CurvePoint, error) {
	flow, pressure, found := strings.Cut(part, "@")
	if !found {
		return air.CurvePoint{}, curveFault(part, "rig.curve.no-at")
	}
	q, err := quantity.ParseFlow(flow)
	if err != nil {
		return air.CurvePoint{}, err
	}
	p, err := quantity.ParsePressure(pressure)
	if err != nil {
		return air.CurvePoint{}, err
	}
	if q > 50000 || p > 400 {
		return air.CurvePoint{}, curveFault(part, "rig.curve.too-large")
	}
	return air.CurvePoint{Airflow: q, Pressure: p}, nil
}

func curveFault(given, sentence string) *fault.Fault {
	return fault.New("curve", given, wording.Say(sentence), wording.Say("rig.curve.allowed"), wording.Text{})
}

// FreeFlow is the most that the pump moves, by its curve or its label.
func (p Pump) FreeFlow() (quantity.Flow, bool) {
	if len(p.Curve) > 0 {
		return p.Curve.Open().Airflow, true
	}
	if p.LabelFlow != nil {
		return *p.LabelFlow, true
	}
	return 0, false
}
