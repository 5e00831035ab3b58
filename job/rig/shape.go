package rig

import (
	"math"

	"aerosteep/quantity"
)

// Shape is the inside of a vessel. Depths are counted up from the lowest
// point inside.
type Shape interface {
	// Depth is from the lowest point inside to the rim.
	Depth() quantity.Length
	// Holds is the volume up to a depth.
	Holds(depth quantity.Length) quantity.Volume
	// Surface is the open surface of the liquid at a depth.
	Surface(depth quantity.Length) quantity.Area
}

// Full is what a shape holds to the rim.
func Full(s Shape) quantity.Volume { return s.Holds(s.Depth()) }

// DepthOf is how deep a volume stands in a shape: Holds turned round by
// halving. The volume is at most Full.
func DepthOf(s Shape, v quantity.Volume) quantity.Length {
	low, high := quantity.Length(0), s.Depth()
	if v >= Full(s) {
		return high
	}
	for range 100 {
		middle := (low + high) / 2
		if s.Holds(middle) < v {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

func cubicMetres(v float64) quantity.Volume { return quantity.Litres(1000 * v) }

func disc(diameter quantity.Length) float64 {
	d := diameter.Metres()
	return math.Pi * d * d / 4
}

// Cylinder is a standing cylinder: pi r² h.
type Cylinder struct{ Diameter, Height quantity.Length }

// Depth is the height.
func (c Cylinder) Depth() quantity.Length { return c.Height }

// Holds is pi r² h.
func (c Cylinder) Holds(depth quantity.Length) quantity.Volume {
	return cubicMetres(disc(c.Diameter) * depth.Metres())
}

// Surface is the circle.
func (c Cylinder) Surface(quantity.Length) quantity.Area {
	return quantity.SquareMetres(disc(c.Diameter))
}

// ConeBottom is a standing cylinder with a straight side over a cone that
// points down.
type ConeBottom struct{ Diameter, Straight, Cone quantity.Length }

// Depth is the straight side and the cone.
func (c ConeBottom) Depth() quantity.Length { return c.Straight + c.Cone }

// Holds is (pi/3) r² h³/c² in a cone of height c, and above it the whole cone
// and pi r² (h - c).
func (c ConeBottom) Holds(depth quantity.Length) quantity.Volume {
	h, cone := depth.Metres(), c.Cone.Metres()
	if h <= cone {
		return cubicMetres(disc(c.Diameter) / 3 * h * h * h / (cone * cone))
	}
	return cubicMetres(disc(c.Diameter) * (cone/3 + h - cone))
}

// Surface grows with the square of the depth in the cone.
func (c ConeBottom) Surface(depth quantity.Length) quantity.Area {
	share := min(1, float64(depth/c.Cone))
	return quantity.SquareMetres(disc(c.Diameter) * share * share)
}

// LyingCylinder is a cylinder on its side with flat ends.
type LyingCylinder struct{ Diameter, Length quantity.Length }

// Depth is the diameter.
func (c LyingCylinder) Depth() quantity.Length { return c.Diameter }

// Holds is L (r² acos((r - h)/r) - (r - h) sqrt(2 r h - h²)).
func (c LyingCylinder) Holds(depth quantity.Length) quantity.Volume {
	r := c.Diameter.Metres() / 2
	h := min(depth.Metres(), 2*r)
	segment := r*r*math.Acos((r-h)/r) - (r-h)*math.Sqrt(max(0, 2*r*h-h*h))
	return cubicMetres(c.Length.Metres() * segment)
}

// Surface is the chord at the depth times the length.
func (c LyingCylinder) Surface(depth quantity.Length) quantity.Area {
	d, h := c.Diameter.Metres(), depth.Metres()
	return quantity.SquareMetres(2 * math.Sqrt(max(0, h*(d-h))) * c.Length.Metres())
}

// Box is a box.
type Box struct{ Length, Width, Height quantity.Length }

// Depth is the height.
func (b Box) Depth() quantity.Length { return b.Height }

// Holds is length x width x h.
func (b Box) Holds(depth quantity.Length) quantity.Volume {
	return cubicMetres(b.Length.Metres() * b.Width.Metres() * depth.Metres())
}

// Surface is length x width.
func (b Box) Surface(quantity.Length) quantity.Area {
	return quantity.SquareMetres(b.Length.Metres() * b.Width.Metres())
}

// Frustum is a tapered pail or tub.
type Frustum struct{ Top, Bottom, Height quantity.Length }

// Depth is the height.
func (f Frustum) Depth() quantity.Length { return f.Height }

// at is the diameter at a depth.
func (f Frustum) at(depth quantity.Length) quantity.Length {
	return f.Bottom + (f.Top-f.Bottom)*(depth/f.Height)
}

// Holds is pi h/12 (d² + d D + D²), d the diameter of the bottom and D that
// at the depth h.
func (f Frustum) Holds(depth quantity.Length) quantity.Volume {
	d, D := f.Bottom.Metres(), f.at(depth).Metres()
	return cubicMetres(math.Pi * depth.Metres() / 12 * (d*d + d*D + D*D))
}

// Surface is the circle at the depth.
func (f Frustum) Surface(depth quantity.Length) quantity.Area {
	return quantity.SquareMetres(disc(f.at(depth)))
}
