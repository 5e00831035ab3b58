package rig

import (
	"math"

	"aerosteep/quantity"
)

// Mark is one level on the wall of a vessel.
type Mark struct {
	Volume quantity.Volume
	Depth  quantity.Length // up from the lowest point inside
	Down   quantity.Length // straight down from the rim
	Wall   quantity.Length // from the rim along the wall, which may slope
}

// Marks are the levels at every full step of volume, from the lowest up; the
// rim has none.
func Marks(s Shape, step quantity.Volume) []Mark {
	full := Full(s)
	var marks []Mark
	for n := 1; float64(n)*float64(step) < float64(full)*(1-1e-9) && n <= mostMarks; n++ {
		v := quantity.Volume(float64(n) * float64(step))
		depth := DepthOf(s, v)
		marks = append(marks, Mark{v, depth, s.Depth() - depth, wall(s, depth)})
	}
	return marks
}

// mostMarks is how many levels a wall has room for.
const mostMarks = 200

// RoundStep is the step of 1, 2 or 5 times a power of ten of which a vessel
// has about twelve at most. It takes and gives any unit of volume.
func RoundStep(full float64) float64 {
	least := full / 12
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, n := range []float64{1, 2, 5} {
		if n*power >= least*(1-1e-9) {
			return n * power
		}
	}
	return 10 * power
}

// Point is a point of a vessel's section: out from its middle, up from its
// lowest point.
type Point struct{ Out, Up quantity.Length }

// Section is the right half of a vessel cut through, from the lowest point to
// the rim. A lying cylinder is seen from its end, a box from its long side.
func Section(s Shape) []Point {
	switch v := s.(type) {
	case Cylinder:
		return upright(v.Diameter/2, v.Height)
	case ConeBottom:
		return []Point{{0, 0}, {v.Diameter / 2, v.Cone}, {v.Diameter / 2, v.Depth()}}
	case Box:
		return upright(v.Length/2, v.Height)
	case Frustum:
		return []Point{{0, 0}, {v.Bottom / 2, 0}, {v.Top / 2, v.Height}}
	case LyingCylinder:
		return halfCircle(v.Diameter / 2)
	}
	return nil
}

func upright(half, height quantity.Length) []Point {
	return []Point{{0, 0}, {half, 0}, {half, height}}
}

func halfCircle(r quantity.Length) []Point {
	const sides = 48
	points := make([]Point, sides+1)
	for i := range points {
		sine, cosine := math.Sincos(math.Pi * float64(i) / sides)
		points[i] = Point{quantity.Length(float64(r) * math.Abs(sine)), quantity.Length(float64(r) * (1 - cosine))}
	}
	return points
}

// HalfWidth is how far the wall stands from the middle at a depth.
func HalfWidth(s Shape, depth quantity.Length) quantity.Length {
	section := Section(s)
	for i := 1; i < len(section); i++ {
		a, b := section[i-1], section[i]
		if b.Up > a.Up && depth <= b.Up {
			return a.Out + (b.Out-a.Out)*(depth-a.Up)/(b.Up-a.Up)
		}
	}
	return section[len(section)-1].Out
}

// wall is the way from the rim down to a depth along the wall: longer than
// straight down where the wall slopes. A lying cylinder is marked on its flat
// end, straight down.
//
//	length = sum over the sides of sqrt(Δout² + Δup²)
//
// Source: plane geometry.
func wall(s Shape, depth quantity.Length) quantity.Length {
	if _, lies := s.(LyingCylinder); lies {
		return s.Depth() - depth
	}
	section := Section(s)
	way := 0.0
	for i := len(section) - 1; i > 0 && section[i].Up > depth; i-- {
		low, high := section[i-1], section[i]
		share := 1.0
		if low.Up < depth {
			share = float64((high.Up - depth) / (high.Up - low.Up))
		}
		way += share * math.Hypot(float64(high.Out-low.Out), float64(high.Up-low.Up))
	}
	return quantity.Length(way)
}
