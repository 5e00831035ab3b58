package ground

import (
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var vesselVolume = worksheet.Sheet{
	Name:  "vessel-volume",
	Group: worksheet.Water,
	Inputs: []worksheet.Input{
		{Flag: "shape", Kind: worksheet.Choice, Required: true, Choices: []string{"cylinder", "cone-bottom", "horizontal-cylinder", "box", "frustum"}},
		inside("diameter"), inside("height"), inside("cone-height"), inside("length"), inside("width"),
		inside("top-diameter"), inside("bottom-diameter"),
		{Flag: "fill-depth", Kind: worksheet.Length, Low: "0 m"},
		{Flag: "headspace", Kind: worksheet.Length, Low: "0 m"},
		{Flag: "volume", Kind: worksheet.Volume, Low: "0 L"},
		{Flag: "displaced", Kind: worksheet.Volume, Default: "0 L", Low: "0 L"},
	},
	Example: `--shape cone-bottom --diameter "80 cm" --height "90 cm" --cone-height "30 cm" --headspace "25 cm" --displaced "6 L"`,
	Sources: []source.Source{source.SolidGeometry},
	Shape:   vesselAnswer{},
	Run:     runVessel,
}

func inside(flag string) worksheet.Input {
	return worksheet.Input{Flag: flag, Kind: worksheet.Length, Low: "0 m", High: "100 m", Over: true}
}

type vesselAnswer struct {
	FullL        float64 `json:"full_l"`
	VolumeL      float64 `json:"volume_l"`
	DisplacedL   float64 `json:"displaced_l"`
	NetL         float64 `json:"net_l"`
	HeadspaceL   float64 `json:"headspace_l"`
	HeadspaceM   float64 `json:"headspace_m"`
	FillDepthM   float64 `json:"fill_depth_m"`
	InsideDepthM float64 `json:"inside_depth_m"`
	FillPercent  float64 `json:"fill_percent"`
	SurfaceM2    float64 `json:"surface_m2"`
}

// vessels are the shapes with the inside dimensions that each needs.
var vessels = map[string]struct {
	mode
	build func(*worksheet.Form) rig.Shape
}{
	"cylinder": {mode{needs: []string{"diameter", "height"}}, func(f *worksheet.Form) rig.Shape {
		return rig.Cylinder{Diameter: f.Length("diameter"), Height: f.Length("height")}
	}},
	"cone-bottom": {mode{needs: []string{"diameter", "height", "cone-height"}}, func(f *worksheet.Form) rig.Shape {
		return rig.ConeBottom{Diameter: f.Length("diameter"), Straight: f.Length("height"), Cone: f.Length("cone-height")}
	}},
	"horizontal-cylinder": {mode{needs: []string{"diameter", "length"}}, func(f *worksheet.Form) rig.Shape {
		return rig.LyingCylinder{Diameter: f.Length("diameter"), Length: f.Length("length")}
	}},
	"box": {mode{needs: []string{"length", "width", "height"}}, func(f *worksheet.Form) rig.Shape {
		return rig.Box{Length: f.Length("length"), Width: f.Length("width"), Height: f.Length("height")}
	}},
	"frustum": {mode{needs: []string{"top-diameter", "bottom-diameter", "height"}}, func(f *worksheet.Form) rig.Shape {
		return rig.Frustum{Top: f.Length("top-diameter"), Bottom: f.Length("bottom-diameter"), Height: f.Length("height")}
	}},
}

func runVessel(f *worksheet.Form) (*worksheet.Result, error) {
	shape, err := Shape(f)
	if err != nil {
		return nil, err
	}
	depth, err := level(f, shape)
	if err != nil {
		return nil, err
	}
	volume := shape.Holds(depth)
	if f.Has("volume") {
		volume = f.Volume("volume")
	}
	if err := upTo(f, "displaced", float64(volume), volume); err != nil {
		return nil, err
	}
	r := &worksheet.Result{Data: vesselFigures(shape, depth, volume, f.Volume("displaced")), Sources: f.Sheet.Sources}
	r.Answer = wording.Say("sheet.vessel-volume.answer", wording.Places{"net": volume - f.Volume("displaced"), "depth": depth, "full": rig.Full(shape)})
	if len(f.Given("fill-depth", "headspace", "volume")) == 0 {
		r.Caution("sheet.vessel-volume.foam")
	}
	return r, nil
}

func vesselFigures(shape rig.Shape, depth quantity.Length, volume, displaced quantity.Volume) vesselAnswer {
	full := rig.Full(shape)
	return vesselAnswer{
		FullL: full.Litres(), VolumeL: volume.Litres(), DisplacedL: displaced.Litres(), NetL: max(0, (volume - displaced).Litres()),
		HeadspaceL: max(0, (full - volume).Litres()), HeadspaceM: (shape.Depth() - depth).Metres(),
		FillDepthM: depth.Metres(), InsideDepthM: shape.Depth().Metres(),
		FillPercent: 100 * float64(volume/full), SurfaceM2: shape.Surface(depth).SquareMetres(),
	}
}

// level is how deep the liquid stands, by whichever way it was said: brim full
// with none.
func level(f *worksheet.Form, shape rig.Shape) (quantity.Length, error) {
	given := f.Given("fill-depth", "headspace", "volume")
	if len(given) == 0 {
		return shape.Depth(), nil
	}
	flag, err := f.OneOf("fill-depth", "headspace", "volume")
	if err != nil {
		return 0, err
	}
	if flag == "volume" {
		full := rig.Full(shape)
		return rig.DepthOf(shape, f.Volume("volume")), upTo(f, flag, full.Litres(), full)
	}
	if err := upTo(f, flag, shape.Depth().Metres(), shape.Depth()); err != nil {
		return 0, err
	}
	depth := min(f.Length(flag), shape.Depth())
	if flag == "headspace" {
		depth = shape.Depth() - depth
	}
	return depth, nil
}

// Shape is the vessel that a form of the sheet vessel-volume describes.
func Shape(f *worksheet.Form) (rig.Shape, error) {
	name := f.Text("shape")
	if err := vessels[name].check(f, name, "diameter", "height", "cone-height", "length", "width", "top-diameter", "bottom-diameter"); err != nil {
		return nil, err
	}
	return vessels[name].build(f), nil
}
