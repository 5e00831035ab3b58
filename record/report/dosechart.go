package report

import (
	"bytes"
	_ "embed"
	"fmt"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"aerosteep/quantity"
	"aerosteep/wording"
	"aerosteep/worksheet"
	"aerosteep/worksheet/recipe"
)

// sans is the face of what is printed: it has the fractions and the letters of
// both languages.
//
//go:embed font/DejaVuSans.ttf
var sans []byte

// The sheet of paper, in mm.
const (
	margin     = 12.0
	headHeight = 30.0
	footHeight = 34.0
	tallestRow = 16.0
	smallest   = 5.0 // point size that can still be read at the wall
)

// DoseChart prints the table for the shed wall on one page: letter paper for
// readers of US units, A4 for the others. The same chart gives the same bytes.
func DoseChart(result *worksheet.Result, r wording.Reader) ([]byte, error) {
	chart, isChart := result.Data.(recipe.Chart)
	if !isChart {
		return nil, fmt.Errorf("report: a dose chart cannot be made from %T", result.Data)
	}
	p := newPage(r)
	p.heading(wording.Say("report.dose-chart.title", wording.Places{"recipe": chart.Recipe}).For(r), worksheet.Value("regrowth", chart.Regrowth, r))
	p.table(chartHeads(chart, r), chartCells(chart, r))
	p.foot(worksheet.Sentences(result.Cautions, r))
	var out bytes.Buffer
	err := p.pdf.Output(&out)
	return out.Bytes(), err
}

// cell is a measure with, smaller under it, what it weighs.
type cell struct{ above, below string }

func chartHeads(chart recipe.Chart, r wording.Reader) []cell {
	heads := []cell{{worksheet.Label("volume_l", r), ""}}
	if chart.Rows[0].Covers != nil {
		heads[0].below = worksheet.Label("covers_m2", r)
	}
	for _, item := range chart.Rows[0].Items {
		heads = append(heads, cell{item.Name, worksheet.Value("when", item.When, r)})
	}
	return heads
}

func chartCells(chart recipe.Chart, r wording.Reader) [][]cell {
	var rows [][]cell
	for _, row := range chart.Rows {
		first := cell{above: quantity.Litres(row.Volume).Speak(r)}
		if row.Covers != nil {
			first.below = quantity.SquareMetres(*row.Covers).Speak(r)
		}
		cells := []cell{first}
		for _, item := range row.Items {
			mass := quantity.Grams(item.Mass).Speak(r)
			if item.Household.Household == nil || *item.Coarse {
				cells = append(cells, cell{mass, ""})
				continue
			}
			cells = append(cells, cell{*item.Household.Household, mass})
		}
		rows = append(rows, cells)
	}
	return rows
}

// page is one landscape page.
type page struct {
	pdf           *fpdf.Fpdf
	width, height float64
}

func newPage(r wording.Reader) page {
	size := "A4"
	if r.Units == wording.US {
		size = "Letter"
	}
	pdf := fpdf.New("L", "mm", size, "")
	// A fixed date: what is printed does not depend on the day it is printed.
	day := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	pdf.SetCreationDate(day)
	pdf.SetModificationDate(day)
	pdf.SetCatalogSort(true)
	pdf.AddUTF8FontFromBytes("sans", "", sans)
	pdf.SetMargins(margin, margin, margin)
	pdf.SetAutoPageBreak(false, 0)
	pdf.AddPage()
	w, h := pdf.GetPageSize()
	return page{pdf, w - 2*margin, h}
}

// text writes one line into a box, no larger than so many points and as small
// as it has to be to fit.
func (p page) text(x, y, width, height, points float64, align, text string) {
	p.pdf.SetFont("sans", "", points)
	if w := p.pdf.GetStringWidth(text); w > width-2 {
		p.pdf.SetFontSize(max(smallest, points*(width-2)/w))
	}
	p.pdf.SetXY(x, y)
	p.pdf.CellFormat(width, height, text, "", 0, align, false, 0, "")
}

func (p page) heading(title, regrowth string) {
	p.pdf.SetTitle(title, true)
	p.text(margin, margin, p.width, 12, 24, "LM", title)
	p.text(margin, margin+12, p.width, 8, 11, "LM", regrowth)
}

func (p page) table(heads []cell, rows [][]cell) {
	width := p.width / float64(len(heads))
	height := min(tallestRow, (p.height-margin-headHeight-footHeight)/float64(len(rows)+1))
	y := margin + headHeight - 6
	p.row(heads, y, width, height, 11)
	for _, cells := range rows {
		y += height
		p.pdf.Line(margin, y, margin+p.width, y)
		p.row(cells, y, width, height, 15)
	}
}

func (p page) row(cells []cell, y, width, height, points float64) {
	points = min(points, height*1.4)
	for i, c := range cells {
		x := margin + float64(i)*width
		if c.below == "" {
			p.text(x, y, width, height, points, "LM", c.above)
			continue
		}
		p.text(x, y, width, height*0.6, points, "LM", c.above)
		p.text(x, y+height*0.55, width, height*0.4, points*0.65, "LM", c.below)
	}
}

func (p page) foot(cautions []string) {
	p.pdf.SetFont("sans", "", 8)
	p.pdf.SetXY(margin, p.height-footHeight+4)
	for _, caution := range cautions {
		p.pdf.MultiCell(p.width, 3.6, caution, "", "L", false)
	}
}
