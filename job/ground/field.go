package ground

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Field is ground given by corners on the earth: one or more parts, each with
// holes.
type Field struct{ parts []part }

type part struct {
	outer ring
	holes []ring
}

// farthestSide is how far apart two neighbouring corners may be. Nobody walks
// such a side: it is a slip in a coordinate.
const farthestSide = 500e3 // m

// NewField takes the corners of one field in walking order, either way round.
// It may lie across the 180th meridian.
//
// Errors: a *fault.Fault of the field corners: fewer than three different
// corners, sides that cross, a side over 500 km, a line round a pole.
func NewField(corners []Corner) (*Field, error) {
	var f Field
	if what := f.add([][]Corner{corners}); what != nil {
		return nil, fault.New("corners", "", *what, wording.Say("ground.corner.allowed"), wording.Say("ground.corner.order"))
	}
	return &f, nil
}

// add takes one polygon: an outer ring and its holes. It answers what is
// wrong with it, or nil.
func (f *Field) add(rings [][]Corner) *wording.Text {
	var p part
	var outline []point
	for i, corners := range rings {
		r := newRing(corners)
		points, what := r.check(outline)
		if what != nil {
			return what
		}
		if i == 0 {
			p.outer, outline = r, points
			continue
		}
		if !apart(outline, points) || !inside(outline, points[0]) {
			return new(wording.Say("ground.hole-outside", wording.Places{"hole": i}))
		}
		p.holes = append(p.holes, r)
	}
	f.parts = append(f.parts, p)
	return nil
}

// check lays a ring out beside its outline (nil for the outline itself) and
// answers what is wrong with it.
func (r ring) check(outline []point) ([]point, *wording.Text) {
	if n := r.different(); n < 3 {
		return nil, new(wording.Say("ground.few-corners", wording.Places{"n": n}))
	}
	for i, c := range r {
		if next := (i + 1) % len(r); tooFar(c, r[next]) {
			return nil, new(wording.Say("ground.far-apart", wording.Places{"first": i + 1, "second": next + 1}))
		}
	}
	from := r[0].Longitude
	if outline != nil {
		from = outline[0].x
	}
	points, closes := r.flat(from)
	if !closes {
		return nil, new(wording.Say("ground.round-pole"))
	}
	if a, b, crosses := crossing(points); crosses {
		return nil, new(wording.Say("ground.crossing", wording.Places{"first": a, "second": b}))
	}
	return points, nil
}

// tooFar spares the exact distance where three degrees either way cannot be
// 500 km.
func tooFar(a, b Corner) bool {
	if math.Abs(a.Latitude-b.Latitude) < 3 && math.Abs(math.Remainder(a.Longitude-b.Longitude, 360)) < 3 {
		return false
	}
	return distance(a, b) > farthestSide
}

// Patch is the field's geodesic area on WGS84, holes taken off, and the length
// of all its edges.
func (f *Field) Patch() Patch {
	area, edge := 0.0, 0.0
	for _, p := range f.parts {
		a, e := p.outer.measure()
		area, edge = area+a, edge+e
		for _, hole := range p.holes {
			a, e := hole.measure()
			area, edge = area-a, edge+e
		}
	}
	return patch(area, edge)
}

// Doubt is the standard deviation of the area where each corner is known to
// the standard deviation s, north and east, independently of the others.
//
//	var(A) = s²/4 x sum over corners of |next - previous|²
//
// Source: propagation of variance through the shoelace formula.
func (f *Field) Doubt(s quantity.Length) quantity.Area {
	sum := 0.0
	for _, p := range f.parts {
		sum += p.outer.neighbours()
		for _, hole := range p.holes {
			sum += hole.neighbours()
		}
	}
	return quantity.SquareMetres(s.Metres() / 2 * math.Sqrt(sum))
}

// Corners counts the corners of all outlines.
func (f *Field) Corners() int {
	n := 0
	for _, p := range f.parts {
		n += len(p.outer)
	}
	return n
}
