package web

import (
	"net/http"

	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// sheetGroup is one step of the work with its sheets.
type sheetGroup struct {
	Title  string
	Sheets []sheetLink
}

type sheetLink struct{ Name, Title, Purpose string }

// worksheets lists every single calculation in the order of the work.
func (s *Site) worksheets(w http.ResponseWriter, r *http.Request) {
	p := &page{visitor: s.visitor(w, r), Place: "rig", Back: "/rig"}
	p.Heading = p.Say("web.worksheets.title")
	p.Title, p.BackTo = p.Heading, p.Say("web.place.rig")
	var groups []sheetGroup
	last := worksheet.Group("")
	for _, sheet := range catalog.All() {
		if sheet.Group != last {
			last = sheet.Group
			groups = append(groups, sheetGroup{Title: sheet.Group.Title().For(p.Reader)})
		}
		g := &groups[len(groups)-1]
		g.Sheets = append(g.Sheets, sheetLink{sheet.Name, sheetTitle(p, sheet), sheet.Purpose().For(p.Reader)})
	}
	p.View = groups
	s.show(w, http.StatusOK, "worksheets", p)
}

// sheetTitle is the name of a sheet in words, if it has one; else its question.
func sheetTitle(p *page, sheet *worksheet.Sheet) string {
	return sheet.Purpose().For(p.Reader)
}
