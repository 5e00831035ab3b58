package web

import (
	"net/http"

	"aerosteep/job/bench"
	"aerosteep/source"
)

// compostView judges a lot of compost by the papers and tests that it has.
type compostView struct {
	Asked    bool
	Standing string
	Care     bool
	Until    string
	Checks   []compostCheck
	Lacking  []lackingCheck
	More     []string
}

type compostCheck struct {
	Name, Label string
	Answers     []option
}

type lackingCheck struct {
	What, Takes string
	Source      source.Source
}

// papers are asked for in the order in which they are quickest to have.
var papers = []bench.Paper{bench.Smell, bench.Salts, bench.HeatingRecord, bench.Bioassay}

// compost is the acceptance sheet: "I don't know" is an answer.
func (s *Site) compost(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "records")
	p.Heading, p.Title = p.Say("web.compost.title"), p.Say("web.compost.title")
	p.Back, p.BackTo = "/records", p.Say("web.place.records")
	view := &compostView{Asked: r.URL.Query().Has("ask")}
	p.View = view
	lot := bench.Lot{Passed: map[bench.Paper]bool{}, Failed: map[bench.Paper]bool{}}
	for _, paper := range papers {
		answer := r.URL.Query().Get(string(paper))
		lot.Passed[paper], lot.Failed[paper] = answer == "passed", answer == "failed"
		check := compostCheck{Name: string(paper), Label: p.Say("web.compost." + string(paper))}
		for _, a := range []string{"unknown", "passed", "failed"} {
			check.Answers = append(check.Answers, option{a, p.Say("web.compost.answer." + a), a == answer || a == "unknown" && answer == ""})
		}
		view.Checks = append(view.Checks, check)
	}
	view.judge(p, lot)
	s.show(w, http.StatusOK, "compost", p)
}

func (v *compostView) judge(p *page, lot bench.Lot) {
	standing, lacking, until := lot.Judge()
	v.Standing = standing.Note().For(p.Reader)
	v.Care = standing != bench.Ready
	for _, c := range lacking {
		v.Lacking = append(v.Lacking, lackingCheck{c.Says.For(p.Reader), c.Takes.Speak(p.Reader), c.Source})
	}
	if until > 0 {
		v.Until = p.Say("web.compost.until", "span", until)
	}
}
