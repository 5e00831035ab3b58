package report

import (
	"math"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"aerosteep/wording"
)

// pictograms stand beside the cautions that everybody must understand, whatever
// they read. They are drawn in a square of 1; forbid strikes them through.
var pictograms = map[string]struct {
	draw   func(drawing)
	forbid bool
}{
	"label.not-drink":   {drawing.glass, true},
	"label.edible":      {drawing.leaf, true},
	"label.wait":        {drawing.calendar, false},
	"label.cool":        {drawing.sun, true},
	"application.dry":   {drawing.person, true},
	"notice":            {drawing.person, true},
	"application.label": {drawing.paper, false},
	"cleaning":          {drawing.hand, false},
	"incident":          {drawing.phone, false},
	"recall.stop":       {drawing.glass, true},
}

// pictogramSide is that of the square on paper, mm.
const pictogramSide = 11.0

// drawing draws in a square of 1 at a place on the paper.
type drawing struct {
	pdf  *fpdf.Fpdf
	x, y float64
}

func (d drawing) at(x, y float64) (float64, float64) {
	return d.x + x*pictogramSide, d.y + y*pictogramSide
}

// line draws through points: x, y, x, y …
func (d drawing) line(points ...float64) {
	for i := 0; i+3 < len(points); i += 2 {
		x1, y1 := d.at(points[i], points[i+1])
		x2, y2 := d.at(points[i+2], points[i+3])
		d.pdf.Line(x1, y1, x2, y2)
	}
}

func (d drawing) circle(x, y, radius float64) {
	cx, cy := d.at(x, y)
	d.pdf.Circle(cx, cy, radius*pictogramSide, "D")
}

func (d drawing) curve(x0, y0, cx, cy, x1, y1 float64) {
	ax, ay := d.at(x0, y0)
	bx, by := d.at(cx, cy)
	ex, ey := d.at(x1, y1)
	d.pdf.Curve(ax, ay, bx, by, ex, ey, "D")
}

func (d drawing) glass() {
	d.line(0.3, 0.22, 0.38, 0.78, 0.62, 0.78, 0.7, 0.22, 0.3, 0.22)
	d.line(0.33, 0.42, 0.67, 0.42)
}

func (d drawing) leaf() {
	d.curve(0.25, 0.75, 0.2, 0.2, 0.76, 0.24)
	d.curve(0.25, 0.75, 0.8, 0.8, 0.76, 0.24)
	d.line(0.22, 0.8, 0.62, 0.38)
}

func (d drawing) calendar() {
	d.line(0.2, 0.28, 0.8, 0.28, 0.8, 0.82, 0.2, 0.82, 0.2, 0.28)
	d.line(0.2, 0.42, 0.8, 0.42)
	d.line(0.35, 0.18, 0.35, 0.32)
	d.line(0.65, 0.18, 0.65, 0.32)
	d.line(0.34, 0.62, 0.46, 0.74, 0.68, 0.52)
}

func (d drawing) sun() {
	d.circle(0.5, 0.5, 0.15)
	for ray := range 8 {
		a := float64(ray) * math.Pi / 4
		d.line(0.5+0.22*math.Cos(a), 0.5+0.22*math.Sin(a), 0.5+0.33*math.Cos(a), 0.5+0.33*math.Sin(a))
	}
}

func (d drawing) person() {
	d.circle(0.5, 0.26, 0.09)
	d.line(0.5, 0.36, 0.5, 0.6)
	d.line(0.34, 0.46, 0.66, 0.46)
	d.line(0.37, 0.82, 0.5, 0.6, 0.63, 0.82)
}

func (d drawing) hand() {
	d.line(0.3, 0.8, 0.3, 0.5, 0.24, 0.4)
	d.line(0.7, 0.8, 0.7, 0.36)
	d.line(0.4, 0.5, 0.4, 0.22)
	d.line(0.5, 0.5, 0.5, 0.18)
	d.line(0.6, 0.5, 0.6, 0.22)
	d.line(0.3, 0.8, 0.7, 0.8)
}

func (d drawing) phone() {
	d.line(0.34, 0.16, 0.66, 0.16, 0.66, 0.84, 0.34, 0.84, 0.34, 0.16)
	d.line(0.46, 0.77, 0.54, 0.77)
	d.line(0.34, 0.26, 0.66, 0.26)
	d.line(0.34, 0.7, 0.66, 0.7)
}

func (d drawing) paper() {
	d.line(0.28, 0.16, 0.6, 0.16, 0.74, 0.3, 0.74, 0.84, 0.28, 0.84, 0.28, 0.16)
	for _, y := range []float64{0.42, 0.54, 0.66} {
		d.line(0.38, y, 0.64, y)
	}
}

// pictogram draws what belongs to a caution and answers how much room it took to
// the left of its sentence; 0 where it has none.
func (s *sheetPaper) pictogram(caution wording.Text, y float64) float64 {
	p, has := pictograms[strings.TrimPrefix(caution.Key, "paper.caution.")]
	if !has {
		return 0
	}
	d := drawing{s.pdf, sheetSide, y}
	s.pdf.SetLineWidth(0.5)
	p.draw(d)
	d.circle(0.5, 0.5, 0.48)
	if p.forbid {
		s.pdf.SetLineWidth(0.9)
		d.line(0.16, 0.16, 0.84, 0.84)
	}
	s.pdf.SetLineWidth(0.2)
	return pictogramSide + 3
}
