package web

import (
	"net/http"
	"net/url"
	"slices"
	"strings"

	"aerosteep/job/bench"
	"aerosteep/job/hygiene"
	"aerosteep/record/holding"
)

// lotsView lists the lots of compost and other stock.
type lotsView struct{ Lots []lotRow }

type lotRow struct {
	Name, Link, Line, Standing string
	Care                       bool
}

// lots lists what is known of each lot in a line.
func (s *Site) lots(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "records")
	p.Back, p.BackTo = "/records", p.Say("web.place.records")
	p.Heading, p.Title = p.Say("web.lots.title"), p.Say("web.lots.title")
	view := &lotsView{}
	p.View = view
	if s.Holding != nil {
		for _, l := range s.Holding.Lots() {
			standing, _, _ := l.Papers.Judge()
			view.Lots = append(view.Lots, lotRow{
				Name: l.Name, Link: "/lots/" + url.PathEscape(l.Name), Line: strings.Join(slices.DeleteFunc([]string{l.Ingredient, l.Supplier}, func(t string) bool { return t == "" }), ", "),
				Standing: standing.Note().For(p.Reader), Care: standing != bench.Ready,
			})
		}
	}
	s.show(w, http.StatusOK, "lots", p)
}

// lotView is one lot: how it stands, what is known, what is lacking.
type lotView struct {
	Name, Standing, Until string
	Care                  bool
	Facts                 []lotFact
	Lacking               []lackingCheck
	More, Trace, Recall   string
	Verdicts              []lotBatch
	Unknown               []string
}

type lotFact struct{ Question, Answer string }

// lotBatch is a batch that the lot went into.
type lotBatch struct{ Name, Link string }

func (s *Site) lot(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	l, known := holding.Lot{}, false
	if s.Holding != nil {
		l, known = s.Holding.Lot(name)
	}
	if !known {
		s.nothingHere(w, r)
		return
	}
	p := s.page(w, r, "records")
	p.Back, p.BackTo = "/lots", p.Say("web.lots.title")
	p.Heading, p.Title = name, p.Say("web.lots.one", "lot", name)
	standing, lacking, until := l.Papers.Judge()
	escapedName := url.PathEscape(name)
	view := &lotView{
		Name: name, Standing: standing.Note().For(p.Reader), Care: standing != bench.Ready,
		More: "/write/lot?lot=" + escapedName, Trace: "/records/trace/" + escapedName, Recall: "/records/recall/" + escapedName,
	}
	if until > 0 {
		view.Until = p.Say("web.compost.until", "span", until)
	}
	for _, c := range lacking {
		view.Lacking = append(view.Lacking, lackingCheck{c.Says.For(p.Reader), c.Takes.Speak(p.Reader), c.Source})
	}
	view.facts(p, l)
	for _, batch := range s.Holding.BatchesOfLot(name) {
		view.Verdicts = append(view.Verdicts, lotBatch{batch, "/batches/" + url.PathEscape(batch)})
	}
	p.View = view
	s.show(w, http.StatusOK, "lot", p)
}

// facts are the questions that the lot answers, and those that it leaves open.
func (v *lotView) facts(p *page, l holding.Lot) {
	for _, fact := range hygiene.OfCompost() {
		question := p.Say("hygiene.question." + fact.String())
		if word := l.Facts[fact.String()]; word != "" {
			v.Facts = append(v.Facts, lotFact{question, answerWord(p, fact, word)})
			continue
		}
		v.Unknown = append(v.Unknown, question)
	}
	for _, paper := range holding.LotPapers {
		if answer := l.Paper(paper); answer != "" {
			v.Facts = append(v.Facts, lotFact{p.Say("web.compost." + string(paper)), p.Say("web.compost.answer." + answer)})
		}
	}
}
