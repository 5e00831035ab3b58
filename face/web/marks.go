package web

import (
	"fmt"
	"math"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"aerosteep/fault"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
	sheets "aerosteep/worksheet/ground"
)

// marksView is a vessel drawn to scale with its level marks, and the tape to
// print and stick on its wall.
type marksView struct {
	Say      string
	Vessels  []choiceLink
	Drawing  *vesselDrawing
	Rows     []markRow
	Slopes   bool
	Tapes    []tape
	Fields   []field
	Problems []mend
}

// vesselDrawing is the vessel cut through, 1 unit = 1 cm.
type vesselDrawing struct {
	Spoken, ViewBox, Wall, Tea string
	Width, Height              int // px, at one scale
	Lines                      []string
	Labels                     []markLabel
}

type markLabel struct{ Class, Text string }

type markRow struct{ Volume, Depth, Down, Wall string }

// dimensionFlags are what the form asks for of a vessel.
var dimensionFlags = []string{"shape", "diameter", "height", "cone-height", "length", "width", "top-diameter", "bottom-diameter"}

// marks shows the level marks of a vessel of the holding, or of one that was
// measured just now.
func (s *Site) marks(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "rig")
	p.Back, p.BackTo = "/rig", p.Say("web.place.rig")
	p.Heading, p.Title = p.Say("web.marks.title"), p.Say("web.marks.title")
	query := r.URL.Query()
	view := &marksView{Vessels: s.shapedVessels(query.Get("vessel"))}
	p.View = view
	shape, faults := s.shapeAsked(p, query)
	status := http.StatusOK
	if len(faults) > 0 {
		status = http.StatusUnprocessableEntity
	}
	sheet, _ := catalog.Find("vessel-volume")
	for _, f := range faults {
		view.Problems = append(view.Problems, mend{f.Field, faultText(p, sheet, f)})
	}
	view.Fields = dimensionFields(p, sheet, query, faults)
	if shape != nil {
		view.fill(p, shape)
	}
	s.show(w, status, "marks", p)
}

// shapedVessels are the vessels of the holding whose shape is known.
func (s *Site) shapedVessels(here string) []choiceLink {
	var links []choiceLink
	if file := s.held(); file != nil {
		for i := range file.Vessels {
			if v := &file.Vessels[i]; v.Shape != nil {
				links = append(links, choiceLink{"/rig/marks?vessel=" + escaped(v.Name), v.Name, v.Name == here})
			}
		}
	}
	return links
}

// shapeAsked is the vessel by name, or by its measurements; nil where nothing
// was asked.
func (s *Site) shapeAsked(p *page, query url.Values) (rig.Shape, fault.List) {
	if name := query.Get("vessel"); name != "" {
		if file := s.held(); file != nil {
			for i := range file.Vessels {
				if file.Vessels[i].Name == name && file.Vessels[i].Shape != nil {
					return file.Vessels[i].Shape, nil
				}
			}
		}
		return nil, fault.List{{Field: "vessel", Given: name, What: wording.Say("web.marks.no-shape", wording.Places{"name": name})}}
	}
	sheet, _ := catalog.Find("vessel-volume")
	given := worksheet.Values{}
	for _, flag := range dimensionFlags {
		in, _ := sheet.Input(flag)
		if text := strings.TrimSpace(query.Get(flag)); text != "" {
			given[flag] = []string{withBoxUnit(in, text, p)}
		}
	}
	if len(given) == 0 {
		return nil, nil
	}
	form, err := worksheet.Read(sheet, given, nil)
	var shape rig.Shape
	if err == nil {
		shape, err = sheets.Shape(form)
	}
	return shape, fault.Of(err)
}

func dimensionFields(p *page, sheet *worksheet.Sheet, query url.Values, faults fault.List) []field {
	var fields []field
	for _, flag := range dimensionFlags {
		in, _ := sheet.Input(flag)
		f := field{Name: flag, Label: in.Label(sheet.Name).For(p.Reader), Hint: in.Allowed().For(p.Reader), Value: query.Get(flag), Kind: "text", Unit: boxUnit(in, p), Decimal: in.Kind.Numeric(), Required: in.Required}
		f.shape(in, p)
		for _, wrong := range faults {
			if wrong.Field == flag {
				f.Error = faultText(p, sheet, wrong)
			}
		}
		fields = append(fields, f)
	}
	return fields
}

// unitOfMarks is the volume of one unit in which a reader counts marks.
func unitOfMarks(p *page) quantity.Volume {
	if p.Units == wording.US {
		return quantity.USGallons(1)
	}
	return quantity.Litres(1)
}

func (v *marksView) fill(p *page, shape rig.Shape) {
	unit := unitOfMarks(p)
	step := rig.RoundStep(float64(rig.Full(shape)/unit)) * float64(unit)
	marks := rig.Marks(shape, quantity.Volume(step))
	slices.Reverse(marks) // from the rim down, as they are taped
	for _, m := range marks {
		v.Rows = append(v.Rows, markRow{both(p, m.Volume), both(p, m.Depth), both(p, m.Down), both(p, m.Wall)})
		v.Slopes = v.Slopes || math.Abs(float64(m.Wall-m.Down)) > 1e-6
	}
	v.Say = p.Say("web.marks.say", "full", both(p, rig.Full(shape)), "step", quantity.Volume(step), "depth", both(p, shape.Depth()))
	v.Drawing = p.drawVessel(shape, marks)
	v.Tapes = p.tapes(marks)
}

// tallest and widest are the room of the drawing in px on the phone.
const (
	tallest = 420.0
	widest  = 190.0
)

func (p *page) drawVessel(shape rig.Shape, marks []rig.Mark) *vesselDrawing {
	section, half, depth := rig.Section(shape), 0.0, 100*shape.Depth().Metres()
	for _, point := range section {
		half = math.Max(half, 100*point.Out.Metres())
	}
	scale := math.Min(tallest/depth, widest/(2*half))
	d := &vesselDrawing{
		ViewBox: fmt.Sprintf("%.2f 0 %.2f %.2f", -half, 2*half, depth), Spoken: p.Say("web.marks.spoken", "n", len(marks)),
		Width: max(24, int(2*half*scale)), Height: max(24, int(depth*scale)), Wall: outline(section, depth),
	}
	for i, m := range marks {
		y, out := depth-100*m.Depth.Metres(), 100*rig.HalfWidth(shape, m.Depth).Metres()
		d.Lines = append(d.Lines, fmt.Sprintf("M%.2f %.2fH%.2f", -out, y, out))
		if crowded(marks, i, scale) {
			continue
		}
		d.Labels = append(d.Labels, markLabel{p.At(fmt.Sprintf("top:%.2f%%", 100*y/depth)), m.Volume.Speak(p.Reader)})
	}
	return d
}

// crowded tells whether a label would lie on the one above it; the table has
// them all.
func crowded(marks []rig.Mark, i int, scale float64) bool {
	return i > 0 && i%2 == 1 && 100*(marks[i-1].Depth-marks[i].Depth).Metres()*scale < 20
}

// outline is the wall from rim to rim, mirrored about the middle.
func outline(section []rig.Point, depth float64) string {
	path := &strings.Builder{}
	word := "M"
	for i := len(section) - 1; i >= 0; i-- {
		fmt.Fprintf(path, "%s%.2f %.2f", word, -100*section[i].Out.Metres(), depth-100*section[i].Up.Metres())
		word = "L"
	}
	for _, point := range section {
		fmt.Fprintf(path, "L%.2f %.2f", 100*point.Out.Metres(), depth-100*point.Up.Metres())
	}
	return path.String()
}

// tape is one strip of the scale at its true size, to be cut out and stuck
// under the one before it.
type tape struct {
	Name, Height, ViewBox string
	From                  string
	Ticks                 []tapeTick
}

type tapeTick struct{ Y, Text string }

// tapeLength is what fits on a sheet of paper, in mm.
const tapeLength = 200.0

// longestTape is how many strips are drawn; a taller vessel is marked from the
// table with a tape measure.
const longestTape = 20

func (p *page) tapes(marks []rig.Mark) []tape {
	if len(marks) == 0 {
		return nil
	}
	end := 1000 * marks[len(marks)-1].Wall.Metres()
	count := int(end/tapeLength) + 1
	if count > longestTape {
		return nil
	}
	var all []tape
	for n := range count {
		from := float64(n) * tapeLength
		t := tape{Name: p.Say("web.marks.strip", "n", n+1, "of", count), Height: fmt.Sprintf("%.0fmm", tapeLength), ViewBox: fmt.Sprintf("0 0 36 %.0f", tapeLength)}
		for _, m := range marks {
			if y := 1000*m.Wall.Metres() - from; y >= 0 && y < tapeLength {
				t.Ticks = append(t.Ticks, tapeTick{fmt.Sprintf("%.2f", y), m.Volume.Speak(p.Reader)})
			}
		}
		all = append(all, t)
	}
	return all
}
