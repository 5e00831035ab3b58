package spray

import (
	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Row is a row of trees or vines and its way to the next one.
type Row struct {
	Width, Height, Spacing quantity.Length
	Shape                  float64 // share of the box that is leaf, 0.1 to 1
}

// Canopy is leaf-holding space per area of ground, kept in m³/m².
type Canopy float64

// CubicMetresPerHectare and CubicFeetPerAcre read it back.
func (c Canopy) CubicMetresPerHectare() float64 { return float64(c) * 1e4 }

// CubicFeetPerAcre is the handbooks' unit.
func (c Canopy) CubicFeetPerAcre() float64 {
	return float64(c) * quantity.Acres(1).SquareFeet() / quantity.Feet(1).Metres()
}

// TreeRowVolume is the space that a row of trees fills, per area of ground:
//
//	TRV = width x height x shape / row spacing
//
// Lengths 0.1 to 30 m; shape 0.1 to 1.
//
// Source: Landers, Cornell University, Tree Row Volume (10 x 8 ft trees in
// 18 ft rows: 193 600 cu ft/acre).
func (r Row) TreeRowVolume() (Canopy, error) {
	err := overZero(amount("width", r.Width), amount("height", r.Height), amount("row-spacing", r.Spacing))
	if err != nil {
		return 0, err
	}
	if !(r.Shape >= 0.1 && r.Shape <= 1) {
		return 0, fault.New("shape", "", wording.Say("spray.shape", wording.Places{"value": r.Shape}), wording.Say("spray.shape.allowed"), wording.Text{})
	}
	return Canopy(r.Width.Metres() * r.Height.Metres() * r.Shape / r.Spacing.Metres()), nil
}

// Wetting is the mix per area that wets a canopy all over: TRV x carrier.
func (c Canopy) Wetting(carrier quantity.Fill) quantity.Dose {
	return quantity.LitresPerSquareMetre(float64(c) * carrier.LitresPerCubicMetre())
}

// UsualCarrier is 0.7 to 1.0 US gal per 1000 cu ft (Landers, Cornell
// University), common practice for wetting leaves to just before they drip.
func UsualCarrier() (low, high quantity.Fill) {
	perCubicFoot := 1000 * quantity.Feet(1).Metres() * quantity.Feet(1).Metres() * quantity.Feet(1).Metres()
	one := quantity.USGallons(1).Litres() / perCubicFoot
	return quantity.Fill(0.7 * one), quantity.Fill(one)
}
