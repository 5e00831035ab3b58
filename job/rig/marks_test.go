package rig_test

import (
	"math"
	"testing"

	"aerosteep/job/rig"
	"aerosteep/quantity"
)

func centimetres(v float64) quantity.Length { return quantity.Metres(v / 100) }

// The marks of a drum stand evenly; those in a cone go with the cube root of
// the volume: half the depth of a cone holds an eighth of it (Euclid, Elements
// XII.12: similar cones are as the cubes of their diameters).
func TestMarksByGeometry(t *testing.T) {
	drum := rig.Cylinder{Diameter: centimetres(50), Height: centimetres(80)}
	step := quantity.Volume(float64(rig.Full(drum)) / 8)
	marks := rig.Marks(drum, step)
	if len(marks) != 7 {
		t.Fatalf("%d marks, want 7", len(marks))
	}
	for i, m := range marks {
		if want := 10 * float64(i+1); math.Abs(100*m.Depth.Metres()-want) > 1e-6 || math.Abs(100*m.Wall.Metres()-(80-want)) > 1e-6 {
			t.Errorf("mark %d: %g cm up, %g cm down the wall", i, 100*m.Depth.Metres(), 100*m.Wall.Metres())
		}
	}
	cone := rig.ConeBottom{Diameter: centimetres(60), Straight: centimetres(0.001), Cone: centimetres(40)}
	eighth := quantity.Volume(math.Pi * 0.09 * 0.4 / 3 * 1000 / 8)
	first := rig.Marks(cone, eighth)[0]
	if math.Abs(100*first.Depth.Metres()-20) > 1e-6 {
		t.Errorf("an eighth of the cone stands %g cm deep, want 20", 100*first.Depth.Metres())
	}
	// Its wall is the hypotenuse of 30 and 40 cm, half of which lies above.
	if math.Abs(100*first.Wall.Metres()-25.001) > 1e-6 {
		t.Errorf("%g cm along the wall, want 25.001", 100*first.Wall.Metres())
	}
}

// A pail whose wall leans out by 5 cm in 12 is 13 cm along the wall (5, 12, 13).
func TestMarksOnALeaningWall(t *testing.T) {
	pail := rig.Frustum{Top: centimetres(30), Bottom: centimetres(20), Height: centimetres(12)}
	half := rig.Marks(pail, pail.Holds(centimetres(6)))[0]
	if math.Abs(100*half.Depth.Metres()-6) > 1e-6 || math.Abs(100*half.Wall.Metres()-6.5) > 1e-6 {
		t.Errorf("%g cm up, %g cm along the wall, want 6 and 6.5", 100*half.Depth.Metres(), 100*half.Wall.Metres())
	}
	if w := rig.HalfWidth(pail, centimetres(6)); math.Abs(100*w.Metres()-12.5) > 1e-9 {
		t.Errorf("half as wide as %g cm, want 12.5", 100*w.Metres())
	}
	lying := rig.LyingCylinder{Diameter: centimetres(100), Length: centimetres(200)}
	if m := rig.Marks(lying, rig.Full(lying)/2*(1-1e-9))[0]; math.Abs(m.Depth.Metres()-0.5) > 1e-6 || math.Abs(m.Wall.Metres()-0.5) > 1e-6 {
		t.Errorf("a half full lying tank stands at %g m, %g m down its end", m.Depth.Metres(), m.Wall.Metres())
	}
}

func TestRoundStep(t *testing.T) {
	for full, want := range map[float64]float64{200: 20, 19: 2, 5: 0.5, 1000: 100, 1200: 100, 502: 50, 24: 2} {
		if got := rig.RoundStep(full); math.Abs(got-want) > 1e-12*want {
			t.Errorf("a vessel of %g has steps of %g, want %g", full, got, want)
		}
	}
}
