package report

import (
	"bytes"
	"slices"

	"aerosteep/wording"
)

// PDF prints a paper, on letter paper for readers of US units and on A4 for
// the others: gaps first, facts, tables, cautions, a dated review; each page
// says which of how many it is. The papers of a folder follow it.
func (p *Paper) PDF(r wording.Reader) ([]byte, error) { return p.pdf(speech{first: r}) }

// BothPDF prints it in English and Spanish side by side, the reader's language
// first.
func (p *Paper) BothPDF(r wording.Reader) ([]byte, error) { return p.pdf(inBothLanguages(r)) }

func (p *Paper) pdf(r speech) ([]byte, error) {
	if len(p.inside) == 0 {
		text, _, err := p.print(r)
		return text, err
	}
	// Where each paper begins is known when all are laid out once: the pages of
	// the index do not change by the numbers in it.
	indexed := *p
	indexed.Tables = slices.Clone(p.Tables)
	indexed.Tables[0] = indexOf(p.inside, make([]int, len(p.inside)))
	_, begins, err := indexed.print(r)
	if err != nil {
		return nil, err
	}
	indexed.Tables[0] = indexOf(p.inside, begins)
	text, _, err := indexed.print(r)
	return text, err
}

// fromAfar is how much larger the type of a notice is.
const fromAfar = 1.7

// print lays a paper and those inside it out, and tells on which page each of
// these begins.
func (p *Paper) print(r speech) (text []byte, begins []int, err error) {
	page := newSheetPaper(r.first)
	page.pdf.SetCreationDate(p.Printed)
	page.pdf.SetModificationDate(p.Printed)
	page.pdf.AliasNbPages("{of}")
	if p.Large {
		page.scale = fromAfar
	}
	current := p
	page.pdf.SetFooterFunc(func() { page.line(current, r) })
	page.bottom -= 8
	page.pdf.SetTitle(p.Title.For(r.first), true)
	for i, each := range append([]*Paper{p}, p.inside...) {
		page.pdf.AddPage() // the foot of the page before is still of the paper before
		current = each
		if i > 0 {
			begins = append(begins, page.pdf.PageNo())
		}
		if err := page.put(each, r); err != nil {
			return nil, nil, err
		}
	}
	var out bytes.Buffer
	err = page.pdf.Output(&out)
	return out.Bytes(), begins, err
}

// put lays one paper out from the top of a page.
func (s *sheetPaper) put(p *Paper, r speech) error {
	y, err := s.top(p, r)
	if err != nil {
		return err
	}
	y = s.gaps(p, r, y)
	y = s.known(p, r, y)
	for _, t := range p.Tables {
		y = s.grid(t, r, y)
	}
	s.end(p, r, y)
	return nil
}

// line stands under every page.
func (s *sheetPaper) line(p *Paper, r speech) {
	s.pdf.SetFont("sans", "", 7.5)
	s.pdf.SetXY(sheetSide, s.bottom+2)
	text := p.Foot(r.first) + " · " + wording.Say("paper.page", wording.Places{"n": s.pdf.PageNo(), "of": "{of}"}).For(r.first)
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

// beside writes the same sentence in one language or two, in columns.
func (s *sheetPaper) beside(x, y, width, points float64, texts []string) float64 {
	const gutter = 5.0
	each := (width - gutter*float64(len(texts)-1)) / float64(len(texts))
	bottom := y
	for i, text := range texts {
		bottom = max(bottom, s.write(x+float64(i)*(each+gutter), y, each, points, text))
	}
	return bottom
}

func (s *sheetPaper) top(p *Paper, r speech) (float64, error) {
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
	y = s.beside(sheetSide, y, beside, 20, r.long(p.Title.For)) + 1
	if !p.Lede.IsZero() {
		y = s.beside(sheetSide, y, beside, 14, r.long(p.Lede.For)) + 1
	}
	if p.Code != "" {
		y = max(y, sheetTop+qrSide+1)
	}
	s.rule(y+1, 0.9)
	return y + 4, nil
}

func (s *sheetPaper) gaps(p *Paper, r speech, y float64) float64 {
	if len(p.Missing) == 0 {
		return y
	}
	y = s.write(sheetSide, y, s.width, 12, r.short(wording.Say("paper.gaps").For)) + 1.5
	for _, gap := range p.Missing {
		y = s.room(y, 12)
		s.write(sheetSide, y, 4, bodyPoints, "•")
		y = s.beside(sheetSide+4, y, s.width-4, bodyPoints, r.long(gap.For)) + 1.6
	}
	return y + 2
}

func (s *sheetPaper) known(p *Paper, r speech, y float64) float64 {
	for _, fact := range p.Facts {
		y = s.room(y, 8)
		s.pdf.Line(sheetSide, y, sheetSide+s.width, y)
		left := s.write(sheetSide, y+1, s.width*0.3, bodyPoints, r.short(func(r wording.Reader) string { return Label(fact.Key, r) }))
		y = max(left, s.write(sheetSide+s.width*0.32, y+1, s.width*0.68, bodyPoints, r.value(fact.Key, fact.Value))) + 1
	}
	return y + 3
}

// cellPoints is the type of a table: smaller, so that a row stays a line.
const cellPoints = 8.0

// grid prints a table; its head is repeated on each page.
func (s *sheetPaper) grid(t Table, r speech, y float64) float64 {
	y = s.room(y, 20)
	y = s.write(sheetSide, y, s.width, 12, r.short(func(r wording.Reader) string { return TableTitle(t, r) })) + 1
	if len(t.Rows) == 0 {
		return s.write(sheetSide, y, s.width, bodyPoints, r.short(wording.Say("paper.none").For)) + 4
	}
	heads, rows := r.words(t)
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
		y = s.beside(sheetSide, y+1, s.width, cellPoints, r.long(t.Note.For))
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

func (s *sheetPaper) end(p *Paper, r speech, y float64) {
	for _, caution := range p.Cautions {
		y = s.room(y, pictogramSide+1)
		from := s.pictogram(caution, y)
		below := s.beside(sheetSide+from, y+from/8, s.width-from, 9, r.long(caution.For)) + 1
		if from > 0 {
			below = max(below, y+pictogramSide+1.5)
		}
		y = below
	}
	if !p.Signed {
		return
	}
	y = s.room(y, 20) + 8
	s.write(sheetSide, y, s.width, bodyPoints, r.short(wording.Say("paper.review").For))
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
