package rig

import (
	"sort"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// ParseCurve reads "60 L/min@0 kPa, 45 L/min@10 kPa, …": 2 to 50 points of
// free air and gauge pressure, in any order; flow must fall as pressure rises.
// Where a semicolon occurs, semicolons part the points and commas are decimal.
func ParseCurve(text string) (Curve, error) {
	separator := ","
	if strings.Contains(text, ";") {
		separator = ";"
	}
	parts := strings.Split(text, separator)
	curve := make(Curve, 0, len(parts))
	for _, part := range parts {
		point, err := parsePoint(strings.TrimSpace(part))
		if err != nil {
			return nil, err
		}
		curve = append(curve, point)
	}
	if len(curve) < 2 || len(curve) > 50 {
		return nil, curveFault(text, "rig.curve.points")
	}
	sort.SliceStable(curve, func(i, j int) bool { return curve[i].Pressure < curve[j].Pressure })
	for i := 1; i < len(curve); i++ {
		if curve[i].Pressure == curve[i-1].Pressure || curve[i].Flow >= curve[i-1].Flow {
			return nil, curveFault(text, "rig.curve.not-falling")
		}
	}
	return curve, nil
}

func parsePoint(part string) (CurvePoint, error) {
	flow, pressure, found := strings.Cut(part, "@")
	if !found {
		return CurvePoint{}, curveFault(part, "rig.curve.no-at")
	}
	q, err := quantity.ParseFlow(flow)
	if err != nil {
		return CurvePoint{}, err
	}
	p, err := quantity.ParsePressure(pressure)
	if err != nil {
		return CurvePoint{}, err
	}
	if q > 50000 || p > 400 {
		return CurvePoint{}, curveFault(part, "rig.curve.too-large")
	}
	return CurvePoint{q, p}, nil
}

func curveFault(given, sentence string) *fault.Fault {
	return fault.New("curve", given, wording.Say(sentence), wording.Say("rig.curve.allowed"), wording.Text{})
}

// FreeFlow is the most that the pump moves, by its curve or its label.
func (p Pump) FreeFlow() (quantity.Flow, bool) {
	if len(p.Curve) > 0 {
		return p.Curve[0].Flow, true
	}
	if p.LabelFlow != nil {
		return *p.LabelFlow, true
	}
	return 0, false
}
