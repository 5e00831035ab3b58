package web

import (
	"net/http"
	"slices"

	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
)

// letterView is one page to print: open questions with blanks and a line to
// sign; without a recipient, the letters there are.
type letterView struct {
	To        string
	Farm, Day string
	Opening   string
	Questions []letterQuestion
	Signature string
	Others    []letterLink
}

type letterQuestion struct {
	Text    string
	Answers []string // boxes to tick; none: a line to write on
}

type letterLink struct{ Link, Name, Line string }

// recipients are the words of the address, in the order of the letters.
var recipients = []struct {
	word string
	to   hygiene.Recipient
}{{"supplier", hygiene.Supplier}, {"laboratory", hygiene.Laboratory}, {"certifier", hygiene.Certifier}}

// letter turns what nobody here knows into a letter to whoever does.
func (s *Site) letter(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "records")
	p.Back, p.BackTo = "/records", p.Say("web.place.records")
	p.Heading = p.Say("web.letters.title")
	file := s.held()
	view := &letterView{Day: s.now().Format("2006-01-02")}
	if file != nil {
		view.Farm = file.Holding.Name
	}
	p.View = view
	letters := hygiene.Letters(missingFacts(file))
	for _, each := range recipients {
		at := slices.IndexFunc(letters, func(l hygiene.Letter) bool { return l.To == each.to })
		link := letterLink{"/records/letter?to=" + each.word, p.Say("web.letter." + each.word), p.Say("web.letter.nothing")}
		if at >= 0 {
			link.Line = p.Say("web.letter.questions", "n", len(letters[at].Questions))
		}
		if r.URL.Query().Get("to") == each.word {
			view.To, p.Heading = each.word, link.Name
			p.Back, p.BackTo = "/records/letter", p.Say("web.letters.title")
			if at >= 0 {
				view.write(p, &letters[at])
			}
		}
		view.Others = append(view.Others, link)
	}
	p.Title = p.Heading
	s.show(w, http.StatusOK, "letter", p)
}

func (v *letterView) write(p *page, l *hygiene.Letter) {
	v.Opening, v.Signature = p.Text(l.Opening), p.Text(l.Signature)
	for _, q := range l.Questions {
		asked := letterQuestion{Text: p.Text(q.Text)}
		for _, value := range q.Answers {
			asked.Answers = append(asked.Answers, answerWord(p, q.Fact, value))
		}
		v.Questions = append(v.Questions, asked)
	}
}

// missingFacts are all that any pair of bed and batch waits for.
func missingFacts(file *jobfile.File) []hygiene.Fact {
	var missing []hygiene.Fact
	for _, v := range judged(file, "", "") {
		for _, fact := range v.Missing {
			if v.Allowed == hygiene.Ask && !slices.Contains(missing, fact) {
				missing = append(missing, fact)
			}
		}
	}
	return missing
}
