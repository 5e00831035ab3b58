package report

import (
	"bytes"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"github.com/piglig/go-qr"

	"aerosteep/job/jobfile"
	"aerosteep/job/plan"
	"aerosteep/wording"
)

// The job sheet on paper, in mm and points.
const (
	sheetTop   = 9.0
	sheetSide  = 13.0
	qrSide     = 23.0
	rowHeight  = 7.4 // room to write in
	tick       = 4.0
	gutter     = 8.0
	bodyPoints = 10.0
)

// columnShares are how wide the columns of the loads are.
var columnShares = []float64{0.09, 0.31, 0.15, 0.16, 0.09, 0.11, 0.09}

// JobSheets prints one sheet for each run of a plan, on letter paper for
// readers of US units and on A4 for the others; loads that do not fit go on
// under the same heads. A plan without a run prints why.
func JobSheets(made *plan.Plan, file *jobfile.File, r wording.Reader) ([]byte, error) {
	p := newSheetPaper(r)
	s := &runSheets{made, file, r}
	for i := range made.Runs {
		if err := p.sheet(s, s.sheet(&made.Runs[i])); err != nil {
			return nil, err
		}
	}
	if len(made.Runs) == 0 {
		p.nothing(s)
	}
	var out bytes.Buffer
	err := p.pdf.Output(&out)
	return out.Bytes(), err
}

// sheetPaper is the paper with the pen on it.
type sheetPaper struct {
	pdf           *fpdf.Fpdf
	width, bottom float64
	scale         float64 // of the type; 0 is 1
}

func newSheetPaper(r wording.Reader) *sheetPaper {
	size := "A4"
	if r.Units == wording.US {
		size = "Letter"
	}
	pdf := fpdf.New("P", "mm", size, "")
	// A fixed date: what is printed does not depend on the day it is printed.
	day := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	pdf.SetCreationDate(day)
	pdf.SetModificationDate(day)
	pdf.SetCatalogSort(true)
	pdf.AddUTF8FontFromBytes("sans", "", sans)
	pdf.SetMargins(sheetSide, sheetTop, sheetSide)
	pdf.SetAutoPageBreak(false, 0)
	w, h := pdf.GetPageSize()
	return &sheetPaper{pdf: pdf, width: w - 2*sheetSide, bottom: h - sheetTop}
}

func (p *sheetPaper) sheet(s *runSheets, sheet *jobSheet) error {
	p.pdf.AddPage()
	if err := p.head(s, sheet); err != nil {
		return err
	}
	half := (p.width - gutter) / 2
	y := p.pdf.GetY() + 3
	left := p.ticks(sheetSide, y, half, s.say("before"), sheet.Before)
	right := p.facts(sheetSide+half+gutter, y, half, sheet)
	right = p.paragraph(sheetSide+half+gutter, right+2, half, s.say("keep-off"), sheet.KeepOff)
	y = p.loads(s, sheet, max(left, right)+3)
	y = p.room(y, 78)
	left = p.bullets(sheetSide, y+3, half, s.say("stop"), sheet.Stop)
	right = p.ticks(sheetSide+half+gutter, y+3, half, s.say("after"), sheet.After)
	p.foot(s, sheet, max(left, right)+2)
	return nil
}

func (p *sheetPaper) write(x, y, width, points float64, text string) float64 {
	if p.scale > 0 {
		points *= p.scale
	}
	p.pdf.SetFont("sans", "", points)
	p.pdf.SetXY(x, y)
	p.pdf.MultiCell(width, points*0.46, text, "", "L", false)
	return p.pdf.GetY()
}

func (p *sheetPaper) rule(y, thick float64) {
	p.pdf.SetLineWidth(thick)
	p.pdf.Line(sheetSide, y, sheetSide+p.width, y)
	p.pdf.SetLineWidth(0.2)
}

func (p *sheetPaper) head(s *runSheets, sheet *jobSheet) error {
	beside := p.width - qrSide - 6
	y := p.write(sheetSide, sheetTop, beside, bodyPoints, sheet.Kind)
	y = p.write(sheetSide, y+1, beside, 20, sheet.Title)
	y = p.write(sheetSide, y+1, beside, 11, sheet.When)
	number := s.say("number", "number", sheet.Number)
	if err := p.mark(sheetSide+p.width-qrSide, sheetTop, number); err != nil {
		return err
	}
	p.pdf.SetFont("sans", "", 8)
	p.pdf.SetXY(sheetSide+p.width-qrSide-6, sheetTop+qrSide+0.5)
	p.pdf.CellFormat(qrSide+6, 4, number, "", 0, "RM", false, 0, "")
	y = max(y, sheetTop+qrSide+4) + 2
	p.rule(y, 0.9)
	p.pdf.SetY(y)
	return nil
}

// mark draws the job's number for a camera, as filled squares.
func (p *sheetPaper) mark(x, y float64, text string) error {
	code, err := go_qr.EncodeText(text, go_qr.Medium)
	if err != nil {
		return err
	}
	n := code.Size()
	side := qrSide / float64(n)
	for row := range n {
		for column := range n {
			if code.Module(column, row) {
				p.pdf.Rect(x+float64(column)*side, y+float64(row)*side, side, side, "F")
			}
		}
	}
	return nil
}

func (p *sheetPaper) ticks(x, y, width float64, title string, lines []string) float64 {
	y = p.write(x, y, width, 12, title) + 1.5
	for _, line := range lines {
		p.pdf.Rect(x, y+0.3, tick, tick, "D")
		y = p.write(x+tick+2.5, y, width-tick-2.5, bodyPoints, line) + 1.6
	}
	return y
}

func (p *sheetPaper) bullets(x, y, width float64, title string, lines []string) float64 {
	y = p.write(x, y, width, 12, title) + 1.5
	for _, line := range lines {
		p.write(x, y, 4, bodyPoints, "•")
		y = p.write(x+4, y, width-4, bodyPoints, line) + 1.6
	}
	return y
}

func (p *sheetPaper) facts(x, y, width float64, sheet *jobSheet) float64 {
	y = p.write(x, y, width, 12, sheet.With) + 1
	for _, fact := range sheet.Facts {
		p.pdf.Line(x, y, x+width, y)
		left := p.write(x, y+1, width*0.32, bodyPoints, fact[0])
		y = max(left, p.write(x+width*0.34, y+1, width*0.66, bodyPoints, fact[1])) + 1
	}
	return y
}

func (p *sheetPaper) paragraph(x, y, width float64, title, text string) float64 {
	y = p.write(x, y, width, 12, title) + 1
	return p.write(x, y, width, bodyPoints, text)
}

// room starts a new page where a block would not fit.
func (p *sheetPaper) room(y, height float64) float64 {
	if y+height <= p.bottom {
		return y
	}
	p.pdf.AddPage()
	return sheetTop
}

func (p *sheetPaper) loads(s *runSheets, sheet *jobSheet, y float64) float64 {
	y = p.room(y, 4*rowHeight)
	y = p.write(sheetSide, y, p.width, 12, s.say("loads")) + 1
	p.row(y, sheet.Heads, false)
	y += rowHeight
	for i, cells := range sheet.Rows {
		if y+rowHeight > p.bottom {
			p.pdf.AddPage()
			p.row(sheetTop, sheet.Heads, false)
			y = sheetTop + rowHeight
		}
		p.row(y, cells, i < len(sheet.Rows)-1)
		y += rowHeight
	}
	return y
}

func (p *sheetPaper) row(y float64, cells []string, tickBox bool) {
	x := sheetSide
	for i, text := range cells {
		width := p.width * columnShares[i]
		align := "LM"
		if i >= 2 && i <= 4 {
			align = "RM"
		}
		p.pdf.Rect(x, y, width, rowHeight, "D")
		from := x
		if i == 0 && tickBox {
			p.pdf.Rect(x+1.5, y+(rowHeight-tick)/2, tick, tick, "D")
			from += tick + 2
		}
		p.fitted(from, y, x+width-from, align, text)
		x += width
	}
}

// fitted writes a cell no larger than its column lets it.
func (p *sheetPaper) fitted(x, y, width float64, align, text string) {
	p.pdf.SetFont("sans", "", bodyPoints)
	if w := p.pdf.GetStringWidth(text); w > width-3 {
		p.pdf.SetFontSize(max(smallest, bodyPoints*(width-3)/w))
	}
	p.pdf.SetXY(x, y)
	p.pdf.CellFormat(width, rowHeight, text, "", 0, align, false, 0, "")
}

func (p *sheetPaper) foot(s *runSheets, sheet *jobSheet, y float64) {
	y = p.write(sheetSide, y, p.width, 12, s.say("notes")) + rowHeight
	p.rule(y, 0.2)
	p.rule(y+rowHeight, 0.2)
	y += rowHeight + 3
	p.rule(y, 0.9)
	y = p.write(sheetSide, y+2, p.width, 8, sheet.Why) + 3
	p.write(sheetSide, y, p.width, bodyPoints, s.say("sign"))
}

// nothing prints why no run is planned.
func (p *sheetPaper) nothing(s *runSheets) {
	p.pdf.AddPage()
	y := p.write(sheetSide, sheetTop, p.width, 20, s.say("none.title")) + 2
	y = p.write(sheetSide, y, p.width, bodyPoints, s.say("none.advice")) + 2
	for _, u := range s.plan.Unmet {
		y = p.write(sheetSide, y, p.width, bodyPoints, u.Bed+": "+u.Reason+" "+u.Nearest) + 2
	}
}
