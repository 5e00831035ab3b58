package report

import (
	"bytes"

	"aerosteep/wording"
)

// PDF prints a paper, on letter paper for readers of US units and on A4 for
// the others: gaps first, facts, tables, cautions, a dated review; each page
// says which of how many it is.
func (p *Paper) PDF(r wording.Reader) ([]byte, error) {
	page := newSheetPaper(r)
	page.pdf.SetCreationDate(p.Printed)
	page.pdf.SetModificationDate(p.Printed)
	page.pdf.AliasNbPages("{of}")
	page.pdf.SetFooterFunc(func() { page.line(p, r) })
	page.bottom -= 8
	page.pdf.SetTitle(p.Title.For(r), true)
	page.pdf.AddPage()
	y, err := page.top(p, r)
	if err != nil {
		return nil, err
	}
	y = page.gaps(p, r, y)
	y = page.known(p, r, y)
	for _, t := range p.Tables {
		y = page.grid(t, r, y)
	}
	page.end(p, r, y)
	var out bytes.Buffer
	err = page.pdf.Output(&out)
	return out.Bytes(), err
}

// line stands under every page.
func (s *sheetPaper) line(p *Paper, r wording.Reader) {
	s.pdf.SetFont("sans", "", 7.5)
	s.pdf.SetXY(sheetSide, s.bottom+2)
	text := p.Foot(r) + " · " + wording.Say("paper.page", wording.Places{"n": s.pdf.PageNo(), "of": "{of}"}).For(r)
	s.pdf.CellFormat(s.width, 5, text, "", 0, "LM", false, 0, "")
}

// Foot says whose paper it is, its number, when it was printed and by which
// rules.
func (p *Paper) Foot(r wording.Reader) string {
	text := wording.Say("paper.foot", wording.Places{"number": p.Number, "printed": Stamp(p.Printed, r)}).For(r)
	if p.Holding != "" {
		text = p.Holding + " · " + text
	}
	if p.Rules != "" {
		text += " · " + wording.Say("paper.rules", wording.Places{"day": p.Rules}).For(r)
	}
	return text
}

func (s *sheetPaper) top(p *Paper, r wording.Reader) (float64, error) {
	beside := s.width
	if p.Code != "" {
		beside -= qrSide + 6
		if err := s.mark(sheetSide+s.width-qrSide, sheetTop, p.Code); err != nil {
			return 0, err
		}
	}
	y := sheetTop
	if p.Holding != "" {
		y = s.write(sheetSide, y, beside, bodyPoints, p.Holding) + 1
	}
	y = s.write(sheetSide, y, beside, 20, p.Title.For(r)) + 1
	if !p.Lede.IsZero() {
		y = s.write(sheetSide, y, beside, 14, p.Lede.For(r)) + 1
	}
	if p.Code != "" {
		y = max(y, sheetTop+qrSide+1)
	}
	s.rule(y+1, 0.9)
	return y + 4, nil
}

func (s *sheetPaper) gaps(p *Paper, r wording.Reader, y float64) float64 {
	if len(p.Missing) == 0 {
		return y
	}
	y = s.bullets(sheetSide, y, s.width, wording.Say("paper.gaps").For(r), inWords(p.Missing, r))
	return y + 2
}

func (s *sheetPaper) known(p *Paper, r wording.Reader, y float64) float64 {
	for _, fact := range p.Facts {
		y = s.room(y, 8)
		s.pdf.Line(sheetSide, y, sheetSide+s.width, y)
		left := s.write(sheetSide, y+1, s.width*0.3, bodyPoints, Label(fact.Key, r))
		y = max(left, s.write(sheetSide+s.width*0.32, y+1, s.width*0.68, bodyPoints, Spoken(fact.Key, fact.Value, r))) + 1
	}
	return y + 3
}

// cellPoints is the type of a table: smaller, so that a row stays a line.
const cellPoints = 8.0

// grid prints a table; its head is repeated on each page.
func (s *sheetPaper) grid(t Table, r wording.Reader, y float64) float64 {
	y = s.room(y, 20)
	y = s.write(sheetSide, y, s.width, 12, TableTitle(t, r)) + 1
	if len(t.Rows) == 0 {
		return s.write(sheetSide, y, s.width, bodyPoints, wording.Say("paper.none").For(r)) + 4
	}
	heads, rows := t.Words(r)
	shares := s.shares(heads, rows)
	y = s.cells(heads, shares, y)
	for _, cells := range rows {
		if y+s.tall(cells, shares) > s.bottom {
			s.pdf.AddPage()
			y = s.cells(heads, shares, sheetTop)
		}
		y = s.cells(cells, shares, y)
	}
	if !t.Note.IsZero() {
		y = s.write(sheetSide, y+1, s.width, cellPoints, t.Note.For(r))
	}
	return y + 4
}

// shares gives each column room by the longest of what stands in it, within
// reason.
func (s *sheetPaper) shares(heads []string, rows [][]string) []float64 {
	s.pdf.SetFont("sans", "", cellPoints)
	widths, total := make([]float64, len(heads)), 0.0
	for i := range heads {
		for _, cells := range append([][]string{heads}, rows...) {
			widths[i] = max(widths[i], min(s.pdf.GetStringWidth(cells[i])+4, s.width*0.4))
		}
		total += widths[i]
	}
	for i := range widths {
		widths[i] *= s.width / total
	}
	return widths
}

func (s *sheetPaper) tall(cells []string, widths []float64) float64 {
	s.pdf.SetFont("sans", "", cellPoints)
	lines := 1
	for i, text := range cells {
		lines = max(lines, len(s.pdf.SplitText(text, widths[i]-2)))
	}
	return float64(lines)*cellPoints*0.46 + 1.6
}

func (s *sheetPaper) cells(cells []string, widths []float64, y float64) float64 {
	x, bottom := sheetSide, y
	for i, text := range cells {
		bottom = max(bottom, s.write(x, y+0.8, widths[i], cellPoints, text))
		x += widths[i]
	}
	s.pdf.Line(sheetSide, bottom+0.8, sheetSide+s.width, bottom+0.8)
	return bottom + 0.8
}

func (s *sheetPaper) end(p *Paper, r wording.Reader, y float64) {
	for _, caution := range inWords(p.Cautions, r) {
		y = s.room(y, 10)
		y = s.write(sheetSide, y, s.width, 9, caution) + 1
	}
	if !p.Signed {
		return
	}
	y = s.room(y, 20) + 8
	s.write(sheetSide, y, s.width, bodyPoints, wording.Say("paper.review").For(r))
}

// Words are a table's heads and cells in the reader's language.
func (t Table) Words(r wording.Reader) (heads []string, rows [][]string) {
	for _, key := range t.Columns {
		heads = append(heads, Label(key, r))
	}
	for _, row := range t.Rows {
		var cells []string
		for i, value := range row {
			if value == nil && t.Columns[i] == "remark" {
				cells = append(cells, "")
				continue
			}
			cells = append(cells, Spoken(t.Columns[i], value, r))
		}
		rows = append(rows, cells)
	}
	return heads, rows
}

// TableTitle names a table.
func TableTitle(t Table, r wording.Reader) string { return wording.Say("paper.table." + t.Name).For(r) }
