package ground

import (
	"math"

	"github.com/tidwall/geodesic"
)

// ring is a closed line of corners; the last joins the first.
type ring []Corner

// newRing drops a repeated first corner at the end and corners that repeat
// the one before.
func newRing(corners []Corner) ring {
	var r ring
	for _, c := range corners {
		if len(r) == 0 || !c.same(r[len(r)-1]) {
			r = append(r, c)
		}
	}
	for len(r) > 1 && r[0].same(r[len(r)-1]) {
		r = r[:len(r)-1]
	}
	return r
}

// same counts the two names of the 180th meridian as one.
func (c Corner) same(d Corner) bool {
	return c.Latitude == d.Latitude && math.Mod(c.Longitude-d.Longitude, 360) == 0
}

// different counts the corners that are not the same as an earlier one.
func (r ring) different() int {
	n := 0
	for i, c := range r {
		earlier := false
		for _, d := range r[:i] {
			earlier = earlier || c.same(d)
		}
		if !earlier {
			n++
		}
	}
	return n
}

// measure is the geodesic area (always positive) and perimeter on WGS84.
//
// Source: Karney 2013, Algorithms for geodesics, J. Geodesy 87, 43-55.
func (r ring) measure() (area, perimeter float64) {
	p := geodesic.WGS84.PolygonInit(false)
	for _, c := range r {
		p.AddPoint(c.Latitude, c.Longitude)
	}
	p.Compute(false, true, &area, &perimeter)
	return math.Abs(area), perimeter
}

func distance(a, b Corner) float64 {
	var metres float64
	geodesic.WGS84.Inverse(a.Latitude, a.Longitude, b.Latitude, b.Longitude, &metres, nil, nil)
	return metres
}

// neighbours is the sum over all corners of the squared distance between the
// two corners beside it: what the variance of the area hangs on.
func (r ring) neighbours() float64 {
	sum := 0.0
	for i := range r {
		d := distance(r[(i+len(r)-1)%len(r)], r[(i+1)%len(r)])
		sum += d * d
	}
	return sum
}

// point is a corner on a flat map: x eastward in degrees of longitude counted
// on from the first corner, y northward.
type point struct{ x, y float64 }

// flat lays the ring out without a jump at the 180th meridian. round is false
// where the ring goes round a pole.
func (r ring) flat(from float64) (points []point, round bool) {
	points = make([]point, len(r))
	x := from
	for i, c := range r {
		x += math.Remainder(c.Longitude-math.Remainder(x, 360), 360)
		points[i] = point{x, c.Latitude}
	}
	back := points[len(points)-1].x
	home := back + math.Remainder(r[0].Longitude-math.Remainder(back, 360), 360)
	return points, math.Abs(home-points[0].x) < 1
}

// turn is which way the line a, b, c turns: over 0 to the left.
func turn(a, b, c point) float64 { return (b.x-a.x)*(c.y-a.y) - (b.y-a.y)*(c.x-a.x) }

// within tells whether c, on the line of a and b, lies between them.
func within(a, b, c point) bool {
	return min(a.x, b.x) <= c.x && c.x <= max(a.x, b.x) && min(a.y, b.y) <= c.y && c.y <= max(a.y, b.y)
}

// meet tells whether two sides cross or touch.
func meet(a, b, c, d point) bool {
	if max(a.x, b.x) < min(c.x, d.x) || max(c.x, d.x) < min(a.x, b.x) || max(a.y, b.y) < min(c.y, d.y) || max(c.y, d.y) < min(a.y, b.y) {
		return false
	}
	t1, t2, t3, t4 := turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)
	if t1*t2 < 0 && t3*t4 < 0 {
		return true
	}
	return t1 == 0 && within(a, b, c) || t2 == 0 && within(a, b, d) || t3 == 0 && within(c, d, a) || t4 == 0 && within(c, d, b)
}

// crossing finds two sides of a ring that cross, touch or run back over each
// other, numbered from 1 by the corner they start at.
func crossing(p []point) (first, second int, found bool) {
	n := len(p)
	for i := range n {
		a, b := p[i], p[(i+1)%n]
		if c := p[(i+2)%n]; turn(a, b, c) == 0 && (b.x-a.x)*(c.x-b.x)+(b.y-a.y)*(c.y-b.y) < 0 {
			return i + 1, (i+1)%n + 1, true
		}
		for j := i + 2; j < n; j++ {
			if (j+1)%n != i && meet(a, b, p[j], p[(j+1)%n]) {
				return i + 1, j + 1, true
			}
		}
	}
	return 0, 0, false
}

// inside tells whether a point lies in a ring, by counting the sides east of
// it.
func inside(p []point, at point) bool {
	in := false
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		if (a.y > at.y) != (b.y > at.y) && at.x < a.x+(b.x-a.x)*(at.y-a.y)/(b.y-a.y) {
			in = !in
		}
	}
	return in
}

// apart tells whether no side of one ring meets a side of the other.
func apart(p, q []point) bool {
	for i := range p {
		for j := range q {
			if meet(p[i], p[(i+1)%len(p)], q[j], q[(j+1)%len(q)]) {
				return false
			}
		}
	}
	return true
}
