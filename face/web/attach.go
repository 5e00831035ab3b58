package web

import (
	"io"
	"net/http"
	"net/url"
	"strings"

	"aerosteep/fault"
	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// attachView is the page on which a paper of somebody else is kept.
type attachView struct {
	Fields []field
	Faults []mend
	Kept   bool
	By     string
	Papers []attachedRow
}

type attachedRow struct{ Link, What, Line string }

// attach keeps a paper of somebody else with the records.
func (s *Site) attach(w http.ResponseWriter, r *http.Request) {
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	p := s.page(w, r, "records")
	p.Task, p.Back, p.BackTo = true, "/records", p.Say("web.place.records")
	p.Heading, p.Title = p.Say("web.attach.title"), p.Say("web.attach.title")
	view := &attachView{Kept: r.URL.Query().Has("kept")}
	p.View = view
	status := http.StatusOK
	var faults fault.List
	if r.Method == http.MethodPost {
		r.Body = http.MaxBytesReader(w, r.Body, journal.LongestContent+1<<20)
		if faults = s.keepPaper(w, r); faults == nil {
			http.Redirect(w, r, "/records/attach?kept=1", http.StatusSeeOther)
			return
		}
		status, p.Title = http.StatusUnprocessableEntity, p.Say("web.error.title", "title", p.Title)
	}
	view.fill(s, p, r, faults)
	s.show(w, status, "attach", p)
}

// keepPaper stores what was sent; nil where it is on disk.
func (s *Site) keepPaper(w http.ResponseWriter, r *http.Request) fault.List {
	file, head, err := r.FormFile("file")
	if err != nil {
		return fault.List{{Field: "file", What: wording.Say("web.attach.no-file")}}
	}
	defer file.Close()
	content, err := io.ReadAll(file)
	given := worksheet.Values{}
	for _, flag := range holding.AttachForm.Sheet.Flags() {
		if text := strings.TrimSpace(r.FormValue(flag)); text != "" {
			given[flag] = []string{text}
		}
	}
	if err == nil {
		made := holding.Made{At: s.now(), By: s.initials(w, r), Device: s.device(w, r)}
		_, err = s.Holding.Attach(r.Context(), head.Filename, content, given, made)
	}
	if err == nil {
		return nil
	}
	if faults := fault.Of(err); len(faults) > 0 {
		return faults
	}
	return fault.List{{Field: "file", What: verbatim(err)}}
}

func (v *attachView) fill(s *Site, p *page, r *http.Request, faults fault.List) {
	v.By = kept(r, "by")
	sheet := holding.AttachForm.Sheet
	for i := range sheet.Inputs {
		in := &sheet.Inputs[i]
		f := field{Name: in.Flag, Label: in.Label(sheet.Name).For(p.Reader), Value: r.FormValue(in.Flag), Kind: "text", Required: in.Required}
		f.shape(in, p)
		for _, wrong := range faults {
			if wrong.Field == in.Flag {
				f.Error = faultText(p, sheet, wrong)
			}
		}
		v.Fields = append(v.Fields, f)
	}
	for _, wrong := range faults {
		v.Faults = append(v.Faults, mend{wrong.Field, faultText(p, sheet, wrong)})
	}
	papers, err := s.Holding.Attachments(r.Context())
	if err != nil {
		s.log("attachments", err)
	}
	for i := len(papers) - 1; i >= 0; i-- {
		a := papers[i]
		_, about := a.About()
		line := strings.Join([]string{about, a.File, p.When(a.Time().In(s.now().Location()), s.now()), a.By}, ", ")
		v.Papers = append(v.Papers, attachedRow{"/records/attached/" + url.PathEscape(a.Hash), choiceWord(p, "what", a.What), line})
	}
}

// attached hands a kept paper out, as a file to keep and never as a page: what
// others wrote runs nothing here.
func (s *Site) attached(w http.ResponseWriter, r *http.Request) {
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	hash := r.PathValue("hash")
	content, err := s.Holding.Journal().Content(r.Context(), hash)
	if err == nil && content == nil {
		s.nothingHere(w, r)
		return
	}
	s.handOut(w, "application/octet-stream", hash[:min(12, len(hash))]+ending(content), content, err)
}

// ending is how the file's name ends, by what its content says it is.
func ending(content []byte) string {
	switch http.DetectContentType(content) {
	case "application/pdf":
		return ".pdf"
	case "image/jpeg":
		return ".jpg"
	case "image/png":
		return ".png"
	}
	return ".bin"
}
