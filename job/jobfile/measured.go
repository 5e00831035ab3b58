package jobfile

import (
	"math"

	"github.com/tidwall/geodesic"

	"aerosteep/quantity"
	"aerosteep/wording"
)

// Where the values that are worked out from others are kept.
const (
	areaKey = "the bed's area"
	fullKey = "the vessel's contents"
)

// measure works out what a file may say by dimensions: a bed's area from its
// corners, rows or trees, and a vessel's contents from its shape.
func (c *checker) measure() {
	for _, r := range c.records["bed"] {
		if area, known := bedArea(r); known {
			r.values[areaKey] = area
		}
	}
	for _, r := range c.records["vessel"] {
		full, known := get[quantity.Volume](r, "full")
		if !known {
			full, known = shapeContents(r)
			if known && (full < 0.5 || full > 1e5) {
				c.problem(r, "shape", wording.Say("jobfile.contents", wording.Places{"full": full}),
					wording.Say("jobfile.between", wording.Places{"low": quantity.Litres(0.5), "high": quantity.Litres(1e5)}), wording.Text{}, "")
			}
		}
		if known {
			r.values[fullKey] = full
		}
	}
}

// bedArea is the area as given, or by the corners, the rows or the trees.
func bedArea(r *record) (quantity.Area, bool) {
	if area, given := get[quantity.Area](r, "area"); given {
		return area, true
	}
	if corners, given := get[[]corner](r, "corners"); given {
		return polygonArea(corners), true
	}
	length, ok1 := get[quantity.Length](r, "row_length")
	width, ok2 := get[quantity.Length](r, "row_width")
	if rows, given := get[int](r, "rows"); given && ok1 && ok2 {
		return quantity.SquareMetres(float64(rows) * length.Metres() * width.Metres()), true
	}
	radius, ok := get[quantity.Length](r, "drip_radius")
	if trees, given := get[int](r, "trees"); given && ok {
		return quantity.SquareMetres(float64(trees) * math.Pi * radius.Metres() * radius.Metres()), true
	}
	return 0, false
}

// polygonArea is the area inside the corners on the WGS 84 ellipsoid (Karney
// 2013), whichever way round they were walked.
func polygonArea(corners []corner) quantity.Area {
	polygon := geodesic.WGS84.PolygonInit(false)
	for _, c := range corners {
		polygon.AddPoint(c.latitude, c.longitude)
	}
	var area float64
	polygon.Compute(false, true, &area, nil)
	return quantity.SquareMetres(math.Abs(area))
}

// shapeContents is what a vessel of that shape holds to the rim. A dimension
// that is missing has been asked for already.
func shapeContents(r *record) (quantity.Volume, bool) {
	shape, given := get[string](r, "shape")
	if !given {
		return 0, false
	}
	var d [3]float64
	for i, name := range dimensions[shape] {
		length, ok := get[quantity.Length](r, name)
		if !ok {
			return 0, false
		}
		d[i] = length.Metres()
	}
	return quantity.Litres(1000 * cubicMetres(shape, d)), true
}

// cubicMetres takes the dimensions in the order of the table above.
func cubicMetres(shape string, d [3]float64) float64 {
	circle := math.Pi / 4 * d[0] * d[0]
	switch shape {
	case "cone-bottom":
		return circle * (d[1] + d[2]/3)
	case "box":
		return d[0] * d[1] * d[2]
	case "frustum":
		return math.Pi / 12 * d[2] * (d[0]*d[0] + d[0]*d[1] + d[1]*d[1])
	}
	return circle * d[1] // a cylinder, standing or lying
}
