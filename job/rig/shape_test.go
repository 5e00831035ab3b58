package rig_test

import (
	"math"
	"testing"

	"aerosteep/internal/published"
	"aerosteep/job/rig"
	"aerosteep/quantity"
)

func shapeOf(t *testing.T, row published.Row) rig.Shape {
	t.Helper()
	in := func(column string) quantity.Length { return quantity.Metres(row.Float(column)) }
	switch row.Text("shape") {
	case "cylinder":
		return rig.Cylinder{Diameter: in("diameter_m"), Height: in("height_m")}
	case "horizontal-cylinder":
		return rig.LyingCylinder{Diameter: in("diameter_m"), Length: in("length_m")}
	case "cone-bottom":
		return rig.ConeBottom{Diameter: in("diameter_m"), Straight: in("height_m"), Cone: in("cone_height_m")}
	case "frustum":
		return rig.Frustum{Top: in("top_diameter_m"), Bottom: in("bottom_diameter_m"), Height: in("height_m")}
	case "box":
		return rig.Box{Length: in("length_m"), Width: in("width_m"), Height: in("height_m")}
	}
	t.Fatalf("no shape %s", row.Text("shape"))
	return nil
}

// TestContentsInClosedForm: solid geometry, checked by integrating the
// cross-section.
func TestContentsInClosedForm(t *testing.T) {
	for _, row := range published.Rows(t, "tank_volume.csv") {
		s := shapeOf(t, row)
		depth := quantity.Metres(row.Float("fill_depth_m"))
		row.Check(s.Holds(depth).Litres(), "L")
		row.Near(rig.Full(s).Litres(), row.Float("expected_full_l"), row.Float("tolerance"))
		row.Near(rig.DepthOf(s, s.Holds(depth)).Metres(), depth.Metres(), 1e-9)
	}
}

// The surface is how fast the contents grow with the depth.
func TestSurfaceIsTheSlopeOfTheContents(t *testing.T) {
	const step = 1e-6
	for _, row := range published.Rows(t, "tank_volume.csv") {
		s := shapeOf(t, row)
		h := 0.4 * s.Depth()
		slope := float64(s.Holds(h+step)-s.Holds(h-step)) / 1000 / (2 * step)
		if got := s.Surface(h).SquareMetres(); math.Abs(got/slope-1) > 1e-4 {
			t.Errorf("%T at %v: surface %g m2, contents grow by %g m3/m", s, h, got, slope)
		}
	}
}
