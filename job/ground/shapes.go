// Package ground is the ground that a batch is for: how large a bed, a row or
// a drip line is, from a tape or from corners on the earth, and how deep a
// drench goes into it.
package ground

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Patch is one piece of ground. The perimeter is nil where the shape's
// measures do not give it.
type Patch struct {
	Area      quantity.Area
	Perimeter *quantity.Length
}

func patch(area, perimeter float64) Patch {
	return Patch{quantity.SquareMetres(area), new(quantity.Metres(perimeter))}
}

func open(area float64) Patch { return Patch{Area: quantity.SquareMetres(area)} }

// Rectangle is length x width.
func Rectangle(length, width quantity.Length) Patch {
	l, w := length.Metres(), width.Metres()
	return patch(l*w, 2*(l+w))
}

// Circle is pi d²/4.
func Circle(diameter quantity.Length) Patch {
	d := diameter.Metres()
	return patch(math.Pi*d*d/4, math.Pi*d)
}

// Triangle is base x height / 2.
func Triangle(base, height quantity.Length) Patch { return open(base.Metres() * height.Metres() / 2) }

// TriangleBySides is Heron's formula in Kahan's form, which stays exact for
// needle-like triangles:
//
//	A = sqrt((a+(b+c)) (c-(a-b)) (c+(a-b)) (a+(b-c))) / 4    with a >= b >= c
//
// Errors: a side as long as the other two together, or longer.
func TriangleBySides(first, second, third quantity.Length) (Patch, error) {
	a, b, c := first.Metres(), second.Metres(), third.Metres()
	a, b = max(a, b), min(a, b)
	b, c = max(b, c), min(b, c)
	a, b = max(a, b), min(a, b)
	if c-(a-b) <= 1e-9*a {
		return Patch{}, fault.New("sides", "", wording.Say("ground.no-triangle", wording.Places{"long": quantity.Metres(a), "rest": quantity.Metres(b + c)}),
			wording.Say("ground.no-triangle.allowed"), wording.Say("ground.no-triangle.advice"))
	}
	return patch(math.Sqrt((a+(b+c))*(c-(a-b))*(c+(a-b))*(a+(b-c)))/4, a+b+c), nil
}

// Trapezoid is (a + b)/2 x height, a and b the parallel sides.
func Trapezoid(a, b, height quantity.Length) Patch {
	return open((a + b).Metres() / 2 * height.Metres())
}

// Ring is pi (D² - d²)/4: a path round a bed, or the ground under a canopy
// without the dry part round the trunk. The inner diameter is the smaller.
func Ring(outer, inner quantity.Length) Patch {
	return open(math.Pi * float64((outer+inner)*(outer-inner)) / 4)
}

// Ellipse is pi a b, a and b the half axes.
func Ellipse(a, b quantity.Length) Patch { return open(math.Pi * a.Metres() * b.Metres()) }

// Rows is rows x length x band. Band is the width that is treated, not the
// distance between rows.
func Rows(rows float64, length, band quantity.Length) Patch {
	return open(rows * length.Metres() * band.Metres())
}
