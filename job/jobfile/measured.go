package jobfile

import (
	"math"

	"aerosteep/fault"
	"aerosteep/job/ground"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Where the values that are worked out from others are kept.
const (
	areaKey  = "the bed's area"
	fullKey  = "the vessel's contents"
	shapeKey = "the vessel's shape"
)

// measure works out what a file may say by dimensions: a bed's area from its
// corners, rows or trees, and a vessel's contents from its shape.
func (c *checker) measure() {
	for _, r := range c.records["bed"] {
		if area, known := c.bedArea(r); known {
			r.values[areaKey] = area
		}
	}
	for _, r := range c.records["vessel"] {
		c.contents(r)
	}
}

// bedArea is the area as given, or by the corners, the rows or the trees.
func (c *checker) bedArea(r *record) (quantity.Area, bool) {
	if area, given := get[quantity.Area](r, "area"); given {
		return area, true
	}
	if corners, given := get[[]ground.Corner](r, "corners"); given {
		return c.fieldArea(r, corners)
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

// fieldArea is the area inside the corners on the WGS 84 ellipsoid, whichever
// way round they were walked.
func (c *checker) fieldArea(r *record, corners []ground.Corner) (quantity.Area, bool) {
	field, err := ground.NewField(corners)
	if err != nil {
		f := fault.Of(err)[0]
		c.problem(r, "corners", f.What, wording.Say("jobfile.kind.corners"), f.Advice, "")
		return 0, false
	}
	return field.Patch().Area, true
}

// contents is what a vessel holds, as given or by its shape.
func (c *checker) contents(r *record) {
	shape := shapeOf(r)
	if shape != nil {
		r.values[shapeKey] = shape
	}
	full, given := get[quantity.Volume](r, "full")
	if !given && shape != nil {
		if full = rig.Full(shape); full < 0.5 || full > 1e5 {
			c.problem(r, "shape", wording.Say("jobfile.contents", wording.Places{"full": full}),
				wording.Say("jobfile.between", wording.Places{"low": quantity.Litres(0.5), "high": quantity.Litres(1e5)}), wording.Text{}, "")
		}
	}
	if full > 0 {
		r.values[fullKey] = full
	}
}

// shapeOf is nil where no shape is given, or a dimension is missing, which has
// been asked for already.
func shapeOf(r *record) rig.Shape {
	shape, _ := get[string](r, "shape")
	for _, name := range dimensions[shape] {
		if _, ok := get[quantity.Length](r, name); !ok {
			return nil
		}
	}
	d := func(name string) quantity.Length { return or(r, name, quantity.Length(0)) }
	switch shape {
	case "cylinder":
		return rig.Cylinder{Diameter: d("diameter"), Height: d("height")}
	case "cone-bottom":
		return rig.ConeBottom{Diameter: d("diameter"), Straight: d("height"), Cone: d("cone_height")}
	case "horizontal-cylinder":
		return rig.LyingCylinder{Diameter: d("diameter"), Length: d("length")}
	case "box":
		return rig.Box{Length: d("length"), Width: d("width"), Height: d("height")}
	case "frustum":
		return rig.Frustum{Top: d("top_diameter"), Bottom: d("bottom_diameter"), Height: d("height")}
	}
	return nil
}
