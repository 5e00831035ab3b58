package ground

import (
	"math"

	"aerosteep/job/ground"
	"aerosteep/quantity"
	"aerosteep/source"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

var area = worksheet.Sheet{
	Name:  "area",
	Group: worksheet.Ground,
	Inputs: []worksheet.Input{
		{Flag: "shape", Kind: worksheet.Choice, Required: true, Choices: []string{"rectangle", "circle", "triangle", "trapezoid", "ring", "ellipse", "rows", "drip-line", "polygon"}},
		over0("length", worksheet.Length, "0 m"),
		over0("width", worksheet.Length, "0 m"),
		over0("diameter", worksheet.Length, "0 m"),
		over0("radius", worksheet.Length, "0 m"),
		over0("base", worksheet.Length, "0 m"),
		over0("height", worksheet.Length, "0 m"),
		{Flag: "sides", Kind: worksheet.Length, List: true, Low: "0 m", Over: true},
		{Flag: "parallel", Kind: worksheet.Length, List: true, Low: "0 m", Over: true},
		over0("outer-diameter", worksheet.Length, "0 m"),
		{Flag: "inner-diameter", Kind: worksheet.Length, Low: "0 m"},
		{Flag: "half-axes", Kind: worksheet.Length, List: true, Low: "0 m", Over: true},
		{Flag: "rows", Kind: worksheet.Whole, Low: "1"},
		over0("row-length", worksheet.Length, "0 m"),
		over0("band-width", worksheet.Length, "0 m"),
		over0("row-spacing", worksheet.Length, "0 m"),
		over0("canopy-diameter", worksheet.Length, "0 m"),
		{Flag: "clear-diameter", Kind: worksheet.Length, Low: "0 m"},
		{Flag: "corners", Kind: worksheet.Text},
		{Flag: "geojson", Kind: worksheet.File},
		{Flag: "gps-error", Kind: worksheet.Length, Low: "0 m", High: "100 m"},
		{Flag: "count", Kind: worksheet.Whole, Default: "1", Low: "1"},
	},
	Example: `--shape drip-line --canopy-diameter "5 m" --clear-diameter "60 cm" --count 40`,
	Sources: []source.Source{source.PlaneGeometry, source.Karney2013, source.RFC7946},
	Shape:   areaAnswer{},
	Run:     runArea,
}

type areaAnswer struct {
	AreaM2         float64  `json:"area_m2"`
	EachM2         float64  `json:"each_m2"`
	Count          int      `json:"count"`
	PerimeterM     *float64 `json:"perimeter_m"`
	FieldM2        *float64 `json:"field_m2"`
	TreatedPercent *float64 `json:"treated_percent"`
	AreaRangeM2    *range80 `json:"area_range_m2"`
}

type range80 struct {
	Low80  float64 `json:"low80"`
	High80 float64 `json:"high80"`
}

// plane are the shapes that a tape measures.
var plane = map[string]struct {
	mode
	measure func(*worksheet.Form) (ground.Patch, error)
}{
	"rectangle": {mode{needs: []string{"length", "width"}}, func(f *worksheet.Form) (ground.Patch, error) {
		return ground.Rectangle(f.Length("length"), f.Length("width")), nil
	}},
	"circle":    {mode{takes: []string{"diameter", "radius"}}, circle},
	"triangle":  {mode{takes: []string{"base", "height", "sides"}}, triangle},
	"trapezoid": {mode{needs: []string{"parallel", "height"}}, trapezoid},
	"ring":      {mode{needs: []string{"outer-diameter", "inner-diameter"}}, ringOf("outer-diameter", "inner-diameter")},
	"ellipse":   {mode{needs: []string{"half-axes"}}, ellipse},
	"rows":      {mode{needs: []string{"rows", "row-length", "band-width"}, takes: []string{"row-spacing"}}, rows},
	"drip-line": {mode{needs: []string{"canopy-diameter"}, takes: []string{"clear-diameter"}}, ringOf("canopy-diameter", "clear-diameter")},
	"polygon":   {mode{takes: []string{"corners", "geojson", "gps-error"}}, nil},
}

func shapeFlags(s worksheet.Sheet) []string {
	var flags []string
	for _, flag := range s.Flags() {
		if flag != "shape" && flag != "count" {
			flags = append(flags, flag)
		}
	}
	return flags
}

func runArea(f *worksheet.Form) (*worksheet.Result, error) {
	shape := f.Text("shape")
	if err := plane[shape].check(f, shape, shapeFlags(*f.Sheet)...); err != nil {
		return nil, err
	}
	r := &worksheet.Result{Sources: []source.Source{source.PlaneGeometry}}
	count := f.Int("count")
	if shape == "polygon" {
		return polygonArea(f, r, count)
	}
	patch, err := plane[shape].measure(f)
	if err != nil {
		return nil, err
	}
	answer := areaOf(patch, count)
	if f.Has("row-spacing") {
		field := f.Number("rows") * f.Number("row-length") * f.Number("row-spacing") * float64(count)
		answer.FieldM2, answer.TreatedPercent = &field, new(100*answer.AreaM2/field)
	}
	return finishArea(f, r, answer)
}

func areaOf(p ground.Patch, count int) areaAnswer {
	each := p.Area.SquareMetres()
	return areaAnswer{AreaM2: each * float64(count), EachM2: each, Count: count, PerimeterM: metres(p.Perimeter)}
}

func finishArea(f *worksheet.Form, r *worksheet.Result, a areaAnswer) (*worksheet.Result, error) {
	if err := finite(f, "shape", a.AreaM2, a.EachM2); err != nil {
		return nil, err
	}
	key := "sheet.area.answer"
	if a.Count > 1 {
		key = "sheet.area.answer-many"
	}
	r.Answer = wording.Say(key, wording.Places{"area": quantity.SquareMetres(a.AreaM2), "each": quantity.SquareMetres(a.EachM2), "n": a.Count})
	r.Data = a
	return r, nil
}

func circle(f *worksheet.Form) (ground.Patch, error) {
	flag, err := f.OneOf("diameter", "radius")
	if err != nil {
		return ground.Patch{}, err
	}
	if flag == "radius" {
		return ground.Circle(2 * f.Length("radius")), nil
	}
	return ground.Circle(f.Length("diameter")), nil
}

func triangle(f *worksheet.Form) (ground.Patch, error) {
	if !f.Has("sides") {
		return ground.Triangle(f.Length("base"), f.Length("height")), needs(f, "base", "height")
	}
	if err := f.OnlyWith("--sides", nil, "base", "height"); err != nil {
		return ground.Patch{}, err
	}
	sides, err := lengths(f, "sides", 3)
	if err != nil {
		return ground.Patch{}, err
	}
	return ground.TriangleBySides(sides[0], sides[1], sides[2])
}

func trapezoid(f *worksheet.Form) (ground.Patch, error) {
	parallel, err := lengths(f, "parallel", 2)
	if err != nil {
		return ground.Patch{}, err
	}
	return ground.Trapezoid(parallel[0], parallel[1], f.Length("height")), nil
}

func ellipse(f *worksheet.Form) (ground.Patch, error) {
	axes, err := lengths(f, "half-axes", 2)
	if err != nil {
		return ground.Patch{}, err
	}
	return ground.Ellipse(axes[0], axes[1]), nil
}

// lengths is a list of exactly so many.
func lengths(f *worksheet.Form, flag string, want int) ([]quantity.Length, error) {
	values := f.Numbers(flag)
	if len(values) != want {
		return nil, f.Refuse(flag, "ground.list-of", wording.Places{"n": want, "has": len(values)})
	}
	list := make([]quantity.Length, want)
	for i, v := range values {
		list[i] = quantity.Length(v)
	}
	return list, nil
}

func ringOf(outer, inner string) func(*worksheet.Form) (ground.Patch, error) {
	return func(f *worksheet.Form) (ground.Patch, error) {
		if f.Length(inner) >= f.Length(outer) {
			return ground.Patch{}, f.Advise(inner, "ground.not-inside", "ground.not-inside.advice", wording.Places{"inner": "--" + inner, "outer": "--" + outer, "limit": f.Length(outer)})
		}
		return ground.Ring(f.Length(outer), f.Length(inner)), nil
	}
}

func rows(f *worksheet.Form) (ground.Patch, error) {
	if f.Has("row-spacing") && f.Number("row-spacing") < f.Number("band-width")*(1-slack) {
		return ground.Patch{}, f.Refuse("row-spacing", "ground.spacing", wording.Places{"band": f.Length("band-width")})
	}
	return ground.Rows(f.Number("rows"), f.Length("row-length"), f.Length("band-width")), nil
}

// normal80 is how many standard deviations hold 80 in 100 of a normal
// distribution on either side of the middle.
const normal80 = 1.28155

func polygonArea(f *worksheet.Form, r *worksheet.Result, count int) (*worksheet.Result, error) {
	field, err := fieldOf(f, r)
	if err != nil {
		return nil, err
	}
	r.Sources = []source.Source{source.Karney2013, source.RFC7946}
	answer := areaOf(field.Patch(), count)
	if !f.Has("gps-error") {
		r.Caution("sheet.area.gps")
		return finishArea(f, r, answer)
	}
	half := normal80 * field.Doubt(f.Length("gps-error")).SquareMetres()
	answer.AreaRangeM2 = &range80{max(0, answer.EachM2-half) * float64(count), (answer.EachM2 + half) * float64(count)}
	if part := half / answer.EachM2; part > 0.1 {
		r.Caution("sheet.area.gps-weak", wording.Places{"percent": quantity.Share(math.Min(part, 9.99))})
	}
	return finishArea(f, r, answer)
}

func fieldOf(f *worksheet.Form, r *worksheet.Result) (*ground.Field, error) {
	flag, err := f.OneOf("corners", "geojson")
	if err != nil {
		return nil, err
	}
	if flag == "geojson" {
		field, unclosed, err := ground.ReadGeoJSON(f.FileName("geojson"), []byte(f.Text("geojson")))
		if unclosed {
			r.Caution("sheet.area.unclosed")
		}
		return field, err
	}
	corners, err := ground.ParseCorners(f.Text("corners"))
	if err != nil {
		return nil, err
	}
	field, err := ground.NewField(corners)
	return field, err
}
