package web

import (
	"net/http"
	"slices"
	"strconv"

	"aerosteep/record/holding"
	"aerosteep/record/journal"
	"aerosteep/record/report"
	"aerosteep/worksheet"
)

// paperView is a paper on the screen; the browser prints it as well.
type paperView struct {
	Paper    *report.Paper
	Lede     string
	Missing  []string
	Facts    []worksheet.Line
	Grids    []paperGrid
	Cautions []string
	Foot     string
}

type paperGrid struct {
	Label, Note string
	Heads       []string
	Rows        [][]string
}

// paper shows a record as a page, or hands it out as PDF or data (?as=).
func (s *Site) paper(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "records")
	kind, name := r.PathValue("kind"), r.PathValue("name")
	if s.Holding == nil || !slices.Contains(report.Kinds, kind) {
		s.nothingHere(w, r)
		return
	}
	made, err := report.NewDesk(s.Holding, s.now()).Make(r.Context(), kind, name)
	if err != nil {
		s.nothingHere(w, r)
		return
	}
	switch r.URL.Query().Get("as") {
	case "pdf":
		text, err := made.PDF(p.Reader)
		s.handOut(w, "application/pdf", kind+".pdf", text, err)
	case "both":
		text, err := made.BothPDF(p.Reader)
		s.handOut(w, "application/pdf", kind+".pdf", text, err)
	case "csv":
		text, err := made.CSV(p.Reader)
		s.handOut(w, "text/csv; charset=utf-8", kind+".csv", text, err)
	case "json":
		text, err := made.JSON(p.Reader)
		s.handOut(w, "application/json", kind+".json", text, err)
	default:
		p.Heading, p.Title = p.Text(made.Title), p.Text(made.Title)
		p.Back, p.BackTo = "/records", p.Say("web.place.records")
		p.View = p.onScreen(made)
		s.show(w, http.StatusOK, "paper", p)
	}
}

// handOut sends a file to keep.
func (s *Site) handOut(w http.ResponseWriter, kind, name string, content []byte, err error) {
	if err != nil {
		s.broken(w, err)
		return
	}
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Disposition", `attachment; filename="`+name+`"`)
	w.Header().Set("Content-Length", strconv.Itoa(len(content)))
	w.Header().Set("Cache-Control", "no-store")
	_, _ = w.Write(content)
}

func (p *page) onScreen(made *report.Paper) *paperView {
	v := &paperView{Paper: made, Lede: p.Text(made.Lede), Foot: made.Foot(p.Reader)}
	for _, m := range made.Missing {
		v.Missing = append(v.Missing, p.Text(m))
	}
	for _, f := range made.Facts {
		v.Facts = append(v.Facts, worksheet.Line{Key: f.Key, Label: report.Label(f.Key, p.Reader), Value: report.Spoken(f.Key, f.Value, p.Reader)})
	}
	for _, t := range made.Tables {
		g := paperGrid{Label: report.TableTitle(t, p.Reader), Note: p.Text(t.Note)}
		g.Heads, g.Rows = t.Words(p.Reader)
		v.Grids = append(v.Grids, g)
	}
	for _, c := range made.Cautions {
		v.Cautions = append(v.Cautions, p.Text(c))
	}
	return v
}

// paperLink is a paper that can be asked for.
type paperLink struct{ Kind, Name, Label, Under string }

// papers lists what can be printed from what is written down.
func (s *Site) papers(p *page, r *http.Request) []paperLink {
	var links []paperLink
	add := func(kind, name, about, under string) {
		links = append(links, paperLink{kind, name, p.Say("web.papers."+kind, "name", about), under})
	}
	year := s.now().Format("2006")
	add("season", year, year, "")
	add("folder", "season:"+year, year, "")
	add("cleaning", year, year, "")
	add("stock", "now", "", "")
	add("crew", "now", "", "")
	if file := s.held(); file != nil {
		for i, bed := range file.Beds {
			if i < mostPapers {
				add("notice", bed.Name, bed.Name, "")
			}
		}
	}
	for i, b := range s.Holding.Batches() {
		if i < mostPapers && b.StartedAt != nil {
			add("brew", b.Name, b.Name, howItEnded(p, b))
			if b.Ended == nil {
				add("label", b.Name, b.Name, "")
			}
		}
	}
	recent, err := s.Holding.Journal().List(r.Context(), journal.Wanted{Kinds: []string{journal.Applied, journal.Incident, journal.Stock}, Newest: 200})
	if err != nil {
		s.log("papers", err)
	}
	return append(links, s.papersOf(p, recent)...)
}

// mostPapers is how many of a kind the records page offers.
const mostPapers = 12

func howItEnded(p *page, b holding.Batch) string {
	if b.Ended == nil {
		return ""
	}
	return choiceWord(p, "outcome", b.Ended.Outcome)
}

// papersOf are the papers of single entries, the newest first.
func (s *Site) papersOf(p *page, recent []journal.Kept) []paperLink {
	var links []paperLink
	offered, counts := map[string]bool{}, map[string]int{}
	add := func(kind, name, about, under string) {
		if key := kind + name; !offered[key] && counts[kind] < mostPapers {
			offered[key] = true
			counts[kind]++
			links = append(links, paperLink{kind, name, p.Say("web.papers."+kind, "name", about), under})
		}
	}
	for i := len(recent) - 1; i >= 0; i-- {
		k := recent[i]
		at := k.Time().In(s.now().Location())
		_, about := k.About()
		switch k.Kind {
		case journal.Applied:
			add("application", k.ID, about, p.When(at, s.now()))
			add("visit", at.Format("2006-01-02"), at.Format("2006-01-02"), "")
		case journal.Incident:
			add("incident", k.ID, about, p.When(at, s.now()))
		case journal.Stock:
			if lot := holding.LotOf(k); lot != "" {
				add("trace", lot, lot, "")
				add("folder", "lot:"+lot, lot, "")
				add("recall", lot, lot, "")
			}
		}
	}
	return links
}
